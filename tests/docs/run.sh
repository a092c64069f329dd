#!/bin/sh
# sh tests/docs/run.sh BUILD [--long]: what the build writes from the program's tables, tried where
# it is used: manual pages in mandoc, completions in the shells, schemas in a validator, examples of
# the help in a shell. With --long nothing may be missing, and the shells that take a terminal and
# seconds for each word, and the schema validator, are tried too.
set -u
if [ $# -lt 1 ] || [ ! -x "$1/tyresum" ]; then
    echo "usage: sh tests/docs/run.sh BUILD [--long]" >&2
    exit 2
fi
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
top=$(dirname "$(dirname "$here")")
build=$(CDPATH='' cd -- "$1" && pwd)
long=${2-}
docs=$build/doc
work_in docs
cd "$work" || exit 1
PATH=$build:$PATH
LC_ALL=C
export PATH LC_ALL docs


check() { # NAME COMMAND...
    name=$1
    shift
    if "$@" >log 2>&1 </dev/null; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "FAIL $name"
        sed -n '1,20s/^/    /p' log
    fi
}

# there NAME COUNT COMMAND...: whether the machine has it; if not, COUNT checks are skipped.
there() {
    tool=$1 count=$2
    shift 2
    "$@" >/dev/null 2>&1 && return 0
    if [ "$long" = --long ]; then
        failed=$((failed + 1))
        echo "FAIL $tool is not on this machine"
    else
        skipped=$((skipped + count))
        echo "skipped: $count checks that need $tool"
    fi
    return 1
}

# --- manual pages. That they name each other although neither is installed here is no fault.
lint() {
    mandoc -Tlint "$1" >lint 2>&1
    grep -v 'referenced manual not found: Xr tyresum' lint
    ! grep -qv 'referenced manual not found: Xr tyresum' lint
}
if there mandoc 2 command -v mandoc; then
    check "tyresum(1) in mandoc" lint "$docs/tyresum.1"
    check "tyresum-build(5) in mandoc" lint "$docs/tyresum-build.5"
fi
# The steps of tyresum-build(5), one after another, are a file that every command understands.
steps_teach() {
    sed -n '/^\.Sh STEP/,/^\.Sh UNITS/p' "$docs/tyresum-build.5" | sed -n '/^\.Bd/,/^\.Ed/p' |
        awk '/^\.Bd/ { step++; next } /^\.Ed/ { close("step.yaml")
            system("cat step.yaml >>steps.yaml; tyresum check steps.yaml --quiet >/dev/null || exit 1") && bad = 1
            printf "" >"step.yaml"; next } { print >"step.yaml" } END { exit bad || step < 4 }' || return 1
    for command in compare speedometer load clearance tasks; do
        tyresum $command steps.yaml >step.out || return 1
    done
}
check "tyresum-build(5), step by step" steps_teach
every_example_in_manual() {
    tyresum tables keys --format json | jq -r '.[] | select(.example) | (.key | sub(".*[.]"; "")) + ": " + .example' |
        sort -u | while read -r example; do
        grep -qF -e ".Ql \"$example\"" "$docs/tyresum-build.5" || { echo "$example"; return 1; }
    done
}
check "every key's example is in tyresum-build(5)" every_example_in_manual
no_folder() {
    ! grep -nF -e "$top" -e /usr/ -e /home/ "$docs"/tyresum.1 "$docs"/tyresum-build.5
}
check "manuals name no folder of this machine" no_folder
every_option_in_manual() {
    # shellcheck disable=SC2013 # words have no blanks
    for option in $(tyresum --help | grep -o -e '--[a-z][a-z-]*' | sort -u); do
        grep -qF ".It Fl -${option#--}" "$docs/tyresum.1" || [ "$option" = --help ] || return 1
    done
}
check "every option is in tyresum(1)" every_option_in_manual

# --- help
one_screen() {
    tyresum --help | awk 'length($0) > 80 { bad = 1 } END { exit bad || NR > 24 }'
}
check "--help fits a screen of 80 by 24" one_screen
command_screen() {
    tyresum "$1" --help | awk 'END { exit NR > 30 }' &&
        [ "$(tyresum "$1" --help)" = "$(tyresum help "$1")" ] && [ "$(tyresum -h "$1")" = "$(tyresum help "$1")" ]
}
three_examples() {
    [ "$(tyresum --help | grep -c '^  tyresum [a-z]')" -eq 3 ]
}
check "--help has three examples" three_examples
cp "$top/demo/survey_wagon.yaml" build.yaml
printf '205/55R16 91V\n195/65R15 91H\n' >sizes.txt
printf 'item,size\n1,205/55R16 91V\n' >stock.csv
tyresum --help | sed -n 's/^  \([a-z][a-z]*\) .*/\1/p' | grep -v '^tyresum$' >commands
while read -r command; do
    tyresum "$command" --help | sed -n '/^Examples/,/^Options/s/^  \(tyresum .*\)/\1/p' >examples
    check "$command --help fits 30 lines, in all its spellings" command_screen "$command"
    check "$command --help has an example" test -s examples
    while read -r line; do
        check "example: $line" sh -c "$line"
    done <examples
