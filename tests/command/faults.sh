#!/bin/sh
# sh tests/command/faults.sh TYRESUM: what happens when the world outside fails. Output that cannot
# be written gives exit 4, --output leaves the old file whole, hostile input is refused at once.
set -u
if [ $# -ne 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/command/faults.sh TYRESUM" >&2
    exit 2
fi
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
binary=$(absolute "$1")
work_in faults
cd "$work" || exit 1


# Nothing here may hang, or take minutes, whatever the program does: a minute of the processor's time
# ends it. How long it takes depends on the machine.
tyresum() {
    (
        # shellcheck disable=SC3045 # not in POSIX, but in every shell that /bin/sh is
        ulimit -t 60
        exec timeout 300 "$binary" "$@"
    )
}

told() {
    [ -s err ]
}

# refused NAME ARGUMENT...: exit 2, something said, nothing printed.
refused() {
    title=$1
    shift
    tyresum "$@" >out 2>err
    check_exit "$title" $? 2 nothing_but_errors
}

nothing_but_errors() {
    [ ! -s out ] && [ -s err ]
}

cat >car.yaml <<'END'
vehicle:
  name: invented car
  wheelbase: 2600 mm
  unladen: {front: 700 kg, rear: 500 kg}
  kind: passenger_car
  top_speed: 180 km/h
tyres:
  fitted:
    size: 195/65R15 91H
    placard: {front: 220 kPa, rear: 220 kPa}
  options:
    - name: wider
      size: 205/60R15 91H
END

# A full disk: every format, since each ends its output in its own way.
for format in table csv json; do
    tyresum size '205/55R16 91V' --format $format >/dev/full 2>err
    check_exit "size as $format to a full disk" $? 4 told
    tyresum sheet car.yaml --format $format >/dev/full 2>err
    check_exit "sheet as $format to a full disk" $? 4 told
done
tyresum compare 205/55R16 195/65R15 >/dev/full 2>err
check_exit "compare to a full disk" $? 4 told
tyresum --help >/dev/full 2>err
check_exit "help to a full disk" $? 4 told
tyresum --version >/dev/full 2>err
check_exit "version to a full disk" $? 4 told
tyresum size '205/55R16 91V' >&- 2>err
check_exit "standard output closed" $? 4 told

# A wrong input and a full disk at once: there is nothing to write, so the input decides.
tyresum size 'nonsense' >/dev/full 2>err
check_exit "wrong input to a full disk" $? 2 told

# A reader that has gone.
closed_pipe 9
tyresum sheet car.yaml >&9 2>err
check_exit "sheet into a closed pipe" $? 4 silent
tyresum size 205/55R16 --format json >&9 2>err
check_exit "size as json into a closed pipe" $? 4 silent
exec 9>&-

# --output: whole or not at all.
mkdir place
only_kept_file() {
    [ "$(ls -A place)" = kept.csv ] && [ "$(cat place/kept.csv)" = old ]
}
echo old >place/kept.csv
tyresum size 'nonsense' --format csv --output place/kept.csv >out 2>err
check_exit "--output with wrong input leaves the old file" $? 2 only_kept_file
tyresum size 205/55R16 --output nowhere/new.csv >out 2>err
check_exit "--output into a folder that is not there" $? 4 told
tyresum size 205/55R16 --output place >out 2>err
check_exit "--output to a folder" $? 4 only_kept_file
tyresum size 205/55R16 --output /dev/full >out 2>err
check_exit "--output to a full device" $? 4 told
# The limit on a file's size stands for a disk that fills up; the signal is ignored, as cron does.
(
    trap '' XFSZ
    ulimit -f 0
    tyresum size 205/55R16 --format csv --output place/kept.csv 2>&1
    echo "exit $?"
) | cat >err
check_exit "--output past the limit on file size" "$(sed -n 's/^exit //p' err)" 4 only_kept_file

written_whole() {
    [ "$(ls -A place)" = kept.csv ] && grep -q '^205/55R16' place/kept.csv && [ ! -s out ]
}
tyresum size 205/55R16 --format csv --output place/kept.csv >out 2>err
check_exit "--output replaces the file, and prints nothing" $? 0 written_whole
mode_kept() {
    case $(ls -l place/kept.csv) in
    -rw-r-----*) return 0 ;;
    *) return 1 ;;
    esac
}
chmod 640 place/kept.csv
tyresum size 205/55R16 --format csv --output place/kept.csv >out 2>err
check_exit "--output keeps the file's mode" $? 0 mode_kept
link_kept() {
    [ -L link.csv ] && grep -q '^195/65R15' place/kept.csv
}
ln -s place/kept.csv link.csv
tyresum size 195/65R15 --format csv --output link.csv >out 2>err
check_exit "--output writes through a symbolic link" $? 0 link_kept
mkfifo pipe
timeout 300 cat pipe >through &
tyresum size 195/65R15 --format csv --output pipe >out 2>err
status=$?
wait
check_exit "--output to a named pipe" $status 0 grep -q '^195/65R15' through

