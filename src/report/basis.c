#include "report/basis.h"

#include <string.h>

#include "base/known.h"

const char *source_text(enum figure_source source, bool un_r54)
{
    switch (source) {
    case SOURCE_RULE:
        return un_r54 ? "UN R54 rule" : "UN R30 rule";
    case SOURCE_MOULDED:
        return "as moulded";
    case SOURCE_TABLE:
        return "table of sizes (from memory)";
    case SOURCE_CONVENTION:
        return "82 series taken (convention)";
    case SOURCE_DATA_BOOK:
        return "data book";
    case SOURCE_NONE:
        break;
    }
    return "unknown, the data book decides";
}

const char *rim_source_text(enum figure_source source)
{
    if (source == SOURCE_RULE)
        return "by factor (ISO 4000-1, from memory)";
    return source_text(source, false);
}

const char *envelope_text(const struct designation *size, const struct tyre_figures *figures)
{
    static const char *const texts[2][2][2] = {
        {{"UN R30 6.1.4, 6.1.5", "UN R30 6.1.4, 6.1.5, snow"}, {NULL, NULL}},
        {{"UN R54 6.1.4, 6.1.5", "UN R54 6.1.4, 6.1.5, snow"},
         {"UN R54 6.1.4, 6.1.5, special use", "UN R54 6.1.4, 6.1.5, special use and snow"}},
    };
    if (!known(figures->overall_diameter_max_m))
        return "unknown";
    bool special = size->special_use != SPECIAL_USE_NONE;
    return texts[figures->un_r54][special][size->mud_and_snow || size->severe_snow];
}

static const char *rolling_text(const struct designation *size, enum figure_source source)
{
    if (source == SOURCE_DATA_BOOK || source == SOURCE_NONE)
        return source_text(source, false);
    return size->construction == CONSTRUCTION_RADIAL ? "ETRTO 3.05 D" : "ETRTO 2.99 D";
}

static const char *radius_text(enum figure_source source)
{
    return source == SOURCE_DATA_BOOK || source == SOURCE_NONE ? source_text(source, false)
                                                               : "0.912 D/2";
}

static char *put(char *to, const char *text)
{
    size_t length = strlen(text);
    memcpy(to, text, length);
    return to + length;
}

size_t basis_of_figures(const struct designation *size, const struct tyre_figures *figures,
                        char text[BASIS_SIZE])
{
    char *to = put(put(text, "diameter: "), source_text(figures->diameter_source, figures->un_r54));
    to = put(put(to, "; limits: "), envelope_text(size, figures));
    to = put(put(to, "; width: "), source_text(figures->width_source, figures->un_r54));
    to = put(put(to, "; rolling: "), rolling_text(size, figures->circumference_source));
    to = put(put(to, "; loaded radius: "), radius_text(figures->radius_source));
    bool same = figures->measuring_rim_source == figures->rim_source;
    to = put(put(to, same ? "; rims: " : "; measuring rim: "),
             rim_source_text(figures->measuring_rim_source));
    if (!same)
        to = put(put(to, "; permitted rims: "), rim_source_text(figures->rim_source));
    if (size->prefix == PREFIX_T)
        to = put(to, "; temporary use, to 80 km/h (UN R64, from memory)");
    *to = '\0';
    return (size_t)(to - text);
}
