/* What stands behind the rim code: suffix, capacity class, load range, ply rating. */
#include "size/designation_internal.h"

#define MARK_EXPECTED                                                                              \
    "a service description such as 91V, C, CP, LT, ST, NHS, XL, SL, HL, LL, LR E, 10PR, M+S, "     \
    "POR, or the end"

int load_range_ply_rating(char letter)
{
    static const char LETTERS[] = "ABCDEFGHJLMN"; /* TRA: no I and no K */
    for (int i = 0; LETTERS[i] != '\0'; i++)
        if (LETTERS[i] == letter)
            return 2 * (i + 1);
    return 0;
}

/* Reads `word`, in which a blank stands for any number of blanks. Letters may follow only where
 * they begin a load range, so that no longer word is taken for a shorter one. */
static bool accept_word(struct scanner *scanner, const char *word)
{
    const char *at = scanner->at;
    for (; *word != '\0'; word++) {
        if (*word == ' ') {
            while (*at == ' ')
                at++;
        } else if (*at++ != *word) {
            return false;
        }
    }
    if (is_letter(at[0]) && !(at[0] == 'L' && at[1] == 'R'))
        return false;
    scanner->at = at;
    return true;
}

static bool suffix_fault(struct scanner *scanner, const char *from, const char *what)
{
    return fault_between(scanner, from, scanner->at, "%s; expected one such mark on a size", what);
}

/* LT and ST stand before a metric size and behind any other, wherever they were written. */
static bool set_suffix(struct scanner *scanner, const char *from, enum size_suffix suffix)
{
    struct designation *out = scanner->out;
    if (out->form == FORM_METRIC && (suffix == SUFFIX_LT || suffix == SUFFIX_ST)) {
        enum size_prefix prefix = suffix == SUFFIX_LT ? PREFIX_LT : PREFIX_ST;
        if (out->prefix != PREFIX_NONE || out->suffix == SUFFIX_C || out->suffix == SUFFIX_CP)
            return suffix_fault(scanner, from, "the size has a class already");
        out->prefix = prefix;
        return true;
    }
    if (out->suffix != SUFFIX_NONE)
        return suffix_fault(scanner, from, "the size has a suffix already");
    if (out->prefix != PREFIX_NONE && suffix != SUFFIX_NHS)
        return fault_between(scanner, from, scanner->at,
                             "the suffix contradicts the prefix %s; expected one of the two",
                             PREFIX_TEXT[out->prefix]);
    out->suffix = suffix;
    return true;
}

bool move_prefix_behind(struct scanner *scanner)
{
    struct designation *out = scanner->out;
    if (out->form == FORM_METRIC || out->prefix == PREFIX_NONE)
        return true;
    if (out->prefix == PREFIX_LT || out->prefix == PREFIX_ST) {
        out->suffix = out->prefix == PREFIX_LT ? SUFFIX_LT : SUFFIX_ST;
        out->prefix = PREFIX_NONE;
        return true;
    }
    if (out->prefix == PREFIX_T && out->form == FORM_FULL_PROFILE)
        return true;
    return fault_between(scanner, scanner->prefix_at,
                         scanner->prefix_at + strlen(PREFIX_TEXT[out->prefix]),
                         "the prefix %s stands before a size without aspect ratio; "
                         "expected a metric size such as 205/55R16 behind it",
                         PREFIX_TEXT[out->prefix]);
}

static bool set_capacity(struct scanner *scanner, const char *from, enum capacity_class capacity)
{
    struct designation *out = scanner->out;
    /* High-load tyres are extra-load ones that carry more, and are moulded with both. */
    if (out->prefix == PREFIX_HL && capacity == CAPACITY_XL)
        capacity = CAPACITY_HL;
    if (out->capacity != CAPACITY_UNMARKED && out->capacity != capacity)
        return fault_between(scanner, from, scanner->at,
                             "the capacity class contradicts the one before it; "
                             "expected one of SL, XL, HL and LL");
    out->capacity = capacity;
    scanner->capacity_at = from;
    return true;
}

