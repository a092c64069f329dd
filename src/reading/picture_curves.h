/* Lines of engine speed against road speed, gathered from the figures of the gearing part. */
#ifndef TYRESUM_READING_PICTURE_CURVES_H
#define TYRESUM_READING_PICTURE_CURVES_H

#include "reading/picture.h"

enum { CURVES_MAX = 256, GROUPS_MAX = 32 };

/* A line of one gear; all lines of one setup on one axle ratio have one dash and one caption. */
struct curve {
    const struct figure *per_1000;
    int gear;
    size_t group;
};

struct curve_group {
    const char *caption; /* "fitted", "B", "4.10" */
    const char *words;   /* in the legend */
    enum dash dash;
    const struct figure *highest; /* of its highest gear, for the legend */
};

struct curves {
    struct curve items[CURVES_MAX];
    size_t count;
    struct curve_group groups[GROUPS_MAX];
    size_t group_count;
};

enum curves_of { OWN_AXLE, EVERY_AXLE };

/* The lines of a setup, in every gear of its highest range. */
void curves_add(const struct picture *picture, size_t setup, enum curves_of which,
                struct curves *curves);
bool curve_is_highest(const struct curves *curves, const struct curve *curve);

/* The engine's limit, or how far lines go where there is none. */
double curves_limit_rpm(const struct picture *picture);
/* Road speeds as drawn; what an engine speed gives, in that unit. */
enum unit_id curves_unit(const struct picture *picture);
double curve_road(const struct picture *picture, const struct figure *per_1000, double rpm);

void picture_no_gearing(const struct picture *picture, double height);

#endif
