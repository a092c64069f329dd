/* Twin tyres: the room between them, and whether they are meant for that axle. */
#include "compute/clearance.h"
#include "compute/dimensions.h"
#include "report/judge.h"
#include "report/load/view.h"

static const char *twins_action(const struct figure *figure, int axle)
{
    if (figure->verdict == VERDICT_UNKNOWN)
        return "give wheel: width and inset: twins stand face to face";
    if (figure->verdict == VERDICT_FAIL)
        return "the twins touch: narrower tyres, or wheels of more inset";
    if (axle == AXLE_FRONT)
        return "dual: true counts for the front axle too: put it under rear where only that one "
               "has "
               "twins";
    return "the tyre maker's least distance between twins decides: under load they are wider";
}

void report_twins(const struct load_view *view, int axle, struct figures *figures)
{
    const struct tyre *tyre = &view->setup->axle[axle];
    struct tyre_measures measures;
    if (!tyre_is_dual(tyre))
        return;
    tyre_measure(tyre, &measures);
    struct figure figure = figure_of(
        QUANTITY_TWIN_ROOM, twin_room_m(tyre->wheel.inset_m, measures.stated.width_on_rim_max_m),
        "2 x inset - largest section width; a spacer is not counted");
    figure.axle = axle;
    figure = figure_at_least(figure, 0);
    if (figure.verdict == VERDICT_OK)
        figure.verdict = VERDICT_CAUTION;
    figure.action = twins_action(&figure, axle);
    figures_add(figures, figure);
}
