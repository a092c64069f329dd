/* Road-test readings: the line that fits them, how sure it is, which of them stand out, and whether
 * each is lawful with every setup. */
#include "base/known.h"
#include "base/units.h"
#include "report/speedometer/gauge.h"

/* No display shows a speed finer than this: a reading nearer to the line is no outlier. */
#define LEAST_RESIDUAL_MPS (0.25 / 3.6)

/* An error that other tyres alone seldom make; common practice, no source. */
static const double far_off = 0.15;

void calibrate(struct gauge *gauge)
{
    if (gauge->readings.count == 0)
        return;
    calibrate_scale(&gauge->readings, &gauge->by_scale);
    gauge->line_possible = spread_allows_offset(&gauge->readings);
    if (gauge->line_possible)
        calibrate_scale_and_offset(&gauge->readings, &gauge->by_line);
    /* An instrument that shows less the faster it goes has been misread. */
    gauge->line_possible = gauge->line_possible && gauge->by_line.scale.value > 0;
    bool scale_asked = gauge->instrument->fit == FIT_SCALE;
    gauge->calibration = gauge->line_possible && !scale_asked ? &gauge->by_line : &gauge->by_scale;
}

static const char *model_name(const struct calibration *calibration)
{
    return calibration->with_offset ? "scale and offset" : "scale alone";
}

/* An estimate with its standard error and 95 % interval, a row each. */
static void report_estimate(const struct gauge *gauge, enum quantity_id quantity,
                            const struct estimate *estimate, const struct calibration *calibration)
{
    const struct {
        enum place_estimate what;
        double value;
    } rows[] = {
        {AT_ESTIMATE, estimate->value},
        {AT_STANDARD_ERROR, estimate->standard_error},
        {AT_95_FROM, estimate->value - estimate->half_interval_95},
        {AT_95_TO, estimate->value + estimate->half_interval_95},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0] && known(rows[i].value); i++) {
        struct figure figure = gauge_figure(gauge, quantity, rows[i].value, remark(BASIS_FIT));
        figure.place.name = model_name(calibration);
        figure.place.estimate = rows[i].what;
        figure.headline = calibration == gauge->calibration ? HEADLINE_NO : HEADLINE_ROWS_ONLY;
        figures_add(gauge->figures, figure);
    }
}

static void report_calibration(const struct gauge *gauge, const struct calibration *calibration)
{
    report_estimate(gauge, QUANTITY_FIT_SCALE, &calibration->scale, calibration);
    if (calibration->with_offset)
        report_estimate(gauge, QUANTITY_FIT_OFFSET, &calibration->offset, calibration);
}

static void report_standard_error(const struct gauge *gauge)
{
    const struct calibration *calibration = gauge->calibration;
    struct argument model = say_text(model_name(calibration));
    struct arena *arena = gauge->plan->arena;
    struct remark basis = calibration->readings == 1
                              ? REMARK_WITH(arena, BASIS_FIT_OF_ONE, model)
                              : REMARK_WITH(arena, BASIS_FIT_OF_MANY, model,
                                            say_number((double)calibration->readings, 0));
    struct figure figure =
        gauge_figure(gauge, QUANTITY_READING_FIT_ERROR, calibration->standard_error, basis);
    if (!known(figure.value))
        figure.advice = remark(ADVICE_TAKE_MORE);
    figures_add(gauge->figures, figure);
}

/* As it is counted in the file. */
static void place_reading(const struct gauge *gauge, size_t index, struct place *place)
{
    size_t pairs = gauge->instrument->readings.count;
    bool timed = index >= pairs;
    place->counted = timed ? COUNTED_TIMED_READING : COUNTED_READING;
    place->number = (int)(timed ? index - pairs : index) + 1;
}

bool readings_are_far_off(const struct gauge *gauge)
{
    double at = gauge->at_mps;
    return gauge->calibration != NULL &&
           clearly_above(fabs(calibrated_shown(gauge->calibration, at) / at - 1), far_off);
}

/* The line itself is lawful, and its interval reaches beyond a bound; on the tyre that was
 * measured. */
bool readings_leave_law_open(const struct gauge *gauge)
{
    const struct calibration *calibration = gauge->calibration;
    if (gauge->law.rule == NULL || calibration == NULL || calibration->degrees == 0)
        return false;
    struct instrument_line line = {calibration->scale.value, calibration->offset.value};
    return keeps_lawful(gauge, line, (struct spread){0, 0}, NULL) &&
           !keeps_lawful(gauge, line, (struct spread){0, 0}, calibration);
}

/* What the readings as a whole leave in doubt. */
static struct remark doubt_of_readings(const struct gauge *gauge)
{
    if (readings_are_far_off(gauge))
        return remark(ADVICE_FAR_OFF);
    struct remark elsewhere = readings_elsewhere(gauge);
    if (elsewhere.id != REMARK_NONE)
        return elsewhere;
    return remark(readings_leave_law_open(gauge) ? ADVICE_LEAVE_LAW_OPEN : REMARK_NONE);
}

