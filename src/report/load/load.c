/* Load: axle loads and ratings, the pressure that carries them, wheel, spare and what is not
 * covered. */

#include "base/known.h"
#include "base/units.h"
#include "report/judge.h"
#include "report/load/view.h"
#include "tables/lookup.h"

bool axles_alike(const struct load_view *view)
{
    const struct axle_pressures *front = &view->axle[AXLE_FRONT], *rear = &view->axle[AXLE_REAR];
    const struct tyre *tyres = view->setup->axle;
    return !view->setup->own_rear_size &&
           tyres[AXLE_FRONT].data_book.given == tyres[AXLE_REAR].data_book.given &&
           front->dual == rear->dual && front->rating.class == rear->rating.class &&
           tyres[AXLE_FRONT].load_range == tyres[AXLE_REAR].load_range &&
           !(front->ceiling_Pa < rear->ceiling_Pa) && !(rear->ceiling_Pa < front->ceiling_Pa);
}

/* 49 CFR 571.110 and 571.120: the tyres of an axle carry its rating. */
static void report_axle_rating(const struct load_view *view, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &view->axle[axle];
    double rating = rating_kg(&view->plan->specification->vehicle.ratings,
                              axle == AXLE_FRONT ? RATING_FRONT : RATING_REAR);
    struct figure figure = figure_of(QUANTITY_TYRES_CARRY_RATING,
                                     pressures->capacity_max_kg * tyres_on_axle(pressures->dual),
                                     "49 CFR 571.110 S4.2.2.2, 571.120 S5.1.2");
    figure.axle = axle;
    figure = figure_at_least(figure, rating);
    if (figure.verdict == VERDICT_FAIL)
        figure.action = "choose tyres that together carry the axle's rating";
    else if (figure.verdict == VERDICT_UNKNOWN)
        figure.action =
            known(figure.value) ? "give vehicle: ratings for this axle" : "give the load index";
    figures_add(figures, figure);
}

static void report_wheel_pressure(const struct load_view *view, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &view->axle[axle];
    const struct wheel *wheel = &view->setup->axle[axle].wheel;
    if (isinf(pressures->needed_Pa))
        return; /* no pressure is enough, which is a finding already */
    struct figure figure =
        figure_of(QUANTITY_WHEEL_PRESSURE, wheel->max_pressure_Pa - pressures->needed_Pa,
                  "the wheel maker's rating");
    figure.axle = axle;
    figure = figure_at_least(figure, 0);
    if (figure.verdict == VERDICT_UNKNOWN)
        figure.action = known(wheel->max_pressure_Pa) ? "the pressure needed is not known"
                                                      : "give wheel: max_pressure";
    else if (figure.verdict == VERDICT_FAIL)
        figure.action = "the pressure needed is above the wheel's rating: choose another wheel";
    if (!known(wheel->max_load_kg) && !known(wheel->max_pressure_Pa))
        figure.verdict = VERDICT_NONE; /* the finding on its load asks for both */
    figures_add(figures, figure);
}

static void report_wheel(const struct load_view *view, int axle, struct figures *figures)
{
    const struct wheel *wheel = &view->setup->axle[axle].wheel;
    struct figure figure =
        figure_of(QUANTITY_WHEEL_LOAD, wheel->max_load_kg - view->axle[axle].load_built_kg,
                  "the wheel maker's rating");
    figure.axle = axle;
    figure = figure_at_least(figure, 0);
    if (figure.verdict == VERDICT_FAIL)
        figure.action = "choose a wheel that is rated for this load";
    else if (figure.verdict == VERDICT_UNKNOWN && known(wheel->max_load_kg))
        figure.action = "give vehicle: unladen";
    else if (figure.verdict == VERDICT_UNKNOWN)
        figure.action = known(wheel->max_pressure_Pa) ? "give wheel: max_load"
                                                      : "give wheel: max_load and max_pressure";
    figures_add(figures, figure);
    report_wheel_pressure(view, axle, figures);
}

/* The load that the spare may have to carry, on either axle. */
static double heaviest_load(const struct load_view *view)
{
    return higher_of_pair((struct axle_pair){view->axle[AXLE_FRONT].load_built_kg,
                                             view->axle[AXLE_REAR].load_built_kg});
}

/* A spare of the size that the axles have is the same tyre, whatever it leaves out. */
static struct tyre spare_of(const struct load_view *view)
{
    struct tyre spare = view->setup->spare;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct tyre *tyre = &view->setup->axle[axle];
        if (!tyre->size_given || !designation_equal(&tyre->size, &spare.size))
            continue;
        if (spare.load_range == 0)
            spare.load_range = tyre->load_range;
        if (spare.data_book.given == NULL)
            spare.data_book = tyre->data_book;
        if (spare.wheel.given == NULL)
            spare.wheel = tyre->wheel;
        break;
    }
    return spare;
}

