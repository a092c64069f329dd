#include "cli/template.h"

#include <string.h>

#include "build/keys.h"

enum { DOC_AT = 46, LINE_MAX_WIDTH = 100, SETS_MAX = 64 };

/* Sets printed once are not printed again: a tyre's keys are told under `fitted`. */
struct template
{
    struct arena *arena;
    struct outbuf *out;
    const struct key_set *told[SETS_MAX];
    size_t told_count;
};

static bool is_told(struct template *template, const struct key_set *set)
{
    for (size_t i = 0; i < template->told_count; i++)
        if (template->told[i] == set)
            return true;
    if (template->told_count < SETS_MAX)
        template->told[template->told_count++] = set;
    return false;
}

/* True of a key that is always given, and of the mappings above it. */
static bool is_active(const struct key *key)
{
    for (size_t i = 0; key->set != NULL && i < key->set->count; i++)
        if (is_active(&key->set->keys[i]))
            return true;
    return key->always;
}

/* What the key means stands behind the line, or above it where there is no room. */
static void put_line(struct template *template, const char *lead, const char *line, const char *doc)
{
    struct outbuf *out = template->out;
    size_t used = strlen(lead) + strlen(line), at = used < DOC_AT ? DOC_AT : used + 1;
    bool behind = at + 2 + strlen(doc) <= LINE_MAX_WIDTH;
    bool marks_alone = !behind && strspn(lead, "#") == strlen(lead);
    outbuf_text(out, marks_alone ? "" : lead);
    if (behind) {
        outbuf_text(out, line);
        for (; used < at; used++)
            outbuf_char(out, ' ');
    }
    outbuf_text(out, "# ");
    outbuf_text(out, doc);
    outbuf_char(out, '\n');
    if (behind)
        return;
    outbuf_text(out, lead);
    outbuf_text(out, line);
    outbuf_char(out, '\n');
}

static void put_set(struct template *template, const struct key_set *set, bool instead,
                    size_t indent, bool list);

/* A key that is not given is commented out by marks in column 1, so that taking them away leaves
 * the line as it has to stand. What stands under an alternative is part of it. */
static void put_key(struct template *template, const struct key *key, bool instead, size_t indent,
                    bool dash)
{
    struct arena *arena = template->arena;
    const char *example = key->example;
    bool nested =
        key->set != NULL && (example == NULL || is_active(key)) && !is_told(template, key->set);
    const char *mark = is_active(key) ? "" : instead ? "##" : "#";
    const char *lead = arena_format(arena, "%s%*s", mark, (int)(dash ? indent - 2 : indent), "");
    const char *value = nested || example == NULL ? "" : arena_format(arena, " %s", example);
    put_line(template, lead, arena_format(arena, "%s%s:%s", dash ? "- " : "", key->name, value),
             key->doc);
    if (nested)
        put_set(template, key->set, instead, indent + 2, key->kind == KEY_MAPPING_LIST);
}

static void put_set(struct template *template, const struct key_set *set, bool instead,
                    size_t indent, bool list)
{
    for (size_t i = 0; i < set->count; i++) {
        const struct key *key = &set->keys[i];
        if (set == &build_file_keys && i > 0)
            outbuf_char(template->out, '\n');
        put_key(template, key, instead || key->instead, list ? indent + 2 : indent, list && i == 0);
    }
}

void template_write(struct arena *arena, struct outbuf *out)
{
    struct template template = {.arena = arena, .out = out};
    outbuf_text(
        out, "# A build file for tyresum. The figures are those of an invented vehicle: put your "
             "own in.\n"
             "# Take away the # of a line that you fill in, and of the lines that it stands under; "
             "leave\n"
             "# out what you do not know. ## marks an alternative: give it instead of lines above "
             "it.\n"
             "# Every quantity has its unit: mm, cm, m, in, kg, lb, kPa, bar, psi, km/h, mph, L, "
             "gal,\n"
             "# Nm, lb-ft, N/mm, lb/in, deg, %, rpm. What is then assumed, missing and not used "
             "says\n"
             "# tyresum check FILE; all keys, ranges and units: man tyresum-build.\n\n");
    put_set(&template, &build_file_keys, false, 0, false);
}
