/* Running at low pressure off the road: how far the tyres give, what ground clearance that costs,
 * how fast it allows, and what brings them back. */
#include "base/known.h"
#include "base/units.h"
#include "compute/deflection.h"
#include "compute/inflating.h"
#include "report/load/loaded_setup.h"

static double off_road_Pa(const struct plan *plan, int axle)
{
    return of_axle(plan->specification->off_road.pressure_Pa, axle);
}

static double deflection_at(const struct loaded_setup *loaded, int axle,
                            const struct tyre_dimensions *size, double pressure_Pa)
{
    return tyre_deflection_m(size, &loaded->setup->axle[axle].size, pressure_Pa,
                             loaded->axle[axle].load_built_kg);
}

/* In the state in which the axle's tyres bear most. */
static struct figure off_road_figure(const struct loaded_setup *loaded, enum quantity_id quantity,
                                     double value, int axle, struct remark basis)
{
    struct figure figure = figure_on_axle(quantity, value, axle, basis);
    figure.state = loaded->axle[axle].heaviest_state;
    figure.place.pressure_as = AT_OFF_ROAD;
    return figure;
}

/* Radius, deflection and contact length at one pressure. */
static void report_shape(const struct loaded_setup *loaded, int axle,
                         const struct tyre_dimensions *size, enum place_pressure pressure,
                         double deflection_m, struct figures *figures)
{
    const struct {
        enum quantity_id quantity;
        double value;
        enum remark_id basis;
    } shape[] = {
        {QUANTITY_LOADED_RADIUS, loaded_radius_m(size, deflection_m), BASIS_STIFFNESS},
        {QUANTITY_TYRE_DEFLECTION, deflection_m, BASIS_STIFFNESS},
        {QUANTITY_CONTACT_LENGTH, contact_chord_m(size, deflection_m), BASIS_CHORD},
    };
    for (size_t i = 0; i < sizeof shape / sizeof shape[0]; i++) {
        struct figure figure = off_road_figure(loaded, shape[i].quantity, shape[i].value, axle,
                                               remark(shape[i].basis));
        figure.place.pressure_as = pressure;
        if (known(figure.value))
            figures_add(figures, figure);
    }
}

static void report_lost(const struct loaded_setup *loaded, int axle,
                        const struct tyre_dimensions *size, struct figures *figures)
{
    double road_Pa = loaded->axle[axle].recommended_Pa; /* INFINITY where it is refused */
    double low = deflection_at(loaded, axle, size, off_road_Pa(loaded->plan, axle));
    double road = isfinite(road_Pa) ? deflection_at(loaded, axle, size, road_Pa) : UNKNOWN;
    /* How far a tyre gives is known up to a bound: whether it is hangs on no unit of the pressure.
     */
    double told_Pa = loaded->axle[axle].least_told_Pa;
    bool holds = isfinite(told_Pa) && known(deflection_at(loaded, axle, size, told_Pa));
    report_shape(loaded, axle, size, AT_ON_ROAD, road, figures);
    report_shape(loaded, axle, size, AT_OFF_ROAD, low, figures);
    bool refused = isinf(road_Pa); /* a finding already */
    figures_add(figures,
                judged(off_road_figure(loaded, QUANTITY_CLEARANCE_LOST,
                                       holds ? low - road : UNKNOWN, axle, remark(BASIS_STIFFNESS)),
                       &(struct judgement){
                           .if_unknown = remark(refused ? REMARK_NONE : ADVICE_NO_DEFLECTION)}));
}

/* The load at low pressure, with the low-speed increase where a standard grants it; judged once, by
 * the speed that it allows. */
static void report_low_capacity(const struct loaded_setup *loaded, int axle,
                                struct figures *figures)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    double low_Pa = off_road_Pa(loaded->plan, axle);
    double speed = loaded->plan->specification->off_road.speed_mps;
    bool below = is_below_tables(&pressures->rating, low_Pa);
    bool increased = is_commercial_tyre(&pressures->rating) && known(speed) && !below;
    struct figure figure =
        off_road_figure(loaded, QUANTITY_TYRE_CAPACITY,
                        capacity_at_speed_kg(&pressures->rating, pressures->dual, low_Pa, speed),
                        axle, remark(increased ? BASIS_LOW_COMMERCIAL : BASIS_LOW_CAPACITY));
    figure.limit = pressures->load_built_kg;
    if (clearly_above(figure.limit, figure.value))
        figure.advice = remark(ADVICE_WALKING_PACE);
    else if (below)
        figure.advice = remark(ADVICE_BELOW_TABLES);
    figures_add(figures, figure);
}

