# Part load: low pressure off the road, by T. B. Rhyne, Development of a Vertical Stiffness
# Relationship for Belted Radial Tires, Tire Science and Technology 33(3), 2005, 136-155: stiffness in
# kg/mm = 0.00028 P sqrt((1.03 - 0.004 Ra) S1 D) + 3.45, P in kPa, S1 and D in mm (coefficients from
# memory), and the load of UN R54 Annex 8 at low speed.
END {
    if ("off_road/speed" in value)
        for (s = 0; s < setups; s++)
            off_road_rows(s)
}
function deflection(t, load, p,    stiffness)
{
    stiffness = 0.00028 * p / 1000 * sqrt((1.03 - 0.004 * aspect[t]) * section[t] * 1000 * \
        diameter[t] * 1000) + 3.45
    return load / stiffness / 1000
}
function off_road_pressure(a) { return by_axle("off_road/pressure", a) }
function off_road_rows(s,    a, k, p, soft, road, low, load, worst, speed, below_tables)
{
    worst = ""
    for (a = 1; a <= 2; a++) {
        k = heaviest[a]
        load = corner_load(s, k, a)
        p = off_road_pressure(a)
        soft = deflection(s, load, p)
        deflection_rows(s, k, a, "off road", soft)
        road = "null"
        if (recommended[s, a] != "null") {
            road = deflection(s, load, recommended[s, a])
            deflection_rows(s, k, a, "road", road)
        }
        load_figure(s, k, a, "clearance_lost", "off road", \
            road == "null" ? road : (soft - road) * 1000, "mm", "null", "")
        # the class rule, continued below its tables, and what Annex 8 allows at the speed, which
        # adds to a published figure only
        low = load_at_reference[s] / divisor[s] * power(p / reference[s], exponent[s])
        if (un_r54[s] && p >= floor_pressure[s])
            low *= annex_8(s, value["off_road/speed"] / kmh) / 100
        load_figure(s, k, a, "tyre_capacity", "off road", low, "kg", \
            load, "")
        if (un_r54[s] && p < floor_pressure[s])
            below_tables = 1
        else if (un_r54[s]) {
            speed = annex_8_speed(s, 100 * load / (load_at_reference[s] * \
                power(p / reference[s], exponent[s])))
            if (worst == "" || speed < worst) {
                worst = speed
                worst_axle = a
            }
        }
    }
    off_road_speed_row(s, below_tables ? "" : worst)
    if (recommended[s, 1] != "null" && recommended[s, 2] != "null")
        air_rows(s)
}
function deflection_rows(s, k, a, at, sunk,    radius, contact)
{
    radius = diameter[s] / 2 - sunk
    load_figure(s, k, a, "tyre_deflection", at, sunk * 1000, "mm", "null", "")
    load_figure(s, k, a, "loaded_radius", at, radius * 1000, "mm", "null", "")
    # the chord of the round tyre at that deflection
    contact = 2 * sqrt(diameter[s] * diameter[s] / 4 - radius * radius)
    load_figure(s, k, a, "contact_length", at, contact * 1000, "mm", "null", "")
}
function annex_8_table(t) { return load_index[t] >= 122 ? "annex_8_high" : "annex_8_low" }
# Per cent of the load index load allowed at a speed in km/h, straight between the rows.
function annex_8(t, speed,    i, from, to)
{
    for (i = 1; i < annex_8_rows; i++) {
        from = row("annex_8_speed", i)
        to = row("annex_8_speed", i + 1)
        if (speed <= to)
            return between(speed, from, row(annex_8_table(t), i), to, row(annex_8_table(t), i + 1))
    }
    return 0
}
# The highest speed at which so many per cent are allowed.
function annex_8_speed(t, percent,    i, here_percent, next_percent)
{
    for (i = 1; i < annex_8_rows; i++) {
        here_percent = row(annex_8_table(t), i)
        next_percent = row(annex_8_table(t), i + 1)
        if (percent > next_percent)
            return between(percent, here_percent, row("annex_8_speed", i), next_percent, \
                row("annex_8_speed", i + 1))
    }
    return row("annex_8_speed", annex_8_rows)
}
function between(x, x1, y1, x2, y2) { return y1 + (y2 - y1) * (x - x1) / (x2 - x1) }
function off_road_speed_row(s, speed,    a, k)
{
    if (speed == "") {
        # No standard rates a passenger tyre at such a pressure, nor any tyre below its tables.
        load_figure(s, 0, 0, "off_road_speed", "", "null", "km/h", "-", "unknown")
        return
    }
    # choice: the worse axle's, down to a whole km/h
    a = worst_axle
    k = heaviest[a]
    load_figure(s, k, a, "off_road_speed", "", steps_down(speed, 1), "km/h", \
        value["off_road/speed"] / kmh, \
        steps_down(speed, 1) >= value["off_road/speed"] / kmh ? "ok" : "caution")
}
# Air for four tyres from the low to the recommended pressure. choice (common practice, no source):
# the cavity is a ring of elliptic section, as high as the section height and as wide as the nominal
# section width, round the circle through the middle of the section; at one temperature.
function air_rows(s,    a, cavity, air)
{
    cavity = pi / 4 * height[s] * section[s] * pi * (diameter[s] - height[s])
    for (a = 1; a <= 2; a++)
        air += 2 * cavity * (recommended[s, a] - off_road_pressure(a)) / atmosphere
    load_figure(s, 0, 0, "free_air", "", air * 1000, "L", "null", "")
    load_figure(s, 0, 0, "inflating_time", "", air / value["off_road/compressor_flow"] / 60, "min", \
        "null", "")
}
