/* What the load part says of its figures: rows of the table of remarks (report/remarks.h). */
#ifndef TYRESUM_REPORT_LOAD_REMARKS_H
#define TYRESUM_REPORT_LOAD_REMARKS_H

/* The rule by which a capacity was found: class, source, twins, divisor, reduction for speed. */
#define CAPACITY_REMARKS(X)                                                                        \
    X(BASIS_CAPACITY, "{}, {}{}{}{}")                                                              \
    X(PHRASE_MOULDED, "moulded maximum")                                                           \
    X(PHRASE_LISTED, "lower of load index and published maximum (assumed)")                        \
    X(PHRASE_BY_LOAD_RANGE, "load index at the load range's pressures (assumed)")                  \
    X(PHRASE_LOAD_INDEX, "load index")                                                             \
    X(PHRASE_TWIN_ASSUMED, ", twin 0.91 of single (assumed)")                                      \
    X(PHRASE_DIVIDED, ", / 1.10 on a light truck (49 CFR 571.110)")                                \
    X(PHRASE_COMMERCIAL_REDUCED, ", reduced at the top speed (UN R54 Annex 8, " FROM_MEMORY ")")   \
    X(PHRASE_REDUCED, ", reduced at the top speed (ETRTO)")                                        \
    X(BASIS_CAPACITY_LEFT, "capacity at the recommended pressure over the load, less 1")           \
    X(BASIS_TYRE_LOAD, "half the axle load, or the heavier corner{}")                              \
    X(BASIS_TWIN_LOAD, "a quarter of the axle load, or half the heavier corner{}")                 \
    X(BASIS_SIDE_LOAD, ": 65 % of the tilt by what lies beside the centre line, or its share by "  \
                       "distance where that is more (" COMMON_PRACTICE ", no source)")             \
    X(ADVICE_WEIGH_EACH_WHEEL,                                                                     \
      "weigh each wheel: a tyre could bear {}, more than tyre or wheel carries")                   \
    X(ADVICE_WEIGH_AGAIN,                                                                          \
      "nearer to the limit than the scale tells ({}): weigh again, or more exactly")               \
    X(ADVICE_GIVE_PLACARD, "read the placard pressures", "tyres: fitted: placard")                 \
    X(ADVICE_WRITE_SIZE, "find the whole size: passenger, LT or C tyre", "size")                   \
    X(ADVICE_GIVE_LOAD_RANGE, "find load range, or maximum load and its pressure",                 \
      "load_range, or data_book: max_load and at_pressure")                                        \
    X(ADVICE_GIVE_MOULDED_LOAD, "read maximum load and pressure on the sidewall",                  \
      "data_book: max_load and at_pressure")                                                       \
    X(ADVICE_OF_FITTED, "fitted tyre: {}")                                                         \
    X(ADVICE_GIVE_LOAD_INDICES, "read the load index of both tyres", "size")                       \
    X(ADVICE_GIVE_LOAD_INDEX, "find the load index", "size")                                       \
    X(ADVICE_AXLE_LOAD_UNKNOWN, "the load on this axle is not known: see its own row")             \
    X(ADVICE_PLACARD_TOO_LOW, "does not carry the build at the placard pressure")                  \
    X(ADVICE_LESS_THAN_FITTED, "less than the fitted tyre carried{}")                              \
    X(PHRASE_INFLATE_TO, ": inflate to {}")

