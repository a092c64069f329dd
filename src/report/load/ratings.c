/* Axle loads in every state, what is left of each rating, what breaks it, and what may yet come. */
#include "base/known.h"
#include "report/load/loaded_setup.h"

/* One setup in one state. */
struct loaded_state {
    const struct loaded_setup *loaded;
    struct loading loading;
    struct axle_loads loads;
    struct figures *figures;
};

/* One rating: its row, its share in per cent, and what to say. */
struct rating_row {
    enum rating rating;
    enum quantity_id left, share;
    enum remark_id missing, broken;
};

static const struct rating_row axle_rows[AXLE_COUNT] = {
    {RATING_FRONT, QUANTITY_AXLE_RATING_LEFT, QUANTITY_AXLE_RATING_LEFT_SHARE,
     ADVICE_GIVE_AXLE_RATING, ADVICE_MOVE_LOAD},
    {RATING_REAR, QUANTITY_AXLE_RATING_LEFT, QUANTITY_AXLE_RATING_LEFT_SHARE,
     ADVICE_GIVE_AXLE_RATING, ADVICE_MOVE_LOAD},
};
static const struct rating_row gross_row = {RATING_GROSS, QUANTITY_GROSS_LEFT,
                                            QUANTITY_GROSS_LEFT_SHARE, ADVICE_GIVE_GROSS,
                                            ADVICE_LEAVE_SOMETHING};
static const struct rating_row roof_row = {RATING_ROOF, QUANTITY_ROOF_LEFT,
                                           QUANTITY_ROOF_LEFT_SHARE, ADVICE_GIVE_ROOF_RATING,
                                           ADVICE_OFF_THE_ROOF};
static const struct rating_row tow_ball_row = {RATING_TOW_BALL, QUANTITY_TOW_BALL_LEFT,
                                               QUANTITY_TOW_BALL_LEFT_SHARE, ADVICE_GIVE_TOW_BALL,
                                               ADVICE_LOAD_TRAILER_BACK};
static const struct rating_row combination_row = {RATING_COMBINATION, QUANTITY_COMBINATION_LEFT,
                                                  QUANTITY_COMBINATION_LEFT_SHARE,
                                                  ADVICE_GIVE_COMBINATION, ADVICE_LIGHTER_TRAILER};

static struct figure state_figure(const struct loaded_state *state, enum quantity_id quantity,
                                  double value, int axle, enum remark_id basis)
{
    const struct loading *loading = &state->loading;
    struct figure figure = figure_on_axle(quantity, value, axle, remark(basis));
    figure.state = state_number(loading->specification, loading->state);
    return figure;
}

/* Says with which item a rating is passed, and what to do. */
static struct remark broken_by(const struct loaded_state *state, const struct rating_row *row,
                               struct governor *governor)
{
    struct arena *arena = state->loaded->plan->arena;
    bool unladen;
    const struct carried_item *item = rating_broken_by(&state->loading, row->rating, &unladen);
    if (unladen)
        return REMARK_WITH(arena, ADVICE_PASSED_UNLADEN, say_remark(arena, remark(row->broken)));
    if (item == NULL)
        return remark(row->broken);
    *governor = (struct governor){GOVERNED_BY_ITEM,
                                  (int)(item - state->loading.specification->carried.items), NULL};
    return REMARK_WITH(arena, ADVICE_PASSED_WITH, say_text(item->item),
                       say_remark(arena, remark(row->broken)));
}

/* What is left of a rating, in mass and per cent; below nothing it is a fail. */
static void add_left(const struct loaded_state *state, int axle, const struct rating_row *row)
{
    double rating = rating_kg(&state->loading.specification->vehicle.ratings, row->rating);
    double load = rated_load_kg(&state->loads, row->rating);
    struct figure figure = state_figure(state, row->left, rating - load, axle, BASIS_VEHICLE_MAKER);
    const struct need needs[] = {
        {known(rating), remark(row->missing)},
        {known(load), remark(ADVICE_LOAD_UNKNOWN)},
    };
    double tolerance_kg = rating_doubt_kg(state->loading.specification, row->rating);
    struct judgement how = {.needs = needs,
                            .need_count = 2,
                            .tolerance = tolerance_kg,
                            .if_doubtful = weigh_again(state->loaded->plan->arena, tolerance_kg)};
    if (figure.value < 0)
        how.if_broken = broken_by(state, row, &figure.governed_by);
    figure.headline = HEADLINE_UNLESS_OK;
    figure.limit_owner = LIMIT_OF_MAKER;
    figures_add(state->figures, judged(limited_at_least(figure, 0), &how));
    figure = state_figure(state, row->share, (rating - load) / rating, axle, BASIS_VEHICLE_MAKER);
    if (known(figure.value))
        figures_add(state->figures, figure);
}

