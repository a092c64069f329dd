/* What the files of the speedometer's part share: the instrument, and what it shows on each
 * setup. */
#ifndef TYRESUM_REPORT_SPEEDOMETER_GAUGE_H
#define TYRESUM_REPORT_SPEEDOMETER_GAUGE_H

#include "output/number.h"
#include "compute/least_squares.h"
#include "compute/speedometer.h"
#include "compute/speedometer_law.h"
#include "report/judge.h"
#include "report/plan.h"

/* Where the instrument's line comes from. */
enum line_source {
    LINE_TAKEN_TRUE, /* nothing tells otherwise */
    LINE_OF_READINGS,
    LINE_OF_ERROR,    /* that the file gives */
    LINE_OF_ODOMETER, /* taken to be off alike */
    LINE_OF_SENSOR,   /* predicted by counts, on the nominal circumference */
    LINE_NEW          /* a new instrument without a setting now: told as it is to be set */
};

enum { SETTING_DECIMALS = 3 }; /* at most */

/* Everything about the instrument that holds for all setups. */
struct gauge {
    const struct plan *plan;
    const struct instrument *instrument;
    struct figures *figures;
    bool mph;
    struct law law;
    enum axle axle; /* whose tyre turns it */
    bool top_assumed;
    double at_mps; /* the round speed at which an error is told */

    struct pair_list readings; /* both kinds in one list; first is shown, second is true */
    struct calibration by_scale, by_line;
    bool line_possible;                    /* by_line is filled */
    const struct calibration *calibration; /* the one taken; NULL without readings */
    struct setup measured;                 /* the setup that the error was measured on */

    struct instrument_line line; /* with the fitted tyre, as it is now, or as `now` would make it */
    enum line_source source;
    double now; /* the setting; of a new instrument, what would read true on the fitted tyre */
    double odometer_scale; /* shown per true with the fitted tyre */
    bool odometer_known;
};

struct aim_taken {
    enum { AIM_IS_OVER_READ, AIM_IS_AS_BEFORE, AIM_IS_LOWEST_LAWFUL, AIM_IS_ZERO } kind;
    bool named; /* in the file */
};

/* What a setting stays lawful with, beside the nominal circumference. */
enum setting_margin {
    MARGIN_ALL,     /* every circumference of the spread, and the readings' 95 % */
    MARGIN_OF_TYRE, /* every circumference */
    MARGIN_NONE
};

/* What the setting can do for one setup. */
struct setting_answer {
    bool asked; /* there is a setting */
    enum setting_margin margin;
    bool with_odometer; /* the lawful ones are so for the odometer too */
    double target_scale, exact;
    double lawful_low, lawful_high; /* settings, without regard to the grid */
    double nearest;                 /* to enter; UNKNOWN where none is lawful */
    bool left;                      /* it is the one now */
    bool due;                       /* entering it is work that must be done */
    double smallest;                /* the lawful one nearest to what is set now */
    double below, above;            /* possible ones on either side of the exact one */
};

/* What it shows on one setup. */
struct dial {
    const struct setup *setup;
    double from_m, to_m; /* rolling circumference, fitted and this setup's */
    double diameter_m;
    double set;  /* what it is handed over with: as the option says, otherwise the setting now */
    bool is_new; /* nothing is set yet */
    struct instrument_line line; /* as it is set; of a new instrument, as entered */
    struct spread spread;
    bool measured; /* the error was measured on this setup */
    struct setting_answer answer;
    struct instrument_line line_set; /* with the setting entered, where answer.nearest is known */
};

/* readings_tyre.c: why the readings may be another tyre's; REMARK_NONE where they need not be. */
struct remark readings_elsewhere(const struct gauge *gauge);

/* gauge.c: figures, places and what is said. */
enum unit_id gauge_unit(const struct gauge *gauge);
struct figure gauge_figure(const struct gauge *gauge, enum quantity_id quantity, double value,
                           struct remark basis);
/* The same at a road speed, "true 100 km/h". */
struct figure gauge_figure_at(const struct gauge *gauge, enum quantity_id quantity, double value,
                              struct remark basis, enum place_speed as, double speed_mps);
struct argument say_dial_speed(const struct gauge *gauge, double speed_mps); /* "100 km/h" */
struct argument say_setting(double setting);
struct remark law_basis(const struct gauge *gauge); /* there must be a rule */
/* Whether a line is lawful with every circumference of the spread, and with the band of the
 * readings where `doubt` is given; false where either is unknown. */