/* The pressure to set, and what decides it. */
#define PRESSURE_REMARKS(X)                                                                        \
    X(BASIS_AS_REPLACED, "as replaced: carries the {} that the fitted tyre did")                   \
    X(BASIS_AS_BUILT, "as built: carries {} a tyre ({}, with the reserve){}")                      \
    X(PHRASE_FOR_SPEED, ", with {} for the top speed (ETRTO{})")                                   \
    X(PHRASE_AS_FOR_W, ", taken as for a W tyre: ask the tyre maker")                              \
    X(BASIS_AS_RATED, "carries the axle's rating, {} a tyre{} (49 CFR 571.110, 571.120)")          \
    X(BASIS_CLASS_FLOOR, "the class floor: the lowest pressure of its tables")                     \
    X(BASIS_PLACARD_FLOOR, "placard: no setting is below it")                                      \
    X(BASIS_REFUSED, "no pressure that tyre and wheel allow carries it")                           \
    X(BASIS_UNREAD, "no more than {} is sure without the sidewall")                                \
    X(ADVICE_READ_SIDEWALL, "the sidewall must allow {}; read it, not every such tyre does",       \
      "data_book: max_pressure; of a light-truck tyre max_load and at_pressure")                   \
    X(ADVICE_GIVE_RATING_TOO, "read this axle's rating on the plate: half of it is not counted",   \
      "vehicle: ratings")                                                                          \
    X(ADVICE_PLACARD_TOO_HIGH, "its highest pressure is below the placard: choose another tyre")   \
    X(ADVICE_NOT_HALF_THE_RATING, "carries the build, not its share of the axle rating, {}; "      \
                                  "choose more capacity, or a wheel for more pressure")            \
    X(BASIS_AS_SET, "as it is handed over")                                                        \
    X(BASIS_PLACARD_STANDS, "the placard: no other pressure is named")                             \
    X(ADVICE_INFLATE, "too little for what it must carry")                                         \
    X(ADVICE_LET_DOWN, "more than tyre and wheel may have")                                        \
    X(ADVICE_READ_MAXIMUM, "check the maximum load and pressure on the sidewall")                  \
    X(ADVICE_MORE_CAPACITY, "choose a tyre of more capacity, or carry less on this axle")          \
    X(ADVICE_NOT_WHAT_FITTED_DID,                                                                  \
      "carries the build, not what the fitted tyre did, {}; choose one of more capacity")          \
    X(ADVICE_NO_PRESSURE, "more load than this tyre carries at any pressure")                      \
    X(ADVICE_ABOVE_CEILING, "more pressure than tyre and wheel allow")

#define WHEEL_RATING_REMARKS(X)                                                                    \
    X(BASIS_TYRES_CARRY_RATING, "49 CFR 571.110 S4.2.2.2, 571.120 S5.1.2")                         \
    X(BASIS_WHEEL_MAKER, "the wheel maker's rating")                                               \
    X(BASIS_FITTED_WHEEL,                                                                          \
      "taken: a fitted wheel is good for half the axle rating at the placard (49 CFR 571.110)")    \
    X(ADVICE_PRESSURE_FOR_RATING, "at {}, the most allowed, they do not carry the axle's rating; " \
                                  "choose a wheel for more pressure, or other tyres")              \
    X(ADVICE_TYRES_FOR_RATING, "choose tyres that together carry the axle's rating")               \
    X(ADVICE_GIVE_AXLE_RATING, "read this axle's rating on the plate", "vehicle: ratings")         \
    X(ADVICE_GIVE_WHEEL_LOAD, "find the wheel's rated load", "wheel: max_load")                    \
    X(ADVICE_GIVE_WHEEL_PRESSURE, "find the wheel's rated pressure", "wheel: max_pressure")        \
    X(ADVICE_GIVE_WHEEL, "find its rated load and pressure", "wheel: max_load and max_pressure")   \
    X(ADVICE_WEIGH, "weigh each axle unladen", "vehicle: unladen")                                 \
    X(ADVICE_WHEEL_FOR_LOAD, "choose a wheel that is rated for this load")                         \
    X(ADVICE_WHEEL_FOR_RATING, "carries the build, not its share of the axle rating, {}; good "    \
                               "for an axle of {}: choose a wheel rated for more")                 \
    X(BASIS_UNWEIGHED, "allowed or refused by less than the scale tells")                          \
    X(ADVICE_ORDER_WHEEL,                                                                          \
      "rated too low; the listed wheel of this width and inset does, spare too")                   \
    X(BASIS_WHEEL_ORDERED, "the wheel that is ordered")                                            \
    X(ADVICE_TRY_ORDERED_WHEEL,                                                                    \
      "the wheel that is ordered: hub bore, bolt pattern, room round the brake")                   \
    X(ADVICE_WHEEL_FOR_PRESSURE,                                                                   \
      "the pressure needed is above the wheel's rating: choose another wheel")                     \
    X(ADVICE_PRESSURE_UNKNOWN, "the pressure is not known: see its row")                           \
    X(BASIS_TWIN_ROOM, "2 x inset - largest section width; a spacer is not counted")               \
    X(ADVICE_TWINS_UNKNOWN, "find the wheels' width and inset", "wheel: width and inset")          \
    X(ADVICE_TWINS_TOUCH, "the twins touch: narrower tyres, or wheels of more inset")              \
    X(ADVICE_TWINS_IN_FRONT, "twins count in front too: where only the rear has them, say so",     \
      "rear: dual")                                                                                \
    X(ADVICE_TWINS_LEAST, "ask the tyre maker for the least: under load they are wider")

