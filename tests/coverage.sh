#!/bin/sh
# sh tests/coverage.sh [BUILD]: which lines and branches of src/ the tests run, by file and in all.
# Every part of the short mode runs on a build of its own with counters (default .build/coverage).
# Fails below 95 % of lines or 85 % of branches.
set -u
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd) || exit 1
build=${1:-$top/.build/coverage}
# shellcheck source=SCRIPTDIR/prepare.sh
. "$top/tests/prepare.sh"

give_up() {
    cat "$scratch/log" 2>/dev/null
    echo "FAIL the build for coverage"
    echo "count 0 1 0"
    exit 1
}

need_for_build
need check gcovr jq bc units mandoc xmllint
configure_in "$build" --disable-hardening CFLAGS="-O0 -g --coverage" 2>"$scratch/log"
find "$build" -name '*.gcda' -exec rm -f {} +
rm -rf "$build/doc" # so that the program that writes the manual runs too
compile_in "$build" '' all unit_tests 2>>"$scratch/log" || give_up

# Their own findings are counted where they are run for their own sake.
run() {
    "$@" >>"$scratch/tests.log" 2>&1 </dev/null
}
(cd "$build" && srcdir=$top CK_FORK=no TEST_SEED=1 run ./unit_tests)
run sh "$top/tests/command/run.sh" "$build/tyresum"
run sh "$top/tests/command/faults.sh" "$build/tyresum"
run sh "$top/tests/outside/run.sh" "$build/tyresum"
run sh "$top/tests/second/run.sh" "$build/tyresum"
run sh "$top/tests/docs/run.sh" "$build"

# Functions that end the process with _exit leave no counts: those lines are seen as not run.
gcovr -r "$top" --object-directory "$build" -f "$top/src/" -e '.*/tablegen.*\.c' -j 2 \
    --json-summary-pretty -o "$scratch/summary.json" "$build" 2>"$scratch/gcovr.log" || {
    cat "$scratch/gcovr.log"
    echo "FAIL gcovr"
    echo "count 0 1 0"
    exit 1
}
jq -r '.files[] | select(.line_percent < 95 or .branch_percent < 70)
    | "\(.filename): lines \(.line_percent) %, branches \(.branch_percent) %"' "$scratch/summary.json"
jq -r '"coverage of src/: lines \(.line_percent) % (\(.line_covered) of \(.line_total)), branches \(.branch_percent) % (\(.branch_covered) of \(.branch_total))"' \
    "$scratch/summary.json"
passed=0
failed=0
limit() { # WHAT LEAST
    if jq -e --argjson least "$2" ".$1 >= \$least" "$scratch/summary.json" >/dev/null; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "FAIL $1 is below $2"
    fi
}
limit line_percent 95
limit branch_percent 85
echo "count $passed $failed 0"
[ "$failed" -eq 0 ]
