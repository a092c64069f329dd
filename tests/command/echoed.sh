#!/bin/sh
# sh tests/command/echoed.sh TYRESUM: texts that would steer a terminal, in every place that is said
# again: they come back as their numbers (ISO 6429's C0, DEL and C1; Unicode's Bidi_Control), and
# never as themselves. Then NUL bytes, and files in other encodings.
set -u
if [ $# -ne 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/command/echoed.sh TYRESUM" >&2
    exit 2
fi
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
binary=$(absolute "$1")
work_in echoed
cd "$work" || exit 1
LC_ALL=C
export LC_ALL

tyresum() {
    "$binary" "$@"
}

# build LINE...: a build file.
build() {
    printf '%s\n' "$@" >build.yaml
}
whole() { # LINE...: with what all commands need
    build 'vehicle: {wheelbase: 2600 mm, kind: passenger_car, unladen: {front: 700 kg, rear: 500 kg}}' "$@"
}
stock() {
    whole "$tyres" 'search: {list: list.csv, rims: [{diameter: 15, width: 6 in, inset: 35 mm}]}'
}
tyres='tyres: {fitted: {size: 195/65R15 91H}, options: [{name: wider, size: 205/60R15 91H}]}'

# Each place, as it is named here: what puts the text there, and whether it comes back.
# shellcheck disable=SC2086 # a format's options are words
in_place() {
    case $1 in
    # arguments
    size) tyresum size "205/55${raw}R16" ;;
    "size, behind the fault") tyresum size "205/55X16 ${raw}" ;;
    "size to compare") tyresum compare 205/55R16 "195/65${raw}R15" ;;
    command) tyresum "loa${raw}d" ;;
    "help for a command") tyresum help "loa${raw}d" ;;
    option) tyresum size --for"${raw}"mat csv ;;
    "option with one dash") tyresum size "-f${raw}" ;;
    format) tyresum size 205/55R16 --format "c${raw}sv" ;;
    units) tyresum size 205/55R16 --units "u${raw}s" ;;
    column) tyresum size 205/55R16 --columns "load${raw}" ;;
    "column twice") tyresum tables load_index --columns "load_${raw},load_${raw}" ;;
    table) tyresum tables "load_${raw}" ;;
    "build file not there") tyresum sheet "no${raw}thing.yaml" ;;
    "output not there") tyresum size 205/55R16 --output "no${raw}thing/x" ;;
    "name of an option") whole "$tyres"; tyresum load build.yaml --option "wi${raw}der" ;;
    "path of --set") whole "$tyres"; tyresum load build.yaml --set "vehicle.na${raw}me=x" ;;
    "value of --set") whole "$tyres"; tyresum load build.yaml --set "vehicle.wheelbase=2 ${raw}m" ;;
    "quoted value of --set") whole "$tyres"; tyresum load build.yaml --set "vehicle.name=\"a${escaped}b\"" ;;
    "value of --each") whole "$tyres"; tyresum load build.yaml --each "vehicle.kind=a${raw},b" ;;
    "file of --set") whole "$tyres"; tyresum load build.yaml --set "speedometer.readings=@no${raw}thing" ;;
    best) whole "$tyres"; tyresum shortlist build.yaml --best "1${raw}" ;;
    "default of the format") TYRESUM_FORMAT=c${raw}sv "$binary" size 205/55R16 ;;
    "default of the units") TYRESUM_UNITS=u${raw}s "$binary" size 205/55R16 ;;
    # values and keys of a build file, by escapes in quotes; "in" is for those that are understood
    "name of the vehicle, "*) build "vehicle: {name: \"a${escaped}b\", wheelbase: 2600 mm, kind: passenger_car}" "$tyres"
        tyresum "${1##* }" build.yaml ;;
    "name of a tyre, "*) whole "tyres: {fitted: {size: 195/65R15 91H}, options: [{name: \"a${escaped}b\", size: 205/60R15 91H}]}"
        set -- ${1#*, }; tyresum "$@" build.yaml ;;
    "name of an item, "*) whole "$tyres" "carried: [{item: \"a${escaped}b\", mass: 30 kg, distance: 2 m}]"
        set -- ${1#*, }; tyresum "$@" build.yaml ;;
    "name of a state, "*) whole "$tyres" "states: {\"a${escaped}b\": all}"; set -- ${1#*, }; tyresum "$@" build.yaml ;;
    "value as a case") whole "$tyres"; tyresum load build.yaml --each "vehicle.name=\"a${escaped}\",b" ;;
    key) build "vehicle: {\"na${escaped}me\": x}"; tyresum check build.yaml ;;
    "key twice") build "vehicle: {\"na${escaped}\": x, \"na${escaped}\": y}"; tyresum check build.yaml ;;
    quantity) build "vehicle: {wheelbase: \"2 ${escaped}m\"}"; tyresum check build.yaml ;;
    "number too long") build "vehicle: {wheelbase: \"${escaped}2 m\"}"; tyresum check build.yaml ;;
    choice) build "vehicle: {kind: \"a${escaped}b\"}"; tyresum check build.yaml ;;
    "truth") build "tyres: {fitted: {dual: \"a${escaped}\"}}"; tyresum check build.yaml ;;
    letter) build "tyres: {fitted: {load_range: \"${escaped}\"}}"; tyresum check build.yaml ;;
    designation) build "tyres: {fitted: {size: \"205/55${escaped}R16\"}}"; tyresum check build.yaml ;;
    "item of a state") whole "$tyres" "states: {a: [\"b${escaped}\"]}"; tyresum check build.yaml ;;
    # bytes of the build file itself: echoed lines, and what is not YAML
    "line of a fault") build "vehicle: {wheelbase: 2 mn} # ${raw}"; tyresum check build.yaml ;;
    "text that is no YAML") build "vehicle: {name: 'a${raw}b"; tyresum check build.yaml ;;
    "name without quotes") build "vehicle: {name: a${raw}b}" "$tyres"; tyresum sheet build.yaml ;;
    "name of the build file") whole "$tyres" wrong; cp build.yaml "a${raw}.yaml"; tyresum check "a${raw}.yaml" ;;
    "name of a good build file") whole "$tyres"; cp build.yaml "a${raw}.yaml"; tyresum check "a${raw}.yaml" ;;
    # lists of readings
    "cell of a list") printf 'shown,true\n50 k%sm/h,48 km/h\n' "$raw" >list.csv; whole "$tyres"
        tyresum speedometer build.yaml --set speedometer.readings=@list.csv ;;
    "heading of a list") printf 'sho%swn,true\n50 km/h,48 km/h\n' "$raw" >list.csv; whole "$tyres"
        tyresum speedometer build.yaml --set speedometer.readings=@list.csv ;;
    # stock lists
    "stock size") printf 'size\n205/%s55R16\n195/65R15 91H\n' "$raw" >list.csv; stock; tyresum shortlist build.yaml ;;
    "stock column") printf 'size,no%ste\n195/65R15 91H,x\n' "$raw" >list.csv; stock; tyresum shortlist build.yaml --carry "no${raw}" ;;
    "stock cell, "*) printf 'size,note\n195/65R15 91H,a%sb\n' "$raw" >list.csv; stock
        set -- ${1#*, }; tyresum shortlist build.yaml --carry note "$@" ;;
    "stock heading, "*) printf 'size,no%ste\n195/65R15 91H,a\n' "$raw" >list.csv; stock
        set -- ${1#*, }; tyresum shortlist build.yaml --carry "no${raw}te" "$@" ;;
    "stock list not there") stock; tyresum shortlist build.yaml --set "search.list=\"no${escaped}\"" ;;
    # streams
    "line, "*) set -- ${1#*, }; printf '195/65R15\n205/%s55R16\n' "$raw" | tyresum size - "$@" ;;
    "record, "*) set -- ${1#*, }; printf 'a,size\nx%sy,195/65R15\n' "$raw" | tyresum size - --from csv --column size "$@" ;;
    "column of a stream") printf 'a,size\nx,195/65R15\n' | tyresum size - --from csv --column "si${raw}ze" ;;
    "heading of a stream") printf 'a%s,size,a%s\nx,195/65R15,y\n' "$raw" "$raw" | tyresum size - --from csv --column size --format json ;;
    *) echo "no such place" ;;
    esac
}
cat >places <<'END'
size
size, behind the fault
size to compare
command
help for a command
option
option with one dash
format
units
column
column twice
table
build file not there
output not there
name of an option
path of --set
value of --set
quoted value of --set
value of --each
file of --set
best
default of the format
default of the units
name of the vehicle, sheet
name of the vehicle, tasks
~name of the vehicle, compare
name of a tyre, sheet
name of a tyre, sheet --format markdown
name of a tyre, sheet --format json
name of a tyre, tasks
name of a tyre, load
name of a tyre, load --format json
name of a tyre, compare
name of a tyre, compare --format markdown
name of a tyre, check
name of an item, load
name of an item, sheet
name of a state, load
~name of a state, check
value as a case
key
key twice
quantity
number too long
choice
truth
letter
designation
item of a state
line of a fault
~text that is no YAML
name without quotes
name of the build file
name of a good build file
cell of a list
heading of a list
stock size
stock column
stock cell, --format table
stock cell, --format markdown
stock cell, --format json
stock heading, --format table
stock heading, --format json
stock list not there
line, --format table
line, --format json
line, --format markdown
record, --format json
column of a stream
heading of a stream
END