#define LOAD_SPARE_REMARKS(X)                                                                      \
    X(BASIS_SPARE_CAPACITY, "load index, UN R30 / R54 Annex 4")                                    \
    X(ADVICE_SPARE_OF_SET, "less than the tyres it replaces: drive gently, and not for long")      \
    X(ADVICE_GIVE_SPARE_SERVICE, "read the spare's service description", "tyres: spare: size")     \
    X(BASIS_SPARE_PRESSURE,                                                                        \
      "as built: carries the heaviest tyre's load of either axle, with the reserve{}")             \
    X(BASIS_SPARE_RATED, "carries a tyre's share of the larger axle rating, {}{}")                 \
    X(BASIS_SPARE_REFUSED, "no pressure that it and its wheel allow carries the heaviest load, "   \
                           "with the reserve, and a tyre's share of the larger axle rating")       \
    X(ADVICE_SPARE_UNREAD, "its sidewall would have to allow {}: carry one of the set instead")    \
    X(ADVICE_SPARE_WHEEL, "its wheel is not rated for {}: carry one of the set")                   \
    X(ADVICE_SPARE_RATING, "read both axle ratings on the plate: half the larger is not counted",  \
      "vehicle: ratings")                                                                          \
    X(ADVICE_SPARE_UNKNOWN,                                                                        \
      "read the spare's service description and load range, and weigh the axles")                  \
    X(ADVICE_SPARE_TOO_WEAK, "no pressure that is allowed is enough: carry one of the set")        \
    X(ADVICE_SPARE_BY_ITS_MARKING,                                                                 \
      "for temporary use: marked speed at most, often 80 km/h (UN R64, " FROM_MEMORY               \
      "); unladen where that can be")

#define BALANCE_REMARKS(X)                                                                         \
    X(BASIS_MARGINS, "capacity left front less rear; 25 points apart with less than 10 % left "    \
                     "is " COMMON_PRACTICE ", no source")                                          \
    X(ADVICE_REAR_HAS_LESS, "the rear tyres have much less in reserve than the front")             \
    X(ADVICE_FRONT_HAS_LESS, "the front tyres have much less in reserve than the rear")            \
    X(BASIS_NOT_COVERED, "outside these sums")                                                     \
    X(ADVICE_HANDLING,                                                                             \
      "front to rear unlike the placard; drive with care, or ask the vehicle's maker")             \
    X(ADVICE_TRAILER, "sway, braking and nose weight in motion are not computed")                  \
    X(ADVICE_MOVING_LOADS, "braking, cornering and what shifts under way are not computed")

/* With the texts of compute/fitment.c, what was taken where the file is silent. */
#define LOAD_TAKEN_REMARKS(X)                                                                      \
    X(TAKEN_LT_CEILING,                                                                            \
      "the load index counts at the higher pressure of its load range; the ceiling is the lower",  \
      "data_book: max_load and at_pressure")                                                       \
    X(TAKEN_WHEEL_RATING,                                                                          \
      "the fitted wheel is good for half the axle rating at the placard pressure",                 \
      "wheel: max_load and max_pressure")                                                          \
    X(TAKEN_LISTED,                                                                                \
      "the lower of load index and published maximum counts (table light_truck_maxima)",           \
      "data_book: max_load")                                                                       \
    X(TAKEN_STANDARD_LOAD, "the size carries no XL or HL mark: standard load is taken")            \
    X(TAKEN_NO_KIND, "passenger tyres count in full; on a light truck they count / 1.10",          \
      "vehicle: kind")                                                                             \
    X(TAKEN_TWIN, "no dual load index is given: a twin counts 0.91 of the single tyre", "size")    \
    X(TAKEN_NOTHING_CARRIED, "nothing is listed as carried: the weighed axle loads are taken",     \
      "carried")                                                                                   \
    X(TAKEN_OCCUPANTS, "occupants without a mass count 75 kg each (Regulation (EU) 1230/2012)",    \
      "carried: occupant_mass")