static void report_gross(const struct loaded_state *state)
{
    const struct axle_loads *loads = &state->loads;
    bool negative = loads->gross_kg < 0;
    struct figure figure = state_figure(
        state, QUANTITY_GROSS_LOAD, negative ? UNKNOWN : loads->gross_kg, AXLE_NONE, BASIS_MOMENTS);
    const struct judgement how = {.holds = negative ? ANSWER_NO : ANSWER_NOT_ASKED,
                                  .if_broken = remark(ADVICE_CHECK_MASSES)};
    figure.headline = HEADLINE_YES;
    figures_add(state->figures, judged(figure, &how));
    add_left(state, AXLE_NONE, &gross_row);
    if (loads->roof_kg > 0)
        add_left(state, AXLE_NONE, &roof_row);
    if (loads->tow_ball_kg > 0)
        add_left(state, AXLE_NONE, &tow_ball_row);
    if (loads->trailer_kg > 0)
        add_left(state, AXLE_NONE, &combination_row);
}

static void report_axle_load(const struct loaded_state *state, int axle)
{
    struct figure figure =
        state_figure(state, QUANTITY_AXLE_LOAD, state->loads.axle_kg[axle], axle, BASIS_MOMENTS);
    const struct judgement how = {
        .holds = state->loads.lifted[axle] ? ANSWER_NO : ANSWER_NOT_ASKED,
        .if_broken = remark(ADVICE_LIFTED),
        .if_unknown = remark(ADVICE_GIVE_UNLADEN),
    };
    figure.headline = HEADLINE_YES;
    figures_add(state->figures, judged(figure, &how));
    add_left(state, axle, &axle_rows[axle]);
}

static bool passes_a_rating(const struct loaded_state *state, const struct carried_item *item)
{
    const struct specification *specification = state->loading.specification;
    struct axle_loads loads = state->loads;
    axle_loads_add_item(&loads, item, &specification->vehicle);
    for (int rating = 0; rating < RATING_COUNT; rating++)
        if (!rating_is_kept(specification, &loads, (enum rating)rating, true))
            return true;
    return false;
}

/* What stays behind so that the rest is borne: the state is judged without it. */
static void report_left_out(const struct loaded_state *state)
{
    const struct plan *plan = state->loaded->plan;
    const struct carried_list *carried = &plan->specification->carried;
    const bool *left_out =
        left_out_row(plan->specification, state->loading.setup, state->loading.state);
    for (size_t i = 0; left_out != NULL && i < carried->count; i++) {
        const struct carried_item *item = &carried->items[i];
        if (!left_out[i])
            continue;
        double mass = item_mass_kg(item);
        struct figure figure =
            state_figure(state, QUANTITY_LEFT_OUT, mass, AXLE_NONE, BASIS_LEFT_OUT);
        figure.place.name = item->item;
        bool by_rating = passes_a_rating(state, item);
        const struct judgement how = {
            .holds = ANSWER_NO,
            .cure = {.task = TASK_UNLOAD, .now = mass, .then = 0},
            .if_broken = remark(by_rating ? ADVICE_LEAVE_OUT : ADVICE_LEAVE_OUT_TO_BEAR)};
        figure.limit_owner = by_rating ? LIMIT_OF_MAKER : LIMIT_OF_PHYSICS;
        figures_add(state->figures, judged(figure, &how));
    }
}

static void report_state(const struct loaded_setup *loaded, const struct state *state,
                         struct figures *figures)
{
    const struct plan *plan = loaded->plan;
    const struct specification *specification = plan->specification;
    struct loaded_state in = {.loaded = loaded,
                              .loading = {specification, state, &plan->fitted, loaded->setup},
                              .figures = figures};
    axle_loads_in_state(specification, state, &plan->fitted, loaded->setup, &in.loads);
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        report_axle_load(&in, axle);
    report_gross(&in);
    report_left_out(&in);
    report_places(loaded, &in.loading, &in.loads, figures);
}

void report_ratings(const struct loaded_setup *loaded, struct figures *figures)
{
    const struct specification *specification = loaded->plan->specification;
    for (size_t i = 0; i < state_count(specification); i++)
        report_state(loaded, state_at(specification, i), figures);
    report_weighed(loaded, figures);
}
