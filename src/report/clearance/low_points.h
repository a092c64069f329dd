/* The low points of the body in one stance: those that were measured, and those of what is aboard.
 */
#ifndef TYRESUM_REPORT_CLEARANCE_LOW_POINTS_H
#define TYRESUM_REPORT_CLEARANCE_LOW_POINTS_H

#include "report/clearance/stance.h"

/* Where a point lies: one of the lists of `clearance`, or the same place of an added part. */
enum point_place { POINT_AHEAD, POINT_BETWEEN, POINT_BEHIND };

typedef double (*point_measure)(const struct stance *stance, const struct body_point *point);

struct governing_point {
    double value; /* the least over the points; UNKNOWN where one is, or where there is none */
    struct governor governor; /* the point's number in its list, or the item's that has it */
    size_t points;
};

/* The least of a measure over the points there, measured ones and those of what is aboard; a
 * measured point that goes by the name of a removed item has gone with it. Points for which
 * `counts` (or NULL) is false are passed over. */
struct governing_point
least_over_points(const struct stance *stance, enum point_place place, point_measure measure,
                  bool (*counts)(const struct stance *stance, const struct body_point *point));

#endif
