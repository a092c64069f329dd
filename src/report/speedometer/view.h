/* What the files of the speedometer's part share: the instrument, and each setup's view of it. */
#ifndef TYRESUM_REPORT_SPEEDOMETER_VIEW_H
#define TYRESUM_REPORT_SPEEDOMETER_VIEW_H

#include "compute/least_squares.h"
#include "compute/speedometer.h"
#include "compute/speedometer_law.h"
#include "report/plan.h"

/* Everything about the instrument that holds for all setups. */
struct gauge {
    const struct plan *plan;
    const struct instrument *instrument;
    struct figures *figures;
    bool mph;
    const struct speedometer_rules_row *rule; /* NULL: none named */
    enum axle axle;                           /* whose tyre turns it */
    double top_mps;
    bool top_assumed;
    double at_mps; /* the round speed at which an error is told */

    struct pair_list readings; /* both kinds in one list; first is shown, second is true */
    struct calibration by_scale, by_line;
    bool line_possible;                    /* by_line is filled */
    const struct calibration *calibration; /* the one taken; NULL without readings */
    struct setup measured;                 /* the setup that the error was measured on */

    struct instrument_line line; /* with the fitted tyre, as it is now */
    bool line_known;             /* and not taken to be true */
    double odometer_scale;       /* shown per true with the fitted tyre */
    bool odometer_known;
};

/* What the setting can do for one setup. */
struct setting_answer {
    bool asked; /* there is a setting, with its number now */
    double target_scale, exact;
    double lawful_low, lawful_high; /* settings, without regard to the grid */
    double nearest;                 /* to enter; UNKNOWN where none is lawful */
    bool nominal_alone;             /* no setting is lawful with every circumference */
    double smallest;                /* the lawful one nearest to what is set now */
};

/* One setup's view of it. */
struct gauge_view {
    const struct setup *setup;
    double from_m, to_m; /* rolling circumference, fitted and this setup's */
    double diameter_m;
    struct instrument_line line; /* as set now */
    struct spread spread;
    bool measured; /* the error was measured on this setup */
    struct setting_answer answer;
    struct instrument_line line_set; /* with the setting entered, where answer.nearest is known */
};

/* speedometer_view.c: figures and texts. */
struct figure gauge_figure(const struct gauge *gauge, enum quantity_id quantity, double value,
                           const char *basis);
enum unit_id gauge_unit(const struct gauge *gauge);
const char *speed_text(const struct gauge *gauge, double speed_mps); /* "100 km/h" */
void gauge_assume(const struct gauge *gauge, const char *text);

/* speedometer_view.c: the instrument, and a setup's view of it. */
void gauge_set(const struct plan *plan, struct figures *figures, struct gauge *gauge);
void gauge_view_set(const struct gauge *gauge, size_t index, struct gauge_view *view);

/* setting.c */
void setting_answer_set(const struct gauge *gauge, struct gauge_view *view);
int setting_decimals(double setting);
/* Why the setting given as the one now may be of another kind; NULL where it is near the tyre's
 * own, or no tyre has such a number. */
const char *setting_doubt(const struct gauge *gauge, const struct gauge_view *view);
void report_setting(const struct gauge *gauge, const struct gauge_view *view);

/* answer.c */
void report_answer(const struct gauge *gauge, const struct gauge_view *view);

/* sensor.c */
double sensor_error(const struct gauge *gauge, double fitted_circumference_m);
void report_sensor(const struct gauge *gauge, const struct gauge_view *view);

/* prediction.c */
void report_prediction(const struct gauge *gauge, const struct gauge_view *view);
struct spread circumference_spread(const struct gauge *gauge, const struct setup *setup,
                                   bool measured);
void report_wheel_speed_systems(const struct gauge *gauge, const struct gauge_view *view,
                                size_t index);

/* readings.c */
void calibrate(struct gauge *gauge);
/* Whether the readings tell of an error so large that they may be misread. */
bool readings_are_far_off(const struct gauge *gauge);
/* Whether the readings leave it open that the line which fits them is lawful. */
bool readings_leave_law_open(const struct gauge *gauge);
void report_readings(const struct gauge *gauge);
void report_readings_judged(const struct gauge *gauge, const struct gauge_view *view);

/* law.c */
void report_law(const struct gauge *gauge, const struct gauge_view *view);

/* speed_table.c */
void report_speed_table(const struct gauge *gauge, const struct gauge_view *view);

/* odometer.c */
void report_odometer(const struct gauge *gauge, const struct gauge_view *view);

#endif
