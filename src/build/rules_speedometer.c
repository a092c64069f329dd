/* Rules between the keys of the speedometer; as in rules.c, one function each. */
#include <string.h>

#include "base/known.h"
#include "base/nearest.h"
#include "tables/lookup.h"
#include "build/rule_check.h"

static void rule_rules_are_known(const struct check *check)
{
    const struct instrument *instrument = &check->specification->speedometer;
    const char *name = instrument->rule, *odometer = instrument->odometer.rule;
    if (name != NULL && speedometer_rule_find(name) == NULL) {
        struct nearest nearest = nearest_start(span_of(name));
        for (size_t i = 0; i < speedometer_rules_count; i++)
            nearest_try(&nearest, speedometer_rules_rows[i].name);
        const char *near = nearest_found(&nearest);
        FAULT(check, instrument->given, "rule",
              "\"%s\" is no row of the table speedometer_rules; expected such as %s",
              quoted(check, name), near ? near : "un_r39");
    }
    if (odometer != NULL && odometer_rule_find(odometer) == NULL)
        FAULT(check, instrument->odometer.given, "rule",
              "\"%s\" is no row of the table odometer_rules; expected such as %s",
              quoted(check, odometer), odometer_rules_rows[0].name);
}

/* Two readings of one instrument moment in two units: more likely a slip than meant. */
static bool has_one_unit(const struct check *check, const struct value_pair *pair)
{
    if (pair->first_unit == pair->second_unit)
        return true;
    FAULT_AT(check, pair->mark, "this reading mixes %s and %s; expected [shown, true] in one unit",
             unit_table[pair->first_unit].name, unit_table[pair->second_unit].name);
    return false;
}

static void check_speeds(const struct check *check, struct mark mark, double shown_mps,
                         double true_mps)
{
    if (!(shown_mps > 0) || !(true_mps > 0))
        FAULT_AT(check, mark,
                 "a reading at a standstill says nothing; expected both speeds above zero");
    else if (true_mps > 170)
        FAULT_AT(check, mark,
                 "no road test reaches this speed; expected a true speed below 600 km/h");
    else if (shown_mps > 2 * true_mps || true_mps > 2 * shown_mps)
        FAULT_AT(check, mark,
                 "one speed is more than twice the other; expected [shown, true] of one moment");
}

static void rule_readings_are_possible(const struct check *check)
{
    const struct pair_list *readings = &check->specification->speedometer.readings;
    for (size_t i = 0; i < readings->count; i++) {
        const struct value_pair *reading = &readings->items[i];
        if (has_one_unit(check, reading))
            check_speeds(check, reading->mark, reading->first, reading->second);
    }
}

static void rule_timed_readings_are_possible(const struct check *check)
{
    const struct triple_list *timed = &check->specification->speedometer.timed_readings;
    for (size_t i = 0; i < timed->count; i++) {
        const struct value_triple *reading = &timed->items[i];
        if (reading->first > 0 && reading->second > 0)
            check_speeds(check, reading->mark, reading->third, reading->first / reading->second);
        else
            FAULT_AT(check, reading->mark,
                     "a measured distance needs a length and a time above zero; expected such as "
                     "[1 mi, 61.3 s, 60 mph]");
    }
}

