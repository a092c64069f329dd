/* A setup on an axle ratio: the one that the vehicle has, or one of the axle choices. The sections
 * of the gearing part are a function each, called for every one of them. */
#ifndef TYRESUM_REPORT_GEARING_GEARED_SETUP_H
#define TYRESUM_REPORT_GEARING_GEARED_SETUP_H

#include "report/plan.h"

struct gear_range {
    enum place_range range;
    double low_ratio; /* for its place: UNKNOWN where there is one low range only */
    double ratio;
};

struct geared_setup {
    const struct plan *plan;
    const struct drivetrain *drivetrain;
    struct figures *figures;
    const struct setup *setup;
    const struct beside *beside;
    struct number_list gears; /* the two ends where the gearbox is continuously variable */
    bool variable;
    const struct gear_range *ranges; /* high first; the order of the file for the rest */
    size_t range_count;
    bool is_choice;            /* on one of the axle choices */
    double from_ratio, from_m; /* the fitted tyres on the axle as it is */
    double ratio, to_m;        /* this setup on this axle ratio */
    double hub, slip;
    double cruise_mps;
};

/* Adds it; what concerns an axle choice stands in rows only. */
void geared_add(const struct geared_setup *geared, struct figure figure);

/* On the axle choice, where it is on one. */
struct place place_on_axle(const struct geared_setup *geared);
/* The same in a gear of a range. */
struct place place_in_gear(const struct geared_setup *geared, size_t gear, size_t range);

double overall_in(const struct geared_setup *geared, size_t gear, size_t range);
/* The same with the fitted tyres on the axle as it is. */
double fitted_overall_in(const struct geared_setup *geared, size_t gear, size_t range);

/* Road speeds that are asked for; the usual ones where the file asks for none. */
struct number_list asked_road_speeds(const struct geared_setup *geared);

/* The sections. */
void report_cruising(const struct geared_setup *geared);
void report_axle_ratio(const struct geared_setup *geared);
void report_driveline(const struct geared_setup *geared);
void report_gears(const struct geared_setup *geared);
void report_steps(const struct geared_setup *geared);
void report_crawl(const struct geared_setup *geared);
void report_held(const struct geared_setup *geared);
void report_pull(const struct geared_setup *geared);
void report_grades(const struct geared_setup *geared);
void report_acceleration(const struct geared_setup *geared);

/* What all of the pull takes for granted. */
void report_pull_assumptions(const struct plan *plan, struct figures *figures);

#endif