done <commands

# --- completions: COMPLETED WORD... after the words of a line that is not finished
in_bash() {
    bash --norc --noprofile -c '
        . "$docs/bash/tyresum"
        COMP_WORDS=("$@") COMP_CWORD=$(($# - 1))
        _tyresum
        printf "%s\n" "${COMPREPLY[@]}"' bash "$@" 2>&1
}
in_fish() {
    # shellcheck disable=SC2016 # fish expands it
    fish --no-config -c 'source $docs/fish/tyresum.fish; complete -C "$argv"' "$*" 2>&1 | cut -f 1
}
# A terminal of its own, in which the line is completed and printed.
in_zsh() {
    timeout 300 zsh -f "$here/complete.zsh" "$*" 2>&1
}

# expect SHELL WORDS LINE: LINE is among what the shell offers (zsh: what it makes of it).
# shellcheck disable=SC2016 # the inner shell expands it
expect() {
    check "$1: $2" sh -c 'grep -qxF -e "$1" offered || { cat offered; exit 1; }' sh "$3"
}
offer() { # SHELL WORD...
    shell=$1
    shift
    "in_$shell" "$@" >offered </dev/null
}
check "bash reads its completion" bash -n "$docs/bash/tyresum"
offer bash tyresum spe && expect bash 'tyresum spe' speedometer
offer bash tyresum load --fo && expect bash 'tyresum load --fo' --format
offer bash tyresum load --format c && expect bash 'tyresum load --format c' csv
offer bash tyresum load --format h && expect bash 'tyresum load --format h' html
offer bash tyresum sheet --format h && expect bash 'tyresum sheet --format h' html
offer bash tyresum load --set suspension.front.li &&
    expect bash 'tyresum load --set suspension.front.li' suspension.front.lift=
offer bash tyresum load build.yaml --option on &&
    expect bash 'tyresum load build.yaml --option on' 'one step taller'
offer bash tyresum load --format = j && expect bash 'tyresum load --format=j' json
offer bash tyresum size --columns designation,load_k &&
    expect bash 'tyresum size --columns designation,load_k' designation,load_kg
offer bash tyresum tables load_r && expect bash 'tyresum tables load_r' load_range
offer bash tyresum sheet bui && expect bash 'tyresum sheet bui' build.yaml
if [ "$long" = --long ] && there fish 7 command -v fish; then
    check "fish reads its completion" fish --no-config -n "$docs/fish/tyresum.fish"
    offer fish tyresum spe && expect fish 'tyresum spe' speedometer
    offer fish tyresum load --form && expect fish 'tyresum load --form' --format
    offer fish tyresum load --format c && expect fish 'tyresum load --format c' csv
    offer fish tyresum size --columns designation,load_k &&
        expect fish 'tyresum size --columns designation,load_k' designation,load_kg
    offer fish tyresum tables load_r && expect fish 'tyresum tables load_r' load_range
    offer fish tyresum sheet bui && expect fish 'tyresum sheet bui' build.yaml
fi
if [ "$long" = --long ] && there zsh 7 command -v zsh; then
    check "zsh reads its completion" zsh -n "$docs/zsh/_tyresum"
    offer zsh tyresum spe && expect zsh 'tyresum spe' 'tyresum speedometer '
    offer zsh tyresum load --form && expect zsh 'tyresum load --form' 'tyresum load --format='
    offer zsh tyresum load --format=c && expect zsh 'tyresum load --format=c' 'tyresum load --format=csv '
    offer zsh tyresum size --columns=designation,load_k &&
        expect zsh 'tyresum size --columns=designation,load_k' 'tyresum size --columns=designation,load_kg,'
    offer zsh tyresum tables load_r &&
        expect zsh 'tyresum tables load_r' 'tyresum tables load_range '
    offer zsh tyresum sheet bui && expect zsh 'tyresum sheet bui' 'tyresum sheet build.yaml '
fi

# --- schemas, in a validator of JSON Schema
python=
for candidate in python3 /usr/bin/python3; do
    "$candidate" -c 'import jsonschema, yaml' 2>/dev/null && python=$candidate && break
done
if [ "$long" = --long ] && there "python3 with jsonschema and yaml" 20 test -n "$python"; then
    "$python" -W ignore "$here/schemas.py" "$docs" "$top" >schemas.log 2>&1 || true
    grep -v '^count ' schemas.log
    # shellcheck disable=SC2046 # two numbers
    set -- $(sed -n 's/^count //p' schemas.log)
    passed=$((passed + ${1:-0}))
    failed=$((failed + ${2:-1}))
fi

give_count