#define OFF_ROAD_REMARKS(X)                                                                        \
    X(BASIS_STIFFNESS, "Rhyne, Tire Science and Technology 33(3), 2005 (coefficients " FROM_MEMORY \
                       "): belted radial "                                                         \
                       "passenger tyres, extrapolated for others")                                 \
    X(BASIS_CHORD, "chord of the round tyre at that deflection")                                   \
    X(ADVICE_NO_DEFLECTION,                                                                        \
      "needs load and both pressures; holds for radial tyres, to half the section height")         \
    X(BASIS_LOW_COMMERCIAL,                                                                        \
      "class rule with the low-speed increase of UN R54 Annex 8 (" FROM_MEMORY ")")                \
    X(BASIS_LOW_CAPACITY, "class rule; no standard grants an increase at low speed")               \
    X(ADVICE_WALKING_PACE, "less than its load: walking pace, not far, and watch the sidewalls; "  \
                           "inflate again before the road")                                        \
    X(ADVICE_BELOW_TABLES,                                                                         \
      "below the lowest pressure of its tables: the rule is only continued there")                 \
    X(BASIS_PASSENGER_SPEED, "no standard rates a passenger tyre at such a pressure")              \
    X(BASIS_BELOW_FLOOR_SPEED,                                                                     \
      "no standard grants a speed below the class floor, the lowest pressure of its tables")       \
    X(BASIS_LOW_SPEED, "UN R54 Annex 8 load at low speed (" FROM_MEMORY ")")                       \
    X(ADVICE_ASK_TYRE_MAKER, "keep to walking pace, and ask the tyre maker")                       \
    X(ADVICE_SPEED_UNKNOWN, "needs the load index, its reference pressure and the axle loads")     \
    X(BASIS_OFF_ROAD_SPEED, "UN R54 Annex 8 load at low speed (" FROM_MEMORY ")")                  \
    X(ADVICE_DRIVE_SLOWER,                                                                         \
      "too much load for the speed given: drive slower, or keep more pressure")                    \
    X(ADVICE_SPEED_BOUND, "an upper bound by load alone: heat and bead seat are not computed")     \
    X(BASIS_FREE_AIR,                                                                              \
      "elliptic section of the cavity, about 15 % either way (" COMMON_PRACTICE ", no source)")    \
    X(ADVICE_AIR_UNKNOWN, "needs the tyres' size and recommended pressure")                        \
    X(BASIS_INFLATING, "free air over the compressor's flow, which falls as pressure rises")       \
    X(ADVICE_GIVE_FLOW, "read the compressor's flow", "off_road: compressor_flow")

#define PRESSURE_WARNING_REMARKS(X)                                                                \
    X(BASIS_THRESHOLD, "25 % below the recommended pressure (49 CFR 571.138 S4.2), or the least "  \
                       "of its Table 1 (" FROM_MEMORY ")")                                         \
    X(ADVICE_WARNING_STAYS, "above the pressure to set, so it would stay on: ask the vehicle's "   \
                            "maker")                                                               \
    X(ADVICE_WARNING_OF_MAKER, "tyre and wheel allow no more than the warning's least, which "     \
                               "binds the maker; watch the pressure by gauge")                     \
    X(ADVICE_WARNING_CLOSE, "the warning comes close below the pressure to set: check it often")   \
    X(BASIS_WARNING_TAKEN, "taken as 25 % below the placard (49 CFR 571.138 S4.2)")                \
    X(BASIS_WARNING_GIVEN, "vehicle: pressure_warning")                                            \
    X(ADVICE_GIVE_WARNING, "read the pressure of the warning, or the placard",                     \
      "vehicle: pressure_warning, or tyres: fitted: placard")                                      \
    X(ADVICE_WARNING_LATE, "comes late for the recommended pressure: have it set to {}")           \
    X(ADVICE_WARNING_BELOW_RULE, "have {} set; the rule's {} is above the pressures to set")       \
    X(ADVICE_TELL_WARNING_LATE,                                                                    \
      "the pressure warning now comes too late: check the tyres by gauge")                         \
    X(ADVICE_TELL_WARNING_TAKEN,                                                                   \
      "a pressure warning 25 % below placard comes too late: check by gauge")                      \
    X(ADVICE_TELL_WARNING_ON, "the pressure warning stays on at the pressures that are set")       \
    X(ADVICE_WARNING_ON, "stays on at the recommended pressure: have it set anew")

