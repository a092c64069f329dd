#include "reading/answer.h"

#include "base/known.h"
#include "compute/load.h"
#include "reading/prose.h"
#include "reading/figure_find.h"
#include "reading/task_text.h"

const char *const answer_headings[ANSWER_COLUMNS] = {"",
                                                     "tyre",
                                                     "outcome",
                                                     "set, cold, front / rear",
                                                     "enter",
                                                     "other work",
                                                     "closest margin, or what fails"};

const char answer_shared_title[] = "whichever tyre is chosen (counted with each)";

/* --- cells */

static const struct figure *pressure_of(const struct layout *layout, size_t setup, int axle)
{
    const struct figure *figure =
        figure_first(layout, setup,
                     (struct figure_query){
                         .quantity = QUANTITY_PRESSURE_AS_SET, .axle = axle, .state = STATE_NONE});
    /* What is named for the handing over and does; the placard's is no choice. */
    if (figure != NULL && figure->verdict == VERDICT_OK &&
        layout->plan->setups[setup].as_set != NULL)
        return figure;
    figure = figure_first(layout, setup,
                          (struct figure_query){.quantity = QUANTITY_PRESSURE_RECOMMENDED,
                                                .axle = axle,
                                                .state = STATE_NONE});
    return figure != NULL && known(figure->value) ? figure : NULL;
}

static const char *pressure_in(const struct layout *layout, const struct figure *figure, bool us)
{
    if (figure == NULL)
        return "?";
    const struct task task = {
        .cure = {.task = TASK_TYRE_PRESSURE, .now = UNKNOWN, .then = figure->value},
        .axle = figure->axle,
        .reason = figure};
    return task_then_text(layout, &task, us);
}

static const char *pressures(const struct layout *layout, size_t setup)
{
    bool us = layout->units == UNITS_US;
    const struct figure *front = pressure_of(layout, setup, AXLE_FRONT);
    const struct figure *rear = pressure_of(layout, setup, AXLE_REAR);
    if (front == NULL && rear == NULL)
        return "-";
    return arena_format(layout->arena, "%s / %s %s (%s / %s %s)", pressure_in(layout, front, us),
                        pressure_in(layout, rear, us), unit_table[us ? UNIT_PSI : UNIT_KPA].name,
                        pressure_in(layout, front, !us), pressure_in(layout, rear, !us),
                        unit_table[us ? UNIT_KPA : UNIT_PSI].name);
}

static double set_before(const struct layout *layout, size_t setup)
{
    const struct as_set *as_set = layout->plan->setups[setup].as_set;
    double now = layout->plan->specification->speedometer.setting.now;
    return as_set == NULL ? now : known_or(as_set->setting, now);
}

static const struct figure *nearest_setting(const struct layout *layout, size_t setup)
{
    const struct figure *nearest = figure_first(
        layout, setup,
        (struct figure_query){
            .quantity = QUANTITY_SETTING_NEAREST, .axle = AXLE_NONE, .state = STATE_NONE});
    return nearest != NULL && known(nearest->value) ? nearest : NULL;
}

bool answer_sets_speedometer(const struct layout *layout, size_t setup)
{
    const struct figure *nearest = nearest_setting(layout, setup);
    double before = set_before(layout, setup);
    return nearest != NULL && (!known(before) || clearly_above(nearest->value, before) ||
                               clearly_above(before, nearest->value));
}

/* The setting to enter, as the speedometer's part has it; a word where it is that already: an
 * option that says what it is handed over with has it set. */
static const char *setting(const struct layout *layout, size_t setup)
{
    const struct as_set *as_set = layout->plan->setups[setup].as_set;
    const struct figure *nearest = nearest_setting(layout, setup);
    if (nearest == NULL)
        return "-";
    if (!answer_sets_speedometer(layout, setup))
        return as_set != NULL && known(as_set->setting) ? "as set" : "as now";
    const struct task task = {
        .cure = {.task = TASK_SPEEDOMETER_SETTING, .now = UNKNOWN, .then = nearest->value},
        .axle = AXLE_NONE,
        .reason = nearest};
    return task_then_text(layout, &task, layout->units == UNITS_US);
}

/* "room at lock front" */
static const char *matter(const struct layout *layout, const struct figure *figure)
{
    const char *axle = axle_name(figure->axle), *title = quantity_rows[figure->quantity].title;
    return *axle ? arena_format(layout->arena, "%s %s", title, axle) : title;
}

/* What is left to a limit is a distance, not something to set: "room at lock front: 14 mm left" */
static const char *margin(const struct layout *layout, const struct figure *figure)
{
    struct figure left = *figure;
    if (quantity_rows[left.quantity].policy & POLICY_TO_SET)
        left.quantity = QUANTITY_PRESSURE_AS_BUILT;
    return arena_format(layout->arena, "%s: %s left", matter(layout, figure),
                        figure_text_in(layout, &left, fabs(figure->value - figure->limit),
                                       layout->units == UNITS_US));
}

static const char *failure(const struct layout *layout, const struct figure *figure)
{
    bool us = layout->units == UNITS_US;
    if (!known(figure->value))
        return arena_format(layout->arena, "%s: none that is allowed", matter(layout, figure));
    const char *text = arena_format(layout->arena, "%s: %s", matter(layout, figure),
                                    figure_text_in(layout, figure, figure->value, us));
    return !known(figure->limit) || figure->limit == 0
               ? text
               : arena_format(layout->arena, "%s (limit %s)", text,
                              figure_text_in(layout, figure, figure->limit, us));
}

