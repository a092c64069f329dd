/* Candidates: what each tyre measures and changes, and whether its marks are enough. */
#include "base/known.h"
#include "report/basis.h"
#include "report/judge.h"
#include "report/tyre/candidate.h"
#include "size/designation_listed.h"
#include "tables/lookup.h"

void candidate_add(const struct candidate *candidate, struct figure figure)
{
    figure.axle = candidate->axle;
    figures_add(candidate->figures, figure);
}

static void report_dimensions(const struct candidate *candidate)
{
    const struct tyre_dimensions *stated = &candidate->stated;
    struct remark basis = remark(source_remark(stated->diameter_source, stated->un_r54));
    struct figure figure = figure_by(QUANTITY_OVERALL_DIAMETER, stated->overall_diameter_m, basis);
    figure.headline = HEADLINE_YES;
    candidate_add(candidate,
                  judged(figure, &(struct judgement){.if_unknown = remark(ADVICE_DIAMETER)}));
    figure.quantity = QUANTITY_SECTION_WIDTH;
    figure.value = stated->width_on_rim_m;
    figure.basis = remark(source_remark(stated->width_source == SOURCE_MOULDED
                                            ? SOURCE_RULE /* carried over to its rim */
                                            : stated->width_source,
                                        stated->un_r54));
    candidate_add(candidate, figure);
    figure.quantity = QUANTITY_REVOLUTIONS;
    figure.value = 1 / stated->rolling_circumference_m;
    figure.basis =
        remark(stated->circumference_source == SOURCE_DATA_BOOK ? BASIS_DATA_BOOK : BASIS_ROLLING);
    candidate_add(candidate, figure);
    if (candidate->setup->is_fitted)
        return;
    figure.quantity = QUANTITY_OVERALL_DIAMETER_CHANGE;
    figure.value = candidate->after.overall_diameter_m - candidate->before.overall_diameter_m;
    figure.basis = candidate->mixed ? remark(BASIS_SAME_RULE) : basis;
    candidate_add(candidate, figure);
}

static void report_mixed(const struct candidate *candidate)
{
    struct figure figure = figure_by(QUANTITY_MIXED_SOURCES, UNKNOWN, remark(BASIS_MIXED_SOURCES));
    if (candidate->mixed)
        candidate_add(candidate, judged(figure, &(struct judgement){
                                                    .holds = ANSWER_NO,
                                                    .broken = VERDICT_CAUTION,
                                                    .if_broken = remark(ADVICE_MIXED_SOURCES),
                                                }));
}

