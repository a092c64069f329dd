/* Rules between the keys of the speedometer; as in rules.c, one function each. */
#include <string.h>

#include "base/known.h"
#include "base/nearest.h"
#include "tables/lookup.h"
#include "build/rules.h"
#include "build/keys.h"
#include "size/quantity_text.h"
#include "build/rule_check.h"

#define FAULT_AT(check, node, ...)                                                                 \
    diagnostics_add((check)->diagnostics, (node)->mark, 1, __VA_ARGS__)

static void rule_rules_are_known(const struct check *check)
{
    const struct instrument *instrument = &check->specification->speedometer;
    const char *name = instrument->rule, *odometer = instrument->odometer.rule;
    if (name != NULL && speedometer_rule_find(name) == NULL) {
        struct nearest nearest = nearest_start(span_of(name));
        for (size_t i = 0; i < speedometer_rules_count; i++)
            nearest_try(&nearest, speedometer_rules_rows[i].name);
        const char *near = nearest_found(&nearest);
        FAULT(check, instrument->node, "rule",
              "\"%s\" is no row of the table speedometer_rules; expected such as %s",
              quoted(check->diagnostics, name), near ? near : "un_r39");
    }
    if (odometer != NULL && odometer_rule_find(odometer) == NULL)
        FAULT(check, instrument->odometer.node, "rule",
              "\"%s\" is no row of the table odometer_rules; expected such as %s",
              quoted(check->diagnostics, odometer), odometer_rules_rows[0].name);
}

/* The unit that a quantity was written in; UNIT_COUNT where it is none. */
static enum unit_id unit_written(const struct node *node, enum unit_kind kind)
{
    struct quantity quantity;
    struct quantity_error error;
    return quantity_parse(node->text, kind, &quantity, &error) ? quantity.unit : UNIT_COUNT;
}

/* Two readings of one instrument moment in two units: more likely a slip than meant. */
static bool has_one_unit(const struct check *check, const struct value_pair *pair,
                         enum unit_kind kind)
{
    enum unit_id first = unit_written(pair->node->first, kind);
    enum unit_id second = unit_written(pair->node->last, kind);
    if (first == second || first == UNIT_COUNT || second == UNIT_COUNT)
        return true;
    FAULT_AT(check, pair->node, "this reading mixes %s and %s; expected [shown, true] in one unit",
             unit_table[first].name, unit_table[second].name);
    return false;
}

static void check_speeds(const struct check *check, const struct node *node, double shown_mps,
                         double true_mps)
{
    if (!(shown_mps > 0) || !(true_mps > 0))
        FAULT_AT(check, node,
                 "a reading at a standstill says nothing; expected both speeds above zero");
    else if (true_mps > 170)
        FAULT_AT(check, node,
                 "no road test reaches this speed; expected a true speed below 600 km/h");
    else if (shown_mps > 2 * true_mps || true_mps > 2 * shown_mps)
        FAULT_AT(check, node,
                 "one speed is more than twice the other; expected [shown, true] of one moment");
}

static void rule_readings_are_possible(const struct check *check)
{
    const struct pair_list *readings = &check->specification->speedometer.readings;
    for (size_t i = 0; i < readings->count; i++) {
        const struct value_pair *reading = &readings->items[i];
        if (has_one_unit(check, reading, KIND_SPEED))
            check_speeds(check, reading->node, reading->first, reading->second);
    }
}

static void rule_timed_readings_are_possible(const struct check *check)
{
    const struct triple_list *timed = &check->specification->speedometer.timed_readings;
    for (size_t i = 0; i < timed->count; i++) {
        const struct value_triple *reading = &timed->items[i];
        if (reading->first > 0 && reading->second > 0)
            check_speeds(check, reading->node, reading->third, reading->first / reading->second);
        else
            FAULT_AT(check, reading->node,
                     "a measured distance needs a length and a time above zero; expected such as "
                     "[1 mi, 61.3 s, 60 mph]");
    }
}

static void rule_odometer_readings_are_possible(const struct check *check)
{
    const struct pair_list *readings = &check->specification->speedometer.odometer.readings;
    for (size_t i = 0; i < readings->count; i++) {
        const struct value_pair *reading = &readings->items[i];
        if (!has_one_unit(check, reading, KIND_LENGTH))
            continue;
        if (!(reading->first > 0) || !(reading->second > 0))
            FAULT_AT(check, reading->node,
                     "a reading over no distance says nothing; expected "
                     "both distances above zero");
        else if (reading->first > 2 * reading->second || reading->second > 2 * reading->first)
            FAULT_AT(check, reading->node,
                     "one distance is more than twice the other; expected "
                     "[shown, true] of one drive");
    }
}

