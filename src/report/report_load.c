/* Axle loads in every state, and the pressure that carries them. */
#include "base/known.h"
#include "base/units.h"
#include "compute/load.h"
#include "report/plan.h"
#include "tables/lookup.h"

static const char moments_basis[] = "moments about the axles";

static double rating_of(const struct ratings *ratings, int axle)
{
    return axle == AXLE_FRONT ? ratings->front_kg : ratings->rear_kg;
}


static const char *pressure_text(const struct plan *plan, double pressure_Pa)
{
    enum unit_id unit = plan->us ? UNIT_PSI : UNIT_KPA;
    return arena_format(plan->arena, "%.0f %s", unit_from_si(unit, pressure_Pa),
                        unit_table[unit].name);
}

/* What is left of a rating; below nothing it is a fail. */
static void add_left(struct figures *figures, struct figure figure, enum quantity_id quantity,
                     double rating_kg, double load_kg, const char *missing, const char *broken)
{
    figure.quantity = quantity;
    figure.value = rating_kg - load_kg;
    figure.basis = "the vehicle maker's rating";
    figure.headline = HEADLINE_UNLESS_OK;
    figure = figure_at_least(figure, 0);
    figure.action = figure.verdict == VERDICT_FAIL      ? broken
                    : figure.verdict == VERDICT_UNKNOWN ? missing
                                                        : NULL;
    figures_add(figures, figure);
}

static void report_gross(const struct plan *plan, struct figures *figures, struct figure figure,
                         const struct axle_loads *loads)
{
    const struct ratings *ratings = &plan->specification->vehicle.ratings;
    double gross = loads->axle_kg[AXLE_FRONT] + loads->axle_kg[AXLE_REAR];
    figure.axle = AXLE_NONE;
    figure.quantity = QUANTITY_GROSS_LOAD;
    figure.value = gross;
    figures_add(figures, figure);
    add_left(figures, figure, QUANTITY_GROSS_LEFT, ratings->gross_kg, gross,
             "give vehicle: ratings: gross", "leave something at home");
    if (loads->roof_kg > 0)
        add_left(figures, figure, QUANTITY_ROOF_LEFT, ratings->roof_kg, loads->roof_kg,
                 "give vehicle: ratings: roof", "take load off the roof");
    if (loads->tow_ball_kg > 0)
        add_left(figures, figure, QUANTITY_TOW_BALL_LEFT, ratings->tow_ball_kg, loads->tow_ball_kg,
                 "give vehicle: ratings: tow_ball", "load the trailer further back");
    if (loads->trailer_kg > 0) /* the ball load is part of the trailer's mass: counted once */
        add_left(figures, figure, QUANTITY_COMBINATION_LEFT, ratings->combination_kg,
                 gross - loads->tow_ball_kg + loads->trailer_kg,
                 "give vehicle: ratings: combination", "tow a lighter trailer");
}

static void report_state(const struct plan *plan, const struct setup *setup,
                         const struct state *state, struct figures *figures)
{
    const struct specification *specification = plan->specification;
    struct axle_loads loads;
    axle_loads_in_state(specification, state, &plan->fitted, setup, &loads);
    struct figure figure =
        figure_of(PART_LOAD, QUANTITY_AXLE_LOAD, setup->name, UNKNOWN, moments_basis);
    figure.state = state_name(state);
    figure.headline = HEADLINE_YES;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        figure.axle = axle;
        figure.quantity = QUANTITY_AXLE_LOAD;
        figure.value = loads.axle_kg[axle];
        figure.basis = moments_basis;
        if (!known(figure.value)) {
            figure.verdict = VERDICT_UNKNOWN;
            figure.action = "give vehicle: unladen and wheelbase";
        } else if (figure.value < 0) {
            figure = figure_at_least(figure, 0);
            figure.action = "an axle cannot be lighter than nothing: check masses and places";
        }
        figures_add(figures, figure);
        figure.verdict = VERDICT_NONE;
        figure.limit = UNKNOWN;
        add_left(figures, figure, QUANTITY_AXLE_RATING_LEFT,
                 rating_of(&specification->vehicle.ratings, axle), loads.axle_kg[axle],
                 "give vehicle: ratings for this axle", "move or remove load on this axle");
    }
    figure.basis = moments_basis;
    report_gross(plan, figures, figure, &loads);
}

static const char *rating_basis(const struct plan *plan, const struct axle_pressures *axle)
{
    const struct tyre_rating *rating = &axle->rating;
    const char *class = inflation_find(rating->class)->basis; /* "TRA LT-metric: how certain" */
    return arena_format(plan->arena, "%.*s, %s%s%s", (int)strcspn(class, ":"), class,
                        rating->moulded           ? "moulded maximum"
                        : rating->ceiling_assumed ? "load index at the load range's pressures (assumed)"
                                                  : "load index",
                        rating->divisor > 1 ? ", / 1.10 on a light truck (49 CFR 571.110)" : "",
                        rating->speed_factor < 1 ? ", reduced at the top speed (ETRTO)" : "");
}

