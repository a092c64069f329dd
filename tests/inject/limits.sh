# shellcheck shell=sh
# Sourced by run.sh: what lies at and beyond each limit of size, and what is not read. limits tries
# all of it, in the folder of that run and with its $binary, $long, small.yaml and place/kept.
# shellcheck disable=SC2154 # the variables are the part's

# At most a minute, of the processor's time: the machine may be busy with other things.
in_time() {
    (
        # shellcheck disable=SC3045 # not in POSIX, but in every shell that /bin/sh is
        ulimit -t 60
        exec timeout 300 "$binary" "$@"
    )
}

# refused NAME PATTERN [COMMAND] FILE: exit 2 at once, nothing printed, the words at their place.
refused_with() {
    [ ! -s out ] && grep -q "$1" err
}

refused() {
    name=$1 pattern=$2
    shift 2
    in_time "$@" >out 2>err
    check_exit "$name" $? 2 refused_with "$pattern"
}

accepted() {
    name=$1
    shift
    in_time "$@" >out 2>err
    check_exit "$name" $? 0 silent
}

# padded BYTES: small.yaml with a comment behind it, of so many bytes together.
padded() {
    cat small.yaml
    awk -v missing=$(($1 - $(wc -c <small.yaml))) 'BEGIN {
        for (; missing > 80; missing -= 80)
            printf "#%78s\n", ""
        printf "#%*s\n", missing - 2, ""
    }'
}

# nested LEVELS WORD: a mapping whose flow lists reach so many levels.
nested() {
    awk -v levels="$1" 'BEGIN {
        printf "vehicle: {name: x}\nlimits: "
        for (i = 1; i < levels; i++) printf "["
        for (i = 1; i < levels; i++) printf "]"
        print ""
    }'
}

tree_limits() {
    padded 1048576 >mebibyte.yaml
    padded 1048577 >more.yaml
    check_exit "the padded files have their sizes" 0 0 \
        [ "$(wc -c <mebibyte.yaml) $(wc -c <more.yaml)" = "1048576 1048577" ]
    accepted "a build file of 1 MiB" sheet mebibyte.yaml
    "$binary" sheet small.yaml >whole
    check_exit "a build file of 1 MiB gives what it gives without its comment" 0 0 cmp -s whole out
    refused "a build file of 1 MiB and a byte" 'more.yaml: error: the file is larger than 1 MiB' \
        sheet more.yaml
    refused "the same from standard input" 'standard input: error: the file is larger' \
        sheet - <more.yaml
    # 64 levels are read, so that what is wrong is the key's own kind; the 65th is too deep.
    nested 64 >deep.yaml
    refused "64 levels" 'deep.yaml:2:[0-9]*: error: ' sheet deep.yaml
    check_exit "64 levels are not too many" 0 0 sh -c '! grep -q nested err'
    nested 65 >deeper.yaml
    refused "65 levels" 'deeper.yaml:2:72: error: .* deeper than 64 levels' sheet deeper.yaml
}

# spoilt NAME PATTERN FROM TO: small.yaml with one thing replaced.
spoilt() {
    sed "s|$3|$4|" small.yaml >spoilt.yaml
    if cmp -s small.yaml spoilt.yaml; then
        echo "FAIL $1: nothing was spoilt"
        failed=$((failed + 1))
        return
    fi
    refused "$1" "$2" sheet spoilt.yaml
}

not_read() {
    spoilt "an anchor" 'spoilt.yaml:1:17: error: an anchor' 'name: invented' 'name: \&a invented'
    spoilt "an anchor at a mapping" 'spoilt.yaml:1:10: error: an anchor' 'vehicle: {' \
        'vehicle: \&a {'
    spoilt "an alias" 'spoilt.yaml:4:18: error: an alias' '195/65R15 91H' '*a'
    spoilt "a tag" 'spoilt.yaml:1:17: error: a tag' 'name: invented' 'name: !!str invented'
    spoilt "a tag at a list" 'spoilt.yaml:7:21: error: a tag' 'gears: \[' 'gears: !list ['
    spoilt "a merge of mappings" 'spoilt.yaml:8:17: error: an alias' 'ground: 150' '<<: *a, ground: 150'
    { cat small.yaml; echo ---; cat small.yaml; } >two.yaml
    refused "a second document" "two.yaml:$(($(wc -l <small.yaml) + 1)):1: error: a second document" \
        sheet two.yaml
}

