/* Rules that no single key can check. Each is one function that says what is wrong, where, and
 * what to write instead. */
#include <string.h>

#include "base/known.h"
#include "base/nearest.h"
#include "tables/lookup.h"
#include "yaml/build_file.h"
#include "build/rules.h"
#include "build/keys.h"
#include "build/rule_check.h"

static void rule_fitted_tyre_is_named(const struct check *check)
{
    const struct specification *specification = check->specification;
    const struct tyres *tyres = &specification->tyres;
    if (tyres->node == NULL)
        FAULT(check, specification->node, "tyres",
              "the key \"tyres\" is missing; expected the fitted tyre at least, such as tyres: "
              "{fitted: {size: 205/55R16 91V}}");
    else if (tyres->fitted.tyre.node == NULL || tree_child(tyres->fitted.tyre.node, "size") == NULL)
        FAULT(check, tyres->node, "fitted",
              "the fitted tyre has no size; expected tyres: {fitted: {size: 205/55R16 91V}}");
}

static void rule_options_have_name_and_size(const struct check *check)
{
    const struct fitment_list *options = &check->specification->tyres.options;
    for (size_t i = 0; i < options->count; i++) {
        const struct fitment *option = &options->items[i];
        if (option->tyre.node == NULL)
            continue;
        if (option->name == NULL && tree_child(option->tyre.node, "name") == NULL)
            FAULT(check, option->tyre.node, "",
                  "this option has no name; expected name: what you call it");
        if (tree_child(option->tyre.node, "size") == NULL)
            FAULT(check, option->tyre.node, "",
                  "this option has no size; expected such as size: LT245/75R16 120/116R");
        if (option->name != NULL && strcmp(option->name, "fitted") == 0)
            FAULT(check, option->tyre.node, "name",
                  "\"fitted\" is the name of what the vehicle stands on now; give the option "
                  "another");
        for (size_t j = 0; option->name != NULL && j < i; j++)
            if (options->items[j].name != NULL &&
                strcmp(options->items[j].name, option->name) == 0) {
                FAULT(check, option->tyre.node, "name",
                      "an option named \"%s\" stands above already; give each its own name",
                      quoted(check->diagnostics, option->name));
                break;
            }
    }
}

