#!/bin/sh
# sh tests/readme.sh [--accept] TYRESUM: every command of README.md (a line set in by four blanks
# that begins with "$ ") is run at the top of the sources and must print the lines that follow it.
# One without lines under it is only run. All must end with 0 and say nothing on standard error.
# With --accept the lines are replaced by what is printed.
set -u
accept=no
if [ "${1-}" = --accept ]; then
    accept=yes
    shift
fi
if [ $# -ne 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/readme.sh [--accept] TYRESUM" >&2
    exit 2
fi
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd) || exit 1
# shellcheck source=SCRIPTDIR/part.sh
. "$top/tests/part.sh"
PATH=$(CDPATH='' cd -- "$(dirname -- "$1")" && pwd):$PATH
LC_ALL=C
export PATH LC_ALL
work_in readme

# Files that the commands write go where nothing is: they see the sources through links.
mkdir "$work/place"
ln -s "$top/demo" "$work/place/demo"

line=0
command=

# judge: the command read last against the lines under it.
judge() {
    [ -n "$command" ] || return 0
    (cd "$work/place" && eval "$command") >"$work/got" 2>"$work/errors" </dev/null
    status=$?
    if [ "$status" -ne 0 ] || [ -s "$work/errors" ]; then
        failed=$((failed + 1))
        echo "FAIL README.md:$at: exit $status: $command"
        sed -n '1,10s/^/    /p' "$work/errors"
    elif [ -s "$work/expected" ] && ! diff -u "$work/expected" "$work/got" >"$work/diff"; then
        failed=$((failed + 1))
        echo "FAIL README.md:$at: $command (- README, + printed)"
        sed -n '3,40s/^/    /p' "$work/diff"
    else
        passed=$((passed + 1))
    fi
    if [ -s "$work/expected" ]; then
        sed 's/^\(.\)/    \1/' "$work/got" >>"$work/new"
    else
        cat "$work/blanks" >>"$work/new"
    fi
    command=
}

: >"$work/new"
: >"$work/expected"
: >"$work/blanks"
while IFS= read -r text; do
    line=$((line + 1))
    case $text in
    '    $ '*)
        judge
        : >"$work/expected"
        command=${text#'    $ '} at=$line
        printf '%s\n' "$text" >>"$work/new"
        continue
        ;;
    '    '*)
        if [ -n "$command" ]; then
            cat "$work/blanks" >>"$work/expected"
            : >"$work/blanks"
            printf '%s\n' "${text#'    '}" >>"$work/expected"
            continue
        fi
        ;;
    '')
        # A blank line belongs to the output if more of it follows.
        if [ -n "$command" ]; then
            echo >>"$work/blanks"
            continue
        fi
        ;;
    esac
    if [ -n "$command" ]; then
        had_output=no
        [ ! -s "$work/expected" ] || had_output=yes
        judge
        [ "$had_output" = no ] || cat "$work/blanks" >>"$work/new"
        : >"$work/blanks"
        : >"$work/expected"
    fi
    printf '%s\n' "$text" >>"$work/new"
done <"$top/README.md"
judge

if [ "$accept" = yes ] && ! cmp -s "$work/new" "$top/README.md"; then
    cp "$work/new" "$top/README.md"
    echo "accepted: README.md"
fi
give_count
