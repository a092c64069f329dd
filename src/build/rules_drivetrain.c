/* Rules of the drivetrain that no single key can check. */
#include "base/known.h"
#include "build/rule_check.h"

/* So that a file made to be large cannot ask for more figures than memory holds. */
enum { GEARS_MAX = 50, RANGES_MAX = 8, CHOICES_MAX = 50, POINTS_MAX = 200, SPEEDS_MAX = 50 };
enum { LINES_MAX = 3000 };

static void rule_engine_speeds_rise(const struct check *check, const struct engine *engine)
{
    const struct pair_list *torque = &engine->torque;
    if (known(engine->idle_per_s) && known(engine->limit_per_s) &&
        engine->limit_per_s <= engine->idle_per_s)
        FAULT(check, engine->given, "limit",
              "the engine's limit is not above its idle; expected it to be");
    for (size_t i = 0; i < torque->count; i++) {
        const struct value_pair *point = &torque->items[i];
        if (i > 0 && point->first <= torque->items[i - 1].first)
            FAULT_AT(check, point->mark,
                     "the torque curve does not rise in engine speed here; expected each "
                     "point at a higher speed than the one before");
        if (point->first <= 0 || point->second <= 0)
            FAULT_AT(check, point->mark,
                     "a point of the torque curve is at or below zero; expected an engine "
                     "speed and a torque above it");
    }
    if (torque->count > 0 && engine->limit_per_s < torque->items[0].first)
        FAULT(check, engine->given, "limit",
              "the engine's limit is below the first point of its torque curve; expected a limit "
              "that the curve reaches");
}

static void rule_gearbox_is_one(const struct check *check, const struct drivetrain *drivetrain)
{
    const struct variable_ratio *variable = &drivetrain->variable;
    const struct given *gears = given_key(drivetrain->given, "gears");
    bool for_sensor = check->specification->speedometer.sensor.given != NULL; /* the axle alone */
    if (gears == NULL && variable->given == NULL && !for_sensor)
        FAULT(check, drivetrain->given, "gears",
              "the key \"gears\" is missing; expected such as gears: [3.87, 2.21, 1.49]");
    if (gears != NULL && gears->form == GIVEN_LIST && gears->first == NULL)
        FAULT(check, drivetrain->given, "gears",
              "the list of gears is empty; expected one ratio at least");
    if (gears != NULL && variable->given != NULL)
        FAULT(check, drivetrain->given, "continuously_variable",
              "a gearbox has gears or is continuously variable; expected one of the two keys");
    if (variable->given == NULL)
        return;
    const char *const ends[] = {"lowest_gear", "highest_gear"};
    for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++)
        if (!is_given(variable->given, ends[i]))
            FAULT(check, variable->given, ends[i],
                  "the key \"%s\" is missing; expected both ends of the range, such as "
                  "{lowest_gear: 2.63, highest_gear: 0.53}",
                  ends[i]);
    if (variable->lowest_gear <= variable->highest_gear)
        FAULT(check, variable->given, "lowest_gear",
              "lowest_gear is not above highest_gear; expected the larger ratio, which is for "
              "moving off");
}

static void rule_low_range_is_lower(const struct check *check, const struct transfer *transfer)
{
    for (size_t i = 0; i < transfer->low.count; i++)
        if (transfer->low.items[i] <= known_or(transfer->high, 1)) {
            FAULT(check, transfer->given, "low",
                  "the low range is no lower than the high one; expected the larger ratio, such as "
                  "{high: 1.0, low: 2.64}");
            return;
        }
}

static void rule_axle_has_its_ratio(const struct check *check)
{
    const struct specification *specification = check->specification;
    const struct drivetrain *drivetrain = &specification->drivetrain;
    const struct given *axle = given_key(drivetrain->given, "axle");
    int drive = specification->vehicle.drive;
    if (axle == NULL)
        FAULT(check, drivetrain->given, "axle",
              "the key \"axle\" is missing; expected such as axle: 3.83");
    if (axle == NULL || axle->form != GIVEN_MAPPING)
        return;
    if (!is_given(axle, "front") && drive != DRIVE_REAR && drive != CHOICE_NONE)
        FAULT(check, drivetrain->given, "axle",
              "the front axle is driven, and has no ratio here; expected such as "
              "{front: 3.829, rear: 3.837}");
    if (!is_given(axle, "rear") && drive != DRIVE_FRONT)
        FAULT(check, drivetrain->given, "axle",
              "the rear axle is taken as driven, and has no ratio here; expected such as "
              "{front: 3.829, rear: 3.837}, or vehicle: drive: front");
}

