/* Pull of an engine at the road, what resists it, the grade and the speed that it holds.
 * Symbols: T torque in N m, n engine speed in 1/s, i overall ratio, eta efficiency, C rolling
 * circumference in m (the radius is C/2pi: power balance), W weight in N, f rolling resistance
 * coefficient, A air resistance in N, v road speed in m/s, theta slope.
 * Source, where none stands beside it: Mannering & Washburn, Principles of Highway Engineering,
 * chapter 2. */
#ifndef TYRESUM_COMPUTE_PULL_H
#define TYRESUM_COMPUTE_PULL_H

#include "build/specification.h"

/* ISO 2533 at sea level; counts where the file gives none. */
#define AIR_DENSITY_KG_M3 1.225

/* Handbooks give 0.85 to 0.90 for the whole drivetrain; counts where the file gives none. */
#define EFFICIENCY_USUAL 0.85

/* Torque of the curve at n, straight between its points; UNKNOWN beyond its ends. */
double torque_at_Nm(const struct pair_list *curve, double engine_speed_per_s);
/* The (lowest) engine speed of the highest torque, not above the limit (UNKNOWN: none). The curve
 * is not empty, and begins below the limit. */
double peak_torque_per_s(const struct pair_list *curve, double limit_per_s);

/* At all driven wheels together: T i eta. */
double wheel_torque_Nm(double torque_Nm, double overall, double efficiency);
/* F = wheel torque / (C / 2pi). */
double tractive_force_N(double wheel_torque, double circumference_m);

/* 1/2 rho Cd A, to be multiplied by v squared. */
double air_factor(double density_kg_m3, double coefficient, double area_m2);
/* The one given; otherwise f = 0.01 (1 + V/147), V in ft/s, for paved roads. */
double rolling_coefficient(double given, double speed_mps);

/* One vehicle in one state on one setup. */
struct puller {
    const struct pair_list *torque; /* 1/s and N m, rising in speed, not empty */
    double limit_per_s;             /* UNKNOWN: the end of the curve */
    double efficiency, slip, circumference_m;
    double weight_N;    /* of all that is pulled */
    double grip_N;      /* grip coefficient * weight on the driven axles; UNKNOWN: none known */
    double air_N_s2_m2; /* air_factor(); 0 where it is left out */
    double rolling;     /* coefficient given; UNKNOWN: by the formula */
};

enum climb_limit { CLIMB_ENGINE, CLIMB_GRIP, CLIMB_GRIP_UNKNOWN };
struct climb {
    /* Tangent; UNKNOWN where the weight is, with CLIMB_GRIP_UNKNOWN, and where air resistance
     * alone comes near the weight. */
    double grade;
    enum climb_limit limit;
};

/* The grade on which `force` is in balance at that speed:
 *   theta = asin(((F - A)/W) / sqrt(1 + f^2)) - atan f.
 * Where F is more than grip cos theta, or (F - A)/W reaches sqrt(1 + f^2), which no slope
 * balances, the grip decides: tan theta from (grip/W - f) cos theta - sin theta = A/W. Without
 * a known grip that grade has no number. Weight transfer between the axles is left out. */
struct climb grade_climbed(const struct puller *puller, double force_N, double speed_mps);

/* Air, rolling and slope together: A + f W cos theta + W sin theta. */
double resistance_N(const struct puller *puller, double speed_mps, double grade);

/* The highest speed at which pull (of the curve, not above grip) is no less than resistance in
 * one gear; 0 where there is none within the curve; UNKNOWN where the weight is. */
double speed_held_mps(const struct puller *puller, double overall, double grade);

/* The same for a continuously variable gearbox between two overall ratios, which lets the engine
 * run at its most power for any road speed. */
double speed_held_variable_mps(const struct puller *puller, double lowest, double highest,
                               double grade);

/* Mass that a wheel's inertia adds to what is to be accelerated: I (2pi/C)^2. */
double rotating_mass_kg(double inertia_kg_m2, double circumference_m);
/* m (0.7 D/2)^2: tyre and wheel with a radius of gyration of 0.7 of the free radius (common
 * practice, no source). For wheels whose inertia is not given. */
double wheel_inertia_kg_m2(double mass_kg, double overall_diameter_m);

/* On the level: (F - A - f W) / (W/g + rotating mass), F not above grip. */
double acceleration_mps2(const struct puller *puller, double force_N, double speed_mps,
                         double rotating_kg);

#endif