/* scanner->at stands on the letter. */
static bool set_load_range(struct scanner *scanner)
{
    struct designation *out = scanner->out;
    if (load_range_ply_rating(*scanner->at) == 0 || is_letter(scanner->at[1]))
        return fault_expected(scanner, "a load range letter: A to H, J, L, M or N");
    if (out->load_range != 0)
        return fault_expected(scanner, "no second load range");
    out->load_range = *scanner->at;
    scanner->load_range_at = scanner->at++;
    return true;
}

static bool is_light_truck_or_trailer(const struct designation *out)
{
    return out->prefix == PREFIX_LT || out->prefix == PREFIX_ST || out->suffix == SUFFIX_LT ||
           out->suffix == SUFFIX_ST;
}

static bool symbol_before_index_fault(struct scanner *scanner)
{
    return fault_between(scanner, scanner->at, scanner->at + 1,
                         "the speed symbol %c stands before the load index; "
                         "expected the load index first, as in 91V",
                         *scanner->at);
}

/* A letter alone is a load range on the sizes that are sold by load range; on a passenger tyre it
 * might as well be a speed symbol that has lost its load index. */
static bool scan_lone_letter(struct scanner *scanner)
{
    const struct designation *out = scanner->out;
    if (is_light_truck_or_trailer(out) || out->form == FORM_FLOTATION ||
        out->form == FORM_NUMERIC || rim_has_half(out))
        return set_load_range(scanner);
    if (is_speed_symbol_letter(*scanner->at) && is_digit(scanner->at[1]))
        return symbol_before_index_fault(scanner);
    return fault_between(scanner, scanner->at, scanner->at + 1,
                         "the letter %c alone may be a load range or a speed symbol; "
                         "expected LR %c, or a load index before it",
                         *scanner->at, *scanner->at);
}

static bool scan_c(struct scanner *scanner)
{
    const char *from = scanner->at;
    if (is_light_truck_or_trailer(scanner->out) || scanner->out->form == FORM_FLOTATION)
        return set_load_range(scanner);
    scanner->at++;
    return set_suffix(scanner, from, SUFFIX_C);
}

/* LT may be followed by its load range at once: 7.50R16LTE. */
static bool accept_lt(struct scanner *scanner)
{
    if (accept_word(scanner, "LT"))
        return true;
    const char *at = scanner->at;
    if (at[0] != 'L' || at[1] != 'T' || is_letter(at[3]))
        return false;
    scanner->at += 2;
    return true;
}

static bool scan_long_word(struct scanner *scanner, bool *found)
{
    static const struct {
        const char *word;
        enum capacity_class capacity;
    } WORDS[] = {
        {"XL", CAPACITY_XL},        {"SL", CAPACITY_SL},         {"HL", CAPACITY_HL},
        {"LL", CAPACITY_LL},        {"RF", CAPACITY_XL},         {"REINFORCED", CAPACITY_XL},
        {"REINF", CAPACITY_XL},     {"EXTRA LOAD", CAPACITY_XL}, {"STANDARD LOAD", CAPACITY_SL},
        {"HIGH LOAD", CAPACITY_HL}, {"LIGHT LOAD", CAPACITY_LL},
    };
    const char *from = scanner->at;
    for (size_t i = 0; i < sizeof WORDS / sizeof WORDS[0]; i++)
        if (WORDS[i].word[0] == *from && accept_word(scanner, WORDS[i].word))
            return set_capacity(scanner, from, WORDS[i].capacity);
    *found = false;
    return true;
}

static bool accept_load_range_word(struct scanner *scanner)
{
    const char *at = scanner->at;
    if (at[0] == 'L' && at[1] == 'R') {
        scanner->at += 2;
        return true;
    }
    static const char LOAD[] = "LOAD", RANGE[] = "RANGE";
    if (strncmp(at, LOAD, sizeof LOAD - 1) != 0)
        return false;
    for (at += sizeof LOAD - 1; *at == ' ';)
        at++;
    if (strncmp(at, RANGE, sizeof RANGE - 1) != 0)
        return false;
    scanner->at = at + sizeof RANGE - 1;
    return true;
}

