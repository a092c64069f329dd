#!/bin/sh
# sh tests/mutation/run.sh [SEED [EACH [FILE.c...]]]: are the tests able to fail?
#
# EACH deliberate faults (default 1) in every function that computes, one at a time: an operator
# turned round, a constant moved by one percent. All of them are built into one program at once,
# from a copy of the sources (schemata.awk), and TYRESUM_FAULT=N chooses one. A fault is caught when
# any part of the tests complains: unit tests suite by suite, the quick ones first, then the commands,
# the second computation and the published values. Prints the survivors and the share that was caught;
# fails below 97 %.
# Apart from both modes of tests/run.sh: it takes tens of minutes, as many faults at a time as there
# are processors. SEED (default 1) picks other places; in its place may stand a file, such as
# .build/mutation.survivors, in which a run leaves what survived it. TAKE=N tries N of them.
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
LC_ALL=C
TEST_SEED=${TEST_SEED:-20} # the same random cases with each fault, and with none
export LC_ALL TEST_SEED
generate_configure
[ $# -gt 0 ] || set -- src/compute/*.c src/tables/lookup*.c src/base/units.c
if [ -f "$seed" ]; then
    cp "$seed" "$scratch/all"
else
    awk -v seed="$seed" -v each="$each" -f tests/mutation/mutants.awk "$@" >"$scratch/all"
fi
# Those between functions have no function to choose by. The order is one by chance, so that the first
# so many are a sample of all.
awk -F '\t' '$6 != "constants"' "$scratch/all" | awk -v seed="${seed%%[!0-9]*}" '
    BEGIN { srand(seed + 0) } { print rand() "\t" $0 }' | sort -n | cut -f 2- |
    head -n "${TAKE:-100000}" >"$scratch/mutants"

# A copy of what git has, as it stands now, with all faults and a build in it.
copy=$top/.build/mutation
mkdir -p "$copy/.build"
git ls-files | while IFS= read -r name; do
    [ -f "$name" ] && echo "$name"
done | tar cf - -T - configure Makefile.in aclocal.m4 config.h.in .build-aux | (cd "$copy" && tar xf -)
cut -f 1 "$scratch/mutants" | sort -u | while IFS= read -r file; do
    awk -v file="$file" -f tests/mutation/schemata.awk "$scratch/mutants" "$file" >"$copy/$file"
done
cat >>"$copy/src/base/arena.c" <<'END_OF_CHOICE'
#include <stdlib.h>
int fault_planted;
__attribute__((constructor)) static void choose_fault(void)
{
    const char *given = getenv("TYRESUM_FAULT");
    fault_planted = given == NULL ? 0 : atoi(given);
}
END_OF_CHOICE
step "building with $(wc -l <"$scratch/mutants") faults, seed $seed"
(cd "$copy/.build" && ../configure -q --disable-hardening CC="${CC:-cc}" CFLAGS='-O1 -w' &&
    make -s -j "$(processors)" tyresum && make -s -j "$(processors)" unit_tests) >"$scratch/build.log" 2>&1 || {
    tail -n 20 "$scratch/build.log" >&2
    exit 1
}
binary=$copy/.build/tyresum
# Suites, those of random cases last.
suites=$(sed -n 's/.*suite_create("\([a-z_]*\)").*/\1/p' tests/unit/*.c | sort -u | awk '
    /^properties|random/ { late = late " " $0; next } { print } END { print late }')

# complains PART: whether that part of the tests fails with $TYRESUM_FAULT.
complains() {
    case $1 in
    command | second | outside) timeout 1200 sh "$top/tests/$1/run.sh" "$binary" ;;
    *) (
        # A fault may never come back; a busy machine must not look like one.
        # shellcheck disable=SC3045 # not in POSIX, but in every shell that /bin/sh is
        ulimit -t 60
        cd "$copy/.build" && srcdir=$top CK_FORK=no CK_EXCLUDE_TAGS=text CK_RUN_SUITE=$1 \
            timeout 1200 ./unit_tests
    ) ;;
    esac >"$log" 2>&1 </dev/null
    [ $? -ne 0 ]
}

# parts FILE: in what order they are tried, by where the fault is.
parts() {
    case $1 in
    src/cli/* | src/reading/* | src/output/*) echo command "$suites" second outside ;;
    *) echo "$suites" command second outside ;;
    esac
}

# try FAULT FILE LINE ...: prints caught-by and the fault.
try() {
    export TYRESUM_FAULT="$1"
    verdict=survived
    for part in $(parts "$2"); do
        complains "$part" || continue
        verdict=$part
        break
    done
    [ "$verdict" != survived ] || sed -n "$1p" "$scratch/mutants" >>"$scratch/survivors.$number"
    printf '%s\t%s:%s %s:%s ->%s\n' "$verdict" "$2" "$3" "$7" "$5" "$6" | tee -a "$scratch/verdicts"
}

worker() { # NUMBER
    number=$1
    log=$scratch/log.$number
    awk -v n="$number" -v of="$workers" 'NR % of == n % of { print NR "\t" $0 }' "$scratch/mutants" |
        while IFS='	' read -r fault file line column old new name; do
            try "$fault" "$file" "$line" "$column" "$old" "$new" "$name"
        done
}

log=$scratch/log
number=0
TYRESUM_FAULT=0
export TYRESUM_FAULT
for part in $(parts ''); do
    if complains "$part"; then
        echo "$part fails without any fault:" >&2
        tail -n 20 "$log" >&2
        exit 1
    fi
done
workers=${WORKERS:-$(processors)}
while [ $number -lt "$workers" ]; do
    number=$((number + 1))
    worker $number &
done
wait
mkdir -p .build
cat "$scratch"/survivors.* >.build/mutation.survivors 2>/dev/null
[ "$(wc -l <"$scratch/verdicts")" -eq "$(wc -l <"$scratch/mutants")" ] || {
    echo "Not every fault was tried."
    exit 1
}
sort "$scratch/verdicts" | awk -F '\t' '
    $1 == "survived" { print "survived: " $2; lived++ }
    { by[$1]++ }
    END {
        for (part in by) if (part != "survived") printf "caught by %s: %d\n", part, by[part]
        printf "%d faults, %d caught (%.1f %%)\n", NR, NR - lived, 100 * (NR - lived) / NR
        exit (NR - lived) / NR < 0.97
    }'
