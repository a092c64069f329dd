#!/bin/sh
# sh tests/numbers/run.sh TYRESUM: numbers are finite and plain, and hang on the input alone.
#
# What is tried: the smallest and the largest tyre and build that are accepted; every demo and every
# build of tests/outside in all formats and units; locales, time zones, address layout, a full and
# an empty environment, another directory and umask; every variable that is named in the program;
# and that nothing is written but to --output.
# Ends with "count PASSED FAILED SKIPPED"; failures are lines that begin with "FAIL ".
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
if [ $# -ne 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/numbers/run.sh TYRESUM" >&2
    exit 2
fi
top=$(CDPATH='' cd -- "$here/../.." && pwd)
binary=$(absolute "$1")
work_in numbers
LC_ALL=C
export LC_ALL


pass() {
    passed=$((passed + 1))
}

fail() {
    failed=$((failed + 1))
    echo "FAIL $*"
}

skip() {
    skipped=$((skipped + 1))
    echo "skipped: $*"
}

# --- plain numbers

# Not a number, infinite, or a zero with a sign.
bad_number='(^|[^[:alnum:]_.])([Nn][Aa][Nn]|[-+]?[Ii][Nn][Ff]|[-+]?[Ii]nfinity|-0(\.0+)?)($|[^[:alnum:]_.])'
: >"$work/all"

# computes TITLE STATUS ARGUMENT...: that exit status, and something on standard output where it
# is 0. What is printed is looked through at the end, all of it at once.
computes() {
    title=$1
    expected=$2
    shift 2
    "$binary" "$@" >"$work/out" 2>"$work/err" </dev/null
    status=$?
    if [ "$status" -ne "$expected" ]; then
        fail "$title: exit $status, expected $expected: $(head -n 1 "$work/err")"
    elif [ "$expected" -eq 0 ] && [ ! -s "$work/out" ]; then
        fail "$title: nothing was printed"
    else
        pass
        echo "<<$title>>" >>"$work/all"
        cat "$work/out" >>"$work/all"
    fi
}

# The ends of what is accepted: rim codes from 8, section widths from 90 to 650 mm, diameters to
# 1600 mm. A tyre of 150 mm is smaller than the smallest rim, which is 203 mm: refused with its
# reason, and so is what is larger than 1600 mm.
smallest='90/15R8 20A1'
largest='485/100R21 200K'
for size in "$smallest" "$largest" '90/40R8' '59x20.00R25LT' '14x4.00R8LT' '650/45R22.5 180J'; do
    for format in table csv json; do
        computes "size $size as $format" 0 size "$size" --units both --format "$format"
    done
done
for pair in "$smallest;$largest" "$largest;$smallest" "$smallest;$smallest"; do
    for format in table csv json markdown; do
        computes "compare $pair as $format" 0 compare "${pair%;*}" "${pair#*;}" --units both \
            --format "$format"
    done
done
computes "a tyre of 150 mm" 2 size '80/15R5'
computes "a tyre of 61 inches" 2 size '61x20.00R25LT'

# has_part FILE COMMAND: whether the file holds what the command needs.
has_part() {
    case $2 in
    gearing) grep -q '^drivetrain:' "$1" ;;
    clearance) grep -q '^clearance:' "$1" ;;
    *) true ;;
    esac
}

