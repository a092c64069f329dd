# Part speedometer: the instrument's line from readings or a known error, what another tyre makes of
# it, UN R39 5.3 (0 <= V1 - V2 <= V2/10 + 4 km/h, V1 shown, V2 true), settings, odometer.
# Speeds in the dial's unit throughout: shown = scale x true x C_old/C_new x setting + offset.
END {
    if ("speedometer/unit" in text) {
        dial_make()
        fit_make()
        fit_rows()
        for (s = 0; s < setups; s++)
            speedometer_rows(s)
    }
}
function dial(s, quantity, at, x, unit, limit, verdict)
{
    put("speedometer", option[s], "", "", quantity, at, x, unit, limit, verdict)
}
function dial_plain(s, quantity, at, x, unit) { dial(s, quantity, at, x, unit, "null", "") }
# choices, as the labels show them: the dial's speed at which an error is told, the steps of the
# speed table, the posted limits
function dial_make(    k)
{
    dial_unit = text["speedometer/unit"]
    in_mph = dial_unit == "mph"
    one = in_mph ? mph : kmh
    told_at = in_mph ? 60 : 100
    table_step = in_mph ? 10 : 20
    add = 4 * kmh / one       # the 4 km/h of UN R39 5.3
    top = top_speed / one
    posted_count = split(in_mph ? "20 30 40 50 55 60 65 70 75" : \
        "30 50 60 80 90 100 110 120 130", posted, " ")
    # UN R39 5.2.3, test speeds by top speed; the demo vehicles exceed 150 km/h
    tests = split("40 80 120", test_speed, " ")
    for (k = 1; k <= tests; k++)
        test_speed[k] *= kmh / one
    # choice: that it never shows less is asked from 20 km/h or from the lowest reading
    lowest = 20 * kmh / one
    kind = text["speedometer/setting/kind"]
    now = value["speedometer/setting/now"]
    inverse = kind ~ /^circumference/    # a longer circumference makes it show more
}
# Least squares through the readings, shown on true; with two parameters, and with a scale alone.
function fit_make(    i, x, y)
{
    offset = 0
    readings = 0
    if ("speedometer/fitted_error" in value)
        scale = 1 + value["speedometer/fitted_error"]
    for (i = 1; "speedometer/readings/" i "/1" in value; i++) {
        shown_reading[i] = y = value["speedometer/readings/" i "/1"] / one
        true_reading[i] = x = value["speedometer/readings/" i "/2"] / one
        readings = i
        lowest = min(lowest, x)
        sum_x += x
        sum_y += y
        sum_xx += x * x
        sum_xy += x * y
    }
    if (!readings)
        return
    mean_x = sum_x / readings
    s_xx = sum_xx - readings * mean_x * mean_x
    scale = (sum_xy - mean_x * sum_y) / s_xx
    offset = sum_y / readings - scale * mean_x
    scale_alone = sum_xy / sum_xx
    for (i = 1; i <= readings; i++) {
        residual[i] = shown_reading[i] - scale * true_reading[i] - offset
        squares += residual[i] * residual[i]
        x = shown_reading[i] - scale_alone * true_reading[i]
        squares_alone += x * x
    }
    deviation = sqrt(squares / (readings - 2))
}
function interval_rows(quantity, name, x, error, freedom, unit,    t)
{
    t = row("student", freedom)
    dial_plain(0, quantity, name ", estimate", x, unit)
    dial_plain(0, quantity, name ", standard error", error, unit)
    dial_plain(0, quantity, name ", 95 % from", x - t * error, unit)
    dial_plain(0, quantity, name ", 95 % to", x + t * error, unit)
}
function fit_rows(    i, error, at)
{
    if (!readings)
        return
    dial_plain(0, "reading_standard_error", "", deviation, dial_unit)
    interval_rows("fit_scale", "scale alone", scale_alone, \
        sqrt(squares_alone / (readings - 1) / sum_xx), readings - 1, "")
    interval_rows("fit_scale", "scale and offset", scale, deviation / sqrt(s_xx), readings - 2, "")
    error = deviation * sqrt(1 / readings + mean_x * mean_x / s_xx)
    interval_rows("fit_offset", "scale and offset", offset, error, readings - 2, dial_unit)
    # the line at the speed that is told: its own error, not that of a further reading
    error = deviation * sqrt(1 / readings + (told_at - mean_x) * (told_at - mean_x) / s_xx)
    error *= row("student", readings - 2)
    at = "true " told_at " " dial_unit
    dial_plain(0, "measured_error", at, over_read(told_at, scale), "%")
    dial_plain(0, "measured_error", at ", 95 % from", over_read(told_at, scale) - \
        100 * error / told_at, "%")
    dial_plain(0, "measured_error", at ", 95 % to", over_read(told_at, scale) + \
        100 * error / told_at, "%")
    for (i = 1; i <= readings; i++)
        dial_plain(0, "reading_residual", "shown " spoken(shown_reading[i]) " " dial_unit \
            ", reading " i, residual[i], dial_unit)
}
# choice: a speed is named with four digits
function spoken(speed) { return sprintf("%.4g", speed) }
# Per cent by which the instrument over-reads at a true speed, with a scale.
function over_read(speed, k) { return 100 * ((k * speed + offset) / speed - 1) }
# That it shows too much is asked from the lowest test speed on.
function lawful_at(speed, k)
{
    return k * speed + offset >= speed - 1e-9 && (speed < test_speed[1] - 1e-9 || \
        k * speed + offset <= 1.1 * speed + add + 1e-9)
}
# The limit shown beside an error at a speed: the nearer of 0 and 10 % + 4 km/h, of those asked.
function law_limit(speed, error)
{
    return speed < test_speed[1] - 1e-9 ? 0 : nearest_limit(error, 0, 100 * (0.1 + add / speed))
}

