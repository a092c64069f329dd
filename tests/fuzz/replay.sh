#!/bin/sh
# sh tests/fuzz/replay.sh BUILD: every input that is kept for a fuzz target through that target once,
# without a fuzzer. "make replays" builds the programs; each tells an input that fails by its name, and
# BUILD/replay_NAME by itself prints the whole input.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
work_in replay
for packed in "$here"/seeds/*.seeds; do
    name=$(basename "$packed" .seeds)
    "$1/replay_$name" "$packed" >"$work/log" 2>&1
    # What broke may be bytes, and long.
    grep -a 'BROKEN\|^FAIL\|ERROR\|runtime error\|SUMMARY' "$work/log" | cut -c 1-200 | head -n 40
    # shellcheck disable=SC2046 # three numbers
    set -- "$1" $(sed -n 's/^count //p' "$work/log")
    passed=$((passed + ${2:-0}))
    failed=$((failed + ${3:-1}))
    set -- "$1"
done
give_count
