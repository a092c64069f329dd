/* The dip of the headlamps in every loading state, and the one to aim them to. */
#include "base/known.h"
#include "compute/clearance.h"
#include "report/clearance/stance.h"
#include "report/judge.h"
#include "tables/lookup.h"

/* Lamps are aimed on the unladen vehicle; each state pitches it from there. */
struct aiming {
    const struct headlamp_dip_row *row; /* NULL: the lamp's height is not known */
    double set;                         /* the dip that it is handed over with, unladen */
    double low, high;                   /* what unladen keeps every state within the row */
    bool named;                         /* the option says what they are aimed to */
};

static double wheelbase_m(const struct stance *stance)
{
    return stance->plan->specification->vehicle.wheelbase_m;
}

/* By tyre and lift alone, as it stands in the workshop. */
static double change_unladen_m(const struct stance *stance, int axle)
{
    return radius_change_m(stance->plan, stance->index, axle) + stance->lift_m[axle];
}

static double rise_unladen(const struct stance *stance)
{
    return beam_rise((struct axle_pair){change_unladen_m(stance, AXLE_FRONT),
                                        change_unladen_m(stance, AXLE_REAR)},
                     wheelbase_m(stance));
}

static double rise_by_load(const struct stance *stance)
{
    return beam_rise(stance->body_change_m, wheelbase_m(stance)) - rise_unladen(stance);
}

/* The rule goes by the lamp's height on the unladen vehicle. */
static void find_aiming(const struct stance *stances, size_t count, struct aiming *out)
{
    const struct headlamp *lamp = &stances->plan->specification->clearance.headlamp;
    const struct as_set *as_set = stances->setup->as_set;
    double named = as_set == NULL ? UNKNOWN : as_set->headlamp_dip;
    *out = (struct aiming){
        .row = headlamp_dip_for(lamp->height_m + change_unladen_m(stances, AXLE_FRONT)),
        .set = known_or(named, lamp->dip - rise_unladen(stances)),
        .low = -INFINITY,
        .high = INFINITY,
        .named = known(named)};
    for (size_t i = 0; out->row != NULL && i < count; i++) {
        double rise = rise_by_load(&stances[i]), low = out->row->dip_min_percent / 100 + rise;
        double high = out->row->dip_max_percent / 100 + rise;
        out->low = out->low < low || !known(low) ? low : out->low; /* unknown once is so for good */
        out->high = out->high > high || !known(high) ? high : out->high;
    }
}

/* The beam swings by more than the law allows from state to state. */
static bool no_aim_suits(const struct aiming *aiming)
{
    return clearly_above(aiming->low, aiming->high);
}

/* What meets every state, nearest to what the lamps had before; to a tenth of a per cent, which
 * equipment shows, where that lies between. UNKNOWN: none does, or a state is not known. */
static double dip_to_set(const struct aiming *aiming, double before)
{
    static const double tenth = 1e-3;
    double exact = fmin(fmax(before, aiming->low), aiming->high);
    double shown = floor(exact / tenth + 0.5) * tenth;
    if (!known(aiming->low) || !known(aiming->high) || no_aim_suits(aiming))
        return UNKNOWN;
    if (shown < aiming->low)
        shown += tenth;
    if (shown > aiming->high)
        shown -= tenth;
    return shown >= aiming->low ? shown : exact;
}

static void report_state(const struct stance *stance, const struct aiming *aiming, double then,
                         struct figures *figures)
{
    const struct headlamp_dip_row *row = aiming->row;
    struct figure dip =
        stance_figure(stance, QUANTITY_HEADLAMP_DIP, aiming->set - rise_by_load(stance), BASIS_DIP);
    struct need needs[1 + STANCE_NEEDS] = {{row != NULL, remark(ADVICE_GIVE_LAMP_HEIGHT)}};
    stance_needs(stance, needs + 1);
    dip.limit_owner = LIMIT_OF_LAW;
    if (row != NULL)
        dip = limited_within(dip, row->dip_min_percent / 100, row->dip_max_percent / 100);
    enum remark_id broken = no_aim_suits(aiming)              ? ADVICE_NO_AIM
                            : dip.limit_side == LIMIT_AT_MOST ? ADVICE_BEAM_TOO_LOW
                                                              : ADVICE_BEAM_DAZZLES;
    const struct judgement how = {.needs = needs,
                                  .need_count = 1 + STANCE_NEEDS,
                                  .cure = {.task = known(then) ? TASK_HEADLAMP_AIM : TASK_NONE,
                                           .now = aiming->set,
                                           .then = then},
                                  .if_broken = remark(broken)};
    figures_add(figures, judged(dip, &how));
}

void report_headlamp(const struct stance *stances, size_t count, struct figures *figures)
{
    double before = stances->plan->specification->clearance.headlamp.dip;
    struct aiming aiming;
    find_aiming(stances, count, &aiming);
    if (!known(before) && !aiming.named)
        return;
    double then = dip_to_set(&aiming, known_or(before, aiming.set));
    for (size_t i = 0; i < count; i++)
        report_state(&stances[i], &aiming, then, figures);
}
