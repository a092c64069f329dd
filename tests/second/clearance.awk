# Part clearance: ground and body clearance, the attitude of the body, angles, height, the spare, and
# limits on changes. A height above the ground changes with the loaded radius, the lift and the sag of
# the springs under what is carried; tyre and wheel are unsprung and sag nothing.
END {
    for (s = 0; s < setups; s++) {
        radius_change[s] = loaded_radius[s] - loaded_radius[0]
        for (k = 1; k <= states; k++)
            state_rows(s, k)
        for (a = 1; a <= 2; a++)
            under_axle_rows(s, a)
        limit_rows(s)
        if (has_spare[s] && "clearance/spare_space/diameter" in value)
            spare_room_rows(s)
    }
    if ("clearance/front_overhang/item" in text || "clearance/front_overhang/1/item" in text) {
        # as the vehicle was measured: fitted, unladen, no lift
        angle_rows(0, 0)
    }
}
function room(s, k, a, quantity, at, x, unit, limit, verdict)
{
    put("clearance", option[s], k ? state_name[k] : "", a ? axle_name[a] : "", quantity, at, x, \
        unit, limit, verdict)
}
function lift(a) { return value["suspension/" axle_name[a] "/lift"] + 0 }
# Sag of an axle under what is carried: dF / (2 wheel rate), Barton and Fieldhouse, Automotive Chassis
# Engineering.
function sag(k, a,    rate)
{
    rate = value["suspension/" axle_name[a] "/wheel_rate"]
    return k ? (state_axle[k, a] - value["vehicle/unladen/" axle_name[a]]) * g / (2 * rate) : 0
}
# How much more each tyre of an axle gives under its half of what is carried, at the pressure that it
# has: the fitted one's placard, an option's recommended one. The relation is straight in the load.
# null where there is no such pressure.
function gives(s, k, a,    added, p)
{
    added = state_axle[k, a] - value["vehicle/unladen/" axle_name[a]]
    if (!k || abs(added) < 1e-9)
        return 0
    p = s ? recommended[s, a] : by_axle("tyres/fitted/placard", a)
    if ((setup_path(s) "/as_set/" axle_name[a]) in value)
        p = value[setup_path(s) "/as_set/" axle_name[a]]
    return p == "null" ? p : deflection(s, added / 2, p)
}
function is_settled(s, k) { return gives(s, k, 1) != "null" && gives(s, k, 2) != "null" }
# The tyre's part of a change beside the fitted tyre in the same state.
function tyre_rise(s, k, a) { return radius_change[s] - gives(s, k, a) + gives(0, k, a) }
# Loaded radius of a tyre in a state.
function radius_in(s, k, a) { return loaded_radius[s] - gives(s, k, a) }
# Change of the body's height at an axle, and anywhere along the vehicle. State 0: as measured.
function axle_rise(s, k, a) { return k ? radius_change[s] + lift(a) - sag(k, a) - gives(s, k, a) : 0 }
function rise_at(s, k, x)
{
    return axle_rise(s, k, 1) + (axle_rise(s, k, 2) - axle_rise(s, k, 1)) * x / wheelbase
}
function state_rows(s, k,    ground, front, rear)
{
    if (!is_settled(s, k)) {
        unsettled_rows(s, k)
        return
    }
    # without a position, the axle that gains less decides
    if (s > 0)
        room(s, k, 0, "body_clearance_change", "", ("clearance/ground_at" in value ? \
            tyre_rise(s, k, 1) + (tyre_rise(s, k, 2) - tyre_rise(s, k, 1)) * \
            value["clearance/ground_at"] / wheelbase : \
            min(tyre_rise(s, k, 1), tyre_rise(s, k, 2))) * 1000, "mm", "null", "")
    if (!("clearance/ground" in value))
        return
    front = axle_rise(s, k, 1)
    rear = axle_rise(s, k, 2)
    ground = value["clearance/ground"] + ("clearance/ground_at" in value ? \
        rise_at(s, k, value["clearance/ground_at"]) : min(front, rear))
    room(s, k, 0, "body_clearance", "", ground * 1000, "mm", "null", "")
    room(s, k, 0, "headlamp_aim_change", "", 100 * (front - rear) / wheelbase, "%", "null", "")
    room(s, k, 0, "rake", "", degrees(atan2(rear - front, wheelbase)), "deg", "null", "")
    angle_rows(s, k)
    if ("clearance/roof_height" in value)
        roof_rows(s, k, front, rear)
}
# No pressure carries the load: how far the tyres give under it is not known.
function unsettled_rows(s, k)
{
    if (!("clearance/ground" in value))
        return
    room(s, k, 0, "body_clearance", "", "null", "mm", "null", "unknown")
    room(s, k, 0, "body_clearance_change", "", "null", "mm", "null", "")
    room(s, k, 0, "approach_angle", "", "null", "deg", "null", "unknown")
    room(s, k, 0, "departure_angle", "", "null", "deg", "null", "unknown")
    room(s, k, 0, "breakover_angle", "", "null", "deg", "null", "unknown")
}
function roof_rows(s, k, front, rear,    top_height, i)
{
    top_height = value["clearance/roof_height"]
    for (i = 1; i <= items; i++)
        if ((k, i) in aboard && "carried/" i "/top" in value)
            top_height = max(top_height, value["carried/" i "/top"])
    # the larger of both axles' changes
    top_height += max(front, rear)
    room(s, k, 0, "roof_height", "", top_height * 1000, "mm", "null", "")
    if (s > 0)
        room(s, k, 0, "roof_height_change", "", \
            max(tyre_rise(s, k, 1), tyre_rise(s, k, 2)) * 1000, "mm", "null", "")
    # the largest tyre is met at the door: half of what it is larger than the nominal one
    if (s > 0)
        top_height += (diameter_most[s] - diameter[s]) / 2
    if ("clearance/garage_entrance" in value)
        room(s, k, 0, "garage_room", "largest", \
            (value["clearance/garage_entrance"] - top_height) * 1000, \
            "mm", 0, judged(value["clearance/garage_entrance"] >= top_height))
}

