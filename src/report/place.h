/* What a figure is taken at, as typed places. A computed value never stands here: the places of a
 * quantity are the same for every option. Their text is made in reading/place_text.c alone. */
#ifndef TYRESUM_REPORT_PLACE_H
#define TYRESUM_REPORT_PLACE_H

#include <stdbool.h>

enum place_tyre {
    AT_ANY_TYRE,
    AT_NOMINAL,
    AT_LARGEST, /* and smallest: that the standard allows of a new one */
    AT_SMALLEST,
    AT_NEW, /* its tread: */
    AT_TREAD_NOW,
    AT_TREAD_WORN
};
enum place_posture { AT_ANY_POSTURE, AT_RIDE_HEIGHT, AT_BUMP, AT_DROOP, AT_LOCK };
/* Gears that have names instead of numbers: the ends of a continuously variable gearbox. */
enum place_gear_name { AT_GEAR_NUMBER, AT_LOWEST_GEAR, AT_HIGHEST_GEAR, AT_REVERSE_GEAR };
enum place_range { AT_ANY_RANGE, AT_HIGH_RANGE, AT_LOW_RANGE };
/* How a road speed is meant: as the instrument shows it, as it is, as a sign at the road has it. */
enum place_speed { AT_SPEED, AT_SHOWN, AT_TRUE, AT_POSTED };
enum place_setting { AT_ANY_SETTING, AT_SETTING_NOW, AT_SETTING_ENTERED };
/* A pressure by its value, or by what it is, without its value. */
enum place_pressure {
    AT_ANY_PRESSURE,
    AT_PRESSURE,
    AT_PLACARD,
    AT_RECOMMENDED,
    AT_MAXIMUM, /* the most that it carries at any pressure */
    AT_ON_ROAD,
    AT_OFF_ROAD,
    AT_NO_AIR
};
/* What `number` counts. */
enum place_counted { COUNTED_NOTHING, COUNTED_ASSUMPTION, COUNTED_READING, COUNTED_TIMED_READING };

/* Which number of an estimate. */
enum place_estimate { AT_NO_ESTIMATE, AT_ESTIMATE, AT_STANDARD_ERROR, AT_95_FROM, AT_95_TO };

/* In the order in which the text tells them. Numbers not meant are UNKNOWN, texts NULL. */
struct place {
    enum place_tyre tyre;
    enum place_posture posture;
    double axle_ratio;
    int gear, to_gear; /* from 1; 0: none */
    enum place_gear_name gear_name;
    enum place_range range; /* of a gear, always with it */
    double low_ratio;       /* of a low range, where there are several */
    double engine_speed_per_s;
    enum place_speed speed_as;
    double road_speed_mps;
    bool instrument_mph; /* the road speed in the instrument's own unit: */
    bool instrument_kmh;
    double grade;
    enum place_setting setting;
    enum place_pressure pressure_as;
    double pressure_Pa;
    bool snow_chains;
    enum place_counted counted;
    int number;
    const char *name; /* an item's, a rule's, a kind of setting's: a text of the file or a table */
    enum place_estimate estimate;
};

struct place place_none(void);
bool place_same(const struct place *a, const struct place *b);

#endif