# judge SHOWN...: every answer in the file log has one of these, and nothing that steers.
judge() {
    tr '\000' '\001' <log | shown=$* awk '
        function judge_answer() {
            if (place == "") return
            if (steers) { bad = 1; print "FAIL " place ": it would steer a terminal" }
            else if (!came) { bad = 1; print "FAIL " place ": it does not come back as " ENVIRON["shown"] }
            else passed++
            if (bad) failed++
            if (bad) printf "%s", answer
            bad = steers = came = 0
            answer = ""
        }
        BEGIN { count = split(ENVIRON["shown"], words, " ") }
        /^@@ / {
            judge_answer()
            place = substr($0, 4)
            came = place ~ /^~/ || words[1] == "\\x0D" # a break may be a blank, or end a line
            next
        }
        { answer = answer "    " $0 "\n" }
        /[\001-\010\013-\037\177]|\302[\200-\237]|\330\234|\342\200[\216\217\250-\256]|\342\201[\246-\251]/ { steers = 1 }
        { for (i = 1; i <= count; i++) if (index($0, words[i])) came = 1 }
        /Sanitizer|runtime error:/ { steers = 1 }
        END { judge_answer(); print passed + 0, failed + 0 >"counted" }' | cat -v
    read -r good bad <counted
    passed=$((passed + good)) failed=$((failed + bad))
    iconv -f UTF-8 -t UTF-8 <log >/dev/null 2>&1 && return
    failed=$((failed + 1))
    echo "FAIL $*: some of it is not UTF-8"
}

