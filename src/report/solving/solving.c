#include "report/solving/solving.h"

#include "base/known.h"
#include "output/number.h"
#include "report/solving/least_change.h"
#include "report/solving/may_be_off.h"

struct told {
    const struct plan *plan;
    const struct least_change *least;
    struct figures *figures;
};

static struct remark basis_of(const struct told *told)
{
    const struct least_change *least = told->least;
    struct arena *arena = told->plan->arena;
    if (!least->found)
        return remark(least->all_tried ? BASIS_ALL_CHANGES : BASIS_SOME_CHANGES);
    struct argument then = say_text(outcome_words(least->outcome.outcome));
    if (!least->all_tried)
        return REMARK_WITH(arena, BASIS_LEAST_OF_TRIED, say_number((double)least->tried, 0),
                           say_number(least->sets, 0), then);
    return REMARK_WITH(arena, BASIS_LEAST_CHANGE, then);
}

static void tell_change(const struct told *told, enum quantity_id quantity, double value, int axle,
                        const char *name, struct remark advice)
{
    struct figure figure = figure_on_axle(quantity, value, axle, basis_of(told));
    figure.place.name = name;
    figure.advice = advice;
    figures_add(told->figures, figure);
}

/* One for both axles, or one for each of two sizes. */
static void tell_wheel(const struct told *told, int axle)
{
    struct arena *arena = told->plan->arena;
    size_t index = (size_t)told->figures->setup;
    bool two = setup_axles_differ(&told->plan->setups[index]);
    const struct search_rim *rim = changed_wheel(told->plan, index, &told->least->set, axle);
    if (rim == NULL || (axle == AXLE_REAR && !two))
        return;
    tell_change(
        told, QUANTITY_LEAST_LENGTH, rim->inset_m, two ? axle : AXLE_NONE, "other wheel",
        REMARK_WITH(arena, ADVICE_TAKE_OTHER_WHEEL,
                    say_text(two ? arena_format(arena, "%s wheel", axle_name(axle)) : "wheel"),
                    say_quantity(rim->width_m, UNIT_IN, UNIT_IN, 1),
                    say_quantity(rim->inset_m, UNIT_MM, UNIT_IN, 0)));
}

static void tell_axle_ratio(const struct told *told)
{
    double ratio = changed_axle_ratio(told->plan, &told->least->set);
    if (known(ratio))
        tell_change(told, QUANTITY_LEAST_NUMBER, ratio, AXLE_NONE, "other axle ratio",
                    REMARK_WITH(told->plan->arena, ADVICE_TAKE_OTHER_RATIO, say_ratio(ratio)));
}

static void tell_spring(const struct told *told, int axle)
{
    const struct spring_choice *spring = changed_spring(told->plan, &told->least->set, axle);
    if (spring != NULL)
        tell_change(told, QUANTITY_LEAST_SPRING, spring->wheel_rate_N_m, axle, spring->name,
                    REMARK_WITH(told->plan->arena, ADVICE_TAKE_OTHER_SPRING,
                                say_text(axle_name(axle)), say_text(spring->name)));
}

static void tell_lift(const struct told *told, int axle)
{
    double lift_m = added_lift_m(told->plan, &told->least->set, axle);
    if (lift_m != 0)
        tell_change(told, QUANTITY_LEAST_LENGTH, lift_m, axle, "height",
                    REMARK_WITH(told->plan->arena, lift_m > 0 ? ADVICE_RAISE_BY : ADVICE_LOWER_BY,
                                say_text(axle_name(axle)),
                                say_quantity(fabs(lift_m), UNIT_MM, UNIT_IN, 0)));
}

/* "room at lock, front", or the title alone. */
static const char *on_axle(struct arena *arena, const char *title, int axle)
{
    return axle == AXLE_NONE ? title : arena_format(arena, "%s, %s", title, axle_name(axle));
}

/* --- the work of the set */

static enum quantity_id quantity_of_task(const struct task *task)
{
    switch (unit_table[task_rows[task->cure.task].metric].kind) {
    case KIND_LENGTH:
        return QUANTITY_LEAST_LENGTH;
    case KIND_MASS:
        return QUANTITY_LEAST_MASS;
    case KIND_PRESSURE:
        return QUANTITY_LEAST_PRESSURE;
    case KIND_FRACTION:
        return QUANTITY_LEAST_SHARE;
    default:
        return QUANTITY_LEAST_NUMBER;
    }
}

