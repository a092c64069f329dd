#!/bin/sh
# sh tests/run.sh [--long]: every test, on the plain build and again on one with sanitizers.
# Ends with one line, "N passed, M failed", over everything; exits 1 if anything failed.
# Parts print a last line "count PASSED FAILED SKIPPED", which is added up here. They run one more at
# a time than there are processors, since now and then one waits; each is shown whole when it ends.
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

# shellcheck source=SCRIPTDIR/prepare.sh
. "$top/tests/prepare.sh"

mkdir "$scratch/jobs" "$scratch/counts"

# Adds up what the parts have left, and ends.
finish() {
    echo
    cat "$scratch"/counts/* 2>/dev/null | awk '
        { passed += $1; failed += $2; skipped += $3 }
        END {
            printf "%d passed, %d failed", passed, failed
            if (skipped) printf ", %d skipped", skipped
            print ""
            exit !passed || failed
        }'
    exit
}

# note NAME PASSED FAILED SKIPPED: a part's count.
note() {
    echo "$2 $3 $4" >"$scratch/counts/$1"
}

# What prepare.sh calls when it cannot go on: a failure that is counted.
give_up() {
    note preparation 0 1 0
    finish
}

# part NAME TITLE COMMAND...: runs one part, shows what it has to say, notes its count.
part() {
    name=$1
    title=$2
    shift 2
    start=$(date +%s)
    "$@" >"$scratch/$name.log" 2>&1 </dev/null
    status=$?
    seconds=$(($(date +%s) - start))
    count=$(sed -n 's/^count \([0-9][0-9]* [0-9][0-9]* [0-9][0-9]*\)$/\1/p' "$scratch/$name.log" |
        tail -n 1)
    # A part that dies, or checks nothing, has failed whatever it printed before.
    # shellcheck disable=SC2086 # three numbers
    set -- ${count:-0 0 0}
    more=0
    if [ $(($1 + $2)) -eq 0 ]; then
        more=1
        echo "FAIL $title: nothing was checked (exit $status)" >>"$scratch/$name.log"
    elif [ "$status" -ne 0 ] && [ "$2" -eq 0 ]; then
        more=1
        echo "FAIL $title: ended with exit $status" >>"$scratch/$name.log"
    fi
    note "$name" "$1" $(($2 + more)) "$3"
    printf '%-48s %6d checks, %d failed, %3d s\n' "$title" $(($1 + $2 + more)) $(($2 + more)) \
        "$seconds" >>"$scratch/$name.log"
    sed '/^count [0-9]/d' "$scratch/$name.log" # in one go, so that parts do not mix
}

# one NAME TITLE COMMAND...: a command that is one check by itself, silent while it passes.
one() {
    part "$1" "$2" one_check "$@"
}

# shellcheck disable=SC2317 # called through part
one_check() { # NAME TITLE COMMAND...
    one_title=$2
    one_log=$scratch/$1.one
    shift 2
    if "$@" >"$one_log" 2>&1; then
        echo "count 1 0 0"
    else
        echo "FAIL $one_title"
        cat "$one_log"
        echo "count 0 1 0"
    fi
}

# unit_tests DIRECTORY FORK: runs Check's runner there and turns its summaries into a count. They
# are not shown: a reader of the log would take them for the closing line.
# shellcheck disable=SC2317 # called through part
unit_tests() {
    unit_log=$scratch/$name.output # two runs may share a build
    # Memory that a case gives back is kept for the next: else the system clears it each time. (32 MiB
    # is the most that the C library takes there.)
    (cd "$1" && MALLOC_TRIM_THRESHOLD_=4000000000 MALLOC_MMAP_THRESHOLD_=33554432 srcdir=$top \
        CK_VERBOSITY=normal CK_FORK=$2 ./unit_tests) >"$unit_log" 2>&1
    unit_status=$?
    # Tests of bytes that are no text may print them: grep -a.
    grep -av '^[0-9]*%: Checks: ' "$unit_log" | grep -av '^Running suite' |
        if [ "$unit_status" -eq 0 ]; then grep -ai -A 30 'sanitizer\|runtime error'; else cat; fi
    awk '/^[0-9]+%: Checks: / {
            gsub(/[^0-9]+/, " ")
            checks += $2
            bad += $3 + $4
        }
        END { print "count", checks - bad, bad + 0, 0 }' "$unit_log"
    return "$unit_status"
}

# A status of its own, so that a sanitizer's stop is not taken for one of the program's.
sanitizer_options="exitcode=86:print_stacktrace=1"

# everywhere PART NAME WORDS DIRECTORY FORK: one of the parts that run on both builds. A fork for each
# unit test takes as long as the tests, with a search for leaks at its end minutes.
everywhere() {
    case $1 in
    unit) part "$2" "unit tests$3" unit_tests "$4" "$5" ;;
    command) part "$2" "command tests$3" sh "$top/tests/command/run.sh" "$4/tyresum" ;;
    echoed) part "$2" "texts that steer a terminal$3" sh "$top/tests/command/echoed.sh" "$4/tyresum" ;;
    faults) part "$2" "faults$3" sh "$top/tests/command/faults.sh" "$4/tyresum" ;;
    outside) part "$2" "published values$3" sh "$top/tests/outside/run.sh" "$4/tyresum" ;;
    readme) part "$2" "README$3" sh "$top/tests/readme.sh" "$4/tyresum" ;;
    docs) part "$2" "manual, completion$3" sh "$top/tests/docs/run.sh" "$4" ;;
    limits) part "$2" "limits of size$3" sh "$top/tests/inject/run.sh" "$4/tyresum" ;;
    replay) part "$2" "fuzz inputs replayed$3" sh "$top/tests/fuzz/replay.sh" "$4" ;;
    hardening) part "$2" "hardening" sh "$top/tests/hardening.sh" "$4/tyresum" ;;
    esac
}

# The lists are for reading: the short mode shows whether they are still true.
# shellcheck disable=SC2317 # called through part
reach() {
    sh "$top/tests/outside/coverage.sh" "$plain/tyresum" >"$scratch/reach.all"
    reach_status=$?
    if [ "$long" = yes ]; then
        cat "$scratch/reach.all"
    else
        grep '^FAIL\|^functions in\|^lacking\|^count ' "$scratch/reach.all"
    fi
    return $reach_status
}

run_job() {
    case $1 in
    *-sanitized)
        # The search for leaks at the end of a program takes longer than the program: in the short
        # mode only the unit tests have it, and a quarter of their random cases. Nor does a report say
        # there where memory came from, which a program pays for at its start.
        leaks=:detect_leaks=1
        [ "$long$1" = "no${1#unit}" ] && leaks=:detect_leaks=0
        [ "$long" = yes ] || leaks=$leaks:malloc_context_size=0
        [ "$long" = yes ] || export TEST_FEW=1
        export ASAN_OPTIONS="$sanitizer_options$leaks" UBSAN_OPTIONS="$sanitizer_options"
        everywhere "${1%-sanitized}" "$1" ", sanitized" "$sanitized" no
        unset ASAN_OPTIONS UBSAN_OPTIONS TEST_FEW
        ;;
    docs-long) part "$1" "shells, schemas" sh "$top/tests/docs/run.sh" "$plain" --long ;;
    unit-long) TEST_LONG=1 part "$1" "unit tests, all random cases" unit_tests "$plain" no ;;
    rows) part "$1" "rows in a database" sh "$top/tests/rows/run.sh" "$plain" ;;
    rows-long) part "$1" "rows of more builds" sh "$top/tests/rows/run.sh" "$plain" --long ;;
    second) part "$1" "second computation" sh "$top/tests/second/run.sh" "$plain/tyresum" ;;
    sources) part "$1" "sources of published values" sh "$top/tests/outside/sources.sh" ;;
    words) part "$1" "words of every sentence" sh "$top/tests/words.sh" "$plain/tyresum" ;;
    newcomer) part "$1" "newcomers' machines" sh "$top/tests/newcomer.sh" ;;
    newcomer-long) part "$1" "builds on newcomers' machines" sh "$top/tests/newcomer.sh" --long ;;
    structure) part "$1" "structure of the sources" sh "$top/tests/structure.sh" ;;
    reach) part "$1" "reach of the published values" reach ;;
    numbers) part "$1" "numbers, locales, environment" sh "$top/tests/numbers/run.sh" "$plain/tyresum" ;;
    inject) part "$1" "each call fails once" sh "$top/tests/inject/run.sh" "$plain/tyresum" --long ;;
    valgrind) valgrind_commands ;;
    office) part "$1" "csv in LibreOffice" sh "$top/tests/office/run.sh" "$plain/tyresum" ;;
    pages) part "$1" "pages in a browser" sh "$top/tests/pages/run.sh" "$plain/tyresum" ;;
    builds-*)
        part "$1" "the same bytes, ${1#builds-}" sh "$top/tests/builds/run.sh" "$plain/tyresum" "${1#builds-}"
        ;;
    soak) part "$1" "a million lines, hard stops" sh "$top/tests/soak/run.sh" "$plain/tyresum" ;;
    coverage) part "$1" "coverage of src/" sh "$top/tests/coverage.sh" ;;
    packaging) part "$1" "packaging" sh "$top/tests/packaging.sh" "$top" "$plain" ;;
    distcheck) one "$1" "make distcheck" make -C "$plain" distcheck ;;
    *) everywhere "$1" "$1" "" "$plain" "$long" ;;
    esac
}

# run_jobs NAME...: in that order.
run_jobs() {
    workers=
    number=0
    while [ $number -le "$(processors)" ]; do
        number=$((number + 1))
        for job in "$@"; do
            mkdir "$scratch/jobs/$job" 2>/dev/null && run_job "$job"
        done &
        workers="$workers $!"
    done
    # shellcheck disable=SC2064 # the workers of now
    trap "kill $workers 2>/dev/null; leave" EXIT
    wait
    trap leave EXIT
}

valgrind_commands() {
    set -- valgrind -q --error-exitcode=99 --leak-check=full --errors-for-leak-kinds=definite \
        "$plain/tyresum"
    one valgrind-size "valgrind: size" "$@" size '205/55R16 91V' --format csv
    one valgrind-compare "valgrind: compare" "$@" compare 255/70R16 255/75R16 --format json
    for file in "$top"/demo/*.yaml; do
        file_name=$(basename "$file" .yaml)
        one "valgrind-$file_name" "valgrind: sheet $file_name" "$@" sheet "$file"
    done
    # shellcheck disable=SC2016 # the inner shell expands them
    one valgrind-wrong "valgrind: a wrong file" sh -c \
        'printf "vehicle: {wheelbase: 2917, mass: [}\n" | "$@" sheet -; test $? -eq 2' sh "$@"
}

build_failed() {
    echo "FAIL build of $1: see above"
    give_up
}

begin
need_for_build
need check sanitizers jq sqlite3 bc units mandoc xmllint tidy
[ "$long" = no ] || need fuzzer valgrind zsh fish validator office musl clang-tidy cppcheck gcovr chromium \
    pdftotext fonts
[ "$long" = no ] || wish i686 s390x
plain=$top/.build
sanitized=$top/.build/sanitized
generate_configure
(
    give_up() {
        exit 1
    }
    configure_in "$plain" --enable-werror CFLAGS='-O2 -g1'
) &
# Lines for a report, not all that a debugger shows, which takes the compiler as long as the code. A
# program at a fixed place starts sooner under the sanitizers.
configure_in "$sanitized" --enable-werror --enable-sanitizers --disable-hardening \
    CFLAGS='-Og -g1 -fno-pie' LDFLAGS=-no-pie
wait $! || give_up
# The program as it is shipped; the tests themselves with less of the compiler's time.
compile_in "$plain" '' all && compile_in "$plain" '-O1 -g1' unit_tests write_builds || build_failed "$plain"
compile_in "$sanitized" '' all && compile_in "$sanitized" '-O0 -g1 -fno-pie' unit_tests replays ||
    build_failed "$sanitized"

# The longest first, so that no processor is left waiting for another at the end.
jobs="command-sanitized unit unit-sanitized command replay-sanitized echoed-sanitized rows newcomer
    outside-sanitized docs-sanitized faults-sanitized words readme-sanitized docs echoed faults outside second
    reach readme hardening structure sources"
if [ "$long" = yes ]; then
    # shellcheck disable=SC2086 # the names are words
    run_jobs unit-long coverage newcomer-long builds-integer builds-s390x builds-memory builds-i686 soak pages \
        rows-long inject docs-long valgrind office numbers $jobs limits-sanitized
    # Those that use all processors by themselves.
    part analysis "static analysis" sh "$top/tests/analysis/run.sh" "$plain"
    part fuzz "fuzzing, a minute each" sh "$top/tests/fuzz/run.sh"
    run_jobs packaging distcheck
else
    # shellcheck disable=SC2086
    run_jobs $jobs
    echo "Not run in the short mode (sh tests/run.sh --long does): all random cases, rows of more builds,"
    echo "every failing allocation and write; under sanitizers limits of size, the longest command tests and"
    echo "the search for leaks at each program's end; locales, fuzzing, valgrind, static analysis, coverage,"
    echo "completion in zsh and fish, schemas in a validator, LibreOffice, pages in a browser, whole builds on"
    echo "newcomers' machines, packaging (install, static program, musl), make distcheck, sanitizers of"
    echo "integers, floats and memory, 32 bits, big endian, a million lines, ends at any moment, a disk that"
    echo "fills. In neither: sh tests/mutation/run.sh."
fi
finish
