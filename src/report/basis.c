#include "report/basis.h"

#include <string.h>

#include "base/known.h"
#include "tables/certainty.h"

enum remark_id source_remark(enum figure_source source, bool un_r54)
{
    switch (source) {
    case SOURCE_RULE:
        return un_r54 ? BASIS_UN_R54 : BASIS_UN_R30;
    case SOURCE_MOULDED:
        return BASIS_MOULDED;
    case SOURCE_TABLE:
        return BASIS_TABLE_OF_SIZES;
    case SOURCE_CONVENTION:
        return BASIS_82_SERIES;
    case SOURCE_DATA_BOOK:
        return BASIS_DATA_BOOK;
    case SOURCE_DERIVED:
        return BASIS_RIM_FACTOR_DERIVED;
    case SOURCE_NONE:
        break;
    }
    return BASIS_NO_RULE;
}

enum remark_id rim_source_remark(enum figure_source source)
{
    return source == SOURCE_RULE ? BASIS_RIM_FACTOR : source_remark(source, false);
}

enum remark_id envelope_remark(const struct designation *size,
                               const struct tyre_dimensions *figures)
{
    static const enum remark_id rows[2][2][2] = {
        {{BASIS_ENVELOPE_R30, BASIS_ENVELOPE_R30_SNOW}, {BASIS_NO_ENVELOPE, BASIS_NO_ENVELOPE}},
        {{BASIS_ENVELOPE_R54, BASIS_ENVELOPE_R54_SNOW},
         {BASIS_ENVELOPE_SPECIAL, BASIS_ENVELOPE_SPECIAL_SNOW}},
    };
    bool special = size->special_use != SPECIAL_USE_NONE;
    return known(figures->overall_diameter_max_m)
               ? rows[figures->un_r54][special][size->mud_and_snow || size->severe_snow]
               : BASIS_NO_ENVELOPE;
}

static enum remark_id rolling_remark(enum figure_source source, bool radial)
{
    if (source == SOURCE_DATA_BOOK || source == SOURCE_NONE)
        return source_remark(source, false);
    return radial ? BASIS_ROLLING_RADIAL : BASIS_ROLLING_DIAGONAL;
}

static enum remark_id radius_remark(enum figure_source source)
{
    return source == SOURCE_DATA_BOOK || source == SOURCE_NONE ? source_remark(source, false)
                                                               : BASIS_LOADED_RADIUS_SHORT;
}

static char *put(char *to, const char *text)
{
    size_t length = strlen(text);
    memcpy(to, text, length);
    return to + length;
}

static char *put_row(char *to, const char *before, enum remark_id row)
{
    return put(put(to, before), remark_row_text(row));
}

enum { SOURCE_BITS = 4 };
_Static_assert(SOURCE_DATA_BOOK < 1 << SOURCE_BITS, "a source has room");

/* Adds a source, or an answer, to a kind; and takes what was added last. */
static uint64_t with(uint64_t kind, unsigned added)
{
    return kind << SOURCE_BITS | added;
}
static unsigned take(uint64_t *kind)
{
    unsigned added = *kind % (1 << SOURCE_BITS);
    *kind >>= SOURCE_BITS;
    return added;
}

uint64_t basis_kind(const struct designation *size, const struct tyre_dimensions *figures)
{
    uint64_t kind = envelope_remark(size, figures);
    kind = with(kind, size->prefix == PREFIX_T);
    kind = with(kind, figures->rim_min_source);
    kind = with(kind, figures->measuring_rim_source);
    kind = with(kind, figures->radius_source);
    kind = with(kind, size->construction == CONSTRUCTION_RADIAL);
    kind = with(kind, figures->circumference_source);
    kind = with(kind, figures->width_source);
    kind = with(kind, figures->diameter_source);
    return with(kind, figures->un_r54);
}

size_t basis_text(uint64_t kind, char text[BASIS_SIZE])
{
    const bool un_r54 = take(&kind) != 0;
    const enum figure_source diameter = take(&kind), width = take(&kind), rolling = take(&kind);
    const bool radial = take(&kind) != 0;
    const enum figure_source radius = take(&kind);
    const enum remark_id measuring_rim = rim_source_remark(take(&kind)),
                         permitted_rims = rim_source_remark(take(&kind));
    const bool temporary = take(&kind) != 0;
    char *to = put_row(text, "diameter: ", source_remark(diameter, un_r54));
    to = put_row(to, "; limits: ", (enum remark_id)kind);
    to = put_row(to, "; width: ", source_remark(width, un_r54));
    to = put_row(to, "; rolling: ", rolling_remark(rolling, radial));
    to = put_row(to, "; loaded radius: ", radius_remark(radius));
    bool same = measuring_rim == permitted_rims;
    to = put_row(to, same ? "; rims: " : "; measuring rim: ", measuring_rim);
    if (!same)
        to = put_row(to, "; permitted rims: ", permitted_rims);
    if (temporary)
        to = put(to, "; temporary use, to 80 km/h (UN R64, " FROM_MEMORY ")");
    *to = '\0';
    return (size_t)(to - text);
}
