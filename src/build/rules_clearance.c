/* Rules between the keys of springs, points, wheels' mountings: what no single key can check. */
#include <string.h>

#include "base/known.h"
#include "build/rule_check.h"

static void check_rate_points(const struct check *check, const struct pair_list *points)
{
    if (points->count > RATE_POINTS_MAX)
        FAULT_AT(check, points->items[RATE_POINTS_MAX].mark,
                 "a spring is told in at most %d points; expected fewer", RATE_POINTS_MAX);
    for (size_t i = 0; i < points->count; i++) {
        const struct value_pair *point = &points->items[i];
        if (point->second <= 0)
            FAULT_AT(check, point->mark,
                     "a spring rate is above zero; expected such as [40 mm, 95 N/mm]");
        if (i > 0 && point->first <= points->items[i - 1].first)
            FAULT_AT(check, point->mark,
                     "the travel does not rise here; expected each point at more travel "
                     "than the one before");
    }
}

static const char *const rate_keys[] = {"wheel_rate", "wheel_rate_steps", "wheel_rate_curve",
                                        "spring_rate"};
enum { RATE_KEYS = sizeof rate_keys / sizeof rate_keys[0] };

static void rule_one_rate(const struct check *check, const struct axle_suspension *axle)
{
    const char *first = NULL;
    for (int i = 0; i < RATE_KEYS; i++) {
        if (!is_given(axle->given, rate_keys[i]))
            continue;
        if (first != NULL)
            FAULT(check, axle->given, rate_keys[i],
                  "the spring's rate stands twice, as %s and as %s; expected one of them", first,
                  rate_keys[i]);
        first = first != NULL ? first : rate_keys[i];
    }
    if (is_given(axle->given, "spring_rate") && !is_given(axle->given, "motion_ratio"))
        FAULT(check, axle->given, "spring_rate",
              "spring_rate needs motion_ratio, spring travel / wheel travel; expected such as "
              "motion_ratio: 0.70, or the rate at the wheel as wheel_rate");
    if (is_given(axle->given, "motion_ratio") && !is_given(axle->given, "spring_rate"))
        FAULT(check, axle->given, "motion_ratio",
              "motion_ratio stands without spring_rate; expected both, or wheel_rate alone");
    check_rate_points(check, &axle->wheel_rate_steps);
    check_rate_points(check, &axle->wheel_rate_curve);
}

static bool has_constant_rate(const struct axle_suspension *axle)
{
    return is_given(axle->given, "wheel_rate") || is_given(axle->given, "spring_rate");
}

static void rule_helper_is_whole(const struct check *check, const struct axle_suspension *axle)
{
    bool rate = is_given(axle->given, "helper_rate"),
         closes = is_given(axle->given, "helper_closes_at");
    if (!rate && !closes)
        return;
    const char *key = rate ? "helper_rate" : "helper_closes_at";
    if (rate != closes)
        FAULT(check, axle->given, key,
              "a helper spring needs helper_rate and helper_closes_at; expected both");
    if (!has_constant_rate(axle))
        FAULT(check, axle->given, key,
              "a helper spring stands in series with wheel_rate or spring_rate; expected one of "
              "them");
}

static void rule_new_spring_is_whole(const struct check *check, const struct axle_suspension *axle)
{
    if (!is_given(axle->given, "free_height_change"))
        return;
    if (is_given(axle->given, "lift"))
        FAULT(check, axle->given, "free_height_change",
              "lift and free_height_change both say how high it stands; expected one of them");
    if (!is_given(axle->given, "wheel_rate_before") || !has_constant_rate(axle) ||
        is_given(axle->given, "helper_rate"))
        FAULT(check, axle->given, "free_height_change",
              "free_height_change needs the constant rate of the new spring, as wheel_rate, and of "
              "the old one, as wheel_rate_before; otherwise give the lift as measured");
}

static void check_spring_choice(const struct check *check, const struct axle_suspension *axle,
                                size_t index)
{
    const struct spring_choice *choice = &axle->spring_choices.items[index];
    bool lift = is_given(choice->given, "lift"),
         free_height = is_given(choice->given, "free_height_change");
    if (!is_given(choice->given, "name") || !is_given(choice->given, "wheel_rate"))
        FAULT(check, choice->given, "",
              "a spring that may be fitted needs a name and a rate; expected such as {name: S2, "
              "wheel_rate: 88 N/mm, lift: 40 mm}");
    if (lift == free_height)
        FAULT(check, choice->given, lift ? "free_height_change" : "",
              "%s; expected one of lift and free_height_change",
              lift ? "lift and free_height_change both say how high it stands"
                   : "nothing says how high this spring stands");
    if (free_height && !is_given(axle->given, "wheel_rate_before"))
        FAULT(check, choice->given, "free_height_change",
              "free_height_change needs the rate of the spring that it replaces; expected "
              "wheel_rate_before beside spring_choices, or lift");
    if (choice->load_from_kg > choice->load_to_kg)
        FAULT(check, choice->given, "constant_load_to",
              "the constant load ends before it begins; expected at least constant_load_from");
    for (size_t i = 0; i < index && choice->name != NULL; i++)
        if (axle->spring_choices.items[i].name != NULL &&
            strcmp(axle->spring_choices.items[i].name, choice->name) == 0)
            FAULT(check, choice->given, "name",
                  "two springs of this axle are called %s; expected a name of its own",
                  choice->name);
}

