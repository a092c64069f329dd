#!/bin/sh
# sh tests/fuzz/run.sh [SECONDS [DIRECTORY]]: each fuzz target for so long (60), in two at a time.
# The library is built there (.build/fuzz) by clang with coverage and sanitizers, each target
# tests/fuzz/fuzz_NAME.c linked to it. Seeds are in tests/fuzz/seeds/NAME.seeds, unpacked into
# DIRECTORY/NAME.seeds; what is found besides is kept in DIRECTORY/NAME.found for the next run (and
# kept for good by pack.sh), an input that fails in DIRECTORY/NAME.*-*.
# Last line: "count PASSED FAILED SKIPPED"; exits 1 if anything failed.
# shellcheck disable=SC2317 # give_up is called by what is sourced
set -u
top=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd) || exit 1
seconds=${1-60}
build=${2-$top/.build/fuzz}
passed=0
failed=0

case $seconds in
'' | *[!0-9]*)
    echo "usage: sh tests/fuzz/run.sh [SECONDS [DIRECTORY]]" >&2
    exit 2
    ;;
esac

# shellcheck source=SCRIPTDIR/../prepare.sh
. "$top/tests/prepare.sh"

finish() {
    echo "count $passed $failed 0"
    [ "$failed" -eq 0 ]
    exit
}

# What prepare.sh calls when it cannot go on.
give_up() {
    failed=$((failed + 1))
    echo "FAIL fuzzing could not be prepared"
    finish
}

flags="-g -O1 -fsanitize=address,undefined -fno-sanitize-recover=all"

# build_target NAME: what includes program.h runs the program within the target.
build_target() {
    set -- "$1" "$top/tests/fuzz/fuzz_$1.c"
    wrap=
    [ "$1" = designation ] || [ "$1" = quantity ] ||
        wrap="-DFUZZ_LARGE -Wl,--wrap=arena_allocate"
    # shellcheck disable=SC2086 # flags are words
    clang -std=c11 -D_XOPEN_SOURCE=700 -D_DEFAULT_SOURCE $flags -fsanitize=fuzzer \
        -fno-sanitize-coverage=trace-cmp -DFUZZ_TOP="\"$top\"" -I"$top/src" -I"$build" \
        -I"$build/src" -o "$build/fuzz_$1" "$2" "$library" $wrap -lyaml -lm
}

# The keys and words of a build file, from the schema that the build writes.
write_dictionary() {
    grep -o '"[a-z_][a-z_0-9]*"' "$build/doc/tyresum-build.schema.json" | sort -u \
        >"$build/build.dict"
}

# Longest inputs: a designation, a quantity, a screen of csv, a small build file, some choices.
length_of() {
    case $1 in
    designation | quantity) echo 256 ;;
    csv | build) echo 2048 ;;
    *) echo 24 ;;
    esac
}

# fuzz NAME: runs it; its log is its own, since two run at a time.
fuzz() {
    name=$1
    log=$build/$name.log
    mkdir -p "$build/$name.found"
    set -- "$build/$name.found" "$build/$name.seeds"
    [ "$name" != build ] || set -- "$@" "$top/tests/fuzz/builds" -dict="$build/build.dict"
    ASAN_OPTIONS=quarantine_size_mb=16 "$build/fuzz_$name" -max_total_time="$seconds" -timeout=120 \
        -rss_limit_mb=1500 -print_final_stats=1 -close_fd_mask=2 -max_len="$(length_of "$name")" \
        -artifact_prefix="$build/$name." "$@" >"$log" 2>&1 </dev/null
}

# fuzz_all NAME...: one after the other; a file for each that fails, since this is a subshell.
fuzz_all() {
    for each in "$@"; do
        fuzz "$each" || : >"$scratch/failed.$each"
    done
}

# told NAME: adds its result to the count.
told() {
    if [ -f "$scratch/failed.$1" ]; then
        failed=$((failed + 1))
        echo "FAIL fuzz_$1: see $build/$1.log"
        # The log is of bytes: what the target said, the sanitizer's words, and the input's file.
        grep -a 'BROKEN\|ERROR\|runtime error\|SUMMARY\|Test unit' "$build/$1.log" | cut -c 1-300
        return
    fi
    passed=$((passed + 1))
    runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$build/$1.log")
    edges=$(grep -a -o 'cov: [0-9]*' "$build/$1.log" | tail -n 1)
    echo "fuzz_$1: $runs runs, ${edges:-cov: ?} edges"
}

configure_in "$build" CC=clang CFLAGS="$flags -fsanitize=fuzzer-no-link" CC_FOR_BUILD=clang
compile_in "$build" '' all || give_up
library=$build/libtyresum.a
write_dictionary
step "building the fuzz targets"
for name in designation quantity csv build mutant; do
    build_target "$name" || give_up
    rm -rf "$build/$name.seeds"
    sh "$top/tests/fuzz/pack.sh" unpack "$name" "$build/$name.seeds" || give_up
done

# Five targets on two processors: what is longest to read its seeds begins.
step "fuzzing, $seconds seconds each"
fuzz_all build csv designation &
fuzz_all mutant quantity &
wait
for name in designation quantity csv build mutant; do
    told "$name"
done
finish
