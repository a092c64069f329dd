/* What the clearance part says of its figures: rows of the table of remarks (report/remarks.h). */
#ifndef TYRESUM_REPORT_CLEARANCE_REMARKS_H
#define TYRESUM_REPORT_CLEARANCE_REMARKS_H

#define ARCH_REMARKS(X)                                                                            \
    X(BASIS_ARCH_RIDE, "above - dD/2 + lift - sag")                                                \
    X(BASIS_ARCH_BUMP,                                                                             \
      "above - travel to bump - dD/2 + bump stop change; lift does not help there")                \
    X(BASIS_ARCH_INNER, "inner - (dS/2 + inset change - spacer change)")                           \
    X(BASIS_ARCH_OUTER, "outer - (dS/2 - inset change + spacer change)")                           \
    X(BASIS_LOCK_SWEPT, "swept corner radius about the steering axis, outer and inner corner")     \
    X(BASIS_LOCK_BOUND, "bound sqrt((dD/2)^2 + (edge move)^2), no steering geometry")              \
    X(BASIS_LOCK_UNTOLD, "bound sqrt((dD/2)^2 + (edge move)^2), since steering: touches does not " \
                         "say which part of the tyre comes nearest")                               \
    X(BASIS_LOCK_SIDEWALL, "move of the sidewall's edges, which come nearest (steering: touches)") \
    X(BASIS_ARCH_CHANGE, "nominal to nominal, by the same rule for both tyres")                    \
    X(BASIS_SMALLEST_CHANGE, "smallest single change that leaves no room short")                   \
    X(ADVICE_MAY_RUB, "it may rub")                                                                \
    X(ADVICE_MAY_RUB_FRAME, "it may rub on frame or strut")                                        \
    X(ADVICE_MAY_RUB_INSIDE, "it may rub on strut or arm")                                         \
    X(ADVICE_GIVE_ARCH, "measure it with the fitted tyre on", "clearance: arch: {}: {}")           \
    X(ADVICE_GIVE_MEETS, "say what it meets at lock", "clearance: steering: meets")                \
    X(ADVICE_GIVE_TRAVEL_TO_BUMP, "measure the travel to the bump stop",                           \
      "suspension: travel_to_bump")                                                                \
    X(ADVICE_GIVE_BOTH_WHEELS, "read width and inset on both wheels", "wheel: width and inset")    \
    X(ADVICE_LONGER_BUMP_STOPS, "make the bump stops longer by {}")                                \
    X(ADVICE_BUMP_STOPS_DO_NOT, "bump stops alone do not make it fit")                             \
    X(ADVICE_INSET_DOES_NOT, "another inset alone does not make it fit")                           \
    X(ADVICE_TRIM_ARCH, "trim the arch by {}")                                                     \
    X(ADVICE_FIT_SPACER, "fit a spacer of {}")                                                     \
    X(ADVICE_WITHIN_TAPE, "no more than the tape may be off ({}): measure it again")               \
    X(ADVICE_TRIM_DOES_NOT, "trimming alone does not make it fit")                                 \
    X(ADVICE_LIFT_MORE, "lift it more by {}")                                                      \
    X(ADVICE_LIFT_DOES_NOT, "lift alone does not make it fit")                                     \
    X(PHRASE_BUMP_STOP_LONGER, "{} longer bump stops")                                             \
    X(PHRASE_MORE_LIFT, "{} more lift")                                                            \
    X(PHRASE_NO_LIFT, "lift does not help here")                                                   \
    X(PHRASE_TRIMMED, "{} off the arch")                                                           \
    X(PHRASE_NO_TRIM, "what it meets there is not trimmed")                                        \
    X(PHRASE_MEETS_FOR_TRIM, "say what it meets before anything is trimmed",                       \
      "clearance: steering: meets")                                                                \
    X(PHRASE_MORE_INSET, "{} more inset")                                                          \
    X(PHRASE_LESS_INSET, "{} less inset (or a spacer)")                                            \
    X(PHRASE_NO_INSET, "no change of inset alone does it")                                         \
    X(PHRASE_SIDES_FOR_INSET, "measure room inside and outside: another inset may help")           \
    X(PHRASE_LOCK_FOR_INSET, "measure room at lock: another inset may help")

