#include "report/place.h"

#include "base/known.h"
#include "base/span.h"

struct place place_none(void)
{
    return (struct place){.axle_ratio = UNKNOWN,
                          .low_ratio = UNKNOWN,
                          .engine_speed_per_s = UNKNOWN,
                          .road_speed_mps = UNKNOWN,
                          .grade = UNKNOWN,
                          .pressure_Pa = UNKNOWN};
}

bool place_same(const struct place *a, const struct place *b)
{
    return a->tyre == b->tyre && a->posture == b->posture &&
           same_value(a->axle_ratio, b->axle_ratio) && a->gear == b->gear &&
           a->to_gear == b->to_gear && a->gear_name == b->gear_name && a->range == b->range &&
           same_value(a->low_ratio, b->low_ratio) &&
           same_value(a->engine_speed_per_s, b->engine_speed_per_s) && a->speed_as == b->speed_as &&
           same_value(a->road_speed_mps, b->road_speed_mps) &&
           a->instrument_mph == b->instrument_mph && a->instrument_kmh == b->instrument_kmh &&
           same_value(a->grade, b->grade) && a->setting == b->setting &&
           a->pressure_as == b->pressure_as && same_value(a->pressure_Pa, b->pressure_Pa) &&
           a->snow_chains == b->snow_chains && a->counted == b->counted && a->number == b->number &&
           same_text(a->name, b->name) && a->estimate == b->estimate;
}
