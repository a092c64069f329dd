/* Axle loads in every state, what is left of each rating, what breaks it, and what may yet come. */
#include "base/known.h"
#include "report/judge.h"
#include "report/load/view.h"

static const char moments_basis[] = "moments about the axles";

/* One rating: its row, its share in per cent, and what to say. */
struct rating_row {
    enum rating rating;
    enum quantity_id left, share;
    const char *missing, *broken;
};

static const struct rating_row axle_rows[AXLE_COUNT] = {
    {RATING_FRONT, QUANTITY_AXLE_RATING_LEFT, QUANTITY_AXLE_RATING_LEFT_SHARE,
     "give vehicle: ratings for this axle", "move or remove load on this axle"},
    {RATING_REAR, QUANTITY_AXLE_RATING_LEFT, QUANTITY_AXLE_RATING_LEFT_SHARE,
     "give vehicle: ratings for this axle", "move or remove load on this axle"},
};
static const struct rating_row gross_row = {
    RATING_GROSS, QUANTITY_GROSS_LEFT, QUANTITY_GROSS_LEFT_SHARE, "give vehicle: ratings: gross",
    "leave something at home"};
static const struct rating_row roof_row = {RATING_ROOF, QUANTITY_ROOF_LEFT,
                                           QUANTITY_ROOF_LEFT_SHARE, "give vehicle: ratings: roof",
                                           "take load off the roof"};
static const struct rating_row tow_ball_row = {
    RATING_TOW_BALL, QUANTITY_TOW_BALL_LEFT, QUANTITY_TOW_BALL_LEFT_SHARE,
    "give vehicle: ratings: tow_ball", "load the trailer further back"};
static const struct rating_row combination_row = {
    RATING_COMBINATION, QUANTITY_COMBINATION_LEFT, QUANTITY_COMBINATION_LEFT_SHARE,
    "give vehicle: ratings: combination", "tow a lighter trailer"};

static const char *broken_text(const struct plan *plan, const struct loading *loading,
                               const struct rating_row *row)
{
    bool unladen;
    const char *item = rating_broken_by(loading, row->rating, &unladen);
    if (unladen)
        return arena_format(plan->arena, "passed before anything is carried; %s", row->broken);
    if (item == NULL)
        return row->broken;
    return arena_format(plan->arena, "passed with \"%s\", in the file's order; %s", item,
                        row->broken);
}

/* What is left of a rating, in mass and per cent; below nothing it is a fail. */
static void add_left(const struct plan *plan, struct figures *figures, struct figure figure,
                     const struct loading *loading, const struct axle_loads *loads,
                     const struct rating_row *row)
{
    double rating = rating_kg(&plan->specification->vehicle.ratings, row->rating);
    figure.quantity = row->left;
    figure.value = rating - rated_load_kg(loads, row->rating);
    figure.basis = "the vehicle maker's rating";
    figure.headline = HEADLINE_UNLESS_OK;
    figure = figure_at_least(figure, 0);
    if (figure.verdict == VERDICT_FAIL)
        figure.action = broken_text(plan, loading, row);
    else if (figure.verdict == VERDICT_UNKNOWN)
        figure.action = known(rating) ? "the load is not known: see its own row" : row->missing;
    figures_add(figures, figure);
    figure.quantity = row->share;
    figure.value /= rating;
    figure.limit = UNKNOWN;
    figure.verdict = VERDICT_NONE;
    figure.action = NULL;
    figure.headline = HEADLINE_NO;
    if (known(figure.value))
        figures_add(figures, figure);
}

static void report_gross(const struct plan *plan, struct figures *figures, struct figure figure,
                         const struct loading *loading, const struct axle_loads *loads)
{
    figure.axle = AXLE_NONE;
    figure.quantity = QUANTITY_GROSS_LOAD;
    figure.value = loads->gross_kg;
    if (figure.value < 0) {
        figure.value = UNKNOWN;
        figure.verdict = VERDICT_FAIL;
        figure.action = "more is removed than the vehicle weighs: check the masses";
    }
    figures_add(figures, figure);
    figure.verdict = VERDICT_NONE;
    figure.action = NULL;
    add_left(plan, figures, figure, loading, loads, &gross_row);
    if (loads->roof_kg > 0)
        add_left(plan, figures, figure, loading, loads, &roof_row);
    if (loads->tow_ball_kg > 0)
        add_left(plan, figures, figure, loading, loads, &tow_ball_row);
    if (loads->trailer_kg > 0)
        add_left(plan, figures, figure, loading, loads, &combination_row);
}

