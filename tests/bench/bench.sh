#!/bin/sh
# sh tests/bench/bench.sh TYRESUM: how fast, as ratios of runs by turns on one machine. Prints a
# table and fails on nothing. BENCH_LINES (default 1000000) sets the length of the stream,
# BENCH_GROWTH (default 10000000) that of the longest one.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
if [ $# -ne 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/bench/bench.sh TYRESUM" >&2
    exit 2
fi
binary=$(absolute "$1")
lines=${BENCH_LINES:-1000000}
growth_lines=${BENCH_GROWTH:-10000000}
columns=designation,section_width_mm,section_height_mm,overall_diameter_mm,rolling_circumference_mm
columns=$columns,revs_per_mile,revs_per_km
work_in bench
LC_ALL=C
export LC_ALL

give_up() {
    echo "bench: $*; nothing is measured"
    exit 0
}

"${CC:-cc}" -O2 -o "$work/stopwatch" "$here/stopwatch.c" || give_up "no C compiler"

# measure RUNS INPUT OUTPUT COMMAND... [, COMMAND...]: runs them by turns, returns 1 if one does not
# run. take N: of the Nth $time_us (the least: what else runs on the machine only adds to it), $spread,
# $memory_kib and $times, its time as a multiple of the first one's in the same turn (the median).
measure() {
    measured=$("$work/stopwatch" "$@" 2>"$work/errors") || return 1
    take 1
}

take() {
    # shellcheck disable=SC2046 # five numbers
    set -- $(echo "$measured" | sed -n "$1p")
    time_us=$1
    spread="$1 / $2 / $3"
    memory_kib=$4
    times=$5
}

row() {
    printf '%-58s %26s %9s %10s\n' "$@"
}

ratio() { # OF TO
    awk -v of="$1" -v to="$2" 'BEGIN { printf "%.2f", (to > 0 ? of / to : 0) }'
}

start_up() {
    echo 'int main(void) { return 0; }' >"$work/empty.c"
    "${CC:-cc}" -O2 -Wl,--no-as-needed -o "$work/empty" "$work/empty.c" -lyaml -lm 2>"$work/errors" || {
        echo "start-up: no empty program linked to libyaml: $(head -n 1 "$work/errors")"
        return
    }
    # Both as they are once installed, copied in one go: the system reads that faster than what a
    # linker wrote bit by bit.
    cp "$work/empty" "$work/start_empty"
    cp "$binary" "$work/start_size"
    measure 500 /dev/null /dev/null "$work/start_empty" , \
        "$work/start_size" size '205/55R16 91V' || {
        echo "start-up: size does not run"
        return
    }
    row "start-up: empty program, same libraries" "$spread us" "" ""
    take 2
    row "start-up: size X (beside it)" "$spread us" "$(ratio "$times" 1) x" "$memory_kib KiB"
}

# A stock list: the same few hundred sizes again and again.
repeating() { # LINES
    awk -v lines="$1" 'BEGIN {
        split("V H T W Y Q R S", symbol, " ")
        for (i = 0; i < lines; i++)
            printf "%d/%dR%d %d%s\n", 155 + 10 * (i % 17), 35 + 5 * (i % 11), 13 + i % 10, \
                75 + i % 40, symbol[1 + i % 8]
    }'
}

# Nearly all different, by the same draws each time (Park and Miller, 1988).
different() { # LINES
    awk -v lines="$1" '
    function draw(n) {
        seed = (seed * 16807) % 2147483647
        return int(seed / 2147483647 * n)
    }
    BEGIN {
        seed = 20221
        split("J K L M N P Q R S T U H V W Y", symbol, " ")
        split("P LT", prefix, " ")
        for (i = 0; i < lines; i++)
            printf "%s%d/%dR%d %d%s\n", prefix[draw(3)], 145 + 10 * draw(20), 30 + 5 * draw(12), \
                13 + draw(10), 60 + draw(70), symbol[1 + draw(15)]
    }'
}

stream_of() { # NAME
    for output in /dev/null "$work/out"; do
        to="to a file"
        [ "$output" = /dev/null ] && to="to the null device"
        measure 7 "$work/lines" "$output" mawk -f "$here/columns.awk" , \
            "$binary" size - --format csv --columns "$columns" , \
            "$binary" size - --format csv || return
        row "$lines $1, $to: mawk, 7 columns" "$spread us" "" "$memory_kib KiB"
        take 2
        row "  size -, 7 columns (mawk / size)" "$spread us" "$(ratio 1 "$times") x" \
            "$memory_kib KiB"
        take 3
        row "  size -, all columns (mawk / size)" "$spread us" "$(ratio 1 "$times") x" \
            "$memory_kib KiB"
    done
}

stream() {
    repeating 10 >"$work/ten"
    if ! measure 1 "$work/ten" /dev/null "$binary" size - --format csv --columns "$columns"; then
        echo "stream: size - does not run yet: $(head -n 1 "$work/errors")"
        return
    fi
    command -v mawk >/dev/null 2>&1 || {
        echo "stream: no mawk to measure beside"
        return
    }
    different "$lines" >"$work/lines"
    stream_of "lines nearly all different"
    formats
    repeating "$lines" >"$work/lines"
    stream_of "lines of a repeating stock list"
}

formats() {
    measure 5 "$work/lines" /dev/null "$binary" size - --format csv , \
        "$binary" size - --format json , "$binary" size - --format table , \
        "$binary" size - --format markdown || return
    for format in 1:csv 2:json 3:table 4:markdown; do
        take "${format%%:*}"
        row "  size -, all columns as ${format#*:} (beside csv)" "$spread us" \
            "$(ratio "$times" 1) x" "$memory_kib KiB"
    done
}

