#!/bin/sh
# sh tests/outside/measure/run.sh [--check] BUILD [formulas | tables]: which published values stand on which formula and
# on which row of a table. BUILD is a finished plain build, with its unit_tests.
#
# Measured and not guessed: a build is made in which the result of one public function (or one
# column of some rows of a table) comes out 5 per cent too high or too low, a whole number by one, a
# yes as a no. A check stands on the formula when its figure is wrong then; a command that merely
# fails proves nothing and does not count. Writes formulas.csv and tables.csv anew, in which `kind`
# and `note` of a formula stay as they were; with --check it only says where they are not up to date.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd) || exit 1
check=no
[ "${1-}" != --check ] || {
    check=yes
    shift
}
if [ $# -lt 1 ] || [ ! -f "$1/libtyresum.a" ]; then
    echo "usage: sh tests/outside/measure/run.sh [--check] BUILD [formulas | tables]" >&2
    exit 2
fi
what=${2-formulas tables}
build=$(CDPATH='' cd -- "$1" && pwd) || exit 1
top=$(CDPATH='' cd -- "$here/../.." && pwd) || exit 1
work=$(mktemp -d "${TMPDIR:-/tmp}/tyresum-measure.XXXXXX") || exit 1
tables=
trap '[ -z "$tables" ] || kill "$tables" 2>/dev/null; rm -rf "$work"' EXIT
trap 'exit 130' INT TERM HUP
LC_ALL=C
export LC_ALL
unset TYRESUM_UNITS TYRESUM_FORMAT NO_COLOR COLUMNS SPOIL_FORMULA SPOIL_TABLE SPOIL_FACTOR

give_up() {
    echo "FAIL measure: $1"
    echo "count 0 1 0"
    exit 1
}

# --- the build that can be spoilt

awk -f "$here/functions.awk" "$top"/src/compute/*.h "$top"/src/tables/lookup.h >"$work/functions"
functions=$(cut -d ' ' -f 2 "$work/functions" | tr '\n' ' ')
mkdir "$work/objects" "$work/objects/tables" "$work/objects/unit"
# Rows that can be written to, each table's on pages of its own.
sed 's/^extern const struct \([a-z_]*_row\) /extern struct \1 /' "$build/src/tables/tables_data.h" \
    >"$work/objects/tables/tables_data.h"
sed 's/^const struct \([a-z_]*_row\) /_Alignas(4096) struct \1 /' \
    "$build/src/tables/tables_data.c" >"$work/objects/tables/tables_data.c"
echo '_Alignas(4096) char after_the_tables[4096] = {1};' >>"$work/objects/tables/tables_data.c"
for source in "$top"/src/compute/*.c "$top"/src/tables/lookup*.c; do
    awk -v functions="$functions" -f "$here/measure/wrap.awk" "$source" \
        >"$work/objects/$(basename "$source")"
done
cp "$here"/measure/spoil.[ch] "$work/objects"
yaml=$(pkg-config --libs yaml-0.1 2>/dev/null || echo -lyaml)
unit_libraries=$(pkg-config --libs check 2>/dev/null || echo -lcheck)
# shellcheck disable=SC2086 # words
(cd "$work/objects" &&
    ${CC:-cc} -std=c11 -D_XOPEN_SOURCE=700 -O1 -w -I. -I"$top/src" -c ./*.c tables/tables_data.c &&
    objcopy --redefine-sym main=program_main "$build/src/main.o" main.obj &&
    ${CC:-cc} -std=c11 -D_DEFAULT_SOURCE -O1 -c -o drive.obj "$here/measure/drive.c" &&
    ${CC:-cc} -o ../drive drive.obj main.obj ./*.o "$build/libtyresum.a" $yaml -lm &&
    ${CC:-cc} -o ../unit_tests "$build"/tests/unit/unit_tests-*.o ./*.o "$build/libtyresum.a" \
        $unit_libraries $yaml -lm) || give_up "the build to be spoilt does not compile"
# The headers were read right: what they declare is what is defined.
nm -g "$work"/objects/*.o | awk '$2 == "T" && $3 !~ /^spoil_|_as_written$/ { print $3 }' |
    sort -u >"$work/defined"
cut -d ' ' -f 2 "$work/functions" | sort >"$work/declared"
cmp -s "$work/defined" "$work/declared" ||
    give_up "functions.awk and the compiler differ: $(comm -3 "$work/defined" "$work/declared" |
        tr -s '\n\t' '  ')"

# --- the checks, and what each of their commands calls

cd "$here" || exit 1
awk -v task=rows -f csv.awk ./*.csv >"$work/rows" || give_up "the checks cannot be read"
awk -F '\037' '!($1 in seen) { seen[$1] = 1; print $1 "\n" $3 }' "$work/rows" >"$work/texts"
while read -r number && IFS= read -r command; do
    printf '\036%s\n' "$number"
    eval "printf '%s\n' $command --format json"
done <"$work/texts" >"$work/commands"

mkdir "$work/base" "$work/reach"
cut -d "$(printf '\037')" -f 1 "$work/rows" | sort -un >"$work/numbers"
SPOIL_REACHED=$work/reach "$work/drive" "$work/commands" "$work/numbers" "$work/base" ||
    give_up "the checks cannot be run"
cp "$work/rows" "$work/base/rows"
sh judge.sh "$work/base" | grep '^FAIL' && give_up "checks fail before anything is spoilt"
(cd "$work/reach" && awk '{ print FILENAME, $0 }' ./* | sed 's/^\.\///') >"$work/reached"

# failing ROWS [any]: the ids whose figure is wrong with what SPOIL_ variables say; or missing.
# (own is a folder of the one who asks: formulas and tables are measured at the same time.)
failing() {
    kind=is
    [ $# -eq 1 ] || kind=
    rm -f "$own"/spoilt/*
    cut -d "$(printf '\037')" -f 1 "$1" | sort -un >"$own/spoilt/numbers"
    "$work/drive" "$work/commands" "$own/spoilt/numbers" "$own/spoilt" "$work/base"
    set -- "$1" "$own"/spoilt/*.json
    [ -f "$2" ] || return 0
    (cd "$own/spoilt" && printf '%s\n' ./*.json) | sed 's/^..//; s/\.json$//' \
        >"$own/spoilt/changed"
    awk -F '\037' 'NR == FNR { changed[$1] = 1; next } $1 in changed' "$own/spoilt/changed" "$1" \
        >"$own/spoilt/rows"
    sh judge.sh "$own/spoilt" | sed -n "s/^FAIL \([^:]*\): $kind.*/\1/p"
}

