/* Drivetrain and instrument of a random build. */
#include <math.h>

#include "random_draw.h"
#include "support.h"

static void put_gearbox(struct draw *draw, struct build_text *out)
{
    int gears = random_whole(&draw->state, 4, 8);
    double ratio = steps(draw, 3, 5, 0.01), smaller = steps(draw, 0.68, 0.78, 0.01);
    if (chance(draw, 5)) {
        put(out, "  continuously_variable: {lowest_gear: 2.63, highest_gear: 0.53}\n");
    } else {
        put(out, "  gears: [");
        for (int i = 0; i < gears; i++, ratio *= smaller)
            put(out, "%s%.3f", i > 0 ? ", " : "", ratio);
        put(out, "]\n");
    }
    if (chance(draw, 70))
        put(out, "  reverse: 3.22\n");
    if (chance(draw, 50))
        put(out, "  transfer: {high: 1.00, low: %s}\n", chance(draw, 70) ? "2.37" : "[2.2, 4.1]");
    if (chance(draw, 20))
        put(out, "  hub_reduction: 1.2\n");
}

static void put_torque(struct draw *draw, struct build_text *out)
{
    int points = random_whole(&draw->state, 2, 6);
    double speed = steps(draw, 900, 1400, 50), torque = steps(draw, 120, 500, 10);
    put(out, "torque: [");
    for (int i = 0; i < points; i++) {
        put(out, "%s[%.0f rpm, ", i > 0 ? ", " : "", speed);
        quantity(draw, out, KIND_TORQUE, torque * draw->how->more_torque);
        put(out, "]");
        speed += steps(draw, 300, 900, 50);
        torque *= steps(draw, 0.85, 1.15, 0.01);
    }
    put(out, "], ");
}

static void put_engine(struct draw *draw, struct build_text *out)
{
    put(out, "  engine: {");
    perhaps(draw, out, 80, "idle", KIND_ROTATION, steps(draw, 600, 850, 10));
    perhaps(draw, out, 80, "limit", KIND_ROTATION, steps(draw, 3800, 6800, 100));
    if (chance(draw, 85))
        put_torque(draw, out);
    put(out, "}\n");
}

void put_drivetrain(struct draw *draw, struct build_text *out)
{
    double axle = steps(draw, 2.8, 4.9, 0.01), other = axle + steps(draw, -0.02, 0.02, 0.01);
    put(out, "drivetrain:\n");
    put_gearbox(draw, out);
    if (chance(draw, 30))
        put(out, "  axle: {front: %.3f, rear: %.3f}\n", axle, other);
    else
        put(out, "  axle: %.3f\n", axle);
    if (chance(draw, 60))
        put(out, "  axle_choices: [%.2f, %.2f, %.2f]\n", axle + 0.3, axle - 0.25, axle + 0.65);
    put(out, "  ");
    if (chance(draw, 70))
        put(out, "efficiency: %d %%\n  ", random_whole(&draw->state, 80, 96));
    if (chance(draw, 40))
        put(out, "slip: %d %%\n  ", random_whole(&draw->state, 0, 8));
    if (chance(draw, 70))
        put(out, "grip: 0.%d\n  ", random_whole(&draw->state, 3, 9));
    if (chance(draw, 50))
        put(out, "rolling_resistance: 0.0%d\n  ", random_whole(&draw->state, 10, 40));
    put(out, "\n");
    if (chance(draw, 85))
        put_engine(draw, out);
    if (chance(draw, 40))
        put(out, "  cruising_speed: "), quantity(draw, out, KIND_SPEED, 105), put(out, "\n");
    if (chance(draw, 30))
        put(out, "  road_speeds: [40 km/h, 90 km/h]\n  engine_speeds: [1500 rpm, 3000 rpm]\n");
    if (chance(draw, 70))
        put(out, "  grades: [0 %%, 2 %%, 5 %%, 9 %%, 14 %%, 22 %%, 35 %%]\n");
}

