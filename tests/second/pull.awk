# Part gearing, where a torque curve is given: pull, grades, the speed held on them, acceleration.
# Mannering and Washburn, Principles of Highway Engineering, ch. 2: rolling resistance of a paved road
# f = 0.01 (1 + V/147), V in ft/s; air 1/2 rho Cd A V^2. rho of ISO 2533 at sea level. Forces in N.
END {
    if ("drivetrain/engine/torque/1/1" in value) {
        curve_make()
        for (s = 0; s < setups; s++) {
            pull_setup_rows(s)
            for (c = 1; s > 0 && c <= choices; c++)
                pull_choice_rows(s, choice_ratio[c], choice_label(choice_ratio[c]) ", ")
        }
        for (k = 1; k <= states; k++)
            resistance_rows(k)
    }
}
function curve_make(    i)
{
    for (i = 1; "drivetrain/engine/torque/" i "/1" in value; i++) {
        turns[i] = value["drivetrain/engine/torque/" i "/1"]
        torque[i] = value["drivetrain/engine/torque/" i "/2"]
        if (i == 1 || torque[i] > torque[peak])
            peak = i
    }
    points = i - 1
    efficiency = value["drivetrain/efficiency"]
    grip = value["drivetrain/grip"]
    air_factor = 0.5 * 1.225 * value["vehicle/drag/coefficient"] * value["vehicle/drag/area"]
    foot = 0.3048
    # choice: an option on another axle ratio is shown in the heaviest state alone
    heavy_state = 1
    for (i = 2; i <= states; i++)
        if (train_load(0, i) > train_load(0, heavy_state))
            heavy_state = i
}
function rolling(v) { return 0.01 * (1 + v / (147 * foot)) }
function air(v) { return air_factor * v * v }
function weight(s, k) { return train_load(s, k) * g }
# Power balance: wheel torque over C / 2 pi.
function pull(s, ratio, moment) { return moment * ratio * efficiency * 2 * pi / circumference[s] }
# Grip of the vehicle's own wheels, all driven; the trailer's are not.
function grip_force(s, k) { return grip * gross_load(s, k) * g }
function pull_row(s, axle, name, r, i, p,    ratio, at)
{
    ratio = overall(i, r, axle)
    at = name gear_name[i] range_name[r] ", " turns[p] * 60 " rpm"
    gear_plain(s, "wheel_torque", at, torque[p] * ratio * efficiency, "Nm")
    gear_plain(s, "tractive_force", at, pull(s, ratio, torque[p]), "N")
}
function pull_setup_rows(s,    r, i, p, k)
{
    for (r = 1; r <= ranges; r++)
        for (i = 1; i <= gears; i++) {
            for (p = 1; p <= points; p++)
                pull_row(s, axle_ratio, "", r, i, p)
            for (k = 1; k <= states; k++)
                grade_row(s, k, axle_ratio, "", r, i)
            if (s > 0)
                acceleration_row(s, heavy_state, axle_ratio, "", r, i)
        }
    for (k = 1; k <= states; k++) {
        # the steepest that grip allows, at a standstill: mu W_driven cos = f W cos + W sin
        gear_figure(s, k, "grade_grip_limit", "", \
            100 * (grip_force(s, k) / weight(s, k) - rolling(0)), "%", "null", "")
        held_rows(s, k, axle_ratio, "")
    }
}
function pull_choice_rows(s, axle, name,    r, i)
{
    for (r = 1; r <= ranges; r++)
        for (i = 1; i <= gears; i++) {
            pull_row(s, axle, name, r, i, peak)
            grade_row(s, heavy_state, axle, name, r, i)
            acceleration_row(s, heavy_state, axle, name, r, i)
        }
    held_rows(s, heavy_state, axle, name)
}
# The grade climbed at the engine's best torque: F - A = W (f cos + sin), so that
# theta = asin((F - A)/W / sqrt(1 + f^2)) - atan f; where the wheels would spin there, the grade at
# which grip is all used: (grip/W - f) cos - sin = A/W.
function grade_row(s, k, axle, name, r, i,    ratio, v, f, w, x, q, theta, force)
{
    ratio = overall(i, r, axle)
    v = circumference[s] * turns[peak] / ratio
    f = rolling(v)
    w = weight(s, k)
    force = pull(s, ratio, torque[peak])
    x = (force - air(v)) / w / sqrt(1 + f * f)
    theta = x < 1 ? asin(x) - atan2(f, 1) : pi / 2
    if (force > grip_force(s, k) * cos(theta)) {
        q = grip_force(s, k) / w - f
        theta = atan2(q, 1) - asin(air(v) / w / sqrt(1 + q * q))
    }
    gear_figure(s, k, "grade", name gear_name[i] range_name[r] ", " turns[peak] * 60 " rpm", \
        100 * tan(theta), "%", "null", "")
}
# Acceleration on the level beside the fitted setup in the same gear at the same engine speed. Tyre
# and wheel turn with a radius of gyration of 0.7 of the free radius (common practice, no source).
# choice: the four wheels of the vehicle alone turn; the pull is no more than grip.
function acceleration(s, k, ratio,    v, mass, turning)
{
    v = circumference[s] * turns[peak] / ratio
    mass = train_load(s, k)
    turning = 4 * tyre_mass[s] * power(0.7 * diameter[s] / 2, 2) * power(2 * pi / circumference[s], 2)
    return (min(pull(s, ratio, torque[peak]), grip_force(s, k)) - air(v) - \
        rolling(v) * mass * g) / (mass + turning)
}
function acceleration_row(s, k, axle, name, r, i)
{
    gear_figure(s, k, "acceleration_change", name gear_name[i] range_name[r] ", " \
        turns[peak] * 60 " rpm", 100 * (acceleration(s, k, overall(i, r, axle)) / \
        acceleration(0, k, overall(i, r, axle_ratio)) - 1), "%", "null", "")
}
# The highest speed held on a grade, in any gear of the first range: where the straight pieces of
# the pull over speed meet the resistance, a quadratic in v. Checked piece by piece from the top.
function held_rows(s, k, axle, name,    n, i, v, best, best_gear, at)
{
    for (n = 1; "drivetrain/grades/" n in value; n++) {
        best = -1
        for (i = 1; i <= gears; i++) {
            v = held_in(s, k, overall(i, 1, axle), value["drivetrain/grades/" n])
            if (v > best) {
                best = v
                best_gear = i
            }
        }
        at = name label(100 * value["drivetrain/grades/" n], 1) " % grade"
        gear_figure(s, k, "speed_held", at, best / kmh, "km/h", "null", "")
        gear_figure(s, k, "gear_needed", at, best_gear, "", "null", "")
    }
}
function held_in(s, k, ratio, grade,    w, theta, p, v1, v2, f1, f2, a, b, c, root, v)
{
    w = weight(s, k)
    theta = atan2(grade, 1)
    for (p = points; p >= 2; p--) {
        v1 = circumference[s] * turns[p - 1] / ratio
        v2 = circumference[s] * turns[p] / ratio
        f1 = min(pull(s, ratio, torque[p - 1]), grip_force(s, k) * cos(theta))
        f2 = min(pull(s, ratio, torque[p]), grip_force(s, k) * cos(theta))
        if (f2 >= needed_at(v2, w, theta))
            return v2
        # resistance - pull = a v^2 + b v + c
        a = air_factor
        b = 0.01 / (147 * foot) * w * cos(theta) - (f2 - f1) / (v2 - v1)
        c = 0.01 * w * cos(theta) + w * sin(theta) - f1 + (f2 - f1) / (v2 - v1) * v1
        if (b * b < 4 * a * c)
            continue
        root = sqrt(b * b - 4 * a * c)
        v = (root - b) / (2 * a)
        if (v >= v1 - 1e-9 && v <= v2)
            return v
    }
    return -1
}
function needed_at(v, w, theta) { return air(v) + rolling(v) * w * cos(theta) + w * sin(theta) }
function resistance_rows(k,    i, v)
{
    gear_figure(0, k, "grip_force", "", grip_force(0, k), "N", "null", "")
    for (i = 1; i <= road_speeds; i++) {
        v = road_speed[i] * kmh
        gear_figure(0, k, "air_resistance", road_speed[i] " km/h", air(v), "N", "null", "")
        gear_figure(0, k, "rolling_resistance", road_speed[i] " km/h", rolling(v) * weight(0, k), \
            "N", "null", "")
    }
}