# reaching NAME: the rows whose command calls that function or reads that table.
reaching() {
    awk -F '\037' -v called="$1" 'NR == FNR {
            split($0, part, " ")
            if (part[2] == called)
                reached[part[1]] = 1
            next
        }
        $1 in reached' "$work/reached" "$work/rows"
}

# with_ids ROWS IDS, without_ids ROWS IDS: the rows that have those ids, or have not.
with_ids() {
    awk -F '\037' 'FILENAME == ARGV[1] { wanted[$1] = 1; next } $2 in wanted' "$2" "$1"
}

without_ids() {
    awk -F '\037' 'FILENAME == ARGV[1] { wanted[$1] = 1; next } !($2 in wanted)' "$2" "$1"
}

# --- formulas

# With so many checks found in one direction, no more are sought in another.
enough=20


# unit_turns CASE: "file:test turn" of the listed unit tests that fail now. (Check names the file
# of the assertion, which may be a helper's.)
unit_turns() {
    # In one process, unless one dies of it.
    for fork in no yes; do
        CK_RUN_CASE=$1 CK_FORK=$fork CK_VERBOSITY=normal srcdir=$top \
            "$work/unit_tests" >"$own/log" 2>/dev/null </dev/null
        [ $? -gt 1 ] || break
    done
    awk -F '[:\037]' 'FNR == NR { file[$2 ":" $3] = $1; next }
        $3 == "F" && ($4 ":" $5) in file { print file[$4 ":" $5] ":" $5, $6 }' "$work/unit" "$own/log"
}

