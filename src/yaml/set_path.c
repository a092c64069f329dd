#include "yaml/set_path.h"

#include <stdlib.h>

#include "base/letters.h"
#include "base/nearest.h"
#include "base/utf8.h"
#include "yaml/one_line.h"

enum { ZZ = 26 * 27 }; /* the last of the letters that an option is written by */

/* A step of the path as it was written. */
struct written {
    struct span text; /* without its quotes */
    bool quoted;
    struct nearest nearest; /* of all names */
    bool known;             /* it is one of them */
};

struct finder {
    struct arena *arena;
    struct written written[PATH_STEPS_MAX];
    size_t written_count;
    struct set_path now;      /* where the search stands */
    struct set_path found[2]; /* of the shortest */
    size_t found_count;
    struct set_path past; /* what would be meant, but that the list has no such item */
};

size_t set_path_length(struct span text)
{
    char quote = '\0';
    size_t i = 0;
    for (; i < text.length && (quote != '\0' || text.at[i] != '='); i++)
        if (text.at[i] == quote)
            quote = '\0';
        else if (quote == '\0' && (text.at[i] == '"' || text.at[i] == '\''))
            quote = text.at[i];
    return i;
}

static bool has_letters(const struct path_step *list)
{
    return list->key != NULL && span_is(span_of(list->key->name), "options");
}

/* "tyres.options.A.wheel.inset" */
static const char *path_text(struct arena *arena, const struct set_path *path)
{
    const char *text = "";
    for (size_t i = 0; i < path->count; i++) {
        const struct path_step *step = &path->steps[i];
        const char *dot = i > 0 ? "." : "";
        if (step->name.length > 0)
            text = arena_format(arena, "%s%s%s", text, dot, quotable(arena, step->name));
        else if (has_letters(step - 1))
            text = arena_format(arena, "%s%s%s", text, dot, letters_of_number(arena, step->number));
        else
            text = arena_format(arena, "%s%s%zu", text, dot, step->number);
    }
    return text;
}

static bool is_number(struct span text)
{
    size_t digits = 0;
    while (digits < text.length && is_digit(text.at[digits]))
        digits++;
    return digits == text.length && digits > 0 && digits < 9;
}

static bool same_span(struct span a, struct span b)
{
    return a.length == b.length && a.length > 0 && memcmp(a.at, b.at, a.length) == 0;
}

/* Whether what was written means that item of its list: by letter, then by number, then by name. */
static bool means_item(const struct written *written, const struct path_step *item,
                       bool list_written)
{
    struct span text = written->text;
    size_t letters = !written->quoted && has_letters(item - 1) ? number_of_letters(text, ZZ) : 0;
    bool lettered = letters > 0, numbered = !written->quoted && is_number(text);
    size_t number = lettered ? letters : numbered ? strtoul(text.at, NULL, 10) : 0;
    if (item->number == 0)
        return list_written || lettered;
    return number > 0 && number <= item->of ? number == item->number
                                            : same_span(text, item->called);
}

/* Whether the place where the search stands ends as it was written. */
static bool ends_so(const struct finder *finder)
{
    size_t skipped = finder->now.count - finder->written_count;
    if (finder->now.count < finder->written_count)
        return false;
    for (size_t i = 0; i < finder->now.count; i++) {
        const struct path_step *step = &finder->now.steps[i];
        if (i < skipped && step->name.length == 0 && step->number == 0)
            return false;
        if (i < skipped)
            continue;
        const struct written *written = &finder->written[i - skipped];
        bool number_first = i == skipped && !written->quoted && is_number(written->text);
        if (step->name.length > 0 ? !same_span(step->name, written->text)
                                  : number_first || !means_item(written, step, i > skipped))
            return false;
    }
    return true;
}

static bool is_past(const struct set_path *path)
{
    for (size_t i = 0; i < path->count; i++)
        if (path->steps[i].name.length == 0 && path->steps[i].number == 0)
            return true;
    return false;
}

