#include "reading/cures_text.h"

#include "base/known.h"
#include "reading/remark_text.h"

static const struct {
    enum remark_id more, less, none;
} rows[CURE_COUNT] = {
    [CURE_BUMP_STOP] = {PHRASE_BUMP_STOP_LONGER, PHRASE_BUMP_STOP_LONGER, REMARK_NONE},
    [CURE_LIFT] = {PHRASE_MORE_LIFT, PHRASE_MORE_LIFT, PHRASE_NO_LIFT},
    [CURE_TRIM] = {PHRASE_TRIMMED, PHRASE_TRIMMED, PHRASE_NO_TRIM},
    [CURE_INSET] = {PHRASE_MORE_INSET, PHRASE_LESS_INSET, PHRASE_NO_INSET},
};

static const char *joined(struct arena *arena, const char *text, const char *with,
                          struct remark remark, bool us)
{
    return remark.id == REMARK_NONE
               ? text
               : arena_format(arena, "%s%s%s", text, with, remark_text(arena, &remark, us));
}

const char *cures_text(struct arena *arena, const char *wrong, const struct cures *cures, bool us)
{
    const char *text = wrong, *with = ": ";
    for (int i = 0; i < CURE_COUNT; i++) {
        double amount = cures->amount[i];
        if (!(cures->offered & 1u << i) || !known(amount) || isinf(amount))
            continue;
        text = joined(
            arena, text, with,
            REMARK_WITH(arena, amount > 0 ? rows[i].more : rows[i].less, say_enough(amount)), us);
        with = ", or ";
    }
    for (int i = 0; i < CURE_COUNT; i++)
        if (cures->offered & 1u << i && isinf(cures->amount[i]))
            text = joined(arena, text, "; ", remark(rows[i].none), us);
    for (int i = 0; i < CURE_COUNT; i++)
        text = joined(arena, text, "; ", cures->lacking[i], us);
    return text;
}
