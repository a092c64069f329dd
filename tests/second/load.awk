# Part load: axle loads against ratings, load at a pressure, the pressure needed, the spare.
END {
    for (s = 0; s < setups; s++) {
        load_class(s)
        for (k = 1; k <= states; k++)
            rating_rows(s, k)
        for (a = 1; a <= 2; a++)
            axle_rows(s, a)
        if (recommended[s, 1] != "null" && recommended[s, 2] != "null")
            margin_row(s)
        table_rows(s)
        if (has_spare[s])
            spare_rows(s)
        for (k = 1; k <= states; k++)
            item_rows(s, k)
    }
}
function load_figure(s, k, a, quantity, at, x, unit, limit, verdict)
{
    put("load", option[s], k ? state_name[k] : "", a ? axle_name[a] : "", quantity, at, x, unit, \
        limit, verdict)
}
function left(s, k, a, name, rating, used)
{
    load_figure(s, k, a, name, "", rating - used, "kg", 0, judged(rating - used >= 0))
    load_figure(s, k, a, name "_percent", "", 100 * (rating - used) / rating, "%", "null", "")
}
function rating_rows(s, k,    a)
{
    for (a = 1; a <= 2; a++) {
        load_figure(s, k, a, "axle_load", "", axle_load(s, k, a), "kg", "null", "")
        left(s, k, a, "axle_rating_left", value["vehicle/ratings/" axle_name[a]], \
            axle_load(s, k, a))
    }
    load_figure(s, k, 0, "gross_load", "", gross_load(s, k), "kg", "null", "")
    left(s, k, 0, "gross_left", value["vehicle/ratings/gross"], gross_load(s, k))
    # choice: a rating that nothing aboard uses has no row
    if (state_roof[k] > 0)
        left(s, k, 0, "roof_left", value["vehicle/ratings/roof"], state_roof[k])
    if (state_ball[k] > 0) {
        left(s, k, 0, "tow_ball_left", value["vehicle/ratings/tow_ball"], state_ball[k])
        left(s, k, 0, "combination_left", value["vehicle/ratings/combination"], train_load(s, k))
    }
}

# Load at a pressure, L(P) = L_ref (P / P_ref)^n up to L_ref, by class:
#   P-metric 240 kPa, 0.5 (TRA); ISO metric standard load 250 kPa and extra load 290 kPa, 0.8 (ETRTO,
#   as Reimpell et al., The Automotive Chassis, quote it); LT-metric 0.7 at the moulded maximum, range
#   E 450 or 550 kPa (TRA); commercial 0.8 at the maker's pressure.
# Floors, from where the published tables start: 140, 150, 250 and 210 kPa.
# A passenger tyre on a light truck counts 1/1.10 (49 CFR 571.110 S4.2.2.2).
function load_class(t)
{
    class[t] = passenger[t] ? (prefix[t] == "P" ? "p_metric" : "metric") : \
        prefix[t] == "LT" ? "lt" : "commercial"
    divisor[t] = passenger[t] && light_truck ? 1.10 : 1
    assumed[t] = 0
    load_at_reference[t] = row("li", load_index[t])
    if (class[t] == "p_metric") {
        reference[t] = 240e3; exponent[t] = 0.5; floor_pressure[t] = 140e3
        ceiling[t] = passenger_ceiling(t)
    } else if (class[t] == "metric") {
        reference[t] = extra_load[t] ? 290e3 : 250e3
        exponent[t] = 0.8; floor_pressure[t] = 150e3; ceiling[t] = passenger_ceiling(t)
    } else {
        exponent[t] = class[t] == "lt" ? 0.7 : 0.8
        floor_pressure[t] = class[t] == "lt" ? 250e3 : 210e3
        reference[t] = ceiling[t] = book_pressure[t]
        if (book_load[t] == "null") {
            # No moulded maximum: the load index or the published maximum, whichever is lower, at
            # the higher pressure in use for the load range; the ceiling is the lower one. LT235/85R16
            # range E: 3042 lb at 80 psi (TRA maximum, as printed in tyre makers' size sheets).
            assumed[t] = 1
            reference[t] = 550e3
            ceiling[t] = 450e3
            if (designation[t] ~ /^LT235\/85R16/)
                load_at_reference[t] = min(load_at_reference[t], 3042 * pound)
        } else
            load_at_reference[t] = book_load[t]
    }
    # What tyre and wheel allow together; a wheel without a rating sets none.
    highest[t] = ceiling[t]
    if (t in wheel_pressure && wheel_pressure[t] != "null")
        highest[t] = min(highest[t], wheel_pressure[t])
}
# A passenger tyre without a moulded maximum may have its reference pressure or the higher placard,
# whichever is more; beyond, the sidewall must be read.
function passenger_ceiling(t)
{
    return max(reference[t], max(placard(1), placard(2)))
}
# Passenger, light truck or commercial: the placard is a floor within its group alone.
function group(t) { return passenger[t] ? "passenger" : class[t] }
function capacity(t, p)
{
    return load_at_reference[t] / divisor[t] * (p >= reference[t] ? 1 : \
        power(p / reference[t], exponent[t]))
}
# The pressure at which tyre t carries a load, with a pressure added; between floor and ceiling.
function pressure_for(t, load, added,    p)
{
    if (load * divisor[t] > load_at_reference[t] * (1 + 1e-12))
        return "null"
    p = max(unfloored(t, load) + added, floor_pressure[t])
    return p > highest[t] + 1e-6 ? "null" : p
}
function unfloored(t, load)
{
    return reference[t] * power(load * divisor[t] / load_at_reference[t], 1 / exponent[t])
}
# ETRTO, by Reimpell et al.: from 160 to 210 km/h up to 30 kPa more, passenger tyres R to V; of W
# tyres from 190 km/h on, 10 kPa for each 10 km/h to 240 (that slope from memory).
# choice: above W, where the source leaves it to the tyre maker, as of W; P-metric sizes go by the
# TRA, which adds none.
function speed_pressure(t)
{
    if (class[t] != "metric")
        return 0
    if (row("order", speed_symbol[t]) > row("order", "V"))
        return 1e3 * min(50, max(0, top_speed / kmh - 190))
    return 30e3 * min(1, max(0, (top_speed / kmh - 160) / 50))
}
function placard(a) { return by_axle("tyres/fitted/placard", a) }