static void rule_odometer_readings_are_possible(const struct check *check)
{
    const struct pair_list *readings = &check->specification->speedometer.odometer.readings;
    for (size_t i = 0; i < readings->count; i++) {
        const struct value_pair *reading = &readings->items[i];
        if (!has_one_unit(check, reading))
            continue;
        if (!(reading->first > 0) || !(reading->second > 0))
            FAULT_AT(check, reading->mark,
                     "a reading over no distance says nothing; expected "
                     "both distances above zero");
        else if (reading->first > 2 * reading->second || reading->second > 2 * reading->first)
            FAULT_AT(check, reading->mark,
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
    FAULT(check, check->specification->speedometer.given, "readings_on",
          "there is no option named \"%s\"; expected fitted or an option's name",
          quoted(check, on));
}

/* Whether a tyre or a sensor tells what a new instrument of that kind is to hold. */
static bool is_told(const struct instrument *instrument)
{
    switch (instrument->setting.kind) {
    case SETTING_CIRCUMFERENCE_MM:
    case SETTING_REVS_PER_KM:
    case SETTING_REVS_PER_MILE:
        return true;
    case SETTING_PULSES_PER_KM:
    case SETTING_PULSES_PER_MILE:
    case SETTING_CONSTANT_K:
        return instrument->sensor.given != NULL;
    default:
        return false;
    }
}

/* A new instrument has none yet, and no reading was taken with it. */
static void check_has_number(const struct check *check, const struct setting *setting)
{
    const struct instrument *instrument = &check->specification->speedometer;
    if (known(setting->now) || is_given(setting->given, "now"))
        return;
    bool read = instrument->readings.count + instrument->timed_readings.count > 0 ||
                known(instrument->fitted_error);
    if (read && is_told(instrument))
        FAULT(check, setting->given, "now",
              "the setting has no number, with which the error was found; expected such as now: "
              "2548, or of a new instrument no readings and no fitted_error");
    else if (!is_told(instrument))
        FAULT(check, setting->given, "now",
              "the setting has no number; expected such as now: 2548%s",
              setting->kind == SETTING_DRIVEN_GEAR_TEETH || setting->kind == CHOICE_NONE
                  ? ""
                  : ", or of a new instrument a sensor");
}

static void rule_setting_is_whole(const struct check *check)
{
    const struct setting *setting = &check->specification->speedometer.setting;
    if (setting->given == NULL)
        return;
    if (setting->kind == CHOICE_NONE && !is_given(setting->given, "kind"))
        FAULT(check, setting->given, "kind",
              "the setting has no kind; expected such as kind: pulses_per_km");
    check_has_number(check, setting);
    if (known(setting->min) && known(setting->max) && setting->min > setting->max)
        FAULT(check, setting->given, "min", "min is above max; expected the lower of the two");
    if (clearly_above(setting->min, setting->now) || clearly_above(setting->now, setting->max))
        FAULT(check, setting->given, "now",
              "the setting now lies outside min and max; expected a number that the instrument "
              "takes");
    if (known(setting->step) && setting->choices.count > 0)
        FAULT(check, setting->given, "step",
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
        FAULT(check, setting->given, "driving_gear_teeth",
              "a driving gear belongs to kind: driven_gear_teeth; expected it only there");
    if (!is_whole(setting->driving_gear_teeth))
        FAULT(check, setting->given, "driving_gear_teeth",
              "teeth are counted whole; expected such as 7");
    if (gears && !is_whole(setting->now))
        FAULT(check, setting->given, "now", "teeth are counted whole; expected such as 19");
}

static bool is_choice(const struct setting *setting, double value)
{
    for (size_t i = 0; i < setting->choices.count; i++)
        if (setting->choices.items[i] == value)
            return true;
    return setting->choices.count == 0;
}

/* Steps are counted from the setting now, of a new instrument from the least. */
static bool is_step(const struct setting *setting, double value)
{
    double steps = (value - known_or(setting->now, known_or(setting->min, 0))) / setting->step;
    return !known(setting->step) || fabs(steps - floor(steps + 0.5)) < 1e-6;
}

static void check_as_set(const struct check *check, const struct as_set *as_set)
{
    const struct setting *setting = &check->specification->speedometer.setting;
    double value = as_set->setting;
    if (!known(value))
        return;
    if (setting->given == NULL)
        FAULT(check, as_set->given, "setting",
              "there is no instrument to be set; expected such as speedometer: {setting: {kind: "
              "pulses_per_km, now: 2548}}");
    else if (clearly_above(setting->min, value) || clearly_above(value, setting->max) ||
             !is_choice(setting, value) || !is_step(setting, value))
        FAULT(check, as_set->given, "setting",
              "the instrument does not take this; expected a setting within min and max that is "
              "one of its steps or choices");
    else if (setting->kind == SETTING_DRIVEN_GEAR_TEETH && !is_whole(value))
        FAULT(check, as_set->given, "setting", "teeth are counted whole; expected such as 19");
}

static void rule_settings_entered_are_possible(const struct check *check)
{
    const struct fitment_list *options = &check->specification->tyres.options;
    for (size_t i = 0; i < options->count; i++)
        check_as_set(check, &options->items[i].as_set);
}

static void rule_sensor_is_whole(const struct check *check)
{
    const struct sensor *sensor = &check->specification->speedometer.sensor;
    if (sensor->given == NULL || known(sensor->characteristic_coefficient))
        return;
    if (!known(sensor->pulses_per_turn) && !is_given(sensor->given, "pulses_per_turn"))
        FAULT(check, sensor->given, "pulses_per_turn",
              "the sensor has no count; expected such as pulses_per_turn: 16, or "
              "characteristic_coefficient");
    if (sensor->on == CHOICE_NONE && !is_given(sensor->given, "on"))
        FAULT(check, sensor->given, "on", "the sensor has no place; expected such as on: shaft");
    if (sensor->on == SENSOR_ON_CABLE && !known(sensor->turns_per_km) &&
        !is_given(sensor->given, "turns_per_km"))
        FAULT(check, sensor->given, "on",
              "a cable's turns are not in the tyre's size; expected such as turns_per_km: 637");
}

static void rule_speed_table_rises(const struct check *check)
{
    enum { LINES_MAX = 200 };
    const struct speed_table *range = &check->specification->speedometer.range;
    if (known(range->from_mps) && known(range->to_mps) && range->from_mps >= range->to_mps)
        FAULT(check, range->given, "from", "from is not below to; expected the lower of the two");
    double span = known_or(range->to_mps, 150) - known_or(range->from_mps, 0);
    if (known(range->step_mps) && span / range->step_mps > LINES_MAX)
        FAULT(check, range->given, "step",
              "that step makes more than %d lines; expected such as step: 10 km/h", LINES_MAX);
}

void check_speedometer_rules(const struct check *check)
{
    rule_rules_are_known(check);
    rule_readings_are_possible(check);
    rule_timed_readings_are_possible(check);
    rule_odometer_readings_are_possible(check);
    rule_readings_are_on_a_tyre(check);
    rule_setting_is_whole(check);
    rule_gear_teeth_are_whole(check);
    rule_settings_entered_are_possible(check);
    rule_sensor_is_whole(check);
    rule_speed_table_rises(check);
}