growth() {
    count=10000
    while [ "$count" -le "$growth_lines" ]; do
        different "$count" >"$work/lines"
        measure 5 "$work/lines" /dev/null "$binary" size - --format csv --columns "$columns" || return
        row "growth: size -, $count lines" "$spread us" \
            "$(ratio $((time_us * 1000)) "$count") ns" "$memory_kib KiB"
        count=$((count * 10))
    done
}

instructions() {
    command -v valgrind >/dev/null 2>&1 || {
        echo "instructions: no valgrind to count them"
        return
    }
    for count in 10000 100000; do
        different "$count" >"$work/lines"
        counted=$(valgrind --tool=callgrind --callgrind-out-file="$work/calls" "$binary" size - \
            --format csv --columns "$columns" <"$work/lines" 2>&1 >/dev/null |
            awk '/Collected/ { print $NF }')
        row "instructions: size -, $count lines" "$counted" "$(ratio "${counted:-0}" "$count") each" ""
    done
}

# searched WHAT SHORTLIST-ARGUMENTS...: a row by combinations, of which one in eight is of a size that
# goes on its wheel and is judged.
searched() {
    what=$1
    shift
    measure 5 /dev/null /dev/null "$binary" shortlist "$@" --format csv || return
    tried=$("$binary" shortlist "$@" --format csv 2>&1 >/dev/null |
        awk '/combinations tried/ { print $2 }')
    row "shortlist: $tried combinations$what" "$spread us" \
        "$(ratio $((time_us * 1000)) "$tried") ns" "$memory_kib KiB"
}

# Twelve wheels and nine axles; nine and eighty-one pairs of springs under each; the stock lists of
# shops small and large.
shortlist() {
    build=$here/shortlist.yaml
    [ -r "$build" ] || return
    springs='[{name: S1, wheel_rate: 70 N/mm, lift: 40 mm}, {name: S2, wheel_rate: 90 N/mm, lift: 60 mm}]'
    lifts='[20 mm, 40 mm]'
    searched "" "$build"
    set -- --set "ratings.gross=4300 kg" --set "ratings.front=2100 kg" --set "ratings.rear=2200 kg" \
        --set "suspension.rear.spring_choices=$springs" --set "suspension.rear.lift_choices=$lifts"
    searched ", springs" "$build" "$@"
    searched ", springs front and rear" "$build" "$@" \
        --set "suspension.front.spring_choices=$springs" --set "suspension.front.lift_choices=$lifts"
    for count in 10 100 1000 10000; do
        { echo size && different "$count"; } >"$work/stock.csv"
        { cat "$build" && echo '  list: stock.csv'; } >"$work/stock.yaml"
        searched ", $count sizes in stock" "$work/stock.yaml"
    done
}

check() {
    demo="$here/../../demo/survey_wagon.yaml"
    measure 5 /dev/null /dev/null "$binary" sheet "$demo" , "$binary" check "$demo" || return
    row "sheet of the touring demo" "$spread us" "" "$memory_kib KiB"
    take 2
    row "  check of it (beside sheet)" "$spread us" "$(ratio "$times" 1) x" \
        "$memory_kib KiB"
}

# build_of OPTIONS ITEMS: an invented build with so many.
build_of() {
    awk -v options="$1" -v items="$2" 'BEGIN {
        print "vehicle: {kind: light_truck, drive: full_time_4wd, wheelbase: 2917 mm, track: 1525 mm,"
        print "  unladen: {front: 1290 kg, rear: 1180 kg}, ratings: {front: 1550 kg, rear: 1850 kg, gross: 3250 kg}}"
        print "tyres:\n  fitted: {size: 255/70R16 109S, placard: 230 kPa, wheel: {width: 7.5 in, inset: 30 mm}}"
        print "  options:"
        for (i = 1; i <= options; i++)
            printf "    - {name: option %d, size: %d/%dR16 115T}\n", i, 215 + 10 * (i % 10), 60 + 5 * (i % 5)
        print "carried:"
        for (i = 1; i <= items; i++)
            printf "  - {item: thing %d, mass: 0.2 kg, at: %d mm}\n", i, 100 + i % 3000
        print "drivetrain:\n  gears: [3.87, 2.21, 1.49, 1.07, 0.79]\n  axle: 3.83"
        print "  engine: {limit: 4900 rpm, torque: [[1200 rpm, 260 Nm], [2500 rpm, 350 Nm], [4500 rpm, 300 Nm]]}"
    }'
}

growth_of_builds() {
    for count in 10 100 1000; do
        build_of "$count" 3 >"$work/options.yaml"
        measure 5 /dev/null /dev/null "$binary" sheet "$work/options.yaml" --format html || return
        row "growth: sheet as html, $count options" "$spread us" \
            "$(ratio "$time_us" "$count") us" "$memory_kib KiB"
    done
    for count in 10 100 1000; do
        build_of 2 "$count" >"$work/items.yaml"
        measure 5 /dev/null /dev/null "$binary" check "$work/items.yaml" || return
        row "growth: check, $count carried items" "$spread us" \
            "$(ratio "$time_us" "$count") us" "$memory_kib KiB"
    done
}

row "what" "least / median / most" "by turns" "peak"
start_up
stream
growth
instructions
shortlist
check
growth_of_builds
exit 0