# options COUNT: a build file with so many options.
options() {
    awk -v count="$1" 'BEGIN {
        printf "vehicle: {kind: passenger_car}\ntyres:\n fitted: {size: 195/65R15 91H}\n"
        print " options:"
        for (i = 1; i <= count; i++) printf " - {name: n%d, size: 205/60R15 91H}\n", i
    }'
}

# every option, and the fitted tyre where the command has rows of it
has_options() {
    [ "$(sed 1d out | sort -u | wc -l)" -ge "$1" ]
}

# What a file may hold is answered in seconds; more is refused at its place.
many_options() {
    options 27000 >options.yaml # about 1 MiB
    refused "27,000 options" \
        'options.yaml:5:2: error: the key "options" has 27000 items; at most 2000 are read' \
        sheet options.yaml
    options 2001 >options.yaml
    refused "2001 options" 'options.yaml:5:2: error: the key "options" has 2001 items' \
        compare options.yaml
    options 2000 >options.yaml
    for command in compare speedometer load sheet; do
        [ "$long" = yes ] || [ $command = compare ] || continue
        in_time $command options.yaml --format csv --columns option >out 2>err
        check_exit "$command of 2000 options" $? 0 has_options 2000
    done
    accepted "sheet of 2000 options as html" sheet options.yaml --format html
    accepted "check of 2000 options" check options.yaml
    check_exit "check says of how many keys it speaks" 0 0 grep -q 'of the first [0-9]* was tried' out
    [ "$long" = yes ] || return 0
    for command in compare check; do
        options 27000 >more.yaml
        refused "$command of 27,000 options" 'more.yaml:5:2: error: ' "$command" more.yaml
    done
    for format in table markdown json; do
        accepted "sheet of 2000 options as $format" sheet options.yaml --format "$format"
    done
}

# fields COUNT WORD: a record of so many fields, the word in the last.
fields() {
    awk -v count="$1" -v word="$2" 'BEGIN {
        for (i = 1; i < count; i++) printf "%s%d,", word == "size" ? "f" : "", i
        print word
    }'
}

rows_are() {
    [ "$(cut -d , -f "$1" <out | tr '\n' ' ')" = "$2" ]
}

stream_limits() {
    { fields 100000 size; fields 100000 205/55R16; fields 3 1; fields 100001 195/65R15; } >wide.csv
    in_time size - --from csv --column size --columns overall_diameter_mm \
        <wide.csv >out 2>err
    check_exit "a csv of 100,000 fields, one record short, one long" $? 1 \
        rows_are 100001 'overall_diameter_mm 632.0 "" 195/65R15" '
    # Longer than the 2 MiB that are kept of a line: one row that says so, then the next line.
    { head -c 3000000 /dev/zero | tr '\0' 2; echo; echo 205/55R16; } |
        in_time size - --format csv --columns overall_diameter_mm >out 2>err
    check_exit "a line of three million bytes" $? 1 rows_are 1 'overall_diameter_mm "" 632.0 '
    printf 'size,note\n205/55R16,a\n195/65R15,"b\n195/65R15,c\n' >open.csv
    echo old >place/kept
    "$binary" size - --from csv --column size --output place/kept <open.csv >out 2>err
    check_exit "a stream whose last quote stays open" $? 2 kept_and_told 'does not close its quote'
    sed 's/stock.csv/open.csv/' listed.yaml >list.yaml
    refused "a list whose last quote stays open" 'record 2 of the list "open.csv" does not close' \
        shortlist list.yaml
    { cat stock.csv; printf '"'; head -c 3000000 /dev/zero | tr '\0' x; } >open.csv
    refused "a list with a record that never ends" 'record 3 of the list "open.csv" is too long' \
        shortlist list.yaml
}

limits() {
    tree_limits
    not_read
    many_options
    stream_limits
}
