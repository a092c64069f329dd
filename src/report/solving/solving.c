#include "report/solving/solving.h"

#include "base/known.h"
#include "report/solving/least_change.h"
#include "report/solving/may_be_off.h"

struct told {
    const struct plan *plan;
    const struct least_change *least;
    struct figures *figures;
};

static struct figure least_figure(const struct told *told, enum quantity_id quantity, double value,
                                  int axle, const char *name)
{
    struct figure figure = figure_by(
        quantity, value,
        told->least->found ? REMARK_WITH(told->plan->arena, BASIS_LEAST_CHANGE,
                                         say_text(outcome_words(told->least->outcome.outcome)))
                           : remark(BASIS_ALL_CHANGES));
    figure.axle = axle;
    figure.place.name = name;
    return figure;
}

static void tell_wheel(const struct told *told)
{
    const struct search_rim *rim = changed_wheel(told->plan, &told->least->set);
    if (rim == NULL)
        return;
    struct figure figure =
        least_figure(told, QUANTITY_LEAST_WHEEL, rim->inset_m, AXLE_NONE, "wheel");
    figure.advice = REMARK_WITH(told->plan->arena, ADVICE_TAKE_OTHER_WHEEL,
                                say_quantity(rim->width_m, UNIT_IN, UNIT_IN, 1),
                                say_quantity(rim->inset_m, UNIT_MM, UNIT_IN, 0));
    figures_add(told->figures, figure);
}

static void tell_axle_ratio(const struct told *told)
{
    double ratio = changed_axle_ratio(told->plan, &told->least->set);
    if (!known(ratio))
        return;
    struct figure figure = least_figure(told, QUANTITY_LEAST_RATIO, ratio, AXLE_NONE, "axle ratio");
    figure.advice = REMARK_WITH(told->plan->arena, ADVICE_TAKE_OTHER_RATIO, say_ratio(ratio));
    figures_add(told->figures, figure);
}

static void tell_spring(const struct told *told, int axle)
{
    const struct spring_choice *spring = changed_spring(told->plan, &told->least->set, axle);
    if (spring == NULL)
        return;
    struct figure figure =
        least_figure(told, QUANTITY_LEAST_SPRING, spring->wheel_rate_N_m, axle, spring->name);
    figure.advice =
        REMARK_WITH(told->plan->arena, ADVICE_TAKE_OTHER_SPRING, say_text(spring->name));
    figures_add(told->figures, figure);
}

static void tell_lift(const struct told *told, int axle)
{
    double lift_m = added_lift_m(told->plan, &told->least->set, axle);
    if (lift_m == 0)
        return;
    struct figure figure = least_figure(told, QUANTITY_LEAST_LIFT, lift_m, axle, "lift");
    figure.advice = REMARK_WITH(told->plan->arena, lift_m > 0 ? ADVICE_RAISE_BY : ADVICE_LOWER_BY,
                                say_quantity(fabs(lift_m), UNIT_MM, UNIT_IN, 0));
    figures_add(told->figures, figure);
}

static void tell_nothing(const struct told *told)
{
    const struct least_change *least = told->least;
    struct arena *arena = told->plan->arena;
    struct figure figure = least_figure(told, QUANTITY_LEAST_NONE, UNKNOWN, AXLE_NONE, NULL);
    if (least->sets > LEAST_CHANGE_TRIES_MAX)
        figure.advice =
            REMARK_WITH(arena, ADVICE_TOO_MANY_CHANGES, say_number((double)least->sets, 0),
                        say_number(LEAST_CHANGE_TRIES_MAX, 0));
    else if (least->stands < QUANTITY_COUNT)
        figure.advice =
            REMARK_WITH(arena, ADVICE_NO_CHANGE_DOES, say_number((double)least->sets, 0),
                        say_text(quantity_rows[least->stands].title));
    figures_add(told->figures, figure);
}

static void report_least_change(const struct plan *plan, size_t index, struct figures *figures)
{
    struct least_change least;
    least_change_find(plan, index, &least);
    const struct told told = {plan, &least, figures};
    if (least.sets == 0)
        return;
    if (!least.found) {
        tell_nothing(&told);
        return;
    }
    tell_wheel(&told);
    tell_axle_ratio(&told);
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        tell_spring(&told, axle);
        tell_lift(&told, axle);
    }
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
    enum outcome outcome;
    struct input_margin margins[INPUTS_TOLD_MAX];
    size_t margin_count;
    bool margins_tried;
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
        figure.advice = remark(plan->count > 2 ? ADVICE_ONE_OPTION_ALONE : ADVICE_TOO_MANY_INPUTS);
        figures_add(figures, figure);
    }
}

static void solve(const struct plan *plan, const struct setup_figures *setups, size_t index,
                  struct judging *judging, struct solved *out)
{
    struct option_outcome found;
    option_outcome_make(plan, &setups[index], &found);
    out->outcome = found.outcome;
    out->margins_tried = may_be_off_find(plan, index, &setups[index], found.outcome, judging,
                                         out->margins, &out->margin_count);
}

void report_solving(const struct plan *plan, struct figures *figures)
{
    const struct setup_figures *setups = plan_group_figures(plan, figures);
    struct solved *solved = arena_allocate_array(plan->arena, plan->count, sizeof *solved);
    struct judging judging = may_be_off_begin(plan->specification);
    for (size_t i = 1; i < plan->count; i++) /* before more figures are added */
        solve(plan, setups, i, &judging, &solved[i]);
    figures->part = PART_SOLVING;
    for (size_t i = 1; i < plan->count; i++) {
        figures->setup = (int)i;
        if (solved[i].outcome == OUTCOME_NO_GO)
            report_least_change(plan, i, figures);
        report_may_be_off(plan, &solved[i], figures);
    }
}
