/* Front beside rear, and what the sums of this part do not cover. */
#include "base/known.h"
#include "report/load/loaded_setup.h"

/* Margins front and rear; far apart, the axle with less is the one that goes first. It matters
 * where that one has little left. */
void report_margins(const struct loaded_setup *loaded, struct figures *figures)
{
    static const double far_apart = 0.25, little = 0.10;
    double told[AXLE_COUNT], least[AXLE_COUNT]; /* verdicts hang on no unit of what is told */
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct axle_pressures *each = &loaded->axle[axle];
        told[axle] = each->capacity_at_recommended_kg / each->load_built_kg - 1;
        least[axle] = each->capacity_least_told_kg / each->load_built_kg - 1;
    }
    struct figure figure =
        figure_on_axle(QUANTITY_MARGIN_DIFFERENCE, told[AXLE_FRONT] - told[AXLE_REAR], AXLE_NONE,
                       remark(BASIS_MARGINS));
    if (!known(figure.value))
        return; /* the pressures say what is missing */
    bool uneven = clearly_above(fabs(least[AXLE_FRONT] - least[AXLE_REAR]), far_apart) &&
                  fmin(least[AXLE_FRONT], least[AXLE_REAR]) < little;
    const struct judgement how = {
        .holds = answer_of(true, !uneven),
        .broken = VERDICT_CAUTION,
        .if_broken = remark(figure.value > 0 ? ADVICE_REAR_HAS_LESS : ADVICE_FRONT_HAS_LESS),
    };
    figures_add(figures, judged(figure, &how));
}

static void add_not_covered(const char *what, const struct judgement *how, struct figures *figures)
{
    struct figure figure =
        figure_on_axle(QUANTITY_NOT_COVERED, UNKNOWN, AXLE_NONE, remark(BASIS_NOT_COVERED));
    figure.place.name = what;
    figures_add(figures, judged(figure, how));
}

/* Pressures of the placard balance the axles; another ratio of front to rear is not known. */
static void report_handling(const struct loaded_setup *loaded, struct figures *figures)
{
    static const double same_ratio = 0.10;
    const struct axle_pressures *front = &loaded->axle[AXLE_FRONT],
                                *rear = &loaded->axle[AXLE_REAR];
    double change =
        (front->least_told_Pa / rear->least_told_Pa) / (front->placard_Pa / rear->placard_Pa) - 1;
    bool both = isfinite(front->least_told_Pa) && isfinite(rear->least_told_Pa);
    if (both && clearly_above(fabs(change), same_ratio)) /* false where a placard is not known */
        add_not_covered("handling", &(struct judgement){.if_unknown = remark(ADVICE_HANDLING)},
                        figures);
}

void report_not_covered(const struct loaded_setup *loaded, struct figures *figures)
{
    const struct carried_list *carried = &loaded->plan->specification->carried;
    bool trailer = false;
    for (size_t i = 0; i < carried->count; i++)
        trailer = trailer || known(carried->items[i].tow_ball_kg) ||
                  known(carried->items[i].trailer_mass_kg);
    report_handling(loaded, figures);
    if (trailer)
        add_not_covered("trailer dynamics", &(struct judgement){.if_met = remark(ADVICE_TRAILER)},
                        figures);
    add_not_covered("moving loads", &(struct judgement){.if_met = remark(ADVICE_MOVING_LOADS)},
                    figures);
}
