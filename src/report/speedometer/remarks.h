/* What the speedometer part says of its figures: rows of the table of remarks (report/remarks.h).
 */
#ifndef TYRESUM_REPORT_SPEEDOMETER_REMARKS_H
#define TYRESUM_REPORT_SPEEDOMETER_REMARKS_H

#define SPEEDOMETER_REMARKS(X)                                                                     \
    X(BASIS_NEW_ERROR, "1 + e_new = (1 + e) C_old / C_new")                                        \
    X(BASIS_TRUE_SPEED, "true = shown (C_new / C_old) / (1 + e)")                                  \
    X(BASIS_SHOWN_SPEED, "shown = true (1 + e) C_old / C_new")                                     \
    X(BASIS_TRUE_ENTERED, "what is true at that speed, with the setting to enter")                 \
    X(BASIS_SHOWN_NOW, "what is shown at exactly the limit, as set now")                           \
    X(BASIS_SHOWN_ENTERED, "what is shown at exactly the limit, with the setting to enter")        \
    X(BASIS_CIRCUMFERENCE_CHANGE, "C_new / C_old - 1; limit: tyres of one size, table rolling")    \
    X(BASIS_AXLES_CHANGE, "(C_front / C_rear) new / old - 1")                                      \
    X(ADVICE_GIVE_TYRE, "read both tyres' revolutions in the data book", "data_book: revs_per_km") \
    X(ADVICE_GIVE_DIAMETER, "read the diameter of {}: worn tread is a share of it",                \
      "data_book: overall_diameter")                                                               \
    X(ADVICE_GIVE_RULE, "name the rule, such as un_r39", "speedometer: rule")                      \
    X(ADVICE_GIVE_RULE_UNDER, "reads under, which few rules allow: name the rule, such as un_r39", \
      "speedometer: rule")                                                                         \
    X(ADVICE_CORRECT, "correct the setting")                                                       \
    X(ADVICE_OFF_AT, "{} at {}{}: {}")                                                             \
    X(PHRASE_OFF, "{}")                                                                            \
    X(ADVICE_TEST_SPEED, "{}: correct the setting")                                                \
    X(PHRASE_READS_UNDER, "reads under")                                                           \
    X(PHRASE_READS_OVER, "reads too far over")                                                     \
    X(PHRASE_ON_LARGEST, " on the largest tyre")                                                   \
    X(PHRASE_ON_SMALLEST, " on the smallest tyre")                                                 \
    X(PHRASE_WHEN_NEW, " when new, measured on worn tread")                                        \
    X(PHRASE_WITH_ITS_TREAD, " with the tread that it has")                                        \
    X(PHRASE_WHEN_WORN, " when worn")                                                              \
    X(PHRASE_NONE_BETTER, "no setting does better")                                                \
    X(PHRASE_ENTER, "enter {}")                                                                    \
    X(ADVICE_COUNT_ALIKE, "anti-lock, stability, gearbox and cruise control count these turns: "   \
                          "correct them alike; fit a matched set")                                 \
    X(ADVICE_NO_MATCHED_SET,                                                                       \
      "not a matched set: anti-lock and stability control see a difference on straight roads")     \
    X(ADVICE_CROSSES_BELOW, "{} below this true speed")                                            \
    X(ADVICE_CROSSES_ABOVE, "{} above this true speed")                                            \
    SPEEDOMETER_ANSWER_REMARKS(X)                                                                  \
    SPEEDOMETER_SETTING_REMARKS(X)                                                                 \
    SPEEDOMETER_READING_REMARKS(X)                                                                 \
    SPEEDOMETER_ODOMETER_REMARKS(X)

