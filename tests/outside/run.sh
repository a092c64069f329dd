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
#   certainty  a word of src/tables/certainty.h; sources.sh says what it asks of the source
# Figures here are never adjusted to what the program says. They are taken from the json output,
# which carries ten digits, so that a check can be sharper than the decimals that csv prints.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
if [ $# -lt 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/outside/run.sh TYRESUM [FILE.csv...]" >&2
    exit 2
fi
# shellcheck disable=SC2034 # used through eval
binary=$(absolute "$1")
shift
[ $# -gt 0 ] || set -- "$here"/*.csv
work_in outside
cd "$here" || exit 1
LC_ALL=C
export LC_ALL

# Rows with their fields apart by one character that no field holds, and a number for each distinct
# command, so that it runs only once.
awk -v task=rows -f csv.awk "$@" >"$work/rows" || exit 1

# A command that never ends is killed, by what it used of the processor.
# shellcheck disable=SC3045 # dash, bash, busybox and ksh know -t
ulimit -t 60

# Each command's output, and a line of its number, exit status and first line of complaint.
awk -F '\037' '!($1 in seen) { seen[$1] = 1; print $1 "\n" $3 }' "$work/rows" >"$work/commands"
while read -r number && IFS= read -r command; do
    eval "\"\$binary\" $command --format json" >"$work/$number.json" 2>"$work/err" \
        </dev/null
    status=$?
    [ $status -eq 0 ] || mv "$work/$number.json" "$work/$number.bad"
    complaint=
    [ ! -s "$work/err" ] || IFS= read -r complaint <"$work/err"
    printf '%s\037%s\037%s\n' "$number" "$status" "$complaint"
done <"$work/commands" >"$work/statuses"

sh judge.sh "$work"
