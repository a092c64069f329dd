/* Shorthand for the rows of the key tables (keys.c and its sisters), so that a row reads as a
 * line: name, kind and unit, target, range, who reads it, one line of help. */
#ifndef TYRESUM_BUILD_KEY_ROWS_H
#define TYRESUM_BUILD_KEY_ROWS_H

#include "build/keys.h"
#include "build/specification.h"

/* Sets that another file's table refers to. */
extern const struct key_set tyres_keys, drivetrain_keys, instrument_keys;
extern const struct key_set carried_keys, room_for_keys, off_road_keys;
extern const struct key_set allowed_keys, measured_keys, as_set_keys;
extern const struct key_set suspension_keys, clearance_keys, added_point_keys, deflated_keys;

#define FIELD(type, member) .offset = offsetof(type, member)
#define QUANTITY(kind_) .kind = KEY_QUANTITY, .unit = (kind_)
#define PAIR(kind_) .kind = KEY_QUANTITY_PAIR, .unit = (kind_)
#define BOUND(kind_, other) .kind = KEY_BOUND, .unit = (kind_), .second_unit = (other)
#define RANGE(low, high) .min = (low), .max = (high)
#define TEXT .kind = KEY_TEXT
#define CHOICE(list) .kind = KEY_CHOICE, .choices = (list)
#define MAPPING(set_) .kind = KEY_MAPPING, .set = &(set_)
#define MAPPINGS(set_) .kind = KEY_MAPPING_LIST, .set = &(set_)
#define KEY_SET_ALSO(name_, type, ...)                                                             \
    static const struct key_set name_##_set = {                                                    \
        name_, sizeof name_ / sizeof name_[0], sizeof(type), {__VA_ARGS__}, 0}
#define KEY_SET(name_, type) KEY_SET_ALSO(name_, type, NULL)
#define SHARED_KEY_SET(name_, type)                                                                \
    const struct key_set name_##_keys = {                                                          \
        name_, sizeof name_ / sizeof name_[0], sizeof(type), {NULL}, 0}

#endif