static void try_place(struct finder *finder)
{
    if (!ends_so(finder))
        return;
    if (is_past(&finder->now)) {
        if (finder->past.count == 0 || finder->now.count < finder->past.count)
            finder->past = finder->now;
        return;
    }
    if (finder->found_count > 0 && finder->now.count > finder->found[0].count)
        return;
    if (finder->found_count > 0 && finder->now.count < finder->found[0].count)
        finder->found_count = 0;
    if (finder->found_count < 2)
        finder->found[finder->found_count] = finder->now;
    finder->found_count++;
}

static void push(struct finder *finder, struct path_step step)
{
    finder->now.steps[finder->now.count++] = step;
    for (size_t i = 0; i < finder->written_count && step.key != NULL; i++) {
        nearest_try(&finder->written[i].nearest, step.key->name);
        finder->written[i].known =
            finder->written[i].known || same_span(step.name, finder->written[i].text);
    }
}

static void search_set(struct finder *finder, const struct key_set *set, const struct node *node);

static size_t item_count(const struct node *list)
{
    return list == NULL                  ? 0
           : list->kind == NODE_SEQUENCE ? list->count
                                         : list->kind == NODE_MAPPING; /* one alone */
}

/* The items of a list and one that it does not have; set: of what they are mappings, or NULL. */
static void search_items(struct finder *finder, const struct key_set *set, const struct node *list)
{
    const struct node *item = list == NULL ? NULL : list->kind == NODE_MAPPING ? list : list->first;
    size_t count = item_count(list);
    for (size_t i = 1; i <= count + 1; i++) {
        const struct node *name = tree_child(item, "name");
        name = name == NULL ? tree_child(item, "item") : name;
        push(finder, (struct path_step){.number = i <= count ? i : 0,
                                        .of = count,
                                        .called = name != NULL && name->kind == NODE_SCALAR
                                                      ? name->text
                                                      : (struct span){0}});
        try_place(finder);
        if (set != NULL)
            search_set(finder, set, item);
        else if (item != NULL && item->kind == NODE_SEQUENCE)
            search_items(finder, NULL, item);
        finder->now.count--;
        item = item == NULL || i == count ? NULL : item->next;
    }
}

static void search_names(struct finder *finder, const char *const *names)
{
    for (; *names != NULL; names++) {
        push(finder, (struct path_step){.name = span_of(*names)});
        try_place(finder);
        finder->now.count--;
    }
}

/* States are called what the file likes: those that it has, or a new one behind `states`. */
static void search_states(struct finder *finder, const struct node *states)
{
    if (finder->written_count < 2)
        return;
    struct span new = finder->written[finder->written_count - 1].text;
    const struct node *child =
        states != NULL && states->kind == NODE_MAPPING ? states->first : NULL;
    for (; child != NULL; child = child->next) {
        push(finder, (struct path_step){.name = child->key->text});
        try_place(finder);
        search_items(finder, NULL, child);
        finder->now.count--;
        if (same_span(new, child->key->text))
            new.length = 0;
    }
    push(finder, (struct path_step){.name = new});
    if (new.length > 0)
        try_place(finder);
    finder->now.count--;
}

static void search_key(struct finder *finder, const struct key *key, const struct node *node)
{
    static const char *const axles[] = {"front", "rear", NULL};
    try_place(finder);
    switch (key->kind) {
    case KEY_MAPPING:
        search_set(finder, key->set, node);
        break;
    case KEY_MAPPING_LIST:
        search_items(finder, key->set, node);
        if (node == NULL || node->kind == NODE_MAPPING) /* one alone needs no list around it */
            search_set(finder, key->set, node);
        break;
    case KEY_NUMBER_LIST:
    case KEY_NUMBERS:
    case KEY_PAIR_LIST:
    case KEY_TRIPLE_LIST:
    case KEY_TEXT_LIST:
        search_items(finder, NULL, node);
        break;
    case KEY_QUANTITY_PAIR:
        search_names(finder, axles);
        break;
    case KEY_STATES:
        search_states(finder, node);
        break;
    default:
        break;
    }
}

