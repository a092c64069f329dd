/* What the parts of the designation scanner share. Nothing outside src/size/designation*.c
 * includes this. */
#ifndef TYRESUM_SIZE_DESIGNATION_INTERNAL_H
#define TYRESUM_SIZE_DESIGNATION_INTERNAL_H

#include "size/designation.h"

/* The text is folded first: one char a character, capitals only, blanks as ' ', the
 * multiplication sign as 'X', every dash as '-', a NUL behind the last. So a character's
 * column is its index + 1, and the scanner itself sees ASCII only. */
enum {
    FOLDED_FOREIGN = 1, /* a character that stands in no designation */
    FOLDED_HALF = 2     /* the fraction one half, as in 16½ */
};

struct scanner {
    const char *at; /* next folded character */
    struct designation *out;
    struct designation_error *error;
    struct span source;
    /* Where a mark stands (NULL: nowhere), for contradictions that show only later. */
    const char *prefix_at, *size_end, *rim_at, *service_at, *capacity_at, *load_range_at, *ply_at;
    char text[DESIGNATION_LENGTH_MAX + 1];
};

static inline void skip_blanks(struct scanner *scanner)
{
    while (*scanner->at == ' ')
        scanner->at++;
}

/* 15 degree drop centre rims of heavy vehicles and the 16.5 of light trucks. */
static inline bool rim_has_half(const struct designation *designation)
{
    return designation->rim_code_tenths % 10 == 5;
}

/* designation_fold.c: false and a fault where the text is too long. */
bool scanner_fold(struct scanner *scanner);

/* Both return false, so that a fault ends every scan with one statement. The first covers the
 * characters from..to; the second says what stands at scanner->at before "; expected ...". */
bool fault_between(struct scanner *scanner, const char *from, const char *to, const char *format,
                   ...) __attribute__((format(printf, 4, 5)));
bool fault_expected(struct scanner *scanner, const char *expected);

/* The characters from..to as they were written, which folding has lost: for messages. */
struct span written_between(const struct scanner *scanner, const char *from, const char *to);

extern const char *const SPECIAL_USE_TEXT[SPECIAL_USE_COUNT];

/* Of a metric size, in mm and per cent. */
enum { METRIC_WIDTH_MAX = 650, ASPECT_MIN = 15, ASPECT_MAX = 100 };

/* designation_rim.c */
bool scan_rim(struct scanner *scanner);

/* Rim codes without a half: inches as in UN R30 and R54, and the small ones of trailer tyres (from
 * memory); 11, 27 and 29 carry no road tyre. */
static inline bool is_whole_inch_code(int code)
{
    return code >= 8 && code <= 30 && code != 11 && code != 27 && code != 29;
}

/* designation_service.c: load index, speed symbol, plain and in parentheses. */
bool scan_service(struct scanner *scanner);
bool scan_service_in_parentheses(struct scanner *scanner);

#define LETTER_BIT(letter) (1u << ((letter) - 'A'))
/* I, O, X and Z are no speed symbols, and A is one with a digit only. */
#define NO_SPEED_SYMBOL                                                                            \
    (LETTER_BIT('A') | LETTER_BIT('I') | LETTER_BIT('O') | LETTER_BIT('X') | LETTER_BIT('Z'))

static inline bool is_speed_symbol_letter(char letter)
{
    return letter >= 'A' && letter <= 'Z' && !(NO_SPEED_SYMBOL & LETTER_BIT(letter));
}

/* A dual load index is some 2 to 6 below the single one; 12 leaves room. */
enum { DUAL_BELOW_MAX = 12 };
static inline bool dual_goes_with(int dual, int single)
{
    return dual >= 0 && dual <= single && dual >= single - DUAL_BELOW_MAX;
}

/* designation_marks.c: everything behind the rim code. */
bool scan_marks(struct scanner *scanner);
bool move_prefix_behind(struct scanner *scanner);

/* designation_use.c: M+S, 3PMSF, POR and the like. True where one was read, or where one stands
 * twice, which is then *in_order = false and a fault. */
bool scan_use(struct scanner *scanner, bool *in_order);

/* designation_check.c: contradictions between what was read. */
bool check_dimensions(struct scanner *scanner);
bool check_marks(struct scanner *scanner);

/* Digits without a leading zero. *value is capped at 99999; the count is returned, 0 for none. */
int scan_digits(struct scanner *scanner, int *value);

#endif
