/* Marks of what a tyre is for, which set its tolerances: snow tyres and special use tyres
 * (UN R30 and UN R54, 2.2 and 3.1; from memory). */
#include "size/designation_internal.h"

static bool ends_a_word(const char *at)
{
    return !is_letter(*at) && !is_digit(*at);
}

/* Behind M+S, M.S, M&S, M/S, M-S, M S or MS; NULL where none stands here. */
static const char *mud_and_snow_end(const char *at)
{
    if (*at++ != 'M')
        return NULL;
    while (*at == ' ')
        at++;
    if (*at != '\0' && strchr("+.&/-", *at) != NULL)
        at++;
    while (*at == ' ')
        at++;
    return at[0] == 'S' && ends_a_word(at + 1) ? at + 1 : NULL;
}

static const char *word_end(const char *at, const char *word)
{
    size_t length = strlen(word);
    return strncmp(at, word, length) == 0 && ends_a_word(at + length) ? at + length : NULL;
}

static bool take(struct scanner *scanner, const char *end, bool already, bool *in_order)
{
    *in_order = !already ||
                fault_between(scanner, scanner->at, end,
                              "a second mark of the same kind stands here; expected one at most");
    scanner->at = end;
    return true;
}

bool scan_use(struct scanner *scanner, bool *in_order)
{
    struct designation *out = scanner->out;
    if (strchr("M3PE", *scanner->at) == NULL)
        return false;
    const char *end = mud_and_snow_end(scanner->at);
    if (end != NULL) {
        bool already = out->mud_and_snow;
        out->mud_and_snow = true;
        return take(scanner, end, already, in_order);
    }
    end = word_end(scanner->at, "3PMSF");
    if (end != NULL) {
        bool already = out->severe_snow;
        out->severe_snow = true;
        return take(scanner, end, already, in_order);
    }
    for (int use = SPECIAL_USE_NONE + 1; use < SPECIAL_USE_COUNT; use++) {
        end = word_end(scanner->at, SPECIAL_USE_TEXT[use]);
        if (end == NULL)
            continue;
        bool already = out->special_use != SPECIAL_USE_NONE;
        out->special_use = (enum special_use)use;
        return take(scanner, end, already, in_order);
    }
    return false;
}
