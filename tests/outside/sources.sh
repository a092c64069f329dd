#!/bin/sh
# sh tests/outside/sources.sh: whether every check, unit test and table says where its figures stand,
# by how sure they are said to be (sources.awk has the rules), and how many are how sure. Before that
# it is shown that the rules can be broken.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
work_in sources
cd "$here" || exit 1
LC_ALL=C
export LC_ALL
safety="tolerance speed_load speed_load_commercial speed_pressure inflation load_range load_index"
safety="$safety light_truck_maxima pressure_warning rim_code rim_factors flotation_rims heavy_rims"
safety="$safety headlamp_dip speed_symbol"

words=$(sed -n 's/^#define [A-Z_]* "\(.*\)"$/\1/p' ../../src/tables/certainty.h | paste -sd , -)
look() {
    awk -F '\037' -v words="$words" -v safety="$safety" -f sources.awk part=rows "$1" \
        part=unit "$2" part=tables "$3"
}

# A line of a table as a whole, then its rows: the least sure of a row's words counts for it.
table_rows() {
    awk -v task=plain -v with_heading=1 -f csv.awk "$1" | awk -F '\037' -v words="$words" \
        -v name="$(basename "$1" .csv)" -v whole="$(sed -n 's/^# source: //p' "$1")" \
        -v own="$(sed -n 's/^# certainty: //p' "$1")" '
        BEGIN {
            count = split(words, word, ",")
            for (i = 1; i <= count; i++)
                rank[word[i]] = i
            print name "\037\037" whole
        }
        NR == 1 {
            for (i = 1; i <= NF; i++) {
                column[i] = $i ~ /(^|_)certainty$/
                columns += column[i]
                if ($i == "basis")
                    basis = i
            }
            next
        }
        {
            least = columns ? "" : own
            for (i = 1; i <= NF; i++)
                if (column[i] && $i != "" && (least == "" || rank[$i] > rank[least]))
                    least = $i
            print name "\037" least "\037" (basis ? $basis : "")
        }'
}

# shellcheck disable=SC2154 # work is made by work_in
awk -v task=rows -f csv.awk ./*.csv >"$work/rows" || exit 1
awk -v task=plain -f csv.awk unit.csv >"$work/unit" || exit 1
for table in ../../tables/*.csv; do
    table_rows "$table"
done >"$work/tables"

# can_fail CERTAINTY SOURCE: it is refused.
: >"$work/none"
can_fail() {
    printf '1\037made up\037\037\037\037\037\037%s\037\037%s\n' "$2" "$1" >"$work/made"
    if look "$work/made" "$work/none" "$work/none" | grep -q '^FAIL check made up'; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "FAIL tests/outside/sources.sh: is not refused, $1: $2"
    fi
}
can_fail published 'a club article: 3.92 x 33/35'
can_fail published 'tyre handbook'
can_fail published ''
can_fail derived '2406 / 2327, by hand'
can_fail derived "a tyre maker's sheet, row LT245/75R16"
can_fail published 'ECE R39 5.3'
can_fail secondary 'UN R39 5.3'
can_fail '' 'UN R39 5.3'

look "$work/rows" "$work/unit" "$work/tables" >"$work/seen"
grep -v '^count ' "$work/seen"
passed=$((passed + $(sed -n 's/^count \([0-9]*\) .*/\1/p' "$work/seen")))
failed=$((failed + $(sed -n 's/^count [0-9]* \([0-9]*\) .*/\1/p' "$work/seen")))
give_count
