# Part tyre: what each designation measures and carries (UN R30, UN R54, ISO 4000-1).
END {
    for (s = 0; s < setups; s++)
        tyre_rows(s)
}
function tyre(s, quantity, x, unit, limit, verdict)
{
    put("tyre", option[s], "", "", quantity, "", x, unit, limit, verdict)
}
function half_inches(x) { return int(x / inch * 2 + 0.5) / 2 }
function tyre_rows(s,    width, least, most, given)
{
    tyre(s, "overall_diameter", diameter[s] * 1000, "mm", "null", "")
    tyre(s, "overall_diameter_min", diameter_least[s] * 1000, "mm", "null", "")
    tyre(s, "overall_diameter_max", diameter_most[s] * 1000, "mm", "null", "")
    if (s > 0)
        tyre(s, "overall_diameter_change", (diameter[s] - diameter[0]) * 1000, "mm", "null", "")
    tyre(s, "section_width_on_rim", width_on_rim[s] * 1000, "mm", "null", "")
    tyre(s, "section_width_max", width_most[s] * 1000, "mm", "null", "")
    tyre(s, "revolutions", 1000 / circumference[s], "/km", "null", "")
    tyre(s, "static_loaded_radius", loaded_radius[s] * 1000, "mm", "null", "")
    tyre(s, "load_index_load", row("li", load_index[s]), "kg", s ? row("li", load_index[0]) : \
        "null", s ? (row("li", load_index[s]) >= row("li", load_index[0]) ? "ok" : "caution") : "")
    tyre(s, "speed_symbol_speed", row("symbol", speed_symbol[s]), "km/h", top_speed / kmh, \
        judged(row("symbol", speed_symbol[s]) * kmh >= top_speed))
    width = section[s]
    tyre(s, "measuring_rim", half_inches(row("rim_measuring", aspect[s]) * width), "in", "null", "")
    least = half_inches(row("rim_least", aspect[s]) * width)
    most = half_inches(row("rim_most", aspect[s]) * width)
    tyre(s, "rim_min", least, "in", "null", "")
    tyre(s, "rim_max", most, "in", "null", "")
    # choice: the limit shown is the one that is broken or nearest; a rim by factor is a caution
    given = rim_width[s] / inch
    tyre(s, "rim_width", given, "in", nearest_limit(given, least, most), \
        given >= least - 1e-9 && given <= most + 1e-9 ? "caution" : "fail")
}
function judged(met) { return met ? "ok" : "fail" }
# The nearer of two limits; both where they are equally far.
function nearest_limit(x, least, most)
{
    if (abs(abs(x - least) - abs(most - x)) < 1e-9)
        return least " " most
    return abs(x - least) < abs(most - x) ? least : most
}