# Least and most scale that is lawful up to the top speed. Both conditions are straight lines, so
# that the ends of the range decide: k v + offset >= v, and <= 1.1 v + add from the lowest test speed.
function scale_least() { return max(1 - offset / top, 1 - offset / lowest) }
function scale_most() { return min(1.1 + (add - offset) / top, \
    1.1 + (add - offset) / test_speed[1]) }
# Half the 95 % interval of the line at a true speed; none where the error is given and not fitted.
function half_interval(v)
{
    if (!readings)
        return 0
    return row("student", readings - 2) * deviation * \
        sqrt(1 / readings + (v - mean_x) * (v - mean_x) / s_xx)
}
# The scale at which the line less (side -1) or more (side 1) by its half interval shows w at v,
# found by halving: k v is where the instrument, as it was read, showed as much and was as sure.
function sure_scale(w, v, side,    low, high, k, i)
{
    low = 0.5
    high = 2
    for (i = 0; i < 200; i++) {
        k = (low + high) / 2
        if (k * v + offset + side * half_interval(k * v / scale) < w)
            low = k
        else
            high = k
    }
    return k
}
function sure_least() { return max(sure_scale(top, top, -1), sure_scale(lowest, lowest, -1)) }
function sure_most() { return min(sure_scale(1.1 * top + add, top, 1), \
    sure_scale(1.1 * test_speed[1] + add, test_speed[1], 1)) }

