/* A value that was not given, or that cannot be computed from what was given, is UNKNOWN.
 * It is a quiet NaN inside, so that it passes through arithmetic and stays unknown; no
 * writer ever prints it as a number. */
#ifndef TYRESUM_BASE_KNOWN_H
#define TYRESUM_BASE_KNOWN_H

#include <math.h>
#include <stdbool.h>

#define UNKNOWN ((double)NAN)

static inline bool known(double value)
{
    return !isnan(value);
}

/* The first value where it is known, the second otherwise. */
static inline double known_or(double value, double otherwise)
{
    return known(value) ? value : otherwise;
}

/* Smaller or larger of two known values; where one is unknown, the other (fmin, fmax). */
static inline double lower_of(double a, double b)
{
    return fmin(a, b);
}

static inline double higher_of(double a, double b)
{
    return fmax(a, b);
}

/* Whether a is above b by more than a conversion of units may leave (a billionth): 7 in and 177.8
 * mm are one length. False where either is unknown. */
static inline bool clearly_above(double a, double b)
{
    return a - b > 1e-9 * fabs(b);
}

/* Whether both are one number, whichever way each was computed, or both unknown. */
static inline bool same_value(double a, double b)
{
    return known(a) == known(b) && !clearly_above(a, b) && !clearly_above(b, a);
}

/* floor() of a value from 0 to 2^53, or of an unknown one, without a call. */
static inline double whole_part(double value)
{
    return known(value) ? (double)(long long)value : value;
}

enum axle { AXLE_FRONT, AXLE_REAR, AXLE_COUNT };
/* Yes, no or unknown. */
enum answer { ANSWER_NOT_ASKED, ANSWER_UNKNOWN, ANSWER_NO, ANSWER_YES };

/* The answer of a comparison whose sides may be unknown. */
static inline enum answer answer_of(bool all_known, bool holds)
{
    return !all_known ? ANSWER_UNKNOWN : holds ? ANSWER_YES : ANSWER_NO;
}

/* A value that may differ by axle. */
struct axle_pair {
    double front, rear;
};

static inline double of_axle(struct axle_pair pair, int axle)
{
    return axle == AXLE_FRONT ? pair.front : pair.rear;
}

/* Unlike lower_of and higher_of, unknown where either axle is: the worse of two is not known from
 * one. */
static inline double lower_of_pair(struct axle_pair pair)
{
    return known(pair.front) && known(pair.rear) ? fmin(pair.front, pair.rear) : UNKNOWN;
}

static inline double higher_of_pair(struct axle_pair pair)
{
    return known(pair.front) && known(pair.rear) ? fmax(pair.front, pair.rear) : UNKNOWN;
}

#endif