#define BODY_REMARKS(X)                                                                            \
    X(BASIS_UNDER_AXLE, "measured + change of the loaded radius")                                  \
    X(BASIS_UNDER_AXLE_LOADED,                                                                     \
      "measured + change of the loaded radius - deflection of the tyres under the load (Rhyne)")   \
    X(BASIS_BODY, "measured + loaded radius + lift - sag by the wheel rate - what the tyres give " \
                  "under the load by Rhyne")                                                       \
    X(BASIS_BODY_CHANGE, "change of the static loaded radius, 0.912 D/2 for both, and of what "    \
                         "both give under the load")                                               \
    X(BASIS_HIGHER_AXLE, "measured + the larger of both axles' changes")                           \
    X(BASIS_HIGHEST_ITEM, "measured + the larger of both axles' changes; highest: {}")             \
    X(BASIS_RADIUS_CHANGE, "change of the loaded radius")                                          \
    X(BASIS_WADING, "the maker's depth, less what the lower axle sinks; never more")               \
    X(BASIS_RAKE, "(rear - front change of height) / wheelbase")                                   \
    X(BASIS_BEAM, "(front - rear change of height) / wheelbase; up is positive")                   \
    X(BASIS_DIP, "UN R48 6.2.6.1.2, by the lamp's height, " FROM_MEMORY)                           \
    X(BASIS_RAMP, "tangent to the loaded tyre (40 CFR 86.084-2, 49 CFR 523.2)")                    \
    X(BASIS_SAME_STATE, "beside the fitted tyre in the same loading state")                        \
    X(BASIS_TRAVEL_LEFT, "travel + lift - longer bump stop - sag")                                 \
    X(BASIS_TRAVEL_KEPT, "travel by lift and bump stops beside the fitted state's")                \
    X(BASIS_RIDE_HEIGHT, "lift - sag by the wheel rate - what the tyres give under the load")      \
    X(BASIS_CONSTANT_LOAD, "what the state adds to the axle, beside what the spring is made for")  \
    X(BASIS_CONSTANT_LOAD_KEEPS,                                                                   \
      "what the state adds to the axle, beside what leaves travel enough")                         \
    X(BASIS_PITCH, "rake in the state - rake unladen, on the same springs")                        \
    X(ADVICE_SPRING_SUITS, "the spring is made for this load")                                     \
    X(ADVICE_SPRING_DOES_NOT_SUIT, "the spring is not made for this load")                         \
    X(ADVICE_SPRING_KEEPS, "it suits this load: enough travel is kept")                            \
    X(ADVICE_SPRING_KEEPS_LESS, "it does not suit this load: too little travel is kept")           \
    X(ADVICE_TRAVEL_TOO_SHORT, "too little travel is kept: choose another spring")                 \
    X(TAKEN_LOAD_BY_TRAVEL, "a spring is to keep {} of its travel",                                \
      "spring_choices: constant_load_from and constant_load_to")                                   \
    X(BASIS_LIFT, "suspension: lift")                                                              \
    X(BASIS_NEW_SPRING, "free height change + W/k of the old - W/k of the new")                    \
    X(ADVICE_GIVE_UNDER_AXLE, "measure the clearance under the axle", "clearance: under_axle")     \
    X(ADVICE_GIVE_DIAMETERS, "read both tyres' overall diameter in the data book",                 \
      "data_book: overall_diameter")                                                               \
    X(ADVICE_GIVE_GROUND, "measure the lowest point of the body", "clearance: ground")             \
    X(ADVICE_GIVE_ROOF, "measure the roof height", "clearance: roof_height")                       \
    X(ADVICE_GIVE_LAMP_HEIGHT, "measure the height of the headlamps",                              \
      "clearance: headlamp: height")                                                               \
    X(ADVICE_GIVE_RATE, "look up the springs' wheel rate", "suspension: wheel_rate")               \
    X(ADVICE_GIVE_LOADS_AND_RATE,                                                                  \
      "look up the unladen weights, the wheelbase and the springs' wheel rate",                    \
      "vehicle: unladen and wheelbase; suspension: wheel_rate")                                    \
    X(ADVICE_NO_TYRE_DEFLECTION,                                                                   \
      "no relation holds for a tyre that is not radial: measure it loaded")                        \
    X(ADVICE_REFUSED_DEFLECTION,                                                                   \
      "no pressure carries this load: carry less, or choose other tyres")                          \
    X(ADVICE_DEFLECTS_TOO_FAR,                                                                     \
      "the tyres give more than half their section height: more pressure, or less aboard")         \
    X(ADVICE_GIVE_OVERHANG, "measure the point that comes nearest to the ground", "{}")            \
    X(ADVICE_ON_THE_GROUND, "it would stand on the ground: stiffer springs, or less aboard")       \
    X(ADVICE_ON_BUMP_STOPS, "it stands on its bump stops: stiffer springs, or less aboard")        \
    X(ADVICE_NO_ENTRANCE, "it does not pass the entrance")                                         \
    X(ADVICE_BEAM_TOO_LOW, "the beam is too low: have the headlamps set, unladen")                 \
    X(ADVICE_BEAM_DAZZLES, "the beam dazzles: have the headlamps set, unladen")                    \
    X(ADVICE_NO_AIM,                                                                               \
      "no aim suits every state: stiffer springs, less load behind, or a levelling device")        \
    X(ADVICE_POINT_IN_TYRE, "the point lies within this tyre's outline: the tyre would meet it")   \
    X(ADVICE_ITEM_IN_TYRE,                                                                         \
      "{}: the point lies within this tyre's outline: the tyre would meet it")                     \
    X(TAKEN_ALL_SPRUNG,                                                                            \
      "the whole axle load rides on the springs; a stiffer one lifts a little too much",           \
      "suspension: unsprung_mass")