#define SPEEDOMETER_ANSWER_REMARKS(X)                                                              \
    X(BASIS_ANSWER, "what must be entered, what remains, whether it is lawful")                    \
    X(ADVICE_ANSWER_UNKNOWN, "unknown: {}")                                                        \
    X(ADVICE_ANSWER_NO_SETTING, "no setting is given to change; {}; {}")                           \
    X(ADVICE_ANSWER_NO_CHOICE, "{}: adapter of ratio {} needed; now {}")                           \
    X(ADVICE_ANSWER_ENTER, "enter {} {} ({}); then {}; {}{}{}")                                    \
    X(ADVICE_ANSWER_LEAVE, "leave {} {} ({}); then {}; {}{}{}")                                    \
    X(PHRASE_AIM, "aim: {}")                                                                       \
    X(PHRASE_STANDS, "lawful as it stands")                                                        \
    X(PHRASE_EITHER_SIDE, "; {} {}: {}; {}: {}")                                                   \
    X(PHRASE_NONE_WITHIN, "no {} is within min and max")                                           \
    X(PHRASE_NONE_LAWFUL, "no possible {} is lawful by {}")                                        \
    X(PHRASE_BUT, "; but {}")                                                                      \
    X(PHRASE_READINGS_FAR_OFF, "the readings are very far off: check them")                        \
    X(PHRASE_PERCENT_OVER, "{} % over")                                                            \
    X(PHRASE_PERCENT_UNDER, "{} % under")                                                          \
    X(PHRASE_ERROR_AT, "{} at {}")                                                                 \
    X(PHRASE_NO_RULE, "lawful or not is unknown: no rule for it is given")                         \
    X(PHRASE_NOT_LAWFUL, "NOT lawful by {} ({} at {})")                                            \
    X(PHRASE_UNDER, "under")                                                                       \
    X(PHRASE_TOO_FAR_OVER, "too far over")                                                         \
    X(PHRASE_LAWFUL, "lawful by {}, {}{}{}")                                                       \
    X(PHRASE_SPEED, "{}")                                                                          \
    X(PHRASE_SPEED_RANGE, "{} to {}")                                                              \
    X(PHRASE_IF_NOMINAL, ", on a nominal tyre")                                                    \
    X(PHRASE_IF_READINGS, ", by few readings")

#define SPEEDOMETER_SETTING_REMARKS(X)                                                             \
    X(BASIS_AIM, "aim: {}{}")                                                                      \
    X(PHRASE_AS_BEFORE, "as before")                                                               \
    X(PHRASE_LOWEST_LAWFUL, "lowest lawful")                                                       \
    X(PHRASE_LOWEST_LAWFUL_TAKEN, "lowest lawful, none named")                                     \
    X(PHRASE_ZERO_TAKEN, "zero error, none named")                                                 \
    X(PHRASE_ZERO_NO_RULE, "zero error, no rule named")                                            \
    X(PHRASE_ZERO_NEW, "zero error, nothing before it")                                            \
    X(PHRASE_MARGIN_NONE, ", on the nominal circumference alone")                                  \
    X(PHRASE_MARGIN_SPREAD, ", with the smallest and the largest circumference")                   \
    X(PHRASE_MARGIN_READINGS,                                                                      \
      ", with the smallest and the largest circumference and the readings' own error")             \
    X(BASIS_NEAREST_NO_RULE, "nearest possible; no rule named")                                    \
    X(ADVICE_ENTER_FOR_AIM, "lawful as it is, and nearer to the aim with {}: enter it")            \
    X(ADVICE_ENTER_NEW, "nothing is set yet: enter {}")                                            \
    X(ADVICE_ENTER_AND_CHECK, "enter it, then check against a satellite receiver")                 \
    X(ADVICE_NOMINAL_ALONE, "lawful on the nominal tyre, not on every one allowed; enter it, "     \
                            "then check against a satellite receiver")                             \
    X(ADVICE_NOT_WHEN_NEW,                                                                         \
      "lawful with its tread, not when new; enter it, then check against a satellite receiver")    \
    X(ADVICE_NO_READING_MARGIN, "lawful, with no margin for the readings' error; take more, or "   \
                                "check against a satellite receiver")                              \
    X(ADVICE_LEAVE, "leave it as it is")                                                           \
    X(ADVICE_NONE_LAWFUL, "no possible setting is lawful")                                         \
    X(BASIS_EITHER_SIDE, "possible, next to the setting that meets the aim")                       \
    X(BASIS_EITHER_SIDE_ERROR, "error with that setting")                                          \
    X(ADVICE_ADAPTER, "no setting is lawful: an adapter of ratio {} is needed")                    \
    X(ADVICE_CHECK_KIND, "{} {} is far from the fitted tyre's own {}: check the kind")             \
    X(BASIS_SMALLEST_SETTING_CHANGE, "the lawful setting nearest to the one now")                  \
    X(BASIS_LAWFUL_SETTINGS, "lawful at every speed judged{}{}")                                   \
    X(PHRASE_ODOMETER_TOO, ", and for the odometer")                                               \
    X(BASIS_REMAINING, "error with the setting to enter")                                          \
    X(BASIS_REMAINING_EXACT, "error with the exact setting")                                       \
    X(BASIS_ADAPTER, "what an adapter must do to meet the aim with the setting now")               \
    X(BASIS_GEAR_RATIO, "driven teeth for the aim over driving teeth")                             \
    X(BASIS_COEFFICIENT,                                                                           \
      "w C_old / C_new; set the constant k to it (Regulation (EU) 165/2014, Annex I)")             \
    X(BASIS_SENSOR, "pulses a turn, times turns a wheel turn, over C")                             \
    X(ADVICE_GIVE_AXLE, "look up the axle ratio, and both tyres' revolutions in the data book",    \
      "drivetrain: axle; data_book: revs_per_km")