function speedometer_rows(s,    ratio, small, large, k, entered, i)
{
    ratio = circumference[0] / circumference[s]
    # the readings belong to the setting that they were taken with; handed over is another
    now = value["speedometer/setting/now"]
    if ((setup_path(s) "/as_set/setting") in value) {
        i = now
        now = value[setup_path(s) "/as_set/setting"]
        ratio *= inverse ? now / i : i / now
    }
    k = scale * ratio
    # choice: the tyre that the error was measured on has no spread; any other +1.5 / -2.5 %
    # (ETRTO and WdK)
    small = s == 0 ? 1 : 0.975
    large = s == 0 ? 1 : 1.015
    # choice: judged as handed over: what the setting to enter mends is work
    error_row(s, "nominal", k, "task")
    if (s > 0) {
        error_row(s, "largest", k / large, "caution")
        error_row(s, "smallest", k / small, "caution")
        change_row(s)
    }
    entered = setting_rows(s, k, small, large)
    for (i = 1; i <= readings; i++) {
        reading_row(s, i, "as set now", ratio)
        reading_row(s, i, "as entered", ratio * entered)
    }
    for (i = 1; i <= tests; i++) {
        test_row(s, i, "as set now", k)
        test_row(s, i, "as entered", k * entered)
    }
    speed_rows(s, k)
    posted_rows(s, k, entered)
    odometer_rows(s, ratio)
    # The speed at which it begins to show too little. choice: only where it is judged.
    i = k < 1 && offset > 0 ? offset / (1 - k) : 0
    if (i >= lowest && i < top)
        dial_plain(s, "lawful_crossing", "as set now, least that may be shown", i, dial_unit)
    if (s == 0) {
        dial_plain(s, "smallest_lawful_circumference", "as set now", \
            1000 * circumference[0] * scale / scale_most(), "mm")
        dial_plain(s, "largest_lawful_circumference", "as set now", \
            1000 * circumference[0] * scale / scale_least(), "mm")
    }
}
# choice: beside an error that is judged over the whole range stands the bound that is nearest, in
# speed, anywhere in it; the lower one is 0 at every speed.
function tightest(k,    below, above_low, above_top)
{
    below = min((k - 1) * top, (k - 1) * lowest) + offset
    above_low = (1.1 - k) * test_speed[1] + add - offset
    above_top = (1.1 - k) * top + add - offset
    if (below <= min(above_low, above_top))
        return 0
    return 100 * (0.1 + add / (above_low < above_top ? test_speed[1] : top))
}
function error_row(s, name, k, broken,    error)
{
    error = over_read(told_at, k)
    # lawful over the whole range, not only where it is told
    dial(s, "speedometer_error", name ", true " told_at " " dial_unit, error, "%", \
        tightest(k), lawful_throughout(k) ? "ok" : broken)
}
function lawful_throughout(k) { return k >= scale_least() - 1e-12 && k <= scale_most() + 1e-12 }
function distance(a, b) { return a < b ? b - a : a - b }
function change_row(s,    change)
{
    change = 100 * (circumference[s] / circumference[0] - 1)
    # choice: the limit shown is that of the side to which it changed
    dial(s, "circumference_change", "", change, "%", change > 0 ? 1.5 : -2.5, \
        change >= -2.5 && change <= 1.5 ? "ok" : "caution")
}
# Returns what the setting to enter makes of the scale.
function setting_rows(s, k, small, large,    least, most, exact, wanted, nearest, aim, entered, change)
{
    # choice: settings to enter hold with the smallest and with the largest circumference, and
    # wherever in their 95 % the readings lie
    least = scale_to_setting(k, sure_least() * large)
    most = scale_to_setting(k, sure_most() * small)
    aim = text["speedometer/aim"]
    if (aim == "lowest_lawful")
        wanted = sure_least() * large
    else if (aim == "as_before")
        wanted = scale
    else
        wanted = 1 + value["speedometer/aim"] - offset / told_at
    exact = scale_to_setting(k, wanted)
    if (least > most) {
        change = least
        least = most
        most = change
    }
    nearest = lawful_setting(exact, least, most)
    change = now >= least && now <= most ? now : lawful_setting(now, least, most)
    # choice: what is lawful as it is set is entered anew only for an aim that it then meets better;
    # what is not lawful is work already
    dial(s, "setting_exact", kind, exact, "", "null", lawful_throughout(k) && \
        distance(nearest, exact) < distance(now, exact) ? "task" : "")
    dial(s, "setting_nearest", kind, nearest, "", "null", "ok")
    dial_plain(s, "what_to_enter", "", nearest, "")
    dial_plain(s, "setting_smallest_change", kind, change, "")
    dial_plain(s, "setting_lawful_least", kind, least, "")
    dial_plain(s, "setting_lawful_most", kind, most, "")
    side_rows(s, k, "below", lawful_setting(exact, 0, exact))
    side_rows(s, k, "above", lawful_setting(exact, exact, 1e9))
    entered = of_setting(nearest)
    dial_plain(s, "remaining_error", "", over_read(told_at, k * entered), "%")
    dial_plain(s, "remaining_error_exact", "", over_read(told_at, wanted), "%")
    dial_plain(s, "adapter_ratio", "", inverse ? now / exact : exact / now, "")
    return entered
}
# The possible settings on either side of the exact one.
function side_rows(s, k, side, x)
{
    dial_plain(s, "setting_" side, kind, x, "")
    dial_plain(s, "remaining_error_" side, "", over_read(told_at, k * of_setting(x)), "%")
}
# What a setting makes of the scale.
function of_setting(x) { return inverse ? x / now : now / x }
# Counts per distance go down as the instrument is to show more, a circumference goes up.
function scale_to_setting(k, wanted) { return inverse ? now * wanted / k : now * k / wanted }
# The setting that the instrument can take, and is lawful, nearest to x.
function lawful_setting(x, least, most,    first, step, low, high)
{
    first = value["speedometer/setting/min"]
    step = value["speedometer/setting/step"]
    low = first + steps_up(max(least, first) - first, step)
    high = first + steps_down(min(most, value["speedometer/setting/max"]) - first, step)
    x = first + floor_of((x - first) / step + 0.5) * step
    return max(low, min(high, x))
}
# What was read, had this tyre stood on the vehicle: the sensor's part goes with the circumference.
# choice: one reading that is off is a caution, since the fit decides.
function reading_row(s, i, name, ratio,    shown, error)
{
    shown = (shown_reading[i] - offset) * ratio + offset
    error = 100 * (shown / true_reading[i] - 1)
    dial(s, "reading_error", "true " spoken(true_reading[i]) " " dial_unit ", " name \
        ", reading " i, error, "%", law_limit(true_reading[i], error), \
        shown >= true_reading[i] - 1e-9 && (true_reading[i] < test_speed[1] || \
        shown <= 1.1 * true_reading[i] + add) ? "ok" : "caution")
}
function test_row(s, i, name, k,    error)
{
    error = over_read(test_speed[i], k)
    dial(s, "test_speed_error", "true " spoken(test_speed[i]) " " dial_unit ", " name, error, "%", \
        law_limit(test_speed[i], error), lawful_at(test_speed[i], k) ? "ok" : \
        name == "as set now" ? "task" : "fail")
}
function speed_rows(s, k,    v)
{
    for (v = table_step; v < top + table_step - 1e-9; v += table_step) {
        dial_plain(s, "true_speed", "shown " v " " dial_unit, (v - offset) / k, dial_unit)
        dial_plain(s, "shown_speed", "true " v " " dial_unit, k * v + offset, dial_unit)
    }
}
function posted_rows(s, k, entered,    i, v)
{
    dial_plain(s, "true_speed", "shown " told_at " " dial_unit ", as entered", \
        (told_at - offset) / (k * entered), dial_unit)
    for (i = 1; i <= posted_count; i++) {
        v = posted[i]
        dial_plain(s, "shown_at_limit", "posted " v " " dial_unit, k * v + offset, dial_unit)
        dial_plain(s, "shown_at_limit", "posted " v " " dial_unit ", as entered", \
            k * entered * v + offset, dial_unit)
        if (s > 0)
            continue
        dial_plain(s, "lawful_shown_least", "true " v " " dial_unit, v, dial_unit)
        if (v >= test_speed[1] - 1e-9)
            dial_plain(s, "lawful_shown_most", "true " v " " dial_unit, 1.1 * v + add, dial_unit)
        if ((v - add) / 1.1 >= test_speed[1] - 1e-9)
            dial_plain(s, "lawful_true_least", "shown " v " " dial_unit, (v - add) / 1.1, \
                dial_unit)
        dial_plain(s, "lawful_true_most", "shown " v " " dial_unit, v, dial_unit)
    }
}
# The odometer is taken to be right on the fitted tyre.
function odometer_rows(s, ratio)
{
    dial_plain(s, "odometer_true_per_100", "", 100 / ratio, "")
    dial_plain(s, "odometer_error", "", 100 * (ratio - 1), "%")
    dial_plain(s, "consumption_factor", "", ratio, "")
    dial_plain(s, "economy_factor", "", 1 / ratio, "")
}