/* `fails` is set where the load index was found to be too low already. */
static void report_spare_pressure(const struct load_view *view, bool fails, struct figures *figures)
{
    const struct plan *plan = view->plan;
    const struct vehicle *vehicle = &plan->specification->vehicle;
    const struct tyre spare = spare_of(view);
    struct tyre_rating rating;
    tyre_rate(&spare, vehicle->kind, vehicle->top_speed_mps, plan_pressure_system(plan), &rating);
    double load = heaviest_load(view) * (1 + load_reserve(plan->specification));
    double needed = pressure_for_load_Pa(&rating, false, load);
    needed = known(needed) ? fmax(needed, rating.floor_Pa) : UNKNOWN;
    struct figure figure = figure_of(
        QUANTITY_SPARE_PRESSURE, pressure_rounded_up_Pa(needed, plan_pressure_system(plan)),
        "as built: carries the heaviest tyre's load of either axle, with the reserve");
    double ceiling = pressure_ceiling_Pa(&rating, &spare.wheel);
    figure.verdict = VERDICT_OK;
    if (!known(figure.value)) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = "needs the spare's service description and load range, and the axle loads";
    } else if (isinf(figure.value) || figure.value > ceiling * (1 + 1e-9)) {
        figure.value = UNKNOWN;
        figure.verdict = fails ? VERDICT_NONE : VERDICT_FAIL;
        figure.action = "the spare does not carry the build at any pressure that is allowed";
    } else if (spare.size.prefix == PREFIX_T) {
        figure.verdict = VERDICT_CAUTION;
        figure.action = "for temporary use: at most the speed marked on it, often 80 km/h (UN R64, "
                        "from memory), unladen where that can be";
    }
    figures_add(figures, figure);
}

static void report_spare(const struct load_view *view, struct figures *figures)
{
    const struct setup *setup = view->setup;
    if (!setup->spare.size_given)
        return;
    double needed = 0;
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        needed = higher_of(needed, load_index_kg(setup->axle[axle].size.service.load_index));
    struct figure figure =
        figure_of(QUANTITY_SPARE_CAPACITY, load_index_kg(setup->spare.size.service.load_index),
                  "load index, UN R30 / R54 Annex 4");
    figure = figure_at_least(figure, needed);
    if (figure.verdict == VERDICT_FAIL)
        figure.action = "less than the tyres it replaces: carry one of the set";
    else if (figure.verdict == VERDICT_UNKNOWN)
        figure.action = "give the spare's service description";
    figures_add(figures, figure);
    report_spare_pressure(view, figure.verdict == VERDICT_FAIL, figures);
}

/* Margins front and rear; far apart, the axle with less is the one that goes first. It matters
 * where that one has little left. */
static void report_margins(const struct load_view *view, struct figures *figures)
{
    static const double far_apart = 0.25, little = 0.10;
    double margin[AXLE_COUNT];
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        margin[axle] =
            view->axle[axle].capacity_at_recommended_kg / view->axle[axle].load_built_kg - 1;
    struct figure figure =
        figure_of(QUANTITY_MARGIN_DIFFERENCE, margin[AXLE_FRONT] - margin[AXLE_REAR],
                  "capacity left front less rear; 25 points apart with less than 10 % left is "
                  "common practice, no source");
    if (!known(figure.value))
        return; /* the pressures say what is missing */
    bool uneven = clearly_above(fabs(figure.value), far_apart) &&
                  fmin(margin[AXLE_FRONT], margin[AXLE_REAR]) < little;
    figure.verdict = uneven ? VERDICT_CAUTION : VERDICT_OK;
    if (figure.verdict == VERDICT_CAUTION)
        figure.action = figure.value > 0
                            ? "the rear tyres have much less in reserve than the front"
                            : "the front tyres have much less in reserve than the rear";
    figures_add(figures, figure);
}

static void add_not_covered(const char *what, enum verdict verdict, const char *action,
                            struct figures *figures)
{
    struct figure figure = figure_of(QUANTITY_NOT_COVERED, UNKNOWN, "outside these sums");
    figure.at = what;
    figure.verdict = verdict;
    figure.action = action;
    figures_add(figures, figure);
}

