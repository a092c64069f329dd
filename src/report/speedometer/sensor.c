/* Counts that reach the instrument: a prediction of its error where no reading gives one. */
#include "base/known.h"
#include "base/units.h"
#include "report/speedometer/gauge.h"

/* Counts per metre that reach the instrument with the fitted tyre, UNKNOWN where not given. */
static double sensor_counts_per_m(const struct gauge *gauge, double fitted_circumference_m)
{
    const struct sensor *sensor = &gauge->instrument->sensor;
    const struct axle_pair *axle = &gauge->plan->specification->drivetrain.axle;
    if (sensor->given == NULL)
        return UNKNOWN;
    if (known(sensor->characteristic_coefficient))
        return sensor->characteristic_coefficient / 1000;
    switch (sensor->on) {
    case SENSOR_ON_WHEEL:
        return sensor_pulses_per_m(sensor->pulses_per_turn, 1, fitted_circumference_m);
    case SENSOR_ON_SHAFT:
        return sensor_pulses_per_m(sensor->pulses_per_turn, of_axle(*axle, gauge->axle),
                                   fitted_circumference_m);
    case SENSOR_ON_CABLE:
        return sensor_pulses_per_m(sensor->pulses_per_turn, sensor->turns_per_km, 1000);
    default:
        return UNKNOWN;
    }
}

/* What the instrument is set to, counts per metre. */
static double set_counts_per_m(const struct setting *setting)
{
    switch (setting->kind) {
    case SETTING_PULSES_PER_KM:
    case SETTING_CONSTANT_K:
        return setting->now / 1000;
    case SETTING_PULSES_PER_MILE:
        return unit_to_si(UNIT_PER_MILE, setting->now);
    default:
        return UNKNOWN;
    }
}

double sensor_error(const struct gauge *gauge, double fitted_circumference_m)
{
    return error_of_counts(sensor_counts_per_m(gauge, fitted_circumference_m),
                           set_counts_per_m(&gauge->instrument->setting));
}

double setting_that_reads_true(const struct gauge *gauge, double fitted_circumference_m)
{
    int kind = gauge->instrument->setting.kind;
    double counts_per_m = sensor_counts_per_m(gauge, fitted_circumference_m);
    switch (kind) {
    case SETTING_PULSES_PER_KM:
    case SETTING_CONSTANT_K:
        return unit_from_si(UNIT_PER_KM, counts_per_m);
    case SETTING_PULSES_PER_MILE:
        return unit_from_si(UNIT_PER_MILE, counts_per_m);
    default:
        return setting_of_tyre(kind, fitted_circumference_m);
    }
}

struct remark sensor_advice(const struct gauge *gauge)
{
    return remark(gauge->instrument->sensor.on == SENSOR_ON_SHAFT ? ADVICE_GIVE_AXLE
                                                                  : ADVICE_GIVE_TYRE);
}

void report_sensor(const struct gauge *gauge, const struct dial *dial)
{
    const struct sensor *sensor = &gauge->instrument->sensor;
    if (sensor->given == NULL)
        return;
    bool measured = known(sensor->characteristic_coefficient);
    double counts = sensor_counts_per_m(gauge, dial->from_m) * dial->from_m / dial->to_m;
    struct figure figure = gauge_figure(gauge, QUANTITY_SENSOR_COUNTS, counts,
                                        remark(measured ? BASIS_COEFFICIENT : BASIS_SENSOR));
    figures_add(gauge->figures,
                judged(figure, &(struct judgement){.if_unknown = sensor_advice(gauge)}));
}
