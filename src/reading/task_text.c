#include "reading/task_text.h"

#include "base/known.h"
#include "build/keys.h"
#include "output/number.h"
#include "reading/findings_text.h"
#include "reading/prose.h"
#include "tables/lookup.h"

static enum unit_id unit_of(const struct task *task, bool us)
{
    const struct task_row *row = &task_rows[task->cure.task];
    return us ? row->us : row->metric;
}

static bool has_amount(const struct task *task)
{
    return known(task->cure.now) || known(task->cure.then);
}

const char *task_unit(const struct plan *plan, const struct task *task, bool us)
{
    int kind = plan->specification->speedometer.setting.kind;
    if (!has_amount(task))
        return "";
    if (task->cure.task == TASK_SPEEDOMETER_SETTING && kind != CHOICE_NONE)
        return choices_setting_kind[kind];
    return unit_table[unit_of(task, us)].name;
}

bool task_has_two_units(const struct task *task)
{
    return has_amount(task) && unit_of(task, false) != unit_of(task, true);
}

static double in_unit(double si, enum unit_id unit)
{
    return unit == UNIT_BARE ? si : unit_from_si(unit, si);
}

/* Of a setting those of the instrument's step, and more only where the number has them. */
static int decimals_of(const struct plan *plan, const struct task *task, double value, bool us)
{
    const struct task_row *row = &task_rows[task->cure.task];
    int most = us ? row->decimals_us : row->decimals_metric;
    if (task->cure.task != TASK_SPEEDOMETER_SETTING)
        return most;
    int of_step = number_decimals(known_or(plan->specification->speedometer.setting.step, 1), most);
    int own = number_decimals(known_or(value, 0), most);
    return own > of_step ? own : of_step;
}

static struct task_number number_in(const struct plan *plan, const struct task *task, double si,
                                    bool us)
{
    double value = known(si) ? in_unit(si, unit_of(task, us)) : UNKNOWN;
    return (struct task_number){value, decimals_of(plan, task, value, us)};
}

struct task_number task_now(const struct plan *plan, const struct task *task, bool us)
{
    return number_in(plan, task, task->cure.now_text == NULL ? task->cure.now : UNKNOWN, us);
}

/* Up to the next whole unit, but not past the ceiling: then the other of a nominal pair (240 kPa,
 * 35 psi), up to the decimal, or at last down to it. */
static struct task_number rounded_up(const struct task *task, struct task_number exact, bool us)
{
    const enum unit_id unit = unit_of(task, us);
    const bool pressure = unit_table[unit].kind == KIND_PRESSURE;
    const struct figure *reason = task->reason;
    double most = task->cure.most > 0                   ? task->cure.most
                  : reason->limit_side == LIMIT_AT_MOST ? reason->limit
                                                        : UNKNOWN;
    most = in_unit(pressure ? ceiling_reach_Pa(most) : most, unit);
    double up = round_up_to_decimals(exact.value, 0),
           decimal = round_up_to_decimals(exact.value, 1);
    double nominal = pressure ? in_unit(nominal_told_Pa(task->cure.then, us), unit) : exact.value;
    if (!clearly_above(up, most))
        return (struct task_number){up, exact.decimals};
    if (fabs(nominal - exact.value) > 1e-6)
        return (struct task_number){nominal, exact.decimals};
    return (struct task_number){
        clearly_above(decimal, most) ? round_down_to_decimals(exact.value, 1) : decimal, 1};
}

static struct task_number enough(struct task_number exact)
{
    return (struct task_number){round_up_to_decimals(exact.value, exact.decimals), exact.decimals};
}

struct task_number task_then(const struct plan *plan, const struct task *task, bool us)
{
    struct task_number then =
        number_in(plan, task, task->cure.then_text == NULL ? task->cure.then : UNKNOWN, us);
    unsigned policy = task_rows[task->cure.task].policy;
    if (!known(then.value) || !(policy & (TASK_ROUNDED_UP | TASK_ENOUGH)))
        return then;
    return policy & TASK_ENOUGH ? enough(then) : rounded_up(task, then, us);
}

/* --- for reading */

/* Without zeros that say nothing: 2550, 12.5. */
static const char *number_short(const struct layout *layout, struct task_number number)
{
    char text[NUMBER_SIZE];
    size_t length = number_fixed(number.value, number.decimals, layout->decimal_mark, text);
    if (number.decimals > 0) {
        while (text[length - 1] == '0')
            length--;
        length -= text[length - 1] == layout->decimal_mark;
    }
    return arena_copy(layout->arena, (struct span){text, length});
}

const char *task_then_text(const struct layout *layout, const struct task *task, bool us)
{
    return number_short(layout, task_then(layout->plan, task, us));
}

