/* The answer of a sheet: which tyre, and what it takes. A row a setup, best first, the fitted tyre
 * last; and what there is to say of each. In texts, for the terminal and for a page. */
#ifndef TYRESUM_READING_ANSWER_H
#define TYRESUM_READING_ANSWER_H

#include "reading/findings_text.h"

enum answer_column {
    ANSWER_LABEL,
    ANSWER_TYRE,
    ANSWER_OUTCOME,
    ANSWER_PRESSURES,
    ANSWER_ENTER,
    ANSWER_WORK,
    ANSWER_MARGIN,
    ANSWER_COLUMNS
};

extern const char *const answer_headings[ANSWER_COLUMNS];

/* "330 / 365 kPa (48 / 53)", "spare, trim", "room at lock front: 14 mm left". */
void answer_row(const struct layout *layout, size_t setup, const char *cells[ANSWER_COLUMNS]);

/* Whether the setting to enter is another than the setup has before. */
bool answer_sets_speedometer(const struct layout *layout, size_t setup);

/* "survey wagon: 5 tyres, 3 loading states" */
const char *answer_title(const struct layout *layout);

/* "LT245/75R16 120/116S, one step taller: go after work; 3 tasks" */
const char *answer_heading(const struct layout *layout, size_t setup_index);

/* "the build, whichever tyre: no go", before what of all that the setups share decides; NULL where
 * nothing is to be said of it. */
const char *answer_build(const struct layout *layout, struct finding_list *deciding);
/* What else they share: told behind the options. */
extern const char answer_shared_title[];
struct finding_list answer_also_shared(const struct layout *layout);

/* Whether a setup's own work is told: of the fitted tyre not where one option was asked for. */
bool answer_tells(const struct layout *layout, size_t setup);

/* A setup's own findings beside its tasks: what fails, what stays unknown, cautions. */
struct finding_list answer_findings(const struct layout *layout, size_t setup);
/* Whether what fails is the build's and said above. */
bool answer_fails_by_build(const struct layout *layout, size_t setup);

#endif