# The angle between the ground and the tangent to a tyre of loaded radius r from a point x beyond the
# axle's centre at height h: 40 CFR 86.084-2, 49 CFR 523.2.
function tangent(x, h, r) { return degrees(asin(r / sqrt(x * x + (r - h) * (r - h))) - atan2(r - h, x)) }
# The smallest angle of all points of one kind, which may be a list or one; side -1: ahead of the front
# axle, +1: behind the rear one.
function overhang_angle(s, k, path, key, side,    i, at, least, x)
{
    least = 90
    for (i = 0; i == 0 || path "/" i "/" key in value; i++) {
        at = i ? path "/" i : path
        if (at "/" key in value) {
            x = value[at "/" key]
            least = min(least, tangent(x, value[at "/height"] + \
                rise_at(s, k, side < 0 ? -x : wheelbase + x), \
                radius_in(s, k, side < 0 ? 1 : 2)))
        }
    }
    for (i = 1; k && i <= items; i++) {
        at = "carried/" i "/point"
        if ((k, i) in aboard && at "/" key in value) {
            x = value[at "/" key]
            least = min(least, tangent(x, value[at "/height"] + \
                rise_at(s, k, side < 0 ? -x : wheelbase + x), \
                radius_in(s, k, side < 0 ? 1 : 2)))
        }
    }
    return least
}
# Breakover: both axles' tangents from the lowest point between them, together.
function breakover_angle(s, k,    x, h)
{
    x = value["clearance/belly/at"]
    h = value["clearance/belly/height"] + rise_at(s, k, x)
    return tangent(x, h, radius_in(s, k, 1)) + tangent(wheelbase - x, h, radius_in(s, k, 2))
}
function angle_row(s, k, name, x)
{
    room(s, k, 0, name (k ? "" : "_before"), "", x, "deg", "null", "")
    if (k && s > 0)
        room(s, k, 0, name "_change", "", x - fitted_angle[k, name], "deg", "null", "")
    else
        fitted_angle[k, name] = x
}
function angle_rows(s, k)
{
    angle_row(s, k, "approach_angle", overhang_angle(s, k, "clearance/front_overhang", "ahead", -1))
    angle_row(s, k, "departure_angle", overhang_angle(s, k, "clearance/rear_overhang", "behind", 1))
    angle_row(s, k, "breakover_angle", breakover_angle(s, k))
}
function under_axle_rows(s, a,    measured, k, sunk)
{
    measured = by_axle("clearance/under_axle", a)
    if (measured != "null")
        room(s, 0, a, "under_axle_clearance", "", (measured + radius_change[s]) * 1000, "mm", \
            "null", "")
    # the axle itself sinks with its tyres alone
    for (k = 1; k <= states && measured != "null"; k++) {
        sunk = gives(s, k, a)
        if (sunk == "null")
            room(s, k, a, "under_axle_clearance", "", sunk, "mm", "null", "unknown")
        else if (sunk != 0)
            room(s, k, a, "under_axle_clearance", "", (measured + radius_change[s] - sunk) * 1000, \
                "mm", "null", "")
    }
    if (s > 0)
        room(s, 0, a, "under_axle_clearance_change", "", radius_change[s] * 1000, "mm", "null", "")
}

