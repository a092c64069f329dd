#include "cli/list_file.h"

#include "base/utf8.h"
#include "cli/csv_record.h"
#include "cli/input.h"

enum { COLUMNS_MAX = 3 };

struct list_file {
    struct arena *arena;
    struct diagnostics *diagnostics;
    const char *const *columns; /* what the key calls them */
    struct csv_shape shape;
    size_t count;                  /* of the columns */
    size_t field[COLUMNS_MAX];     /* of the record, of each */
    const char *unit[COLUMNS_MAX]; /* that its heading names; empty: the cells have their own */
    struct mark mark;              /* of the line */
    struct node *list;
};

/* The first word of a heading, and the unit behind it: "shown (mph)", "shown_kmh", "true, km/h". */
static bool is_called(struct span heading, const char *name, struct span *unit)
{
    size_t length = strlen(name);
    struct span word = {heading.at, length};
    if (heading.length < length || !span_is_but_for_case(word, name) ||
        (heading.length > length && is_letter(heading.at[length])))
        return false;
    while (length < heading.length && strchr(" _,([", heading.at[length]) != NULL)
        length++;
    size_t end = heading.length;
    while (end > length && strchr(" )]", heading.at[end - 1]) != NULL)
        end--;
    *unit = (struct span){heading.at + length, end - length};
    return true;
}

static struct span trimmed(struct span text)
{
    while (text.length > 0 && is_blank(*text.at))
        text = (struct span){text.at + 1, text.length - 1};
    while (text.length > 0 && is_blank(text.at[text.length - 1]))
        text.length--;
    return text;
}

static struct span field_of(const struct list_file *file, struct span line, size_t index)
{
    char *field = arena_allocate(file->arena, line.length + 1);
    return trimmed(csv_field_cut(line, &file->shape, index, field, line.length + 1));
}

static bool read_heading(struct list_file *file, struct span line)
{
    file->shape = csv_shape_of(line);
    for (; file->columns[file->count] != NULL; file->count++) {
        const char *name = file->columns[file->count];
        struct span unit = {"", 0};
        size_t field = 0;
        while (field < file->shape.fields && !is_called(field_of(file, line, field), name, &unit))
            field++;
        if (field == file->shape.fields) {
            diagnostics_add(file->diagnostics, file->mark, count_characters(line),
                            "the list has no column \"%s\"; expected a heading that begins with "
                            "it, with the unit behind it or behind each value",
                            name);
            return false;
        }
        file->field[file->count] = field;
        file->unit[file->count] = arena_copy(file->arena, unit);
    }
    return true;
}

/* A value with the heading's unit where it has none, and with a decimal point. */
static struct node *cell(const struct list_file *file, struct span line, size_t column)
{
    size_t start = csv_length_of_fields(line, &file->shape, file->field[column]);
    start += start > 0; /* the separator */
    struct mark mark = file->mark;
    mark.column =
        count_characters((struct span){line.at, start < line.length ? start : line.length}) + 1;
    struct span text = field_of(file, line, file->field[column]);
    char *value = arena_copy(file->arena, text);
    char *comma = memchr(value, ',', text.length);
    if (file->shape.separator != ',' && comma != NULL)
        *comma = '.';
    bool bare = text.length > 0;
    for (size_t i = 0; i < text.length; i++)
        bare = bare && (is_digit(value[i]) || memchr("+-.,", value[i], 4) != NULL);
    struct span whole = {value, text.length};
    if (bare && *file->unit[column] != '\0')
        whole = span_of(arena_format(file->arena, "%s %s", value, file->unit[column]));
    struct node *node = tree_node(file->arena, NODE_SCALAR, whole, mark);
    node->as_written =
        start + text.length <= line.length && memcmp(line.at + start, text.at, text.length) == 0;
    return node;
}

static void read_record(struct list_file *file, struct span line)
{
    struct node *item = tree_node(file->arena, NODE_SEQUENCE, (struct span){NULL, 0}, file->mark);
    for (size_t i = 0; i < file->count; i++)
        tree_append(item, NULL, cell(file, line, i));
    tree_append(file->list, NULL, item);
}

/* Line by line: a value has no line end in it. */
static bool read_lines(struct list_file *file, struct span text)
{
    bool heading = true;
    while (text.length > 0) {
        size_t length = 0, ended = 0;
        while (length < text.length &&
               (ended = line_break_length((struct span){text.at + length, text.length - length})) ==
                   0)
            length++;
        struct span line = {text.at, length};
        text = (struct span){text.at + length + ended, text.length - length - ended};
        file->mark.line++;
        if (trimmed(line).length == 0)
            continue;
        if (!heading)
            read_record(file, line);
        else if (!read_heading(file, line))
            return false;
        heading = false;
    }
    return true;
}

struct node *list_file_read(struct arena *arena, const struct key *key, struct span text,
                            struct mark at, struct diagnostics *diagnostics)
{
    const char *path = arena_copy(arena, (struct span){text.at + 1, text.length - 1});
    if (key == NULL || key->columns == NULL) {
        diagnostics_add(diagnostics, at, count_characters(text),
                        "@FILE goes with a list of readings; expected the value itself here");
        return NULL;
    }
    struct span source;
    const char *wrong = input_read_path(arena, path, &source);
    if (wrong != NULL) {
        diagnostics_add(diagnostics, at, count_characters(text), "%s", wrong);
        return NULL;
    }
    if (source.length >= 3 && memcmp(source.at, "\xEF\xBB\xBF", 3) == 0)
        source = (struct span){source.at + 3, source.length - 3};
    struct list_file file = {
        .arena = arena,
        .diagnostics = diagnostics,
        .columns = key->columns,
        .mark = {0, 1, diagnostics_source(diagnostics, (struct source_text){path, source, false})},
        .list = tree_node(arena, NODE_SEQUENCE, (struct span){NULL, 0}, at),
    };
    if (!read_lines(&file, source))
        return NULL;
    if (file.list->first == NULL) {
        diagnostics_add(diagnostics, at, count_characters(text), "\"%s\" holds no values", path);
        return NULL;
    }
    return file.list;
}
