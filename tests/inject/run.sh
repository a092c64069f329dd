#!/bin/sh
# sh tests/inject/run.sh TYRESUM [--long]: lets what the program asks of the system fail, one call
# after another: every allocation, every write, and reading, opening, renaming; then what lies at
# and beyond each limit of size. The calls fail through a shim that is loaded before the C library,
# which a program with sanitizers or a static one does not allow: there only the limits are tried.
# Without --long a spread of the allocations is tried, but all of those of two commands; with it
# all of every command.
# A failure names the call as INJECT=..., to be repeated by hand with the shim that it names:
# KEEP=yes sh tests/inject/run.sh TYRESUM leaves the folder of this run.
set -u
if [ $# -lt 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/inject/run.sh TYRESUM [--long]" >&2
    exit 2
fi
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
demo=$here/../../demo
binary=$(absolute "$1")
long=no
[ "${2-}" != --long ] || long=yes
work_in inject
[ -z "${KEEP-}" ] || trap - EXIT
cd "$work" || exit 1
unset INJECT INJECT_SERVE INJECT_INPUT


# --- what the commands read

cp "$demo/commuter_car.yaml" "$demo/survey_wagon.yaml" .
cat >small.yaml <<'END'
vehicle: {name: invented car, wheelbase: 2600 mm, kind: passenger_car, top_speed: 180 km/h,
  unladen: {front: 700 kg, rear: 500 kg}}
tyres:
  fitted: {size: 195/65R15 91H, placard: {front: 220 kPa, rear: 220 kPa}}
  options:
    - {name: wider, size: 205/60R15 91H}
drivetrain: {gears: [3.5, 1.0], axle: 4.1}
clearance: {ground: 150 mm}
search:
  rims: [{diameter: 15, width: 6 in, inset: 35 mm}]
END
sed 's/^search:/search:\n  list: stock.csv/' small.yaml >listed.yaml
printf 'size,note\n195/65R15 91H,"invented, first"\n205/60R15 91H,second\n' >stock.csv
printf '205/55R16 91V\nnonsense\n\n31x10.50R15LT 109R\n' >lines
yes '205/55R16 91V' | head -n 2000 >many  # several writes of a full buffer
yes '205/55R16 91V' | head -n 40000 >most # several reads of a full buffer
sed 's/wheelbase: 2600 mm/wheelbase: 2600, colour: red/' small.yaml >wrong.yaml

# --- commands one after another through the shim

# add STATUS LOG: the count that a run of `every` ends with.
add() {
    count=$(sed -n 's/^count \([0-9][0-9]* [0-9][0-9]* [0-9][0-9]*\)$/\1/p' every.log)
    sed '/^count [0-9]/d' every.log
    if [ -z "$count" ]; then
        echo "FAIL $*: every ended without a count"
        failed=$((failed + 1))
        return
    fi
    # shellcheck disable=SC2086 # three numbers
    set -- $count
    passed=$((passed + $1))
    failed=$((failed + $2))
    skipped=$((skipped + $3))
}

# each OPTION... CALL ERROR -- ARGUMENT...: every such call of `tyresum ARGUMENT...` fails once.
each() {
    ./every "$@" >every.log 2>&1 </dev/null
    add "$@"
}

# starve PLACES ARGUMENT...: its allocations, all of them in the long mode or where PLACES is 0.
# Options of `every` may stand before PLACES.
starve() {
    starve_input=
    while [ "${1#-}" != "$1" ]; do
        starve_input="$starve_input $1"
        shift
        case $starve_input in *-i) starve_input="$starve_input $1" && shift ;; esac
    done
    places=$1
    shift
    [ "$long" = no ] || places=0
    # shellcheck disable=SC2086 # options are words
    each $starve_input -n "$places" -m 'there is not enough memory' "$shim" alloc ENOMEM \
        "$binary" "$@"
}

allocations() {
    starve 0 size '205/55R16 91V' '31x10.50R15LT 109R' --format json
    starve 0 sheet small.yaml --output place/kept
    starve -s -i lines 20 size - --format csv --output place/kept
    starve -s -i stock.csv 20 size - --from csv --column size
    starve 20 compare small.yaml --format markdown
    starve -i small.yaml 20 speedometer - --strict
    starve 20 gearing small.yaml --format svg --output place/kept
    starve 20 load small.yaml --units us --format csv --output place/kept
    starve 20 clearance small.yaml
    starve 20 sheet commuter_car.yaml --format html
    starve 20 shortlist listed.yaml --output place/kept
    starve 20 check small.yaml
    starve 20 check --template
    starve 20 check wrong.yaml
    starve 20 tables load_index --format csv --output place/kept
    starve 20 sheet --help --output place/kept
    [ "$long" = no ] || more_allocations
}

