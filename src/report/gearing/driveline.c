/* Tyres that are coupled by the driveline and do not roll alike: front to rear, and the spare
 * beside the tyre on the other side. */

#include "base/known.h"
#include "compute/dimensions.h"
#include "compute/gearing.h"
#include "report/gearing/geared_setup.h"
#include "report/judge.h"

static bool axle_is_driven(const struct geared_setup *geared, int axle)
{
    return plan_drives_all_wheels(geared->plan) || axle == (int)plan_driven_axle(geared->plan);
}

/* Tread worn off each of two tyres: from new where that is known of both; between two of one size
 * from the deeper one. Otherwise both are taken as equally worn. */
static void wear_of(const struct tyre *a, const struct tyre *b, double wear_m[2])
{
    wear_m[0] = a->new_tread_depth_m - a->tread_depth_m;
    wear_m[1] = b->new_tread_depth_m - b->tread_depth_m;
    if (known(wear_m[0]) && known(wear_m[1]))
        return;
    wear_m[0] = wear_m[1] = 0;
    if (!known(a->tread_depth_m) || !known(b->tread_depth_m) ||
        !designation_equal(&a->size, &b->size))
        return;
    double deepest = higher_of(a->tread_depth_m, b->tread_depth_m);
    wear_m[0] = deepest - a->tread_depth_m;
    wear_m[1] = deepest - b->tread_depth_m;
}

/* Circumferences of two tyres as they are, by the same rule for both. */
static void circumferences_now(const struct tyre *a, const struct tyre *b, double out_m[2])
{
    struct tyre_dimensions figures[2];
    double wear_m[2];
    bool mixed;
    figures_to_compare(a, b, &figures[0], &figures[1], &mixed);
    wear_of(a, b, wear_m);
    for (int i = 0; i < 2; i++)
        out_m[i] = worn_circumference_m(figures[i].rolling_circumference_m,
                                        figures[i].overall_diameter_m, wear_m[i]);
}

/* Two circumferences may differ so far, either way. */
static struct figure judged_difference(struct figure figure, double allowed, enum remark_id advice)
{
    figure.limit = allowed;
    figure.limit_owner = LIMIT_OF_MAKER;
    figure.headline = HEADLINE_UNLESS_OK;
    return judged(figure, &(struct judgement){
                              .holds = answer_of(known(figure.value),
                                                 !clearly_above(fabs(figure.value), allowed)),
                              .broken = VERDICT_CAUTION,
                              .if_broken = remark(advice),
                              .if_unknown = remark(ADVICE_BOTH_SIZES),
                          });
}

/* The same as metres of slip in a kilometre. */
static void add_slip(const struct geared_setup *geared, const struct figure *difference,
                     enum quantity_id quantity)
{
    struct figure slip = figure_by(quantity, fabs(difference->value), difference->basis);
    slip.axle = difference->axle;
    slip.place = difference->place;
    figures_add(geared->figures, slip);
}

static struct figure mismatch_figure(const struct geared_setup *geared, const double now_m[2])
{
    return figure_by(
        QUANTITY_MISMATCH,
        circumference_mismatch(geared->drivetrain->axle, now_m[AXLE_FRONT], now_m[AXLE_REAR]),
        remark(BASIS_MISMATCH));
}

static void report_front_to_rear(const struct geared_setup *geared)
{
    const struct tyre *axle = geared->setup->axle;
    double now_m[2];
    circumferences_now(&axle[AXLE_FRONT], &axle[AXLE_REAR], now_m);
    bool part_time = geared->plan->specification->vehicle.drive == DRIVE_PART_TIME_4WD;
    struct figure mismatch = judged_difference(
        mismatch_figure(geared, now_m), circumference_difference_allowed(now_m[AXLE_FRONT]),
        part_time ? ADVICE_COUPLED_LOOSE : ADVICE_COUPLED_MATCH);
    figures_add(geared->figures, mismatch);
    add_slip(geared, &mismatch, QUANTITY_MISMATCH_SLIP);
    const struct tyre_dimensions *rear = &geared->beside->after[AXLE_REAR];
    figures_add(geared->figures, figure_by(QUANTITY_TREAD_DIFFERENCE,
                                           tread_difference_allowed_m(rear->rolling_circumference_m,
                                                                      rear->overall_diameter_m),
                                           remark(BASIS_QUARTER_INCH)));
}

/* Circumferences of the set and the spare on an axle. */
static void beside_spare(const struct geared_setup *geared, int axle, double now_m[2])
{
    circumferences_now(&geared->setup->axle[axle], &geared->setup->spare, now_m);
}

/* With the spare on one side of an axle its shaft turns at the mean of both wheels. The finding
 * is the spare's own: this is what it does to the coupling. */
static void report_spare_coupled(const struct geared_setup *geared, int axle)
{
    const struct tyre *tyres = geared->setup->axle;
    double spare_m[2], set_m[AXLE_COUNT];
    beside_spare(geared, axle, spare_m);
    circumferences_now(&tyres[AXLE_FRONT], &tyres[AXLE_REAR], set_m);
    set_m[axle] *= 2 / (1 + spare_m[0] / spare_m[1]);
    struct figure figure = mismatch_figure(geared, set_m);
    figure.place.name = axle == AXLE_FRONT ? "spare in front" : "spare at the rear";
    figures_add(geared->figures, figure);
    add_slip(geared, &figure, QUANTITY_MISMATCH_SLIP);
}

/* Front and rear alike are told once. */
static void report_spare_on(const struct geared_setup *geared, int axle, bool alike)
{
    double now_m[2];
    beside_spare(geared, axle, now_m);
    struct figure figure =
        figure_by(QUANTITY_SPARE_MISMATCH, now_m[1] / now_m[0] - 1, remark(BASIS_SPARE_MISMATCH));
    figure.axle = alike ? AXLE_NONE : axle;
    bool temporary = geared->setup->spare.size.prefix == PREFIX_T;
    figure = judged_difference(figure, circumference_difference_allowed(now_m[0]),
                               temporary ? ADVICE_SPARE_SLIPS_SLOWLY : ADVICE_SPARE_SLIPS);
    figures_add(geared->figures, figure);
    add_slip(geared, &figure, QUANTITY_SPARE_SLIP);
}

static void report_spare(const struct geared_setup *geared)
{
    double front_m[2], rear_m[2];
    beside_spare(geared, AXLE_FRONT, front_m);
    beside_spare(geared, AXLE_REAR, rear_m);
    bool alike = known(front_m[0]) && known(front_m[1]) && same_value(front_m[0], rear_m[0]) &&
                 same_value(front_m[1], rear_m[1]);
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        if (axle_is_driven(geared, axle) &&
            !(alike && axle == AXLE_REAR && plan_drives_all_wheels(geared->plan)))
            report_spare_on(geared, axle, alike);
    for (int axle = 0; axle < AXLE_COUNT && plan_drives_all_wheels(geared->plan); axle++)
        report_spare_coupled(geared, axle);
}

void report_driveline(const struct geared_setup *geared)
{
    if (geared->is_choice) /* a choice is for both axles: it changes nothing here */
        return;
    if (plan_drives_all_wheels(geared->plan))
        report_front_to_rear(geared);
    if (geared->setup->spare.size_given)
        report_spare(geared);
}