#define WHEEL_REMARKS(X)                                                                           \
    X(BASIS_SCRUB, "centre plane from steering axis at axle height - loaded radius x "             \
                   "tan(kingpin inclination); camber left out")                                    \
    X(BASIS_BACKSPACING, "(rim width + flanges of about 25 mm together) / 2 + inset")              \
    X(BASIS_RIM_INNER, "rim width change / 2 + inset change - spacer change")                      \
    X(BASIS_RIM_OUTER, "rim width change / 2 - inset change + spacer change")                      \
    X(BASIS_CENTRE_HOLE, "beside the fitted wheel's centre hole")                                  \
    X(BASIS_BOLTS, "beside the fitted wheel's bolts")                                              \
    X(BASIS_AS_TRIED, "as tried")                                                                  \
    X(BASIS_MOUNTING_OPEN, "not given under wheel: mounting, of both wheels")                      \
    X(ADVICE_SCRUB_CHANGES_SIDES,                                                                  \
      "the scrub radius changes sides: steering and braking pull otherwise")                       \
    X(ADVICE_SMALLER_BORE, "smaller than the fitted wheel's: it does not go over the hub")         \
    X(ADVICE_LARGER_BORE, "larger than the fitted wheel's: it needs a centring ring")              \
    X(ADVICE_OTHER_CIRCLE, "{} bolts, and the hub has {}: the circle is another")                  \
    X(ADVICE_OTHER_BOLTS, "{} bolts, and the hub has {}: it does not go on")                       \
    X(ADVICE_TOUCHES_BRAKE, "it touches the brake: choose another wheel")                          \
    X(ADVICE_CHECK_ONE, "check {}")                                                                \
    X(ADVICE_CHECK_TWO, "check {}, {}")                                                            \
    X(ADVICE_CHECK_THREE, "check {}, {}, {}")                                                      \
    X(PHRASE_HUB_BORE, "hub bore")                                                                 \
    X(PHRASE_BOLT_PATTERN, "bolt pattern")                                                         \
    X(PHRASE_BRAKE_ROOM, "room round the brake")

