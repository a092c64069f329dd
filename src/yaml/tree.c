#include "yaml/tree.h"

#include <stdlib.h>
#include <yaml.h>

#include "base/utf8.h"

/* What the reader holds while events come in. */
struct reader {
    struct arena *arena;
    struct diagnostics *diagnostics;
    struct node *open[TREE_DEPTH_MAX]; /* collections not yet closed */
    struct node *pending_key[TREE_DEPTH_MAX];
    size_t depth;
    struct node *root;
    size_t documents;
    bool stopped; /* reading cannot go on */
    struct span source;
    size_t from;       /* what it is among the sources of the diagnostics */
    size_t line_first; /* what its first line is called, 1 or 0 */
};

/* libyaml counts from 0. */
static struct mark mark_of(const struct reader *reader, yaml_mark_t mark)
{
    return (struct mark){mark.line + reader->line_first, mark.column + 1, reader->from};
}

static void refuse(struct reader *reader, yaml_mark_t mark, const char *message)
{
    diagnostics_add(reader->diagnostics, mark_of(reader, mark), 1, "%s", message);
    reader->stopped = true;
}

void tree_append(struct node *parent, struct node *key, struct node *child)
{
    child->key = key;
    if (parent->last == NULL)
        parent->first = child;
    else
        parent->last->next = child;
    parent->last = child;
    parent->count++;
}

static bool anchored(struct reader *reader, yaml_event_t *event)
{
    const yaml_char_t *anchor = NULL, *tag = NULL;
    if (event->type == YAML_SCALAR_EVENT) {
        anchor = event->data.scalar.anchor;
        tag = event->data.scalar.tag;
    } else if (event->type == YAML_SEQUENCE_START_EVENT) {
        anchor = event->data.sequence_start.anchor;
        tag = event->data.sequence_start.tag;
    } else {
        anchor = event->data.mapping_start.anchor;
        tag = event->data.mapping_start.tag;
    }
    if (anchor != NULL)
        refuse(reader, event->start_mark,
               "an anchor (&name) is not read here; write the value out where it is needed");
    else if (tag != NULL)
        refuse(reader, event->start_mark,
               "a tag (!name) is not read here; write the value without it");
    return anchor != NULL || tag != NULL;
}

/* Puts a finished or opened node under its parent. */
static void place(struct reader *reader, struct node *node)
{
    if (reader->depth == 0) {
        reader->root = node;
        return;
    }
    struct node *parent = reader->open[reader->depth - 1];
    struct node **key = &reader->pending_key[reader->depth - 1];
    if (parent->kind == NODE_SEQUENCE) {
        tree_append(parent, NULL, node);
    } else if (*key == NULL) {
        *key = node;
        if (node->kind != NODE_SCALAR) {
            diagnostics_add(reader->diagnostics, node->mark, 1,
                            "a list or mapping stands where a key is expected; write a plain "
                            "name before the colon");
            reader->stopped = true;
        }
    } else {
        tree_append(parent, *key, node);
        *key = NULL;
    }
}

struct node *tree_node(struct arena *arena, enum node_kind kind, struct span text, struct mark mark)
{
    struct node *node = arena_allocate(arena, sizeof *node);
    node->kind = kind;
    node->text = text;
    node->mark = mark;
    return node;
}

static struct node *new_node(struct reader *reader, enum node_kind kind, yaml_mark_t mark)
{
    return tree_node(reader->arena, kind, (struct span){NULL, 0}, mark_of(reader, mark));
}

static void open_collection(struct reader *reader, yaml_event_t *event, enum node_kind kind)
{
    if (anchored(reader, event))
        return;
    if (reader->depth == TREE_DEPTH_MAX) {
        diagnostics_add(reader->diagnostics, mark_of(reader, event->start_mark), 1,
                        "lists and mappings are nested deeper than %d levels; a build file needs "
                        "six at the most",
                        TREE_DEPTH_MAX);
        reader->stopped = true;
        return;
    }
    struct node *node = new_node(reader, kind, event->start_mark);
    place(reader, node);
    reader->pending_key[reader->depth] = NULL;
    reader->open[reader->depth++] = node;
}

static int by_key(const void *left, const void *right)
{
    const struct node *a = (*(struct node *const *)left)->key;
    const struct node *b = (*(struct node *const *)right)->key;
    size_t length = a->text.length < b->text.length ? a->text.length : b->text.length;
    int order = memcmp(a->text.at, b->text.at, length);
    if (order != 0)
        return order;
    if (a->text.length != b->text.length)
        return a->text.length < b->text.length ? -1 : 1;
    if (a->mark.line != b->mark.line)
        return a->mark.line < b->mark.line ? -1 : 1;
    return a->mark.column < b->mark.column ? -1 : 1;
}

