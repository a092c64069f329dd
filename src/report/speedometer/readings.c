/* Road-test readings: the line that fits them, how sure it is, which of them stand out, and whether
 * each is lawful with every setup. */
#include "base/known.h"
#include "base/units.h"
#include "report/speedometer/view.h"

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

/* An estimate with its standard error and 95 % interval, a row each. */
static void report_estimate(const struct gauge *gauge, enum quantity_id quantity,
                            const struct estimate *estimate, const struct calibration *calibration)
{
    const char *model = calibration->with_offset ? "scale and offset" : "scale alone";
    const struct {
        const char *what;
        double value;
    } rows[] = {
        {"estimate", estimate->value},
        {"standard error", estimate->standard_error},
        {"95 % from", estimate->value - estimate->half_interval_95},
        {"95 % to", estimate->value + estimate->half_interval_95},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0] && known(rows[i].value); i++) {
        struct figure figure = gauge_figure(gauge, quantity, rows[i].value,
                                            "least squares; interval by Student's t, two-sided");
        figure.at = arena_format(gauge->plan->arena, "%s, %s", model, rows[i].what);
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
    struct figure figure =
        gauge_figure(gauge, QUANTITY_READING_FIT_ERROR, calibration->standard_error,
                     calibration->with_offset ? "least squares, scale and offset"
                                              : "least squares, scale alone");
    figure.at = arena_format(gauge->plan->arena, "%zu reading%s", calibration->readings,
                             calibration->readings == 1 ? "" : "s");
    if (!known(figure.value))
        figure.action = "so few readings tell nothing of their own error: take more";
    figures_add(gauge->figures, figure);
}

/* "reading 3", or "timed reading 1": as they are counted in the file. */
static const char *reading_name(const struct gauge *gauge, size_t index)
{
    size_t pairs = gauge->instrument->readings.count;
    bool timed = index >= pairs;
    return arena_format(gauge->plan->arena, "%sreading %zu", timed ? "timed " : "",
                        (timed ? index - pairs : index) + 1);
}

bool readings_are_far_off(const struct gauge *gauge)
{
    double at = gauge->at_mps;
    return gauge->calibration != NULL &&
           clearly_above(fabs(calibrated_shown(gauge->calibration, at) / at - 1), far_off);
}

/* Whether the interval of the line reaches beyond a bound that the line itself keeps, at either end
 * of the range judged; on the tyre that was measured. */
bool readings_leave_law_open(const struct gauge *gauge)
{
    if (gauge->rule == NULL || gauge->calibration == NULL || gauge->calibration->degrees == 0)
        return false;
    struct speed_range range = judged_range(gauge->rule, gauge->top_mps);
    const double ends[] = {range.from_mps, range.to_mps};
    bool reaches = false;
    for (int i = 0; i < 2; i++) {
        struct speed_range allowed = lawful_shown(gauge->rule, ends[i]);
        double shown = calibrated_shown(gauge->calibration, ends[i]);
        double half = calibrated_half_interval_95(gauge->calibration, ends[i]);
        if (shown < allowed.from_mps || shown > allowed.to_mps)
            return false; /* broken by the line itself, which is told elsewhere */
        reaches = reaches || shown - half < allowed.from_mps || shown + half > allowed.to_mps;
    }
    return reaches;
}

/* The error at a round speed and its interval, on the tyre that was measured. */
static void report_measured(const struct gauge *gauge)
{
    double at = gauge->at_mps;
    double error = calibrated_shown(gauge->calibration, at) / at - 1;
    double half = calibrated_half_interval_95(gauge->calibration, at) / at;
    const double values[] = {error, error - half, error + half};
    static const char *const names[] = {"", ", 95 % from", ", 95 % to"};
    bool open = readings_leave_law_open(gauge);
    for (int i = 0; i < 3 && known(values[i]); i++) {
        struct figure figure =
            gauge_figure(gauge, QUANTITY_MEASURED_ERROR, values[i],
                         "the fitted line itself; interval by Student's t, two-sided");
        figure.at = arena_format(gauge->plan->arena, "on %s, true %s%s", gauge->measured.name,
                                 speed_text(gauge, at), names[i]);
        if (i == 0 && readings_are_far_off(gauge)) {
            figure.verdict = VERDICT_CAUTION;
            figure.action = "very far off: check that each reading is [shown, true], and that no "
                            "kilometre is called a mile";
        } else if (i == 0 && open) {
            figure.verdict = VERDICT_CAUTION;
            figure.action = "so few or so scattered readings leave it open whether it is lawful "
                            "at every speed: take more, and faster ones";
        }
        figures_add(gauge->figures, figure);
    }
}

