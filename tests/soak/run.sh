#!/bin/sh
# sh tests/soak/run.sh TYRESUM: a million lines, every hundredth hostile; an end from outside at any
# moment; a disk that fills up. TEST_SEED=N repeats the moments.
set -u
if [ $# -ne 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/soak/run.sh TYRESUM" >&2
    exit 2
fi
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
top=$(dirname "$(dirname "$here")")
binary=$(absolute "$1")
seed=${TEST_SEED:-$(date +%s)}
work_in soak
cd "$work" || exit 1
LC_ALL=C
export LC_ALL
echo "soak: TEST_SEED=$seed"

# --- a million lines

# Sizes as they are spelled in the rows; in the hundredth place a line that cannot be read.
awk -v seed="$seed" 'BEGIN {
    srand(seed)
    for (long = "9"; length(long) < 20000;)
        long = long long
    hostile[0] = ""; hostile[1] = "# nothing"; hostile[2] = "205/55R"; hostile[3] = long
    hostile[4] = "\377\376\001/55R16"; hostile[5] = "205/55R16 91V\033[2J"; hostile[6] = "nan/infR16"
    hostile[7] = "%s%n%99999d"; hostile[8] = "\"205/55R16"; hostile[9] = "205/55R16,91V;$(reboot)"
    for (i = 1; i <= 1000000; i++)
        if (i % 100 == 0)
            print hostile[i / 100 % 10]
        else
            printf "%d/%dR%d %d%s\n", 145 + 10 * int(20 * rand()), 40 + 5 * int(9 * rand()),
                14 + int(8 * rand()), 70 + int(50 * rand()), substr("QRSTHVW", 1 + int(7 * rand()), 1)
}' >lines
split -l 20000 lines part.

# stream COMMAND...: all lines at once in 24 MiB, and then in fifty parts.
stream() {
    (
        # shellcheck disable=SC3045 # not in POSIX, but in every shell that /bin/sh is
        ulimit -v 24576
        exec "$binary" "$@"
    ) <lines >rows 2>err
    check_exit "$1: a million lines in bounded memory" $? 1
    for part in part.*; do
        "$binary" "$@" <"$part" 2>>err
    done >parts
    check_exit "$1: the same as in parts" 0 0 cmp rows parts
    # The first column is the line, the second its error, in the same order.
    awk 'NR == FNR { line[FNR] = $0; next }
        { error = $0; sub(/^("[^"]*"|[^,"]*),/, "", error) }
        FNR % 100 == 0 { wrong += error == ""; next }
        { wrong += $0 != line[FNR] "," }
        END { print FNR, wrong + 0 }' lines rows >counted
    check_exit "$1: a row for each line, in order, and just the hundredth wrong" 0 0 \
        test "$(cat counted)" = "1000000 0"
}
stream size - --format csv --no-header --columns designation,error
stream compare - --fitted '205/55R16 91V' --format csv --no-header --columns designation,error

# --- an end from outside

# whole_or_old: the file is what it was or what it should become, and nothing lies beside it.
whole_or_old() {
    [ "$(ls -A place)" = sheet.csv ] && { cmp -s old place/sheet.csv || cmp -s new place/sheet.csv; }
}
build=$top/demo/survey_wagon.yaml
"$binary" sheet "$build" --format csv >new
echo old >old
mkdir place
moments=$(awk -v seed="$seed" 'BEGIN {
    srand(seed)
    split("HUP INT QUIT TERM USR1 XCPU", signal)
    for (i = 0; i < 60; i++)
        print int(3000 * rand() ^ 2) ":" signal[1 + i % 6]
}')
for moment in $moments; do
    cp old place/sheet.csv
    # A signal that the shell ignores for what runs behind it would stay ignored.
    env --default-signal="${moment#*:}" "$binary" sheet "$build" --format csv \
        --output place/sheet.csv >/dev/null 2>err &
    job=$!
    count=${moment%:*}
    while [ "$count" -gt 0 ]; do count=$((count - 1)); done
    kill -s "${moment#*:}" $job 2>/dev/null
    wait $job 2>/dev/null
    check_exit "ended after $moment turns" 0 0 whole_or_old
done
# What cannot be caught may leave the temporary file, and no half of the other.
for moment in $moments; do
    cp old place/sheet.csv
    "$binary" sheet "$build" --format csv --output place/sheet.csv >/dev/null 2>err &
    job=$!
    count=${moment%:*}
    while [ "$count" -gt 0 ]; do count=$((count - 1)); done
    kill -s KILL $job 2>/dev/null
    wait $job 2>/dev/null
    rm -f place/.tyresum.*
    check_exit "killed after $moment turns" 0 0 whole_or_old
done

# --- a disk that fills up

mkdir disk
"$binary" size - --format csv <part.aa >rows 2>err
cat >fill.sh <<'END_OF_FILL'
mount -t tmpfs -o size=64k none disk || exit 9
cp old disk/kept.csv
"$1" size - --format csv --output disk/kept.csv <part.aa >out 2>err
echo "$? $(ls -A disk) $(cat disk/kept.csv) $(wc -c <out)" >status
"$1" sheet "$2" --format csv --output disk/new.csv >out 2>>err
echo "$? $(ls -A disk)" >>status
"$1" size - --format csv <part.aa >disk/rows 2>>err
echo "$? $(head -c "$(wc -c <disk/rows)" rows | cmp - disk/rows && echo so far)" >>status
END_OF_FILL
told() {
    [ "$(sed -n "$1p" status)" = "$2" ] && [ "$(grep -c 'could not be written: No space left' err)" -eq 3 ]
}
if unshare -m sh fill.sh "$binary" "$build" 2>log || unshare -rm sh fill.sh "$binary" "$build" 2>log; then
    check_exit "a full disk: the old file stays" 0 0 told 1 "4 kept.csv old 0"
    check_exit "a full disk: no new file" 0 0 told 2 "4 kept.csv"
    check_exit "a full disk under standard output" 0 0 told 3 "4 so far"
else
    skipped=$((skipped + 3))
    echo "skipped: a disk that fills up: $(tail -n 1 log)"
fi

give_count
