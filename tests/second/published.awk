# Rows of published tables that the demo builds need, typed in here from their sources and not from
# the program's tables, and small functions. Pressures in Pa, speeds in m/s, lengths in m, masses in
# kg, as everywhere in these scripts: a figure is turned into its printed unit where it is put out.
function published()
{
    pi = atan2(0, -1)
    g = 9.80665           # standard gravity, 3rd CGPM 1901
    inch = 0.0254         # international inch
    pound = 0.45359237    # international pound
    psi = pound * g / (inch * inch)
    kmh = 1 / 3.6
    mph = 1609.344 / 3600
    atmosphere = 101325   # standard atmosphere, 10th CGPM 1954

    # Load index, kg: UN R30 and UN R54, Annex 4.
    rows("li", "88 560 91 615 95 690 96 710 103 875 107 975 109 1030 111 1090 112 1120 116 1250 " \
        "120 1400 123 1550")
    # Speed symbol, km/h, and their order: ISO 4223-1, Directive 92/23/EEC, Annex II.
    rows("symbol", "M 130 N 140 P 150 Q 160 R 170 S 180 T 190 U 200 H 210 V 240 W 270 Y 300")
    rows("order", "M 1 N 2 P 3 Q 4 R 5 S 6 T 7 U 8 H 9 V 10 W 11 Y 12")
    # Factors of the nominal section width by nominal aspect ratio: measuring and permitted rims
    # (ISO 4000-1, from memory), theoretical rim (UN R30, 6.1.1.1).
    rows("rim_measuring", "45 0.85 55 0.80 60 0.75 65 0.75 70 0.75 75 0.70 85 0.70")
    rows("rim_least", "45 0.80 55 0.70 60 0.70 65 0.70 70 0.65 75 0.65 85 0.65")
    rows("rim_most", "45 0.95 55 0.90 60 0.90 65 0.90 70 0.85 75 0.85 85 0.80")
    rows("rim_theory", "45 0.85 55 0.70 60 0.70 65 0.70 70 0.70 75 0.70 85 0.70")
    # UN R54, Annex 8: per cent of the load index load at low speed (km/h), up to LI 121, from 122.
    annex_8_rows = 7
    rows("annex_8_speed", "1 0 2 5 3 10 4 15 5 20 6 25 7 30")
    rows("annex_8_low", "1 210 2 190 3 175 4 160 5 150 6 142 7 135")
    rows("annex_8_high", "1 250 2 210 3 180 4 165 5 150 6 135 7 125")
    # Two-sided 95 % points of Student's t by degrees of freedom: any table of it, e.g. ISO 3534-1.
    rows("student", "1 12.706204736 2 4.3026527297 3 3.1824463053 4 2.7764451052")
    # Density at 15 degrees, kg/m3: the middle of EN 590 (820 to 845), rounded up as commonly done.
    density["diesel"] = 835
    density["water"] = 1000 # common practice
    # Mass of an occupant: Regulation (EU) 1230/2012, driver.
    occupant = 75
}
function rows(table, text,    part, n, i)
{
    n = split(text, part, " ")
    for (i = 1; i < n; i += 2)
        published_row[table, part[i]] = part[i + 1]
}
function row(table, key)
{
    if (!((table, key) in published_row)) {
        print "FAIL second computation: no row " key " in " table > "/dev/stderr"
        return 0
    }
    return published_row[table, key] + 0
}

function max(a, b) { return a > b ? a : b }
function min(a, b) { return a < b ? a : b }
function abs(a) { return a < 0 ? -a : a }
function floor_of(x,    n) { n = int(x); return n > x ? n - 1 : n }
# Whole steps up and down, with room for the last digits of a sum that is a whole step already.
function steps_up(x, step) { return -floor_of(-x / step + 1e-9) * step }
function steps_down(x, step) { return floor_of(x / step + 1e-9) * step }
function asin(x) { return atan2(x, sqrt(1 - x * x)) }
function tan(x) { return sin(x) / cos(x) }
function power(x, n) { return exp(n * log(x)) }
function degrees(x) { return x * 180 / pi }
# A number as labels have it: no zeros at the end of its decimals.
function label(x, decimals,    text)
{
    text = sprintf("%." decimals "f", x)
    if (text ~ /\./) {
        sub(/0+$/, "", text)
        sub(/\.$/, "", text)
    }
    return text
}

# One expected row. value null: the program must say that it has none. limit or verdict "-": not
# recomputed; a limit of several words: any of them will do.
function put(part, option, state, axle, quantity, at, value, unit, limit, verdict)
{
    if (value != "null")
        value = sprintf("%.12g", value)
    if (limit != "-" && limit != "null" && limit !~ / /)
        limit = sprintf("%.12g", limit)
    printf "%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\n", part, option, state, axle, quantity, at, \
        value, unit, limit, verdict
}
# A figure with neither limit nor verdict.
function plain(part, option, state, axle, quantity, at, value, unit)
{
    put(part, option, state, axle, quantity, at, value, unit, "null", "")
}
