/* Twin tyres: the room between them, and whether they are meant for that axle. */
#include "compute/clearance.h"
#include "compute/dimensions.h"
#include "report/load/loaded_setup.h"

void report_twins(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    const struct tyre *tyre = &loaded->setup->axle[axle];
    struct tyre_measures measures;
    if (!tyre_is_dual(tyre))
        return;
    tyre_measure(tyre, &measures);
    struct figure figure = figure_on_axle(
        QUANTITY_TWIN_ROOM, twin_room_m(tyre->wheel.inset_m, measures.stated.width_on_rim_max_m),
        axle, remark(BASIS_TWIN_ROOM));
    const struct judgement how = {
        .met = VERDICT_CAUTION,
        .if_met = remark(axle == AXLE_FRONT ? ADVICE_TWINS_IN_FRONT : ADVICE_TWINS_LEAST),
        .if_broken = remark(ADVICE_TWINS_TOUCH),
        .if_unknown = remark(ADVICE_TWINS_UNKNOWN),
    };
    figure.limit_owner = LIMIT_OF_PHYSICS;
    figures_add(figures, judged(limited_at_least(figure, 0), &how));
}