# The bytes; YAML's escape; and how they are to come back, in json and where YAML means another
# character too.
while read -r octal escaped shown other more; do
    # shellcheck disable=SC2059 # octal bytes
    raw=$(printf "${octal}x")
    raw=${raw%x}
    : >log
    while read -r place; do
        echo "@@ $place" >>log
        in_place "${place#[~]}" >>log 2>&1
        status=$?
        [ $status -lt 126 ] || echo "runtime error: exit $status" >>log
    done <places
    # shellcheck disable=SC2086 # words
    judge $shown $other $more
done <<'END'
\033 \e \x1B \u001b
\001 \x01 \x01 \u0001
\015 \r \x0D \r
\177 \x7F \x7F \u007f
\302\233 \u009B \u009B \u009b
\302\200 \u0080 \u0080 \u0080
\342\200\256 \u202E \u202E \u202e
\342\201\246 \u2066 \u2066 \u2066
\330\234 \u061C \u061C \u061c
\233 \x9b \x9B \u009B �
END
# --- a NUL byte is named, and cuts nothing short: the words that are said, and what says them

# shellcheck disable=SC2059 # octal bytes in a format
nul() { # WORDS FILE FORMAT COMMAND...
    words=$1
    printf "$3" >"$2"
    shift 3
    "$@" >out 2>err <list.csv
    check_exit "a NUL: $words" $? "$expected" grep -qF -e "$words" out err
}
expected=2
: >list.csv
nul 'not allowed: \x00' build.yaml 'vehicle:\n  name: one\000two\n' tyresum check build.yaml
nul 'the key "na\x00me"' build.yaml 'vehicle: {"na\\0me": x}\n' tyresum check build.yaml
nul '"a\x00b" holds a line end or another control character' build.yaml 'vehicle: {name: "a\\0b"}\n' tyresum check build.yaml
nul 'the unit "m\x00m" is not known' build.yaml 'vehicle: {wheelbase: "2 m\\0m"}\n' tyresum check build.yaml
nul 'the control character \x00 stands here' build.yaml 'tyres: {fitted: {size: "205/55\\0R16"}}\n' tyresum check build.yaml
whole "$tyres"
nul 'the unit "km/h\x00x" is not known' list.csv 'shown,true\n50 km/h\000x,48 km/h\n' tyresum speedometer build.yaml --set speedometer.readings=@list.csv
nul 'no column "shown"' list.csv 'sho\000wn,true\n50 km/h,48 km/h\n' tyresum speedometer build.yaml --set speedometer.readings=@list.csv
nul 'the heading of standard input holds a NUL byte (\x00)' list.csv 'size,a\000b\n195/65R15,x\n' tyresum size - --from csv --column size
stock
nul 'the heading of "list.csv" holds a NUL byte (\x00)' list.csv 'size,a\000b\n195/65R15 91H,x\n' tyresum shortlist build.yaml
expected=1
nul 'record 1 is passed over: column 10 of "195/65R15\x00 91H": the control character \x00' list.csv 'size\n195/65R15\000 91H\n195/65R15 91H\n' tyresum shortlist build.yaml
nul 'record 1 is passed over: a NUL byte (\x00) stands in it' list.csv 'size,note\n195/65R15 91H,a\000b\n195/65R15 91H,c\n' tyresum shortlist build.yaml
nul 'column 10: the control character \x00 stands here' list.csv '195/65R15\00091H\n195/65R15\n' tyresum size - --format csv
nul 'column 10: the control character \x00 stands here' list.csv 'size\n195/65R15\00091H\n' tyresum size - --from csv --column size
expected=0
nul '"note":"a\u0000b"' list.csv 'size,note\n195/65R15,a\000b\n' tyresum size - --from csv --column size --format json

