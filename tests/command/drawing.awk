# awk -f drawing.awk FIGURES.csv DRAWING.svg: every figure that a drawing names is one of the csv's,
# the text beside it is that figure, lines and bars are as long as it says, and no two texts stand in
# one place. Prints "N figures,
# M texts, K lengths" or what differs.

function csv_fields(line, field,    count, text, quoted, i, c) {
    count = 0; text = ""; quoted = 0
    for (i = 1; i <= length(line); i++) {
        c = substr(line, i, 1)
        if (quoted && c == "\"" && substr(line, i + 1, 1) == "\"") { text = text c; i++ }
        else if (c == "\"") quoted = !quoted
        else if (c == "," && !quoted) { field[++count] = text; text = "" }
        else text = text c
    }
    field[++count] = text
    return count
}

function plain(text) {
    gsub(/&lt;/, "<", text); gsub(/&gt;/, ">", text); gsub(/&quot;/, "\"", text)
    gsub(/&amp;/, "\\&", text)
    return text
}

function attribute(name,    at) {
    at = index($0, " " name "=\"")
    if (at == 0) return ""
    at = substr($0, at + length(name) + 3)
    return substr(at, 1, index(at, "\"") - 1) + 0
}

function wrong(text) { print "differs: " text; bad = 1 }

# Lengths drawn for one kind of figure are all in one proportion to it. In a drawing of several
# panels the panels have one scale.
function in_proportion(kind, drawn, value,    ratio) {
    if (value == 0) return
    ratio = drawn / value
    if (!(kind in first)) first[kind] = ratio
    else if (ratio / first[kind] > 1.005 || ratio / first[kind] < 0.995)
        wrong(kind ": " drawn " for " value ", but " first[kind] " a unit elsewhere")
    lengths++
}

FNR == NR {
    if (FNR == 1) next
    csv_fields($0, f)
    name = f[5]
    gsub(/_/, " ", name)
    kinds[name] = 1
    sentence = name
    split("2 3 4 6", places, " ")
    for (i = 1; i <= 4; i++)
        if (f[places[i]] != "") sentence = sentence ", " f[places[i]]
    value = f[7] == "" ? "unknown" : f[7] (f[8] == "" ? "" : " " f[8])
    figures[sentence ": " value] = 1
    next
}

/<svg/ { split("", placed) }

# Cells of a page have their row of the csv as their title.
/<td [^>]*title="/ {
    rest = $0
    while (match(rest, /title="[^"]*">[^<]*</)) {
        cell = substr(rest, RSTART + 7, RLENGTH - 8)
        rest = substr(rest, RSTART + RLENGTH)
        title = plain(substr(cell, 1, index(cell, "\"") - 1))
        text = plain(substr(cell, index(cell, ">") + 1))
        amount = title
        sub(/.*: /, "", amount)
        named_count++
        texts++
        if (!(title in figures)) wrong("the csv has no \"" title "\"")
        if (amount != text) wrong("\"" text "\" stands under \"" title "\"")
    }
}

# Turned texts have a place of their own kind.
/<text / && !/transform=/ {
    place = attribute("x") "," attribute("y") (/text-anchor="end"/ ? " end" : /text-anchor="middle"/ ? " middle" : "")
    if (place in placed) wrong("two texts at " place ": " $0)
    placed[place] = 1
}

/<title>/ {
    title = $0
    sub(/.*<title>/, "", title); sub(/<\/title>.*/, "", title)
    title = plain(title)
    kind = title
    sub(/[,:].*/, "", kind)
    named = kind in kinds
    amount = title
    sub(/.*: /, "", amount)
    if (named && !(title in figures)) wrong("the csv has no \"" title "\"")
    named_count += named
    part = 0
    next
}

/class="figure"/ {
    text = $0
    sub(/<\/text>.*/, "", text); sub(/.*>/, "", text)
    text = plain(text)
    texts++
    if (!named || amount != text) wrong("\"" text "\" stands under \"" title "\"")
    if (kind == "axle load" && bar_end && (attribute("y") < bar || attribute("y") > bar_end)) wrong(title " is not on its bar")
}

/<\/g>/ { named = 0 }

named && kind == "axle load" && /<rect/ && part++ == 0 && !/stroke-dasharray/ {
    in_proportion(kind, attribute("width"), amount + 0)
    bar = attribute("y"); bar_end = bar + attribute("height")
}

# The axes' own numbers: how long a unit is drawn.
/<text .*="middle">[0-9]+</ {
    number = $0
    sub(/<\/text>.*/, "", number); sub(/.*>/, "", number)
    if (number == 0) { zero_x = attribute("x"); row = attribute("y") }
    else if (attribute("y") == row) across = (attribute("x") - zero_x) / number
}
/<text .*="end">[0-9]+</ {
    number = $0
    sub(/<\/text>.*/, "", number); sub(/.*>/, "", number)
    if (number == 0) zero_y = attribute("y")
    else up = (zero_y - attribute("y")) / number
}
named && kind == "speed per 1000 rpm" && /<line/ && part++ == 0 {
    speed = (attribute("x2") - attribute("x1")) / across
    drawn = 1000 * speed / ((attribute("y1") - attribute("y2")) / up)
    if (drawn - amount > 0.005 + 0.0004 * amount || amount - drawn > 0.005 + 0.0004 * amount)
        wrong(title ": drawn as " drawn)
    lengths++
}

END {
    print named_count + 0 " figures, " texts + 0 " texts, " lengths + 0 " lengths"
    exit bad
}
