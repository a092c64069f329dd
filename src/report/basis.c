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

static enum remark_id rolling_remark(const struct designation *size, enum figure_source source)
{
    if (source == SOURCE_DATA_BOOK || source == SOURCE_NONE)
        return source_remark(source, false);
    return size->construction == CONSTRUCTION_RADIAL ? BASIS_ROLLING_RADIAL
                                                     : BASIS_ROLLING_DIAGONAL;
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

size_t basis_of_figures(const struct designation *size, const struct tyre_dimensions *figures,
                        char text[BASIS_SIZE])
{
    char *to =
        put_row(text, "diameter: ", source_remark(figures->diameter_source, figures->un_r54));
    to = put_row(to, "; limits: ", envelope_remark(size, figures));
    to = put_row(to, "; width: ", source_remark(figures->width_source, figures->un_r54));
    to = put_row(to, "; rolling: ", rolling_remark(size, figures->circumference_source));
    to = put_row(to, "; loaded radius: ", radius_remark(figures->radius_source));
    bool same = figures->measuring_rim_source == figures->rim_min_source;
    to = put_row(to, same ? "; rims: " : "; measuring rim: ",
                 rim_source_remark(figures->measuring_rim_source));
    if (!same)
        to = put_row(to, "; permitted rims: ", rim_source_remark(figures->rim_min_source));
    if (size->prefix == PREFIX_T)
        to = put(to, "; temporary use, to 80 km/h (UN R64, " FROM_MEMORY ")");
    *to = '\0';
    return (size_t)(to - text);
}