/* The same tyre class at the old placard may carry less than the fitted tyre did: the headline. */
static void report_at_placard(const struct plan *plan, const struct axle_pressures *axle,
                              struct figures *figures, struct figure figure)
{
    figure.quantity = QUANTITY_TYRE_CAPACITY;
    figure.value = axle->capacity_at_placard_kg;
    figure.at = known(axle->placard_Pa)
                    ? arena_format(plan->arena, "placard, %s", pressure_text(plan, axle->placard_Pa))
                    : "placard";
    figure.headline = HEADLINE_YES;
    bool fitted = figure.option == plan->fitted.name;
    figure = figure_at_least(figure, fitted ? axle->load_built_kg : axle->demand_replaced_kg);
    if (figure.verdict == VERDICT_FAIL && fitted)
        figure.action = "does not carry the build at the placard pressure";
    else if (figure.verdict == VERDICT_FAIL)
        figure.action = isfinite(axle->recommended_Pa)
                            ? arena_format(plan->arena,
                                           "less than the fitted tyre carried: inflate to %s",
                                           pressure_text(plan, axle->recommended_Pa))
                            : "less than the fitted tyre carried";
    else if (figure.verdict == VERDICT_UNKNOWN)
        figure.action = !known(axle->placard_Pa) ? "give tyres: fitted: placard"
                        : !known(axle->rating.reference_Pa)
                            ? "give load_range, or data_book: max_load and at_pressure"
                            : "give the load index, and vehicle: unladen";
    figures_add(figures, figure);
}

static const char *reason_text(const struct axle_pressures *axle)
{
    switch (axle->reason) {
    case REASON_REPLACED:
        return "as replaced: carries what the fitted tyre did";
    case REASON_BUILT:
        return "as built: carries the heaviest state with the reserve";
    case REASON_FLOOR:
        return "the class floor: the lowest pressure of its tables";
    case REASON_PLACARD:
        return "placard: the same class is never run below it";
    case REASON_REFUSED:
        return "no pressure that tyre and wheel allow carries it";
    default:
        return "";
    }
}

static void report_recommended(const struct axle_pressures *axle, struct figures *figures,
                               struct figure figure)
{
    figure.quantity = QUANTITY_PRESSURE_RECOMMENDED;
    figure.at = NULL;
    figure.headline = HEADLINE_YES;
    figure.value = isfinite(axle->recommended_Pa) ? axle->recommended_Pa : UNKNOWN;
    figure.limit = isfinite(axle->ceiling_Pa) ? axle->ceiling_Pa : UNKNOWN;
    if (axle->reason == REASON_REFUSED) {
        figure.verdict = VERDICT_FAIL;
        figure.action = "choose a tyre of more capacity, or carry less on this axle";
    } else if (axle->reason == REASON_NONE) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = "placard, load range or moulded maximum, load index and axle loads are needed";
    } else {
        figure.verdict = axle->rating.ceiling_assumed ? VERDICT_CAUTION : VERDICT_OK;
        figure.action = axle->rating.ceiling_assumed
                            ? "check the maximum load and pressure on the sidewall"
                            : NULL;
    }
    figure.basis = axle->reason == REASON_NONE ? figure.basis : reason_text(axle);
    figures_add(figures, figure);
}

