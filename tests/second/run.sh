#!/bin/sh
# sh tests/second/run.sh TYRESUM [BUILD.yaml...]: a second computation of whole sheets.
#
# The demo builds, and one of springs, are read by an awk of their own, their quantities turned into SI by GNU units, and
# every part computed from the formulas of the standards and handbooks named in *.awk, one file a
# subject. The rows are compared with those of "tyresum sheet FILE --format json" to a relative
# 1e-6 (below 1: an absolute 1e-6), verdicts and limits too. Nothing here is shared with the program:
# neither code nor table. Inputs are the build file's; no figure of the program is one.
# Where the sources leave a choice open, the comment says "choice".
# AWK=gawk runs it by another awk than the system's own.
# shellcheck disable=SC2016 # what awk is to expand stands in single quotes
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
if [ $# -lt 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/second/run.sh TYRESUM [BUILD.yaml...]" >&2
    exit 2
fi
binary=$1
shift
[ $# -gt 0 ] || set -- "$here/../../demo/survey_wagon.yaml" "$here/../../demo/repair_van.yaml" \
    "$here/../../demo/commuter_car.yaml" "$here/springs.yaml"
awk=${AWK:-awk}
LC_ALL=C
export LC_ALL
for tool in units jq; do
    if ! command -v "$tool" >/dev/null 2>&1; then
        echo "not run: no $tool"
        echo "count 0 0 1"
        exit 0
    fi
done
work_in second

# broken TEXT: one failure that is no figure's.
broken() {
    echo "FAIL $1"
    failed=$((failed + 1))
}

# quantities FILE: values with a unit, a line each: number of its line, what it is, the unit of the SI
# in which it is wanted. What GNU units understands otherwise (h is Planck's constant) is written out.
quantities() {
    "$awk" -F '\t' '
        BEGIN {
            n = split("mm m,in m,kg kg,lb kg,kPa Pa,psi Pa,bar Pa,km/h m/s,mph m/s,L m^3," \
                "L/min m^3/s,N/mm N/m,% 1,deg radian,m2 m^2,rpm 1/s,Nm J", pair, ",")
            for (i = 1; i <= n; i++) {
                split(pair[i], side, " ")
                wanted[side[1]] = side[2]
            }
            written["%"] = "percent"
            written["deg"] = "degree"
            written["m2"] = "m^2"
            written["km/h"] = "km/hour"
            written["rpm"] = "/min"
            written["Nm"] = "N m"
        }
        $2 ~ /^-?[0-9.]+ [^ ]+$/ && split($2, part, " ") == 2 && part[2] in wanted {
            print NR "\t" part[1] " " (part[2] in written ? written[part[2]] : part[2]) \
                "\t" wanted[part[2]]
        }' "$1"
}

# second_sheet BUILD OUT: all expected rows of one build file.
second_sheet() {
    "$awk" -f "$here/read_build.awk" "$1" >"$work/flat" 2>"$work/said" || return 1
    quantities "$work/flat" >"$work/asked"
    cut -f 2- "$work/asked" | tr '\t' '\n' |
        units -q -t -o '%.17g' >"$work/si" 2>"$work/said" || return 1
    # One number for each, or units did not know one of them.
    if grep -v '^-\{0,1\}[0-9][-+.0-9e]*$' "$work/si" >>"$work/said" ||
        [ "$(wc -l <"$work/si")" -ne "$(wc -l <"$work/asked")" ]; then
        return 1
    fi
    cut -f 1 "$work/asked" | paste - "$work/si" |
        "$awk" -F '\t' -v OFS='\t' '
            NR == FNR { si[$1] = $2; next }
            FNR in si { print $1, $2, si[FNR]; next }
            $2 ~ /^-?[0-9.]+$/ { print $1, $2, $2; next }
            { print $1, $2, "" }' - "$work/flat" >"$work/build"
    "$awk" -f "$here/published.awk" -f "$here/model.awk" -f "$here/tyre.awk" -f "$here/load.awk" \
        -f "$here/deflection.awk" -f "$here/speedometer.awk" -f "$here/gearing.awk" \
        -f "$here/pull.awk" -f "$here/clearance.awk" -f "$here/arch.awk" \
        -f "$here/places.awk" -f "$here/springs.awk" "$work/build" \
        >"$2" 2>"$work/said" || return 1
    [ ! -s "$work/said" ]
}

for file; do
    build=$(basename "$file" .yaml)
    if ! second_sheet "$file" "$work/expected"; then
        [ ! -f "$work/said" ] || cat "$work/said"
        broken "$build: the second computation did not run"
        continue
    fi
    if ! "$binary" sheet "$file" --format json >"$work/json"; then
        broken "$build: the program gave no sheet"
        continue
    fi
    jq -r '.[] | [.part, .option, .state, .axle, .quantity, .at,
        (if .value == null then "null" else .value end), .unit,
        (if .limit == null then "null" else .limit end), .verdict] | @tsv' "$work/json" \
        >"$work/program" || broken "$build: jq could not read the json"
    "$awk" -v build="$build" -f "$here/compare.awk" \
        "$work/expected" "$work/program" >"$work/compared"
    sed '/^counted/d' "$work/compared"
    # shellcheck disable=SC2046 # two numbers
    set -- $(sed -n 's/^counted//p' "$work/compared") 0 1
    passed=$((passed + $1))
    failed=$((failed + $2))
done
give_count