static void report_axle_load(const struct plan *plan, struct figures *figures, struct figure figure,
                             const struct loading *loading, const struct axle_loads *loads,
                             int axle)
{
    figure.axle = axle;
    figure.value = loads->axle_kg[axle];
    if (loads->lifted[axle]) {
        figure.verdict = VERDICT_FAIL;
        figure.action = "these masses and places would lift this axle off the ground: check them";
    } else if (!known(figure.value)) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = "give vehicle: unladen and wheelbase";
    }
    figures_add(figures, figure);
    figure.verdict = VERDICT_NONE;
    figure.action = NULL;
    add_left(plan, figures, figure, loading, loads, &axle_rows[axle]);
}

static const char *largest_basis(const struct plan *plan, const struct largest_item *largest)
{
    switch (largest->limit) {
    case LIMIT_RATING:
        return arena_format(plan->arena, "limited by the %s", rating_name(largest->rating));
    case LIMIT_TYRES_FRONT:
        return "limited by the front tyres at their ceiling, with the reserve";
    case LIMIT_TYRES_REAR:
        return "limited by the rear tyres at their ceiling, with the reserve";
    case LIMIT_LIFTED:
        return "limited by lifting the other axle off the ground";
    default:
        return "the vehicle maker's ratings";
    }
}

/* The largest mass that each place of `room_for` may still take. */
static void report_room(const struct load_view *view, struct figures *figures, struct figure figure,
                        const struct axle_loads *loads)
{
    const struct plan *plan = view->plan;
    const struct specification *specification = plan->specification;
    const struct axle_pair tyres = {
        axle_tyres_left_kg(specification, &view->axle[AXLE_FRONT], loads, AXLE_FRONT),
        axle_tyres_left_kg(specification, &view->axle[AXLE_REAR], loads, AXLE_REAR)};
    for (size_t i = 0; i < specification->room_for.count; i++) {
        const struct planned_item *item = &specification->room_for.items[i];
        const struct load_place place = {item->at_m, item->on_roof != CHOICE_NONE,
                                         specification->vehicle.wheelbase_m};
        struct largest_item largest =
            largest_item(&specification->vehicle.ratings, loads, tyres, &place);
        figure.quantity = QUANTITY_LARGEST_ITEM;
        figure.axle = AXLE_NONE;
        figure.at = item->item;
        figure.headline = HEADLINE_NO;
        figure.value = largest.mass_kg;
        figure.basis = largest_basis(plan, &largest);
        figure.verdict = VERDICT_NONE;
        figure.action = NULL;
        if (largest.limit == LIMIT_UNKNOWN) {
            figure.verdict = VERDICT_UNKNOWN;
            figure.action =
                arena_format(plan->arena, "needs vehicle: wheelbase, unladen and the %s",
                             rating_name(largest.rating));
        } else if (!(largest.mass_kg > 0)) {
            figure.action = "nothing more fits here: this limit is reached already";
        }
        figures_add(figures, figure);
    }
}

static void report_state(const struct load_view *view, const struct state *state,
                         struct figures *figures)
{
    const struct plan *plan = view->plan;
    const struct loading loading = {plan->specification, state, &plan->fitted, view->setup};
    struct axle_loads loads;
    axle_loads_in_state(plan->specification, state, &plan->fitted, view->setup, &loads);
    struct figure figure = figure_of(QUANTITY_AXLE_LOAD, UNKNOWN, moments_basis);
    figure.state = state_number(plan->specification, state);
    figure.headline = HEADLINE_YES;
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        report_axle_load(plan, figures, figure, &loading, &loads, axle);
    report_gross(plan, figures, figure, &loading, &loads);
    report_room(view, figures, figure, &loads);
}

/* Without `includes` nobody can tell what the weighed figure holds: fuel and driver might count
 * twice or not at all. */
static void report_weighed(const struct load_view *view, struct figures *figures)
{
    const struct vehicle *vehicle = &view->plan->specification->vehicle;
    if (vehicle->includes.count > 0 || !known(vehicle->unladen_kg.front))
        return;
    struct figure figure =
        figure_of(QUANTITY_WEIGHED_WITH, UNKNOWN, "vehicle: unladen, as weighed");
    figure.verdict = VERDICT_UNKNOWN;
    figure.action = "give vehicle: includes, such as [driver, fuel] or [nothing]";
    figures_add(figures, figure);
}

void report_ratings(const struct load_view *view, struct figures *figures)
{
    const struct specification *specification = view->plan->specification;
    for (size_t i = 0; i < state_count(specification); i++)
        report_state(view, state_at(specification, i), figures);
    report_weighed(view, figures);
}
