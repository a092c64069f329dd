/* What the tyre part says of its figures: rows of the table of remarks (report/remarks.h). */
#ifndef TYRESUM_REPORT_TYRE_REMARKS_H
#define TYRESUM_REPORT_TYRE_REMARKS_H

#define TYRE_REMARKS(X)                                                                            \
    X(BASIS_UN_R30, "UN R30 rule")                                                                 \
    X(BASIS_UN_R54, "UN R54 rule")                                                                 \
    X(BASIS_MOULDED, "as moulded")                                                                 \
    X(BASIS_TABLE_OF_SIZES, "table of sizes (" FROM_MEMORY ")")                                    \
    X(BASIS_82_SERIES, "82 series taken (convention)")                                             \
    X(BASIS_DATA_BOOK, "data book")                                                                \
    X(BASIS_NO_RULE, "unknown, the data book decides")                                             \
    X(BASIS_RIM_FACTOR, "by factor (ISO 4000-1, " FROM_MEMORY ")")                                 \
    X(BASIS_RIM_FACTOR_DERIVED, "by factor (derived from printed rims)")                           \
    X(BASIS_ENVELOPE_R30, "UN R30 6.1.4, 6.1.5, " FROM_MEMORY)                                     \
    X(BASIS_ENVELOPE_R30_SNOW, "UN R30 6.1.4, 6.1.5, snow, " FROM_MEMORY)                          \
    X(BASIS_ENVELOPE_R54, "UN R54 6.1.4, 6.1.5, " FROM_MEMORY)                                     \
    X(BASIS_ENVELOPE_R54_SNOW, "UN R54 6.1.4, 6.1.5, snow, " FROM_MEMORY)                          \
    X(BASIS_ENVELOPE_SPECIAL, "UN R54 6.1.4, 6.1.5, special use, " FROM_MEMORY)                    \
    X(BASIS_ENVELOPE_SPECIAL_SNOW, "UN R54 6.1.4, 6.1.5, special use and snow, " FROM_MEMORY)      \
    X(BASIS_NO_ENVELOPE, "unknown")                                                                \
    X(BASIS_ROLLING, "ETRTO rolling circumference, 3.05 D radial or 2.99 D diagonal")              \
    X(BASIS_ROLLING_RADIAL, "ETRTO 3.05 D")                                                        \
    X(BASIS_ROLLING_DIAGONAL, "ETRTO 2.99 D, " FROM_MEMORY)                                        \
    X(BASIS_LOADED_RADIUS, "0.912 D/2 at the rated load")                                          \
    X(BASIS_LOADED_RADIUS_SHORT, "0.912 D/2")                                                      \
    X(BASIS_SAME_RULE, "by the same rule for both tyres")                                          \
    X(BASIS_MIXED_SOURCES, "one of the two tyres has data-book figures")                           \
    X(ADVICE_MIXED_SOURCES,                                                                        \
      "the change is by the rule for both; give both tyres' data-book figures", "data_book")       \
    X(ADVICE_DIAMETER, "no rule measures this size: read it in the data book",                     \
      "data_book: overall_diameter")                                                               \
    X(BASIS_LOAD_INDEX, "load index, UN R30 / R54 Annex 4")                                        \
    X(BASIS_LISTED_INDEX, "load index not written: as listed for the load range, " FROM_MEMORY)    \
    X(ADVICE_LOAD_INDEX, "below the fitted tyre's {}: local codes may refuse it")                  \
    X(BASIS_LISTS_OF_SIZES, "list of sizes, " FROM_MEMORY)                                         \
    X(ADVICE_INDEX_BEYOND_LISTS,                                                                   \
      "lists have {} at the most for the size, not {}: read the sidewall", "size")                 \
    X(ADVICE_SERVICE, "read the service description of both tyres, such as 120/116R", "size")      \
    X(BASIS_SPEED_SYMBOL, "speed symbol, UN R30 / R54")                                            \
    X(ADVICE_SPEED_SYMBOL, "below the top speed: choose a higher speed symbol")                    \
    X(ADVICE_NAME_SYMBOL_RULE,                                                                     \
      "below the top speed: choose a higher speed symbol; or name a marked tyre's rule",           \
      "limits: speed_symbol")                                                                      \
    X(ADVICE_MARK_OF_RULE,                                                                         \
      "below the top speed, without the mark of {}: choose a higher speed symbol")                 \
    X(ADVICE_RULE_OF_OTHER_VEHICLES,                                                               \
      "below the top speed; {} is for other vehicles: choose a higher speed symbol")               \
    X(ADVICE_BELOW_LEAST_OF_RULE,                                                                  \
      "below the least speed of the rule: choose a higher speed symbol")                           \
    X(ADVICE_SPEED_LABEL,                                                                          \
      "below the top speed: label {} in the driver's view, and drive no faster")                   \
    X(ADVICE_LABELLED, "below the top speed: the label with {} stays in the driver's view")        \
    X(ADVICE_NO_FASTER, "below the top speed: drive no faster than {}")                            \
    X(ADVICE_GROSS_RATING, "read the gross rating on the vehicle's plate",                         \
      "vehicle: ratings: gross")                                                                   \
    X(BASIS_TEMPORARY_SPEED,                                                                       \
      "temporary use, to 80 km/h where nothing else is marked (UN R64, " FROM_MEMORY ")")          \
    X(ADVICE_TEMPORARY_USE, "for temporary use, and not for a set: choose another tyre")           \
    X(PHRASE_SLOWER, "its speed symbol is below the fitted tyre's")                                \
    X(PHRASE_READS_LOW, "the speedometer would read under")                                        \
    X(PHRASE_CARRIES_LESS,                                                                         \
      "at {} it carries less than the fitted tyre; as much from {}, not to set")                   \
    X(PHRASE_CARRIES_NEVER, "no pressure that it allows carries what the fitted tyre does at {}")  \
    X(PHRASE_CARRIES_UNKNOWN,                                                                      \
      "pressure for equal load not known: read both load indices and load ranges")                 \
    X(ADVICE_GIVE_SYMBOL, "read the speed symbol on the sidewall", "size")                         \
    X(ADVICE_TOP_SPEED, "look up the vehicle's top speed", "vehicle: top_speed")                   \
    X(BASIS_BOOK_RIMS, "permitted rims of the data book")                                          \
    X(BASIS_RIMS, "rims: {}")                                                                      \
    X(BASIS_RIMS_BY_END, "rims: narrowest {}, widest {}")                                          \
    X(ADVICE_RIM_WIDTH, "read the width stamped on the wheel", "wheel: width")                     \
    X(ADVICE_BOOK_RIMS, "no rule gives its rims: read them in the data book",                      \
      "data_book: rim_min and rim_max")                                                            \
    X(ADVICE_PERMITTED_RIM, "choose a permitted rim")                                              \
    X(ADVICE_OTHER_WHEEL, "far outside the rims of this size: choose another wheel")               \
    X(ADVICE_BOOK_MUST_PERMIT,                                                                     \
      "outside the rims by factor: look up whether the data book permits it",                      \
      "data_book: rim_min and rim_max")                                                            \
    X(ADVICE_BOOK_DECIDES, "look it up in the data book, which decides")                           \
    X(TAKEN_SIZE_AS, "the size is read as {}: {}")                                                 \
    X(TAKEN_FITTED_WHEEL, "the option names no wheel: the fitted wheel is taken", "wheel")         \
    X(TAKEN_SAME_MASS, "tyre and wheel are not weighed for both: no change of mass is taken",      \
      "mass")                                                                                      \
    X(TAKEN_NO_SPACER, "no spacer is named: none is taken", "wheel: spacer")                       \
    X(TAKEN_NO_SPARE, "no spare is named: none is judged; write none where none is carried",       \
      "tyres: spare")                                                                              \
    X(TAKEN_SAME_SPARE, "the option names no spare: the spare carried now stays", "spare")         \
    X(TAKEN_SPARE_WHEEL, "the spare names no wheel: the tyres' wider wheel of its rim code",       \
      "tyres: spare: wheel")                                                                       \
    X(TAKEN_SPARE_RIM, "the spare names no wheel, and none has its rim code: its measuring rim",   \
      "tyres: spare: wheel")

#endif
