#!/bin/sh
# sh tests/run.sh [--long]: every test, on the plain build and again on one with sanitizers.
# Ends with one line, "N passed, M failed", over everything; exits 1 if anything failed.
# Parts print a last line "count PASSED FAILED SKIPPED", which is added up here.
set -u
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd) || exit 1
long=no
case ${1-} in
'') ;;
--long) long=yes ;;
*)
    echo "usage: sh tests/run.sh [--long]" >&2
    exit 2
    ;;
esac

long_flag=
[ "$long" = no ] || long_flag=--long

# shellcheck source=SCRIPTDIR/prepare.sh
. "$top/tests/prepare.sh"

passed=0
failed=0
skipped=0

finish() {
    echo
    if [ "$skipped" -gt 0 ]; then
        echo "$passed passed, $failed failed, $skipped skipped"
    else
        echo "$passed passed, $failed failed"
    fi
    [ "$failed" -eq 0 ]
    exit
}

# What prepare.sh calls when it cannot go on: a failure that is counted.
give_up() {
    failed=$((failed + 1))
    finish
}

# part TITLE COMMAND...: runs one part, shows what it has to say, adds its count.
part() {
    title=$1
    shift
    "$@" >"$scratch/part.log" 2>&1 </dev/null
    status=$?
    count=$(sed -n 's/^count \([0-9][0-9]* [0-9][0-9]* [0-9][0-9]*\)$/\1/p' "$scratch/part.log" |
        tail -n 1)
    # A part that dies, or checks nothing, has failed whatever it printed before.
    # shellcheck disable=SC2086 # three numbers
    set -- ${count:-0 0 0}
    more=0
    if [ $(($1 + $2)) -eq 0 ]; then
        more=1
        echo "FAIL $title: nothing was checked (exit $status)"
    elif [ "$status" -ne 0 ] && [ "$2" -eq 0 ]; then
        more=1
        echo "FAIL $title: ended with exit $status"
    fi
    sed '/^count [0-9]/d' "$scratch/part.log"
    passed=$((passed + $1))
    failed=$((failed + $2 + more))
    skipped=$((skipped + $3))
    printf '%-48s %6d checks, %d failed\n' "$title" $(($1 + $2 + more)) $(($2 + more))
}

# one TITLE COMMAND...: a command that is one check by itself, silent while it passes.
one() {
    title=$1
    shift
    if "$@" >"$scratch/one.log" 2>&1 </dev/null; then
        passed=$((passed + 1))
        printf '%-48s %6d checks, %d failed\n' "$title" 1 0
    else
        failed=$((failed + 1))
        echo "FAIL $title"
        cat "$scratch/one.log"
    fi
}

# unit_tests DIRECTORY FORK: runs Check's runner there and turns its summaries into a count. They
# are not shown: a reader of the log would take them for the closing line.
# shellcheck disable=SC2317 # called through part
unit_tests() {
    (cd "$1" && srcdir=$top CK_VERBOSITY=normal CK_FORK=$2 ./unit_tests) >"$scratch/unit.log" 2>&1
    unit_status=$?
    # Tests of bytes that are no text may print them: grep -a.
    grep -av '^[0-9]*%: Checks: ' "$scratch/unit.log" | grep -av '^Running suite' |
        if [ "$unit_status" -eq 0 ]; then grep -ai -A 30 'sanitizer\|runtime error'; else cat; fi
    awk '/^[0-9]+%: Checks: / {
            gsub(/[^0-9]+/, " ")
            checks += $2
            bad += $3 + $4
        }
        END { print "count", checks - bad, bad + 0, 0 }' "$scratch/unit.log"
    return "$unit_status"
}

# everything DIRECTORY WORD FORK: all parts on one build.
everything() {
    part "unit tests$2" unit_tests "$1" "$3"
    part "command tests$2" sh "$top/tests/command/run.sh" "$1/tyresum"
    part "faults$2" sh "$top/tests/command/faults.sh" "$1/tyresum"
    part "published values$2" sh "$top/tests/outside/run.sh" "$1/tyresum"
    part "README$2" sh "$top/tests/readme.sh" "$1/tyresum"
    part "manual, completion, schemas$2" sh "$top/tests/docs/run.sh" "$1" $long_flag
}

