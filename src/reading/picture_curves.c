#include "reading/picture_curves.h"

#include <string.h>

#include "base/known.h"

static const double rpm_without_limit = 5000;

const char *curve_gear(struct arena *arena, const char *at)
{
    const char *gear = at == NULL ? NULL : strstr(at, "gear ");
    if (gear == NULL || strstr(at, " low") != NULL)
        return NULL;
    gear += strlen("gear ");
    size_t digits = strspn(gear, "0123456789");
    return digits == 0 ? NULL : arena_copy(arena, (struct span){gear, digits});
}

/* "4.10" of "axle 4.10, gear 5": empty on the vehicle's own axle. */
static const char *axle_choice(struct arena *arena, const char *at)
{
    static const char word[] = "axle ";
    if (at == NULL || !text_begins(at, word))
        return "";
    at += strlen(word);
    return arena_copy(arena, (struct span){at, strcspn(at, ",")});
}

static size_t add_group(struct curves *curves, const char *caption, const char *words)
{
    static const enum dash dashes[] = {DASH_NONE, DASH_LONG,     DASH_SHORT,
                                       DASH_DOT,  DASH_LONG_DOT, DASH_LONG_DOT_DOT};
    for (size_t i = 0; i < curves->group_count; i++)
        if (strcmp(curves->groups[i].caption, caption) == 0)
            return i;
    if (curves->group_count == GROUPS_MAX)
        return GROUPS_MAX;
    size_t at = curves->group_count++;
    curves->groups[at] =
        (struct curve_group){.caption = caption,
                             .words = words,
                             .dash = dashes[at % (sizeof dashes / sizeof dashes[0])]};
    return at;
}

void curves_add(const struct picture *picture, size_t setup, enum curves_of which,
                struct curves *curves)
{
    struct arena *arena = picture->layout->arena;
    /* From all figures: those on the axle choices stand in no table that is read. */
    const struct figures *figures = picture->layout->figures;
    const char *letter = picture_letter(picture, setup);
    for (size_t i = 0; i < figures->count && curves->count < CURVES_MAX; i++) {
        const struct figure *figure = &figures->items[i];
        if (figure->setup != (int)setup || figure->quantity != QUANTITY_SPEED_PER_1000 ||
            !known(figure->value))
            continue;
        const char *gear = curve_gear(arena, figure->at), *axle = axle_choice(arena, figure->at);
        if (gear == NULL || (*axle != '\0' && which == OWN_AXLE))
            continue;
        const char *caption = *axle ? axle : letter;
        const char *words =
            *axle ? arena_format(arena, "%s on axle ratio %s", letter, axle) : letter;
        size_t at = add_group(curves, caption, words);
        if (at == GROUPS_MAX)
            continue;
        curves->items[curves->count++] = (struct curve){figure, gear, at};
        const struct figure *highest = curves->groups[at].highest;
        if (highest == NULL || figure->value > highest->value)
            curves->groups[at].highest = figure;
    }
}

bool curve_is_highest(const struct curves *curves, const struct curve *curve)
{
    return curves->groups[curve->group].highest == curve->per_1000;
}

double curves_limit_rpm(const struct picture *picture)
{
    double limit = picture->layout->plan->specification->drivetrain.engine.limit_per_s;
    return known(limit) ? unit_from_si(UNIT_RPM, limit) : rpm_without_limit;
}

enum unit_id curves_unit(const struct picture *picture)
{
    return picture->layout->plan->us ? UNIT_MPH : UNIT_KMH;
}

double curve_road(const struct picture *picture, const struct figure *per_1000, double rpm)
{
    return unit_from_si(curves_unit(picture), per_1000->value) * rpm / 1000;
}

void picture_no_gearing(const struct picture *picture, double width, double height)
{
    drawing_begin(picture->drawing, width, height, "Engine speed against road speed",
                  "Unknown: the gears, the axle ratio or the tyre's circumference are not given.");
    drawing_rectangle(picture->drawing, (struct box){4, 4, width - 8, height - 8}, 0,
                      (struct pen){.width = 1, .dash = DASH_SHORT});
    drawing_text(picture->drawing, (struct point){width / 2, height / 2},
                 (struct text_style){.size = 11, .anchor = ANCHOR_MIDDLE}, "gearing unknown");
    drawing_end(picture->drawing);
}
