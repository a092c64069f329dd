# awk -f within.awk FILE...: in every drawing all shapes and texts lie on its sheet, and no text covers
# another. Prints how many there are, or what does not. Texts are taken for no wider than in the widest
# of the usual fonts: in DejaVu Sans, by its hmtx table, capitals, digits and most letters are at least
# 0.52 of the size, the others 0.27, and W is 0.989, bold 1.103.

function attribute(name,    at) {
    at = index($0, " " name "=\"")
    if (at == 0) return ""
    at = substr($0, at + length(name) + 3)
    return substr(at, 1, index(at, "\"") - 1)
}

function wrong(text) { print FILENAME ":" FNR ": " text ": " $0; bad = 1 }

function on_sheet(x0, y0, x1, y1) {
    if (x0 < 0 || y0 < 0 || x1 > width || y1 > height) wrong("not within " width " by " height)
}

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
    gsub(/&[a-z]*;/, "x", text); gsub(/[\200-\277]/, "", text)
    size = attribute("font-size") + 0
    wide = gsub(/[A-HK-Za-eghkm-qsu-z0-9]/, "&", text)
    long = size * (0.27 * length(text) + 0.25 * wide + (/"bold"/ ? 0.58 : 0.46) * gsub(/W/, "W", text))
    x = attribute("x") - (/"end"/ ? long : /"middle"/ ? long / 2 : 0); y = attribute("y") + 0
    top = y - 0.7 * size
    on_sheet(x, top, x + long, y)
    for (i = 0; i < texts; i++)
        if (x < right[i] && x + long > left[i] && top < low[i] && y > high[i]) wrong("covers \"" said[i] "\"")
    left[texts] = x; right[texts] = x + long; high[texts] = top; low[texts] = y
    said[texts++] = text
    all++
}

END { print shapes + 0 " shapes, " all + 0 " texts"; exit bad }
