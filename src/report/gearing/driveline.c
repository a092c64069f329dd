/* Tyres that are coupled by the driveline and do not roll alike: front to rear, and the spare
 * beside the tyre on the other side. */

#include "base/known.h"
#include "compute/dimensions.h"
#include "compute/gearing.h"
#include "report/gearing/view.h"

static const char quarter_inch[] =
    "circumferences within 1/4 in, as handbooks quote (common practice, no source)";

static bool axle_is_driven(const struct drive_view *view, int axle)
{
    return plan_drives_all_wheels(view->plan) || axle == (int)plan_driven_axle(view->plan);
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
    struct tyre_figures figures[2];
    double wear_m[2];
    bool mixed;
    figures_to_compare(a, b, &figures[0], &figures[1], &mixed);
    wear_of(a, b, wear_m);
    for (int i = 0; i < 2; i++)
        out_m[i] = worn_circumference_m(figures[i].rolling_circumference_m,
                                        figures[i].overall_diameter_m, wear_m[i]);
}

static struct figure judged(struct figure figure, double allowed, const char *action)
{
    figure.limit = allowed;
    figure.headline = HEADLINE_UNLESS_OK;
    if (!known(figure.value))
        figure.verdict = VERDICT_UNKNOWN;
    else
        figure.verdict = clearly_above(fabs(figure.value), allowed) ? VERDICT_CAUTION : VERDICT_OK;
    figure.action = figure.verdict == VERDICT_CAUTION ? action
                    : figure.verdict == VERDICT_UNKNOWN
                        ? "give the size, or data_book: revs_per_km, of both tyres"
                        : NULL;
    return figure;
}

static void add_slip(const struct drive_view *view, struct figure figure, enum quantity_id quantity)
{
    figure.quantity = quantity;
    figure.value = fabs(figure.value);
    figure.limit = UNKNOWN;
    figure.verdict = VERDICT_NONE;
    figure.headline = HEADLINE_NO;
    figure.action = NULL;
    figures_add(view->figures, figure);
}

static struct figure mismatch_figure(const struct drive_view *view, double front_m, double rear_m)
{
    return figure_of(
        QUANTITY_MISMATCH, circumference_mismatch(view->drivetrain->axle, front_m, rear_m),
        arena_format(view->plan->arena, "(ratio_front / C_front) / (ratio_rear / C_rear) - 1; %s",
                     quarter_inch));
}

static void report_front_to_rear(const struct drive_view *view)
{
    const struct tyre *axle = view->setup->axle;
    double now_m[2];
    circumferences_now(&axle[AXLE_FRONT], &axle[AXLE_REAR], now_m);
    bool part_time = view->plan->specification->vehicle.drive == DRIVE_PART_TIME_4WD;
    struct figure mismatch =
        judged(mismatch_figure(view, now_m[AXLE_FRONT], now_m[AXLE_REAR]),
               circumference_difference_allowed(now_m[AXLE_FRONT]),
               part_time ? "coupled axles wind up: engage them on loose ground only, or use tyres "
                           "and ratios that match front to rear"
                         : "coupled axles wind up: use tyres and ratios that match front to rear");
    figures_add(view->figures, mismatch);
    add_slip(view, mismatch, QUANTITY_MISMATCH_SLIP);
    const struct tyre_figures *rear = &view->beside->after[AXLE_REAR];
    struct figure figure = figure_of(
        QUANTITY_TREAD_DIFFERENCE,
        tread_difference_allowed_m(rear->rolling_circumference_m, rear->overall_diameter_m),
        quarter_inch);
    figures_add(view->figures, figure);
}

/* Circumferences of the set and the spare on an axle. */
static void beside_spare(const struct drive_view *view, int axle, double now_m[2])
{
    circumferences_now(&view->setup->axle[axle], &view->setup->spare, now_m);
}

/* With the spare on one side of an axle its shaft turns at the mean of both wheels. The finding
 * is the spare's own: this is what it does to the coupling. */
static void report_spare_coupled(const struct drive_view *view, int axle)
{
    const struct tyre *tyres = view->setup->axle;
    double spare_m[2], set_m[AXLE_COUNT];
    beside_spare(view, axle, spare_m);
    circumferences_now(&tyres[AXLE_FRONT], &tyres[AXLE_REAR], set_m);
    set_m[axle] *= 2 / (1 + spare_m[0] / spare_m[1]);
    struct figure figure = mismatch_figure(view, set_m[AXLE_FRONT], set_m[AXLE_REAR]);
    figure.at = axle == AXLE_FRONT ? "spare in front" : "spare at the rear";
    figures_add(view->figures, figure);
    add_slip(view, figure, QUANTITY_MISMATCH_SLIP);
}

/* Front and rear alike are told once. */
static void report_spare_on(const struct drive_view *view, int axle, bool alike)
{
    double now_m[2];
    beside_spare(view, axle, now_m);
    struct figure figure = figure_of(
        QUANTITY_SPARE_MISMATCH, now_m[1] / now_m[0] - 1,
        arena_format(view->plan->arena,
                     "C_spare / C - 1, as worn now: negative where the spare is smaller; %s",
                     quarter_inch));
    figure.axle = alike ? AXLE_NONE : axle;
    bool temporary = view->setup->spare.size.prefix == PREFIX_T;
    figure = judged(figure, circumference_difference_allowed(now_m[0]),
                    temporary ? "the differential works all the time: slowly, and a short way only"
                              : "the differential works all the time: carry a spare of the set, or "
                                "use it for a short way and with no lock engaged");
    figures_add(view->figures, figure);
    add_slip(view, figure, QUANTITY_SPARE_SLIP);
}

static void report_spare(const struct drive_view *view)
{
    double front_m[2], rear_m[2];
    beside_spare(view, AXLE_FRONT, front_m);
    beside_spare(view, AXLE_REAR, rear_m);
    bool alike = front_m[0] == rear_m[0] && front_m[1] == rear_m[1];
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        if (axle_is_driven(view, axle) &&
            !(alike && axle == AXLE_REAR && plan_drives_all_wheels(view->plan)))
            report_spare_on(view, axle, alike);
    for (int axle = 0; axle < AXLE_COUNT && plan_drives_all_wheels(view->plan); axle++)
        report_spare_coupled(view, axle);
}

void report_driveline(const struct drive_view *view)
{
    if (view->is_choice) /* a choice is for both axles: it changes nothing here */
        return;
    if (plan_drives_all_wheels(view->plan))
        report_front_to_rear(view);
    if (view->setup->spare.size_given)
        report_spare(view);
}