build_failed() {
    echo "FAIL build of $1: see above"
    failed=$((failed + 1))
    finish
}

# One minute for each fuzz target. The library is built by clang with coverage, each target
# tests/fuzz/fuzz_NAME.c linked to it; seeds are in tests/fuzz/seeds/NAME where there are any.
fuzz() {
    build=$top/.build/fuzz
    flags="-g -O1 -fsanitize=address,undefined -fno-sanitize-recover=all"
    configure_in "$build" CC=clang CFLAGS="$flags -fsanitize=fuzzer-no-link" CC_FOR_BUILD=clang
    compile_in "$build" all || return 1
    library=$(find "$build" -name '*.a' | head -n 1)
    for source in "$top"/tests/fuzz/fuzz_*.c; do
        [ -f "$source" ] || return 0
        name=$(basename "$source" .c)
        mkdir -p "$build/$name.found"
        set -- "$build/$name.found"
        seeds=$top/tests/fuzz/seeds/${name#fuzz_}
        [ -d "$seeds" ] && set -- "$@" "$seeds"
        # shellcheck disable=SC2086 # flags are words
        one "$name: compiles" clang $flags -fsanitize=fuzzer -I"$top/src" -I"$build" -I"$build/src" \
            -o "$build/$name" "$source" "$library" -lyaml -lm
        [ -x "$build/$name" ] && one "$name: one minute" "$build/$name" -max_total_time=60 \
            -timeout=5 -rss_limit_mb=1024 -print_final_stats=1 -artifact_prefix="$build/$name." "$@"
    done
}

valgrind_commands() {
    set -- valgrind -q --error-exitcode=99 --leak-check=full --errors-for-leak-kinds=definite \
        "$top/.build/tyresum"
    one "valgrind: size" "$@" size '205/55R16 91V' --format csv
    one "valgrind: compare" "$@" compare 255/70R16 255/75R16 --format json
    for file in "$top"/demo/*.yaml; do
        one "valgrind: sheet $(basename "$file")" "$@" sheet "$file"
    done
    # shellcheck disable=SC2016 # the inner shell expands them
    one "valgrind: a wrong file" sh -c 'printf "vehicle: {wheelbase: 2850, mass: [}\n" |
        "$@" sheet -; test $? -eq 2' sh "$@"
}

need_for_build
need check sanitizers jq bc units mandoc xmllint tidy
[ "$long" = no ] || need fuzzer valgrind zsh fish validator office musl

plain=$top/.build
sanitized=$top/.build/sanitized
configure_in "$plain" --enable-werror
compile_in "$plain" all unit_tests || build_failed "$plain"
configure_in "$sanitized" --enable-werror --enable-sanitizers

# The second build goes on while the first is tested; one processor is left to the tests.
step "building ${sanitized#"$top"/} meanwhile"
make -s -C "$sanitized" all unit_tests >"$scratch/sanitized.log" 2>&1 </dev/null &
second_build=$!
trap 'kill "$second_build" 2>/dev/null; rm -rf "$scratch"' EXIT
everything "$plain" "" yes
part "hardening" sh "$top/tests/hardening.sh" "$plain/tyresum"
wait "$second_build"
second_status=$?
trap 'rm -rf "$scratch"' EXIT
[ "$second_status" -eq 0 ] || {
    cat "$scratch/sanitized.log"
    build_failed "$sanitized"
}

# A status of its own, so that a sanitizer's stop is not taken for one of the program's.
sanitizer_options="exitcode=86:print_stacktrace=1"
export ASAN_OPTIONS="$sanitizer_options" UBSAN_OPTIONS="$sanitizer_options"
# In one process: a fork for each test, with a search for leaks at its end, takes minutes.
everything "$sanitized" ", sanitized" no
unset ASAN_OPTIONS UBSAN_OPTIONS

if [ "$long" = yes ]; then
    fuzz || one "build for fuzzing" false
    valgrind_commands
    part "csv in LibreOffice" sh "$top/tests/office/run.sh" "$plain/tyresum"
    part "packaging" sh "$top/tests/packaging.sh" "$top" "$plain"
    one "make distcheck" make -C "$top/.build" distcheck
else
    echo "Not run in the short mode (sh tests/run.sh --long does): fuzzing, valgrind,"
    echo "LibreOffice, packaging (install, static program, musl), make distcheck."
fi
finish
