# Part clearance: the wheel arch, edges of tyre and rim, track. Edge moves: outer = dS/2 - d inset + d
# spacer, inner = dS/2 + d inset - d spacer; track = -2 d inset + 2 d spacer.
# choice: nominal is the option's nominal tyre beside the fitted one's, largest the largest that the
# standard allows beside the fitted nominal one, which is what the gaps were measured with.
END {
    for (s = 0; s < setups; s++)
        for (a = 1; a <= 2; a++) {
            wheel_move_rows(s, a)
            if ("clearance/arch/" axle_name[a] "/above" in value) {
                arch_rows(s, a, "nominal", diameter[s], width_on_rim[s])
                # the fitted tyre is the one that was measured
                arch_rows(s, a, "largest", s ? diameter_most[s] : diameter[s], \
                    s ? width_most[s] : width_on_rim[s])
            }
            travel_rows(s, a)
        }
}
function offset_change(s) { return inset[s] - inset[0] - (spacer[s] - spacer[0]) }
function wheel_move_rows(s, a,    half, move, track)
{
    # flanges of about 25 mm together
    room(s, 0, a, "backspacing", "", ((rim_width[s] + 0.025) / 2 + inset[s]) * 1000, "mm", "null", "")
    move = -2 * offset_change(s) * 1000
    track_limits(s, a, move)
    if (s == 0)
        return
    half = (width_on_rim[s] - width_on_rim[0]) / 2
    edge_rows(s, a, "tyre_edge", "nominal", half)
    edge_rows(s, a, "rim_edge", "", (rim_width[s] - rim_width[0]) / 2)
    room(s, 0, a, "track_change", "", move, "mm", "null", "")
    room(s, 0, a, "arch_above_change", "nominal", -(diameter[s] - diameter[0]) / 2 * 1000, "mm", \
        "null", "")
    room(s, 0, a, "arch_inner_change", "nominal", -(half + offset_change(s)) * 1000, "mm", "null", "")
    room(s, 0, a, "arch_outer_change", "nominal", -(half - offset_change(s)) * 1000, "mm", "null", "")
}
function edge_rows(s, a, edge, at, half)
{
    room(s, 0, a, edge "_inner_move", at, (half + offset_change(s)) * 1000, "mm", "null", "")
    room(s, 0, a, edge "_outer_move", at, (half - offset_change(s)) * 1000, "mm", "null", "")
}
function track_limits(s, a, move,    most)
{
    if (published_limit("de_751")) {
        # VdTUEV Merkblatt 751: 2 % of the track
        most = 0.02 * by_axle("vehicle/track", a) * 1000
        room(s, 0, a, "track_change", "de_751", move, "mm", most, judged(move <= most))
    }
    if ("limits/track_change/max" in value) {
        most = value["limits/track_change/max"] * 1000
        room(s, 0, a, "track_change", "house", move, "mm", most, judged(move <= most))
    }
}
# What is short by no more than may be trimmed is work: not inside, at lock only off the arch, and not
# what a longer bump stop, which these demos do not need, would mend.
function trimmed(quantity, x,    trim)
{
    trim = "allowed/trim" in value ? value["allowed/trim"] : 0
    if (quantity == "arch_inner" || \
        (quantity == "arch_at_lock" && text["clearance/steering/meets"] != "arch"))
        trim = 0
    return x < -1e-12 && x >= -trim - 1e-12 && trim > 0 ? "task" : judged(x >= -1e-12)
}
function arch_row(s, k, a, quantity, at, which, x, need,    chained)
{
    at = which (at == "" ? "" : ", ") at
    # only the largest is judged
    room(s, k, a, quantity, at, x * 1000, "mm", which == "largest" ? 0 : "null", \
        which == "largest" ? trimmed(quantity, x) : "")
    if (which == "largest")
        shortest = min(shortest, x - need)
    if (need) {
        chained = x - need
        room(s, k, a, quantity, at ", snow chains", chained * 1000, "mm", \
            which == "largest" ? 0 : "null", which == "largest" ? trimmed(quantity, chained) : "")
    }
}
function arch_rows(s, a, which, d, w,    path, rise, half, k, bump, need, at_lock, lock_short)
{
    path = "clearance/arch/" axle_name[a] "/"
    rise = (d - diameter[0]) / 2
    half = (w - width_on_rim[0]) / 2
    need = chains[s]
    shortest = 0
    for (k = 1; k <= states; k++)
        arch_row(s, k, a, "arch_above", "ride height", which, \
            value[path "above"] - rise + lift(a) - sag(k, a), need)
    # lift does not help at the bump stop
    bump = value[path "above"] - value["suspension/" axle_name[a] "/travel_to_bump"] + \
        value["suspension/" axle_name[a] "/bump_stop_change"] - rise
    arch_row(s, 0, a, "arch_above", "bump", which, bump, need)
    arch_row(s, 0, a, "arch_inner", "", which, value[path "inner"] - half - offset_change(s), need)
    arch_row(s, 0, a, "arch_outer", "", which, value[path "outer"] - half + offset_change(s), need)
    lock_short = 0
    if (path "at_lock" in value) {
        at_lock = value[path "at_lock"] - lock_growth(s, d, w, rise, half)
        arch_row(s, 0, a, "arch_at_lock", "", which, at_lock, need)
        lock_short = at_lock - need < 0
    }
    # What must be cut away where something is short, in whole millimetres.
    # At lock only where it is the arch that the tyre meets: else nobody can tell.
    if (which == "largest" && shortest < 0 && \
        (!lock_short || text["clearance/steering/meets"] == "arch"))
        room(s, 0, a, "trim_to_fit", "largest" (need ? ", snow chains" : ""), \
            steps_up(-shortest * 1000, 1), "mm", "null", "")
}
# Growth towards the arch at full lock. Where the tread is known to come nearest and there is steering
# geometry, that of the radius on which the tyre's
# outer or inner corner swings about the steering axis; without, the bound of a corner that moved out
# and up. choice: whichever corner grows more; a bound takes only what grows.
function lock_growth(s, d, w, rise, half,    axis, outer, inner)
{
    if (text["clearance/steering/touches"] == "tread" && \
        "clearance/steering/axis_to_centre" in value) {
        axis = value["clearance/steering/axis_to_centre"]
        outer = corner_radius(d, axis - offset_change(s) + w / 2) - \
            corner_radius(diameter[0], axis + width_on_rim[0] / 2)
        inner = corner_radius(d, axis - offset_change(s) - w / 2) - \
            corner_radius(diameter[0], axis - width_on_rim[0] / 2)
        return max(outer, inner)
    }
    half = max(0, max(half + offset_change(s), half - offset_change(s)))
    rise = max(0, rise)
    return sqrt(rise * rise + half * half)
}
function corner_radius(d, across) { return sqrt(d * d / 4 + across * across) }
# Of the suspension alone: the same on every tyre.
function travel_rows(s, a,    path, travel, k)
{
    path = "suspension/" axle_name[a] "/"
    if (s > 0 || !(path "travel_to_bump" in value))
        return
    travel = value[path "travel_to_bump"] + lift(a) - value[path "bump_stop_change"]
    for (k = 1; k <= states; k++)
        room(s, k, a, "bump_travel_left", "", (travel - sag(k, a)) * 1000, "mm", "null", "")
    room(s, 0, a, "suspension_travel_kept", "bump", 100 * travel / value[path "travel_to_bump"], \
        "%", "null", "")
}