static const char *value_short(const struct layout *layout, const char *text,
                               struct task_number number)
{
    return text != NULL ? text : known(number.value) ? number_short(layout, number) : NULL;
}

/* "210 -> 330", or what there is of both; NULL where there is neither. */
static const char *change_in(const struct layout *layout, const struct task *task, bool us)
{
    const char *now = value_short(layout, task->cure.now_text, task_now(layout->plan, task, us));
    const char *then = value_short(layout, task->cure.then_text, task_then(layout->plan, task, us));
    if (now == NULL || then == NULL)
        return now != NULL ? now : then;
    return arena_format(layout->arena, "%s -> %s", now, then);
}

static const char *with_unit(const struct layout *layout, const struct task *task, bool us)
{
    const char *change = change_in(layout, task, us);
    const char *unit = in_words(layout->arena, task_unit(layout->plan, task, us));
    return change == NULL || *unit == '\0' ? change
                                           : arena_format(layout->arena, "%s %s", change, unit);
}

/* A pressure gauge may be in either unit. */
static bool shows_both_units(const struct layout *layout, const struct task *task)
{
    return task_has_two_units(task) &&
           (layout->units == UNITS_BOTH || unit_of(task, false) == UNIT_KPA);
}

static const char *amount_text(const struct layout *layout, const struct task *task)
{
    bool us = layout->units == UNITS_US;
    const char *amount = with_unit(layout, task, us);
    return amount == NULL || !shows_both_units(layout, task)
               ? amount
               : arena_format(layout->arena, "%s (%s)", amount, with_unit(layout, task, !us));
}

/* An item that is left out, and where. */
static const char *item_text(const struct layout *layout, const struct task *task)
{
    const struct figure *reason = task->reason;
    const char *item = reason->place.name, *state = figure_state(layout->plan, reason);
    if (!(task_rows[task->cure.task].policy & TASK_BY_ITEM) || item == NULL)
        return "";
    return arena_format(layout->arena, " %s%s%s", item, state == NULL ? "" : ", ",
                        state == NULL ? "" : state);
}

const char *task_text(const struct layout *layout, const struct task *task)
{
    const char *axle = axle_name(task->axle), *amount = amount_text(layout, task);
    return arena_format(layout->arena, "%s%s%s%s%s%s", task_rows[task->cure.task].title,
                        item_text(layout, task), *axle ? ", " : "", axle, amount ? ": " : "",
                        amount ? amount : "");
}

const char *task_text_in_full(const struct layout *layout, const struct task *task)
{
    const char *text = task_text(layout, task);
    const char *advice = figure_action(layout->arena, layout->plan, task->reason);
    const char *mark = has_amount(task) || task->cure.now_text != NULL ? ";" : ":";
    if (task->cure.task == TASK_PRESSURE_LABEL || advice == NULL)
        return text;
    if (task->cure.task == TASK_MEASURE)
        return arena_format(layout->arena, "%s: %s", quantity_rows[task->reason->quantity].title,
                            advice);
    if (task_rows[task->cure.task].kind == TASK_TO_ALTER && known(task->reason->value))
        return arena_format(layout->arena, "%s; without it %s is %s", text,
                            quantity_rows[task->reason->quantity].title,
                            figure_text(layout, task->reason, task->reason->value));
    return arena_format(layout->arena, "%s%s %s", text, mark, advice);
}

/* What has a column of its own, or is done when all else is. */
static bool is_other_work(const struct task *task)
{
    switch (task_rows[task->cure.task].kind) {
    case TASK_TO_LABEL:
    case TASK_TO_TELL:
        return false;
    default:
        return task->cure.task != TASK_TYRE_PRESSURE && task->cure.task != TASK_SPEEDOMETER_SETTING;
    }
}

static size_t count_of(const struct option_outcome *outcome, enum task_id task)
{
    size_t count = 0;
    for (size_t i = 0; i < outcome->task_count; i++)
        count += outcome->tasks[i].cure.task == task;
    return count;
}

const char *other_work_text(const struct layout *layout, size_t setup)
{
    const struct option_outcome *outcome = &layout->outcomes[setup];
    const char *text = "";
    for (size_t i = 0; i < outcome->task_count; i++) {
        const struct task *task = &outcome->tasks[i];
        enum task_id id = task->cure.task;
        if (!is_other_work(task) || (i > 0 && outcome->tasks[i - 1].cure.task == id))
            continue;
        text = arena_format(layout->arena, "%s%s%s", text, *text ? ", " : "",
                            id == TASK_MEASURE ? arena_format(layout->arena, "%zu to measure",
                                                              count_of(outcome, id))
                                               : task_rows[id].word);
    }
    return *text ? text : "-";
}
