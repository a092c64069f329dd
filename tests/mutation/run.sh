#!/bin/sh
# sh tests/mutation/run.sh [SEED [EACH [FILE.c...]]]: are the tests able to fail?
#
# EACH deliberate faults (default 1) in every function that computes, one at a time: an operator
# turned round, a constant moved by one percent. A fault is caught when the build or any part of the
# tests complains. Prints the survivors and the share that was caught; fails below 95 %.
# Apart from both modes of tests/run.sh: it takes tens of minutes, on copies of the checkout, as many
# at a time as there are processors. SEED (default 1) picks other places; in its place may stand a
# file, such as .build/mutation.survivors, in which a run leaves what survived it.
set -u
top=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd) || exit 1
seed=${1:-1}
each=${2:-1}
[ $# -lt 2 ] || shift
[ $# -lt 1 ] || shift
# shellcheck source=SCRIPTDIR/../prepare.sh
. "$top/tests/prepare.sh"
need_for_build
need check jq bc units
cd "$top" || exit 1
generate_configure
[ $# -gt 0 ] || set -- src/compute/*.c src/tables/lookup*.c src/base/units.c
if [ -f "$seed" ]; then
    cp "$seed" "$scratch/mutants"
else
    LC_ALL=C awk -v seed="$seed" -v each="$each" -f tests/mutation/mutants.awk "$@" >"$scratch/mutants"
fi

# A copy of what git has, as it stands now, with a build in it.
copy_to() {
    mkdir -p "$1/.build"
    git ls-files | while IFS= read -r name; do
        [ -f "$name" ] && echo "$name"
    done | tar cf - -T - configure Makefile.in aclocal.m4 config.h.in .build-aux | (cd "$1" && tar xf -)
    (cd "$1/.build" && ../configure -q --enable-werror --disable-hardening CFLAGS=-O1 &&
        make -s tyresum unit_tests) >"$1/build.log" 2>&1
}

# plant FILE LINE COLUMN OLD NEW: puts the fault in; false where the text is not there.
plant() {
    LC_ALL=C AT=$2 COLUMN=$3 OLD=$4 NEW=$5 awk '
        NR == ENVIRON["AT"] + 0 {
            old = ENVIRON["OLD"]
            column = ENVIRON["COLUMN"] + 0
            if (substr($0, column, length(old)) != old) exit 1
            $0 = substr($0, 1, column - 1) ENVIRON["NEW"] substr($0, column + length(old))
        }
        { print }' "$1" >"$1.planted" && mv "$1.planted" "$1"
}

complains() { # PLACE PART: whether that part of the tests fails on the copy
    binary=$1/.build/tyresum
    case $2 in
    unit) (
        # A fault may never come back; a busy machine must not look like one.
        # shellcheck disable=SC3045 # not in POSIX, but in every shell that /bin/sh is
        ulimit -t 120
        cd "$1/.build" && srcdir=$1 CK_FORK=no CK_EXCLUDE_TAGS=text timeout 1200 ./unit_tests
    ) ;;
    second) timeout 1200 sh "$1/tests/second/run.sh" "$binary" ;;
    outside) timeout 1200 sh "$1/tests/outside/run.sh" "$binary" ;;
    command) timeout 1200 sh "$1/tests/command/run.sh" "$binary" ;;
    esac >"$1/part.log" 2>&1 </dev/null
    [ $? -ne 0 ]
}

# Prints caught-by and the fault. The build counts: a warning there is an error.
try() { # PLACE LINE
    IFS='	' read -r file line column old new name <<END
$2
END
    cp -p "$1/$file" "$1/original.c"
    verdict=survived
    if ! plant "$1/$file" "$line" "$column" "$old" "$new"; then
        verdict=unplanted
    elif ! make -s -C "$1/.build" tyresum unit_tests >"$1/build.log" 2>&1 </dev/null; then
        verdict=build
    else
        for part in unit second outside command; do
            complains "$1" $part || continue
            verdict=$part
            break
        done
    fi
    [ "$verdict" != survived ] || printf '%s\n' "$2" >>"$1.survivors"
    printf '%s\t%s:%s %s:%s ->%s\n' "$verdict" "$file" "$line" "$name" "$old" "$new"
    cp "$1/original.c" "$1/$file" # with a new time, so that make sees the change back
}

worker() { # NUMBER
    place=$scratch/$1
    copy_to "$place" || {
        cat "$place/build.log" >&2
        exit 1
    }
    for part in unit second outside command; do
        if complains "$place" $part; then
            echo "the $part tests fail without any fault:" >&2
            tail -n 20 "$place/part.log" >&2
            exit 1
        fi
    done
    awk -v n="$1" -v of="$workers" 'NR % of == n % of' "$scratch/mutants" |
        while IFS= read -r mutant; do
            try "$place" "$mutant"
        done >"$scratch/verdicts.$1"
}

workers=$(processors)
step "$(wc -l <"$scratch/mutants") faults, seed $seed, $workers at a time"
number=0
while [ $number -lt "$workers" ]; do
    number=$((number + 1))
    worker $number &
done
wait
cat "$scratch"/verdicts.* | sort >"$scratch/verdicts"
mkdir -p .build
cat "$scratch"/*.survivors >.build/mutation.survivors 2>/dev/null
[ "$(wc -l <"$scratch/verdicts")" -eq "$(wc -l <"$scratch/mutants")" ] || {
    echo "Not every fault was tried."
    exit 1
}
awk -F '\t' '
    $1 == "survived" || $1 == "unplanted" { print "survived: " $2; lived++ }
    { by[$1]++ }
    END {
        for (part in by) if (part != "survived") printf "caught by %s: %d\n", part, by[part]
        printf "%d faults, %d caught (%.1f %%)\n", NR, NR - lived, 100 * (NR - lived) / NR
        exit (NR - lived) / NR < 0.95
    }' "$scratch/verdicts"
