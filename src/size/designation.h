/* Tyre size designations as moulded on sidewalls and printed in ISO 4000-1, ISO 4223-1,
 * UN R30, UN R54 and the year books of the tyre standards organisations. */
#ifndef TYRESUM_SIZE_DESIGNATION_H
#define TYRESUM_SIZE_DESIGNATION_H

#include <stdbool.h>
#include <stddef.h>

#include "base/span.h"

enum tyre_form {
    FORM_METRIC,       /* 205/55R16 */
    FORM_FLOTATION,    /* 31x10.50R15LT */
    FORM_NUMERIC,      /* 7.50R16LT, 11R22.5 */
    FORM_FULL_PROFILE, /* 165R13: section width in mm, no aspect ratio moulded */
    FORM_COUNT
};

enum size_prefix { PREFIX_NONE, PREFIX_P, PREFIX_LT, PREFIX_ST, PREFIX_T, PREFIX_HL, PREFIX_COUNT };

/* Letters moulded behind the rim diameter code. */
enum size_suffix {
    SUFFIX_NONE,
    SUFFIX_C,   /* commercial */
    SUFFIX_CP,  /* camper */
    SUFFIX_LT,  /* light truck, on flotation and numeric sizes */
    SUFFIX_ST,  /* special trailer, on flotation and numeric sizes */
    SUFFIX_NHS, /* not for highway service */
    SUFFIX_COUNT
};

enum construction {
    CONSTRUCTION_RADIAL,      /* R */
    CONSTRUCTION_DIAGONAL,    /* D or - */
    CONSTRUCTION_BIAS_BELTED, /* B */
    CONSTRUCTION_COUNT
};

enum capacity_class {
    CAPACITY_UNMARKED,
    CAPACITY_SL, /* standard load, where it is marked */
    CAPACITY_XL, /* XL, EXTRA LOAD, REINFORCED, RF behind the size */
    CAPACITY_HL, /* high load: prefix HL */
    CAPACITY_LL, /* light load */
    CAPACITY_COUNT
};

/* Special use tyres of UN R54 2.2.3 (from memory): professional off-road, multi-purpose truck,
 * extra tread, mining and logging. */
enum special_use {
    SPECIAL_USE_NONE,
    SPECIAL_USE_POR,
    SPECIAL_USE_MPT,
    SPECIAL_USE_ET,
    SPECIAL_USE_ML,
    SPECIAL_USE_COUNT
};

enum { LOAD_INDEX_NONE = -1, LOAD_INDEX_MAX = 200 };

/* Longest designation that is read, and room for any canonical spelling with its NUL. */
enum { DESIGNATION_LENGTH_MAX = 128, DESIGNATION_CANONICAL_SIZE = 96 };

/* Load index single and dual, and speed symbol ("A1".."A8", "B".."Y", empty if none). */
struct service_description {
    int load_index, load_index_dual; /* LOAD_INDEX_NONE where not given */
    char speed_symbol[3];
    bool speed_above; /* the description stands in parentheses: (98Y) or (Y) */
};

/* What a designation says, as moulded: no computed figure. */
struct designation {
    enum tyre_form form;
    enum size_prefix prefix;
    enum size_suffix suffix;
    enum construction construction;
    bool hyphen;          /* diagonal written "-" and not "D" */
    bool z_marked;        /* ZR, ZRF */
    bool run_flat;        /* RF, ZRF before the rim code: 255/35RF19 */
    int section_width;    /* metric, full profile: mm; flotation, numeric: 1/100 inch */
    bool section_whole;   /* numeric, without decimals: 10R15LT is another tyre than 10.00R15 */
    int aspect_percent;   /* metric only, else 0 */
    int overall_diameter; /* flotation: 1/100 inch; metric with a "ratio" above 200: mm; else 0 */
    int rim_code_tenths;  /* 16 is 160, 22.5 is 225; a millimetric rim 390 is 3900 */
    bool rim_millimetric;
    struct service_description service, second_service;
    enum capacity_class capacity;
    char load_range; /* 'A'..'N', 0 where not marked */
    int ply_rating;  /* 0 where not marked */
    enum special_use special_use;
    bool mud_and_snow; /* M+S, M.S or M&S is moulded: a snow tyre of UN R30 and UN R54 */
    bool severe_snow;  /* 3PMSF, as lists write the mountain and snowflake of UN R117 */
    bool completed;    /* not as moulded, its construction was added: its class is not known */
};

/* Where and why a text is not a designation. Columns count characters from 1. */
struct designation_error {
    size_t column, length;
    char message[200]; /* "what is wrong; what was expected" */
};

/* Reads a whole designation. Returns false and fills error on any fault; *out is then unspecified.
 */
bool designation_parse(struct span text, struct designation *out, struct designation_error *error);

/* Reads the spelling that most lines have, such as P265/70R17 113S or LT245/75R16 120/116S: where
 * it does, it is the canonical one, and designation_parse() reads the same tyre from it. False says
 * nothing of the text; *out is then unspecified. */
bool designation_read_plain(struct span text, struct designation *out);

/* Writes the canonical spelling, which parses to the same tyre, and a NUL; returns its length. */
size_t designation_canonical(const struct designation *designation,
                             char text[DESIGNATION_CANONICAL_SIZE]);

bool designation_equal(const struct designation *a, const struct designation *b);

/* "radial", "diagonal", "bias_belted": the construction as the tables name it. */
const char *construction_key(enum construction construction);

extern const char *const PREFIX_TEXT[PREFIX_COUNT]; /* as moulded before the size; "": none */
extern const char *const SUFFIX_TEXT[SUFFIX_COUNT]; /* and behind it */

/* "metric", "flotation", "numeric", "full_profile": the `form` column. */
const char *designation_form_name(enum tyre_form form);

/* Ply rating that a load range letter stands for (A 2 .. N 24), 0 for a letter that is none. */
int load_range_ply_rating(char letter);

#endif