awk -v task=plain -f csv.awk unit.csv >"$work/unit"
cut -d "$(printf '\037')" -f 2 "$work/unit" | sort -u >"$work/cases"
own=$work
while IFS= read -r each; do
    rm -f "$work/one"
    SPOIL_REACHED=$work/one unit_turns "$each" >/dev/null
    sort -u "$work/one" | sed "s/\$/:$each/"
done <"$work/cases" >"$work/reached_by_unit"

measure_formulas() {
    own=$work/by_formula
    mkdir "$own" "$own/spoilt"
    while read -r file function; do
        # What computes nothing (a name, a count, a copy) is not asked.
        if grep -q "^$function,[^,]*,access," formulas.csv; then
            printf '%s\037%s\037\037\n' "$function" "$file" >>"$work/formulas"
            continue
        fi
        reaching "$function" >"$own/some"
        : >"$own/ids"
        for factor in 1.05 0.95 turns; do
            without_ids "$own/some" "$own/ids" >"$own/left"
            if [ ! -s "$own/left" ] || [ "$(wc -l <"$own/ids")" -ge "$enough" ]; then
                break
            fi
            SPOIL_FORMULA=$function SPOIL_FACTOR=$factor
            export SPOIL_FORMULA SPOIL_FACTOR
            failing "$own/left" >>"$own/ids"
            unset SPOIL_FORMULA SPOIL_FACTOR
        done
        sed -n "s/^$function://p" "$work/reached_by_unit" >"$own/its_cases"
        while IFS= read -r each; do
            for factor in 1.05 0.95 turns; do
                SPOIL_FORMULA=$function SPOIL_FACTOR=$factor unit_turns "$each"
            done
        done <"$own/its_cases" | sort -u >"$own/turns"
        printf '%s\037%s\037%s\037%s\n' "$function" "$file" \
            "$(awk -F '\037' -f measure/patterns.awk "$work/rows" "$own/ids")" \
            "$(awk '{ turns[$1]++ }
                END { for (test in turns) print test " (" turns[test] ")" }' "$own/turns" | sort |
                awk '{ printf "%s%s", (NR > 1 ? "; " : ""), $0 }')" >>"$work/formulas"
    done <"$work/functions"
}

# --- tables

# whole_columns COLUMN ROWS [any]: the ids of what stands on the column at all.
whole_columns() {
    for factor in 1.05 0.95; do
        SPOIL_COLUMN=$1 SPOIL_ROWS="from 0 $last" SPOIL_FACTOR=$factor
        failing "$2" ${3+any} >"$own/$factor.ids"
    done
    sort -u "$own"/1.05.ids "$own"/0.95.ids
}

# rows_by_bits: "id row" of the checks that stand on one row of the column alone. For each bit of a
# row's number, they fail with the rows that have it, or with those that have not. Those that fail
# with both stand on several rows: they are left in $own/several.
rows_by_bits() {
    : >"$own/bits"
    bit=0
    while [ $((last >> bit)) -gt 0 ] || [ $bit -eq 0 ]; do
        for value in 0 1; do
            SPOIL_ROWS="bit $bit $value"
            failing "$own/part" | sed "s/\$/ $bit $value/" >>"$own/bits"
        done
        bit=$((bit + 1))
    done
    awk -v bits="$bit" '{ seen[$1]++; row[$1] += $3 * 2 ^ $2 }
        END { for (id in seen) if (seen[id] == bits) print id, row[id] }' "$own/bits"
    awk -v bits="$bit" '{ seen[$1]++ }
        END { for (id in seen) if (seen[id] != bits) print id }' "$own/bits" >"$own/several"
}

# rows_by_halves: "id row" of those in $own/several.
rows_by_halves() {
    echo "0 $last" >"$own/parts"
    with_ids "$own/part" "$own/several" >"$own/0.part"
    while [ -s "$own/parts" ]; do
        : >"$own/next"
        while read -r first final; do
            SPOIL_ROWS="from $first $final"
            failing "$own/$first.part" </dev/null >"$own/ids"
            [ -s "$own/ids" ] || continue
            if [ "$first" -eq "$final" ]; then
                sed "s/\$/ $first/" "$own/ids"
                continue
            fi
            middle=$(((first + final) / 2))
            with_ids "$own/$first.part" "$own/ids" >"$own/half"
            cp "$own/half" "$own/$((middle + 1)).part"
            mv "$own/half" "$own/$first.part"
            echo "$first $middle" >>"$own/next"
            echo "$((middle + 1)) $final" >>"$own/next"
        done <"$own/parts"
        mv "$own/next" "$own/parts"
    done
}

