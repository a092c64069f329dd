/* Running at low pressure off the road: how far the tyres give, what ground clearance that costs,
 * how fast it allows, and what brings them back. */
#include "base/known.h"
#include "base/units.h"
#include "compute/deflection.h"
#include "compute/inflating.h"
#include "report/load/view.h"

static const char stiffness_basis[] =
    "Rhyne, Tire Science and Technology 33(3), 2005 (coefficients from memory): belted radial "
    "passenger tyres, extrapolated for others";

static double off_road_Pa(const struct plan *plan, int axle)
{
    return of_axle(plan->specification->off_road.pressure_Pa, axle);
}

static double deflection_at(const struct load_view *view, int axle, const struct tyre_figures *size,
                            double pressure_Pa)
{
    return tyre_deflection_m(size, &view->setup->axle[axle].size, pressure_Pa,
                             view->axle[axle].load_built_kg);
}

/* Radius, deflection and contact length at one pressure. */
static void report_shape(const struct tyre_figures *size, double deflection_m, struct figure figure,
                         struct figures *figures)
{
    const struct {
        enum quantity_id quantity;
        double value;
    } shape[] = {
        {QUANTITY_LOADED_RADIUS, loaded_radius_m(size, deflection_m)},
        {QUANTITY_TYRE_DEFLECTION, deflection_m},
        {QUANTITY_CONTACT_LENGTH, contact_chord_m(size, deflection_m)},
    };
    for (size_t i = 0; i < sizeof shape / sizeof shape[0]; i++) {
        figure.quantity = shape[i].quantity;
        figure.value = shape[i].value;
        figure.basis = i == 2 ? "chord of the round tyre at that deflection" : stiffness_basis;
        if (known(figure.value))
            figures_add(figures, figure);
    }
}

static void report_lost(const struct load_view *view, int axle, const struct tyre_figures *size,
                        struct figures *figures)
{
    const struct plan *plan = view->plan;
    double low_Pa = off_road_Pa(plan, axle);
    double road_Pa = view->axle[axle].recommended_Pa; /* INFINITY where it is refused */
    double low = deflection_at(view, axle, size, low_Pa);
    struct figure figure = figure_of(QUANTITY_CLEARANCE_LOST, UNKNOWN, stiffness_basis);
    figure.axle = axle;
    figure.state = view->axle[axle].heaviest_state;
    double road = isfinite(road_Pa) ? deflection_at(view, axle, size, road_Pa) : UNKNOWN;
    if (isfinite(road_Pa)) {
        figure.at = arena_format(plan->arena, "road, %s", pressure_text(plan, road_Pa));
        figure.line = "road";
        report_shape(size, road, figure, figures);
    }
    figure.at = arena_format(plan->arena, "off road, %s", pressure_text(plan, low_Pa));
    figure.line = "off road";
    report_shape(size, low, figure, figures);
    figure.quantity = QUANTITY_CLEARANCE_LOST;
    figure.value = low - road;
    if (!known(figure.value) && !isinf(road_Pa)) { /* refused: a finding already */
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = "the relation needs a radial tyre, its load and both pressures, and a "
                        "deflection below half of the section height";
    }
    figures_add(figures, figure);
}

/* The load at low pressure, with the low-speed increase where a standard grants it. */
static void report_low_capacity(const struct load_view *view, int axle, struct figures *figures)
{
    const struct plan *plan = view->plan;
    const struct axle_pressures *pressures = &view->axle[axle];
    double low_Pa = off_road_Pa(plan, axle);
    double speed = plan->specification->off_road.speed_mps;
    struct figure figure =
        figure_of(QUANTITY_TYRE_CAPACITY,
                  capacity_at_speed_kg(&pressures->rating, pressures->dual, low_Pa, speed),
                  is_commercial_tyre(&pressures->rating) && known(speed)
                      ? "class rule with the low-speed increase of UN R54 Annex 8 (from memory)"
                      : "class rule; no standard grants an increase at low speed");
    figure.axle = axle;
    figure.state = pressures->heaviest_state;
    figure.at = arena_format(plan->arena, "off road, %s", pressure_text(plan, low_Pa));
    figure.line = "off road";
    figure.limit = pressures->load_built_kg; /* judged once, by the speed that it allows */
    if (figure.value < figure.limit)
        figure.action = "less than its load: walking pace over short distances, watch the "
                        "sidewalls, and inflate again before the road";
    else if (low_Pa < pressures->floor_Pa)
        figure.action = "below the lowest pressure of its tables: the rule is only continued there";
    figures_add(figures, figure);
}

