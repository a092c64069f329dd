/* What would make a tyre fit that does not: the smallest single change of bump stop, inset, trim
 * and lift, in figures and in words. */
#include "base/known.h"
#include "report/clearance/arch_view.h"

struct lock_question {
    const struct arch_view *view;
    const struct arch_change *change;
};

static double ask_lock_room(double inset_change_m, const void *data)
{
    const struct lock_question *question = data;
    return arch_lock_room_m(question->view, question->change, inset_change_m);
}

static double inset_for(const struct arch_view *view, const struct arch_change *change,
                        const struct arch_rooms *rooms)
{
    const struct lock_question question = {view, change};
    return inset_to_fit_m(rooms, ask_lock_room, &question);
}

static const char *inset_words(const struct arch_view *view, double inset_change_m)
{
    const char *length = length_text(view->plan, inset_change_m);
    if (inset_change_m > 0)
        return arena_format(view->plan->arena, "%s more inset", length);
    return arena_format(view->plan->arena, "%s less inset (or such a spacer)", length);
}

/* For the sides and the lock, whatever is above. */
static const char *inset_remedy(const struct arch_view *view, const struct arch_change *change,
                                const char *joined_by)
{
    struct arch_rooms rooms = change->rooms;
    rooms.ride_m = rooms.bump_m = UNKNOWN;
    double inset = inset_for(view, change, &rooms);
    if (!known(rooms.inner_m) || !known(rooms.outer_m))
        return "; room inside and outside must be known to say whether another inset helps";
    if (!known(inset))
        return "; no change of inset alone does it";
    return arena_format(view->plan->arena, "%s %s", joined_by, inset_words(view, inset));
}

static const char *remedy_above(const struct arch_view *view, bool at_bump, const char *length)
{
    if (at_bump)
        return arena_format(view->plan->arena,
                            "it may rub: bump stops longer by %s, or %s trimmed off the arch; lift "
                            "does not help here",
                            length, length);
    return arena_format(view->plan->arena, "it may rub: %s more lift, or %s trimmed off the arch",
                        length, length);
}

const char *arch_remedy(const struct arch_view *view, const struct arch_change *change,
                        enum quantity_id quantity, bool at_bump, double room_m)
{
    const char *length = length_text(view->plan, room_m);
    if (quantity == QUANTITY_ARCH_ABOVE)
        return remedy_above(view, at_bump, length);
    if (quantity == QUANTITY_ARCH_INNER)
        return arena_format(view->plan->arena, "it may rub on strut or arm%s",
                            inset_remedy(view, change, ":"));
    return arena_format(view->plan->arena, "it may rub: %s trimmed off the arch%s", length,
                        inset_remedy(view, change, ", or"));
}

/* Rounded up so that it is enough, unless that would leave the other side short. */
static double enough_inset(const struct arch_view *view, const struct arch_change *change,
                           double inset_m)
{
    double rounded = length_enough_m(view->plan, inset_m);
    struct arch_rooms moved = change->rooms;
    moved.inner_m -= rounded;
    moved.outer_m += rounded;
    moved.lock_m = arch_lock_room_m(view, change, rounded);
    return arch_fits(&moved) ? rounded : inset_m;
}

static void add_fit(const struct arch_view *view, const struct arch_change *change,
                    enum quantity_id quantity, double value, const char *action)
{
    struct figure figure =
        figure_of(quantity, value, "smallest single change that leaves no room short");
    figure.axle = view->axle;
    figure.at = change->name;
    figure.action = action;
    figures_add(view->figures, figure);
}

static const char *fit_words(const struct arch_view *view, double length_m, const char *does,
                             const char *does_not)
{
    return known(length_m)
               ? arena_format(view->plan->arena, "%s %s", does, length_text(view->plan, length_m))
               : does_not;
}

void report_arch_fit(const struct arch_view *view, const struct arch_change *change)
{
    const struct arch_rooms *rooms = &change->rooms;
    if (arch_fits(rooms))
        return;
    double stop = bump_stop_to_fit_m(rooms), lift = lift_to_fit_m(rooms);
    double trim = trim_to_fit_m(rooms), inset = inset_for(view, change, rooms);
    add_fit(view, change, QUANTITY_BUMP_STOP_TO_FIT, length_enough_m(view->plan, stop),
            fit_words(view, stop, "make the bump stops longer by",
                      "bump stops alone do not make it fit"));
    if (known(inset))
        inset = enough_inset(view, change, inset);
    add_fit(view, change, QUANTITY_INSET_TO_FIT, inset,
            known(inset) ? inset_words(view, inset) : "another inset alone does not make it fit");
    add_fit(view, change, QUANTITY_TRIM_TO_FIT, length_enough_m(view->plan, trim),
            fit_words(view, trim, "trim the arch by", "trimming alone does not make it fit"));
    add_fit(view, change, QUANTITY_LIFT_TO_FIT, length_enough_m(view->plan, lift),
            fit_words(view, lift, "lift it more by", "lift alone does not make it fit"));
}