# Limits on what changes, published and of the house.
function published_limit(name,    i)
{
    for (i = 1; "limits/published/" i in text; i++)
        if (text["limits/published/" i] == name)
            return 1
    return 0
}
function limit_rows(s,    change, steps, a, rise, most)
{
    change = (diameter[s] - diameter[0]) * 1000
    if (s > 0 && published_limit("au_offroad"))
        # VSB 14 section LS, MC, NA and NB: +50 / -26 mm
        room(s, 0, 0, "overall_diameter_change", "au_offroad", change, "mm", nearest_limit(change, -26, 50), \
            judged(change >= -26 && change <= 50))
    if (s > 0 && published_limit("es_inspection")) {
        # Spain, inspection manual, revision 6: 3 % of diameter, neither index nor symbol below
        change = 100 * (diameter[s] / diameter[0] - 1)
        room(s, 0, 0, "overall_diameter_change_percent", "es_inspection", change, "%", \
            nearest_limit(change, -3, 3), judged(abs(change) <= 3))
        steps = load_index[s] - load_index[0]
        room(s, 0, 0, "load_index_change", "es_inspection", steps, "", 0, judged(steps >= 0))
        steps = row("order", speed_symbol[s]) - row("order", speed_symbol[0])
        room(s, 0, 0, "speed_symbol_change", "es_inspection", steps, "", 0, judged(steps >= 0))
    }
    for (a = 1; a <= 2; a++) {
        # the height that tyre and suspension give together
        most = value["limits/diameter_and_suspension/max"] * 1000
        rise = ((diameter[s] - diameter[0]) / 2 + lift(a)) * 1000
        if (most)
            room(s, 0, a, "diameter_and_suspension", "house", rise, "mm", most, judged(rise <= most))
    }
}
function spare_room_rows(s,    t, x)
{
    t = "spare" s
    x = value["clearance/spare_space/diameter"] - diameter_most[t]
    room(s, 0, 0, "spare_room", "largest, diameter", x * 1000, "mm", 0, judged(x >= 0))
    x = value["clearance/spare_space/width"] - width_most[t]
    room(s, 0, 0, "spare_room", "largest, width", x * 1000, "mm", 0, judged(x >= 0))
    x = 100 * (circumference[t] / circumference[s] - 1)
    room(s, 0, 0, "spare_circumference_change", "new", x, "%", \
        100 * 0.25 * inch / circumference[s], \
        abs(x) <= 100 * 0.25 * inch / circumference[s] ? "ok" : "caution")
}
