/* One drive that the gearing part tells of: a setup on the axle ratio that it has, or on one of
 * the axle choices. The sections of the part are a function each, called for every drive. */
#ifndef TYRESUM_REPORT_GEARING_VIEW_H
#define TYRESUM_REPORT_GEARING_VIEW_H

#include "report/plan.h"

struct range {
    const char *name; /* "" where there is one range only */
    double ratio;
};

struct drive_view {
    const struct plan *plan;
    const struct drivetrain *drivetrain;
    struct figures *figures;
    const struct setup *setup;
    const struct beside *beside;
    struct number_list gears; /* the two ends where the gearbox is continuously variable */
    bool variable;
    const struct range *ranges; /* high first; the order of the file for the rest */
    size_t range_count;
    bool is_choice;            /* on one of the axle choices */
    const char *prefix;        /* "axle 4.10, " there, "" otherwise: at the head of `at` */
    double from_ratio, from_m; /* the fitted tyres on the axle as it is */
    double ratio, to_m;        /* this drive */
    double hub, slip;
    double cruise_mps;
};

/* Adds it; what concerns an axle choice stands in rows only. */
void drive_add(const struct drive_view *view, struct figure figure);

/* "gear 3", or the end of the range of a continuously variable gearbox. */
const char *gear_name(const struct drive_view *view, size_t gear);
/* The same with axle choice and range: "axle 4.10, gear 3 high". */
const char *gear_text(const struct drive_view *view, size_t gear, size_t range);
const char *road_speed_text(const struct drive_view *view, double speed_mps);
const char *rotation_text(const struct drive_view *view, double engine_speed_per_s);
/* Two decimals, or three where it has them. */
const char *ratio_text(struct arena *arena, double ratio);

double overall_in(const struct drive_view *view, size_t gear, size_t range);
/* The same in the fitted drive. */
double fitted_overall_in(const struct drive_view *view, size_t gear, size_t range);

/* Road speeds that are asked for; the usual ones where the file asks for none. */
struct number_list asked_road_speeds(const struct drive_view *view);

/* The sections. */
void report_cruising(const struct drive_view *view);
void report_axle_ratio(const struct drive_view *view);
void report_driveline(const struct drive_view *view);
void report_gears(const struct drive_view *view);
void report_steps(const struct drive_view *view);
void report_crawl(const struct drive_view *view);
void report_held(const struct drive_view *view);
void report_pull(const struct drive_view *view);
void report_grades(const struct drive_view *view);
void report_acceleration(const struct drive_view *view);

/* Adds what the pull takes for granted, `add` once for each sentence. */
void report_pull_assumptions(const struct plan *plan,
                             void (*add)(struct figures *figures, const char *text),
                             struct figures *figures);

#endif