# What was read, and what somebody has filled in, is never replaced.
untouched() {
    [ -s err ] && [ ! -s out ] && [ "$(ls -A kept)" = "$(printf 'car.yaml\nlink.yaml\nstock.csv')" ] &&
        cmp -s car.yaml kept/car.yaml && cmp -s stock.csv kept/stock.csv
}
printf 'size\n195/65R15 91H\n' >stock.csv
printf 'search: {list: stock.csv, rims: [{diameter: 15, width: 6 in}]}\n' >>car.yaml
mkdir kept
cp car.yaml stock.csv kept
ln -s ./car.yaml kept/link.yaml
for command in compare check load tasks sheet shortlist; do
    tyresum $command kept/car.yaml --output kept/car.yaml >out 2>err
    check_exit "--output of $command onto its build file" $? 2 untouched
done
tyresum sheet kept/car.yaml --output kept/link.yaml >out 2>err
check_exit "--output through a link onto the build file" $? 2 untouched
# shellcheck disable=SC2094 # that is what is tried
tyresum sheet - --output kept/car.yaml <kept/car.yaml >out 2>err
check_exit "--output onto the build file on standard input" $? 2 untouched
# shellcheck disable=SC2094
tyresum size - --from csv --column size --output kept/stock.csv <kept/stock.csv >out 2>err
check_exit "--output onto a stream's own list" $? 2 untouched
tyresum shortlist kept/car.yaml --output kept/stock.csv >out 2>err
check_exit "--output onto the stock list" $? 2 untouched
tyresum check --template --output kept/car.yaml >out 2>err
check_exit "a template onto a file that is there" $? 2 untouched

tyresum size 195/65R15 --format csv --columns designation --output - >out 2>err
check_exit "--output - is standard output" $? 0 grep -qx 195/65R15 out
written_through() {
    [ -L dangling.csv ] && grep -q '^195/65R15' place/new.csv
}
ln -s place/new.csv dangling.csv
tyresum size 195/65R15 --format csv --output dangling.csv >out 2>err
check_exit "--output writes through a link to what is not there yet" $? 0 written_through
ln -s circle circle
tyresum size 195/65R15 --output circle >out 2>err
check_exit "--output to a link to itself" $? 4 told
name=$(printf '%0250d' 1)
tyresum size 195/65R15 --format csv --output "$name" >out 2>err
check_exit "--output to a name of 250 bytes" $? 0 grep -q '^195/65R15' "$name"

# A program that is ended from outside takes its temporary file along.
nothing_left() {
    [ -s made ] && [ -z "$(ls -A left)" ]
}
mkdir left
for signal in HUP INT QUIT TERM USR1 USR2 XCPU ALRM; do
    mkfifo slow
    env --default-signal="$signal" "$binary" size - --output left/sizes.csv <slow >out 2>err &
    job=$!
    exec 8>slow
    until find left -type f | grep . >made; do :; done
    kill -s "$signal" $job
    wait $job 2>/dev/null
    status=$?
    exec 8>&-
    rm slow
    check_exit "SIG$signal leaves no temporary file" $((status > 128)) 1 nothing_left
done

# Hostile files. libyaml's own loader takes minutes over the first.
awk 'BEGIN { for (i = 0; i < 100000; i++) printf "[" }' >brackets.yaml
refused "100,000 open brackets" sheet brackets.yaml
awk 'BEGIN { printf "vehicle: "; for (i = 0; i < 100000; i++) printf "{a: " }' >braces.yaml
refused "100,000 open braces" sheet braces.yaml
awk 'BEGIN { for (i = 0; i < 100000; i++) printf "- "; print "" }' >dashes.yaml
refused "100,000 nested dashes" sheet dashes.yaml