/* An outlier is named and stays in the fit: whether it was misread only the tester can say. */
static void report_residuals(const struct gauge *gauge)
{
    double bound = outlier_bound(gauge->calibration);
    for (size_t i = 0; i < gauge->readings.count; i++) {
        const struct value_pair *reading = &gauge->readings.items[i];
        bool outlier = is_outlier(gauge->calibration, reading, bound, LEAST_RESIDUAL_MPS);
        struct figure figure =
            gauge_figure(gauge, QUANTITY_READING_RESIDUAL, residual_of(gauge->calibration, reading),
                         "studentised residual against Student's t, 5 % for all readings together");
        figure.at = arena_format(gauge->plan->arena, "%s, shown %s", reading_name(gauge, i),
                                 speed_text(gauge, reading->first));
        figure.headline = outlier ? HEADLINE_NO : HEADLINE_ROWS_ONLY;
        figure.verdict = outlier ? VERDICT_CAUTION : VERDICT_NONE;
        figure.action = outlier ? "stands out from the other readings and is kept in the fit: read "
                                  "it again, or take it out of the file"
                                : NULL;
        figures_add(gauge->figures, figure);
    }
}

static void report_limits_of_readings(const struct gauge *gauge)
{
    if (gauge->readings.count == 1)
        gauge_assume(gauge, "one reading gives a scale alone, without an interval; two more at "
                            "other speeds would show an offset and how sure it is");
    else if (gauge->readings.count == 2)
        gauge_assume(gauge, "two readings are fitted by a scale alone; a third at another speed "
                            "would show an offset");
    else if (spread_allows_offset(&gauge->readings) && !gauge->line_possible)
        gauge_assume(gauge, "the readings do not rise with the speed, so that they give a scale "
                            "alone: read them again");
    else if (!gauge->line_possible)
        gauge_assume(gauge, "all readings are at one speed: they give a scale alone, and nothing "
                            "shows an offset");
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
                           const char *when)
{
    const struct value_pair *reading = &gauge->readings.items[index];
    double true_mps = reading->second, shown = shown_with(gauge, reading, line);
    struct figure figure =
        gauge_figure(gauge, QUANTITY_READING_ERROR, shown / true_mps - 1, gauge->rule->basis);
    struct lawful_check check;
    check_lawful_at(gauge->rule, true_mps, shown, &check);
    figure.limit = check.bound_shown_mps / true_mps - 1;
    figure.verdict = !known(shown)  ? VERDICT_UNKNOWN
                     : check.lawful ? VERDICT_OK
                                    : VERDICT_CAUTION; /* a reading is no more than one sample */
    figure.at = arena_format(gauge->plan->arena, "%s, %s, true %s", when,
                             reading_name(gauge, index), speed_text(gauge, true_mps));
    figure.action = check.lawful ? NULL : check.reads_under ? "reads under" : "reads too far over";
    figure.headline = HEADLINE_ROWS_ONLY;
    figures_add(gauge->figures, figure);
}

void report_readings_judged(const struct gauge *gauge, const struct gauge_view *view)
{
    if (gauge->calibration == NULL || gauge->rule == NULL)
        return;
    for (size_t i = 0; i < gauge->readings.count; i++) {
        report_reading(gauge, i, view->line, "as set now");
        if (known(view->answer.nearest))
            report_reading(gauge, i, view->line_set, "as entered");
    }
}
