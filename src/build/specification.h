/* What a build file says, in SI. A value that was not given is UNKNOWN, a text NULL, a choice
 * CHOICE_NONE, a list empty, what it is `given` by NULL. Nothing here is computed or assumed. */
#ifndef TYRESUM_BUILD_SPECIFICATION_H
#define TYRESUM_BUILD_SPECIFICATION_H

#include <stdbool.h>
#include <stddef.h>

#include "base/known.h"
#include "base/units.h"
#include "build/given.h"
#include "size/designation.h"

enum { CHOICE_NONE = -1 };

enum vehicle_kind { VEHICLE_PASSENGER_CAR, VEHICLE_LIGHT_TRUCK };
enum drive { DRIVE_FRONT, DRIVE_REAR, DRIVE_PART_TIME_4WD, DRIVE_FULL_TIME_4WD };
enum speed_unit { SPEED_KMH, SPEED_MPH };
enum steering_touches { TOUCHES_TREAD, TOUCHES_SIDEWALL };
enum steering_meets { MEETS_ARCH, MEETS_FRAME, MEETS_UNKNOWN };
enum aim { AIM_LOWEST_LAWFUL, AIM_AS_BEFORE };
enum setting_kind {
    SETTING_PULSES_PER_KM,
    SETTING_PULSES_PER_MILE,
    SETTING_REVS_PER_KM,
    SETTING_REVS_PER_MILE,
    SETTING_CIRCUMFERENCE_MM,
    SETTING_DRIVEN_GEAR_TEETH,
    SETTING_CONSTANT_K /* of recording equipment, counts per km */
};
enum sensor_place { SENSOR_ON_WHEEL, SENSOR_ON_SHAFT, SENSOR_ON_CABLE };
enum fit_kind { FIT_SCALE, FIT_SCALE_AND_OFFSET };
enum { SEAT_ROWS = 4 };

/* Lists as the walker fills them: items of the size that the key table names. */
struct number_list {
    double *items;
    size_t count;
};
struct value_pair {
    double first, second;
    enum unit_id first_unit, second_unit; /* that they are written in */
    struct mark mark;
};
struct pair_list {
    struct value_pair *items;
    size_t count;
};
struct value_triple {
    double first, second, third;
    struct mark mark;
};
struct triple_list {
    struct value_triple *items;
    size_t count;
};
struct mapping_list { /* of any kind of mapping */
    void *items;
    size_t count;
};
struct text_list {
    const char **items;
    struct mark *marks;
    size_t count;
};

/* A value that is one of two kinds of quantity, such as a length or a percentage. */
struct bound {
    double value;
    enum unit_kind kind;
};
struct window {
    const struct given *given;
    struct bound min, max;
};
struct choice_or_value {
    int choice;
    double value;
};

struct data_book {
    const struct given *given;
    double overall_diameter_m, section_width_m;
    double revs_per_mile, revs_per_km; /* as given: bare counts */
    double static_loaded_radius_m;
    double max_load_kg, at_pressure_Pa, max_load_dual_kg;
    double max_pressure_Pa; /* the highest that is moulded */
    double rim_min_m, rim_max_m;
};

/* How a wheel sits on its hub and round its brake. */
struct mounting {
    const struct given *given;
    double hub_bore_m, bolts, bolt_circle_m, brake_room_m;
};

struct wheel {
    const struct given *given;
    double width_m, inset_m, spacer_m;
    double max_load_kg, max_pressure_Pa;
    struct mounting mounting;
};

/* A spare without air. */
struct deflated {
    const struct given *given;
    double diameter_m, width_m;
};

/* One tyre with its wheel, on one axle or on both. */
struct tyre {
    const struct given *given;
    struct designation size; /* meaningful where size_given */
    bool size_given;
    const char *taken; /* what was added to the size as written, or passed over; NULL: nothing */
    char load_range;   /* 0 where not given */
    struct wheel wheel;
    struct data_book data_book;
    double mass_kg, tread_depth_m, new_tread_depth_m, snow_chains_m;
    double inertia_kg_m2;     /* of tyre and wheel about the axle */
    int dual;                 /* 1, 0 or CHOICE_NONE */
    struct deflated deflated; /* of a spare: */
    int rotated;              /* 1: takes its turn on the axles */
};

/* What an option is handed over with. */
struct as_set {
    const struct given *given;
    struct axle_pair pressure_Pa;
    double setting, pressure_warning_Pa, headlamp_dip;
    int speed_label; /* 1, 0 or CHOICE_NONE */
};

