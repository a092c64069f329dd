/* What the sections on pull, grade, speed held and acceleration share: the vehicle of a state on
 * the tyres of a drive, as compute/pull.h takes it. */
#ifndef TYRESUM_REPORT_GEARING_PULLERS_H
#define TYRESUM_REPORT_GEARING_PULLERS_H

#include "compute/pull.h"
#include "report/gearing/geared_setup.h"

const struct engine *pull_engine(const struct geared_setup *geared);
bool pull_has_curve(const struct geared_setup *geared);
double pull_efficiency(const struct geared_setup *geared);

/* All that is pulled in a state: the vehicle on a setup's tyres, and its trailer. */
struct puller pull_of_setup(const struct geared_setup *geared, const struct state *state,
                            const struct setup *setup, double circumference_m);
struct puller pull_in_state(const struct geared_setup *geared, const struct state *state);

/* Whether the file gives a weight; and the index of the state that weighs most. */
bool pull_weight_known(const struct geared_setup *geared);
size_t pull_heaviest_state(const struct geared_setup *geared);

/* Calls report for every state whose pull is told, with a figure of that state to fill up; of an
 * axle choice only the heaviest. Nothing without a torque curve or a weight. */
void pull_each_state(const struct geared_setup *geared, enum quantity_id quantity,
                     void (*report)(const struct geared_setup *geared, const struct puller *puller,
                                    struct figure figure, bool heaviest));

/* Tractive force at an engine speed; and the engine speed of most torque below the limit. */
double pull_force_N(const struct puller *puller, double engine_speed_per_s, double overall);
double pull_peak_per_s(const struct geared_setup *geared);

#endif
