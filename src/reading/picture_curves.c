#include "reading/picture_curves.h"

#include "base/known.h"
#include "reading/place_text.h"

static const double rpm_without_limit = 5000;

/* Gears with a number in the highest range: low ranges and reverse are not drawn. */
static bool is_drawn(const struct figure *figure, enum curves_of which)
{
    const struct place *place = &figure->place;
    return figure->quantity == QUANTITY_SPEED_PER_1000 && known(figure->value) && place->gear > 0 &&
           place->range == AT_HIGH_RANGE && (which == EVERY_AXLE || !known(place->axle_ratio));
}

/* "fitted", "B"; on an axle choice its ratio. */
static const char *caption_of(const struct picture *picture, const struct figure *figure)
{
    return known(figure->place.axle_ratio)
               ? ratio_text(picture->layout->arena, figure->place.axle_ratio)
               : picture_letter(picture, (size_t)figure->setup);
}

static const char *words_of(const struct picture *picture, const struct figure *figure)
{
    const char *letter = picture_letter(picture, (size_t)figure->setup);
    return known(figure->place.axle_ratio)
               ? arena_format(picture->layout->arena, "%s on axle ratio %s", letter,
                              caption_of(picture, figure))
               : letter;
}

static bool same_group(const struct figure *a, const struct figure *b)
{
    return a->setup == b->setup && same_value(a->place.axle_ratio, b->place.axle_ratio);
}

/* The group of a figure; GROUPS_MAX where there is no room for one more. */
static size_t group_for(const struct picture *picture, struct curves *curves,
                        const struct figure *figure)
{
    static const enum dash dashes[] = {DASH_NONE, DASH_LONG,     DASH_SHORT,
                                       DASH_DOT,  DASH_LONG_DOT, DASH_LONG_DOT_DOT};
    for (size_t i = 0; i < curves->group_count; i++)
        if (same_group(curves->groups[i].highest, figure))
            return i;
    if (curves->group_count == GROUPS_MAX)
        return GROUPS_MAX;
    size_t at = curves->group_count++;
    curves->groups[at] = (struct curve_group){
        .caption = caption_of(picture, figure),
        .words = words_of(picture, figure),
        .dash = dashes[at % (sizeof dashes / sizeof dashes[0])],
        .highest = figure,
    };
    return at;
}

void curves_add(const struct picture *picture, size_t setup, enum curves_of which,
                struct curves *curves)
{
    /* From all figures: those on the axle choices stand in no table that is read. */
    const struct setup_figures *figures = &picture->layout->every[setup];
    for (size_t i = 0; i < figures->count && curves->count < CURVES_MAX; i++) {
        const struct figure *figure = figures->items[i];
        if (figure->setup != (int)setup || !is_drawn(figure, which))
            continue;
        size_t at = group_for(picture, curves, figure);
        if (at == GROUPS_MAX)
            continue;
        curves->items[curves->count++] = (struct curve){figure, figure->place.gear, at};
        if (figure->value > curves->groups[at].highest->value)
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

void picture_no_gearing(const struct picture *picture, double height)
{
    picture_begin(picture, height, "Engine speed against road speed",
                  "Unknown: the gears, the axle ratio or the tyre's circumference are not given.");
    drawing_rectangle(picture->drawing, (struct box){4, 4, DRAWING_WIDTH - 8, height - 8}, 0,
                      (struct pen){.width = 1, .dash = DASH_SHORT});
    drawing_text(picture->drawing, (struct point){DRAWING_WIDTH / 2.0, height / 2},
                 (struct text_style){.size = DRAWING_TEXT, .anchor = ANCHOR_MIDDLE},
                 "gearing unknown");
    picture_end(picture, height);
}