static void check_no_twin(const struct check *check, const struct given *mapping, const char *key,
                          const struct number_list *list)
{
    for (size_t i = 1; i < list->count; i++)
        for (size_t j = 0; j < i; j++)
            if (same_value(list->items[i], list->items[j])) {
                FAULT(check, mapping, key, "\"%s\" has the same ratio twice; expected each once",
                      key);
                return;
            }
}

static bool within_count(const struct check *check, const struct given *mapping, const char *key,
                         size_t count, size_t most)
{
    if (count > most)
        FAULT(check, mapping, key, "\"%s\" has %zu items; at most %zu are read", key, count, most);
    return count <= most;
}

static bool lists_are_short(const struct check *check, const struct drivetrain *drivetrain)
{
    const struct {
        const struct given *mapping;
        const char *key;
        size_t count, most;
    } lists[] = {
        {drivetrain->given, "gears", drivetrain->gears.count, GEARS_MAX},
        {drivetrain->transfer.given, "low", drivetrain->transfer.low.count, RANGES_MAX},
        {drivetrain->given, "axle_choices", drivetrain->axle_choices.count, CHOICES_MAX},
        {drivetrain->engine.given, "torque", drivetrain->engine.torque.count, POINTS_MAX},
        {drivetrain->given, "road_speeds", drivetrain->road_speeds_mps.count, SPEEDS_MAX},
        {drivetrain->given, "engine_speeds", drivetrain->engine_speeds_per_s.count, SPEEDS_MAX},
        {drivetrain->given, "grades", drivetrain->grades.count, SPEEDS_MAX},
    };
    bool all = true;
    for (size_t i = 0; i < sizeof lists / sizeof lists[0]; i++)
        all = within_count(check, lists[i].mapping, lists[i].key, lists[i].count, lists[i].most) &&
              all;
    return all;
}

/* The product of it all. */
static void rule_figures_are_bounded(const struct check *check)
{
    const struct specification *specification = check->specification;
    const struct drivetrain *drivetrain = &specification->drivetrain;
    if (!lists_are_short(check, drivetrain))
        return;
    double each = 4 + (double)drivetrain->road_speeds_mps.count +
                  (double)drivetrain->engine_speeds_per_s.count +
                  (double)drivetrain->engine.torque.count + 2 * (double)specification->states.count;
    double setups = 1 + (double)specification->tyres.options.count;
    double gears = higher_of(2, (double)drivetrain->gears.count);
    double lines = each * gears * (1 + (double)drivetrain->transfer.low.count);
    double figures = lines * setups * (1 + (double)drivetrain->axle_choices.count);
    if (lines > LINES_MAX)
        FAULT(
            check, specification->given, "drivetrain",
            "gears, ranges, speeds, points of the torque curve and states make about %.0f figures "
            "for each tyre; at most %d are worked out: leave some out",
            lines, LINES_MAX);
    else if (figures > FIGURES_MAX)
        FAULT(check, specification->given, "drivetrain",
              "options, axle choices, gears, ranges, speeds and states make about %.0f figures "
              "together; at most %d are worked out: leave some out",
              figures, FIGURES_MAX);
}

void check_drivetrain_rules(const struct check *check)
{
    const struct drivetrain *drivetrain = &check->specification->drivetrain;
    if (drivetrain->given == NULL)
        return;
    rule_engine_speeds_rise(check, &drivetrain->engine);
    rule_gearbox_is_one(check, drivetrain);
    rule_low_range_is_lower(check, &drivetrain->transfer);
    rule_axle_has_its_ratio(check);
    rule_figures_are_bounded(check);
    check_no_twin(check, drivetrain->transfer.given, "low", &drivetrain->transfer.low);
    check_no_twin(check, drivetrain->given, "axle_choices", &drivetrain->axle_choices);
}
