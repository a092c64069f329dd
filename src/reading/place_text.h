/* The text of `at`, made here alone; and the same places as a json object. */
#ifndef TYRESUM_READING_PLACE_TEXT_H
#define TYRESUM_READING_PLACE_TEXT_H

#include "base/arena.h"
#include "output/writer.h"
#include "report/place.h"

/* "largest, bump", "axle ratio 4.10, gear 3 high, 2000 rpm", "shown 100 km/h": NULL where the place
 * says nothing. Speeds and pressures in the user's system, or in the instrument's own unit. */
const char *place_text(struct arena *arena, const struct place *place, bool us);

/* The same, a member of a json object each: {"tyre":"largest","posture":"bump"}; NULL where it says
 * nothing. */
const struct member *place_members(struct arena *arena, const struct place *place, bool us);

/* Two decimals, or three where it has them. */
const char *ratio_text(struct arena *arena, double ratio);

#endif