bool keeps_lawful(const struct gauge *gauge, struct instrument_line line, struct spread spread,
                  const struct calibration *doubt);
/* An error at a true speed, with the bound of the law there, where it asks one. */
struct figure limited_by_law(struct figure figure, const struct lawful_check *check,
                             double true_mps);
/* A remark whose gap says to which side it is off. */
struct remark off_law(const struct gauge *gauge, enum remark_id id,
                      const struct lawful_check *check);
void gauge_assume(const struct gauge *gauge, enum remark_id taken);

/* gauge.c: the instrument, and what it shows on a setup. */
void gauge_set(const struct plan *plan, struct figures *figures, struct gauge *gauge);
void dial_set(const struct gauge *gauge, size_t index, struct dial *dial);

/* Whether a tyre was on the vehicle when the error was found, so that it is that very tyre's. */
bool measured_on_a_tyre(const struct gauge *gauge);
/* What the setting to enter hangs on: the first of it that is missing, or nothing. */
struct need dial_missing(const struct gauge *gauge, const struct dial *dial);

/* setting.c */
struct aim_taken aim_taken(const struct gauge *gauge);
void setting_answer_set(const struct gauge *gauge, struct dial *dial);
struct instrument_line line_with_setting(const struct gauge *gauge, const struct dial *dial,
                                         double setting);
double setting_of_tyre(int setting_kind, double circumference_m);
/* Whether there is a rule, and the line keeps to it. */
bool is_lawful(const struct gauge *gauge, struct instrument_line line);
/* Entering the setting, where it must be done and that meets what is judged. */
struct cure cure_by_setting(const struct dial *dial, bool meets);

/* setting_figures.c */
/* Why the setting given as the one now may be of another kind; REMARK_NONE where it is near the
 * tyre's own, or no tyre has such a number. */
struct remark setting_doubt(const struct gauge *gauge, const struct dial *dial);
struct remark aim_remark(const struct gauge *gauge);
/* The error at the round speed with a setting. */
double error_with(const struct gauge *gauge, const struct dial *dial, double setting);
/* Whether the settings on either side of the exact one are far apart. */
bool setting_is_coarse(const struct gauge *gauge, const struct dial *dial);
void report_setting(const struct gauge *gauge, const struct dial *dial);

/* answer.c */
void report_answer(const struct gauge *gauge, const struct dial *dial);

/* sensor.c */
double sensor_error(const struct gauge *gauge, double fitted_circumference_m);
/* The setting that reads true on the fitted tyre; UNKNOWN where nothing tells it. */
double setting_that_reads_true(const struct gauge *gauge, double fitted_circumference_m);
struct remark sensor_advice(const struct gauge *gauge);
void report_sensor(const struct gauge *gauge, const struct dial *dial);

/* prediction.c */
void report_prediction(const struct gauge *gauge, const struct dial *dial);
/* UNKNOWN where the wear of the tyre that was measured is. */
struct spread circumference_spread(const struct gauge *gauge, const struct setup *setup,
                                   bool measured);
/* What to give where the wear of the tyre that was measured is unknown. */
struct remark measured_wear_advice(const struct gauge *gauge);
void report_wheel_speed_systems(const struct gauge *gauge, const struct dial *dial, size_t index);

/* readings.c */
void calibrate(struct gauge *gauge);
/* Whether the readings tell of an error so large that they may be misread. */
bool readings_are_far_off(const struct gauge *gauge);
/* Whether the readings leave it open that the line which fits them is lawful. */
bool readings_leave_law_open(const struct gauge *gauge);
void report_readings(const struct gauge *gauge);
void report_readings_judged(const struct gauge *gauge, const struct dial *dial);

/* law.c */
void report_law(const struct gauge *gauge, const struct dial *dial);

/* speed_table.c */
void report_speed_table(const struct gauge *gauge, const struct dial *dial);

/* odometer.c */
/* Whether it keeps to its rule with a setting; ANSWER_NOT_ASKED where none is named. */
enum answer odometer_is_lawful(const struct gauge *gauge, const struct dial *dial, double setting);
/* Scales of the speedometer at which the odometer, which counts the same turns, keeps to its rule;
 * all of them where none is named. */
struct scale_range odometer_scales(const struct gauge *gauge);
void report_odometer(const struct gauge *gauge, const struct dial *dial);

#endif