/* What is on the vehicle, or an option for it. `rear` only where it differs. */
struct fitment {
    struct tyre tyre; /* first: it is given by this mapping */
    const char *name;
    struct tyre rear, spare;
    struct axle_pair placard_Pa;
    struct as_set as_set; /* of an option */
};
struct fitment_list {
    struct fitment *items;
    size_t count;
};

struct tyres {
    const struct given *given;
    struct fitment fitted;
    struct tyre spare;
    struct fitment_list options;
};

struct ratings {
    const struct given *given;
    double front_kg, rear_kg, gross_kg, roof_kg, tow_ball_kg, combination_kg;
};
struct seats {
    const struct given *given;
    double row_m[SEAT_ROWS];
};
struct drag {
    const struct given *given;
    double coefficient, area_m2, air_density_kg_m3;
};

struct vehicle {
    const struct given *given;
    const char *name;
    double wheelbase_m;
    struct axle_pair unladen_kg;
    struct text_list includes;
    struct ratings ratings;
    struct seats seats;
    const char *category; /* of the national rules that limit */
    int frame;            /* fit for heavy off-road use: 1, 0 or CHOICE_NONE */
    int kind, drive;
    double top_speed_mps;
    struct axle_pair track_m;
    struct axle_pair pressure_warning_Pa;
    struct drag drag;
};

struct transfer {
    const struct given *given;
    double high;
    struct number_list low; /* one, or several reduced ranges */
};
/* A continuously variable gearbox: the ends of its range. */
struct variable_ratio {
    const struct given *given;
    double lowest_gear, highest_gear;
};
struct engine {
    const struct given *given;
    double idle_per_s, limit_per_s;
    struct pair_list torque; /* 1/s, N m */
};

struct drivetrain {
    const struct given *given;
    struct number_list gears;
    struct variable_ratio variable;
    double reverse;
    struct transfer transfer;
    double hub_reduction;
    struct axle_pair axle;
    struct number_list axle_choices;
    double efficiency, slip;
    struct engine engine;
    double grip, rolling_resistance;
    double cruising_speed_mps;
    struct number_list road_speeds_mps, engine_speeds_per_s, grades;
};

struct setting {
    const struct given *given;
    int kind;
    double now, step, min, max;
    struct number_list choices;
    double driving_gear_teeth;
};

/* Where the instrument's counts come from. */
struct sensor {
    const struct given *given;
    int on;
    double pulses_per_turn;
    double turns_per_km;               /* of a cable: as given, a bare count */
    double characteristic_coefficient; /* measured w, counts per km: as given */
};

struct odometer {
    const struct given *given;
    struct pair_list readings; /* shown, true in m */
    const char *rule;
    double since_change_m; /* shown by it since the tyres were changed */
    double service_interval_m;
};

struct speed_table {
    const struct given *given;
    double from_mps, to_mps, step_mps;
};

struct instrument {
    const struct given *given;
    int unit;
    const char *rule;
    double fitted_error;               /* fraction, (shown - true)/true */
    struct pair_list readings;         /* shown, true in m/s */
    struct triple_list timed_readings; /* distance in m, time in s, shown in m/s */
    const char *readings_on;
    int fit;
    struct setting setting;
    struct choice_or_value aim;
    struct sensor sensor;
    struct odometer odometer;
    struct speed_table range;
    struct number_list posted_limits; /* m/s */
    double consumption_m3_per_m;      /* as worked out from the odometer's distance */
};

/* A low point: one of the three places says where. */
struct body_point {
    const struct given *given;
    const char *item;
    double ahead_m, behind_m, at_m, height_m;
};
struct point_list {
    struct body_point *items;
    size_t count;
};

struct carried_item {
    const struct given *given;
    const char *item;
    double mass_kg, at_m, side_m;
    int removed, can_be_left_out; /* 1, 0 or CHOICE_NONE */
    double volume_m3, density_kg_m3, dry_mass_kg;
    const char *of;
    int on_roof; /* 0: on the roof, CHOICE_NONE: not */
    double occupants, occupant_mass_kg;
    int seat; /* row, from 0 */
    double tow_ball_kg, trailer_mass_kg;
    struct point_list points; /* low points that it brings */
    double top_m;             /* its highest point above the ground */
};
struct carried_list {
    struct carried_item *items;
    size_t count;
};

/* A place that an item may yet take: its largest mass is the question; and where it may stand, with
 * a mass of its own. */