static double allowed_speed(const struct load_view *view, int axle)
{
    const struct axle_pressures *pressures = &view->axle[axle];
    return speed_for_load_mps(&pressures->rating, pressures->dual, off_road_Pa(view->plan, axle),
                              pressures->load_built_kg);
}

static void report_speed_unknown(const struct load_view *view, struct figures *figures)
{
    bool passenger = !is_commercial_tyre(&view->axle[AXLE_FRONT].rating);
    struct figure figure =
        figure_of(QUANTITY_OFF_ROAD_SPEED, UNKNOWN,
                  passenger ? "no standard rates a passenger tyre at such a pressure"
                            : "UN R54 Annex 8 load at low speed (from memory)");
    figure.verdict = VERDICT_UNKNOWN;
    figure.action = passenger ? "keep to walking pace, and ask the tyre maker"
                              : "needs the load index, its reference pressure and the axle loads";
    figures_add(figures, figure);
}

/* The slower axle's speed. Always a caution at best: low pressure heats the tyre, and no standard
 * rates it for that. */
static void report_speed(const struct load_view *view, struct figures *figures)
{
    double asked = view->plan->specification->off_road.speed_mps;
    double front = allowed_speed(view, AXLE_FRONT), rear = allowed_speed(view, AXLE_REAR);
    if (!known(front) || !known(rear)) {
        report_speed_unknown(view, figures);
        return;
    }
    int slower = clearly_above(front, rear) ? AXLE_REAR : AXLE_FRONT;
    struct figure figure =
        figure_of(QUANTITY_OFF_ROAD_SPEED, slower == AXLE_FRONT ? front : rear,
                  "UN R54 Annex 8 load at low speed (from memory), the class rule continued "
                  "below its tables");
    figure.axle = slower;
    figure.state = view->axle[slower].heaviest_state;
    figure.limit = asked;
    figure.verdict = VERDICT_CAUTION;
    figure.action = figure.value < asked
                        ? "does not carry the load at the speed given: drive slower, or keep more "
                          "pressure"
                        : "an upper bound by load alone: heat and bead seat are not computed";
    figures_add(figures, figure);
}

/* Air and time for all tyres, from low pressure to the recommended. */
static void report_inflating(const struct load_view *view, struct figures *figures)
{
    const struct plan *plan = view->plan;
    bool refused = false;
    double air = 0, flow = plan->specification->off_road.compressor_flow_m3_per_s;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        struct tyre_measures measures;
        tyre_measure(&view->setup->axle[axle], &measures);
        double road_Pa = view->axle[axle].recommended_Pa;
        refused = refused || isinf(road_Pa);
        double one = free_air_m3(cavity_volume_m3(&measures.stated), off_road_Pa(plan, axle),
                                 isfinite(road_Pa) ? road_Pa : UNKNOWN);
        air += one * tyres_on_axle(view->axle[axle].dual);
    }
    if (refused)
        return; /* there is no pressure to come back to, which is a finding already */
    struct figure figure = figure_of(
        QUANTITY_FREE_AIR, air,
        "elliptic section of the cavity, about 15 % either way (common practice, no source)");
    if (!known(air)) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = "needs the tyres' size and their recommended pressure";
    }
    figures_add(figures, figure);
    figure.quantity = QUANTITY_INFLATING_TIME;
    figure.value = air / flow;
    figure.basis = "free air over the compressor's flow, which falls as pressure rises";
    if (!known(figure.value)) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = known(flow) ? figure.action : "give off_road: compressor_flow";
    }
    figures_add(figures, figure);
}

void report_off_road(const struct load_view *view, struct figures *figures)
{
    if (view->plan->specification->off_road.given == NULL)
        return;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        struct tyre_measures measures;
        tyre_measure(&view->setup->axle[axle], &measures);
        report_lost(view, axle, &measures.stated, figures);
        report_low_capacity(view, axle, figures);
    }
    report_speed(view, figures);
    report_inflating(view, figures);
}