measure_tables() {
    own=$work/by_table
    mkdir "$own" "$own/spoilt"
    for table in "$top"/tables/*.csv; do
        SPOIL_TABLE=$(basename "$table" .csv)
        export SPOIL_TABLE SPOIL_COLUMN SPOIL_ROWS SPOIL_FACTOR
        awk -v task=columns -f csv.awk "$table" >"$own/columns"
        last=$(($(awk -v task=plain -f csv.awk "$table" | wc -l) - 1))
        reaching "$SPOIL_TABLE" >"$own/readers"
        [ -s "$own/readers" ] || continue
        whole_columns any "$own/readers" any >"$own/all.ids"
        with_ids "$own/readers" "$own/all.ids" >"$own/some"
        while read -r column; do
            whole_columns "$column" "$own/some" </dev/null >/dev/null
            # What fails upward need not be asked downward.
            without_ids "$own/some" "$own/1.05.ids" >"$own/left"
            with_ids "$own/left" "$own/0.95.ids" >"$own/0.95.rows"
            with_ids "$own/some" "$own/1.05.ids" >"$own/1.05.rows"
            for factor in 1.05 0.95; do
                SPOIL_FACTOR=$factor
                mv "$own/$factor.rows" "$own/part"
                [ -s "$own/part" ] || continue
                {
                    rows_by_bits
                    [ ! -s "$own/several" ] || rows_by_halves
                } </dev/null | while read -r id row; do
                    echo "$SPOIL_TABLE $column $row $id"
                done >>"$work/table_rows"
            done
        done <"$own/columns"
    done
    unset SPOIL_TABLE SPOIL_COLUMN SPOIL_ROWS SPOIL_FACTOR
}

: >"$work/formulas"
: >"$work/table_rows"
case $what in *tables*)
    measure_tables &
    tables=$!
    ;;
esac
case $what in *formulas*) measure_formulas ;; esac
[ -z "$tables" ] || wait "$tables"

# --- what is committed

cat >"$work/formulas.csv" <<'END'
# Which published values stand on which formula. Written by measure/run.sh, which says what that
# means, but for kind and note.
#   kind        formula | look-up | access (names, counts, copies: nothing is computed)
#   checks      ids, or beginnings of ids with *, of rows of the other files here
#   unit_tests  tests of unit.csv, and how many turns of each
#   count       checks and turns together; of a formula or look-up, fewer than three are lacking
formula,file,kind,checks,unit_tests,count,note
END
awk -v task=plain -f csv.awk formulas.csv 2>/dev/null >"$work/before"
awk -F '\037' -f measure/formulas.awk "$work/before" part=rows "$work/rows" part=formulas \
    "$work/formulas" >>"$work/formulas.csv"

cat >"$work/tables.csv" <<'END'
# Which published values stand on which table. Written by measure/run.sh.
#   rows     of the table; checked: of which a number stands behind some check's figure
#   columns  the columns of numbers for which that is so, and in how many rows
#   checks   how many, in all, and by file
table,rows,checked,columns,checks,files
END
for table in "$top"/tables/*.csv; do
    awk -v task=plain -f csv.awk "$table" | awk -v name="$(basename "$table" .csv)" \
        -f measure/tables.awk - part=rows "$work/rows" part=found "$work/table_rows"
done >>"$work/tables.csv"

failed=0
checked=0
for name in $what; do
    name=$name.csv
    checked=$((checked + 1))
    if [ $check = no ]; then
        cp "$work/$name" "$name"
    elif ! cmp -s "$work/$name" "$name"; then
        failed=$((failed + 1))
        echo "FAIL $name is not what is measured: sh tests/outside/measure/run.sh BUILD"
        diff "$name" "$work/$name" | cut -c 1-160 | head -n 20
    fi
done
echo "count $((checked - failed)) $failed 0"
[ "$failed" -eq 0 ]