function axle_rows(s, a,    k, load, demand, added, more, p, built, replaced, half, limit, rating, exact, stands)
{
    k = heaviest[a]
    load = corner_load(s, k, a)
    load_figure(s, k, a, "tyre_load", "", load, "kg", "null", "")
    # As replaced: what the fitted tyre carried at the placard pressure, both divided alike.
    load_class(0)
    demand = capacity(0, placard(a))
    rating = value["vehicle/ratings/" axle_name[a]]
    added = speed_pressure(s)
    more = max(0, added - speed_pressure(0))
    # choice: the fitted tyre's placard has the pressure for the top speed in it already, so that as
    # replaced only what the option needs beyond that is added
    replaced = s == 0 ? placard(a) : pressure_for(s, demand, more)
    half = pressure_for(s, rating / 2, added)
    built = pressure_for(s, load * (1 + reserve), added)
    limit = highest[s] / 1000
    load_figure(s, 0, a, "pressure_as_replaced", "", in_kPa(replaced), "kPa", limit, "")
    load_figure(s, 0, a, "pressure_as_built", "", in_kPa(built), "kPa", limit, "")
    load_figure(s, 0, a, "pressure_as_rated", "", in_kPa(half), "kPa", limit, "")
    # The highest of both, of what carries half the axle rating, of the floor and of the placard of
    # the same group of classes, up to a whole 5 kPa
    p = "null"
    if (replaced != "null" && built != "null" && half != "null") {
        # 35 psi and 250 kPa are one floor of LT tyres, the lower one in what is judged in any unit
        exact = max(s == 0 ? placard(a) : unfloored(s, demand) + more, \
            unfloored(s, max(load * (1 + reserve), rating / 2)) + added)
        exact = max(exact, class[s] == "lt" ? 35 * psi : floor_pressure[s])
        exact = group(s) == group(0) ? max(exact, placard(a)) : exact
        p = steps_up(max(exact, floor_pressure[s]), 5e3)
        least_told[s, a] = min(p, steps_up(exact, psi))
        if (p > highest[s] + 1e-6)
            p = "null"
    }
    recommended[s, a] = p
    # choice: a passenger tyre that carries too little at its reference pressure does at none, up to
    # the 350 kPa that 49 CFR 571.139 S5.5.4 lets be moulded at most
    if (p == "null" && passenger[s])
        limit = max(limit, 350)
    load_figure(s, 0, a, "pressure_recommended", "", in_kPa(p), "kPa", limit, \
        p == "null" ? "fail" : assumed[s] ? "caution" : "ok")
    # choice: at the placard pressure the fitted tyre is judged by its load, an option by the
    # greater of that and what the fitted tyre carried
    limit = s == 0 ? load : max(load, demand)
    load_figure(s, 0, a, "tyre_capacity", "placard", \
        capacity(s, placard(a)), "kg", limit, \
        (setup_path(s) "/as_set/" axle_name[a]) in value ? "" : \
        cured(capacity(s, placard(a)) >= limit * (1 - 1e-12), p))
    # choice: a pressure named for the handing over is judged in place of the placard's
    stands = (setup_path(s) "/as_set/" axle_name[a]) in value ? \
        value[setup_path(s) "/as_set/" axle_name[a]] : placard(a)
    exact = stands > highest[s] ? highest[s] : exact
    load_figure(s, 0, a, "pressure_as_set", "", stands / 1000, "kPa", \
        p == "null" ? "null" : exact / 1000, \
        p == "null" ? "" : cured(stands <= highest[s] && stands >= exact - 1e-6, p))
    load_figure(s, 0, a, "tyre_capacity", "maximum", load_at_reference[s] / divisor[s], "kg", "null", "")
    if (p != "null") {
        load_figure(s, 0, a, "tyre_capacity", "recommended", capacity(s, p), "kg", "null", "")
        load_figure(s, 0, a, "capacity_left", "", 100 * (capacity(s, p) / load - 1), "%", "null", "")
        capacity_share[s, a] = 100 * (capacity(s, p) / load - 1)
    }
    # at the highest pressure that tyre and wheel allow, less what the top speed takes of it
    load_figure(s, 0, a, "tyres_carry_axle_rating", "", 2 * capacity(s, highest[s] - added), \
        "kg", rating, judged(2 * capacity(s, highest[s] - added) >= rating))
    wheel_rows(s, a, load, p)
    warning_rows(s, a, p, least_told[s, a])
}
# What a pressure to be set meets is a task.
function cured(holds, p) { return holds ? "ok" : p == "null" ? "fail" : "task" }
function in_kPa(p) { return p == "null" ? p : p / 1000 }
function wheel_rows(s, a, load, p,    x)
{
    # the wheel carries its load and half the axle rating
    x = wheel_load[s] == "null" ? "null" : \
        wheel_load[s] - max(load, value["vehicle/ratings/" axle_name[a]] / 2)
    load_figure(s, 0, a, "wheel_rating_left", "", x, "kg", 0, \
        x == "null" ? "unknown" : judged(x >= 0))
    # choice: no row without a pressure, and no second "unknown" for a wheel without any rating
    if (p != "null") {
        x = wheel_pressure[s] == "null" ? "null" : wheel_pressure[s] - p
        # the fitted wheel is taken to be good for the placard pressure
        if (x == "null" && !own_wheel[s])
            x = placard(a) - p
        load_figure(s, 0, a, "wheel_pressure_left", "", in_kPa(x), "kPa", 0, \
            x != "null" ? judged(x >= 0) : wheel_load[s] == "null" ? "" : "unknown")
    }
}
# 49 CFR 571.138 S4.2: 25 % below the recommended pressure, or the least of its Table 1 (from
# memory: P-metric 140 and 160, LT range C 200, D 260, E 350 kPa), whichever is higher.
# choice: ISO metric sizes are not in that table; where it governs, that is a caution in itself.
function warning_rows(s, a, p, told,    least, threshold, stuck, limit)
{
    if (p == "null")
        return
    # The table binds the vehicle's maker: what tyre and wheel may not exceed is not asked of them.
    least = class[s] == "p_metric" ? (extra_load[s] ? 160e3 : 140e3) : class[s] != "lt" ? 0 : \
        load_range[s] == "C" ? 200e3 : load_range[s] == "D" ? 260e3 : 350e3
    stuck = least > 0.75 * told
    threshold = least >= max(p, highest[s]) ? 0.75 * p : max(0.75 * p, least)
    load_figure(s, 0, a, "warning_threshold", "", threshold / 1000, "kPa", \
        stuck ? p / 1000 : "null", stuck ? "caution" : "")
    # The vehicle's own warning, taken as set 25 % below the placard, beside the 25 % alone; late or
    # on all the time it is something to tell: of the lower of what is told in kPa and in psi.
    limit = 0.75 * told
    load_figure(s, 0, a, "warning_as_set", "", 0.75 * placard(a) / 1000, "kPa", limit / 1000, \
        0.75 * placard(a) >= limit - 1e-6 && 0.75 * placard(a) < told ? "ok" : "task")
}
function margin_row(s,    difference, least)
{
    difference = capacity_share[s, 1] - capacity_share[s, 2]
    least = min(capacity_share[s, 1], capacity_share[s, 2])
    load_figure(s, 0, 0, "margin_difference", "", difference, "%", "null", \
        abs(difference) > 25 && least < 10 ? "caution" : "ok")
}
# choice: from the floor to the lower of reference pressure and ceiling every 10 kPa, over a span of
# more than 150 kPa every 25; the first and the last one always
function table_rows(s,    step, p, last)
{
    last = min(reference[s], highest[s])
    step = last - floor_pressure[s] > 150e3 ? 25e3 : 10e3
    for (p = floor_pressure[s]; p < last - 1; p = steps_up(p + 1, step))
        load_figure(s, 0, 0, "tyre_capacity", label(p / 1000, 1) " kPa", capacity(s, p), "kg", \
            "null", "")
    load_figure(s, 0, 0, "tyre_capacity", label(last / 1000, 1) " kPa", capacity(s, last), "kg", \
        "null", "")
}
function spare_rows(s,    t, load, p, needed)
{
    t = "spare" s
    # choice: load index beside load index, whatever maximum is moulded
    needed = row("li", load_index[s])
    if (prefix[t] == "T") {
        # A temporary spare has one pressure, 420 kPa (60 psi)
        load_figure(s, 0, 0, "spare_pressure", "", 420, "kPa", "-", "caution")
        return
    }
    if (designation[t] == designation[s] && book_load[s] != "null") {
        book_load[t] = book_load[s]
        book_pressure[t] = book_pressure[s]
    }
    load_class(t)
    load = max(corner_load(s, heaviest[1], 1), corner_load(s, heaviest[2], 2)) * (1 + reserve)
    load = max(load, max(value["vehicle/ratings/front"], value["vehicle/ratings/rear"]) / 2)
    p = pressure_for(t, load, speed_pressure(t))
    if (p != "null" && group(t) == group(0))
        p = max(p, max(placard(1), placard(2)))
    # choice: a lower load index than the four is a caution; whether it carries the heaviest load and
    # half the larger axle rating is judged by the pressure that it needs
    load_figure(s, 0, 0, "spare_capacity", "", row("li", load_index[t]), "kg", needed, \
        row("li", load_index[t]) >= needed ? "ok" : "caution")
    load_figure(s, 0, 0, "spare_pressure", "", in_kPa(p == "null" ? p : steps_up(p, 5e3)), "kPa", \
        "-", "-")
}
# The largest item that breaks nothing: each rating's room over the item's share of it.
function item_rows(s, k,    i, path, x, most, a, room)
{
    for (i = 1; "room_for/" i "/item" in text; i++) {
        path = "room_for/" i
        x = value[path "/at"]
        most = value["vehicle/ratings/gross"] - gross_load(s, k)
        if (state_trailer[k] > 0)
            most = min(most, value["vehicle/ratings/combination"] - train_load(s, k))
        if (text[path "/on"] == "roof")
            most = min(most, value["vehicle/ratings/roof"] - state_roof[k])
        for (a = 1; a <= 2; a++) {
            room = value["vehicle/ratings/" axle_name[a]] - axle_load(s, k, a)
            most = item_room(most, room, share(x, a))
            # the tyres at the highest pressure allowed, with the reserve
            room = 2 * (capacity(s, highest[s] - speed_pressure(s)) / (1 + reserve) - \
                corner_load(s, k, a))
            most = item_room(most, room, share(x, a))
            if (wheel_load[s] != "null")
                most = item_room(most, 2 * (wheel_load[s] - corner_load(s, k, a)), share(x, a))
            # until the springs stand on their bump stops
            if ("suspension/" axle_name[a] "/travel_to_bump" in value)
                most = item_room(most, load_to_bump(a) - added_to(a, k), share(x, a))
        }
        # a wheel without a rating may be what limits it
        if (wheel_load[s] == "null" && own_wheel[s])
            load_figure(s, k, 0, "largest_item", text[path "/item"], "null", "kg", "null", "unknown")
        else
            load_figure(s, k, 0, "largest_item", text[path "/item"], max(most, 0), "kg", "null", "")
    }
}
# choice: what is broken already leaves room for nothing, even where the item would lighten it
function item_room(most, room, part)
{
    if (room < 0)
        return min(most, 0)
    return part > 0 ? min(most, room / part) : most
}
