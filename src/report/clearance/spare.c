/* The spare: does it go in where it is carried, does it roll like the others, what does it weigh.
 */
#include "base/known.h"
#include "base/units.h"
#include "compute/gearing.h"
#include "report/judge.h"
#include "report/clearance/stance.h"
#include "report/spare_of_set.h"
#include "size/designation.h"

struct carried_spare {
    const struct plan *plan;
    const struct setup *setup;
    struct figures *figures;
};

static struct figure spare_figure(enum quantity_id quantity, double value, enum remark_id basis,
                                  const char *name)
{
    struct figure figure = figure_of(quantity, value);
    figure.basis = remark(basis);
    figure.place.name = name;
    return figure;
}

static double deflated(const struct tyre *tyre, double value)
{
    return tyre->deflated.given == NULL ? UNKNOWN : value;
}

/* What goes in by less than the tape may be off. */
static struct figure judged_room(const struct carried_spare *spare, struct figure figure,
                                 struct judgement how)
{
    double tape = known_or(spare->plan->specification->measured.tape_m, 0);
    if (known(figure.value) && !meets_limit(figure.value, LIMIT_AT_LEAST, tape)) {
        how.met = VERDICT_CAUTION;
        how.if_met = REMARK_WITH(spare->plan->arena, ADVICE_WITHIN_TAPE, say_enough(tape));
    }
    return judged(limited_at_least(figure, 0), &how);
}

/* One dimension, with air and, where that size is given, without. */
static void report_room(const struct carried_spare *spare, double space_m, double with_air_m,
                        double without_air_m, const char *dimension)
{
    struct figure figure =
        spare_figure(QUANTITY_SPARE_ROOM, space_m - with_air_m, BASIS_SPARE_SPACE, dimension);
    struct figure without = spare_figure(QUANTITY_SPARE_ROOM, space_m - without_air_m,
                                         BASIS_SPARE_WITHOUT_AIR, dimension);
    const struct cure cure = spare_of_set_cure(spare->plan, spare->setup),
                      none = {.task = TASK_NONE};
    bool goes_in = known(without.value) && meets_limit(without.value, LIMIT_AT_LEAST, 0);
    figure.place.tyre = AT_LARGEST;
    without.place.pressure_as = AT_NO_AIR;
    figure.limit_owner = without.limit_owner = LIMIT_OF_PHYSICS;
    figures_add(
        spare->figures,
        judged_room(spare, figure,
                    (struct judgement){.broken = goes_in ? VERDICT_CAUTION : VERDICT_FAIL,
                                       .cure = goes_in ? none : cure,
                                       .if_cured = remark(ADVICE_SPARE_OF_SET_FITS),
                                       .if_broken = remark(goes_in ? ADVICE_ONLY_WITHOUT_AIR
                                                                   : ADVICE_CARRY_ELSEWHERE),
                                       .if_unknown = remark(ADVICE_GIVE_SPARE_SPACE)}));
    if (known(without.value))
        figures_add(spare->figures,
                    judged_room(spare, without,
                                (struct judgement){.cure = cure,
                                                   .if_cured = remark(ADVICE_SPARE_OF_SET_FITS),
                                                   .if_broken = remark(ADVICE_CARRY_ELSEWHERE)}));
}

static void report_space(const struct carried_spare *spare)
{
    const struct spare_space *space = &spare->plan->specification->clearance.spare_space;
    const struct tyre *tyre = &spare->setup->spare;
    struct tyre_measures measures;
    tyre_measure(tyre, &measures);
    report_room(spare, space->diameter_m, measures.stated.overall_diameter_max_m,
                deflated(tyre, tyre->deflated.diameter_m), "diameter");
    report_room(spare, space->width_m, measures.stated.width_on_rim_max_m,
                deflated(tyre, tyre->deflated.width_m), "width");
}

static void judge_circumference(const struct carried_spare *spare, struct figure figure,
                                double circumference_m)
{
    double allowed = circumference_difference_allowed(circumference_m);
    bool coupled = plan_drives_all_wheels(spare->plan);
    figure.limit = allowed;
    figure.limit_owner = LIMIT_OF_PHYSICS;
    figures_add(spare->figures,
                judged(figure, &(struct judgement){
                                   .holds = answer_of(known(figure.value),
                                                      !clearly_above(fabs(figure.value), allowed)),
                                   .broken = VERDICT_CAUTION,
                                   .if_broken = remark(coupled ? ADVICE_SPARE_WINDS_UP
                                                               : ADVICE_SPARE_UNLIKE),
                                   .if_unknown = remark(ADVICE_GIVE_SPARE_BOOK)}));
}

