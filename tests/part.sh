# shellcheck shell=sh
# Sourced by the parts of the tests: what they begin and end with. Nothing of the caller's
# surroundings changes what the program prints.
# shellcheck disable=SC2034 # the variables are the part's
unset TYRESUM_UNITS TYRESUM_FORMAT NO_COLOR COLUMNS
passed=0
failed=0
skipped=0

# absolute FILE: its path from the root, wherever the part goes then.
absolute() {
    echo "$(CDPATH='' cd -- "$(dirname -- "$1")" && pwd)/$(basename -- "$1")"
}

# work_in NAME: $work, an empty folder that is gone when the part has ended.
work_in() {
    work=$(mktemp -d "${TMPDIR:-/tmp}/tyresum-$1.XXXXXX") || exit 1
    trap 'rm -rf "$work"' EXIT
    trap 'exit 130' INT TERM HUP
}

# check_exit NAME STATUS EXPECTED [COMMAND...]: a status, and any condition besides, after a run
# whose standard error is in the file err.
check_exit() {
    name=$1 got=$2 expected=$3
    shift 3
    if [ "$got" -ne "$expected" ]; then
        echo "FAIL $name: exit $got, expected $expected; standard error:"
    elif [ $# -gt 0 ] && ! "$@"; then
        echo "FAIL $name: not so: $*; standard error:"
    elif grep -q 'Sanitizer\|runtime error:' err; then
        echo "FAIL $name: a sanitizer spoke:"
    else
        passed=$((passed + 1))
        return
    fi
    failed=$((failed + 1))
    sed -n '1,12s/^/    /p' err | cut -c 1-300
}

# Whether script (bsdutils) can make a terminal here: in some containers there is none to be had.
has_terminal() {
    script -qec true /dev/null </dev/null >/dev/null 2>&1
}

# closed_pipe DESCRIPTOR: opens it as a pipe that nobody reads any more, so that a writer meets its end
# at once, however busy the machine is.
closed_pipe() {
    rm -f nobody
    mkfifo nobody
    eval "exec 7<>nobody $1>nobody 7<&-"
}

silent() {
    [ ! -s err ]
}

# The last line of a part, and its exit status.
give_count() {
    echo "count $passed $failed $skipped"
    [ "$failed" -eq 0 ]
}