/* The rest of what `size` prints, for the tyre and the data book of this setup. */
static void report_allowed_size(const struct candidate *candidate)
{
    const struct tyre_dimensions *stated = &candidate->stated;
    enum remark_id envelope = envelope_remark(&candidate->tyre->size, stated);
    const struct {
        enum quantity_id quantity;
        double value;
        enum remark_id basis;
    } rows[] = {
        {QUANTITY_DIAMETER_LEAST, stated->overall_diameter_min_m, envelope},
        {QUANTITY_DIAMETER_LARGEST, stated->overall_diameter_max_m, envelope},
        {QUANTITY_WIDTH_LARGEST, stated->width_on_rim_max_m, envelope},
        {QUANTITY_STATIC_LOADED_RADIUS, stated->static_loaded_radius_m,
         stated->radius_source == SOURCE_DATA_BOOK ? BASIS_DATA_BOOK : BASIS_LOADED_RADIUS},
        {QUANTITY_MEASURING_RIM, stated->measuring_rim_m,
         rim_source_remark(stated->measuring_rim_source)},
        {QUANTITY_RIM_LEAST, stated->rim_min_m, rim_source_remark(stated->rim_min_source)},
        {QUANTITY_RIM_LARGEST, stated->rim_max_m, rim_source_remark(stated->rim_max_source)},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        if (known(rows[i].value))
            candidate_add(candidate,
                          figure_by(rows[i].quantity, rows[i].value, remark(rows[i].basis)));
}

/* UN R30 and R54 put the load index on the tyre; that it is not below the fitted one is what
 * inspections ask for. */
static void report_load_index(const struct candidate *candidate)
{
    const struct designation *size = &candidate->tyre->size, *before = &candidate->fitted->size;
    const bool moulded = size->service.load_index != LOAD_INDEX_NONE;
    double fitted_kg = load_index_kg(designation_load_index(before, LISTED_HIGHEST));
    struct figure figure =
        figure_by(QUANTITY_LOAD_AT_INDEX,
                  load_index_kg(designation_load_index(
                      size, candidate->setup->is_fitted ? LISTED_HIGHEST : LISTED_LOWEST)),
                  remark(moulded ? BASIS_LOAD_INDEX : BASIS_LISTED_INDEX));
    const struct need needs[] = {
        {moulded && before->service.load_index != LOAD_INDEX_NONE, remark(ADVICE_SERVICE)}};
    figure.headline = HEADLINE_YES;
    if (!candidate->setup->is_fitted) {
        struct argument index = say_number(load_index_for_kg(fitted_kg), 0);
        figure.limit_owner = LIMIT_OF_LAW;
        figure =
            judged(limited_at_least(figure, fitted_kg),
                   &(struct judgement){
                       .needs = needs,
                       .need_count = 1,
                       .broken = VERDICT_CAUTION, /* what it must carry is judged by itself */
                       .if_broken = REMARK_WITH(candidate->plan->arena, ADVICE_LOAD_INDEX, index),
                   });
    }
    candidate_add(candidate, figure);
}

/* A load index that no list comes near to may be mistyped, and the tyre then carries less than is
 * taken: a standard tyre's, an extra load tyre's 4 steps above and a high load one's 3 above that
 * are made (common practice, no source). */
static void report_index_beyond_lists(const struct candidate *candidate)
{
    enum { STEPS_ABOVE = 7 };
    const struct designation *size = &candidate->tyre->size;
    const int index = size->service.load_index;
    if (index == LOAD_INDEX_NONE)
        return;
    const int listed = designation_listed_highest(size);
    if (listed == LOAD_INDEX_NONE || index <= listed + STEPS_ABOVE)
        return;
    candidate_add(
        candidate,
        judged(limited_at_most(
                   figure_by(QUANTITY_LOAD_INDEX_LISTED, index, remark(BASIS_LISTS_OF_SIZES)),
                   listed + STEPS_ABOVE),
               &(struct judgement){
                   .broken = VERDICT_CAUTION,
                   .if_broken = REMARK_WITH(candidate->plan->arena, ADVICE_INDEX_BEYOND_LISTS,
                                            say_number(listed, 0), say_number(index, 0)),
               }));
}

/* An inch beyond the rims by factor: no data book goes so far (common practice, no source). */
static const double far_from_rims_m = 0.0254;

/* Where the permitted rims come from, each end by its own source. */
static struct remark rims_remark(struct arena *arena, const struct tyre_dimensions *stated)
{
    struct remark least = remark(rim_source_remark(stated->rim_min_source));
    struct remark largest = remark(rim_source_remark(stated->rim_max_source));
    if (least.id != largest.id)
        return REMARK_WITH(arena, BASIS_RIMS_BY_END, say_remark(arena, least),
                           say_remark(arena, largest));
    if (least.id == BASIS_DATA_BOOK)
        return remark(BASIS_BOOK_RIMS);
    return REMARK_WITH(arena, BASIS_RIMS, say_remark(arena, least));
}

/* Beyond an end of the data book it fails. Factors and tables alone hardly permit or refuse: a
 * caution, but far beyond them. */
static void report_rim(const struct candidate *candidate)
{
    const struct tyre_dimensions *stated = &candidate->stated;
    double width = candidate->tyre->wheel.width_m;
    struct figure figure = limited_within(
        figure_by(QUANTITY_RIM_WIDTH, width, rims_remark(candidate->plan->arena, stated)),
        stated->rim_min_m, stated->rim_max_m);
    figure.limit_owner = LIMIT_OF_MAKER;
    bool at_least = figure.limit_side == LIMIT_AT_LEAST;
    bool book = (at_least ? stated->rim_min_source : stated->rim_max_source) == SOURCE_DATA_BOOK;
    bool both = stated->rim_min_source == stated->rim_max_source && book;
    bool outside =
        known(width) && known(figure.limit) && !meets_limit(width, figure.limit_side, figure.limit);
    bool far = !book && clearly_above(fabs(width - figure.limit), far_from_rims_m);
    const struct need needs[] = {
        {known(width), remark(ADVICE_RIM_WIDTH)},
        {outside || (known(stated->rim_min_m) && known(stated->rim_max_m)),
         remark(ADVICE_BOOK_RIMS)},
    };
    candidate_add(
        candidate,
        judged(figure, &(struct judgement){
                           .needs = needs,
                           .need_count = 2,
                           .broken = book || far ? VERDICT_FAIL : VERDICT_CAUTION,
                           .met = both ? VERDICT_OK : VERDICT_CAUTION,
                           .if_broken = remark(book  ? ADVICE_PERMITTED_RIM
                                               : far ? ADVICE_OTHER_WHEEL
                                                     : ADVICE_BOOK_MUST_PERMIT),
                           .if_met = both ? remark(REMARK_NONE) : remark(ADVICE_BOOK_DECIDES),
                       }));
}

static void report_assumptions(const struct setup *setup, struct figures *figures)
{
    static const struct {
        enum assumption assumption;
        enum remark_id taken;
    } rows[] = {
        {ASSUMED_FITTED_WHEEL, TAKEN_FITTED_WHEEL}, {ASSUMED_SAME_MASS, TAKEN_SAME_MASS},
        {ASSUMED_NO_SPACER, TAKEN_NO_SPACER},       {ASSUMED_SAME_SPARE, TAKEN_SAME_SPARE},
        {ASSUMED_NO_SPARE, TAKEN_NO_SPARE},         {ASSUMED_SPARE_WHEEL, TAKEN_SPARE_WHEEL},
        {ASSUMED_SPARE_RIM, TAKEN_SPARE_RIM},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        figures_assume(figures, setup->assumptions & (unsigned)rows[i].assumption,
                       remark(rows[i].taken));
    for (int axle = 0; axle < (setup->own_rear_size ? AXLE_COUNT : 1); axle++) {
        const struct tyre *tyre = &setup->axle[axle];
        char text[DESIGNATION_CANONICAL_SIZE];
        if (tyre->taken == NULL)
            continue;
        designation_canonical(&tyre->size, text);
        figures_assume(figures, true,
                       REMARK_WITH(figures->arena, TAKEN_SIZE_AS,
                                   say_text(arena_copy(figures->arena, span_of(text))),
                                   say_text(tyre->taken)));
    }
}

static struct candidate candidate_of(const struct plan *plan, size_t index, int axle,
                                     struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    const struct beside *beside = &plan->beside[index];
    struct tyre_measures measures;
    tyre_measure(&setup->axle[axle], &measures);
    return (struct candidate){
        .plan = plan,
        .figures = figures,
        .setup = setup,
        .tyre = &setup->axle[axle],
        .fitted = &plan->fitted.axle[axle],
        .stated = measures.stated,
        .before = beside->before[axle],
        .after = beside->after[axle],
        .mixed = beside->mixed[axle],
        .axle = plan_shows_both_axles(plan, index) ? axle : AXLE_NONE,
    };
}

void report_tyre(const struct plan *plan, struct figures *figures)
{
    static void (*const sections[])(const struct candidate *) = {
        report_dimensions,   report_allowed_size, report_load_index, report_index_beyond_lists,
        report_speed_symbol, report_rim,          report_mixed,
    };
    figures->part = PART_TYRE;
    for (size_t i = figures->first_setup; i < plan->count; i++) {
        figures->setup = (int)i;
        int axles = plan_shows_both_axles(plan, i) ? AXLE_COUNT : 1;
        for (int axle = 0; axle < axles; axle++) {
            const struct candidate candidate = candidate_of(plan, i, axle, figures);
            for (size_t j = 0; j < sizeof sections / sizeof sections[0]; j++)
                sections[j](&candidate);
        }
        report_assumptions(&plan->setups[i], figures);
    }
}