# Builds of nothing but smallest and of nothing but largest values, by the ranges that the program
# tells; and the demos.
for file in "$here/smallest.yaml" "$here/largest.yaml" "$top"/demo/*.yaml; do
    name=$(basename "$file")
    for units in metric us both; do
        for format in csv json table; do
            computes "sheet $name in $units as $format" 0 sheet "$file" --units "$units" \
                --format "$format"
        done
    done
    for command in compare gearing clearance load speedometer; do
        has_part "$file" "$command" || continue
        computes "$command $name" 0 "$command" "$file" --units both
        computes "$command $name as markdown" 0 "$command" "$file" --units us --format markdown
        case $command in
        gearing | clearance | load)
            computes "drawing of $command of $name" 0 "$command" "$file" --format svg
            ;;
        esac
    done
    computes "sheet $name as html" 0 sheet "$file" --format html
    computes "check $name" 0 check "$file" --format json
done
for file in "$top"/tests/outside/builds/*.yaml; do
    name=$(basename "$file")
    computes "sheet $name as csv" 0 sheet "$file" --units both --format csv
done

# Each place is a failure, told with the command that printed it.
grep -anE "$bad_number|^<<.*>>\$" "$work/all" | awk '
    /^[0-9]+:<<.*>>$/ { title = $0; sub(/^[0-9]+:/, "", title); next }
    { sub(/^[0-9]+:/, ""); print "FAIL " title ": " substr($0, 1, 140) }' >"$work/bad"
cat "$work/bad"
failed=$((failed + $(wc -l <"$work/bad")))
# The pattern itself: it must find what it is for, and pass what only looks like it.
for bad in nan '1,-0.00,' '"value":-inf' 'at NaN mm' '>-0<'; do
    if echo "$bad" | grep -Eq "$bad_number"; then pass; else fail "\"$bad\" is not found"; fi
done
for good in 'inflating' '-0.01' '10-0.5' 'tenant' '2020-01-01' 'info'; do
    if echo "$good" | grep -Eq "$bad_number"; then fail "\"$good\" is taken for bad"; else pass; fi
done

# --- the same to the byte

# A little of everything; run with the given words before it.
everything() {
    wagon=$top/demo/survey_wagon.yaml
    "$@" "$binary" size "$smallest" "$largest" '31x10.50R15LT 109R' 'rubbish' --format csv
    "$@" "$binary" size '205/55R16 91V' --units both
    printf '205/55R16 91V\nnone\n' | "$@" "$binary" size - --format json
    "$@" "$binary" sheet "$wagon"
    "$@" "$binary" sheet "$wagon" --format csv --units both
    "$@" "$binary" gearing "$wagon" --format json
    "$@" "$binary" clearance "$wagon" --format svg
    "$@" "$binary" check "$here/broken.yaml"
    "$@" "$binary" tables load_index --format csv
    "$@" "$binary" speedometer --help
}

everything env >"$work/reference" 2>&1
if [ "$(wc -l <"$work/reference")" -lt 400 ]; then
    fail "a little of everything: only $(wc -l <"$work/reference") lines"
fi

# same NAME WORD...: everything once more, run through these words.
same() {
    title=$1
    shift
    everything "$@" >"$work/again" 2>&1
    if cmp -s "$work/reference" "$work/again"; then
        pass
    else
        fail "$title: other output: $(diff "$work/reference" "$work/again" | sed -n 2p | cut -c 1-120)"
    fi
}

same "a second run" env

# Locales with other decimal marks, other letters (the dotless i), and all that are here.
mkdir "$work/locales"
made=
for locale in de_DE tr_TR; do
    if command -v localedef >/dev/null 2>&1 &&
        localedef -i "$locale" -f UTF-8 "$work/locales/$locale.UTF-8" >/dev/null 2>&1; then
        made="$made $locale.UTF-8"
    else
        skip "the locale $locale.UTF-8: localedef or its sources are not here"
    fi
done
for locale in $made; do
    same "locale $locale" env LOCPATH="$work/locales" LC_ALL="$locale" LANG="$locale"
done
for locale in $(locale -a 2>/dev/null | head -n 4); do
    same "locale $locale" env LC_ALL="$locale" LANGUAGE="$locale"
done
for zone in Asia/Kathmandu 'XXX-14:45' ':nowhere'; do
    same "time zone $zone" env TZ="$zone"
done

if command -v setarch >/dev/null 2>&1 && setarch -R true 2>/dev/null; then
    same "no address layout" setarch -R
else
    skip "no address layout: setarch -R does not work here"
fi
same "an empty environment" env -i
same "no home" env -u HOME -u USER -u PATH_TO_NOTHING
padding=$(awk 'BEGIN { for (i = 0; i < 100000; i++) printf "x" }')
same "a large environment" env "PADDING=$padding" "NOISE=%s%n;=-0"
mkdir "$work/elsewhere"
(cd "$work/elsewhere" && umask 077 && everything env) >"$work/again" 2>&1
if cmp -s "$work/reference" "$work/again"; then
    pass
else
    fail "another directory and umask: other output"
fi

# Every word in the program that looks like a variable, but for the two that are documented and
# those of a sanitizer's own: what layout a terminal gets (NO_COLOR, COLUMNS) included.
tr -c 'A-Z0-9_' '\n' <"$binary" | grep -E '^[A-Z][A-Z0-9_]{2,40}$' | sort -u |
    grep -Ev '^(TYRESUM_UNITS|TYRESUM_FORMAT|[A-Z]*SAN_.*|LD_.*)$' >"$work/names"
printf '%s\n' NO_COLOR COLUMNS LINES TERM LANG HOME USER POSIXLY_CORRECT SOURCE_DATE_EPOCH \
    >>"$work/names"
if [ "$(wc -l <"$work/names")" -lt 15 ]; then
    fail "only $(wc -l <"$work/names") names of variables were found in the program"
fi
for value in '' '-1,5 us;%s'; do
    set --
    while read -r variable; do
        set -- "$@" "$variable=$value"
        [ $# -lt 1000 ] || break
    done <"$work/names"
    same "all variables set to \"$value\"" env "$@"
done
# The two that are documented do change it: else the check above could not fail.
everything env TYRESUM_UNITS=us >"$work/again" 2>&1
if cmp -s "$work/reference" "$work/again"; then
    fail "TYRESUM_UNITS changes nothing"
else
    pass
fi

# --- nothing is written but to --output

scratch=$work/scratch
mkdir -p "$scratch/home" "$scratch/here" "$scratch/tmp"
cp "$top/demo/commuter_car.yaml" "$scratch/here/car.yaml"
touch -t 202001010000 "$scratch/here/car.yaml"

listing() {
    (cd "$scratch" && { ls -lRn --time-style=full-iso 2>/dev/null || ls -lRn; })
}

# writes_nothing ARGUMENT...
writes_nothing() {
    listing >"$work/before"
    (cd "$scratch/here" && HOME=$scratch/home TMPDIR=$scratch/tmp "$binary" "$@" \
        >"$work/out" 2>&1 </dev/null)
    listing >"$work/after"
    if cmp -s "$work/before" "$work/after"; then
        pass
    else
        fail "$*: files have changed: $(diff "$work/before" "$work/after" | sed -n 2p)"
    fi
}

for command in compare sheet load gearing speedometer clearance check shortlist; do
    for format in table csv; do
        writes_nothing "$command" car.yaml --format "$format"
    done
done
writes_nothing size '205/55R16 91V'
writes_nothing tables
writes_nothing check --template
writes_nothing sheet missing.yaml
writes_nothing sheet car.yaml --output /dev/null
writes_nothing sheet car.yaml --output nowhere/file
writes_nothing --help

# With it, that file and no other.
(cd "$scratch/here" && HOME=$scratch/home TMPDIR=$scratch/tmp "$binary" sheet car.yaml \
    --output sheet.txt)
found=$(cd "$scratch" && find . -type f | sort | tr '\n' ' ')
if [ "$found" = "./here/car.yaml ./here/sheet.txt " ]; then
    pass
else
    fail "--output: the files are now $found"
fi

give_count
