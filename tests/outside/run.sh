#!/bin/sh
# sh tests/outside/run.sh TYRESUM [FILE.csv...]: the program against published figures.
#
# A row of tests/outside/*.csv is one check:
#   id         unique, for the report
#   command    arguments of tyresum, as a shell would read them; build files are in builds/
#   pick       COLUMN [; KEY=VALUE]...: the figure, in the one row of the output in which each KEY
#              column holds VALUE. No such row, or several, is a failure.
#   expected   the published figure, as a number; or, with an empty tolerance, the exact text
#   tolerance  how far the program may be from it: what the source's own rounding allows
#   unit       of all three; where the output has a unit column, it must say the same
#   source, edition (empty: not noted when it was read)
#   certainty  published | derived (from the published rule, by hand) | from memory |
#              common practice
# Figures here are never adjusted to what the program says. They are taken from the json output,
# which carries ten digits, so that a check can be sharper than the decimals that csv prints.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
if [ $# -lt 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/outside/run.sh TYRESUM [FILE.csv...]" >&2
    exit 2
fi
binary=$(CDPATH='' cd -- "$(dirname -- "$1")" && pwd)/$(basename -- "$1")
shift
[ $# -gt 0 ] || set -- "$here"/*.csv
work=$(mktemp -d "${TMPDIR:-/tmp}/tyresum-outside.XXXXXX") || exit 1
trap 'rm -rf "$work"' EXIT
trap 'exit 130' INT TERM HUP
cd "$here" || exit 1
unset TYRESUM_UNITS TYRESUM_FORMAT NO_COLOR COLUMNS
LC_ALL=C
export LC_ALL

passed=0
failed=0
separator=$(printf '\037')

# Rows with their fields apart by one character that no field holds, and a number for each distinct
# command, so that it runs only once.
awk -v task=rows -f csv.awk "$@" >"$work/rows" || exit 1

tyresum() {
    timeout 20 "$binary" "$@"
}

# An array of objects as csv, with every name that any of them has.
# shellcheck disable=SC2016 # the names are jq's
as_csv='([.[] | keys_unsorted[]] | unique) as $names | $names, (.[] | [.[$names[]]]) | @csv'

run_once() { # NUMBER COMMAND
    [ -f "$work/$1.status" ] && return 0
    eval "tyresum $2 --format json" >"$work/$1.json" 2>"$work/$1.err" </dev/null
    status=$?
    if [ $status -eq 0 ] && ! jq -r "$as_csv" "$work/$1.json" >"$work/$1.csv" 2>"$work/$1.err"; then
        status=json
    fi
    echo $status >"$work/$1.status"
}

report() { # ID WORDS
    failed=$((failed + 1))
    printf 'FAIL %s: %s\n    tyresum %s\n    %s (%s)\n' \
        "$1" "$2" "$command" "$source" "$certainty"
}

while IFS=$separator read -r number id command pick expected tolerance unit source _ certainty; do
    run_once "$number" "$command"
    read -r status <"$work/$number.status"
    if [ "$status" != 0 ]; then
        report "$id" "exit $status: $(head -n 1 "$work/$number.err")"
        continue
    fi
    verdict=$(PICK=$pick EXPECTED=$expected awk -v task=pick -v tolerance="$tolerance" \
        -v unit="$unit" -f csv.awk "$work/$number.csv")
    if [ "$verdict" = right ]; then
        passed=$((passed + 1))
    else
        report "$id" "${verdict:-no verdict}"
    fi
done <"$work/rows"

echo "count $passed $failed 0"
[ "$failed" -eq 0 ]