static struct argument say_amount(const struct task *task, double amount)
{
    const struct task_row *row = &task_rows[task->cure.task];
    switch (unit_table[row->metric].kind) {
    case KIND_LENGTH:
        return say_enough(amount);
    case KIND_PRESSURE:
        return say_pressure(amount);
    case KIND_BARE:
        return say_number(amount, number_decimals(amount, row->decimals_metric));
    default:
        return say_quantity(amount, row->metric, row->us, row->decimals_metric);
    }
}

/* What is left out is told by its mass, all else by what it is to be. */
static void tell_task(const struct told *told, const struct task *task)
{
    struct arena *arena = told->plan->arena;
    const struct task_row *row = &task_rows[task->cure.task];
    bool unload = task->cure.task == TASK_UNLOAD;
    double amount = unload ? task->cure.now : task->cure.then;
    const char *what = unload ? arena_format(arena, "%s %s", row->title, task->reason->place.name)
                              : on_axle(arena, row->title, task->axle);
    struct figure figure =
        figure_on_axle(quantity_of_task(task), amount, task->axle, basis_of(told));
    figure.place.name = unload ? task->reason->place.name : row->name;
    figure.state = unload ? task->reason->state : STATE_NONE;
    figure.advice = known(amount) ? REMARK_WITH(arena, ADVICE_LEAST_AMOUNT, say_text(what),
                                                say_amount(task, amount))
                                  : REMARK_WITH(arena, ADVICE_LEAST_TASK, say_text(what));
    figures_add(told->figures, figure);
}

/* --- where none does */

/* A room is told as it stands: what may be trimmed, or spaced, and does not do is not in it. */
static bool is_before_work(const struct told *told)
{
    const struct allowed *allowed = &told->plan->specification->allowed;
    return quantity_rows[told->least->stands.figure.quantity].policy & POLICY_IN_ARCH &&
           (known(allowed->trim_m) || known(allowed->bump_stop_m) || known(allowed->spacer_m));
}

static struct remark what_stands(const struct told *told)
{
    const struct standing_limit *stands = &told->least->stands;
    const struct quantity_row *row = &quantity_rows[stands->figure.quantity];
    struct arena *arena = told->plan->arena;
    struct argument what = say_text(on_axle(arena, row->title, stands->figure.axle));
    if (!stands->always)
        return REMARK_WITH(arena, PHRASE_NEAREST_BREAKS, what);
    if (!isfinite(stands->short_by) || row->metric == UNIT_BARE)
        return REMARK_WITH(arena, PHRASE_BARS_EACH, what);
    return REMARK_WITH(
        arena, is_before_work(told) ? PHRASE_BARS_BEFORE_WORK : PHRASE_BARS_EACH_BY, what,
        say_quantity(stands->short_by, row->metric, row->us, row->decimals_metric + 1));
}

/* Of what would take more judgements than there are. */
static struct remark not_looked_for(const struct plan *plan)
{
    return remark(plan->count > 2 ? ADVICE_ONE_OPTION_ALONE : ADVICE_TOO_MANY_INPUTS);
}

static struct remark why_nothing(const struct told *told)
{
    const struct least_change *least = told->least;
    struct arena *arena = told->plan->arena;
    struct argument why = say_remark(arena, what_stands(told));
    struct argument tried = say_number((double)least->tried, 0);
    if (least->sets == 0)
        return REMARK_WITH(arena, ADVICE_NOTHING_DOES, why);
    if (least->all_tried)
        return REMARK_WITH(arena, ADVICE_NO_CHANGE_DOES, tried, why);
    return least->tried == 0
               ? not_looked_for(told->plan)
               : REMARK_WITH(arena, ADVICE_NOT_ALL_TRIED, tried, say_number(least->sets, 0), why);
}

static void tell_nothing(const struct told *told)
{
    const struct least_change *least = told->least;
    struct figure figure = figure_by(QUANTITY_LEAST_NONE, UNKNOWN, basis_of(told));
    if (least->all_tried || least->tried > 0)
        figure.axle = least->stands.figure.axle;
    if (least->sets == 0)
        figure.headline = HEADLINE_ROWS_ONLY; /* what fails stands above it */
    figure.advice = why_nothing(told);
    figures_add(told->figures, figure);
}