more_allocations() {
    starve 0 sheet survey_wagon.yaml --format csv --output place/kept
    starve 0 size '205/55R16 91V'
    starve 0 size '205/55R16 91V' --format csv --units both --output place/kept
    starve 0 size '205/55R16 91V' --format markdown
    starve 0 size nonsense
    starve -s -i lines 0 size -
    starve -s -i lines 0 size - --format json
    starve -s -i lines 0 compare - --fitted '205/60R16 92H' --format csv
    starve 0 compare '205/60R16 92H' '205/55R16 91V' --format json
    starve -i small.yaml 0 compare - --output place/kept
    for command in speedometer gearing load clearance; do
        starve 0 "$command" small.yaml --strict
        starve 0 "$command" small.yaml --units us --format csv --output place/kept
    done
    for command in load clearance; do
        starve 0 "$command" small.yaml --format svg --output place/kept
    done
    for format in table csv json markdown html; do
        starve 0 sheet small.yaml --format "$format"
        starve 0 sheet small.yaml --format "$format" --output place/kept
    done
    starve 0 sheet small.yaml --option wider --columns option,quantity,value
    starve -t 0 shortlist small.yaml --best 3 --format json # a sort does without its room
    starve 0 check small.yaml --format csv --output place/kept
    starve 0 tables
    starve 0 tables load_index --format json
    starve 0 --help
    starve 0 --version
}

# full ARGUMENT...: every write to standard output, or to --output, meets a full disk, a fault of
# the device, and a reader that has gone.
full() {
    each -p -m 'could not be written: No space left' "$shim" write ENOSPC "$binary" "$@"
    each -p -m 'could not be written: Input/output error' "$shim" write EIO "$binary" "$@"
    each -p -m '' "$shim" write EPIPE "$binary" "$@"
}

writes() {
    full size '205/55R16 91V'
    full sheet survey_wagon.yaml --format csv
    full sheet survey_wagon.yaml --format csv --output place/kept
    full sheet commuter_car.yaml --format html --output place/kept
    full --help
    each -i many -p -m 'could not be written: No space left' "$shim" write ENOSPC "$binary" \
        size - --format csv
    each -i many -p -m 'could not be written: No space left' "$shim" write ENOSPC "$binary" \
        size - --format json --output place/kept
    [ "$long" = yes ] || return 0
    full compare commuter_car.yaml --format json
    full sheet survey_wagon.yaml --format json --units both --output place/kept
    full clearance commuter_car.yaml --format svg
    full shortlist small.yaml --output place/kept
    full check small.yaml
    full check --template
    full tables standard_sizes --format csv
}

# What stands around reading and writing. Closing what was only read may fail without harm (-t).
others() {
    each -x 2 -m 'cannot be opened: Too many open files' "$shim" open EMFILE "$binary" \
        sheet commuter_car.yaml --output place/kept
    each -x 2 -m 'cannot be opened: Permission denied' "$shim" open EACCES "$binary" \
        shortlist listed.yaml --output place/kept
    each -x 2 -m 'commuter_car.yaml cannot be read: Input/output error' "$shim" read EIO "$binary" \
        sheet commuter_car.yaml --output place/kept
    each -i commuter_car.yaml -x 2 -m 'standard input cannot be read: Input/output error' "$shim" \
        read EIO "$binary" sheet -
    each -i most -s -x 2 -m 'standard input cannot be read: Input/output error' "$shim" \
        read EIO "$binary" size - --format csv --columns designation
    each -i most -x 2 -m 'standard input cannot be read: Input/output error' "$shim" \
        read EIO "$binary" size - --columns designation --output place/kept
    each -x 2 -m '.yaml cannot be read: Input/output error' "$shim" read EIO "$binary" \
        check commuter_car.yaml
    for call in mkstemp rename readlink access stat; do
        each -m '"place/kept" cannot be' "$shim" $call EACCES "$binary" \
            sheet commuter_car.yaml --output place/kept
        each -m '"place/kept" cannot be' "$shim" $call EIO "$binary" \
            size 205/55R16 --output place/kept
    done
    each -t -m 'place/kept could not be written: Input/output error' "$shim" close EIO "$binary" \
        sheet commuter_car.yaml --output place/kept
    each -m 'place/kept could not be written: No space left' "$shim" close ENOSPC "$binary" \
        size 205/55R16 --output place/kept
}

# same RULES INPUT ARGUMENT...: calls that do less than asked, or ask for another try, change
# nothing.
same() {
    rules=$1 input=$2
    shift 2
    "$binary" "$@" <"$input" >whole 2>whole_err
    whole_status=$?
    INJECT=$rules LD_PRELOAD=$shim timeout 300 "$binary" "$@" <"$input" >out 2>err
    status=$?
    if [ $status -eq $whole_status ] && cmp -s whole out && cmp -s whole_err err; then
        passed=$((passed + 1))
        return
    fi
    failed=$((failed + 1))
    echo "FAIL another result (exit $status): INJECT='$rules' LD_PRELOAD=$shim $binary $* <$input"
    sed -n '1,3s/^/    /p' err
}