# --- files in other encodings, with a mark and without: one error, wherever they are read

for encoding in UTF-16LE UTF-16BE UTF-32LE UTF-32BE; do
    for mark in '' '\357\273\277'; do
        recoded() { # FILE TEXT
            # shellcheck disable=SC2059 # octal bytes
            { printf "$mark"; printf '%s\n' "$2"; } | iconv -f UTF-8 -t $encoding >"$1"
        }
        one_error() {
            [ ! -s out ] && [ "$(grep -c error: err)" -eq 1 ] &&
                grep -qF "$1 is ${encoding%?E} text; save it as UTF-8" err
        }
        name="$encoding${mark:+ with a mark}"
        recoded wide.yaml 'vehicle: {wheelbase: 2600 mm}'
        for command in sheet check compare tasks shortlist; do
            tyresum $command wide.yaml >out 2>err
            check_exit "$name: $command" $? 2 one_error wide.yaml
        done
        tyresum load - <wide.yaml >out 2>err
        check_exit "$name: load -" $? 2 one_error "standard input"
        recoded list.csv "$(printf 'shown,true\n50 km/h,48 km/h')"
        whole "$tyres"
        tyresum speedometer build.yaml --set speedometer.readings=@list.csv >out 2>err
        check_exit "$name: readings" $? 2 one_error list.csv
        recoded list.csv "$(printf 'size,note\n195/65R15 91H,\303\244')"
        stock
        tyresum shortlist build.yaml >out 2>err
        check_exit "$name: a stock list" $? 2 one_error 'the list "list.csv"'
        tyresum size - --from csv --column size <list.csv >out 2>err
        check_exit "$name: records" $? 2 one_error "standard input"
        recoded lines "$(printf '195/65R15 91H\n205/60R15')"
        for format in table csv json; do
            tyresum size - --format $format <lines >out 2>err
            check_exit "$name: lines as $format" $? 2 one_error "standard input"
        done
        (dd bs=1 2>/dev/null <lines) | tyresum size - >out 2>err
        check_exit "$name: lines, byte after byte" $? 2 one_error "standard input"
    done
done

give_count