static void rule_choices_are_whole(const struct check *check, const struct axle_suspension *axle)
{
    if (axle->spring_choices.count > SUSPENSION_CHOICES_MAX)
        FAULT(check, axle->spring_choices.items[SUSPENSION_CHOICES_MAX].given, "",
              "%zu springs are too many; expected at most %d an axle", axle->spring_choices.count,
              SUSPENSION_CHOICES_MAX);
    if (axle->lift_choices.count > SUSPENSION_CHOICES_MAX)
        FAULT(check, axle->given, "lift_choices",
              "%zu heights are too many; expected at most %d an axle", axle->lift_choices.count,
              SUSPENSION_CHOICES_MAX);
    for (size_t i = 0; i < axle->spring_choices.count; i++)
        check_spring_choice(check, axle, i);
}

static void rule_springs_agree(const struct check *check)
{
    const struct suspension *suspension = &check->specification->suspension;
    const struct axle_suspension *const axles[] = {&suspension->front, &suspension->rear};
    for (size_t i = 0; i < sizeof axles / sizeof axles[0]; i++) {
        if (axles[i]->given == NULL)
            continue;
        rule_one_rate(check, axles[i]);
        rule_helper_is_whole(check, axles[i]);
        rule_new_spring_is_whole(check, axles[i]);
        rule_choices_are_whole(check, axles[i]);
    }
}

static void check_points(const struct check *check, const struct point_list *points,
                         const char *place)
{
    for (size_t i = 0; i < points->count; i++) {
        const struct given *point = points->items[i].given;
        if (point == NULL)
            continue;
        if (!is_given(point, "height"))
            FAULT(check, point, "", "this point has no height; expected such as height: 420 mm");
        if (place != NULL && !is_given(point, place))
            FAULT(check, point, "", "this point has no place; expected such as %s: 880 mm", place);
        if (points->items[i].at_m >= check->specification->vehicle.wheelbase_m)
            FAULT(check, point, "at",
                  "this point is not between the axles; expected less than the wheelbase");
    }
}

static void rule_points_are_whole(const struct check *check)
{
    const struct clearance_measured *measured = &check->specification->clearance;
    check_points(check, &measured->front_overhang, "ahead");
    check_points(check, &measured->rear_overhang, "behind");
    check_points(check, &measured->belly, "at");
}

static void rule_added_points_are_whole(const struct check *check)
{
    const struct carried_list *carried = &check->specification->carried;
    for (size_t i = 0; i < carried->count; i++) {
        const struct carried_item *item = &carried->items[i];
        check_points(check, &item->points, NULL);
        for (size_t j = 0; j < item->points.count; j++) {
            const struct given *point = item->points.items[j].given;
            if (point == NULL)
                continue;
            int places =
                is_given(point, "ahead") + is_given(point, "behind") + is_given(point, "at");
            if (places != 1)
                FAULT(check, point, "",
                      "this point has %s; expected one of ahead, behind and at, such as "
                      "{ahead: 900 mm, height: 400 mm}",
                      places == 0 ? "no place" : "more than one place");
        }
        if (item->removed == 1 && item->points.count > 0)
            FAULT(check, item->given, "point",
                  "what is taken off brings no point; expected the point's own item name under "
                  "clearance: to be this item's, so that it goes with it");
    }
}

static void check_mounting(const struct check *check, const struct mounting *mounting)
{
    if (mounting->given == NULL)
        return;
    if (known(mounting->bolts) && floor(mounting->bolts) != mounting->bolts)
        FAULT(check, mounting->given, "bolts", "bolts are counted whole; expected such as 6");
    if (is_given(mounting->given, "bolts") != is_given(mounting->given, "bolt_circle"))
        FAULT(check, mounting->given, is_given(mounting->given, "bolts") ? "bolts" : "bolt_circle",
              "a bolt pattern is a count and a circle; expected such as bolts: 6, bolt_circle: "
              "139.7 mm");
}

static void rule_mountings_are_whole(const struct check *check)
{
    const struct tyres *tyres = &check->specification->tyres;
    check_mounting(check, &tyres->fitted.tyre.wheel.mounting);
    check_mounting(check, &tyres->fitted.rear.wheel.mounting);
    for (size_t i = 0; i < tyres->options.count; i++) {
        check_mounting(check, &tyres->options.items[i].tyre.wheel.mounting);
        check_mounting(check, &tyres->options.items[i].rear.wheel.mounting);
    }
}

void check_clearance_rules(const struct check *check)
{
    rule_springs_agree(check);
    rule_points_are_whole(check);
    rule_added_points_are_whole(check);
    rule_mountings_are_whole(check);
}