struct planned_item {
    const struct given *given;
    const char *item;
    double at_m, mass_kg;
    int on_roof; /* 0: on the roof, CHOICE_NONE: not */
};
struct planned_list {
    struct planned_item *items;
    size_t count;
};

/* Running at low pressure, and back to the road. */
struct off_road {
    const struct given *given;
    struct axle_pair pressure_Pa;
    double speed_mps;
    double compressor_flow_m3_per_s; /* free air */
};

struct state {
    const char *name;
    bool all;
    struct text_list items;
};
struct state_list {
    struct state *items;
    size_t count;
};

enum { RATE_POINTS_MAX = 64 };        /* of a stepped or progressive spring */
enum { SUSPENSION_CHOICES_MAX = 32 }; /* of springs, or of heights, for an axle */

/* A spring that may be fitted instead: how high it raises the axle, or how much longer it stands
 * unloaded; the constant load that its maker states it for. */
struct spring_choice {
    const struct given *given;
    const char *name;
    double wheel_rate_N_m, lift_m, free_height_change_m;
    double load_from_kg, load_to_kg;
};
struct spring_choice_list {
    struct spring_choice *items;
    size_t count;
};

struct axle_suspension {
    const struct given *given;
    double lift_m, wheel_rate_N_m, travel_to_bump_m, travel_to_droop_m, bump_stop_change_m;
    struct pair_list wheel_rate_steps, wheel_rate_curve; /* m, N/m */
    double spring_rate_N_m, motion_ratio, helper_rate_N_m, helper_closes_at_m;
    double free_height_change_m, wheel_rate_before_N_m, unsprung_kg;
    struct spring_choice_list spring_choices;
    struct number_list lift_choices; /* height above what the springs give, m */
};

struct arch {
    const struct given *given;
    double above_m, inner_m, outer_m, at_lock_m;
};

struct arches {
    const struct given *given;
    struct arch front, rear;
};
struct steering {
    const struct given *given;
    double axis_to_centre_m, lock_rad, kingpin_inclination_rad;
    int touches, meets;
};
struct spare_space {
    const struct given *given;
    double diameter_m, width_m, at_m;
};
struct headlamp {
    const struct given *given;
    double height_m, dip; /* dip as a fraction, downward positive */
};

struct clearance_measured {
    const struct given *given;
    double ground_m, ground_at_m;
    struct axle_pair under_axle_m;
    struct arches arch;
    struct steering steering;
    struct point_list front_overhang, rear_overhang, belly;
    double roof_height_m, garage_entrance_m, wading_depth_m, step_height_m;
    struct headlamp headlamp;
    struct spare_space spare_space;
};

struct suspension {
    const struct given *given;
    struct axle_suspension front, rear;
};
static inline const struct axle_suspension *suspension_at(const struct suspension *suspension,
                                                          int axle)
{
    return axle == AXLE_FRONT ? &suspension->front : &suspension->rear;
}

struct limits {
    const struct given *given;
    struct window diameter_change, ride_height_change, diameter_and_suspension;
    struct window track_change, inset_change;
    double load_reserve;
    int speedometer;          /* 0: rule */
    const char *speed_symbol; /* a row of the table speed_symbol_rules */
    struct text_list published;
};

struct search_rim {
    const struct given *given;
    double diameter_code;
    double width_m, inset_m;
    double max_load_kg, max_pressure_Pa;
};
struct search_rim_list {
    struct search_rim *items;
    size_t count;
};
struct search {
    const struct given *given;
    struct search_rim_list rims;
    struct text_list forms;
    struct window overall_diameter;
    const char *list, *column;
};

/* What the shop may do to make an option fit. Lengths: how much at most, UNKNOWN: not at all. */
struct allowed {
    const struct given *given;
    double trim_m, bump_stop_m, spacer_m;
    int calibrate, spare, wheel, axle_ratio, pressure_warning; /* 1, 0 or CHOICE_NONE */
};

/* How far off a measurement may be. */
struct measured {
    const struct given *given;
    double tape_m, scale_kg;
};

struct specification {
    const struct given *given;
    struct vehicle vehicle;
    struct tyres tyres;
    struct drivetrain drivetrain;
    struct instrument speedometer;
    struct carried_list carried;
    struct state_list states;
    struct planned_list room_for;
    struct off_road off_road;
    struct suspension suspension;
    struct clearance_measured clearance;
    struct limits limits;
    struct search search;
    struct allowed allowed;
    struct measured measured;
};

/* Nothing given. */
void specification_clear(struct specification *out);
struct tyre tyre_unknown(void);

#endif