/* Rolling circumference beside each axle's tyre; a quarter inch is quoted as the most between
 * coupled axles (common practice, no source). */
static void report_circumference(const struct carried_spare *spare, int axle, int shown_axle)
{
    const struct tyre *carried = &spare->setup->spare, *tyre = &spare->setup->axle[axle];
    struct tyre_dimensions axle_figures, spare_figures;
    bool mixed;
    figures_to_compare(tyre, carried, &axle_figures, &spare_figures, &mixed);
    double circumference = axle_figures.rolling_circumference_m;
    double change = spare_figures.rolling_circumference_m / circumference - 1;
    struct figure figure =
        spare_figure(QUANTITY_SPARE_CIRCUMFERENCE, change, BASIS_SPARE_ROLLS, "new");
    figure.axle = shown_axle;
    judge_circumference(spare, figure, circumference);
    double deeper = carried->tread_depth_m - tyre->tread_depth_m;
    if (!known(deeper))
        return;
    figure.value = change + 2 * PI * deeper / circumference;
    figure.basis = remark(BASIS_SPARE_AS_WORN);
    figure.place.name = "as worn";
    judge_circumference(spare, figure, circumference);
}

static bool matches(const struct tyre *spare, const struct tyre *tyre)
{
    return same_tyre(spare, tyre);
}

/* A matched set of five, rotated or not. */
static void report_set(const struct carried_spare *spare)
{
    const struct tyre *carried = &spare->setup->spare;
    bool matched = matches(carried, &spare->setup->axle[AXLE_FRONT]) &&
                   matches(carried, &spare->setup->axle[AXLE_REAR]);
    bool rotated = carried->rotated == 1;
    enum remark_id is = !matched  ? PHRASE_OTHER_SPARE
                        : rotated ? PHRASE_FIVE_ROTATED
                                  : PHRASE_FIVE_ALIKE;
    enum remark_id broken = matched                            ? ADVICE_ROTATE_FIVE
                            : carried->size.prefix == PREFIX_T ? ADVICE_TEMPORARY_SPARE
                                                               : ADVICE_WAY_HOME;
    struct arena *arena = spare->plan->arena;
    struct figure figure = figure_of(QUANTITY_SPARE_SET, UNKNOWN);
    figure.basis = REMARK_WITH(arena, BASIS_SPARE_SET, say_remark(arena, remark(is)));
    bool wears_alike = rotated || !plan_drives_all_wheels(spare->plan);
    figures_add(spare->figures,
                judged(figure, &(struct judgement){.holds = answer_of(true, matched && wears_alike),
                                                   .broken = VERDICT_CAUTION,
                                                   .if_broken = remark(broken)}));
}

static void report_mass(const struct carried_spare *spare)
{
    const struct tyre *before = &spare->plan->fitted.spare, *after = &spare->setup->spare;
    if (spare->setup->is_fitted || !before->size_given || after->given == before->given)
        return;
    double change = after->mass_kg - before->mass_kg;
    if (!known(change)) {
        struct figure taken = spare_figure(QUANTITY_ASSUMPTION, UNKNOWN, BASIS_ASSUMPTION, NULL);
        taken.advice = remark(TAKEN_NO_SPARE_MASS);
        figures_add(spare->figures, taken);
        return;
    }
    bool counted = fabs(change) <= 1e-9 * after->mass_kg ||
                   known(spare->plan->specification->clearance.spare_space.at_m);
    const struct need need = {counted, remark(ADVICE_GIVE_SPARE_PLACE)};
    figures_add(spare->figures,
                judged(spare_figure(QUANTITY_SPARE_MASS, change, BASIS_SPARE_MASS, NULL),
                       &(struct judgement){.needs = &need, .need_count = 1}));
}

void report_spare_wheel(const struct plan *plan, size_t index, struct figures *figures)
{
    const struct carried_spare spare = {plan, &plan->setups[index], figures};
    if (!spare.setup->spare.size_given)
        return;
    report_space(&spare);
    bool alike = !setup_axles_differ(spare.setup);
    for (int axle = 0; axle < (alike ? 1 : AXLE_COUNT); axle++)
        report_circumference(&spare, axle, alike ? AXLE_NONE : axle);
    report_set(&spare);
    report_mass(&spare);
}