static void report_least_change(const struct plan *plan, const struct least_change *least,
                                struct figures *figures)
{
    const struct told told = {plan, least, figures};
    if (!least->found) {
        tell_nothing(&told);
        return;
    }
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        tell_wheel(&told, axle);
    tell_axle_ratio(&told);
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        tell_spring(&told, axle);
        tell_lift(&told, axle);
    }
    for (size_t i = 0; i < least->outcome.task_count; i++)
        if (task_is_change(&least->outcome.tasks[i]))
            tell_task(&told, &least->outcome.tasks[i]);
}

static enum quantity_id off_quantity(enum unit_kind kind)
{
    switch (kind) {
    case KIND_LENGTH:
        return QUANTITY_OFF_LENGTH;
    case KIND_MASS:
        return QUANTITY_OFF_MASS;
    case KIND_ANGLE:
        return QUANTITY_OFF_ANGLE;
    case KIND_STIFFNESS:
        return QUANTITY_OFF_STIFFNESS;
    case KIND_SPEED:
        return QUANTITY_OFF_SPEED;
    case KIND_VOLUME:
        return QUANTITY_OFF_VOLUME;
    case KIND_DENSITY:
        return QUANTITY_OFF_DENSITY;
    default:
        return QUANTITY_OFF_SHARE;
    }
}

/* A setup by what the other parts have found. */
struct solved {
    struct option_outcome found;
    struct input_margin margins[INPUTS_TOLD_MAX];
    size_t margin_count;
    bool margins_tried;
    struct least_change least; /* of a no go */
};

static void report_may_be_off(const struct plan *plan, const struct solved *solved,
                              struct figures *figures)
{
    for (size_t i = 0; i < solved->margin_count; i++) {
        const struct input_margin *margin = &solved->margins[i];
        struct figure figure =
            figure_by(off_quantity(margin->kind), margin->within, remark(BASIS_MAY_BE_OFF));
        figure.place.name = margin->path;
        figure.advice = REMARK_WITH(
            plan->arena, ADVICE_MAY_BE_OFF, say_text(margin->words),
            say_remark(plan->arena, REMARK_WITH(plan->arena, PHRASE_BEYOND_THAT,
                                                say_text(outcome_words(margin->becomes)))));
        figures_add(figures, figure);
    }
    if (!solved->margins_tried) {
        struct figure figure = figure_by(QUANTITY_OFF_NONE, UNKNOWN, remark(BASIS_MAY_BE_OFF));
        figure.advice = not_looked_for(plan);
        figures_add(figures, figure);
    }
}

/* Each no go has an equal share of the judgements, and of what those before it left. */
static void find_least_changes(const struct plan *plan, struct solved *solved)
{
    struct judging all = judging_begin(plan->specification);
    size_t no_gos = 0;
    for (size_t i = 1; i < plan->count; i++)
        no_gos += solved[i].found.outcome == OUTCOME_NO_GO;
    for (size_t i = 1; i < plan->count; i++)
        if (solved[i].found.outcome == OUTCOME_NO_GO) {
            struct judging share = judging_share(&all, no_gos--);
            least_change_find(plan, i, &solved[i].found, &share, &solved[i].least);
            all.left += share.left;
        }
}

void report_solving(const struct plan *plan, struct figures *figures)
{
    const struct setup_figures *setups = plan_group_figures(plan, figures);
    struct solved *solved = arena_allocate_array(plan->arena, plan->count, sizeof *solved);
    struct judging judging = judging_begin(plan->specification);
    for (size_t i = 1; i < plan->count; i++) { /* before more figures are added */
        struct solved *now = &solved[i];
        option_outcome_make(plan, &setups[i], &now->found);
        now->margins_tried = may_be_off_find(plan, i, now->found.outcome, &judging, now->margins,
                                             &now->margin_count);
    }
    find_least_changes(plan, solved);
    figures->part = PART_SOLVING;
    for (size_t i = 1; i < plan->count; i++) {
        figures->setup = (int)i;
        if (solved[i].found.outcome == OUTCOME_NO_GO)
            report_least_change(plan, &solved[i].least, figures);
        report_may_be_off(plan, &solved[i], figures);
    }
}