short_and_interrupted() {
    for rules in 'write:*1:SHORT' 'write:*2:EINTR' 'write:*2:EAGAIN write:*1:SHORT' \
        'read:*1:SHORT' 'read:*2:EINTR' 'read:*2:EAGAIN' 'read:*2:EINTR read:*1:SHORT'; do
        same "$rules" commuter_car.yaml sheet - --format html
        same "$rules" /dev/null shortlist listed.yaml
        same "$rules" lines size - --format csv
        same "$rules" stock.csv size - --from csv --column size
        [ "$long" = yes ] || continue
        same "$rules" /dev/null sheet commuter_car.yaml --format csv
        same "$rules" /dev/null sheet commuter_car.yaml --output /dev/stdout
        same "$rules" lines size -
        same "$rules" lines size - --format json
        same "$rules" lines compare - --fitted '205/60R16 92H'
    done
}

# --- without the shim

# What is left where nothing was to change.
only_kept() {
    [ "$(ls -A place)" = kept ] && [ "$(cat place/kept)" = old ] && [ ! -s out ]
}

kept_and_told() {
    only_kept && grep -q "$1" err
}

# Larger files are not allowed: with the signal as it is by default, and ignored. Blocks are of 512
# bytes (POSIX). What is said goes through a pipe, since err would be under the limit itself.
file_size_limits() {
    blocks=0
    while [ $blocks -lt "$1" ]; do
        for action in - ''; do
            echo old >place/kept
            said=$(
                (
                    # shellcheck disable=SC2064 # the action is - or nothing
                    trap "$action" XFSZ
                    ulimit -f $blocks
                    exec "$binary" sheet commuter_car.yaml --format html --output place/kept
                ) 2>&1 >out
                echo "exit $?"
            )
            echo "$said" >err
            check_exit "a limit of $blocks blocks on file size, XFSZ '$action'" "${said##*exit }" 4 \
                kept_and_told 'place/kept could not be written: File too large'
        done
        blocks=$((blocks + $2))
    done
}

closed_pipes() {
    closed_pipe 9
    for action in - ''; do
        (
            # shellcheck disable=SC2064 # the action is - or nothing
            trap "$action" PIPE
            exec "$binary" size - --format csv <many >&9 2>err
        )
        check_exit "a stream into a closed pipe, PIPE '$action'" $? 4 silent
    done
    exec 9>&-
    mkfifo reader
    head -c 1 reader >/dev/null &
    "$binary" sheet survey_wagon.yaml --format csv --output reader >out 2>err
    status=$?
    wait
    check_exit "--output to a fifo whose reader goes away" $status 4 silent
}

# A run that is told to end while it waits for input takes its temporary file along.
told_to_end() {
    mkfifo slow
    for signal in HUP INT TERM; do
        # Started behind someone's back, all of this may have it ignored, and cannot undo that.
        sh -c "kill -s $signal \$\$; exit 0" && continue
        echo old >place/kept
        {
            tries=0
            while [ "$(ls -A place)" = kept ] && [ $tries -lt 6000 ]; do
                sleep 0.05
                tries=$((tries + 1))
            done
            ls -A place >seen
            kill -s "$signal" "$(cat process)"
        } >slow &
        # shellcheck disable=SC2016 # the inner shell expands them
        sh -c 'echo $$ >process; exec "$0" size - --output place/kept <slow' "$binary" >out 2>err
        status=$?
        wait
        check_exit "SIG$signal met a temporary file" "$(wc -l <seen)" 2
        check_exit "ended by SIG$signal" $((status > 128)) 1 only_kept
    done
}

closed_descriptors() {
    echo old >place/kept
    "$binary" size - --output place/kept >out 2>err <&-
    check_exit "standard input closed, with --output" $? 2 kept_and_told 'standard input cannot be read'
    "$binary" size 205/55R16 --output place/kept 2>err >&-
    check_exit "standard output closed, with --output" $? 0 silent
    printf 'nonsense\n' | "$binary" size - --format csv --output place/kept >out 2>&-
    : >err
    check_exit "standard error closed" $? 0 grep -q ',nonsense\|^nonsense' place/kept
}

world() {
    if [ "$long" = yes ]; then
        file_size_limits 64 1
    else
        file_size_limits 64 13
    fi
    closed_pipes
    told_to_end 2>/dev/null # where the shell says how each ended
    closed_descriptors
}

# --- all of it

shim=$work/shim.so

# Whether the program takes the shim, which is built for it.
can_load() {
    if grep -q '__asan_init' "$binary"; then
        echo "Not tried, since a program with sanitizers takes no shim: failing calls."
        return 1
    fi
    if ! ${CC:-cc} -std=c11 -O1 -shared -fPIC -o "$shim" "$here/shim.c" -ldl ||
        ! ${CC:-cc} -std=c11 -O1 -o every "$here/every.c"; then
        echo "FAIL the shim does not compile"
        failed=$((failed + 1))
        return 1
    fi
    INJECT=write:1:EIO LD_PRELOAD=$shim "$binary" --version >out 2>err && {
        echo "Not tried, since the program takes no shim: failing calls."
        return 1
    }
    grep -q 'Input/output error' err
}

# shellcheck source=SCRIPTDIR/limits.sh
. "$here/limits.sh"

mkdir place
echo old >place/kept
world
limits
if can_load; then
    allocations
    writes
    others
    short_and_interrupted
else
    skipped=$((skipped + 1))
fi
[ $((passed + failed)) -gt 0 ] || failed=1

[ -z "${KEEP-}" ] || echo "left: $work"
give_count