#define SPARE_REMARKS(X)                                                                           \
    X(BASIS_SPARE_SPACE, "measured space less the largest tyre")                                   \
    X(BASIS_SPARE_WITHOUT_AIR, "measured space less the spare without air")                        \
    X(BASIS_SPARE_ROLLS,                                                                           \
      "rolling circumference; a quarter inch is quoted (" COMMON_PRACTICE ", no source)")          \
    X(BASIS_SPARE_AS_WORN, "with 2 pi x the difference of tread depth, a bound: the belt takes "   \
                           "up part of it")                                                        \
    X(BASIS_SPARE_SET, "designation of the spare beside the other four: {}")                       \
    X(BASIS_SPARE_MASS, "counted in the axle loads where the spare is carried")                    \
    X(ADVICE_GIVE_SPARE_SPACE, "measure the space for the spare", "clearance: spare_space")        \
    X(ADVICE_CARRY_ELSEWHERE, "carry the spare elsewhere")                                         \
    X(ADVICE_SPARE_OF_SET_FITS, "order a spare of the set, which goes in")                         \
    X(ADVICE_ONLY_WITHOUT_AIR, "it goes in only without air: carry a pump")                        \
    X(ADVICE_GIVE_SPARE_BOOK, "read the spare's and the tyres' revolutions in the data book",      \
      "data_book: revs_per_km")                                                                    \
    X(ADVICE_SPARE_WINDS_UP, "it winds up coupled axles: short distances only, or one of the set") \
    X(ADVICE_SPARE_UNLIKE, "it rolls unlike its neighbour: short distances only")                  \
    X(ADVICE_TEMPORARY_SPARE, "a temporary spare: its own speed and pressure apply")               \
    X(ADVICE_WAY_HOME, "for the way home only; one of the set can stay on")                        \
    X(ADVICE_ROTATE_FIVE, "stays new while four wear: rotate all five, or change in pairs")        \
    X(ADVICE_GIVE_SPARE_PLACE, "say where the spare is carried, so that the axle loads count it",  \
      "clearance: spare_space: at")                                                                \
    X(TAKEN_NO_SPARE_MASS, "both spares are not weighed: no change of mass is taken",              \
      "spare: mass")                                                                               \
    X(PHRASE_FIVE_ROTATED, "five alike, rotated")                                                  \
    X(PHRASE_FIVE_ALIKE, "five alike, not rotated")                                                \
    X(PHRASE_OTHER_SPARE, "another tyre than the four")

#define LIMIT_REMARKS(X)                                                                           \
    X(BASIS_HOUSE_LIMIT, "house limit (limits)")                                                   \
    X(BASIS_TRACK, "-2 x inset change + 2 x spacer change")                                        \
    X(ADVICE_SMALLER_CHANGE, "choose a smaller change, or have it approved")                       \
    X(ADVICE_GIVE_CHANGE, "read it for both tyres and wheels")                                     \
    X(ADVICE_GIVE_TRAVEL, "measure the travel to bump and to droop",                               \
      "suspension: travel_to_bump and travel_to_droop")                                            \
    X(ADVICE_NOT_ITS_RULE, "not this vehicle's rule: name the limits that are for it",             \
      "limits: published")                                                                         \
    X(ADVICE_GIVE_KIND, "say what kind of vehicle it is: the rule depends on it", "vehicle: kind") \
    X(ADVICE_GIVE_CATEGORY, "look up the vehicle's category: the rule depends on it",              \
      "vehicle: category")                                                                         \
    X(ADVICE_GIVE_FRAME, "say whether it has a frame: the rule depends on it", "vehicle: frame")   \
    X(ADVICE_GIVE_DRIVE, "say which wheels are driven: the rule depends on it", "vehicle: drive")

#define CLEARANCE_REMARKS(X)                                                                       \
    ARCH_REMARKS(X)                                                                                \
    BODY_REMARKS(X)                                                                                \
    WHEEL_REMARKS(X)                                                                               \
    SPARE_REMARKS(X)                                                                               \
    LIMIT_REMARKS(X)

#endif
