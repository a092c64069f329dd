/* The rule by which a tyre's capacity was found. */
#include "report/load/loaded_setup.h"
#include "tables/lookup.h"

static enum remark_id source_of(const struct tyre_rating *rating)
{
    if (rating->moulded)
        return PHRASE_MOULDED;
    if (rating->listed)
        return PHRASE_LISTED;
    return rating->ceiling_assumed ? PHRASE_BY_LOAD_RANGE : PHRASE_LOAD_INDEX;
}

static enum remark_id reduction_of(const struct tyre_rating *rating)
{
    if (rating->speed_factor >= 1)
        return REMARK_NONE;
    return is_commercial_tyre(rating) ? PHRASE_COMMERCIAL_REDUCED : PHRASE_REDUCED;
}

struct remark capacity_basis(struct arena *arena, const struct axle_pressures *axle)
{
    const struct tyre_rating *rating = &axle->rating;
    bool twin = axle->dual && rating->dual_assumed, divided = rating->divisor > 1;
    return REMARK_WITH(arena, BASIS_CAPACITY, say_text(inflation_rows[rating->class].rule),
                       say_remark(arena, remark(source_of(rating))),
                       say_remark(arena, remark(twin ? PHRASE_TWIN_ASSUMED : REMARK_NONE)),
                       say_remark(arena, remark(divided ? PHRASE_DIVIDED : REMARK_NONE)),
                       say_remark(arena, remark(reduction_of(rating))));
}
