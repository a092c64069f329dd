/* Rules that no single key can check. Each is one function that says what is wrong, where, and
 * what to write instead. */
#include "build/rules.h"

#include <string.h>

#include "base/nearest.h"
#include "base/utf8.h"
#include "build/rule_check.h"
#include "tables/lookup.h"

static void rule_fitted_tyre_is_named(const struct check *check)
{
    const struct specification *specification = check->specification;
    const struct tyres *tyres = &specification->tyres;
    if (tyres->given == NULL)
        FAULT(check, specification->given, "tyres",
              "the key \"tyres\" is missing; expected the fitted tyre at least, such as tyres: "
              "{fitted: {size: 205/55R16 91V}}");
    else if (tyres->fitted.tyre.given == NULL || !is_given(tyres->fitted.tyre.given, "size"))
        FAULT(check, tyres->given, "fitted",
              "the fitted tyre has no size; expected tyres: {fitted: {size: 205/55R16 91V}}");
}

static void rule_options_have_name_and_size(const struct check *check)
{
    const struct fitment_list *options = &check->specification->tyres.options;
    for (size_t i = 0; i < options->count; i++) {
        const struct fitment *option = &options->items[i];
        if (option->tyre.given == NULL)
            continue;
        if (option->name == NULL && !is_given(option->tyre.given, "name"))
            FAULT(check, option->tyre.given, "",
                  "this option has no name; expected name: what you call it");
        if (!is_given(option->tyre.given, "size"))
            FAULT(check, option->tyre.given, "",
                  "this option has no size; expected such as size: LT245/75R16 120/116R");
        if (option->name != NULL && strcmp(option->name, "fitted") == 0)
            FAULT(check, option->tyre.given, "name",
                  "\"fitted\" is the name of what the vehicle stands on now; give the option "
                  "another");
        for (size_t j = 0; option->name != NULL && j < i; j++)
            if (options->items[j].name != NULL &&
                strcmp(options->items[j].name, option->name) == 0) {
                FAULT(check, option->tyre.given, "name",
                      "an option named \"%s\" stands above already; give each its own name",
                      quoted(check, option->name));
                break;
            }
    }
}

static void check_tyre(const struct check *check, const struct tyre *tyre)
{
    const struct data_book *book = &tyre->data_book;
    if (tyre->given == NULL)
        return;
    if (known(book->revs_per_mile) && known(book->revs_per_km))
        FAULT(check, book->given, "revs_per_km",
              "revolutions stand per mile and per km; give the one that the data book prints");
    if (clearly_above(book->rim_min_m, book->rim_max_m))
        FAULT(check, book->given, "rim_min",
              "rim_min is wider than rim_max; expected the narrower of the two");
    if (clearly_above(book->max_load_dual_kg, book->max_load_kg))
        FAULT(check, book->given, "max_load_dual",
              "the dual maximum load is above the single one; expected it to be at most that");
    if (known(book->at_pressure_Pa) && !known(book->max_load_kg))
        FAULT(check, book->given, "at_pressure",
              "at_pressure stands without max_load; expected both, as they are moulded together");
    if (is_above_ceiling(book->at_pressure_Pa, book->max_pressure_Pa))
        FAULT(check, book->given, "max_pressure",
              "the highest pressure is below that of the maximum load; expected at least that");
    if (tyre->size_given && tyre->load_range != 0 && tyre->size.load_range != 0 &&
        tyre->load_range != tyre->size.load_range)
        FAULT(check, tyre->given, "load_range",
              "load_range %c contradicts the %c in the size; expected what the sidewall says",
              tyre->load_range, tyre->size.load_range);
    if (clearly_above(tyre->tread_depth_m, tyre->new_tread_depth_m))
        FAULT(check, tyre->given, "tread_depth",
              "the tread is deeper now than when new; expected at most new_tread_depth");
}

static void check_fitment(const struct check *check, const struct fitment *fitment)
{
    check_tyre(check, &fitment->tyre);
    check_tyre(check, &fitment->rear);
    check_tyre(check, &fitment->spare);
}

static void rule_tyres_agree_with_themselves(const struct check *check)
{
    const struct tyres *tyres = &check->specification->tyres;
    check_fitment(check, &tyres->fitted);
    check_tyre(check, &tyres->spare);
    for (size_t i = 0; i < tyres->options.count; i++)
        check_fitment(check, &tyres->options.items[i]);
}

static bool names_any(const struct given *mapping, const char *const *keys)
{
    for (; *keys != NULL; keys++)
        if (is_given(mapping, *keys))
            return true;
    return false;
}

