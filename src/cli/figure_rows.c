#include "cli/figure_rows.h"

#include "base/known.h"
#include "cli/commands.h"

struct figure_row {
    const struct figure *figure;
    bool us;
};

enum unit_id figure_unit(const struct figure *figure, bool us)
{
    const struct quantity_row *quantity = &quantity_rows[figure->quantity];
    enum unit_id unit = us ? quantity->us : quantity->metric;
    if (unit_table[unit].kind == KIND_SPEED && (figure->instrument_mph || figure->instrument_kmh))
        return figure->instrument_mph ? UNIT_MPH : UNIT_KMH;
    return unit;
}

int figure_decimals(const struct figure *figure, bool us)
{
    const struct quantity_row *quantity = &quantity_rows[figure->quantity];
    if (figure->decimals != DECIMALS_OF_QUANTITY)
        return figure->decimals;
    return us ? quantity->decimals_us : quantity->decimals_metric;
}

#define FIGURE_TEXT(name, expression)                                                              \
    static struct column_value name(const void *data, bool us)                                     \
    {                                                                                              \
        const struct figure_row *row = data;                                                       \
        (void)us;                                                                                  \
        return (struct column_value){.text = (expression)};                                        \
    }

FIGURE_TEXT(get_part, part_name(row->figure->part))
FIGURE_TEXT(get_option, row->figure->option)
FIGURE_TEXT(get_state, row->figure->state)
FIGURE_TEXT(get_axle, axle_name(row->figure->axle))
FIGURE_TEXT(get_quantity, quantity_rows[row->figure->quantity].name)
FIGURE_TEXT(get_at, row->figure->at)
FIGURE_TEXT(get_unit, unit_table[figure_unit(row->figure, row->us)].name)
FIGURE_TEXT(get_verdict, verdict_name(row->figure->verdict))
FIGURE_TEXT(get_basis, row->figure->basis)
FIGURE_TEXT(get_action, row->figure->action)

double figure_value(const struct figure *figure, double si, bool us)
{
    enum unit_id unit = figure_unit(figure, us);
    if (!known(si) || unit == UNIT_BARE)
        return si;
    double value = unit_from_si(unit, si);
    if (figure->quantity == QUANTITY_PRESSURE_RECOMMENDED)
        return ceil(value - 1e-6);
    return value;
}

static struct column_value number(const struct figure_row *row, double si)
{
    return (struct column_value){
        .value = figure_value(row->figure, si, row->us),
        .decimals = figure_decimals(row->figure, row->us),
        .own_decimals = true,
    };
}

static struct column_value get_value(const void *data, bool us)
{
    (void)us;
    const struct figure_row *row = data;
    return number(row, row->figure->value);
}

/* A limit is told as it is, not rounded up. */
static struct column_value get_limit(const void *data, bool us)
{
    (void)us;
    const struct figure_row *row = data;
    struct column_value limit = number(row, row->figure->limit);
    enum unit_id unit = figure_unit(row->figure, row->us);
    if (known(limit.value) && unit != UNIT_BARE)
        limit.value = unit_from_si(unit, row->figure->limit);
    return limit;
}

#define TEXT_COLUMN(name, get)                                                                     \
    {                                                                                              \
        name, NULL, name, UNIT_BARE, UNIT_BARE, 0, 0, true, 12, 0, get                             \
    }
#define NUMBER_COLUMN(name, get)                                                                   \
    {                                                                                              \
        name, NULL, name, UNIT_BARE, UNIT_BARE, 0, 0, false, 12, 0, get                            \
    }

const struct column figure_columns[] = {
    TEXT_COLUMN("part", get_part),         TEXT_COLUMN("option", get_option),
    TEXT_COLUMN("state", get_state),       TEXT_COLUMN("axle", get_axle),
    TEXT_COLUMN("quantity", get_quantity), TEXT_COLUMN("at", get_at),
    NUMBER_COLUMN("value", get_value),     TEXT_COLUMN("unit", get_unit),
    NUMBER_COLUMN("limit", get_limit),     TEXT_COLUMN("verdict", get_verdict),
    TEXT_COLUMN("basis", get_basis),       TEXT_COLUMN("action", get_action),
};
const size_t figure_column_count = sizeof figure_columns / sizeof figure_columns[0];

void figure_rows_add(struct rows_out *rows, const struct figure *figure, int units)
{
    struct figure_row row = {figure, units == UNITS_US};
    rows_add(rows, &row);
    row.us = true;
    if (units == UNITS_BOTH && figure_unit(figure, true) != figure_unit(figure, false))
        rows_add(rows, &row);
}