fifty_errors() {
    nothing_but_errors && [ "$(grep -c '^[^ ].*:[0-9]*:[0-9]*: error: ' err)" -le 50 ] &&
        [ "$(wc -c <err)" -lt 100000 ]
}
awk 'BEGIN { for (i = 0; i < 60000; i++) printf "unknown_%d: 1\n", i }' >keys.yaml
tyresum sheet keys.yaml >out 2>err
check_exit "60,000 unknown keys: at most fifty errors" $? 2 fifty_errors
awk 'BEGIN { print "vehicle:"; for (i = 0; i < 60000; i++) print "  name: a" }' >same.yaml
tyresum sheet same.yaml >out 2>err
check_exit "60,000 times the same key" $? 2 fifty_errors
awk 'BEGIN { for (i = 0; i < 1000000; i++) printf "x" }' >word.yaml
refused "one word of a million characters" sheet word.yaml
awk 'BEGIN { printf "vehicle: {wheelbase: "; for (i = 0; i < 900000; i++) printf "9"
             print " mm}" }' >number.yaml
refused "a number of 900,000 digits" sheet number.yaml
awk 'BEGIN { for (i = 0; i < 60000; i++) print "%TAG ! tag:x"; print "---"; print "vehicle: {name: a}" }' >tags.yaml
refused "60,000 directives" sheet tags.yaml
check_exit "directives: the first line is told" 0 0 \
    grep -q '^tags.yaml:1:1: error: a YAML directive' err
awk 'BEGIN { print "tyres:"; print "  fitted: {size: 205/55R16 91V}"; print "  options:"
             for (i = 0; i < 400; i++) print "    - {name: o" i ", size: 215/55R16 97V}"
             print "states:"; for (i = 0; i < 400; i++) print "  s" i ": all" }' >states.yaml
refused "400 options in 400 states" sheet states.yaml
check_exit "options by states: how many, and the bound, are told" 0 0 \
    grep -q '400 options in 400 states make .* figures .*; at most 200000 are worked out' err
long=$(awk 'BEGIN { for (i = 0; i < 100000; i++) printf "2" }')
refused "a designation of 100,000 digits" size "$long"
refused "an endless file" sheet /dev/zero
refused "a folder as the build file" sheet .
tyresum sheet - >out 2>err <&-
check_exit "standard input closed" $? 2 nothing_but_errors

# Reading in pieces must give what reading at once gives: no pipe holds so much. (Pieces of one byte
# are tried in tests/inject.)
awk 'BEGIN { for (i = 0; i < 10000; i++) print "# a comment of some length" }' >comments
tyresum sheet car.yaml --format csv >whole 2>err
cat comments car.yaml comments | tyresum sheet - --format csv >out 2>err
check_exit "a build file that arrives in pieces" $? 0 cmp -s whole out

four_rows() {
    [ "$(wc -l <out)" -eq 4 ] && [ "$(sed -n 1p out)" = 205/55R16 ] &&
        [ "$(sed -n 4p out)" = 195/65R15 ]
}

two_rows() {
    [ "$(wc -l <out)" -eq 2 ] && [ "$(sed -n 2p out)" = 632.0 ]
}

# Streams: one row or one clear end, and nothing lost before it.
awk 'BEGIN { for (i = 0; i < 200000; i++) print "205/55R16 91V" }' >many
tyresum size - --format csv <many >/dev/full 2>err
check_exit "a stream onto a full disk" $? 4 told
{ tyresum size - --format csv <many 2>err; echo $? >status; } | head -n 1 >out
check_exit "a stream into a pipe that closes" "$(cat status)" 4 silent
printf '205/55R16\n20\0005/55R16\n\377\376/55R16\n195/65R15' >odd
tyresum size - --format csv --no-header --columns designation <odd >out 2>err
check_exit "a NUL byte, bytes that are no text, no final newline" $? 1 four_rows
{ head -c 1048576 /dev/zero | tr '\0' 2; echo; echo 205/55R16; } |
    tyresum size - --format csv --no-header --columns overall_diameter_mm >out 2>err
check_exit "a line of one mebibyte is one row" $? 1 two_rows
{ printf 'size,note\n205/55R16,"'; head -c 3000000 /dev/zero | tr '\0' x; } |
    tyresum size - --from csv --column size >out 2>err
check_exit "a csv record that never ends" $? 2 told

give_count
