#include "reading/solution_text.h"

#include <string.h>

#include "base/known.h"
#include "output/number.h"
#include "reading/figure_value.h"
#include "reading/remark_text.h"

static bool is_solving(const struct figure *figure, const char *name)
{
    return figure->part == PART_SOLVING && strcmp(quantity_rows[figure->quantity].name, name) == 0;
}

/* All changes of the set, and what it was chosen from. */
static const char *least_text(const struct layout *layout, const struct setup_figures *figures)
{
    const char *text = "", *basis = NULL;
    for (size_t i = 0; i < figures->count; i++)
        if (is_solving(figures->items[i], "least_change")) {
            text = arena_format(layout->arena, "%s%s%s", text, *text ? "; " : "",
                                figure_action(layout->arena, layout->plan, figures->items[i]));
            basis = figure_basis(layout->arena, layout->plan, figures->items[i]);
        }
    return basis == NULL ? NULL : arena_format(layout->arena, "%s [%s]", text, basis);
}

/* "+19 kg" */
static const char *amount_text(const struct layout *layout, const struct figure *figure)
{
    const char *amount = figure_text(layout, figure, figure->value);
    return figure->value > 0 ? arena_format(layout->arena, "+%s", amount) : amount;
}

static bool is_told_as_nothing(const struct layout *layout, const struct figure *figure)
{
    bool us = layout->units == UNITS_US;
    return round_to_decimals(figure_value(figure, figure->value, us),
                             figure_decimals(figure, us)) == 0;
}

/* What becomes of the option beyond that: what its advice is made of behind the input in words. */
static const struct remark *becomes(const struct figure *figure)
{
    return figure->advice.arguments[1].remark;
}

/* "arch front inner -18.9 mm; rear lift +8.0 mm: beyond that no go", those alike together. */
static const char *hangs_on_text(const struct layout *layout, const struct setup_figures *figures)
{
    const char *text = NULL, *behind = NULL;
    const struct figure *last = NULL;
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = figures->items[i];
        if (!is_solving(figure, "may_be_off"))
            continue;
        if (!known(figure->value))
            return figure_action(layout->arena, layout->plan, figure);
        if (is_told_as_nothing(layout, figure)) /* it tells no reader how much */
            continue;
        bool alike = last != NULL && remark_same(becomes(figure), becomes(last));
        text = arena_format(layout->arena, "%s%s%s%s %s", text == NULL ? "" : text,
                            text == NULL || alike ? "" : behind,
                            text == NULL ? ""
                            : alike      ? "; "
                                         : ". ",
                            figure->advice.arguments[0].text, amount_text(layout, figure));
        behind = arena_format(layout->arena, ": %s",
                              remark_text(layout->arena, becomes(figure), layout->plan->us));
        last = figure;
    }
    return text == NULL ? NULL : arena_format(layout->arena, "%s%s", text, behind);
}

/* --- springs that may be fitted */

static enum answer suits(const struct figure *figure)
{
    enum remark_id said = figure->advice.id;
    bool is_said = said == ADVICE_SPRING_SUITS || said == ADVICE_SPRING_KEEPS;
    bool is_not = said == ADVICE_SPRING_DOES_NOT_SUIT || said == ADVICE_SPRING_KEEPS_LESS;
    return answer_of(is_said || is_not, is_said);
}

/* "rear S2 suits touring, loaded", of a spring's figures, one a state. */
static const char *spring_text(const struct layout *layout, const struct setup_figures *figures,
                               size_t first)
{
    const struct figure *spring = figures->items[first];
    const char *states = "";
    bool all_known = true;
    for (size_t i = first; i < figures->count; i++) {
        const struct figure *figure = figures->items[i];
        if (!figure_same(figure, spring, SAME_PART | SAME_QUANTITY | SAME_AXLE | SAME_PLACE))
            continue;
        const char *state = plan_state_name(layout->plan, figure->state);
        all_known = all_known && suits(figure) != ANSWER_UNKNOWN;
        if (suits(figure) == ANSWER_YES)
            states = arena_format(layout->arena, "%s%s%s", states, *states ? ", " : "",
                                  state == NULL ? "unladen" : state);
    }
    return arena_format(layout->arena, "%s %s %s", axle_name(spring->axle), spring->place.name,
                        *states     ? arena_format(layout->arena, "suits %s%s", states,
                                               all_known ? "" : ", of others not known")
                        : all_known ? "suits no state"
                                    : "is not known to suit");
}

/* Each spring once: its figure of the unladen vehicle. */
static const char *springs_text(const struct layout *layout, const struct setup_figures *figures)
{
    const char *text = NULL;
    for (size_t i = 0; i < figures->count; i++)
        if (figures->items[i]->quantity == QUANTITY_CONSTANT_LOAD &&
            figures->items[i]->state == STATE_NONE)
            text = arena_format(layout->arena, "%s%s%s", text == NULL ? "" : text,
                                text == NULL ? "" : "; ", spring_text(layout, figures, i));
    return text;
}

size_t solution_lines(const struct layout *layout, size_t setup,
                      struct solution_line out[SOLUTION_LINES_MAX])
{
    const struct solution_line lines[SOLUTION_LINES_MAX] = {
        {"least", least_text(layout, &layout->setups[setup])},
        {"hangs on", hangs_on_text(layout, &layout->setups[setup])},
        {"springs", springs_text(layout, &layout->setups[setup])},
    };
    size_t count = 0;
    for (size_t i = 0; i < SOLUTION_LINES_MAX; i++)
        if (lines[i].text != NULL)
            out[count++] = lines[i];
    return count;
}
