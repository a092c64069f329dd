# awk -f within.awk FILE...: in every drawing all shapes and texts lie on its sheet, and no text covers
# another or comes nearer to the sheet's edge than a letter, in the widest of the usual fonts. Prints how
# many there are, or what does not.

function attribute(name,    at) {
    at = index($0, " " name "=\"")
    if (at == 0) return ""
    at = substr($0, at + length(name) + 3)
    return substr(at, 1, index(at, "\"") - 1)
}

function width_of(text,    i, ems) {
    for (i = 1; i <= length(text); i++) ems += advance[substr(text, i, 1)]
    return ems / 1000
}

function wrong(text) { print FILENAME ":" FNR ": " text ": " $0; bad = 1 }

function on_sheet(x0, y0, x1, y1) {
    if (x0 < 0 || y0 < 0 || x1 > width || y1 > height) wrong("not within " width " by " height)
}

BEGIN { # DejaVu Sans, table hmtx: from the blank on, in thousandths of the size; bold is wider still
    n = split("318 401 460 838 636 950 780 275 390 390 500 838 318 361 318 337 636 636 636 636 636 636 636 " \
        "636 636 636 337 337 838 838 838 531 1000 684 686 698 770 632 575 775 752 295 295 656 557 863 748 787 " \
        "603 787 695 635 611 732 684 989 685 611 685 390 337 390 838 500 500 613 635 550 635 615 352 635 634 " \
        "278 278 579 278 974 634 612 635 635 411 521 392 634 592 818 592 592 525 636 337 636 838", thousandths, " ")
    for (i = 1; i <= n; i++) advance[sprintf("%c", 31 + i)] = thousandths[i]
}

/^<\?xml/ { alone = 1 }
/^<!DOCTYPE/ { alone = 0 }
/<svg/ { split(attribute("viewBox"), view, " "); width = view[3]; height = view[4]; texts = 0 }

/<rect/ {
    x = attribute("x") + 0; y = attribute("y") + 0
    on_sheet(x, y, x + attribute("width"), y + attribute("height"))
}
/<circle/ {
    x = attribute("cx") + 0; y = attribute("cy") + 0; r = attribute("r") + 0
    on_sheet(x - r, y - r, x + r, y + r)
}
/<(line|polyline|polygon) / {
    points = /<line/ ? attribute("x1") "," attribute("y1") " " attribute("x2") "," attribute("y2") : attribute("points")
    n = split(points, at, "[ ,]")
    for (i = 1; i < n; i += 2) on_sheet(at[i] + 0, at[i + 1] + 0, at[i] + 0, at[i + 1] + 0)
}
/<(rect|circle|line|polyline|polygon) / { shapes++ }

/<text / && !/transform=/ {
    text = $0
    sub(/<\/text>.*/, "", text); sub(/.*>/, "", text)
    gsub(/&[a-z]*;/, "x", text)
    size = attribute("font-size") + 0
    long = size * width_of(text)
    x = attribute("x") - (/"end"/ ? long : /"middle"/ ? long / 2 : 0); y = attribute("y") + 0
    top = y - 0.7 * size
    margin = alone ? size : 0 # a page has one of its own
    on_sheet(x - margin, top, x + long + margin, y)
    for (i = 0; i < texts; i++)
        if (x < right[i] && x + long > left[i] && top < low[i] && y > high[i]) wrong("covers \"" said[i] "\"")
    left[texts] = x; right[texts] = x + long; high[texts] = top; low[texts] = y
    said[texts++] = text
    all++
}

END { print shapes + 0 " shapes, " all + 0 " texts"; exit bad }
