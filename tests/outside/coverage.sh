#!/bin/sh
# sh tests/outside/coverage.sh TYRESUM: how far the published values reach, by command and certainty,
# by table and by formula; and what is lacking. Fails where formulas.csv or tables.csv do not fit the
# headers, the tables and the checks any more. What stands in those two is measured by
# measure/run.sh, not guessed.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
if [ $# -ne 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/outside/coverage.sh TYRESUM" >&2
    exit 2
fi
commands=$("$1" --help) || exit 1
work_in coverage
cd "$here" || exit 1
LC_ALL=C
export LC_ALL

awk -v task=rows -f csv.awk ./*.csv >"$work/rows" || exit 1
for name in formulas tables unit; do
    awk -v task=plain -f csv.awk $name.csv >"$work/$name" || exit 1
done
awk -f functions.awk ../../src/compute/*.h ../../src/tables/lookup.h >"$work/functions"
for table in ../../tables/*.csv; do
    echo "$(basename "$table" .csv) $(awk -v task=plain -f csv.awk "$table" | wc -l)"
done >"$work/sizes"
# A listed unit test must still be there.
while IFS= read -r line; do
    file=${line%%:*}
    grep -qs "^START_TEST(${line#*:})" "../unit/$file" || echo "$line"
done >"$work/gone" <<END
$(awk -F '\037' '{ print $1 ":" $3 }' "$work/unit")
END
printf '%s\n' "$commands" >"$work/help"

awk -F '\037' -f coverage.awk part=help "$work/help" part=rows "$work/rows" \
    part=functions "$work/functions" part=unit "$work/unit" part=gone "$work/gone" \
    part=formulas "$work/formulas" part=sizes "$work/sizes" part=tables "$work/tables"
