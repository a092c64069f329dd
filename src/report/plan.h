/* What a command works on: the specification with its setups resolved, and the choices of the
 * command line that change results (units for pressure pairs, one option only). */
#ifndef TYRESUM_REPORT_PLAN_H
#define TYRESUM_REPORT_PLAN_H

#include "base/arena.h"
#include "compute/capacity.h"
#include "compute/dimensions.h"
#include "compute/fitment.h"
#include "compute/load.h"
#include "report/figures.h"
#include "build/specification.h"

/* A setup beside the fitted one, axle by axle, by the same rule for both. */
struct beside {
    struct tyre_dimensions before[AXLE_COUNT], after[AXLE_COUNT];
    bool mixed[AXLE_COUNT];
};

struct plan {
    struct arena *arena;
    const struct specification *specification;
    bool us; /* us units first: pressure pairs and round speeds follow */
    struct setup fitted;
    struct setup *setups;  /* [0] is fitted, then the options chosen */
    struct beside *beside; /* one a setup */
    size_t count;
    const struct spring_choice *tried[AXLE_COUNT]; /* on which it stands; NULL: on its own spring */
};

/* Fills `fitted` and `beside` from setups that are already resolved, the fitted one first. */
void plan_set_beside(struct plan *plan);

/* Resolves all options, or the one that is named or meant by its letter: a name goes before.
 * False where there is none. */
bool plan_make(struct arena *arena, const struct specification *specification, bool us,
               const char *option_name, struct plan *out);

/* Puts a spring under an axle, NULL: none, and more height above what the springs give; `with_it`
 * is the plan's own specification, to be changed. */
void plan_try_spring(struct plan *plan, struct specification *with_it, int axle,
                     const struct spring_choice *choice, double more_m);

/* The figures of one setup, in order. */
struct setup_figures {
    const struct figure **items;
    size_t count;
};

/* One a setup of the plan, so that no later step looks through all figures. What concerns the
 * instrument or the file stands under the fitted setup; what of the file every setup hangs on
 * (POLICY_OF_FILE) is in the group of each. */
struct setup_figures *plan_group_figures(const struct plan *plan, const struct figures *figures);

enum pressure_system plan_pressure_system(const struct plan *plan);

/* The axle whose tyre turns the speedometer: the driven one (front where only it is driven). */
enum axle plan_driven_axle(const struct plan *plan);

/* The circumference that the drive turns with, by the ratios of both axles; and those of the file,
 * 1 where it has none: what comes of them then is a factor. */
double plan_circumference_m(const struct plan *plan, struct axle_pair ratio,
                            const struct tyre_dimensions figures[AXLE_COUNT]);
struct axle_pair plan_axle_ratio(const struct plan *plan);

/* The name of a loading state by its number; NULL for STATE_NONE. */
const char *plan_state_name(const struct plan *plan, int state);

/* Whether the rear tyre is another than the front one; and whether a row of each axle is shown,
 * since it is so before or after. */
bool setup_axles_differ(const struct setup *setup);
bool plan_shows_both_axles(const struct plan *plan, size_t index);

/* Whether both axles are driven, so that tyres of two circumferences strain the driveline. */
bool plan_drives_all_wheels(const struct plan *plan);

/* Whether the instrument's dial is in mph: as the file says, otherwise by the units asked for. */
bool plan_instrument_is_mph(const struct plan *plan);

/* Each part adds its figures and findings. */
void report_tyre(const struct plan *plan, struct figures *figures);
void report_clearance(const struct plan *plan, struct figures *figures);

/* What figures of the clearance part hang on beside tyre and wheel, so that many springs are tried
 * without the rest: nothing, an axle's own spring and height, or those of both axles; the angles,
 * which do too, and on which no outcome hangs. */
enum clearance_piece {
    CLEARANCE_OF_TYRE = 1 << 0,
    CLEARANCE_OF_FRONT = 1 << 1,
    CLEARANCE_OF_REAR = 1 << 2,
    CLEARANCE_OF_BOTH = 1 << 3,
    CLEARANCE_ANGLES = 1 << 4,
    CLEARANCE_WHOLE = (1 << 5) - 1
};
/* How a plan's setups stand in every loading state, with what has been found of the fitted one, or
 * NULL; and how the others stand on the springs that the plan's specification has come to have. */
struct standing *standing_make(const struct plan *plan, const struct standing *fitted);
void standing_set_springs(struct standing *standing);
void report_clearance_pieces(const struct standing *standing, unsigned pieces,
                             struct figures *figures);
void report_load(const struct plan *plan, struct figures *figures);
/* Up to which load of each axle's tyres all that bears it does: tyre, wheel, spare. */
void setup_bearing(const struct plan *plan, const struct setup *setup,
                   struct bearing out[AXLE_COUNT]);
void report_speedometer(const struct plan *plan, struct figures *figures);
/* True speed, in the instrument's own unit, when it shows 100 as set now: one a setup of the plan.
 */
void report_true_at_100(const struct plan *plan, double *true_speeds);
/* Whether nothing tells of the speedometer's error, and it is taken to read true. */
bool report_takes_true(const struct plan *plan);
/* The speedometer's judged figures alone, for commands that try many tyres. */
void report_speedometer_verdicts(const struct plan *plan, struct figures *figures);
void report_gearing(const struct plan *plan, struct figures *figures);

/* All parts, in their order: what an outcome rests on. */
void report_every_part(const struct plan *plan, struct figures *figures);

/* Limits on a setup's size: diameter, load index, speed symbol. Findings of the clearance part. */
void report_size_limits(const struct plan *plan, size_t index, struct figures *figures);

/* A part that lacks a key: one unknown finding that names it. */
void report_missing_part(struct figures *figures, enum part part, const char *key);

#endif
