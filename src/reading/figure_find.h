/* Finds figures of a setup by what they say, and says them in a sentence. */
#ifndef TYRESUM_READING_FIGURE_FIND_H
#define TYRESUM_READING_FIGURE_FIND_H

#include "reading/part_table.h"

struct figure_query {
    enum quantity_id quantity;
    int axle;  /* enum axle, or AXLE_NONE: whichever */
    int state; /* its number; STATE_NONE: whichever */
    /* Of its place; 0: whatever it is. */
    enum place_tyre tyre;
    enum place_posture posture;
    enum place_speed speed_as;
    enum place_setting setting;
    enum place_pressure pressure_as;
    bool headline; /* only those that stand in the terminal's sheet */
};

/* The first that fits, or NULL. */
const struct figure *figure_first(const struct layout *layout, size_t setup,
                                  struct figure_query query);

/* The one of least or most value; one that is unknown before all that are known. */
const struct figure *figure_least(const struct layout *layout, size_t setup,
                                  struct figure_query query);
const struct figure *figure_most(const struct layout *layout, size_t setup,
                                 struct figure_query query);

/* As csv has it: "arch above, one step taller, front, bump, largest: 8 mm". */
const char *figure_sentence(const struct layout *layout, const struct figure *figure);

/* Its value with the unit, or "unknown". */
const char *figure_value_text(const struct layout *layout, const struct figure *figure);

#endif
