/* What the gearing part says of its figures: rows of the table of remarks (report/remarks.h). */
#ifndef TYRESUM_REPORT_GEARING_REMARKS_H
#define TYRESUM_REPORT_GEARING_REMARKS_H

#define QUARTER_INCH                                                                               \
    "circumferences within 1/4 in, as handbooks quote (" COMMON_PRACTICE ", no source)"

#define GEARING_REMARKS(X)                                                                         \
    X(BASIS_OVERALL_RATIO, "gear x transfer x axle x hub reduction")                               \
    X(BASIS_ROAD_SPEED, "v = C n (1 - slip) / overall ratio")                                      \
    X(BASIS_RATIO_SPREAD, "lowest / highest gear; the same on every tyre")                         \
    X(BASIS_GEAR_STEP, "ratio / ratio of the next gear; the same on every tyre")                   \
    X(BASIS_UPSHIFT_DROP, "n (1 - 1/step); the same on every tyre")                                \
    X(BASIS_CRAWL_RATIO, "first gear x lowest range x axle x hub reduction")                       \
    X(BASIS_CRAWL_SPEED, "v = C n / overall ratio at idle, without slip")                          \
    X(BASIS_EFFECTIVE_AXLE, "axle ratio x C_old / C_new")                                          \
    X(BASIS_RESTORING_AXLE, "axle ratio x C_new / C_old")                                          \
    X(BASIS_NEAREST_AXLE, "of axle_choices, nearest in ratio to the restoring one")                \
    X(ADVICE_KEEP_AXLE, "the axle ratio now, {}, is nearer than any choice: keep it")              \
    X(BASIS_NEAREST_REMAINS,                                                                       \
      "engine speed at a road speed beside the fitted tyre's, with the nearest choice")            \
    X(BASIS_AXLE_REMAINS, "ratio / restoring ratio - 1")                                           \
    X(BASIS_AXLE_REMAINS_SPEED,                                                                    \
      "in the highest gear, beside the fitted tyre on the axle as it is")                          \
    X(BASIS_DRIVE_BACK, "as much pull or more first, then the nearest in ratio")                   \
    X(BASIS_CRUISE_BACK, "no more engine speed first, then the nearest in ratio")                  \
    X(ADVICE_SAME_DRIVE, "the fitted tyre's drive, exactly")                                       \
    X(ADVICE_MORE_DRIVE, "{} % more pull, and {} % more engine speed, than on the fitted tyre")    \
    X(ADVICE_LESS_DRIVE, "{} % less pull, and {} % less engine speed, than on the fitted tyre")    \
    X(BASIS_QUARTER_INCH, QUARTER_INCH)                                                            \
    X(BASIS_MISMATCH, "(ratio_front / C_front) / (ratio_rear / C_rear) - 1; " QUARTER_INCH)        \
    X(BASIS_SPARE_MISMATCH,                                                                        \
      "C_spare / C - 1, as worn now: negative where the spare is smaller; " QUARTER_INCH)          \
    X(ADVICE_COUPLED_MATCH,                                                                        \
      "coupled axles wind up: use tyres and ratios that match front to rear")                      \
    X(ADVICE_COUPLED_LOOSE, "coupled axles wind up: engage them on loose ground only; or match "   \
                            "tyres and ratios front to rear")                                      \
    X(ADVICE_BOTH_SIZES, "read both tyres' revolutions in the data book",                          \
      "size, or data_book: revs_per_km")                                                           \
    X(ADVICE_SPARE_SLIPS_SLOWLY,                                                                   \
      "the differential works all the time: slowly, and a short way only")                         \
    X(ADVICE_SPARE_SLIPS, "the differential works all the time: a short way, no lock engaged; or " \
                          "carry a spare of the set")                                              \
    X(BASIS_WHEEL_TORQUE, "torque x overall ratio x efficiency")                                   \
    X(BASIS_TRACTIVE_FORCE, "wheel torque x 2 pi / C")                                             \
    X(BASIS_AIR_RESISTANCE, "1/2 rho Cd A v^2")                                                    \
    X(BASIS_ROLLING_GIVEN, "f W")                                                                  \
    X(BASIS_ROLLING_PAVED, "0.01 (1 + V/147) W, V in ft/s, paved (Mannering & Washburn, ch. 2)")   \
    X(BASIS_GRIP_FORCE, "grip x weight on the driven axles (all, where all can be driven)")        \
    X(BASIS_GRADE, "theta = asin(((F - A)/W) / sqrt(1 + f^2)) - atan f, tan theta")                \
    X(BASIS_GRADE_BY_GRIP,                                                                         \
      "grip-limited: tan theta from (grip/W - f) cos theta - sin theta = A/W")                     \
    X(BASIS_GRIP_GRADE, "tan theta = grip x weight on the driven axles / W - f, without air")      \
    X(ADVICE_NO_SLOPE, "no slope balances it: the air alone resists with more than the weight")    \
    X(ADVICE_GRIP_LIMITED, "grip-limited: the wheels spin before the engine is at its limit")      \
    X(ADVICE_GIVE_GRIP, "grip-limited: no slope balances this pull; say what grip the ground has", \
      "drivetrain: grip")                                                                          \
    X(PHRASE_GRIP, "grip")                                                                         \
    X(BASIS_SPEED_HELD,                                                                            \
      "the highest speed at which pull is no less than A + f W cos theta + W sin theta")           \
    X(ADVICE_PULL_LEFT, "pull is unused there: engine limit or end of the torque curve decides")   \
    X(ADVICE_NOT_HELD, "no gear holds this grade at an engine speed of the torque curve")          \
    X(ADVICE_SIZE_TO_ROLL, "no rule measures this size: read its revolutions in the data book",    \
      "data_book: revs_per_km")                                                                    \
    X(PHRASE_NONE, "none")                                                                         \
    X(BASIS_GEAR_NEEDED, "the gear in which that speed is held")                                   \
    X(BASIS_GEAR_NEEDED_IN_RANGE, "the gear in which that speed is held, in range {}")             \
    X(PHRASE_HIGH_RANGE, "high")                                                                   \
    X(PHRASE_LOW_RANGE, "low")                                                                     \
    X(PHRASE_ONE_LOW_RANGE, "low {}")                                                              \
    X(BASIS_ACCELERATION_GIVEN,                                                                    \
      "(F - A - f W) / (m + sum of I (2 pi/C)^2), inertia as given, level")                        \
    X(BASIS_ACCELERATION_BY_MASS,                                                                  \
      "(F - A - f W) / (m + sum of I (2 pi/C)^2), I = m (0.7 D/2)^2, level")                       \
    X(BASIS_ACCELERATION, "(F - A - f W) / m, no inertia of wheels, level")                        \
    X(ADVICE_FITTED_SLOWS, "the fitted drive slows down there: nothing to compare with")           \
    X(ADVICE_SIZE_OF_BOTH, "read the size of both tyres", "size")                                  \
    X(TAKEN_HIGH_RANGE, "no ratio of the high range is given: 1 is taken",                         \
      "drivetrain: transfer: high")                                                                \
    X(TAKEN_NO_SLIP, "no slip is given: a locked converter or a clutch is taken",                  \
      "drivetrain: slip")                                                                          \
    X(TAKEN_REAR_DRIVE, "the driven axle is not given: the rear one is taken", "vehicle: drive")   \
    X(TAKEN_EQUAL_SHARES,                                                                          \
      "the centre differential is taken to share turns equally front and rear")                    \
    X(TAKEN_CRUISING_SPEED, "no cruising speed is given: {} is taken",                             \
      "drivetrain: cruising_speed")                                                                \
    X(TAKEN_GEARS_AS_LISTED,                                                                       \
      "gears do not fall in ratio: each keeps its number; the smallest ratio is the highest gear", \
      "drivetrain: gears")                                                                         \
    X(TAKEN_EFFICIENCY, "no efficiency is given: 85 % is taken (handbooks: 85 to 90 %)",           \
      "drivetrain: efficiency")                                                                    \
    X(TAKEN_NO_WEIGHT, "no unladen weight is given: no grade or speed held is worked out",         \
      "vehicle: unladen")                                                                          \
    X(TAKEN_NO_DRAG, "no drag is given: air resistance is left out", "vehicle: drag")              \
    X(TAKEN_AIR_DENSITY, "no air density is given: 1.225 kg/m3 is taken (ISO 2533, sea level)",    \
      "vehicle: drag: air_density")                                                                \
    X(TAKEN_ROLLING_RESISTANCE,                                                                    \
      "rolling resistance is not given: 0.01 (1 + V/147), V in ft/s, paved roads",                 \
      "drivetrain: rolling_resistance")                                                            \
    X(TAKEN_NOT_TO_SPIN, "no grip is given: the wheels are taken not to spin", "drivetrain: grip") \
    X(TAKEN_GRADES, "no grades are given: 5 % and 10 % are taken", "drivetrain: grades")           \
    X(TAKEN_GYRATION,                                                                              \
      "no inertia is given: tyre and wheel turn at 0.7 of the radius (" COMMON_PRACTICE            \
      ", no source)",                                                                              \
      "inertia")

#endif
