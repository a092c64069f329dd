#!/bin/sh
# sh tests/words.sh TYRESUM: no sentence that a person reads is long.
#
# Every page of HTML, and what `check` says, of the demo's builds and of those with published values:
# tests/words.awk counts. The table of remarks, of which these builds print a part, is counted row by
# row in tests/unit/check_words.c.
# Ends with "count PASSED FAILED SKIPPED"; failures are lines that begin with "FAIL ".
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/part.sh
. "$here/part.sh"
if [ $# -ne 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/words.sh TYRESUM" >&2
    exit 2
fi
top=$(dirname "$here")
binary=$(absolute "$1")
work_in words

for build in "$top"/demo/*.yaml "$here"/outside/builds/*.yaml "$here"/fuzz/builds/*.yaml; do
    for command in sheet tasks load clearance gearing speedometer compare shortlist; do
        "$binary" "$command" "$build" --format html 2>>"$work/err"
    done
    "$binary" check "$build" --format csv --no-header --columns text 2>>"$work/err" |
        sed 's/^"//; s/"$//; s/^/<p>/'
done >"$work/pages"
awk -f "$here/words.awk" "$work/pages" >"$work/found"
passed=$(sed -n 's/ sentences$//p' "$work/found")
sed -n 's/^[0-9]* words: /FAIL &/p' "$work/found"
failed=$(grep -c ' words: ' "$work/found")
[ "${passed:-0}" -gt 10000 ] || {
    failed=$((failed + 1))
    echo "FAIL only ${passed:-0} sentences were read"
}
passed=$((passed - failed))
give_count
