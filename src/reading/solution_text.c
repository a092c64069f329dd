#include "reading/solution_text.h"

#include <string.h>

#include "base/known.h"
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
        const char *amount = amount_text(layout, figure);
        if (strcspn(amount, "123456789") > strcspn(amount, " ")) /* it tells no reader how much */
            continue;
        bool alike = last != NULL && remark_same(becomes(figure), becomes(last));
        text = arena_format(layout->arena, "%s%s%s%s %s", text == NULL ? "" : text,
                            text == NULL || alike ? "" : behind,
                            text == NULL ? ""
                            : alike      ? "; "
                                         : ". ",
                            figure->advice.arguments[0].text, amount);
        behind = arena_format(layout->arena, ": %s",
                              remark_text(layout->arena, becomes(figure), layout->plan->us));
        last = figure;
    }
    return text == NULL ? NULL : arena_format(layout->arena, "%s%s", text, behind);
}

size_t solution_lines(const struct layout *layout, size_t setup,
                      struct solution_line out[SOLUTION_LINES_MAX])
{
    const struct solution_line lines[SOLUTION_LINES_MAX] = {
        {"least", least_text(layout, &layout->setups[setup])},
        {"hangs on", hangs_on_text(layout, &layout->setups[setup])},
    };
    size_t count = 0;
    for (size_t i = 0; i < SOLUTION_LINES_MAX; i++)
        if (lines[i].text != NULL)
            out[count++] = lines[i];
    return count;
}
