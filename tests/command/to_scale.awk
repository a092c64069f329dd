# awk -v wheelbase=MM -v rim=MM -v widths='MM MM...' -f to_scale.awk CLEARANCE.svg: is the drawing to scale?
# `rim`: its diameter; `widths`: the wheel's, a panel each. Of each arch the gap between two arrows is the
# figure beside it, by the scale that the rim gives, and the wall is as far from the fitted tyre as was measured; at
# lock the arrow goes on from the fitted tyre's corner, by the steering axis. Of the vehicle the rims are as large as the wheelbase
# makes them, and all tyres stand on the ground; a ramp touches its tyre (as far from the centre as it is large) and rises as the figure says,
# and so does the ridge between the tyres. Prints how many lengths and angles agree, or what does not.

function attribute(name,    at) {
    at = index($0, " " name "=\"")
    at = substr($0, at + length(name) + 3)
    return substr(at, 1, index(at, "\"") - 1)
}

function agree(what, drawn, said, slack) {
    if (drawn - said > slack || said - drawn > slack) { print FNR ": " what " " drawn ", not " said; bad = 1 }
    count++
}

# Of the line through two points from the middle of wheel W.
function distance(w, x1, y1, x2, y2,    d) {
    d = ((x2 - x1) * (y1 - cy[w]) - (x1 - cx[w]) * (y2 - y1)) / sqrt((x2 - x1) ^ 2 + (y2 - y1) ^ 2)
    return d < 0 ? -d : d
}

function degrees(x1, y1, x2, y2,    run) {
    run = x2 - x1 < 0 ? x1 - x2 : x2 - x1
    return atan2(y1 - y2 < 0 ? y2 - y1 : y1 - y2, run) * 45 / atan2(1, 1)
}

# The arrows of a view, in the order of its figures: above the tyre, which is told last, is drawn first.
function end_view(    i, drawn) {
    for (i = 1; i <= figures; i++) {
        drawn = view == "cut" ? i % 3 + 1 : i
        agree("gap " drawn, sqrt((tip_x[2 * drawn] - tip_x[2 * drawn - 1]) ^ 2 + \
            (tip_y[2 * drawn] - tip_y[2 * drawn - 1]) ^ 2) / scale, figure[i] < 0 ? -figure[i] : figure[i], 0.6)
    }
    if (view == "lock") agree("arrow from the corner", degrees(axis_x, axis_y, tip_x[1], tip_y[1]), degrees(axis_x, axis_y, corner_x, corner_y), 0.3)
    for (i = 1; i <= walls; i++) {
        agree("fitted tyre to wall " i, (i == 1 ? fitted_near - wall[i] : wall[i] - fitted_far) / scale, fitted[i], 0.6)
        agree("largest tyre to wall " i, (i == 1 ? largest_near - wall[i] : wall[i] - largest_far) / scale, figure[i], 0.6)
    }
    figures = tips = wheels = ramps = walls = rooms = 0
}

BEGIN { split(widths, width, " ") }

/"bold">/ {
    if (view != "" && view != "vehicle") end_view()
    view = /, from the side</ ? "side" : /cut through/ ? "cut" : /at lock, from above/ ? "lock" : /the vehicle from/ ? "vehicle" : ""
    panel += /"bold">front, from the side</
    figures = tips = wheels = ramps = walls = rooms = 0
}

/<circle .*fill="#eee"/ { cx[++wheels] = attribute("cx"); cy[wheels] = attribute("cy"); r[wheels] = attribute("r") }
view == "side" && /<circle .*fill="white"/ {
    scale = 2 * attribute("r") / rim
    if (wheels == 1 && !(panel in diameter)) diameter[panel] = 2 * r[1] / scale
}
view == "cut" && /<polyline/ { split(attribute("points"), p, "[ ,]"); scale = (p[5] - p[3]) / width[panel] }
view == "lock" && /<polygon .*fill="#eee"/ {
    split(attribute("points"), p, "[ ,]")
    scale = sqrt((p[5] - p[3]) ^ 2 + (p[6] - p[4]) ^ 2) / diameter[panel]
}
view == "lock" && /<circle .*fill="black"/ { axis_x = attribute("cx") + 0; axis_y = attribute("cy") + 0 }
view == "lock" && /<polygon .*stroke-dasharray="1.2 3"/ { split(attribute("points"), p, "[ ,]"); corner_x = p[3]; corner_y = p[4] }
/<polygon .*fill="black"/ { split(attribute("points"), p, "[ ,]"); tip_x[++tips] = p[1]; tip_y[tips] = p[2] }
view == "side" && /<circle .*stroke-dasharray="1.2 3"/ { fitted_near = -attribute("r") }
view == "side" && /<path .*stroke-width="2.2"/ { split(attribute("d"), p, " "); wall[++walls] = -p[5] }
view == "side" && /<circle .*stroke-dasharray="9 4"/ { largest_near = -attribute("r") }
view == "cut" && /<rect .*stroke-dasharray="9 4"/ { largest_near = attribute("x"); largest_far = largest_near + attribute("width") }
view == "cut" && /<rect .*stroke-dasharray="1.2 3"/ { fitted_near = attribute("x"); fitted_far = fitted_near + attribute("width") }
view == "cut" && /<line .*stroke-width="2.2"/ { wall[++walls] = attribute("x1") }
/>fitted -?[0-9]+ mm</ { text = $0; sub(/.*>fitted /, "", text); fitted[++rooms] = text + 0 }
/class="figure"/ && view != "vehicle" { sub(/ mm<.*/, ""); sub(/.*>/, ""); figure[++figures] = $0 + 0 }

view == "vehicle" && /<circle / && !/fill="(white|black)"/ { foot[++feet] = attribute("cy") + attribute("r") }
view == "vehicle" && /<line .*stroke-width="1"/ {
    for (; feet > 0; feet--) agree("foot of a tyre", foot[feet], attribute("y1") + 0, 0.02)
}
view == "vehicle" && /<circle .*fill="white"/ { rim_px = 2 * attribute("r") }
view == "vehicle" && /<line .*stroke-width="1.4"/ {
    side = ++ramps
    slope[side] = degrees(attribute("x1"), attribute("y1"), attribute("x2"), attribute("y2"))
    agree("rim", rim_px * wheelbase / (cx[2] - cx[1]), rim, 1)
    agree("ramp beside tyre", distance(side, attribute("x1"), attribute("y1"), attribute("x2"), attribute("y2")), r[side], 0.03)
}
view == "vehicle" && /<polyline .*stroke-width="1.4"/ {
    split(attribute("points"), p, "[ ,]")
    slope[3] = degrees(p[1], p[2], p[3], p[4]) + degrees(p[3], p[4], p[5], p[6])
    agree("ridge beside front tyre", distance(1, p[1], p[2], p[3], p[4]), r[1], 0.03)
    agree("ridge beside rear tyre", distance(2, p[3], p[4], p[5], p[6]), r[2], 0.03)
}
view == "vehicle" && /class="figure"/ { sub(/ deg<.*/, ""); sub(/.*>/, ""); agree("angle", slope[++figures], $0 + 0, 0.08) }

END { print count + 0 " agree"; exit bad }