static bool same_key(const struct node *a, const struct node *b)
{
    return a->key->text.length == b->key->text.length &&
           memcmp(a->key->text.at, b->key->text.at, a->key->text.length) == 0;
}

/* Sorted, so that a mapping of a hundred thousand keys is still checked at once. */
static void refuse_duplicate_keys(struct reader *reader, struct node *mapping)
{
    if (mapping->count < 2)
        return;
    struct node **sorted =
        arena_allocate_array(reader->arena, mapping->count, sizeof(struct node *));
    size_t count = 0;
    for (struct node *child = mapping->first; child != NULL; child = child->next)
        sorted[count++] = child;
    qsort(sorted, count, sizeof *sorted, by_key);
    for (size_t i = 1; i < count; i++)
        if (same_key(sorted[i - 1], sorted[i])) {
            struct span key = sorted[i]->key->text;
            diagnostics_add(reader->diagnostics, sorted[i]->key->mark, count_characters(key),
                            "the key \"%s\" stands twice in one mapping (first in line %zu); "
                            "keep one of them",
                            quotable(reader->arena, key), sorted[i - 1]->key->mark.line);
        }
}

static void close_collection(struct reader *reader)
{
    struct node *node = reader->open[--reader->depth];
    /* NOLINTNEXTLINE(clang-analyzer-core.NullDereference): open[] has a node for each level */
    if (node->kind == NODE_MAPPING)
        refuse_duplicate_keys(reader, node);
}

static void take_scalar(struct reader *reader, yaml_event_t *event)
{
    if (anchored(reader, event))
        return;
    struct node *node = new_node(reader, NODE_SCALAR, event->start_mark);
    struct span value = {(const char *)event->data.scalar.value, event->data.scalar.length};
    node->text = (struct span){arena_copy(reader->arena, value), value.length};
    node->quoted = event->data.scalar.style == YAML_SINGLE_QUOTED_SCALAR_STYLE ||
                   event->data.scalar.style == YAML_DOUBLE_QUOTED_SCALAR_STYLE;
    node->as_written = event->start_mark.line == event->end_mark.line &&
                       event->end_mark.column - event->start_mark.column ==
                           count_characters(node->text) + (node->quoted ? 2 : 0);
    place(reader, node);
}

static void take_event(struct reader *reader, yaml_event_t *event)
{
    switch (event->type) {
    case YAML_DOCUMENT_START_EVENT:
        if (++reader->documents > 1)
            refuse(reader, event->start_mark,
                   "a second document begins here; a build file is one document");
        break;
    case YAML_ALIAS_EVENT:
        refuse(reader, event->start_mark,
               "an alias (*name) is not read here; write the value out where it is needed");
        break;
    case YAML_SCALAR_EVENT:
        take_scalar(reader, event);
        break;
    case YAML_SEQUENCE_START_EVENT:
        open_collection(reader, event, NODE_SEQUENCE);
        break;
    case YAML_MAPPING_START_EVENT:
        open_collection(reader, event, NODE_MAPPING);
        break;
    case YAML_SEQUENCE_END_EVENT:
    case YAML_MAPPING_END_EVENT:
        close_collection(reader);
        break;
    default:
        break;
    }
}

/* What people do that libyaml has no words for. */
static const char *syntax_hint(const struct reader *reader, const yaml_parser_t *parser)
{
    struct span source = reader->source;
    if (parser->error == YAML_READER_ERROR)
        return parser->problem_value >= 0x80 ? "; save the file as UTF-8" : "";
    size_t at = parser->problem_mark.index; /* in characters: with others before it, no hint */
    if (at < source.length && source.at[at] == '\t')
        return "; a tab stands here, where YAML expects blanks";
    if (parser->problem != NULL && strcmp(parser->problem, "mapping values are not allowed in this "
                                                           "context") == 0)
        return "; is a blank missing behind a colon, or the line above indented otherwise?";
    return "";
}

static void report_syntax(struct reader *reader, const yaml_parser_t *parser)
{
    const char *problem = parser->problem ? parser->problem : "the text cannot be read";
    yaml_mark_t mark = parser->problem_mark;
    if (parser->error == YAML_READER_ERROR) {
        /* Reader faults carry a byte offset and no mark. */
        struct span before = {reader->source.at, parser->problem_offset};
        if (before.length > reader->source.length)
            before.length = reader->source.length;
        struct span rest = span_from(reader->source, before.length);
        if (rest.length > 0)
            problem = arena_format(reader->arena, "%s: %s", problem, shown_first(rest).text);
        mark.line = mark.column = 0;
        while (before.length > 0) {
            size_t ended = line_break_length(before);
            mark.column = ended > 0 ? 0 : mark.column + 1;
            mark.line += ended > 0;
            before = span_from(before, ended > 0 ? ended : utf8_first(before).length);
        }
    }
    if (parser->context != NULL)
        diagnostics_add(reader->diagnostics, mark_of(reader, mark), 1,
                        "this is not YAML: %s, %s (which began in line %zu); a build file is "
                        "indented \"key: value\" lines%s",
                        problem, parser->context, parser->context_mark.line + reader->line_first,
                        syntax_hint(reader, parser));
    else
        diagnostics_add(reader->diagnostics, mark_of(reader, mark), 1,
                        "this is not YAML: %s; a build file is indented \"key: value\" lines%s",
                        problem, syntax_hint(reader, parser));
    reader->stopped = true;
}