static void search_set(struct finder *finder, const struct key_set *set, const struct node *node)
{
    for (size_t i = 0; i < set->count && finder->now.count + 2 < PATH_STEPS_MAX; i++) {
        const struct key *key = &set->keys[i];
        push(finder, (struct path_step){.name = span_of(key->name), .key = key});
        search_key(finder, key, tree_child(node, key->name));
        finder->now.count--;
    }
}

/* Takes the path apart. False where it is none. */
static bool split(struct finder *finder, struct span text)
{
    size_t at = 0;
    for (bool more = true; more; at++) {
        char quote = at < text.length ? text.at[at] : '\0';
        bool quoted = quote == '"' || quote == '\'';
        size_t start = at + quoted, end = start;
        while (end < text.length && text.at[end] != (quoted ? quote : '.'))
            end++;
        at = end + quoted;
        more = at < text.length;
        if (end == start || at > text.length || (more && text.at[at] != '.') ||
            finder->written_count == PATH_STEPS_MAX)
            return false;
        struct span step = {text.at + start, end - start};
        finder->written[finder->written_count++] =
            (struct written){.text = step, .quoted = quoted, .nearest = nearest_start(step)};
    }
    return true;
}

/* Nothing ends so: which step is at fault, and what may be meant. */
static const char *nothing_found(struct finder *finder, const struct node *root, const char *text)
{
    struct arena *arena = finder->arena;
    if (finder->past.count > 0) {
        struct set_path list = finder->past;
        while (!is_past(&(struct set_path){{list.steps[list.count - 1]}, 1}))
            list.count--;
        size_t count = list.steps[--list.count].of;
        const char *of = path_text(arena, &list);
        if (count == 0)
            return arena_format(arena, "%s has no items that \"%s\" could mean", of, text);
        bool letters = has_letters(&list.steps[list.count - 1]);
        const char *first = letters ? "A" : "1";
        const char *last =
            letters ? letters_of_number(arena, count) : arena_format(arena, "%zu", count);
        bool one = count == 1;
        return arena_format(arena, "%s has %zu item%s; expected %s%s%s, and not \"%s\"", of, count,
                            one ? "" : "s", first, one ? "" : " to ", one ? "" : last, text);
    }
    for (size_t i = 0; i < finder->written_count; i++) {
        const struct written *written = &finder->written[i];
        const char *near = nearest_found(&written->nearest);
        if (written->known || is_number(written->text))
            continue;
        return arena_format(arena, "no key of a build file is called \"%s\"; %s%s%s",
                            quotable(arena, written->text),
                            near ? "did you mean \"" : "`tyresum --help keys` lists them",
                            near ? near : "", near ? "\"?" : "");
    }
    finder->written[0] = finder->written[finder->written_count - 1];
    finder->written_count = 1;
    search_set(finder, &build_file_keys, root);
    return arena_format(arena, "no place in a build file ends in \"%s\"; %s%s%s", text,
                        finder->found_count > 0 ? "did you mean \"" : "",
                        finder->found_count > 0 ? path_text(arena, &finder->found[0])
                                                : "`tyresum --help keys` lists them",
                        finder->found_count > 0 ? "\"?" : "");
}