/* Pressures of the placard balance the axles; another ratio of front to rear is not known. */
static void report_handling(const struct load_view *view, struct figures *figures)
{
    static const double same_ratio = 0.10;
    const struct axle_pressures *front = &view->axle[AXLE_FRONT], *rear = &view->axle[AXLE_REAR];
    double change =
        (front->recommended_Pa / rear->recommended_Pa) / (front->placard_Pa / rear->placard_Pa) - 1;
    bool both = isfinite(front->recommended_Pa) && isfinite(rear->recommended_Pa);
    if (both && clearly_above(fabs(change), same_ratio)) /* false where a placard is not known */
        add_not_covered("handling", VERDICT_UNKNOWN,
                        "front and rear pressures are in another ratio than on the placard: try "
                        "with care, or ask the vehicle maker",
                        figures);
}

static void report_not_covered(const struct load_view *view, struct figures *figures)
{
    const struct carried_list *carried = &view->plan->specification->carried;
    bool trailer = false;
    for (size_t i = 0; i < carried->count; i++)
        trailer = trailer || known(carried->items[i].tow_ball_kg) ||
                  known(carried->items[i].trailer_mass_kg);
    report_handling(view, figures);
    if (trailer)
        add_not_covered("trailer dynamics", VERDICT_NONE,
                        "sway, braking and nose weight in motion are not computed", figures);
    add_not_covered("moving loads", VERDICT_NONE,
                    "braking, cornering and what shifts under way are not computed", figures);
}

static void take_as(bool taken, const char *text, struct figures *figures)
{
    struct figure figure = figure_of(QUANTITY_ASSUMPTION, UNKNOWN, "assumption");
    figure.action = text;
    if (taken)
        figures_add(figures, figure);
}

static bool counts_occupants(const struct carried_list *carried)
{
    for (size_t i = 0; i < carried->count; i++)
        if (known(carried->items[i].occupants) && !known(carried->items[i].occupant_mass_kg))
            return true;
    return false;
}

void report_load_assumptions(const struct load_view *view, struct figures *figures)
{
    const struct specification *specification = view->plan->specification;
    const struct axle_pressures *front = &view->axle[AXLE_FRONT], *rear = &view->axle[AXLE_REAR];
    take_as(front->rating.ceiling_assumed || rear->rating.ceiling_assumed,
            assumption_text(ASSUMED_LT_CEILING), figures);
    take_as(front->rating.listed || rear->rating.listed,
            "no moulded maximum is given: the lower of the load index and the published maximum of "
            "the size and load range counts (table light_truck_maxima)",
            figures);
    take_as(front->rating.standard_load_assumed || rear->rating.standard_load_assumed,
            assumption_text(ASSUMED_STANDARD_LOAD), figures);
    take_as(specification->vehicle.kind == CHOICE_NONE &&
                (is_passenger_tyre(&view->setup->axle[AXLE_FRONT]) ||
                 is_passenger_tyre(&view->setup->axle[AXLE_REAR])),
            "no vehicle: kind is given: passenger tyres count in full, as on a passenger car; on a "
            "light truck they count / 1.10",
            figures);
    take_as((front->dual && front->rating.dual_assumed) ||
                (rear->dual && rear->rating.dual_assumed),
            "no dual load index is given: a twin counts 0.91 of the single tyre", figures);
    take_as(specification->carried.count == 0, assumption_text(ASSUMED_NOTHING_CARRIED), figures);
    take_as(counts_occupants(&specification->carried),
            "occupants without a mass count 75 kg each (Regulation (EU) 1230/2012)", figures);
}

void report_load(const struct plan *plan, struct figures *figures)
{
    figures->part = PART_LOAD;
    const struct load_conditions conditions = {plan->specification, &plan->fitted,
                                               plan_pressure_system(plan)};
    struct load_view *views = arena_allocate_array(plan->arena, plan->count, sizeof *views);
    for (size_t i = 0; i < plan->count; i++) {
        struct load_view *view = &views[i];
        figures->setup = (int)i;
        *view = (struct load_view){.plan = plan, .setup = &plan->setups[i]};
        for (int axle = 0; axle < AXLE_COUNT; axle++)
            axle_pressures(&conditions, view->setup, (enum axle)axle, &view->axle[axle]);
        report_ratings(view, figures);
        for (int axle = 0; axle < AXLE_COUNT; axle++) {
            report_pressure(view, axle, figures);
            report_axle_rating(view, axle, figures);
            report_wheel(view, axle, figures);
            report_twins(view, axle, figures);
            report_pressure_warning(view, axle, figures);
        }
        report_margins(view, figures);
        report_spare(view, figures);
        report_off_road(view, figures);
        report_not_covered(view, figures);
        report_load_assumptions(view, figures);
    }
    report_pressure_tables(views, plan->count, figures);
}
