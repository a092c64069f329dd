/* Candidates: what each tyre measures and changes, and whether its marks are enough. */
#include "base/known.h"
#include "base/units.h"
#include "report/judge.h"
#include "report/basis.h"
#include "report/plan.h"
#include "tables/lookup.h"

static void report_dimensions(const struct plan *plan, size_t index, int axle,
                              struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    const struct tyre *tyre = &setup->axle[axle];
    const struct beside *beside = &plan->beside[index];
    struct tyre_measures measures;
    tyre_measure(tyre, &measures);
    const struct tyre_figures *stated = &measures.stated;
    const char *basis = source_text(stated->diameter_source, stated->un_r54);
    struct figure figure = figure_of(QUANTITY_OVERALL_DIAMETER, stated->overall_diameter_m, basis);
    figure.axle = setup_axles_differ(setup) ? axle : AXLE_NONE;
    figure.headline = HEADLINE_YES;
    if (!known(figure.value)) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = "give data_book: overall_diameter; no rule measures this size";
    }
    figures_add(figures, figure);
    figure.verdict = VERDICT_NONE;
    figure.action = NULL;
    figure.quantity = QUANTITY_SECTION_WIDTH;
    figure.value = stated->width_on_rim_m;
    figure.basis = stated->width_source == SOURCE_MOULDED /* and carried over to its rim */
                       ? source_text(SOURCE_RULE, stated->un_r54)
                       : source_text(stated->width_source, stated->un_r54);
    figures_add(figures, figure);
    figure.quantity = QUANTITY_REVOLUTIONS;
    figure.value = 1 / stated->rolling_circumference_m;
    figure.basis = stated->circumference_source == SOURCE_DATA_BOOK
                       ? "data book"
                       : "ETRTO rolling circumference, 3.05 D radial or 2.99 D diagonal";
    figures_add(figures, figure);
    if (setup->is_fitted)
        return;
    figure.quantity = QUANTITY_OVERALL_DIAMETER_CHANGE;
    figure.value = beside->after[axle].overall_diameter_m - beside->before[axle].overall_diameter_m;
    figure.basis = beside->mixed[axle] ? "by the same rule for both tyres" : basis;
    figures_add(figures, figure);
}

static void report_mixed(const struct plan *plan, size_t index, int axle, struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    if (!plan->beside[index].mixed[axle])
        return;
    struct figure figure =
        figure_of(QUANTITY_MIXED_SOURCES, UNKNOWN, "one of the two tyres has data-book figures");
    figure.axle = setup_axles_differ(setup) ? axle : AXLE_NONE;
    figure.verdict = VERDICT_CAUTION;
    figure.action = "changes are by the same rule for both; give data_book for both to use it";
    figures_add(figures, figure);
}

/* The rest of what `size` prints, for the tyre and the data book of this setup. */
static void report_allowed_size(const struct plan *plan, size_t index, int axle,
                                struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    const struct tyre *tyre = &setup->axle[axle];
    struct tyre_measures measures;
    tyre_measure(tyre, &measures);
    const struct tyre_figures *stated = &measures.stated;
    const char *envelope = envelope_text(&tyre->size, stated);
    const char *permitted = rim_source_text(stated->rim_source);
    const struct {
        enum quantity_id quantity;
        double value;
        const char *basis;
    } rows[] = {
        {QUANTITY_DIAMETER_LEAST, stated->overall_diameter_min_m, envelope},
        {QUANTITY_DIAMETER_LARGEST, stated->overall_diameter_max_m, envelope},
        {QUANTITY_WIDTH_LARGEST, stated->width_on_rim_max_m, envelope},
        {QUANTITY_STATIC_LOADED_RADIUS, stated->static_loaded_radius_m,
         stated->radius_source == SOURCE_DATA_BOOK ? "data book" : "0.912 D/2 at the rated load"},
        {QUANTITY_MEASURING_RIM, stated->measuring_rim_m,
         rim_source_text(stated->measuring_rim_source)},
        {QUANTITY_RIM_LEAST, stated->rim_min_m, permitted},
        {QUANTITY_RIM_LARGEST, stated->rim_max_m, permitted},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        if (!known(rows[i].value))
            continue;
        struct figure figure = figure_of(rows[i].quantity, rows[i].value, rows[i].basis);
        figure.axle = setup_axles_differ(setup) ? axle : AXLE_NONE;
        figures_add(figures, figure);
    }
}

/* UN R30 and R54 put the load index on the tyre; that it is not below the fitted one is what
 * inspections ask for. */
