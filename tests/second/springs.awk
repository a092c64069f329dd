# Part clearance: springs that may be fitted instead. Sag = dF / (2 wheel rate), Barton and Fieldhouse,
# Automotive Chassis Engineering; two thirds of the travel kept, Victoria, VSI 8, 13.3.
END {
    for (a = 1; a <= 2; a++)
        for (c = 0; c == 0 && spring_path(a, 1) "/name" in text || spring_path(a, c) "/name" in text; c++) {
            for (k = 0; k <= states; k++)
                spring_rows(a, c, k)
            if (c > 0)
                kept_rows(a, c)
        }
}
function spring_path(a, c) { return "suspension/" axle_name[a] (c ? "/spring_choices/" c : "") }
function spring_name(a, c) { return c ? text[spring_path(a, c) "/name"] : "" }
function spring_rate(a, c) { return value[spring_path(a, c) "/wheel_rate"] }
# As given, or what it stands longer and gives otherwise under half of what is sprung.
function spring_lift(a, c,    path, sprung)
{
    path = spring_path(a, c)
    if (!(path "/free_height_change" in value))
        return value[path "/lift"] + 0
    sprung = (value["vehicle/unladen/" axle_name[a]] - \
        value["suspension/" axle_name[a] "/unsprung_mass"]) * g / 2
    return value[path "/free_height_change"] + \
        sprung / value["suspension/" axle_name[a] "/wheel_rate_before"] - sprung / spring_rate(a, c)
}
function added_to(a, k) { return k ? state_axle[k, a] - value["vehicle/unladen/" axle_name[a]] : 0 }
function spring_sag(a, c, k) { return added_to(a, k) * g / 2 / spring_rate(a, c) }
# The body at axle b where spring c stands on axle a, and on the other what it has.
function rise_on(a, c, k, b,    on)
{
    on = b == a ? c : 0
    return spring_lift(b, on) - spring_sag(b, on, k) - gives(0, k, b)
}
function slope_on(a, c, k) { return (rise_on(a, c, k, 2) - rise_on(a, c, k, 1)) / wheelbase }
function rake_on(a, c, k) { return degrees(atan2(slope_on(a, c, k), 1)) }
function on_spring(a, c, k, quantity, x, unit, limit)
{
    room(0, k, a, quantity, spring_name(a, c), x, unit, limit, "")
}
function spring_rows(a, c, k,    remains)
{
    on_spring(a, c, k, "ride_height", rise_on(a, c, k, a) * 1000, "mm", "null")
    if (k)
        on_spring(a, c, k, "pitch", rake_on(a, c, k) - rake_on(a, c, 0), "deg", "null")
    if (!c)
        return
    remains = bump_travel(a, 1) + spring_lift(a, c) - spring_sag(a, c, k)
    on_spring(a, c, k, "bump_travel_left", remains * 1000, "mm", "null")
    on_spring(a, c, k, "rake", rake_on(a, c, k), "deg", "null")
    on_spring(a, c, k, "headlamp_aim_change", -100 * slope_on(a, c, k), "%", "null")
    on_spring(a, c, k, "constant_load", added_to(a, k), "kg", load_limit(a, c, added_to(a, k)))
}
# So much of the travel to bump, less what longer bump stops take of it.
function bump_travel(a, part)
{
    return value["suspension/" axle_name[a] "/travel_to_bump"] * part - \
        value["suspension/" axle_name[a] "/bump_stop_change"]
}
function droop_travel(a) { return value["suspension/" axle_name[a] "/travel_to_droop"] }
# The maker's, or what leaves two thirds of the travel either way.
function load_limit(a, c, x,    path, from, to)
{
    path = spring_path(a, c) "/constant_load_"
    if (path "from" in value && path "to" in value)
        return nearest_limit(x, value[path "from"], value[path "to"])
    if (path "from" in value || path "to" in value)
        return path "from" in value ? value[path "from"] : value[path "to"]
    from = 2 * spring_rate(a, c) * (spring_lift(a, c) - droop_travel(a) / 3) / g
    to = 2 * spring_rate(a, c) * (bump_travel(a, 1 / 3) + spring_lift(a, c)) / g
    return nearest_limit(x, from, to)
}
function kept_rows(a, c,    kept)
{
    kept = (bump_travel(a, 1) + spring_lift(a, c)) / \
        value["suspension/" axle_name[a] "/travel_to_bump"]
    room(0, 0, a, "suspension_travel_kept", "bump, " spring_name(a, c), 100 * kept, "%", 200 / 3, "")
    kept = 1 - spring_lift(a, c) / droop_travel(a)
    room(0, 0, a, "suspension_travel_kept", "droop, " spring_name(a, c), 100 * kept, "%", 200 / 3, "")
}