static const char *closest(const struct layout *layout, const struct option_outcome *outcome)
{
    if (outcome->outcome == OUTCOME_NO_GO)
        return failure(layout, outcome->why);
    return outcome->closest == NULL ? "-" : margin(layout, outcome->closest);
}

/* The size; with the option's name where another option is of the same. */
static const char *tyre(const struct layout *layout, size_t setup)
{
    enum { NAME_WIDTH = 30 };
    const struct plan *plan = layout->plan;
    const char *size = size_text(layout, &plan->setups[setup]);
    for (size_t i = 1; setup > 0 && i < plan->count; i++)
        if (i != setup && strcmp(size_text(layout, &plan->setups[i]), size) == 0)
            return arena_format(layout->arena, "%s, %s", size,
                                text_cut(layout->arena, plan->setups[setup].name, NAME_WIDTH));
    return size;
}

void answer_row(const struct layout *layout, size_t setup, const char *cells[ANSWER_COLUMNS])
{
    const struct option_outcome *outcome = &layout->outcomes[setup];
    const char *size = tyre(layout, setup);
    bool no_go = outcome->outcome == OUTCOME_NO_GO;
    cells[ANSWER_LABEL] = setup == 0 ? "-" : option_label(layout, setup);
    cells[ANSWER_TYRE] = setup == 0 ? arena_format(layout->arena, "fitted %s", size) : size;
    cells[ANSWER_OUTCOME] = outcome_words(outcome->outcome);
    cells[ANSWER_PRESSURES] = no_go ? "-" : pressures(layout, setup);
    cells[ANSWER_ENTER] = no_go ? "-" : setting(layout, setup);
    cells[ANSWER_WORK] = other_work_text(layout, setup);
    cells[ANSWER_MARGIN] = closest(layout, outcome);
}

/* --- sentences */

static const char *counted(const struct layout *layout, size_t count, const char *what)
{
    return arena_format(layout->arena, "%zu %s%s", count, what, count == 1 ? "" : "s");
}

const char *answer_title(const struct layout *layout)
{
    const struct plan *plan = layout->plan;
    const char *name = plan->specification->vehicle.name;
    return arena_format(layout->arena, "%s: %s, %s", name == NULL ? "vehicle" : name,
                        plan->count == 1 ? "the fitted tyre alone"
                                         : counted(layout, plan->count - 1, "tyre"),
                        counted(layout, state_count(plan->specification), "loading state"));
}

const char *answer_heading(const struct layout *layout, size_t setup_index)
{
    const struct setup *setup = &layout->plan->setups[setup_index];
    const char *size = size_text(layout, setup);
    return arena_format(layout->arena, "%s%s%s: %s", size, setup_index == 0 ? "" : ", ",
                        setup_index == 0 ? "" : setup->name, standing_text(layout, setup_index));
}

/* What is judged of the ratings: itself, and what has to stay behind for one. */
static bool is_of_ratings(const struct figure *finding)
{
    return quantity_rows[finding->quantity].policy & POLICY_OF_BUILD ||
           (finding->quantity == QUANTITY_LEFT_OUT && finding->limit_owner == LIMIT_OF_MAKER);
}

/* Whether every rating that is the build's is known and kept with every tyre. */
static bool keeps_every_rating(const struct layout *layout)
{
    size_t judged = 0;
    for (size_t i = 0; i < layout->plan->count; i++)
        for (size_t j = 0; j < layout->outcomes[i].finding_count; j++) {
            const struct figure *finding = layout->outcomes[i].findings[j];
            if (!is_of_ratings(finding))
                continue;
            if (finding_outcome(finding) != OUTCOME_GO || finding->verdict == VERDICT_UNKNOWN)
                return false;
            judged++;
        }
    return judged > 0;
}

static struct finding_list shared_that(const struct layout *layout, bool decide)
{
    struct finding_list list = findings_shared(layout);
    size_t kept = 0;
    for (size_t i = 0; i < list.count; i++)
        if ((finding_outcome(list.items[i]) != OUTCOME_GO) == decide)
            list.items[kept++] = list.items[i];
    list.count = kept;
    return list;
}

const char *answer_build(const struct layout *layout, struct finding_list *deciding)
{
    enum outcome worst = OUTCOME_GO;
    *deciding = shared_that(layout, true);
    for (size_t i = 0; i < deciding->count; i++) {
        enum outcome outcome = finding_outcome(deciding->items[i]);
        worst = outcome > worst ? outcome : worst;
    }
    bool keeps = keeps_every_rating(layout);
    if (!keeps && deciding->count == 0)
        return NULL;
    return arena_format(layout->arena, "the build, whichever tyre: %s%s", outcome_words(worst),
                        keeps ? "; the vehicle's ratings are kept in every state" : "");
}

struct finding_list answer_also_shared(const struct layout *layout)
{
    return shared_that(layout, false);
}

bool answer_tells(const struct layout *layout, size_t setup)
{
    const struct plan *plan = layout->plan;
    return setup > 0 || plan->count == 1 ||
           plan->count - 1 == plan->specification->tyres.options.count;
}

struct finding_list answer_findings(const struct layout *layout, size_t setup)
{
    struct finding_list list = findings_of(layout, setup);
    size_t kept = 0;
    for (size_t i = 0; i < list.count; i++)
        if (!is_told_as_task(layout, setup, list.items[i]))
            list.items[kept++] = list.items[i];
    list.count = kept;
    return list;
}

bool answer_fails_by_build(const struct layout *layout, size_t setup)
{
    struct finding_list own = findings_of(layout, setup);
    return layout->outcomes[setup].outcome == OUTCOME_NO_GO &&
           (own.count == 0 || own.items[0]->verdict != VERDICT_FAIL);
}
