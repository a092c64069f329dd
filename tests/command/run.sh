#!/bin/sh
# sh tests/command/run.sh [--accept] TYRESUM [FILE.case...]: the program from outside.
#
# A .case file holds records. Lines that start with # and blank lines between them are free.
#
#   case: what it shows                 starts a record
#   run: tyresum size '205/55R16' ...   a shell command, run in an empty folder of its own
#   setup: printf 'a\0b' >nul.yaml      shell, run before it in the same place (may repeat)
#   file wagon.yaml <<END               a file in that folder, up to a line END
#   stdin <<END                         what it reads (nothing without this)
#   needs: terminal                     skipped, and counted, where the machine gives none
#   needs: time                         left out where there is little (TEST_FEW=1)
#   exit: 2                             the exit status; needed in every record
#   stdout <<END                        all that it prints, to the byte; stderr likewise
#   stdout empty                        stderr likewise, and so in all that follow
#   stdout contains: text
#   stdout lacks: text
#   stdout line: text                   one whole line
#   stdout matches: ERE                 as grep -E
#   stdout lines: 3
#   golden: NAME                        stdout is golden/NAME.txt; --accept rewrites that file
#
# Held without being said: exit 2 prints nothing on standard output and something on standard
# error; no sanitizer speaks; nothing takes longer than a minute of the processor. All records run once in the C
# locale, and once more in one with a decimal comma if the machine has one. TEST_STOP=1: no further than
# the first that fails.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
accept=no
if [ "${1-}" = --accept ]; then
    accept=yes
    shift
fi
if [ $# -lt 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/command/run.sh [--accept] TYRESUM [FILE.case...]" >&2
    exit 2
fi
binary=$(absolute "$1")
shift
[ $# -gt 0 ] || set -- "$here"/*.case

work_in command
LC_ALL=C
export LC_ALL
top=$(dirname "$(dirname "$here")")
export top

awk -v work="$work" -f "$here/records.awk" "$@" || exit 1

tyresum() {
    (
        # shellcheck disable=SC3045 # not in POSIX, but in every shell that /bin/sh is
        ulimit -t 60
        LC_ALL=$locale exec timeout 300 "$binary" "$@"
    )
}

wrong() {
    printf '    %s\n' "$*" >>"$work/report"
}

# show FILE: its first lines, set in, for a report.
show() {
    if [ -s "$1" ]; then
        sed -n '1,12s/^/        | /p' "$1" >>"$work/report"
    else
        echo "        (nothing)" >>"$work/report"
    fi
}

# holds FILE KIND TEXT: one check on what was printed.
holds() {
    case $2 in
    empty) [ ! -s "$1" ] ;;
    contains) grep -qF -e "$3" "$1" ;;
    lacks) ! grep -qF -e "$3" "$1" ;;
    line) grep -qxF -e "$3" "$1" ;;
    matches) grep -qE -e "$3" "$1" ;;
    lines) [ "$(wc -l <"$1")" -eq "$3" ] ;;
    esac
}

judge_checks() {
    while read -r stream kind text; do
        holds "$record/$stream.got" "$kind" "$text" && continue
        wrong "$stream $kind${text:+: $text}; it holds:"
        show "$record/$stream.got"
    done <"$record/checks"
}

judge_block() { # STREAM
    [ -f "$record/$1" ] || return 0
    diff -u "$record/$1" "$record/$1.got" >"$work/diff" && return 0
    wrong "$1 differs (- expected, + got):"
    sed -n '3,40s/^/        /p' "$work/diff" >>"$work/report"
}

judge_golden() {
    [ -f "$record/golden" ] || return 0
    golden=$here/golden/$(cat "$record/golden").txt
    if [ "$accept" = yes ] && [ ! -s "$work/report" ] && [ -s "$record/stdout.got" ]; then
        cmp -s "$record/stdout.got" "$golden" || echo "accepted: ${golden##*/}"
        cp "$record/stdout.got" "$golden"
    elif [ ! -f "$golden" ]; then
        wrong "there is no golden/${golden##*/} (--accept makes it, once its content is checked)"
    elif ! diff -u "$golden" "$record/stdout.got" >"$work/diff"; then
        wrong "stdout differs from golden/${golden##*/} (- golden, + got):"
        sed -n '3,60s/^/        /p' "$work/diff" >>"$work/report"
    fi
}

judge() {
    read -r expected <"$record/exit"
    if [ "$status" -ne "$expected" ]; then
        wrong "exit $status, expected $expected; standard error:"
        show "$record/stderr.got"
    fi
    if [ "$expected" -eq 2 ]; then
        [ ! -s "$record/stdout.got" ] || wrong "exit 2 with something on standard output"
        [ -s "$record/stderr.got" ] || wrong "exit 2 with nothing on standard error"
    fi
    if [ -s "$record/stderr.got" ] && grep -q 'Sanitizer\|runtime error:' "$record/stderr.got"; then
        wrong "a sanitizer spoke:"
        show "$record/stderr.got"
    fi
    judge_checks
    judge_block stdout
    judge_block stderr
    judge_golden
}


# lacks NEED: whether the record has to be passed over.
lacks() {
    case $1 in
    terminal)
        [ "$terminal" = no ] || return 1
        skipped=$((skipped + 1))
        echo "skipped, for want of a pseudo-terminal: $(cat "$record/name")"
        ;;
    time) [ -n "${TEST_FEW-}" ] ;;
    *)
        failed=$((failed + 1))
        echo "FAIL $(cat "$record/name"): needs: terminal or time expected"
        ;;
    esac
}

run_records() {
    for record in "$work"/records/*; do
        [ ! -f "$record/needs" ] || ! lacks "$(cat "$record/needs")" || continue
        : >"$work/report"
        rm -rf "$work/place"
        cp -R "$record/files" "$work/place"
        IFS= read -r run <"$record/run"
        (
            cd "$work/place" || exit 125
            # shellcheck source=/dev/null
            [ ! -s "$record/setup" ] || . "$record/setup" >/dev/null || exit 125
            eval "$run"
        ) <"$record/stdin" >"$record/stdout.got" 2>"$record/stderr.got"
        status=$?
        judge
        if [ -s "$work/report" ]; then
            failed=$((failed + 1))
            echo "FAIL $(cat "$record/name") ($locale)"
            printf '    %s\n' "$run"
            cat "$work/report"
            [ -z "${TEST_STOP-}" ] || break
        else
            passed=$((passed + 1))
        fi
    done
}

# The first locale of the machine whose decimal mark is a comma; nothing if it has none.
comma_locale() {
    locale -a 2>/dev/null | grep -E '^(de|fr|es|it|nl|pl|sv|cs|da|fi|nb|pt|ru)_' |
        while read -r name; do
            [ "$(LC_ALL=$name locale decimal_point 2>/dev/null)" = , ] && echo "$name" && break
        done
}

terminal=no
has_terminal && terminal=yes
locale=C
run_records
if [ "$accept" = no ]; then
    locale=$(comma_locale)
    [ -z "$locale" ] || run_records
fi
give_count
