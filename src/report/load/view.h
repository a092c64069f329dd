/* Shared by the files of the load report: one setup with the pressures of its axles. */
#ifndef TYRESUM_REPORT_LOAD_VIEW_H
#define TYRESUM_REPORT_LOAD_VIEW_H

#include "compute/load.h"
#include "compute/ratings.h"
#include "report/plan.h"

struct load_view {
    const struct plan *plan;
    const struct setup *setup;
    struct axle_pressures axle[AXLE_COUNT];
};

/* "240 kPa" or "35 psi", in the unit that the plan puts first. */
const char *pressure_text(const struct plan *plan, double pressure_Pa);

/* True where both axles have the same tyres: what a tyre carries is then told once. */
bool axles_alike(const struct load_view *view);

/* Axle loads in every state, what is left of the ratings, and the largest items to come. */
void report_ratings(const struct load_view *view, struct figures *figures);

/* Capacity and pressure of one axle's tyres. */
void report_pressure(const struct load_view *view, int axle, struct figures *figures);

/* twins.c: of an axle with twins. */
void report_twins(const struct load_view *view, int axle, struct figures *figures);

/* Load at every pressure from floor to ceiling, of all setups. */
void report_pressure_tables(const struct load_view *views, size_t count, struct figures *figures);

/* What the pressure-loss warning becomes. */
void report_pressure_warning(const struct load_view *view, int axle, struct figures *figures);

/* What was taken where the file is silent. */
void report_load_assumptions(const struct load_view *view, struct figures *figures);

/* Running at low pressure, where the file says `off_road`. */
void report_off_road(const struct load_view *view, struct figures *figures);

#endif
