#!/bin/sh
# sh tests/mutation/run.sh [SEED [EACH [FILE.c...]]]: are the tests able to fail?
#
# EACH deliberate faults (default 1) in every function that computes, one at a time: an operator
# turned round, a constant moved by one percent. All of them are built into one program at once,
# from a copy of the sources (schemata.awk), and TYRESUM_FAULT=N chooses one. A fault is caught when
# any part of the tests complains: unit tests suite by suite, commands record by record, the second
# computation and the published values; the quick ones first, and only those that come to the
# function that the fault is in. Prints the survivors and the share that was caught; fails below 97 %.
# Apart from both modes of tests/run.sh: it takes tens of minutes, as many faults at a time as there
# are processors (WORKERS=N). SEED (default 1) picks other places; in its place may stand a file, such as
# .build/mutation.survivors, in which a run leaves what survived it. TAKE=N tries N of them. A first run
# with TEST_FEW=1 leaves few to a second one without.
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
export LC_ALL
generate_configure
[ $# -gt 0 ] || set -- src/compute/*.c src/tables/lookup*.c src/base/units.c
if [ -f "$seed" ]; then
    cp "$seed" "$scratch/all"
else
    awk -v seed="$seed" -v each="$each" -f tests/mutation/mutants.awk "$@" >"$scratch/all"
fi
# Those between functions have no function to choose by, and tablegen is no part of the program. The
# order is one by chance, so that the first so many are a sample of all.
awk -F '\t' '$6 != "constants" && $1 !~ /tablegen/' "$scratch/all" | awk -v seed="${seed%%[!0-9]*}" '
    BEGIN { srand(seed + 0) } { print rand() "\t" $0 }' | sort -n | cut -f 2- |
    head -n "${TAKE:-100000}" >"$scratch/mutants"

# A copy of what git has, as it stands now, with all faults and a build in it. Anew each time: an object with
# faults of another run is younger than its source.
copy=$top/.build/mutation
rm -rf "$copy"
mkdir -p "$copy/.build"
git ls-files | while IFS= read -r name; do
    [ -f "$name" ] && echo "$name"
done | tar cf - -T - configure Makefile.in aclocal.m4 config.h.in .build-aux | (cd "$copy" && tar xf -)
# The program notes in a file, a byte each, which functions with a fault it has come to.
cat >"$scratch/choice.c" <<'END_OF_CHOICE'
#include <fcntl.h>
#include <stdlib.h>
#include <sys/mman.h>
int is_planted(int number);
static int fault_planted;
static char *reached;
__attribute__((constructor)) static void choose_fault(void)
{
    const char *given = getenv("TYRESUM_FAULT"), *path = getenv("TYRESUM_REACHED");
    fault_planted = given == NULL ? 0 : atoi(given);
    int file = path == NULL ? -1 : open(path, O_RDWR);
    void *place = file < 0 ? MAP_FAILED : mmap(NULL, 4096, PROT_WRITE, MAP_SHARED, file, 0);
    reached = place == MAP_FAILED ? NULL : place;
    if (file >= 0)
        close(file);
}
int is_planted(int number)
{
    if (reached != NULL)
        reached[number] = '1';
    return fault_planted == number;
}
END_OF_CHOICE
choice=src/base/arena.c # which every program has
{ cut -f 1 "$scratch/mutants"; echo $choice; } | sort -u >"$scratch/files"
(cd "$copy/.build" && ../configure -q --disable-hardening CC="${CC:-cc}" CFLAGS='-O1 -w') || exit 1

build_with_faults() {
    step "building with $(wc -l <"$scratch/mutants") faults, seed $seed"
    while IFS= read -r file; do
        awk -v file="$file" -f tests/mutation/schemata.awk "$scratch/mutants" "$file" >"$copy/$file"
    done <"$scratch/files"
    cat "$scratch/choice.c" >>"$copy/$choice"
    for target in all unit_tests; do
        make -k -s -j "$(processors)" -C "$copy/.build" $target >"$scratch/build.log" 2>&1 || return 1
    done
}

# What the compiler refuses is no fault: pointers cannot be added, a list that is open not handed on.
until build_with_faults; do
    refused=$(sed -n "s/.*_fault_\([0-9]*\)['(].*/\1d/p" "$scratch/build.log" | sort -u)
    [ -n "$refused" ] || {
        grep "error:\|\*\*\*" "$scratch/build.log" >&2
        exit 1
    }
    sed -i "$refused" "$scratch/mutants"
done
binary=$copy/.build/tyresum
mkdir "$scratch/records"
awk -v folder="$scratch/records" '
    /^case: / {
        if (to) close(to)
        name = FILENAME
        sub(/.*\//, "", name)
        to = folder "/" name "." ++count[name]
    }
    to { print >to }' tests/command/*.case
parts="$(sed -n 's/.*suite_create("\([a-z_0-9]*\)").*/\1/p' tests/unit/*.c) second outside $(ls "$scratch/records")"

# complains PART: whether that part of the tests, or one of those records, fails with $TYRESUM_FAULT.
complains() (
    # A fault may never come back, or take all memory; a busy machine must not look like one.
    # shellcheck disable=SC3045 # not in POSIX, but in every shell that /bin/sh is
    ulimit -t 60 && ulimit -v 4000000
    case $1 in
    *.case.*)
        cd "$scratch/records" || exit
        # shellcheck disable=SC2086 # words
        TEST_STOP=1 timeout 1200 sh "$copy/tests/command/run.sh" "$binary" $1
        ;;
    second | outside) timeout 1200 sh "$copy/tests/$1/run.sh" "$binary" ;;
    *)
        cd "$copy/.build" || exit
        srcdir=$copy CK_FORK=no CK_RUN_SUITE=$1 timeout 1200 ./unit_tests
        ;;
    esac >"$log" 2>&1 </dev/null
    [ $? -ne 0 ]
)

# try FAULT FILE LINE ...: prints caught-by and the fault.
try() {
    export TYRESUM_FAULT="$1"
    verdict=survived
    awk -F '\t' -v fault="$1" '
        substr($2, fault + 1, 1) != 1 { next }
        $1 ~ /\.case\./ { records = records " " $1; next }
        records && $1 ~ /^properties/ { print records; records = "" }
        { print $1 }
        END { if (records) print records }' "$scratch/ordered" >"$scratch/parts.$number"
    while IFS= read -r part; do
        complains "$part" || continue
        verdict=${part%% *}
        case $verdict in '') verdict=command ;; esac
        break
    done <"$scratch/parts.$number"
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
TYRESUM_REACHED=$scratch/bytes
export TYRESUM_FAULT TYRESUM_REACHED
for part in $parts; do
    printf '%4096s' '' | tr ' ' 0 >"$TYRESUM_REACHED"
    if complains "$part"; then
        echo "$part fails without any fault:" >&2
        tail -n 20 "$log" >&2
        exit 1
    fi
    printf '%s\t%s\n' "$part" "$(cat "$TYRESUM_REACHED")" >>"$scratch/reached"
done
unset TYRESUM_REACHED
# Of units, then all that runs the program, then what draws random cases; in each, what comes to few
# functions, and so means them, first.
awk -F '\t' '{
    late = $1 ~ /^properties/ ? 3 : $1 ~ /\.case\./ ? 2 : $1 == "second" || $1 == "outside"
    count = gsub(/1/, "1", $2)
    print late, count, $1 "\t" $2
}' "$scratch/reached" | sort -k 1,1n -k 2,2n | cut -d ' ' -f 3- >"$scratch/ordered"
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