static void report_load_index(const struct plan *plan, size_t index, int axle,
                              struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    const struct service_description *service = &setup->axle[axle].size.service;
    const struct service_description *before = &plan->fitted.axle[axle].size.service;
    struct figure figure = figure_of(QUANTITY_LOAD_AT_INDEX, load_index_kg(service->load_index),
                                     "load index, UN R30 / R54 Annex 4");
    figure.axle = setup_axles_differ(setup) ? axle : AXLE_NONE;
    figure.headline = HEADLINE_YES;
    if (!setup->is_fitted)
        figure = figure_at_least(figure, load_index_kg(before->load_index));
    if (figure.verdict == VERDICT_FAIL)
        figure.action =
            arena_format(plan->arena, "below the fitted tyre: choose load index %d or above",
                         load_index_for_kg(figure.limit));
    else if (figure.verdict == VERDICT_UNKNOWN)
        figure.action = "give the service description of both tyres, such as 120/116R";
    figures_add(figures, figure);
}

static void report_speed_symbol(const struct plan *plan, size_t index, int axle,
                                struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    const struct service_description *service = &setup->axle[axle].size.service;
    double kmh = UNKNOWN;
    bool given = speed_symbol_kmh(service->speed_symbol, &kmh);
    struct figure figure =
        figure_of(QUANTITY_SPEED_SYMBOL, given ? unit_to_si(UNIT_KMH, kmh) : UNKNOWN,
                  "speed symbol, UN R30 / R54");
    figure.axle = setup_axles_differ(setup) ? axle : AXLE_NONE;
    figure.headline = HEADLINE_YES;
    figure = figure_at_least(figure, plan->specification->vehicle.top_speed_mps);
    if (figure.verdict == VERDICT_FAIL)
        figure.action = "below the top speed: choose a higher speed symbol";
    else if (figure.verdict == VERDICT_UNKNOWN)
        figure.action = given ? "give vehicle: top_speed" : "give the speed symbol in the size";
    figures_add(figures, figure);
}

/* An inch beyond the rims by factor: no data book goes so far (common practice, no source). */
static const double far_from_rims_m = 0.0254;

static void report_rim(const struct plan *plan, size_t index, int axle, struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    const struct tyre *tyre = &setup->axle[axle];
    struct tyre_measures measures;
    tyre_measure(tyre, &measures);
    const struct tyre_figures *stated = &measures.stated;
    bool book = stated->rim_source == SOURCE_DATA_BOOK;
    double width = tyre->wheel.width_m;
    struct figure figure = figure_of(
        QUANTITY_RIM_WIDTH, width,
        book ? "permitted rims of the data book"
             : arena_format(plan->arena, "rims: %s", rim_source_text(stated->rim_source)));
    figure.axle = setup_axles_differ(setup) ? axle : AXLE_NONE;
    figure = figure_within(figure, stated->rim_min_m, stated->rim_max_m);
    if (figure.verdict == VERDICT_UNKNOWN)
        figure.action =
            known(width) ? "the data book must say which rims are permitted" : "give wheel: width";
    else if (figure.verdict == VERDICT_FAIL)
        figure.action = book ? "choose a permitted rim" : "the data book must permit this rim";
    else if (!book)
        figure.action = "the data book decides";
    bool far = figure.verdict == VERDICT_FAIL &&
               clearly_above(fabs(figure.value - figure.limit), far_from_rims_m);
    if (!book && far)
        figure.action = "far outside the rims of this size: choose another wheel";
    else if (!book && figure.verdict != VERDICT_UNKNOWN) /* factors alone hardly permit or refuse */
        figure.verdict = VERDICT_CAUTION;
    figures_add(figures, figure);
}

static void report_assumptions(const struct setup *setup, struct figures *figures)
{
    for (int bit = 0; bit < ASSUMED_COUNT_OF_BITS; bit++) {
        enum assumption assumption = (enum assumption)(1 << bit);
        if (!(setup->assumptions & (unsigned)assumption))
            continue;
        struct figure figure = figure_of(QUANTITY_ASSUMPTION, UNKNOWN, "assumption");
        figure.action = assumption_text(assumption);
        figures_add(figures, figure);
    }
}

void report_tyre(const struct plan *plan, struct figures *figures)
{
    figures->part = PART_TYRE;
    for (size_t i = 0; i < plan->count; i++) {
        figures->setup = (int)i;
        int axles = plan_shows_both_axles(plan, i) ? 2 : 1;
        for (int axle = 0; axle < axles; axle++) {
            report_dimensions(plan, i, axle, figures);
            report_allowed_size(plan, i, axle, figures);
            report_load_index(plan, i, axle, figures);
            report_speed_symbol(plan, i, axle, figures);
            report_rim(plan, i, axle, figures);
            report_mixed(plan, i, axle, figures);
        }
        report_assumptions(&plan->setups[i], figures);
    }
}
