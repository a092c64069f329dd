#include "compute/least_squares.h"

#include "base/known.h"
#include "compute/student_t.h"

#define CHANCE_OUTSIDE 0.05

static double sum_of_squares_left(const struct calibration *calibration,
                                  const struct pair_list *readings)
{
    double sum = 0;
    for (size_t i = 0; i < readings->count; i++) {
        double left = residual_of(calibration, &readings->items[i]);
        sum += left * left;
    }
    return sum;
}

static struct estimate estimate_of(const struct calibration *calibration, double value,
                                   double standard_error)
{
    return (struct estimate){value, standard_error, calibration->t_95 * standard_error};
}

/* s^2 = sum r^2 / (n - p); se(scale) = s / sqrt(Sxx); se(offset) = s sqrt(1/n + mean^2 / Sxx). */
static void set_errors(struct calibration *out, const struct pair_list *readings)
{
    size_t coefficients = out->with_offset ? 2 : 1;
    bool free_left = readings->count > coefficients;
    out->readings = readings->count;
    out->degrees = free_left ? readings->count - coefficients : 0;
    out->standard_error =
        free_left ? sqrt(sum_of_squares_left(out, readings) / (double)out->degrees) : UNKNOWN;
    out->t_95 = student_t_two_sided(CHANCE_OUTSIDE, out->degrees);
    double share = out->mean_true * out->mean_true / out->sum_square;
    out->scale = estimate_of(out, out->scale.value, out->standard_error / sqrt(out->sum_square));
    if (out->with_offset)
        out->offset = estimate_of(out, out->offset.value,
                                  out->standard_error * sqrt(1 / (double)out->readings + share));
}

void calibrate_scale(const struct pair_list *readings, struct calibration *out)
{
    double square = 0, product = 0;
    for (size_t i = 0; i < readings->count; i++) {
        square += readings->items[i].second * readings->items[i].second;
        product += readings->items[i].second * readings->items[i].first;
    }
    *out = (struct calibration){.sum_square = square};
    out->scale.value = readings->count > 0 ? product / square : UNKNOWN;
    set_errors(out, readings);
}

/* Sums about the means, so that near-equal speeds lose no digits. */
void calibrate_scale_and_offset(const struct pair_list *readings, struct calibration *out)
{
    double count = (double)readings->count, mean_true = 0, mean_shown = 0, square = 0, product = 0;
    for (size_t i = 0; i < readings->count; i++) {
        mean_shown += readings->items[i].first / count;
        mean_true += readings->items[i].second / count;
    }
    for (size_t i = 0; i < readings->count; i++) {
        double x = readings->items[i].second - mean_true;
        square += x * x;
        product += x * (readings->items[i].first - mean_shown);
    }
    *out = (struct calibration){.with_offset = true, .mean_true = mean_true, .sum_square = square};
    out->scale.value = product / square;
    out->offset.value = mean_shown - out->scale.value * mean_true;
    set_errors(out, readings);
}

bool spread_allows_offset(const struct pair_list *readings)
{
    double least = INFINITY, most = -INFINITY;
    for (size_t i = 0; i < readings->count; i++) {
        least = fmin(least, readings->items[i].second);
        most = fmax(most, readings->items[i].second);
    }
    return readings->count >= 3 && most - least >= 0.01 * most;
}

double calibrated_shown(const struct calibration *calibration, double true_value)
{
    return calibration->scale.value * true_value + calibration->offset.value;
}

/* With d = u - mean, c = the line at the mean less `shown`, q = t s: A d + c = -edge q sqrt(1/n +
 * d^2 / Sxx), squared and solved for d. */
double calibrated_true_at_edge(const struct calibration *calibration, double shown,
                               enum band_edge edge)
{
    double slope = calibration->scale.value, squares = calibration->sum_square;
    double q = calibration->t_95 * calibration->standard_error;
    double c = calibrated_shown(calibration, calibration->mean_true) - shown;
    double constant = calibration->with_offset ? 1 / (double)calibration->readings : 0;
    double rising = slope * slope - q * q / squares;
    if (!(slope > 0) || !(rising > 0))
        return UNKNOWN;
    double root = q * sqrt(c * c / squares + rising * constant);
    return calibration->mean_true + (-slope * c - (double)edge * root) / rising;
}

double residual_of(const struct calibration *calibration, const struct value_pair *reading)
{
    return reading->first - calibrated_shown(calibration, reading->second);
}

/* How much a true value weighs on the line there: h = 1/n + (x - mean)^2 / Sxx. */
static double leverage_at(const struct calibration *calibration, double true_value)
{
    double off = true_value - calibration->mean_true;
    double constant = calibration->with_offset ? 1 / (double)calibration->readings : 0;
    return constant + off * off / calibration->sum_square;
}

double calibrated_half_interval_95(const struct calibration *calibration, double true_value)
{
    return calibration->t_95 * calibration->standard_error *
           sqrt(leverage_at(calibration, true_value));
}

/* Cook and Weisberg, Residuals and Influence in Regression (1982), 2.2.11 in the form
 * t = r sqrt((n - p - 1) / (SSE (1 - h) - r^2)). */
double studentised_residual(const struct calibration *calibration, const struct value_pair *reading)
{
    if (calibration->degrees < 2)
        return UNKNOWN;
    double residual = residual_of(calibration, reading);
    double left =
        calibration->standard_error * calibration->standard_error * (double)calibration->degrees;
    double others = left * (1 - leverage_at(calibration, reading->second)) - residual * residual;
    if (others <= 1e-12 * left)
        return residual == 0 ? 0 : copysign(INFINITY, residual);
    return residual * sqrt((double)(calibration->degrees - 1) / others);
}

double outlier_bound(const struct calibration *calibration)
{
    if (calibration->degrees < 2)
        return UNKNOWN;
    return student_t_two_sided(CHANCE_OUTSIDE / (double)calibration->readings,
                               calibration->degrees - 1);
}

bool is_outlier(const struct calibration *calibration, const struct value_pair *reading,
                double bound, double least)
{
    return fabs(residual_of(calibration, reading)) >= least &&
           fabs(studentised_residual(calibration, reading)) > bound;
}