static void rule_readings_are_on_a_tyre(const struct check *check)
{
    const char *on = check->specification->speedometer.readings_on;
    if (on == NULL || strcmp(on, "fitted") == 0)
        return;
    const struct fitment_list *options = &check->specification->tyres.options;
    for (size_t i = 0; i < options->count; i++)
        if (options->items[i].name != NULL && strcmp(options->items[i].name, on) == 0)
            return;
    FAULT(check, check->specification->speedometer.node, "readings_on",
          "there is no option named \"%s\"; expected fitted or an option's name",
          quoted(check->diagnostics, on));
}

static void rule_setting_is_whole(const struct check *check)
{
    const struct setting *setting = &check->specification->speedometer.setting;
    if (setting->node == NULL)
        return;
    if (setting->kind == CHOICE_NONE && tree_child(setting->node, "kind") == NULL)
        FAULT(check, setting->node, "kind",
              "the setting has no kind; expected such as kind: pulses_per_km");
    if (!known(setting->now) && tree_child(setting->node, "now") == NULL)
        FAULT(check, setting->node, "now", "the setting has no number; expected such as now: 2548");
    if (known(setting->min) && known(setting->max) && setting->min > setting->max)
        FAULT(check, setting->node, "min", "min is above max; expected the lower of the two");
    if (clearly_above(setting->min, setting->now) || clearly_above(setting->now, setting->max))
        FAULT(check, setting->node, "now",
              "the setting now lies outside min and max; expected a number that the instrument "
              "takes");
    if (known(setting->step) && setting->choices.count > 0)
        FAULT(check, setting->node, "step",
              "step and choices stand together; expected the one that the instrument has");
}

static bool is_whole(double value)
{
    return !known(value) || value == floor(value);
}

static void rule_gear_teeth_are_whole(const struct check *check)
{
    const struct setting *setting = &check->specification->speedometer.setting;
    bool gears = setting->kind == SETTING_DRIVEN_GEAR_TEETH;
    if (known(setting->driving_gear_teeth) && !gears && setting->kind != CHOICE_NONE)
        FAULT(check, setting->node, "driving_gear_teeth",
              "a driving gear belongs to kind: driven_gear_teeth; expected it only there");
    if (!is_whole(setting->driving_gear_teeth))
        FAULT(check, setting->node, "driving_gear_teeth",
              "teeth are counted whole; expected such as 7");
    if (gears && !is_whole(setting->now))
        FAULT(check, setting->node, "now", "teeth are counted whole; expected such as 19");
}

static void rule_sensor_is_whole(const struct check *check)
{
    const struct sensor *sensor = &check->specification->speedometer.sensor;
    if (sensor->node == NULL || known(sensor->characteristic_coefficient))
        return;
    if (!known(sensor->pulses_per_turn) && tree_child(sensor->node, "pulses_per_turn") == NULL)
        FAULT(check, sensor->node, "pulses_per_turn",
              "the sensor has no count; expected such as pulses_per_turn: 16, or "
              "characteristic_coefficient");
    if (sensor->on == CHOICE_NONE && tree_child(sensor->node, "on") == NULL)
        FAULT(check, sensor->node, "on", "the sensor has no place; expected such as on: shaft");
    if (sensor->on == SENSOR_ON_CABLE && !known(sensor->turns_per_km) &&
        tree_child(sensor->node, "turns_per_km") == NULL)
        FAULT(check, sensor->node, "on",
              "a cable's turns are not in the tyre's size; expected such as turns_per_km: 637");
}

static void rule_speed_table_rises(const struct check *check)
{
    enum { LINES_MAX = 200 };
    const struct speed_table *range = &check->specification->speedometer.range;
    if (known(range->from_mps) && known(range->to_mps) && range->from_mps >= range->to_mps)
        FAULT(check, range->node, "from", "from is not below to; expected the lower of the two");
    double span = known_or(range->to_mps, 150) - known_or(range->from_mps, 0);
    if (known(range->step_mps) && span / range->step_mps > LINES_MAX)
        FAULT(check, range->node, "step",
              "that step makes more than %d lines; expected such as step: 10 km/h", LINES_MAX);
}

void build_rules_speedometer(const struct specification *specification,
                             struct diagnostics *diagnostics)
{
    static void (*const rules[])(const struct check *) = {
        rule_rules_are_known,
        rule_readings_are_possible,
        rule_timed_readings_are_possible,
        rule_odometer_readings_are_possible,
        rule_readings_are_on_a_tyre,
        rule_setting_is_whole,
        rule_gear_teeth_are_whole,
        rule_sensor_is_whole,
        rule_speed_table_rises,
    };
    const struct check check = {specification, diagnostics};
    for (size_t i = 0; i < sizeof rules / sizeof rules[0]; i++)
        rules[i](&check);
}
