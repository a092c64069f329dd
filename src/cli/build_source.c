#include "cli/build_source.h"

#include <string.h>
#include <unistd.h>

#include "base/diagnostics.h"
#include "base/utf8.h"
#include "cli/commands.h"
#include "cli/input.h"
#include "cli/list_file.h"
#include "cli/mistakes.h"
#include "report/measured_rules.h"
#include "yaml/build_file.h"
#include "yaml/set_path.h"

static bool ends_in(const char *text, const char *ending)
{
    size_t length = strlen(text), wanted = strlen(ending);
    return length > wanted && strcmp(text + length - wanted, ending) == 0;
}

/* A few letters and a figure begin a designation. */
static bool begins_as_size(const char *text)
{
    size_t at = strspn(text, " \t\"'(");
    size_t letters = 0;
    while (is_letter(text[at + letters]))
        letters++;
    at += letters;
    return letters < 4 && is_digit(text[at + strspn(text + at, " ")]);
}

bool operand_is_file(const char *operand)
{
    static const char *const endings[] = {".yaml", ".yml", ".json"};
    for (size_t i = 0; i < sizeof endings / sizeof endings[0]; i++)
        if (ends_in(operand, endings[i]))
            return true;
    return strcmp(operand, "-") == 0 || !begins_as_size(operand) || access(operand, F_OK) == 0;
}

const char *build_source_name(const struct build_source *source)
{
    return source->path == NULL ? "the arguments" : input_name(source->path);
}

static struct node *text_node(struct arena *arena, const char *text)
{
    return tree_node(arena, NODE_SCALAR, span_of(text), (struct mark){.line = 0});
}

static struct node *add_mapping(struct arena *arena, struct node *parent, const char *key,
                                enum node_kind kind)
{
    struct node *node = tree_node(arena, kind, (struct span){NULL, 0}, (struct mark){.line = 0});
    tree_append(parent, key == NULL ? NULL : text_node(arena, key), node);
    return node;
}

static void add_size(struct arena *arena, struct diagnostics *diagnostics, struct node *tyre,
                     const char *text, size_t number)
{
    struct source_text source = {arena_format(arena, "argument %zu", number), span_of(text), false};
    struct mark mark = {1, 1, diagnostics_source(diagnostics, source)};
    struct node *size = tree_node(arena, NODE_SCALAR, span_of(text), mark);
    size->as_written = true;
    tree_append(tyre, text_node(arena, "size"), size);
}

/* The build that designations make: the fitted tyre, and the options behind it. */
static struct node *tree_of_operands(struct arena *arena, const struct options *options,
                                     struct diagnostics *diagnostics)
{
    struct node *root =
        tree_node(arena, NODE_MAPPING, (struct span){NULL, 0}, (struct mark){.line = 0});
    struct node *tyres = add_mapping(arena, root, "tyres", NODE_MAPPING);
    add_size(arena, diagnostics, add_mapping(arena, tyres, "fitted", NODE_MAPPING),
             operand(options, 0), 1);
    if (operand_count(options) == 1)
        return root;
    struct node *list = add_mapping(arena, tyres, "options", NODE_SEQUENCE);
    for (size_t i = 1; i < operand_count(options); i++) {
        struct node *option = add_mapping(arena, list, NULL, NODE_MAPPING);
        tree_append(option, text_node(arena, "name"),
                    text_node(arena, arena_format(arena, "option %zu", i)));
        add_size(arena, diagnostics, option, operand(options, i), i + 1);
    }
    return root;
}

/* Puts "PATH=VALUE" in; the value may be another text than the one behind the path. */
static void put_in(struct arena *arena, struct node *root, struct span argument,
                   struct each_value value, size_t source, struct diagnostics *diagnostics)
{
    struct mark mark = {1, 1, source}, at = {1, value.column, source};
    struct span path_text = {argument.at, set_path_length(argument)};
    struct set_path path;
    if (holds_control_character(argument)) {
        diagnostics_add(diagnostics, mark, 1,
                        "a line end or another control character stands here; expected "
                        "PATH=VALUE in one line");
        return;
    }
    if (!set_path_find(arena, root, path_text, mark, diagnostics, &path))
        return;
    struct node *node =
        value.text.length > 0 && value.text.at[0] == '@'
            ? list_file_read(arena, path.steps[path.count - 1].key, value.text, at, diagnostics)
            : tree_read_value(arena, value.text, at, diagnostics);
    if (node != NULL)
        set_path_put(arena, root, &path, node, mark, diagnostics);
}

static struct each_value value_behind_path(struct span argument)
{
    size_t start = set_path_length(argument) + 1;
    struct span path = {argument.at, start};
    return (struct each_value){{argument.at + start, argument.length - start},
                               count_characters(path) + 1};
}

static void put_all_in(struct arena *arena, struct node *root, const struct build_source *source,
                       struct diagnostics *diagnostics)
{
    const struct options *options = source->options;
    for (size_t i = 0; i < options->set.count; i++) {
        struct span text = span_of(options->set.items[i]);
        struct source_text from = {arena_format(arena, "--set %zu", i + 1), text, true};
        put_in(arena, root, text, value_behind_path(text), diagnostics_source(diagnostics, from),
               diagnostics);
    }
    for (size_t i = 0; i < options->each.count; i++) {
        struct span text = span_of(options->each.items[i]);
        struct source_text from = {arena_format(arena, "--each %zu", i + 1), text, true};
        put_in(arena, root, text, source->each[i], diagnostics_source(diagnostics, from),
               diagnostics);
    }
}

struct node *build_source_read(struct arena *arena, const struct build_source *source,
                               struct specification *out)
{
    struct diagnostics *diagnostics = arena_allocate(arena, sizeof *diagnostics);
    diagnostics->arena = arena;
    diagnostics->source_name = build_source_name(source);
    specification_clear(out);
    struct node *root = source->path == NULL ? tree_of_operands(arena, source->options, diagnostics)
                                             : tree_read(arena, source->text, diagnostics);
    if (root != NULL && diagnostics->count == 0)
        put_all_in(arena, root, source, diagnostics);
    if (root != NULL && diagnostics->count == 0) {
        build_file_walk(arena, root, diagnostics, out);
        measured_rules_check(out, diagnostics);
    }
    if (diagnostics->count == 0) {
        if (source->path == NULL && source->options->set.count + source->options->each.count == 0)
            out->given = NULL; /* designations alone tell of nothing else */
        return root;
    }
    diagnostics_print(diagnostics);
    if (source->path == NULL)
        hint_at_arguments(source->options);
    return NULL;
}

void build_source_fault(struct arena *arena, const struct build_source *source, struct mark place,
                        const char *message)
{
    struct diagnostics diagnostics = {
        .arena = arena, .source_name = build_source_name(source), .source = source->text};
    if (place.source > 0) /* of the command line */
        place = (struct mark){0, 0, 0};
    diagnostics_add(&diagnostics, place, 1, "%s", message);
    diagnostics_print(&diagnostics);
}
