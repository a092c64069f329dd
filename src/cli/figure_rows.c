#include "cli/figure_rows.h"

#include "base/known.h"
#include "cli/commands.h"
#include "reading/figure_value.h"
#include "reading/place_text.h"

struct figure_row {
    struct arena *arena;
    const struct plan *plan;
    const struct figure *figure;
    bool us, exact;
};

#define FIGURE_GETTER(name, field, expression)                                                     \
    static struct column_value name(const void *data, bool us)                                     \
    {                                                                                              \
        const struct figure_row *row = data;                                                       \
        (void)us;                                                                                  \
        return (struct column_value){.field = (expression)};                                       \
    }

FIGURE_GETTER(get_part, text, part_name(row->figure->part))
FIGURE_GETTER(get_option, text, figure_option(row->plan, row->figure))
FIGURE_GETTER(get_state, text, figure_state(row->plan, row->figure))
FIGURE_GETTER(get_axle, text, axle_name(row->figure->axle))
FIGURE_GETTER(get_quantity, text, quantity_rows[row->figure->quantity].name)
FIGURE_GETTER(get_at, text, figure_at(row->arena, row->plan, row->figure))
FIGURE_GETTER(get_place, members, place_members(row->arena, &row->figure->place, row->plan->us))
FIGURE_GETTER(get_unit, text, unit_table[figure_unit(row->figure, row->us)].name)
FIGURE_GETTER(get_verdict, text, verdict_name(row->figure->verdict))
FIGURE_GETTER(get_basis, text, figure_basis(row->arena, row->plan, row->figure))
FIGURE_GETTER(get_action, text, figure_action(row->arena, row->plan, row->figure))

static struct column_value number(const struct figure_row *row, double value)
{
    return (struct column_value){
        .value = value,
        .decimals = figure_decimals(row->figure, row->us),
        .own_decimals = true,
    };
}

static struct column_value get_value(const void *data, bool us)
{
    (void)us;
    const struct figure_row *row = data;
    return number(row, (row->exact ? figure_value : figure_rounded)(row->figure, row->figure->value,
                                                                    row->us));
}

static struct column_value get_limit(const void *data, bool us)
{
    (void)us;
    const struct figure_row *row = data;
    return number(row, figure_limit(row->figure, row->us));
}

#define TEXT_COLUMN(name, get)                                                                     \
    {                                                                                              \
        name, NULL, name, UNIT_BARE, UNIT_BARE, 0, 0, COLUMN_TEXT, 12, 0, GET(get)                 \
    }
#define NUMBER_COLUMN(name, get)                                                                   \
    {                                                                                              \
        name, NULL, name, UNIT_BARE, UNIT_BARE, 0, 0, COLUMN_NUMBER, 12, 0, GET(get)               \
    }
#define OBJECT_COLUMN(name, get)                                                                   \
    {                                                                                              \
        name, NULL, name, UNIT_BARE, UNIT_BARE, 0, 0, COLUMN_OBJECT, 12, 0, GET(get)               \
    }

const struct column figure_columns[] = {
    TEXT_COLUMN("part", get_part),         TEXT_COLUMN("option", get_option),
    TEXT_COLUMN("state", get_state),       TEXT_COLUMN("axle", get_axle),
    TEXT_COLUMN("quantity", get_quantity), TEXT_COLUMN("at", get_at),
    OBJECT_COLUMN("place", get_place),     NUMBER_COLUMN("value", get_value),
    TEXT_COLUMN("unit", get_unit),         NUMBER_COLUMN("limit", get_limit),
    TEXT_COLUMN("verdict", get_verdict),   TEXT_COLUMN("basis", get_basis),
    TEXT_COLUMN("action", get_action),
};
const size_t figure_column_count = sizeof figure_columns / sizeof figure_columns[0];

void figure_rows_add(struct rows_out *rows, struct arena *texts, const struct plan *plan,
                     const struct figure *figure, int units)
{
    bool exact = rows->writer.functions == &writer_json; /* which has no decimals */
    struct figure_row row = {texts, plan, figure, units == UNITS_US, exact};
    rows_add(rows, &row);
    row.us = true;
    if (units == UNITS_BOTH && figure_unit(figure, true) != figure_unit(figure, false))
        rows_add(rows, &row);
    arena_reuse(texts);
}