#define SPEEDOMETER_READING_REMARKS(X)                                                             \
    X(BASIS_FIT, "least squares; interval by Student's t, two-sided")                              \
    X(BASIS_FIT_OF_ONE, "least squares, {}, 1 reading")                                            \
    X(BASIS_FIT_OF_MANY, "least squares, {}, {} readings")                                         \
    X(BASIS_FITTED_LINE, "the fitted line itself, on {}; interval by Student's t, two-sided")      \
    X(BASIS_RESIDUAL, "studentised residual against Student's t, 5 % for all readings together")   \
    X(ADVICE_TAKE_MORE, "so few readings tell nothing of their own error: take more")              \
    X(ADVICE_FAR_OFF, "very far off: check that each is [shown, true], in the right unit")         \
    X(ADVICE_LEAVE_LAW_OPEN,                                                                       \
      "too few or too scattered to tell whether it is lawful; take more, and faster ones")         \
    X(ADVICE_READ_ELSEWHERE, "driven on \"{}\" they make the fitted error {}; {}; {}")             \
    X(PHRASE_NOT_AS_GIVEN, "the error given is {}")                                                \
    X(PHRASE_MAKERS_NEVER_UNDER, "a maker's instrument seldom has that (UN R39 5.3)")              \
    X(PHRASE_ON_THAT_TYRE, "driven on \"{}\" it would be {}: if so, name that tyre",               \
      "speedometer: readings_on")                                                                  \
    X(PHRASE_WHICH_TYRE, "were they driven on another tyre, or is [shown, true] exchanged?")       \
    X(ADVICE_OUTLIER,                                                                              \
      "stands out, and is kept in the fit; read it again, or take it out of the file")             \
    X(TAKEN_TRUE, "no error and no readings are given: the fitted tyre reads true",                \
      "speedometer: fitted_error or readings")                                                     \
    X(TAKEN_AS_ODOMETER, "no speed is read: the speedometer is off as the odometer is",            \
      "speedometer: readings")                                                                     \
    X(TAKEN_TOP_SPEED, "no top speed is given: judged up to 120 km/h, the highest test speed",     \
      "vehicle: top_speed")                                                                        \
    X(TAKEN_NEW_INSTRUMENT,                                                                        \
      "a new instrument, not yet set: told as it is to be set; nothing of its odometer",           \
      "speedometer: setting: now")                                                                 \
    X(TAKEN_NEW_FITTED,                                                                            \
      "the fitted tyre's error is that of a new one; a setting keeps no margin for new tread",     \
      "tyres: fitted: tread_depth and new_tread_depth")                                            \
    X(TAKEN_NEW_MEASURED,                                                                          \
      "the measured tyre's error is that of a new one; a setting keeps no margin for new tread",   \
      "tread_depth and new_tread_depth")                                                           \
    X(TAKEN_ONE_READING, "one reading gives a scale alone, and no interval; two at other speeds "  \
                         "would show an offset")                                                   \
    X(TAKEN_TWO_READINGS,                                                                          \
      "two readings give a scale alone; a third at another speed would show an offset")            \
    X(TAKEN_FALLING, "the readings do not rise with the speed: a scale alone; read them again")    \
    X(TAKEN_ONE_SPEED, "all readings are at one speed: a scale alone, and no offset")

#define SPEEDOMETER_ODOMETER_REMARKS(X)                                                            \
    X(BASIS_SHOWN_OVER_TRUE, "shown / true - 1")                                                   \
    X(ADVICE_ODOMETER, "correct the setting, or note the difference in the logbook")               \
    X(ADVICE_ODOMETER_BEYOND, "no setting lawful for the speedometer brings it within the rule; "  \
                              "note the difference in the logbook")                                \
    X(ADVICE_AS_SET_NOW, "as it is set now; not once {} is entered")                               \
    X(BASIS_TRUE_SINCE_CHANGE, "shown times C_new / C_old")                                        \
    X(BASIS_SHOWN_LESS_TRUE, "shown less true")                                                    \
    X(BASIS_SERVICE_DUE, "true interval times C_old / C_new")                                      \
    X(BASIS_CONSUMPTION, "true consumption per distance = shown times C_old / C_new")              \
    X(BASIS_ECONOMY, "true distance per volume = shown times C_new / C_old")                       \
    X(BASIS_TRUE_CONSUMPTION, "as worked out from the odometer with this tyre, corrected")         \
    X(BASIS_ODOMETER_READ, "100 (C_new / C_old) / (shown / true on the fitted tyre)")              \
    X(BASIS_ODOMETER_TAKEN,                                                                        \
      "100 C_new / C_old; the odometer is taken to be right on the fitted tyre")

#endif
