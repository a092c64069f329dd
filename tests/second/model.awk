# Reads PATH, TEXT and SI NUMBER of one build file (tab separated) and makes of them what all parts
# need: setups (0 is fitted, then the options), their tyres and wheels, loading states, axle loads.
# choice: the demo builds stand on the same tyre and wheel front and rear, single, without a
# data-book diameter, and no rule for other builds is written here.
BEGIN {
    FS = "\t"
    published()
}
{
    text[$1] = $2
    if ($3 != "")
        value[$1] = $3 + 0
    n = split($1, step, "/")
    if (step[1] == "states" && n >= 2 && !(step[2] in seen_state)) {
        seen_state[step[2]] = 1
        state_name[++states] = step[2]
    }
}
END {
    axle_name[1] = "front"
    axle_name[2] = "rear"
    light_truck = text["vehicle/kind"] == "light_truck"
    wheelbase = value["vehicle/wheelbase"]
    top_speed = value["vehicle/top_speed"]
    reserve = value["limits/load_reserve"] + 0
    for (setups = 0; setup_path(setups) "/size" in text; setups++)
        make_setup(setups)
    for (s = 0; s < setups; s++)
        make_spare(s)
    make_items()
    make_states()
}

function setup_path(s) { return s == 0 ? "tyres/fitted" : "tyres/options/" s }
# A value that may differ by axle is one value or has a key an axle.
function by_axle(path, a)
{
    if (path "/" axle_name[a] in value)
        return value[path "/" axle_name[a]]
    return path in value ? value[path] : "null"
}

# Size designation of tyre t (a setup's number, or "spare" and the number): ISO 4000-1, UN R30 2.17.
function read_size(t, words,    word, size, at, rest)
{
    designation[t] = words
    split(words, word, " ")
    size = word[1]
    match(size, /^[A-Z]*/)
    prefix[t] = substr(size, 1, RLENGTH)
    size = substr(size, RLENGTH + 1)
    at = index(size, "/")
    section[t] = substr(size, 1, at - 1) / 1000
    rest = substr(size, at + 1)
    aspect[t] = rest + 0
    match(rest, /^[0-9]+/)
    construction[t] = substr(rest, RLENGTH + 1, 1)
    rest = substr(rest, RLENGTH + 2)
    rim_code[t] = rest + 0
    match(rest, /^[0-9]+/)
    suffix[t] = substr(rest, RLENGTH + 1)
    load_index[t] = word[2] + 0
    speed_symbol[t] = substr(word[2], length(word[2]))
    extra_load[t] = words ~ / XL$/
    commercial[t] = suffix[t] ~ /^C/
    passenger[t] = prefix[t] == "P" || prefix[t] == "" && !commercial[t]
    un_r54[t] = prefix[t] == "LT" || commercial[t]
}

# Dimensions: UN R30 6.1 and UN R54 6.1; no special use, no snow marking in the demo builds.
function make_dimensions(t,    width, rise, broad, theory)
{
    # Nominal rim diameter: code x 25.4, to the nearest mm; section height likewise, in whole mm.
    rim_diameter[t] = int(rim_code[t] * 25.4 + 0.5) / 1000
    width = section[t] * 1000
    height[t] = int((width * aspect[t] + 50) / 100 + 1e-9) / 1000
    diameter[t] = rim_diameter[t] + 2 * height[t]
    rise = construction[t] == "R" ? 1.04 : un_r54[t] ? 1.07 : 1.08
    broad = construction[t] == "R" ? 1.04 : 1.06
    diameter_least[t] = rim_diameter[t] + 2 * height[t] * 0.97
    diameter_most[t] = rim_diameter[t] + 2 * height[t] * rise
    width_on_rim[t] = section[t]
    if (rim_width[t] != "null") {
        # S = S1 + 0.4 (A - A1), UN R30 6.1.1.1, to the nearest mm
        theory = row("rim_theory", aspect[t]) * width
        width_on_rim[t] = int(width + 0.4 * (rim_width[t] * 1000 - theory) + 0.5) / 1000
    }
    # choice: the allowed growth counts on the width on the actual rim, not on the nominal width
    width_most[t] = width_on_rim[t] * broad
    # ETRTO rolling circumference, 3.05 D radial and 2.99 D diagonal
    circumference[t] = (construction[t] == "R" ? 3.05 : 2.99) * diameter[t]
    # 0.912 D/2 at the rated load
    loaded_radius[t] = 0.912 * diameter[t] / 2
}

