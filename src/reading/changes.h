/* What a buyer asks first: the few figures that say what a setup changes. */
#ifndef TYRESUM_READING_CHANGES_H
#define TYRESUM_READING_CHANGES_H

#include "reading/figure_find.h"
#include "reading/findings_text.h"

struct change_row {
    const char *title;
    struct figure_query query;
};

extern const struct change_row change_rows[];
extern const size_t change_row_count;

/* The figure of a row for a setup, or NULL. */
const struct figure *change_figure(const struct layout *layout, size_t setup, size_t row);

/* Its value: a change with its sign. */
const char *change_text(const struct layout *layout, const struct figure *figure, bool with_unit);

/* The same of a row and setup: "634 / 662 mm" where front and rear differ. */
const char *change_of_axles_text(const struct layout *layout, size_t setup, size_t row);
/* Whether it fails at either axle. */
bool change_fails(const struct layout *layout, size_t setup, size_t row);

/* "fail: tyre capacity front and rear; room at lock front": as many as the width takes, then how
 * many more. */
const char *matters_named(const struct layout *layout, const struct finding_list *list,
                          size_t width);
#endif
