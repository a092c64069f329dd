#include "base/known.h"
#include "reading/picture_arch.h"

/* The judged room of a setup: the least that the largest tyre leaves. */
static const struct figure *judged(const struct picture *picture, size_t setup, int axle,
                                   enum quantity_id quantity, enum place_posture posture)
{
    return figure_least(picture->layout, setup,
                        (struct figure_query){.quantity = quantity,
                                              .axle = axle,
                                              .state = STATE_NONE,
                                              .tyre = AT_LARGEST,
                                              .posture = posture});
}

/* The nominal room in the same state as the judged one. */
static double nominal(const struct picture *picture, size_t setup, int axle,
                      enum quantity_id quantity, enum place_posture posture,
                      const struct figure *like)
{
    const struct figure *figure =
        figure_first(picture->layout, setup,
                     (struct figure_query){.quantity = quantity,
                                           .axle = axle,
                                           .state = like == NULL ? STATE_NONE : like->state,
                                           .tyre = AT_NOMINAL,
                                           .posture = posture});
    return figure == NULL ? UNKNOWN : figure->value;
}

static double value_of(const struct figure *figure)
{
    return figure == NULL ? UNKNOWN : figure->value;
}

static double room_change(const struct picture *picture, const struct arch_shape *shape,
                          enum quantity_id quantity)
{
    if (shape->setup == 0)
        return 0;
    return value_of(figure_first(
        picture->layout, shape->setup,
        (struct figure_query){.quantity = quantity, .axle = shape->axle, .state = STATE_NONE}));
}

static void find_rooms(const struct picture *picture, struct arch_shape *shape)
{
    const struct {
        enum quantity_id quantity;
        enum place_posture posture;
        const struct figure **now, **was;
    } rooms[] = {
        {QUANTITY_ARCH_ABOVE, AT_RIDE_HEIGHT, &shape->ride, &shape->was_ride},
        {QUANTITY_ARCH_ABOVE, AT_BUMP, &shape->bump, &shape->was_bump},
        {QUANTITY_ARCH_INNER, AT_ANY_POSTURE, &shape->inside, &shape->was_inside},
        {QUANTITY_ARCH_OUTER, AT_ANY_POSTURE, &shape->outside, &shape->was_outside},
        {QUANTITY_ARCH_LOCK, AT_ANY_POSTURE, &shape->lock, &shape->was_lock},
    };
    for (size_t i = 0; i < sizeof rooms / sizeof rooms[0]; i++) {
        *rooms[i].now =
            judged(picture, shape->setup, shape->axle, rooms[i].quantity, rooms[i].posture);
        *rooms[i].was = judged(picture, 0, shape->axle, rooms[i].quantity, rooms[i].posture);
    }
}

/* Across: edges from the fitted tyre's, which stands about the centre. */
static void set_across(const struct picture *picture, const struct tyre_dimensions *before,
                       const struct tyre_dimensions *after, struct arch_shape *shape)
{
    double half = before->width_on_rim_m / 2, spread = after->width_on_rim_max_m / 2;
    shape->fitted_inner = -half;
    shape->fitted_outer = half;
    shape->inner = -half + room_change(picture, shape, QUANTITY_ARCH_INNER_CHANGE);
    shape->outer = half - room_change(picture, shape, QUANTITY_ARCH_OUTER_CHANGE);
    if (!known(shape->inner) ||
        !known(shape->outer)) { /* its place is not known: about the middle */
        shape->inner = -after->width_on_rim_m / 2;
        shape->outer = after->width_on_rim_m / 2;
    }
    shape->wall_inner = shape->inner - nominal(picture, shape->setup, shape->axle,
                                               QUANTITY_ARCH_INNER, AT_ANY_POSTURE, shape->inside);
    shape->wall_outer = shape->outer + nominal(picture, shape->setup, shape->axle,
                                               QUANTITY_ARCH_OUTER, AT_ANY_POSTURE, shape->outside);
    double middle = (shape->inner + shape->outer) / 2;
    shape->largest_inner = known_or(shape->wall_inner + value_of(shape->inside), middle - spread);
    shape->largest_outer = known_or(shape->wall_outer - value_of(shape->outside), middle + spread);
}

void arch_shape_make(const struct picture *picture, size_t setup, int axle,
                     struct arch_shape *shape)
{
    const struct plan *plan = picture->layout->plan;
    const struct tyre_dimensions *before = &plan->beside[setup].before[axle];
    const struct tyre_dimensions *after = &plan->beside[setup].after[axle];
    *shape = (struct arch_shape){.setup = setup,
                                 .axle = axle,
                                 .fitted_radius = before->overall_diameter_m / 2,
                                 .radius = after->overall_diameter_m / 2,
                                 .rim_radius = after->rim_diameter_m / 2,
                                 .rim_width = known_or(plan->setups[setup].axle[axle].wheel.width_m,
                                                       after->measuring_rim_m)};
    find_rooms(picture, shape);
    shape->wall_ride = shape->radius + nominal(picture, setup, axle, QUANTITY_ARCH_ABOVE,
                                               AT_RIDE_HEIGHT, shape->ride);
    shape->wall_bump =
        shape->radius + nominal(picture, setup, axle, QUANTITY_ARCH_ABOVE, AT_BUMP, shape->bump);
    shape->largest_radius =
        known_or(shape->wall_bump - value_of(shape->bump),
                 known_or(shape->wall_ride - value_of(shape->ride),
                          setup == 0 ? shape->radius : after->overall_diameter_max_m / 2));
    set_across(picture, before, after, shape);
}