#define RATINGS_REMARKS(X)                                                                         \
    X(BASIS_MOMENTS, "moments about the axles")                                                    \
    X(BASIS_VEHICLE_MAKER, "the vehicle maker's rating")                                           \
    X(BASIS_VEHICLE_MAKER_ALL, "the vehicle maker's ratings")                                      \
    X(ADVICE_MOVE_LOAD, "move or remove load on this axle")                                        \
    X(ADVICE_GIVE_GROSS, "read the gross rating on the plate", "vehicle: ratings: gross")          \
    X(BASIS_LEFT_OUT, "carried: can_be_left_out")                                                  \
    X(ADVICE_LEAVE_OUT, "with it a rating may be passed")                                          \
    X(ADVICE_LEAVE_OUT_TO_BEAR, "with it a tyre, wheel or spare bears too much in this state")     \
    X(ADVICE_LEAVE_SOMETHING, "leave something at home")                                           \
    X(ADVICE_GIVE_ROOF_RATING, "look up the roof rating", "vehicle: ratings: roof")                \
    X(ADVICE_OFF_THE_ROOF, "take load off the roof")                                               \
    X(ADVICE_GIVE_TOW_BALL, "look up the tow-ball rating", "vehicle: ratings: tow_ball")           \
    X(ADVICE_LOAD_TRAILER_BACK, "load the trailer further back")                                   \
    X(ADVICE_GIVE_COMBINATION, "look up the combination rating", "vehicle: ratings: combination")  \
    X(ADVICE_LIGHTER_TRAILER, "tow a lighter trailer")                                             \
    X(ADVICE_PASSED_UNLADEN, "passed before anything is carried; {}")                              \
    X(ADVICE_PASSED_WITH, "passed with \"{}\", in the file's order; {}")                           \
    X(ADVICE_LOAD_UNKNOWN, "the load is not known: see its own row")                               \
    X(ADVICE_CHECK_MASSES, "more is removed than the vehicle weighs: check the masses")            \
    X(ADVICE_LIFTED, "these masses and places would lift this axle off the ground: check them")    \
    X(ADVICE_GIVE_UNLADEN, "weigh each axle unladen, and measure the wheelbase",                   \
      "vehicle: unladen and wheelbase")                                                            \
    X(BASIS_LIMITED_BY_RATING, "limited by the {}")                                                \
    X(BASIS_LIMITED_BY_TYRES, "limited by the {} tyres at their ceiling, with the reserve")        \
    X(BASIS_LIMITED_BY_LIFT, "limited by lifting the other axle off the ground")                   \
    X(BASIS_LIMITED_BY_SPRINGS, "limited by the {} springs' travel to bump")                       \
    X(BASIS_LIMITED_BY_END, "the vehicle's end, or the outermost place that the file names")       \
    X(ADVICE_ROOM_SPRINGS_UNKNOWN, "find the {} springs' wheel rate", "suspension: wheel_rate")    \
    X(ADVICE_NO_PLACE, "nowhere along the vehicle: {}")                                            \
    X(ADVICE_ROOM_UNKNOWN, "needs the wheelbase, the unladen weights and the {}",                  \
      "vehicle: wheelbase, unladen and ratings")                                                   \
    X(BASIS_LIMITED_BY_WHEELS, "limited by the {} wheels' rating")                                 \
    X(ADVICE_ROOM_WHEELS_UNKNOWN, "find the {} wheels' rated load", "wheel: max_load")             \
    X(ADVICE_ROOM_TYRES_UNKNOWN, "{} tyres: {}")                                                   \
    X(ADVICE_NOTHING_FITS, "nothing more fits here: this limit is reached already")                \
    X(BASIS_WEIGHED, "vehicle: unladen, as weighed")                                               \
    X(ADVICE_GIVE_INCLUDES, "name what it was, such as driver and fuel", "vehicle: includes")      \
    X(PHRASE_WEIGHED_TANK, "the weighed tank")                                                     \
    X(ADVICE_TWO_TANKS,                                                                            \
      "the fuel of {} and of {} counts; remove one that takes the other's place",                  \
      "carried: removed")

#define LOAD_REMARKS(X)                                                                            \
    CAPACITY_REMARKS(X)                                                                            \
    PRESSURE_REMARKS(X)                                                                            \
    WHEEL_RATING_REMARKS(X)                                                                        \
    LOAD_SPARE_REMARKS(X)                                                                          \
    BALANCE_REMARKS(X)                                                                             \
    LOAD_TAKEN_REMARKS(X)                                                                          \
    OFF_ROAD_REMARKS(X)                                                                            \
    PRESSURE_WARNING_REMARKS(X)                                                                    \
    RATINGS_REMARKS(X)

#endif
