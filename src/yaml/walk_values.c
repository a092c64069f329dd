#include "yaml/walk_values.h"

#include <stdarg.h>

#include "base/nearest.h"
#include "base/utf8.h"
#include "size/designation_loose.h"
#include "size/designation_suggest.h"
#include "size/quantity_text.h"
#include "build/specification.h"

enum { LIST_ITEMS_MAX = 10000 };

void walk_fault(struct walk *walk, const struct node *node, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    const char *message = arena_format_with(walk->arena, format, arguments);
    va_end(arguments);
    size_t length = node->kind == NODE_SCALAR ? count_characters(node->text) : 1;
    diagnostics_add(walk->diagnostics, node->mark, length, "%s", message);
}

const char *walk_key_name(struct walk *walk, const struct node *node)
{
    if (node->key == NULL)
        return "this place";
    return arena_format(walk->arena, "the key \"%s\"", quotable(walk->arena, node->key->text));
}

/* A scalar with something in it; otherwise the fault is added. `example` says the right form. */
static bool is_filled_scalar(struct walk *walk, const struct node *node, const char *example)
{
    if (node->kind != NODE_SCALAR) {
        walk_fault(walk, node, "%s expects one value and not a %s; write it such as %s",
                   walk_key_name(walk, node), node->kind == NODE_MAPPING ? "mapping" : "list",
                   example);
        return false;
    }
    if (node->text.length == 0) {
        walk_fault(walk, node, "value missing: %s expects a value such as %s",
                   walk_key_name(walk, node), example);
        return false;
    }
    return true;
}

static const char *limit_text(struct walk *walk, enum unit_id unit, double si)
{
    double value = unit_from_si(unit, si);
    return arena_format(walk->arena, fabs(value) < 1e4 ? "%.4g%s%s" : "%.6g%s%s", value,
                        unit == UNIT_BARE ? "" : " ", unit_table[unit].name);
}

/* unit: the one that the value was written in. */
static bool within(struct walk *walk, const struct key *key, enum unit_id unit,
                   const struct node *node, double value)
{
    bool limited = key->min != 0 || key->max != 0;
    if (!limited || (!clearly_above(key->min, value) && !clearly_above(value, key->max)))
        return true;
    walk_fault(walk, node, "\"%s\" is out of range for \"%s\"; expected %s to %s",
               quotable(walk->arena, node->text), key->name, limit_text(walk, unit, key->min),
               limit_text(walk, unit, key->max));
    return false;
}

/* The place of a character of a scalar; its beginning where the file has it otherwise than it is
 * read (folded, or with escapes). */
static struct mark mark_within(const struct node *node, size_t column)
{
    struct mark mark = node->mark;
    if (node->as_written)
        mark.column += column - 1 + node->quoted;
    return mark;
}

static bool read_quantity_in(struct walk *walk, const struct key *key, enum unit_kind kind,
                             const struct node *node, double *value, enum unit_id *unit)
{
    if (!is_filled_scalar(walk, node, unit_kind_example(kind)))
        return false;
    struct quantity quantity;
    struct quantity_error error;
    if (!quantity_parse(node->text, kind, &quantity, &error)) {
        diagnostics_add(walk->diagnostics, mark_within(node, error.column), error.length,
                        "%s (key \"%s\")", error.message, key->name);
        return false;
    }
    if (!within(walk, key, quantity.unit, node, quantity.si))
        return false;
    *value = quantity.si;
    *unit = quantity.unit;
    return true;
}

static bool read_quantity(struct walk *walk, const struct key *key, enum unit_kind kind,
                          const struct node *node, double *value)
{
    enum unit_id unit;
    return read_quantity_in(walk, key, kind, node, value, &unit);
}

static void read_pair(struct walk *walk, const struct key *key, const struct node *node,
                      void *field)
{
    struct axle_pair pair = {UNKNOWN, UNKNOWN};
    if (node->kind != NODE_MAPPING) {
        if (read_quantity(walk, key, key->unit, node, &pair.front))
            pair.rear = pair.front;
        memcpy(field, &pair, sizeof pair);
        return;
    }
    if (node->first == NULL)
        walk_fault(walk, node, "%s has no value; expected one value or {front: ..., rear: ...}",
                   walk_key_name(walk, node));
    for (const struct node *child = node->first; child != NULL; child = child->next) {
        if (span_is(child->key->text, "front"))
            read_quantity(walk, key, key->unit, child, &pair.front);
        else if (span_is(child->key->text, "rear"))
            read_quantity(walk, key, key->unit, child, &pair.rear);
        else
            walk_fault(walk, child->key,
                       "\"%s\" is not an axle; \"%s\" takes one value or {front: ..., rear: ...}",
                       quotable(walk->arena, child->key->text), key->name);
    }
    memcpy(field, &pair, sizeof pair);
}

