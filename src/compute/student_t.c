#include "compute/student_t.h"

#include "base/known.h"
#include "base/units.h"

enum { DEGREES_MAX = 1000000 };

double student_t_within(double t, size_t degrees)
{
    size_t nu = degrees < DEGREES_MAX ? degrees : DEGREES_MAX;
    double angle = atan(t / sqrt((double)nu));
    double cosine = cos(angle), sine = sin(angle), square = cosine * cosine;
    bool odd = nu % 2 == 1;
    /* Odd: cos + 2/3 cos^3 + ...; even: 1 + 1/2 cos^2 + 1*3/(2*4) cos^4 + ... */
    double term = odd ? cosine : 1, sum = 0;
    for (size_t i = odd ? 3 : 2; i <= nu && term > 1e-18; i += 2) {
        sum += term;
        term *= square * (double)(i - 1) / (double)i;
    }
    return odd ? 2 / PI * (angle + sine * sum) : sine * sum;
}

static double beyond(double t, size_t degrees)
{
    return 1 - student_t_within(t, degrees);
}

double student_t_two_sided(double chance, size_t degrees)
{
    if (degrees == 0 || !(chance > 0 && chance < 1))
        return UNKNOWN;
    double low = 0, high = 1, below = chance - 1, above;
    while ((above = chance - beyond(high, degrees)) < 0 && high < 1e12)
        high *= 2;
    /* Regula falsi; an end that stays twice running weighs half as much (the Illinois rule). */
    double t = high, before = low;
    int moved = 0;
    for (int i = 0; i < 200 && fabs(t - before) > 1e-13 * t; i++) {
        before = t;
        t = (low * above - high * below) / (above - below);
        double at_t = chance - beyond(t, degrees);
        int side = at_t < 0 ? -1 : 1;
        if (side < 0) {
            low = t;
            below = at_t;
            above /= moved == side ? 2 : 1;
        } else {
            high = t;
            above = at_t;
            below /= moved == side ? 2 : 1;
        }
        moved = side;
    }
    return t;
}