static void rule_item_has_a_mass(const struct check *check, const struct carried_item *item)
{
    static const char *const mass_keys[] = {"mass",     "volume",   "occupants",
                                            "tow_ball", "dry_mass", NULL};
    bool liquid = known(item->volume_m3);
    bool has_mass = liquid || known(item->mass_kg) || known(item->occupants) ||
                    known(item->tow_ball_kg) || known(item->dry_mass_kg);
    if (!has_mass && !names_any(item->given, mass_keys)) /* one that is wrong has its own fault */
        FAULT(check, item->given, "item",
              "this item has no mass; expected mass, volume with of, occupants, or tow_ball");
    if (liquid && !known(item->density_kg_m3) && item->of == NULL)
        FAULT(check, item->given, "volume",
              "a volume needs what it is of; expected such as of: diesel, or density: 0.835 kg/L");
    if (item->of == NULL || known(item->density_kg_m3) || density_find(item->of) != NULL)
        return;
    struct nearest nearest = nearest_start(span_of(item->of));
    for (size_t i = 0; i < density_count; i++)
        nearest_try(&nearest, density_rows[i].name);
    const char *near = nearest_found(&nearest);
    FAULT(check, item->given, "of",
          "the density of \"%s\" is not known; expected petrol, diesel or water, or its density "
          "such as density: 0.9 kg/L%s%s%s",
          quoted(check, item->of), near ? " (did you mean \"" : "", near ? near : "",
          near ? "\"?)" : "");
}

static void rule_item_has_a_place(const struct check *check, const struct carried_item *item)
{
    const struct seats *seats = &check->specification->vehicle.seats;
    static const char *const place_keys[] = {"at", "seat", NULL};
    if (known(item->at_m))
        return;
    if (item->seat == CHOICE_NONE && names_any(item->given, place_keys))
        return; /* it has its own fault */
    if (item->seat == CHOICE_NONE)
        FAULT(check, item->given, "item",
              "this item has no place; expected at: its distance behind the front axle, such as "
              "at: 3350 mm%s",
              known(item->occupants) ? ", or seat: row_2" : "");
    else if (!known(seats->row_m[item->seat]))
        FAULT(check, item->given, "seat",
              "vehicle: seats: does not say where this row is; expected such as seats: {row_%d: "
              "2250 mm}",
              item->seat + 1);
}

static void rule_carried_items_are_whole(const struct check *check)
{
    const struct carried_list *carried = &check->specification->carried;
    for (size_t i = 0; i < carried->count; i++) {
        const struct carried_item *item = &carried->items[i];
        if (item->given == NULL)
            continue;
        if (item->item == NULL && !is_given(item->given, "item"))
            FAULT(check, item->given, "", "this item has no name; expected item: what it is");
        rule_item_has_a_mass(check, item);
        rule_item_has_a_place(check, item);
        if (clearly_above(item->tow_ball_kg, item->trailer_mass_kg))
            FAULT(check, item->given, "tow_ball",
                  "the load on the ball is above the whole trailer's mass; expected a part of it");
        if (known(item->occupants) && floor(item->occupants) != item->occupants)
            FAULT(check, item->given, "occupants", "people are counted whole; expected such as 3");
        for (size_t j = 0; item->item != NULL && j < i; j++)
            if (carried->items[j].item != NULL && strcmp(carried->items[j].item, item->item) == 0) {
                FAULT(check, item->given, "item",
                      "an item named \"%s\" stands above already; give each its own name",
                      quoted(check, item->item));
                break;
            }
    }
}

static bool is_carried(const struct carried_list *carried, struct span name)
{
    for (size_t i = 0; i < carried->count; i++)
        if (carried->items[i].item != NULL && span_is(name, carried->items[i].item))
            return true;
    return false;
}

static const char *nearest_item(const struct carried_list *carried, struct span name)
{
    struct nearest nearest = nearest_start(name);
    for (size_t i = 0; i < carried->count; i++)
        if (carried->items[i].item != NULL)
            nearest_try(&nearest, carried->items[i].item);
    return nearest_found(&nearest);
}

static void rule_states_name_items(const struct check *check)
{
    const struct specification *specification = check->specification;
    for (size_t i = 0; i < specification->states.count; i++) {
        const struct state *state = &specification->states.items[i];
        for (size_t j = 0; j < state->items.count; j++) {
            struct span name = span_of(state->items.items[j]);
            if (is_carried(&specification->carried, name))
                continue;
            bool shown = check->diagnostics->count < FAULTS_SHOWN_MAX; /* else it only counts */
            const char *near = shown ? nearest_item(&specification->carried, name) : NULL;
            diagnostics_add(check->diagnostics, state->items.marks[j], count_characters(name),
                            "the state \"%s\" names an item that is not in `carried`; %s%s%s",
                            quoted(check, state->name),
                            near ? "did you mean \"" : "expected one of its items",
                            near ? near : "", near ? "\"?" : "");
        }
    }
}