static void read_bound(struct walk *walk, const struct key *key, const struct node *node,
                       void *field)
{
    struct bound bound = {UNKNOWN, key->unit};
    if (node->kind == NODE_SCALAR && node->text.length > 0 &&
        node->text.at[node->text.length - 1] == '%')
        bound.kind = key->second_unit;
    read_quantity(walk, key, bound.kind, node, &bound.value);
    memcpy(field, &bound, sizeof bound);
}

static const char *choice_list(struct walk *walk, const char *const *choices)
{
    const char *list = "";
    for (size_t i = 0; choices[i] != NULL; i++)
        list = arena_format(walk->arena, "%s%s%s", list, i > 0 ? ", " : "", choices[i]);
    return list;
}

static int find_choice(struct walk *walk, const struct key *key, const struct node *node,
                       const char *also)
{
    if (!is_filled_scalar(walk, node, key->choices[0]))
        return CHOICE_NONE;
    for (int i = 0; key->choices[i] != NULL; i++)
        if (span_is(node->text, key->choices[i]))
            return i;
    struct nearest nearest = nearest_start(node->text);
    for (int i = 0; key->choices[i] != NULL; i++)
        nearest_try(&nearest, key->choices[i]);
    const char *near = nearest_found(&nearest);
    walk_fault(walk, node, "\"%s\" is not a choice for \"%s\"; expected one of: %s%s%s%s%s",
               quotable(walk->arena, node->text), key->name, choice_list(walk, key->choices), also,
               near ? " (did you mean \"" : "", near ? near : "", near ? "\"?)" : "");
    return CHOICE_NONE;
}

static void read_choice_or_value(struct walk *walk, const struct key *key, const struct node *node,
                                 void *field)
{
    struct choice_or_value result = {CHOICE_NONE, UNKNOWN};
    bool number = node->kind == NODE_SCALAR && node->text.length > 0 &&
                  (is_digit(node->text.at[0]) || node->text.at[0] == '-' ||
                   node->text.at[0] == '+' || node->text.at[0] == '.');
    if (number)
        read_quantity(walk, key, key->unit, node, &result.value);
    else
        result.choice =
            find_choice(walk, key, node,
                        arena_format(walk->arena, " or %s such as %s", unit_kind_name(key->unit),
                                     unit_kind_example(key->unit)));
    memcpy(field, &result, sizeof result);
}

/* Names are printed, on a terminal too, and a NUL would cut them short. */
static bool is_one_line(struct walk *walk, const struct node *node, struct span text)
{
    if (holds_control_character(text))
        walk_fault(walk, node,
                   "\"%s\" holds a line end or another control character; expected a text in "
                   "one line",
                   quotable(walk->arena, text));
    return !holds_control_character(text);
}

static const char *read_text(struct walk *walk, const struct node *node)
{
    if (!is_filled_scalar(walk, node, "a name") || !is_one_line(walk, node, node->text))
        return NULL;
    return arena_copy(walk->arena, node->text);
}

static void read_letter(struct walk *walk, const struct key *key, const struct node *node,
                        char *field)
{
    if (!is_filled_scalar(walk, node, "E"))
        return;
    char letter = upper_case(node->text.at[0]);
    if (node->text.length == 1 && letter != '\0' && strchr(key->choices[0], letter) != NULL)
        *field = letter;
    else
        walk_fault(walk, node, "\"%s\" is not a letter for \"%s\"; expected one of %s",
                   quotable(walk->arena, node->text), key->name, key->choices[0]);
}