bool set_path_find(struct arena *arena, const struct node *root, struct span text, struct mark mark,
                   struct diagnostics *diagnostics, struct set_path *out)
{
    struct finder *finder = arena_allocate(arena, sizeof *finder);
    finder->arena = arena;
    size_t length = count_characters(text);
    const char *shown = quotable(arena, text);
    if (!split(finder, text)) {
        diagnostics_add(diagnostics, mark, length,
                        "\"%s\" is no path; expected keys with dots between them, such as "
                        "suspension.front.lift, and a name with dots in quotes",
                        shown);
        return false;
    }
    search_set(finder, &build_file_keys, root);
    if (finder->found_count == 1) {
        *out = finder->found[0];
        return true;
    }
    if (finder->found_count == 0)
        diagnostics_add(diagnostics, mark, length, "%s", nothing_found(finder, root, shown));
    else
        diagnostics_add(diagnostics, mark, length,
                        "\"%s\" may be %s or %s; write as much of the path as tells them apart",
                        shown, path_text(arena, &finder->found[0]),
                        path_text(arena, &finder->found[1]));
    return false;
}

static bool is_nothing(const struct node *node)
{
    return node->kind == NODE_SCALAR && node->text.length == 0 && !node->quoted;
}

/* What the step leads to, made where there is nothing yet. NULL where the file has something else
 * in its place. last: a value is wanted, which may be anything. */
static struct node *step_into(struct arena *arena, struct node *node, const struct path_step *step,
                              struct mark mark)
{
    if (step->name.length == 0) {
        if (node->kind == NODE_MAPPING)
            return node;
        struct node *item = node->kind == NODE_SEQUENCE ? node->first : NULL;
        for (size_t i = 1; item != NULL && i < step->number; i++)
            item = item->next;
        return item;
    }
    if (is_nothing(node)) /* a key without a value is given what it has in it */
        node->kind = NODE_MAPPING;
    if (node->kind != NODE_MAPPING)
        return NULL;
    for (struct node *child = node->first; child != NULL; child = child->next)
        if (same_span(child->key->text, step->name))
            return child;
    struct node *made = tree_node(arena, NODE_SCALAR, (struct span){"", 0}, mark);
    tree_append(node, tree_node(arena, NODE_SCALAR, step->name, mark), made);
    return made;
}

/* One value for both axles becomes one for each, so that one of them can be another. */
static void part_axles(struct arena *arena, struct node *node)
{
    static const char *const axles[] = {"front", "rear"};
    struct node both = *node;
    *node = *tree_node(arena, NODE_MAPPING, (struct span){NULL, 0}, both.mark);
    node->key = both.key;
    node->next = both.next;
    for (size_t i = 0; i < 2; i++) {
        struct node *value = tree_node(arena, NODE_SCALAR, both.text, both.mark);
        value->quoted = both.quoted;
        value->as_written = both.as_written;
        tree_append(node, tree_node(arena, NODE_SCALAR, span_of(axles[i]), both.mark), value);
    }
}

/* The place of a value within that came from the command line; source 0: none did. */
static struct mark given_within(const struct node *node)
{
    struct mark mark = node->mark;
    for (const struct node *child = node->first; mark.source == 0 && child != NULL;
         child = child->next)
        mark = given_within(child);
    return mark;
}

bool set_path_put(struct arena *arena, struct node *root, const struct set_path *path,
                  struct node *value, struct mark mark, struct diagnostics *diagnostics)
{
    struct node *node = root;
    for (size_t i = 0; i < path->count && node != NULL; i++) {
        const struct key *key = i > 0 ? path->steps[i - 1].key : NULL;
        if (key != NULL && key->kind == KEY_QUANTITY_PAIR && node->kind == NODE_SCALAR &&
            !is_nothing(node))
            part_axles(arena, node);
        if (key != NULL && key->kind == KEY_MAPPING)
            one_lines_expand(arena, key->set, node);
        node = step_into(arena, node, &path->steps[i], mark);
    }
    if (node == NULL)
        return true;
    struct mark before = given_within(node);
    if (before.source != 0 && before.source != mark.source) {
        diagnostics_add(diagnostics, mark, 1, "%s is given by %s too; expected it once",
                        path_text(arena, path), diagnostics->others[before.source - 1].name);
        return false;
    }
    struct node *key = node->key, *next = node->next;
    *node = *value;
    node->key = key;
    node->next = next;
    return true;
}
