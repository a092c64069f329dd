# Part gearing: ratios, road and engine speed, axle choices, circumferences on coupled axles.
# A drive is a setup on the axle ratio of the vehicle, or an option on one of the axle choices, which
# the label then begins with.
END {
    if ("drivetrain/axle" in value) {
        gears_make()
        gear_step_rows()
        for (s = 0; s < setups; s++) {
            drive_rows(s, axle_ratio, "")
            for (c = 1; s > 0 && c <= choices; c++)
                drive_rows(s, choice_ratio[c], choice_label(choice_ratio[c]) ", ")
            ratio_rows(s)
            mismatch_rows(s)
        }
    }
}
function gear_figure(s, k, quantity, at, x, unit, limit, verdict)
{
    put("gearing", option[s], k ? state_name[k] : "", "", quantity, at, x, unit, limit, verdict)
}
function gear_plain(s, quantity, at, x, unit) { gear_figure(s, 0, quantity, at, x, unit, "null", "") }
function choice_label(r) { return sprintf("axle ratio %.2f", r) }
function gears_make(    i)
{
    axle_ratio = value["drivetrain/axle"]
    for (i = 1; "drivetrain/gears/" i in value; i++)
        gear[i] = value["drivetrain/gears/" i]
    gears = i - 1
    gear_name[0] = "reverse"
    gear[0] = value["drivetrain/reverse"] + 0
    for (i = 1; i <= gears; i++)
        gear_name[i] = "gear " i
    # Ranges, high and low; without a transfer gearbox a high one alone.
    ranges = 1
    range_ratio[1] = 1
    range_name[1] = " high"
    if ("drivetrain/transfer/low" in value) {
        ranges = 2
        range_ratio[1] = value["drivetrain/transfer/high"]
        range_ratio[2] = value["drivetrain/transfer/low"]
        range_name[2] = " low"
    }
    for (i = 1; "drivetrain/axle_choices/" i in value; i++)
        choice_ratio[i] = value["drivetrain/axle_choices/" i]
    choices = i - 1
    idle = value["drivetrain/engine/idle"] + 0      # turns a second
    limit_speed = value["drivetrain/engine/limit"] + 0
    # choice: cruising at 100 km/h where nothing is given; road speeds 80 to 120 km/h
    cruising = 100 * kmh
    road_speeds = split("80 100 110 120", road_speed, " ")
}
function gear_step_rows(    i, step)
{
    gear_plain(0, "ratio_spread", "", gear[1] / gear[gears], "")
    for (i = 1; i < gears; i++) {
        step = gear[i] / gear[i + 1]
        gear_plain(0, "gear_step", "gear " i " to " i + 1, step, "")
        if (limit_speed)
            gear_plain(0, "upshift_drop", "gear " i " to " i + 1 ", " limit_speed * 60 " rpm", \
                limit_speed * 60 * (1 - 1 / step), "rpm")
    }
}
function overall(i, r, axle) { return gear[i] * range_ratio[r] * axle }
# Road speed at an engine speed: v = C n / overall ratio, no slip.
function drive_rows(s, axle, name,    i, r, ratio, at, v)
{
    for (r = 1; r <= ranges; r++)
        for (i = gear[0] ? 0 : 1; i <= gears; i++) {
            ratio = overall(i, r, axle)
            at = name gear_name[i] range_name[r]
            gear_plain(s, "overall_ratio", at, ratio, "")
            gear_plain(s, "speed_per_1000_rpm", at, \
                circumference[s] * 1000 / 60 / ratio / kmh, "km/h")
            if (limit_speed)
                gear_plain(s, "road_speed", at ", " limit_speed * 60 " rpm", \
                    circumference[s] * limit_speed / ratio / kmh, "km/h")
        }
    for (i = 1; i <= road_speeds; i++)
        gear_plain(s, "engine_speed", name gear_name[gears] range_name[1] ", " road_speed[i] " km/h", \
            road_speed[i] * kmh * overall(gears, 1, axle) / circumference[s] * 60, "rpm")
    ratio = overall(1, ranges, axle)
    at = name
    sub(/, $/, "", at)
    gear_plain(s, "crawl_ratio", at, ratio, "")
    if (idle)
        gear_plain(s, "crawl_speed", at, circumference[s] * idle / ratio / kmh, "km/h")
}
# Engine speed while cruising in the highest gear.
function cruising_rpm(s, axle)
{
    return cruising * overall(gears, 1, axle) / circumference[s] * 60
}
function ratio_rows(s,    restoring, c, best, r, remains)
{
    restoring = axle_ratio * circumference[s] / circumference[0]
    gear_plain(s, "effective_axle_ratio", "", axle_ratio * circumference[0] / circumference[s], "")
    gear_plain(s, "restoring_axle_ratio", "", restoring, "")
    if (s == 0 || !choices)
        return
    best = 1
    for (c = 2; c <= choices; c++)
        if (farness(choice_ratio[c], restoring) < farness(choice_ratio[best], restoring))
            best = c
    r = choice_ratio[best]
    # a choice that is no nearer than what is there is not worth its fitting
    gear_figure(s, 0, "nearest_axle_choice", "", r, "", "null", \
        farness(axle_ratio, restoring) <= farness(r, restoring) && r != axle_ratio ? "caution" : "")
    gear_plain(s, "axle_choice_remains", "nearest axle choice", 100 * (r / restoring - 1), "%")
    gear_plain(s, "axle_choice_remains_rpm", "100 km/h, nearest axle choice", \
        cruising_rpm(s, r) - cruising_rpm(0, axle_ratio), "rpm")
    choice_ratio[0] = axle_ratio    # to stay with what is there is a choice too
    for (c = 0; c <= choices; c++) {
        r = choice_ratio[c]
        gear_plain(s, "axle_choice_remains", choice_label(r), 100 * (r / restoring - 1), "%")
        gear_plain(s, "axle_choice_remains_rpm", choice_label(r) ", 100 km/h", \
            cruising_rpm(s, r) - cruising_rpm(0, axle_ratio), "rpm")
        gear_plain(s, "drive_back_rank", choice_label(r), rank(r, restoring, 1), "")
        gear_plain(s, "cruise_back_rank", choice_label(r), rank(r, restoring, -1), "")
    }
}
# choice: nearest in ratio is the smaller quotient of the two
function farness(a, b) { return abs(log(a / b)) }
# Place of ratio r when those on the wanted side (1: as much pull or more, -1: no more engine speed)
# come first, then the nearest.
function rank(r, restoring, side,    c, place, mine, its)
{
    place = 1
    mine = (r - restoring) * side >= 0
    for (c = 0; c <= choices; c++) {
        its = (choice_ratio[c] - restoring) * side >= 0
        if (its > mine || its == mine && \
                farness(choice_ratio[c], restoring) < farness(r, restoring) - 1e-12)
            place++
    }
    return place
}
# Coupled axles: (ratio_front / C_front) / (ratio_rear / C_rear) - 1, equal ratios in the demo builds.
# A quarter of an inch of circumference is what handbooks quote (common practice).
function mismatch_rows(s,    quarter, one, coupled)
{
    quarter = 100 * 0.25 * inch / circumference[s]
    coupled = text["vehicle/drive"] ~ /4wd/
    if (coupled) {
        gear_figure(s, 0, "circumference_mismatch", "", 0, "%", quarter, "ok")
        gear_plain(s, "mismatch_slip", "", 0, "m/km")
        # A quarter inch of circumference as a difference of tread depth: C = 3.05 D
        gear_plain(s, "tread_difference_allowed", "", 0.25 * inch / \
            (circumference[s] / diameter[s]) / 2 * 1000, "mm")
    }
    if (!has_spare[s])
        return
    one = circumference["spare" s] / circumference[s] - 1
    gear_figure(s, 0, "spare_mismatch", "", 100 * one, "%", quarter, \
        abs(100 * one) <= quarter ? "ok" : "caution")
    gear_plain(s, "spare_slip", "", abs(1000 * one), "m/km")
    if (coupled) {
        # the spare turns 1 / (1 + one) times as fast; the axle's shaft by the mean of its two wheels
        one = (1 + 1 / (1 + one)) / 2 - 1
        gear_plain(s, "circumference_mismatch", "spare in front", 100 * one, "%")
        gear_plain(s, "mismatch_slip", "spare in front", abs(1000 * one), "m/km")
        one = 1 / (1 + one) - 1
        gear_plain(s, "circumference_mismatch", "spare at the rear", 100 * one, "%")
        gear_plain(s, "mismatch_slip", "spare at the rear", abs(1000 * one), "m/km")
    }
}