static bool scan_word(struct scanner *scanner)
{
    const char *from = scanner->at;
    if (accept_load_range_word(scanner)) {
        skip_blanks(scanner);
        return set_load_range(scanner);
    }
    bool found = true;
    if (!scan_long_word(scanner, &found))
        return false;
    if (found)
        return true;
    if (accept_lt(scanner))
        return set_suffix(scanner, from, SUFFIX_LT);
    if (accept_word(scanner, "ST"))
        return set_suffix(scanner, from, SUFFIX_ST);
    if (accept_word(scanner, "NHS"))
        return set_suffix(scanner, from, SUFFIX_NHS);
    if (accept_word(scanner, "CP"))
        return set_suffix(scanner, from, SUFFIX_CP);
    if (is_letter(from[1]) && !(from[1] == 'L' && from[2] == 'R'))
        return fault_expected(scanner, MARK_EXPECTED);
    if (*from == 'C')
        return scan_c(scanner);
    if (load_range_ply_rating(*from) != 0)
        return scan_lone_letter(scanner);
    if (is_speed_symbol_letter(*from) && is_digit(from[1]))
        return symbol_before_index_fault(scanner);
    return fault_expected(scanner, MARK_EXPECTED);
}

/* Behind the digits of a ply rating: PR, PLY or PLY RATING, after a hyphen or blanks. */
static const char *ply_word_end(const char *at)
{
    while (is_digit(*at))
        at++;
    while (*at == ' ')
        at++;
    if (*at == '-')
        at++;
    while (*at == ' ')
        at++;
    if (at[0] == 'P' && at[1] == 'R' && !is_letter(at[2]))
        return at + 2;
    if (at[0] != 'P' || at[1] != 'L' || at[2] != 'Y' || is_letter(at[3]))
        return NULL;
    const char *end = at + 3;
    for (at = end; *at == ' ';)
        at++;
    return strncmp(at, "RATING", 6) == 0 && !is_letter(at[6]) ? at + 6 : end;
}

static bool scan_ply_rating(struct scanner *scanner, const char *end)
{
    const char *from = scanner->at;
    int rating;
    scan_digits(scanner, &rating);
    if (*from == '0' || rating < 2 || rating > 32 || rating % 2 != 0)
        return fault_between(scanner, from, scanner->at,
                             "the ply rating is on no tyre; expected an even number from 2 to 32");
    if (scanner->out->ply_rating != 0)
        return fault_between(scanner, from, scanner->at,
                             "a second ply rating stands here; expected one at most");
    scanner->out->ply_rating = rating;
    scanner->ply_at = from;
    scanner->at = end;
    return true;
}

static bool scan_mark(struct scanner *scanner)
{
    char c = *scanner->at;
    bool in_order = true;
    if (scan_use(scanner, &in_order))
        return in_order;
    if (is_digit(c)) {
        const char *ply_end = ply_word_end(scanner->at);
        return ply_end != NULL ? scan_ply_rating(scanner, ply_end) : scan_service(scanner);
    }
    if (c == '(')
        return scan_service_in_parentheses(scanner);
    if (is_letter(c))
        return scan_word(scanner);
    if (c == '/' && is_light_truck_or_trailer(scanner->out)) { /* LT245/75R16/E */
        scanner->at++;
        skip_blanks(scanner);
        return set_load_range(scanner);
    }
    return fault_expected(scanner, MARK_EXPECTED);
}

bool scan_marks(struct scanner *scanner)
{
    for (;;) {
        skip_blanks(scanner);
        if (*scanner->at == '\0')
            return true;
        if (!scan_mark(scanner))
            return false;
    }
}