static void report_pressures(const struct plan *plan, const struct setup *setup, int axle_index,
                             const struct axle_pressures *axle, struct figures *figures)
{
    struct figure figure =
        figure_of(PART_LOAD, QUANTITY_TYRE_LOAD, setup->name, axle->load_built_kg,
                  "half the axle load, or the heavier corner");
    figure.axle = axle_index;
    figure.state = axle->heaviest_state;
    figures_add(figures, figure);
    figure.state = NULL;
    figure.basis = rating_basis(plan, axle);
    report_at_placard(plan, axle, figures, figure);
    report_recommended(axle, figures, figure);
    figure.quantity = QUANTITY_TYRE_CAPACITY;
    figure.value = axle->capacity_at_recommended_kg;
    if (known(figure.value)) {
        figure.at = pressure_text(plan, axle->recommended_Pa);
        figure.line = "recommended pressure";
        figures_add(figures, figure);
    }
    figure.line = NULL;
    figure.at = "maximum";
    figure.value = axle->capacity_max_kg;
    figures_add(figures, figure);
    figure.at = NULL;
    struct {
        enum quantity_id quantity;
        double pressure_Pa;
        const char *at;
    } const pressures[] = {
        {QUANTITY_PRESSURE_AS_REPLACED, axle->as_replaced_Pa, NULL},
        {QUANTITY_PRESSURE_AS_REPLACED, axle->as_replaced_derated_Pa,
         "49 CFR 571.110"},
        {QUANTITY_PRESSURE_AS_BUILT, axle->as_built_Pa, NULL},
    };
    for (size_t i = 0; i < sizeof pressures / sizeof pressures[0]; i++) {
        if (i == 1 && axle->demand_replaced_derated_kg == axle->demand_replaced_kg)
            continue;
        figure.quantity = pressures[i].quantity;
        figure.at = pressures[i].at;
        figure.value = fmax(pressures[i].pressure_Pa, axle->floor_Pa);
        if (!known(pressures[i].pressure_Pa) || isinf(pressures[i].pressure_Pa))
            figure.value = UNKNOWN;
        figure.limit = isfinite(axle->ceiling_Pa) ? axle->ceiling_Pa : UNKNOWN;
        figure.verdict = VERDICT_NONE; /* the recommended pressure is refused then, and says so */
        figure.action = isinf(pressures[i].pressure_Pa)
                            ? "more load than this tyre carries at any pressure"
                            : NULL;
        figures_add(figures, figure);
    }
}

/* 49 CFR 571.110 and 571.120: the tyres of an axle carry its rating. */
static void report_axle_rating(const struct plan *plan, const struct setup *setup, int axle_index,
                               const struct axle_pressures *axle, struct figures *figures)
{
    double rating = rating_of(&plan->specification->vehicle.ratings, axle_index);
    struct figure figure = figure_of(PART_LOAD, QUANTITY_TYRES_CARRY_RATING, setup->name,
                                     axle->capacity_max_kg * (axle->dual ? 4 : 2),
                                     "49 CFR 571.110 S4.2.2.2, 571.120 S5.1.2");
    figure.axle = axle_index;
    figure = figure_at_least(figure, rating);
    if (figure.verdict == VERDICT_FAIL)
        figure.action = "choose tyres that together carry the axle's rating";
    else if (figure.verdict == VERDICT_UNKNOWN)
        figure.action = "give vehicle: ratings and the load index";
    figures_add(figures, figure);
}

static void report_wheel(const struct setup *setup, int axle_index,
                         const struct axle_pressures *axle, struct figures *figures)
{
    double rating = setup->axle[axle_index].wheel.max_load_kg;
    struct figure figure = figure_of(PART_LOAD, QUANTITY_WHEEL_LOAD, setup->name,
                                     rating - axle->load_built_kg, "the wheel maker's rating");
    figure.axle = axle_index;
    figure = figure_at_least(figure, 0);
    if (figure.verdict == VERDICT_UNKNOWN)
        figure.action = "give wheel: max_load, and vehicle: unladen";
    else if (figure.verdict == VERDICT_FAIL)
        figure.action = "choose a wheel that is rated for this load";
    figures_add(figures, figure);
}

static void report_spare(const struct setup *setup, struct figures *figures)
{
    if (setup->spare.size_node == NULL)
        return;
    double needed = 0;
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        needed = higher_of(needed, load_index_kg(setup->axle[axle].size.service.load_index));
    struct figure figure = figure_of(PART_LOAD, QUANTITY_SPARE_CAPACITY, setup->name,
                                     load_index_kg(setup->spare.size.service.load_index),
                                     "load index, UN R30 / R54 Annex 4");
    figure = figure_at_least(figure, needed);
    if (figure.verdict == VERDICT_FAIL)
        figure.action = "less than the tyres it replaces: carry one of the set";
    else if (figure.verdict == VERDICT_UNKNOWN)
        figure.action = "give the spare's service description";
    figures_add(figures, figure);
}

void report_load(const struct plan *plan, struct figures *figures)
{
    const struct specification *specification = plan->specification;
    const struct load_conditions conditions = {specification, &plan->fitted,
                                               plan_pressure_system(plan)};
    for (size_t i = 0; i < plan->count; i++) {
        const struct setup *setup = &plan->setups[i];
        for (size_t j = 0; j < state_count(specification); j++)
            report_state(plan, setup, state_at(specification, j), figures);
        for (int axle = 0; axle < AXLE_COUNT; axle++) {
            struct axle_pressures pressures;
            axle_pressures(&conditions, setup, (enum axle)axle, &pressures);
            report_pressures(plan, setup, axle, &pressures, figures);
            report_axle_rating(plan, setup, axle, &pressures, figures);
            report_wheel(setup, axle, &pressures, figures);
        }
        report_spare(setup, figures);
    }
}
