/* Student's t distribution for whole degrees of freedom. */
#ifndef TYRESUM_COMPUTE_STUDENT_T_H
#define TYRESUM_COMPUTE_STUDENT_T_H

#include <stddef.h>

/* The chance that |t| stays below `t` (not negative), for 1 degree of freedom or more: the finite
 * series of Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.7.3 and 26.7.4;
 * more than a million degrees count as a million, where it is the normal distribution. */
double student_t_within(double t, size_t degrees);

/* The t that |t| exceeds with that chance, above 0 and below 1: 0.05 for a 95 % interval.
 * UNKNOWN with no degree of freedom. */
double student_t_two_sided(double chance, size_t degrees);

#endif