static void put_setting(struct draw *draw, struct build_text *out)
{
    static const struct {
        const char *kind;
        double now, step;
    } settings[] = {
        {"pulses_per_km", 2548, 1}, {"pulses_per_mile", 4000, 10}, {"revs_per_km", 430, 1},
        {"revs_per_mile", 690, 1},  {"circumference_mm", 2280, 5}, {"driven_gear_teeth", 19, 1},
        {"constant_k", 8000, 1},
    };
    size_t i = (size_t)random_whole(&draw->state, 0, (int)LENGTH_OF(settings) - 1);
    bool limited = chance(draw, 50), has_step = chance(draw, 80);
    bool is_new = draw->how->new_instrument;
    i = is_new ? 2 + i % 3 : i; /* what a tyre tells */
    put(out, "  setting: {kind: %s, ", settings[i].kind);
    if (!is_new)
        put(out, "now: %g, ", settings[i].now);
    if (has_step)
        bare(out, "step", settings[i].step);
    if (limited)
        put(out, "min: %.0f, max: %.0f", floor(settings[i].now / 3), settings[i].now * 3);
    put(out, "}\n");
}

static void put_readings(struct draw *draw, struct build_text *out)
{
    int count = random_whole(&draw->state, 1, 5);
    double error = steps(draw, 0.94, 1.02, 0.001);
    put(out, "  readings: [");
    for (int i = 0; i < count; i++) {
        double shown = 40 + 20 * i, real = shown * error + steps(draw, -0.6, 0.6, 0.1);
        unsigned turn = draw->quantities++;
        put(out, "%s[", i > 0 ? ", " : "");
        put_in_unit(draw, out, KIND_SPEED, shown, turn);
        put(out, ", ");
        put_in_unit(draw, out, KIND_SPEED, real, turn);
        put(out, "]");
    }
    put(out, "]\n");
}

static void put_odometer(struct draw *draw, struct build_text *out)
{
    put(out, "  odometer: {");
    double shown = steps(draw, 9600, 10400, 1) * 1e3;
    bool readings = chance(draw, 50);
    if (readings && !draw->how->no_error) {
        unsigned turn = draw->quantities++;
        put(out, "readings: [[");
        put_in_unit(draw, out, KIND_LENGTH, shown, turn);
        put(out, ", ");
        put_in_unit(draw, out, KIND_LENGTH, 1e7, turn);
        put(out, "]], ");
    }
    if (chance(draw, 50))
        put(out, "rule: adr_18_02, ");
    perhaps(draw, out, 50, "since_change", KIND_LENGTH, steps(draw, 1e9, 9e9, 1e8));
    perhaps(draw, out, 50, "service_interval", KIND_LENGTH, steps(draw, 1e10, 2e10, 1e9));
    put(out, "}\n");
}

void put_speedometer(struct draw *draw, struct build_text *out, int options)
{
    static const char *const rules[] = {"un_r39",    "eu_75_443", "adr_18_03",
                                        "adr_18_02", "us_393_82", "eu_recording"};
    static const char *const aims[] = {"lowest_lawful", "as_before", "2 %"};
    bool no_error = draw->how->no_error;
    put(out, "speedometer:\n  unit: %s\n", chance(draw, 60) ? "km/h" : "mph");
    if (chance(draw, 80))
        put(out, "  rule: %s\n", rules[random_whole(&draw->state, 0, 5)]);
    double error = steps(draw, -2, 8, 0.1);
    if (chance(draw, 60) && !no_error)
        put(out, "  fitted_error: %.1f %%\n", error);
    struct build_text readings;
    start(&readings);
    put_readings(draw, &readings);
    int on = random_whole(&draw->state, 0, options);
    if (chance(draw, 50) && !no_error)
        put(out, "%s", readings.text);
    if (chance(draw, 20) && !no_error)
        put(out, "  timed_readings: [[1 km, 36.9 s, 100 km/h]]\n");
    if (chance(draw, 40) && !no_error)
        on == 0 ? put(out, "  readings_on: fitted\n") : put(out, "  readings_on: option %d\n", on);
    if (chance(draw, 40))
        put(out, "  fit: %s\n", chance(draw, 50) ? "scale" : "scale_and_offset");
    if (chance(draw, 75))
        put_setting(draw, out);
    if (chance(draw, 75))
        put(out, "  aim: %s\n", aims[random_whole(&draw->state, 0, 2)]);
    if (chance(draw, 20) && !no_error)
        put(out, "  sensor: {on: shaft, pulses_per_turn: 8}\n");
    if (chance(draw, 60))
        put_odometer(draw, out);
    if (chance(draw, 30))
        put(out, "  range: {from: 20 km/h, to: 160 km/h, step: 10 km/h}\n");
    if (chance(draw, 40))
        put(out, "  posted_limits: [50 km/h, 80 km/h]\n");
    double consumption = steps(draw, 5, 18, 0.1);
    if (chance(draw, 50))
        put(out, "  consumption: "), quantity(draw, out, KIND_CONSUMPTION, consumption),
            put(out, "\n");
}