static double allowed_speed(const struct loaded_setup *loaded, int axle)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    return speed_for_load_mps(&pressures->rating, pressures->dual, off_road_Pa(loaded->plan, axle),
                              pressures->load_built_kg);
}

/* Why no speed is known, of the first axle of which none is. */
static enum remark_id no_speed_since(const struct loaded_setup *loaded)
{
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct tyre_rating *rating = &loaded->axle[axle].rating;
        if (!is_commercial_tyre(rating))
            return BASIS_PASSENGER_SPEED;
        if (is_below_tables(rating, off_road_Pa(loaded->plan, axle)))
            return BASIS_BELOW_FLOOR_SPEED;
    }
    return BASIS_LOW_SPEED;
}

static void report_speed_unknown(const struct loaded_setup *loaded, struct figures *figures)
{
    enum remark_id since = no_speed_since(loaded);
    struct figure figure =
        figure_on_axle(QUANTITY_OFF_ROAD_SPEED, UNKNOWN, AXLE_NONE, remark(since));
    const struct judgement how = {
        .if_unknown =
            remark(since == BASIS_LOW_SPEED ? ADVICE_SPEED_UNKNOWN : ADVICE_ASK_TYRE_MAKER)};
    figures_add(figures, judged(figure, &how));
}

/* The slower axle's speed. Always a caution at best: low pressure heats the tyre, and no standard
 * rates it for that. */
static void report_speed(const struct loaded_setup *loaded, struct figures *figures)
{
    double asked = loaded->plan->specification->off_road.speed_mps;
    double front = allowed_speed(loaded, AXLE_FRONT), rear = allowed_speed(loaded, AXLE_REAR);
    if (!known(front) || !known(rear)) {
        report_speed_unknown(loaded, figures);
        return;
    }
    int slower = clearly_above(front, rear) ? AXLE_REAR : AXLE_FRONT;
    struct figure figure = figure_on_axle(QUANTITY_OFF_ROAD_SPEED, lower_of(front, rear), slower,
                                          remark(BASIS_OFF_ROAD_SPEED));
    figure.state = loaded->axle[slower].heaviest_state;
    figure.limit = asked;
    const struct judgement how = {
        .holds = ANSWER_YES,
        .met = VERDICT_CAUTION,
        .if_met = remark(figure.value < asked ? ADVICE_DRIVE_SLOWER : ADVICE_SPEED_BOUND),
    };
    figures_add(figures, judged(figure, &how));
}

/* Air for all tyres, from low pressure to the recommended; INFINITY where none will do. */
static double air_to_come_back_m3(const struct loaded_setup *loaded)
{
    double air = 0;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        double road_Pa = loaded->axle[axle].recommended_Pa;
        struct tyre_measures measures;
        tyre_measure(&loaded->setup->axle[axle], &measures);
        if (isinf(road_Pa))
            return INFINITY;
        air += free_air_m3(cavity_volume_m3(&measures.stated), off_road_Pa(loaded->plan, axle),
                           road_Pa) *
               tyres_on_axle(loaded->axle[axle].dual);
    }
    return air;
}

static void report_inflating(const struct loaded_setup *loaded, struct figures *figures)
{
    double flow = loaded->plan->specification->off_road.compressor_flow_m3_per_s;
    double air = air_to_come_back_m3(loaded);
    if (isinf(air))
        return; /* there is no pressure to come back to, which is a finding already */
    const struct need needs[] = {
        {known(flow), remark(ADVICE_GIVE_FLOW)},
        {known(air), remark(ADVICE_AIR_UNKNOWN)},
    };
    struct figure figure =
        figure_on_axle(QUANTITY_FREE_AIR, air, AXLE_NONE, remark(BASIS_FREE_AIR));
    figures_add(figures,
                judged(figure, &(struct judgement){.if_unknown = remark(ADVICE_AIR_UNKNOWN)}));
    figure =
        figure_on_axle(QUANTITY_INFLATING_TIME, air / flow, AXLE_NONE, remark(BASIS_INFLATING));
    figures_add(figures, judged(figure, &(struct judgement){.needs = needs, .need_count = 2}));
}

void report_off_road(const struct loaded_setup *loaded, struct figures *figures)
{
    if (loaded->plan->specification->off_road.given == NULL)
        return;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        struct tyre_measures measures;
        tyre_measure(&loaded->setup->axle[axle], &measures);
        report_lost(loaded, axle, &measures.stated, figures);
        report_low_capacity(loaded, axle, figures);
    }
    report_speed(loaded, figures);
    report_inflating(loaded, figures);
}
