/* Calibration of an instrument from readings: least squares of what it shows on what is true,
 * shown = scale * true + offset, every reading of equal weight. In any one unit throughout. */
#ifndef TYRESUM_COMPUTE_LEAST_SQUARES_H
#define TYRESUM_COMPUTE_LEAST_SQUARES_H

#include <stdbool.h>
#include <stddef.h>

#include "build/specification.h"

/* One coefficient: its estimate, standard error, and half the width of its 95 % interval. Both are
 * UNKNOWN where no degree of freedom is left. */
struct estimate {
    double value, standard_error, half_interval_95;
};

struct calibration {
    bool with_offset;
    size_t readings, degrees; /* degrees of freedom: readings less coefficients */
    struct estimate scale, offset;
    double standard_error;        /* of a reading: the residual standard deviation */
    double t_95;                  /* Student's t that 5 % lie beyond, either way */
    double mean_true, sum_square; /* of true about its mean, or about 0 without an offset */
};

/* Items of `readings`: first is shown, second is true. Standard errors and intervals by Draper and
 * Smith, Applied Regression Analysis, chapter 1. With no reading all is UNKNOWN. */
void calibrate_scale(const struct pair_list *readings, struct calibration *out);

/* Needs two different true values. */
void calibrate_scale_and_offset(const struct pair_list *readings, struct calibration *out);

/* True where the true values lie far enough apart for a line: at least three readings, and one per
 * cent between the lowest and the highest. */
bool spread_allows_offset(const struct pair_list *readings);

double calibrated_shown(const struct calibration *calibration, double true_value);

/* Half the 95 % interval of the line itself at a true value. */
double calibrated_half_interval_95(const struct calibration *calibration, double true_value);

/* Edges of the line's 95 % band. */
enum band_edge { BAND_LOWER = -1, BAND_UPPER = 1 };

/* The true value at which an edge of the band shows `shown`: inverse regression, Draper and Smith,
 * chapter 3 (Fieller's theorem). UNKNOWN where the readings tell nothing of their own error, or
 * leave open whether the instrument rises with the speed. */
double calibrated_true_at_edge(const struct calibration *calibration, double shown,
                               enum band_edge edge);

/* Shown less what the calibration says. */
double residual_of(const struct calibration *calibration, const struct value_pair *reading);

/* The externally studentised residual: the residual beside the line that the other readings give,
 * in its own standard error. UNKNOWN where too few readings are left for one; infinite where the
 * others lie on their line exactly and this one does not. */
double studentised_residual(const struct calibration *calibration,
                            const struct value_pair *reading);

/* Outlier test: what the studentised residual must exceed, by Student's t at 5 % for all readings
 * together (Bonferroni). UNKNOWN where too few readings are left to tell one. */
double outlier_bound(const struct calibration *calibration);

/* A residual below `least` (the resolution of the display) makes no outlier. */
bool is_outlier(const struct calibration *calibration, const struct value_pair *reading,
                double bound, double least);

#endif