/* The error at a round speed and its interval, on the tyre that was measured. */
static void report_measured(const struct gauge *gauge)
{
    double at = gauge->at_mps;
    double error = calibrated_shown(gauge->calibration, at) / at - 1;
    double half = calibrated_half_interval_95(gauge->calibration, at) / at;
    const struct {
        enum place_estimate what;
        double value;
        struct remark doubt;
    } rows[] = {
        {AT_NO_ESTIMATE, error, doubt_of_readings(gauge)},
        {AT_95_FROM, error - half, remark(REMARK_NONE)},
        {AT_95_TO, error + half, remark(REMARK_NONE)},
    };
    struct remark basis =
        REMARK_WITH(gauge->plan->arena, BASIS_FITTED_LINE, say_text(gauge->measured.name));
    for (size_t i = 0; i < sizeof rows / sizeof rows[0] && known(rows[i].value); i++) {
        struct figure figure =
            gauge_figure_at(gauge, QUANTITY_MEASURED_ERROR, rows[i].value, basis, AT_TRUE, at);
        figure.place.estimate = rows[i].what;
        bool doubted = rows[i].doubt.id != REMARK_NONE;
        figures_add(
            gauge->figures,
            judged(figure, &(struct judgement){.holds = doubted ? ANSWER_NO : ANSWER_NOT_ASKED,
                                               .broken = VERDICT_CAUTION,
                                               .if_broken = rows[i].doubt}));
    }
}

/* An outlier is named and stays in the fit: whether it was misread only the tester can say. */
static void report_residuals(const struct gauge *gauge)
{
    double bound = outlier_bound(gauge->calibration);
    for (size_t i = 0; i < gauge->readings.count; i++) {
        const struct value_pair *reading = &gauge->readings.items[i];
        bool outlier = is_outlier(gauge->calibration, reading, bound, LEAST_RESIDUAL_MPS);
        struct figure figure = gauge_figure_at(gauge, QUANTITY_READING_RESIDUAL,
                                               residual_of(gauge->calibration, reading),
                                               remark(BASIS_RESIDUAL), AT_SHOWN, reading->first);
        place_reading(gauge, i, &figure.place);
        figures_add(
            gauge->figures,
            judged(figure, &(struct judgement){.holds = outlier ? ANSWER_NO : ANSWER_NOT_ASKED,
                                               .broken = VERDICT_CAUTION,
                                               .if_broken = remark(ADVICE_OUTLIER)}));
    }
}

static void report_limits_of_readings(const struct gauge *gauge)
{
    if (gauge->readings.count == 1)
        gauge_assume(gauge, TAKEN_ONE_READING);
    else if (gauge->readings.count == 2)
        gauge_assume(gauge, TAKEN_TWO_READINGS);
    else if (spread_allows_offset(&gauge->readings) && !gauge->line_possible)
        gauge_assume(gauge, TAKEN_FALLING);
    else if (!gauge->line_possible)
        gauge_assume(gauge, TAKEN_ONE_SPEED);
}

void report_readings(const struct gauge *gauge)
{
    if (gauge->calibration == NULL)
        return;
    report_limits_of_readings(gauge);
    report_standard_error(gauge);
    report_calibration(gauge, &gauge->by_scale);
    if (gauge->line_possible)
        report_calibration(gauge, &gauge->by_line);
    report_measured(gauge);
    report_residuals(gauge);
}

/* What the instrument would have shown of a reading, with another scale. */
static double shown_with(const struct gauge *gauge, const struct value_pair *reading,
                         struct instrument_line line)
{
    const struct calibration *calibration = gauge->calibration;
    double offset = calibration->offset.value;
    return (reading->first - offset) * line.scale / calibration->scale.value + offset;
}

static void report_reading(const struct gauge *gauge, size_t index, struct instrument_line line,
                           enum place_setting setting)
{
    const struct value_pair *reading = &gauge->readings.items[index];
    double true_mps = reading->second, shown = shown_with(gauge, reading, line);
    struct figure figure = gauge_figure_at(gauge, QUANTITY_READING_ERROR, shown / true_mps - 1,
                                           law_basis(gauge), AT_TRUE, true_mps);
    struct lawful_check check;
    check_lawful_at(&gauge->law, true_mps, shown, &check);
    place_reading(gauge, index, &figure.place);
    figure.place.setting = setting;
    figure.headline = HEADLINE_ROWS_ONLY;
    const struct need tyres = {known(shown), remark(ADVICE_GIVE_TYRE)};
    figures_add(gauge->figures,
                judged(limited_by_law(figure, &check, true_mps),
                       &(struct judgement){
                           .needs = &tyres,
                           .need_count = 1,
                           .holds = check.lawful,
                           .broken = VERDICT_CAUTION, /* a reading is no more than one sample */
                           .if_broken = off_law(gauge, PHRASE_OFF, &check)}));
}

void report_readings_judged(const struct gauge *gauge, const struct dial *dial)
{
    if (gauge->calibration == NULL || gauge->law.rule == NULL)
        return;
    for (size_t i = 0; i < gauge->readings.count; i++) {
        report_reading(gauge, i, dial->line, AT_SETTING_NOW);
        if (known(dial->answer.nearest))
            report_reading(gauge, i, dial->line_set, AT_SETTING_ENTERED);
    }
}
