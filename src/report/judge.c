#include "report/judge.h"

static double slack(double limit)
{
    return 1e-9 * (1 + fabs(limit));
}

bool meets_limit(double value, enum limit_side side, double limit)
{
    return side == LIMIT_AT_LEAST ? value >= limit - slack(limit) : value <= limit + slack(limit);
}

static struct figure with_side(struct figure figure, double limit, enum limit_side side)
{
    figure.limit = limit;
    figure.limit_side = side;
    return figure;
}

struct figure limited_at_least(struct figure figure, double limit)
{
    return with_side(figure, limit, LIMIT_AT_LEAST);
}

struct figure limited_at_most(struct figure figure, double limit)
{
    return with_side(figure, limit, LIMIT_AT_MOST);
}

struct figure limited_within(struct figure figure, double min, double max)
{
    double value = figure.value;
    bool nearer_to_min =
        known(min) && (!known(max) || value - min < max - value - slack(max - min));
    return nearer_to_min ? limited_at_least(figure, min) : limited_at_most(figure, max);
}

/* What the condition or the limit says; ANSWER_NOT_ASKED where there is neither. */
static enum answer answer_for(const struct figure *figure, const struct judgement *how)
{
    if (how->holds != ANSWER_NOT_ASKED)
        return how->holds;
    if (figure->limit_side == LIMIT_NO_SIDE)
        return how->if_unknown.id != REMARK_NONE && !known(figure->value) ? ANSWER_UNKNOWN
                                                                          : ANSWER_NOT_ASKED;
    if (!known(figure->value) || !known(figure->limit))
        return ANSWER_UNKNOWN;
    return answer_of(true, meets_limit(figure->value, figure->limit_side, figure->limit));
}

static struct figure with_verdict(struct figure figure, enum verdict verdict, struct remark advice)
{
    figure.verdict = verdict;
    figure.advice = advice;
    return figure;
}

static bool is_doubtful(const struct figure *figure, const struct judgement *how)
{
    return how->holds == ANSWER_NOT_ASKED && figure->limit_side != LIMIT_NO_SIDE &&
           clearly_above(how->tolerance, fabs(figure->value - figure->limit));
}

static struct figure to_be_found_out(struct figure figure, const struct judgement *how,
                                     struct remark advice)
{
    figure.cure.task = how->ask;
    return with_verdict(figure, VERDICT_UNKNOWN, advice);
}

static struct figure to_be_done(struct figure figure, const struct judgement *how)
{
    figure.cure = how->cure;
    return with_verdict(figure, VERDICT_TASK,
                        how->if_cured.id != REMARK_NONE ? how->if_cured : how->if_broken);
}

struct figure judged(struct figure figure, const struct judgement *how)
{
    for (size_t i = 0; i < how->need_count; i++)
        if (!how->needs[i].known)
            return to_be_found_out(figure, how, how->needs[i].advice);
    if (is_doubtful(&figure, how) && how->doubtful != VERDICT_NONE)
        return with_verdict(figure, how->doubtful, how->if_doubtful);
    if (is_doubtful(&figure, how))
        return to_be_found_out(figure, how, how->if_doubtful);
    switch (answer_for(&figure, how)) {
    case ANSWER_UNKNOWN:
        return to_be_found_out(figure, how, how->if_unknown);
    case ANSWER_NO:
        if (how->cure.task != TASK_NONE)
            return to_be_done(figure, how);
        return with_verdict(figure, how->broken == VERDICT_NONE ? VERDICT_FAIL : how->broken,
                            how->if_broken);
    case ANSWER_YES:
        return with_verdict(figure,
                            how->met_is_none           ? VERDICT_NONE
                            : how->met == VERDICT_NONE ? VERDICT_OK
                                                       : how->met,
                            how->if_met);
    default:
        return with_verdict(figure, VERDICT_NONE, how->if_met);
    }
}