function make_setup(s,    path, wheel)
{
    path = setup_path(s)
    option[s] = s == 0 ? "fitted" : text[path "/name"]
    # choice: an option without a wheel stands on the fitted one
    wheel = path "/wheel/width" in value ? path "/wheel" : "tyres/fitted/wheel"
    own_wheel[s] = s > 0 && wheel != "tyres/fitted/wheel"
    rim_width[s] = value[wheel "/width"]
    inset[s] = value[wheel "/inset"]
    spacer[s] = value[wheel "/spacer"] + 0
    wheel_load[s] = wheel "/max_load" in value ? value[wheel "/max_load"] : "null"
    wheel_pressure[s] = wheel "/max_pressure" in value ? value[wheel "/max_pressure"] : "null"
    tyre_mass[s] = value[path "/mass"]
    chains[s] = value[path "/snow_chains"] + 0
    read_size(s, text[path "/size"])
    make_dimensions(s)
    load_range[s] = text[path "/load_range"]
    book_load[s] = path "/data_book/max_load" in value ? value[path "/data_book/max_load"] : "null"
    book_pressure[s] = value[path "/data_book/at_pressure"] + 0
}
# The spare of a setup: its own, or the one carried now. choice: no spare of the demo builds names a
# wheel, and each stands on the wheel of the tyres that it belongs to, whose rim code it shares; a
# temporary one on a rim of its own kind that no rule gives.
function make_spare(s,    t, path, of)
{
    t = "spare" s
    of = s
    path = setup_path(s) "/spare/size"
    if (!(path in text)) {
        path = "tyres/spare/size"
        of = 0
    }
    has_spare[s] = path in text
    if (!has_spare[s])
        return
    read_size(t, text[path])
    rim_width[t] = prefix[t] == "T" ? "null" : rim_width[of]
    book_load[t] = "null"
    wheel_load[t] = prefix[t] == "T" ? "null" : wheel_load[of]
    wheel_pressure[t] = prefix[t] == "T" ? "null" : wheel_pressure[of]
    make_dimensions(t)
}

function make_items(    i, path)
{
    for (i = 1; "carried/" i "/item" in text; i++) {
        path = "carried/" i
        item[i] = text[path "/item"]
        if (path "/mass" in value)
            item_mass[i] = value[path "/mass"]
        else if (path "/volume" in value)
            item_mass[i] = value[path "/volume"] * density[text[path "/of"]] + value[path "/dry_mass"]
        else if (path "/occupants" in value)
            item_mass[i] = value[path "/occupants"] * occupant
        else
            item_mass[i] = value[path "/tow_ball"]
        if (text[path "/removed"] == "true")
            item_mass[i] = -item_mass[i]
        item_at[i] = path "/at" in value ? value[path "/at"] : \
            value["vehicle/seats/" text[path "/seat"]]
        item_side[i] = value[path "/side"] + 0
        trailer_mass[i] = value[path "/trailer_mass"] + 0
        on_roof[i] = text[path "/on"] == "roof"
    }
    items = i - 1
}
function make_states(    k, i, n)
{
    if (states == 0)
        state_name[++states] = "everything"
    for (k = 1; k <= states; k++) {
        for (n = 1; "states/" state_name[k] "/" n in text; n++)
            for (i = 1; i <= items; i++)
                if (item[i] == text["states/" state_name[k] "/" n])
                    aboard[k, i] = 1
        if (n == 1)
            for (i = 1; i <= items; i++)
                aboard[k, i] = 1
        state_loads(k)
    }
    for (i = 1; i <= 2; i++) {
        heaviest[i] = 1
        for (k = 2; k <= states; k++)
            if (corner_load(0, k, i) > corner_load(0, heaviest[i], i) + 1e-9)
                heaviest[i] = k
    }
}
# Moments about the axles: rear share of an item x/L, front share (L - x)/L.
function share(x, a) { return a == 2 ? x / wheelbase : (wheelbase - x) / wheelbase }
function state_loads(k,    i, a)
{
    for (a = 1; a <= 2; a++)
        state_axle[k, a] = value["vehicle/unladen/" axle_name[a]]
    for (i = 1; i <= items; i++) {
        if (!((k, i) in aboard))
            continue
        for (a = 1; a <= 2; a++) {
            state_axle[k, a] += item_mass[i] * share(item_at[i], a)
            state_side[k, a] += item_mass[i] * share(item_at[i], a) * item_side[i]
        }
        if (on_roof[i])
            state_roof[k] += item_mass[i]
        if (trailer_mass[i] > 0) {
            state_ball[k] += item_mass[i]
            state_trailer[k] += trailer_mass[i]
        }
    }
}
# Tyres and wheels of the option weigh on their own axle. choice: a spare without a mass weighs what
# the fitted state's did.
function axle_load(s, k, a) { return state_axle[k, a] + 2 * (tyre_mass[s] - tyre_mass[0]) }
function gross_load(s, k) { return axle_load(s, k, 1) + axle_load(s, k, 2) }
# choice: the trailer's mass is the whole of it, so that its load on the ball counts once
function train_load(s, k) { return gross_load(s, k) + state_trailer[k] - state_ball[k] }
# The heavier corner: half the axle load, and the moment about the vehicle's centre line over the
# track. The axles share it by roll stiffness, of which one has at most 65 % (common practice, no
# source); choice: or what is its own by distance, where that is more.
function corner_load(s, k, a) { return corner_with(0.65, s, k, a) }
function corner_with(part, s, k, a,    track, moment)
{
    track = by_axle("vehicle/track", a)
    moment = max(abs(state_side[k, a]), part * abs(state_side[k, 1] + state_side[k, 2]))
    return axle_load(s, k, a) / 2 + (track == "null" ? 0 : moment / track)
}