static void check_tyre(const struct check *check, const struct tyre *tyre)
{
    const struct data_book *book = &tyre->data_book;
    if (tyre->node == NULL)
        return;
    if (known(book->revs_per_mile) && known(book->revs_per_km))
        FAULT(check, book->node, "revs_per_km",
              "revolutions stand per mile and per km; give the one that the data book prints");
    if (clearly_above(book->rim_min_m, book->rim_max_m))
        FAULT(check, book->node, "rim_min",
              "rim_min is wider than rim_max; expected the narrower of the two");
    if (clearly_above(book->max_load_dual_kg, book->max_load_kg))
        FAULT(check, book->node, "max_load_dual",
              "the dual maximum load is above the single one; expected it to be at most that");
    if (known(book->at_pressure_Pa) && !known(book->max_load_kg))
        FAULT(check, book->node, "at_pressure",
              "at_pressure stands without max_load; expected both, as they are moulded together");
    if (tyre->size_node != NULL && tyre->load_range != 0 && tyre->size.load_range != 0 &&
        tyre->load_range != tyre->size.load_range)
        FAULT(check, tyre->node, "load_range",
              "load_range %c contradicts the %c in the size; expected what the sidewall says",
              tyre->load_range, tyre->size.load_range);
    if (clearly_above(tyre->tread_depth_m, tyre->new_tread_depth_m))
        FAULT(check, tyre->node, "tread_depth",
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

static bool names_any(const struct node *mapping, const char *const *keys)
{
    for (; *keys != NULL; keys++)
        if (tree_child(mapping, *keys) != NULL)
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
    if (!has_mass && !names_any(item->node, mass_keys)) /* one that is wrong has its own fault */
        FAULT(check, item->node, "item",
              "this item has no mass; expected mass, volume with of, occupants, or tow_ball");
    if (liquid && !known(item->density_kg_m3) && item->of == NULL)
        FAULT(check, item->node, "volume",
              "a volume needs what it is of; expected such as of: diesel, or density: 0.835 kg/L");
    if (item->of == NULL || known(item->density_kg_m3) || density_find(item->of) != NULL)
        return;
    struct nearest nearest = nearest_start(span_of(item->of));
    for (size_t i = 0; i < density_count; i++)
        nearest_try(&nearest, density_rows[i].name);
    const char *near = nearest_found(&nearest);
    FAULT(check, item->node, "of",
          "the density of \"%s\" is not known; expected petrol, diesel or water, or its density "
          "such as density: 0.9 kg/L%s%s%s",
          quoted(check->diagnostics, item->of), near ? " (did you mean \"" : "", near ? near : "",
          near ? "\"?)" : "");
}

static void rule_item_has_a_place(const struct check *check, const struct carried_item *item)
{
    const struct seats *seats = &check->specification->vehicle.seats;
    static const char *const place_keys[] = {"at", "seat", NULL};
    if (known(item->at_m))
        return;
    if (item->seat == CHOICE_NONE && names_any(item->node, place_keys))
        return; /* it has its own fault */
    if (item->seat == CHOICE_NONE)
        FAULT(check, item->node, "item",
              "this item has no place; expected at: its distance behind the front axle, such as "
              "at: 3350 mm%s",
              known(item->occupants) ? ", or seat: row_2" : "");
    else if (!known(seats->row_m[item->seat]))
        FAULT(check, item->node, "seat",
              "vehicle: seats: does not say where this row is; expected such as seats: {row_%d: "
              "2250 mm}",
              item->seat + 1);
}

static void rule_carried_items_are_whole(const struct check *check)
{
    const struct carried_list *carried = &check->specification->carried;
    for (size_t i = 0; i < carried->count; i++) {
        const struct carried_item *item = &carried->items[i];
        if (item->node == NULL)
            continue;
        if (item->item == NULL && tree_child(item->node, "item") == NULL)
            FAULT(check, item->node, "", "this item has no name; expected item: what it is");
        rule_item_has_a_mass(check, item);
        rule_item_has_a_place(check, item);
        if (clearly_above(item->tow_ball_kg, item->trailer_mass_kg))
            FAULT(check, item->node, "tow_ball",
                  "the load on the ball is above the whole trailer's mass; expected a part of it");
        if (known(item->occupants) && floor(item->occupants) != item->occupants)
            FAULT(check, item->node, "occupants", "people are counted whole; expected such as 3");
        for (size_t j = 0; item->item != NULL && j < i; j++)
            if (carried->items[j].item != NULL && strcmp(carried->items[j].item, item->item) == 0) {
                FAULT(check, item->node, "item",
                      "an item named \"%s\" stands above already; give each its own name",
                      quoted(check->diagnostics, item->item));
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
        const struct node *node = state->node == NULL ? NULL : state->node->first;
        for (; node != NULL; node = node->next) {
            if (is_carried(&specification->carried, node->text))
                continue;
            bool shown = check->diagnostics->count < FAULTS_SHOWN_MAX; /* else it only counts */
            const char *near = shown ? nearest_item(&specification->carried, node->text) : NULL;
            diagnostics_add(check->diagnostics, node->mark, count_characters(node->text),
                            "the state \"%s\" names an item that is not in `carried`; %s%s%s",
                            quoted(check->diagnostics, state->name),
                            near ? "did you mean \"" : "expected one of its items",
                            near ? near : "", near ? "\"?" : "");
        }
    }
}

static void check_window(const struct check *check, const struct window *window)
{
    if (!known(window->min.value) || !known(window->max.value))
        return;
    if (window->min.kind != window->max.kind)
        FAULT(check, window->node, "max",
              "min and max are of two kinds; expected two lengths or two percentages");
    else if (clearly_above(window->min.value, window->max.value))
        FAULT(check, window->node, "min", "min is above max; expected the lower of the two");
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
    const struct limits *limits = &check->specification->limits;
    const struct node *list = tree_child(limits->node, "published");
    for (const struct node *node = list ? list->first : NULL; node != NULL; node = node->next) {
        struct nearest nearest = nearest_start(node->text);
        bool found = false;
        for (size_t i = 0; i < fitment_limits_count; i++) {
            found = found || span_is(node->text, fitment_limits_rows[i].name);
            nearest_try(&nearest, fitment_limits_rows[i].name);
        }
        const char *near = nearest_found(&nearest);
        if (!found)
            diagnostics_add(check->diagnostics, node->mark, count_characters(node->text),
                            "this is no row of the table fitment_limits; expected such as %s",
                            near ? near : fitment_limits_rows[0].name);
    }
}

void build_rules_check(const struct specification *specification, struct diagnostics *diagnostics)
{
    static void (*const rules[])(const struct check *) = {
        rule_fitted_tyre_is_named,        rule_options_have_name_and_size,
        rule_tyres_agree_with_themselves, rule_carried_items_are_whole,
        rule_states_name_items,           rule_limits_are_windows,
        rule_published_limits_are_known,
    };
    const struct check check = {specification, diagnostics};
    for (size_t i = 0; i < sizeof rules / sizeof rules[0]; i++)
        rules[i](&check);
    load_rules_check(specification, diagnostics);
    build_rules_speedometer(specification, diagnostics);
    drivetrain_rules_check(specification, diagnostics);
    clearance_rules_check(specification, diagnostics);
}