static void read_boolean(struct walk *walk, const struct key *key, const struct node *node,
                         int *field)
{
    if (!is_filled_scalar(walk, node, arena_format(walk->arena, "true (%s)", key->doc)))
        return;
    if (span_is(node->text, "true") || span_is(node->text, "yes"))
        *field = 1;
    else if (span_is(node->text, "false") || span_is(node->text, "no"))
        *field = 0;
    else
        walk_fault(walk, node, "\"%s\" is neither true nor false, which \"%s\" expects",
                   quotable(walk->arena, node->text), key->name);
}

static void read_designation(struct walk *walk, const struct node *node, struct tyre *tyre)
{
    if (!is_filled_scalar(walk, node, "205/55R16 91V"))
        return;
    struct designation_error error;
    struct designation size; /* what is not read must not spoil one that was */
    char taken[TAKEN_SIZE];
    if (designation_read(node->text, &size, &error, taken)) {
        tyre->size = size;
        tyre->size_given = true;
        tyre->taken = *taken == '\0' ? NULL : arena_copy(walk->arena, span_of(taken));
        return;
    }
    struct mark mark = mark_within(node, error.column);
    char near[DESIGNATION_CANONICAL_SIZE];
    bool found = designation_suggest(node->text, near);
    diagnostics_add(walk->diagnostics, mark, error.length, "size \"%s\": %s%s%s%s",
                    quotable(walk->arena, node->text), error.message,
                    found ? " (did you mean \"" : "", found ? near : "", found ? "\"?)" : "");
}

/* A list node, not longer than any real list; otherwise the fault is added. */
static bool is_list(struct walk *walk, const struct node *node, const char *example)
{
    if (node->kind != NODE_SEQUENCE) {
        walk_fault(walk, node, "%s expects a list, such as %s", walk_key_name(walk, node), example);
        return false;
    }
    if (node->count > LIST_ITEMS_MAX) {
        walk_fault(walk, node, "%s has %zu items; at most %d are read", walk_key_name(walk, node),
                   node->count, LIST_ITEMS_MAX);
        return false;
    }
    return true;
}

/* Room for the items of a list, which begins anew where its key stands twice. */
static void *list_room(struct walk *walk, const struct node *node, size_t *count, size_t size)
{
    *count = 0;
    return arena_allocate_array(walk->arena, node->count, size);
}

static void read_number_list(struct walk *walk, const struct key *key, const struct node *node,
                             struct number_list *list)
{
    if (!is_list(walk, node, key->list_form != NULL ? key->list_form : key->example))
        return;
    list->items = list_room(walk, node, &list->count, sizeof *list->items);
    for (const struct node *child = node->first; child != NULL; child = child->next)
        if (read_quantity(walk, key, key->unit, child, &list->items[list->count]))
            list->count++;
}

static void read_numbers(struct walk *walk, const struct key *key, const struct node *node,
                         struct number_list *list)
{
    if (node->kind == NODE_SEQUENCE) {
        read_number_list(walk, key, node, list);
        return;
    }
    list->items = arena_allocate_array(walk->arena, 1, sizeof *list->items);
    list->count = read_quantity(walk, key, key->unit, node, list->items);
}

static void read_pair_list(struct walk *walk, const struct key *key, const struct node *node,
                           struct pair_list *list)
{
    const char *example = key->list_form;
    if (example == NULL)
        example = arena_format(walk->arena, "[[%s, %s], ...]", unit_kind_example(key->unit),
                               unit_kind_example(key->second_unit));
    if (!is_list(walk, node, example))
        return;
    list->items = list_room(walk, node, &list->count, sizeof *list->items);
    for (const struct node *child = node->first; child != NULL; child = child->next) {
        if (child->kind != NODE_SEQUENCE || child->count != 2) {
            walk_fault(walk, child, "each item of \"%s\" is a pair; expected %s", key->name,
                       example);
            continue;
        }
        struct value_pair pair = {.mark = child->mark};
        bool read =
            read_quantity_in(walk, key, key->unit, child->first, &pair.first, &pair.first_unit);
        read = read_quantity_in(walk, key, key->second_unit, child->last, &pair.second,
                                &pair.second_unit) &&
               read;
        if (read)
            list->items[list->count++] = pair;
    }
}