/* Where it may stand is told of both, by their names. */
static void rule_planned_is_not_carried(const struct check *check)
{
    const struct planned_list *planned = &check->specification->room_for;
    for (size_t i = 0; i < planned->count; i++) {
        const struct planned_item *item = &planned->items[i];
        if (known(item->mass_kg) && item->item != NULL &&
            is_carried(&check->specification->carried, span_of(item->item)))
            FAULT(check, item->given, "item",
                  "an item named \"%s\" is carried already; give what is planned its own name",
                  quoted(check, item->item));
    }
}

/* Every tyre is judged in every state, with some twenty figures where little is measured. */
static void rule_states_are_bounded(const struct check *check)
{
    enum { FIGURES_EACH = 20 };
    const struct specification *specification = check->specification;
    double setups = 1 + (double)specification->tyres.options.count;
    double figures = FIGURES_EACH * setups * (double)specification->states.count;
    if (figures > FIGURES_MAX)
        FAULT(check, specification->given, "states",
              "%zu options in %zu states make about %.0f figures together; at most %d are worked "
              "out: leave some out",
              specification->tyres.options.count, specification->states.count, figures,
              FIGURES_MAX);
}

static void check_window(const struct check *check, const struct window *window)
{
    if (!known(window->min.value) || !known(window->max.value))
        return;
    if (window->min.kind != window->max.kind)
        FAULT(check, window->given, "max",
              "min and max are of two kinds; expected two lengths or two percentages");
    else if (clearly_above(window->min.value, window->max.value))
        FAULT(check, window->given, "min", "min is above max; expected the lower of the two");
}

static void rule_limits_are_windows(const struct check *check)
{
    const struct limits *limits = &check->specification->limits;
    check_window(check, &limits->diameter_change);
    check_window(check, &limits->ride_height_change);
    check_window(check, &limits->diameter_and_suspension);
    check_window(check, &limits->track_change);
    check_window(check, &limits->inset_change);
    check_window(check, &check->specification->search.overall_diameter);
}

static void rule_published_limits_are_known(const struct check *check)
{
    const struct text_list *list = &check->specification->limits.published;
    for (size_t i = 0; i < list->count; i++) {
        struct span name = span_of(list->items[i]);
        struct nearest nearest = nearest_start(name);
        bool found = false;
        for (size_t j = 0; j < fitment_limits_count; j++) {
            found = found || span_is(name, fitment_limits_rows[j].name);
            nearest_try(&nearest, fitment_limits_rows[j].name);
        }
        const char *near = nearest_found(&nearest);
        if (!found)
            diagnostics_add(check->diagnostics, list->marks[i], count_characters(name),
                            "this is no row of the table fitment_limits; expected such as %s",
                            near ? near : fitment_limits_rows[0].name);
    }
}

static void rule_speed_symbol_rule_is_known(const struct check *check)
{
    const struct limits *limits = &check->specification->limits;
    if (limits->speed_symbol == NULL || symbol_rule_next(limits->speed_symbol, NULL) != NULL)
        return;
    struct nearest nearest = nearest_start(span_of(limits->speed_symbol));
    for (size_t i = 0; i < speed_symbol_rules_count; i++)
        nearest_try(&nearest, speed_symbol_rules_rows[i].name);
    const char *near = nearest_found(&nearest);
    FAULT(check, limits->given, "speed_symbol",
          "this is no row of the table speed_symbol_rules; expected such as %s",
          near ? near : speed_symbol_rules_rows[0].name);
}

void build_rules_check(const struct specification *specification, struct diagnostics *diagnostics)
{
    static void (*const rules[])(const struct check *) = {
        rule_fitted_tyre_is_named,
        rule_options_have_name_and_size,
        rule_tyres_agree_with_themselves,
        rule_carried_items_are_whole,
        rule_states_name_items,
        rule_planned_is_not_carried,
        rule_states_are_bounded,
        rule_limits_are_windows,
        rule_published_limits_are_known,
        rule_speed_symbol_rule_is_known,
        check_load_rules,
        check_speedometer_rules,
        check_drivetrain_rules,
        check_clearance_rules,
    };
    const struct check check = {specification, diagnostics};
    for (size_t i = 0; i < sizeof rules / sizeof rules[0]; i++)
        rules[i](&check);
}
