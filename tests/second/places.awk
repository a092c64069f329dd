# Part load: from where to where an item may stand. Every limit on an axle is a straight line over the
# place, by moments about the axles, so that each takes an end off; what no place changes is met or not.
END {
    for (s = 0; s < setups; s++) {
        load_class(s)
        for (k = 1; k <= states; k++)
            place_rows(s, k)
    }
}
function place_rows(s, k,    i, path)
{
    for (i = 1; "room_for/" i "/item" in text; i++) {
        path = "room_for/" i
        if (path "/mass" in value)
            span_rows(s, k, text[path "/item"], 0, value[path "/mass"], 0, \
                text[path "/on"] == "roof")
    }
    for (i = 1; i <= items; i++) {
        path = "carried/" i
        if ((k, i) in aboard && path "/at" in value && !(path "/tow_ball" in value) && \
            !(path "/seat" in text) && item_mass[i] > 0)
            span_rows(s, k, item[i], i, item_mass[i], item_side[i], on_roof[i])
    }
}
# `own`: the item's number where it stands somewhere already.
function span_rows(s, k, name, own, mass, side, roof,    a, fixed, x, cap)
{
    place_ends()
    fixed = own ? 0 : mass
    if (gross_load(s, k) + fixed > value["vehicle/ratings/gross"] || \
        (state_trailer[k] > 0 && train_load(s, k) + fixed > value["vehicle/ratings/combination"]) || \
        (roof && state_roof[k] + fixed > value["vehicle/ratings/roof"]))
        place_to = place_from - 1
    for (a = 1; a <= 2; a++) {
        x = own ? share(item_at[own], a) : 0
        bare[a] = axle_load(s, k, a) - (own ? mass * x : 0)
        bare_side[a] = state_side[k, a] - (own ? mass * side * x : 0)
    }
    for (a = 1; a <= 2; a++) {
        narrow(a, bare[a] - value["vehicle/ratings/" axle_name[a]], mass)
        narrow(a, -bare[a], -mass) # no axle is lifted
        cap = capacity(s, highest[s] - speed_pressure(s)) / (1 + reserve)
        corner_bounds(a, cap, mass, side)
        if (wheel_load[s] != "null")
            corner_bounds(a, wheel_load[s], mass, side)
        bump_bound(s, a, mass)
    }
    if (wheel_load[s] == "null" && own_wheel[s] || place_from > place_to)
        place_from = place_to = "null"
    load_figure(s, k, 0, "place_from", name, in_mm(place_from), "mm", "null", "")
    load_figure(s, k, 0, "place_to", name, in_mm(place_to), "mm", "null", "")
}
function in_mm(x) { return x == "null" ? x : x * 1000 }
# choice: the ends are the axles, the outermost points of the body and the outermost items
function place_ends(    i, path)
{
    place_from = 0
    place_to = wheelbase
    for (i = 0; i == 0 || "clearance/front_overhang/" i "/ahead" in value; i++) {
        path = "clearance/front_overhang" (i ? "/" i : "")
        place_from = min(place_from, -value[path "/ahead"])
    }
    for (i = 0; i == 0 || "clearance/rear_overhang/" i "/behind" in value; i++) {
        path = "clearance/rear_overhang" (i ? "/" i : "")
        place_to = max(place_to, wheelbase + value[path "/behind"])
    }
    for (i = 1; i <= items; i++)
        if ("carried/" i "/at" in value && !("carried/" i "/tow_ball" in value)) {
            place_from = min(place_from, item_at[i])
            place_to = max(place_to, item_at[i])
        }
}
# Of a bound over + slope x share <= 0 on axle a what is left of the span.
function narrow(a, over, slope,    x)
{
    if (slope == 0) {
        if (over > 0)
            place_to = place_from - 1
        return
    }
    x = -over / slope * wheelbase
    if (a == 1) {
        x = wheelbase - x
        slope = -slope
    }
    if (slope > 0)
        place_to = min(place_to, x)
    else
        place_from = max(place_from, x)
}
# Half the axle, and over the track 65 % of the whole moment or the axle's own, either way.
function corner_bounds(a, cap, mass, side,    track, whole)
{
    track = by_axle("vehicle/track", a)
    if (track == "null")
        track = 1e99
    whole = abs(bare_side[1] + bare_side[2] + mass * side)
    narrow(a, bare[a] / 2 + 0.65 * whole / track - cap, mass / 2)
    narrow(a, bare[a] / 2 + bare_side[a] / track - cap, mass / 2 + mass * side / track)
    narrow(a, bare[a] / 2 - bare_side[a] / track - cap, mass / 2 - mass * side / track)
}
function bump_bound(s, a, mass)
{
    if ("suspension/" axle_name[a] "/travel_to_bump" in value)
        narrow(a, bare[a] - value["vehicle/unladen/" axle_name[a]] - \
            2 * (tyre_mass[s] - tyre_mass[0]) - load_to_bump(a), mass)
}
# What both springs of an axle take until they stand on their bump stops: Hooke's law.
function load_to_bump(a)
{
    return 2 * spring_rate(a, 0) * (bump_travel(a, 1) + spring_lift(a, 0)) / g
}