static void read_triple_list(struct walk *walk, const struct key *key, const struct node *node,
                             struct triple_list *list)
{
    if (!is_list(walk, node, key->list_form))
        return;
    list->items = list_room(walk, node, &list->count, sizeof *list->items);
    for (const struct node *child = node->first; child != NULL; child = child->next) {
        if (child->kind != NODE_SEQUENCE || child->count != 3) {
            walk_fault(walk, child, "each item of \"%s\" has three values; expected %s", key->name,
                       key->list_form);
            continue;
        }
        const struct node *second = child->first->next;
        struct value_triple triple = {.mark = child->mark};
        bool read = read_quantity(walk, key, key->unit, child->first, &triple.first);
        read = read_quantity(walk, key, key->second_unit, second, &triple.second) && read;
        read = read_quantity(walk, key, key->third_unit, child->last, &triple.third) && read;
        if (read)
            list->items[list->count++] = triple;
    }
}

/* All of them, also what is at fault as a text: the rules say what is not known. */
static void take_texts(struct walk *walk, const struct node *node, struct text_list *list)
{
    list->items = list_room(walk, node, &list->count, sizeof *list->items);
    list->marks = arena_allocate_array(walk->arena, node->count, sizeof *list->marks);
    for (const struct node *child = node->first; child != NULL; child = child->next) {
        bool scalar = child->kind == NODE_SCALAR;
        list->items[list->count] = scalar ? arena_copy(walk->arena, child->text) : "";
        list->marks[list->count++] = child->mark;
    }
}

static void check_texts(struct walk *walk, const struct key *key, const struct node *node)
{
    if (!is_list(walk, node, key->example))
        return;
    for (const struct node *child = node->first; child != NULL; child = child->next)
        if (key->choices == NULL || find_choice(walk, key, child, "") != CHOICE_NONE)
            read_text(walk, child);
}

static void read_states(struct walk *walk, const struct node *node, struct state_list *list)
{
    if (node->kind != NODE_MAPPING) {
        walk_fault(walk, node,
                   "%s expects names with what is aboard, such as {touring: all, empty: []}",
                   walk_key_name(walk, node));
        return;
    }
    list->items = list_room(walk, node, &list->count, sizeof *list->items);
    static const struct key items = {.name = "states", .example = "[drawers]"};
    for (const struct node *child = node->first; child != NULL; child = child->next) {
        if (!is_one_line(walk, child->key, child->key->text))
            continue;
        struct state *state = &list->items[list->count++];
        state->name = arena_copy(walk->arena, child->key->text);
        take_texts(walk, child, &state->items);
        if (child->kind == NODE_SCALAR && span_is(child->text, "all"))
            state->all = true;
        else if (child->kind == NODE_SEQUENCE)
            check_texts(walk, &items, child);
        else
            walk_fault(walk, child,
                       "the state \"%s\" expects `all` or a list of items, such as [drawers]",
                       quotable(walk->arena, child->key->text));
    }
}

void walk_value(struct walk *walk, const struct key *key, const struct node *node, void *field)
{
    switch (key->kind) {
    case KEY_QUANTITY:
        read_quantity(walk, key, key->unit, node, field);
        break;
    case KEY_QUANTITY_PAIR:
        read_pair(walk, key, node, field);
        break;
    case KEY_BOUND:
        read_bound(walk, key, node, field);
        break;
    case KEY_TEXT:
        *(const char **)field = read_text(walk, node);
        break;
    case KEY_LETTER:
        read_letter(walk, key, node, field);
        break;
    case KEY_CHOICE:
        *(int *)field = find_choice(walk, key, node, "");
        break;
    case KEY_BOOLEAN:
        read_boolean(walk, key, node, field);
        break;
    case KEY_CHOICE_OR_VALUE:
        read_choice_or_value(walk, key, node, field);
        break;
    case KEY_DESIGNATION:
        read_designation(walk, node, field);
        break;
    case KEY_NUMBER_LIST:
        read_number_list(walk, key, node, field);
        break;
    case KEY_NUMBERS:
        read_numbers(walk, key, node, field);
        break;
    case KEY_PAIR_LIST:
        read_pair_list(walk, key, node, field);
        break;
    case KEY_TRIPLE_LIST:
        read_triple_list(walk, key, node, field);
        break;
    case KEY_TEXT_LIST:
        take_texts(walk, node, field);
        check_texts(walk, key, node);
        break;
    case KEY_STATES:
        read_states(walk, node, field);
        break;
    case KEY_MAPPING:
    case KEY_MAPPING_LIST: /* read by walk.c */
        break;
    }
}