static void read_events(struct reader *reader)
{
    yaml_parser_t parser;
    if (!yaml_parser_initialize(&parser)) /* memory is all that it can lack */
        arena_exhausted();
    yaml_parser_set_encoding(&parser, YAML_UTF8_ENCODING);
    yaml_parser_set_input_string(&parser, (const unsigned char *)reader->source.at,
                                 reader->source.length);
    bool ended = false;
    while (!ended && !reader->stopped) {
        yaml_event_t event;
        if (!yaml_parser_parse(&parser, &event)) {
            if (parser.error == YAML_MEMORY_ERROR)
                arena_exhausted();
            report_syntax(reader, &parser);
            break;
        }
        ended = event.type == YAML_STREAM_END_EVENT;
        take_event(reader, &event);
        yaml_event_delete(&event);
    }
    yaml_parser_delete(&parser);
}

/* A directive (%YAML, %TAG) stands where no document is open; the parser's time grows with the
 * square of their number. */
static bool refuse_directives(struct diagnostics *diagnostics, struct span source)
{
    bool outside = true;
    struct mark mark = {.line = 1, .column = 1};
    for (struct span rest = source; rest.length > 0; mark.line++) {
        const char *end = memchr(rest.at, '\n', rest.length);
        struct span line = {rest.at, end == NULL ? rest.length : (size_t)(end - rest.at)};
        rest = (struct span){line.at + line.length + (end != NULL),
                             rest.length - line.length - (end != NULL)};
        if (outside && line.length > 0 && *line.at == '%') {
            diagnostics_add(diagnostics, mark, 1,
                            "a YAML directive stands here; a build file needs none: expected "
                            "\"key: value\" lines");
            return true;
        }
        if (line.length >= 3 && memcmp(line.at, "...", 3) == 0)
            outside = true;
        else if (line.length > 0 && *line.at != '#' && *line.at != '\r')
            outside = false;
    }
    return false;
}

struct node *tree_read(struct arena *arena, struct span source, struct diagnostics *diagnostics)
{
    if (source.length > TREE_BYTES_MAX) {
        diagnostics_add(diagnostics, (struct mark){.line = 0}, 0,
                        "the file is larger than 1 MiB (%d bytes); a build file is a few pages "
                        "at the most",
                        TREE_BYTES_MAX);
        return NULL;
    }
    if (source.length >= 3 && memcmp(source.at, "\xEF\xBB\xBF", 3) == 0)
        source = (struct span){source.at + 3, source.length - 3};
    diagnostics->source = source;
    if (refuse_directives(diagnostics, source))
        return NULL;
    struct reader reader = {
        .arena = arena, .diagnostics = diagnostics, .source = source, .line_first = 1};
    size_t faults = diagnostics->count;
    read_events(&reader);
    if (reader.stopped || diagnostics->count > faults)
        return reader.stopped ? NULL : reader.root;
    if (reader.root == NULL)
        diagnostics_add(diagnostics, (struct mark){.line = 1, .column = 1}, 1,
                        "the file holds nothing; expected the keys vehicle, tyres and so on");
    return reader.root;
}

struct node *tree_read_value(struct arena *arena, struct span value, struct mark at,
                             struct diagnostics *diagnostics)
{
    /* Under a key, and in the column where it stands, so that libyaml's places are its own. */
    static const char key[] = "value:\n";
    size_t before = sizeof key - 1 + at.column - 1;
    char *text = arena_allocate(arena, before + value.length + 1);
    memset(text, ' ', before);
    memcpy(text, key, sizeof key - 1);
    memcpy(text + before, value.at, value.length);
    struct reader reader = {.arena = arena,
                            .diagnostics = diagnostics,
                            .source = {text, before + value.length},
                            .from = at.source};
    size_t faults = diagnostics->count;
    read_events(&reader);
    if (reader.stopped || reader.root == NULL || diagnostics->count > faults)
        return NULL;
    struct node *node = reader.root->first;
    if (node->text.length == 0 && node->kind == NODE_SCALAR)
        node->mark = at; /* nothing stands there */
    return node;
}

const struct node *tree_child(const struct node *mapping, const char *key)
{
    if (mapping == NULL || mapping->kind != NODE_MAPPING)
        return NULL;
    for (const struct node *child = mapping->first; child != NULL; child = child->next)
        if (span_is(child->key->text, key))
            return child;
    return NULL;
}
