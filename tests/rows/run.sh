#!/bin/sh
# sh tests/rows/run.sh BUILD [--long]: the csv of every command, of the demos and of random builds, in a
# database. Every row has a key of its own, a pivot by option has no holes, json holds the same cells.
# 20 of them, always the same; 200 new ones with --long or where TEST_LONG is 1. TEST_SEED=N repeats them.
set -u
many=20
[ -z "${TEST_LONG-}" ] || many=200
if [ "${2-}" = --long ]; then
    many=200
elif [ $# -ne 1 ]; then
    set -- # what is not known is told below
fi
if [ ! -x "${1-}/tyresum" ] || [ ! -x "$1/write_builds" ]; then
    echo "usage: sh tests/rows/run.sh BUILD [--long] (with tyresum and write_builds in BUILD)" >&2
    exit 2
fi
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
top=$(dirname "$(dirname "$here")")
build=$(CDPATH='' cd -- "$1" && pwd)
if [ "$many" = 20 ]; then seed=${TEST_SEED:-1}; else seed=${TEST_SEED:-$(date +%s)}; fi
work_in rows
cd "$work" || exit 1
LC_ALL=C
export LC_ALL
echo "rows: TEST_SEED=$seed"

"$build/write_builds" "$seed" "$many" || exit 1
cp "$top"/demo/*.yaml .
files=$(echo *.yaml)

# nothing NAME SQL: a question that has no rows for an answer.
nothing() {
    if sqlite3 rows.db "$2" >answer 2>&1 && [ ! -s answer ]; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "FAIL $1:"
        sed -n '1,10s/^/    /p' answer
    fi
}

# load TABLE KEY COMMAND...: the csv of that command of every build in a table with that key, behind
# a first column with the build's name. A build without the command's part has no rows.
load() {
    table=$1 key=$2
    shift 2
    rm -f all.csv
    for file in $files; do
        "$build/tyresum" "$@" "$file" --format csv >one.csv 2>err
        status=$?
        [ $status -ne 2 ] || continue
        [ $status -eq 0 ] || echo "FAIL $* $file: exit $status" >>trouble
        [ -f all.csv ] || sed -n '1s/^/build,/p' one.csv >all.csv
        name=${file##*/}
        sed "1d;s/^/${name%.yaml},/" one.csv >>all.csv
    done
    columns=$(sed -n '1s/[a-z_A-Z0-9]*/"&"/gp' all.csv)
    {
        echo "create table $table ($columns, primary key ($key)) without rowid;"
        echo ".import --csv --skip 1 all.csv $table"
    } >script
    if sqlite3 -bail rows.db <script >err 2>&1 && [ ! -s err ] &&
        rows=$(sqlite3 rows.db "select count(*) from $table") &&
        [ "$rows" -gt 0 ] && [ "$rows" -eq $(($(wc -l <all.csv) - 1)) ]; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "FAIL $*: its rows in a table with the key $key:"
        sed -n '1,10s/^/    /p' err
    fi
}

figure_key="build, part, option, state, axle, quantity, at, unit"
load sheet_rows "$figure_key" sheet
load both_rows "$figure_key" sheet --units both
load compare_rows "build, option" compare
load task_rows "build, option, number" tasks
load shortlist_rows "build, rank" shortlist
for command in speedometer gearing load clearance; do # whose rows are the sheet's
    load "${command}_rows" "$figure_key" "$command"
done
load task_both_rows "build, option, number, unit" tasks --units both
load us_rows "$figure_key" sheet --units us
load check_rows "build, kind, part, options, line, key, text" check --option fitted
touch trouble
[ ! -s trouble ]
check_exit "every command on every build" $? 0
cat trouble

# A pivot by option has a value or an unknown in every cell: no place that some options lack.
for table in sheet_rows both_rows us_rows; do
    nothing "$table: places that some options have not" "
        with options as (select build, part, quantity, count(distinct option) as many
                         from $table group by 1, 2, 3),
             places as (select build, part, quantity, at, count(distinct option) as has
                        from $table group by 1, 2, 3, 4)
        select * from places join options using (build, part, quantity)
        where has < many and quantity <> 'tyre_capacity' limit 10"
    # `limit` is a word of SQL's own: it stands in quotes.
    nothing "$table: a limit that is broken at the same figure" "
        select * from $table where value <> '' and value + 0 = \"limit\" + 0 and \"limit\" <> ''
            and (verdict = 'fail' or (verdict = 'task' and quantity <> 'speed_symbol_speed'))
            limit 10"
done
nothing "pivot: one cell for an option's pressure on an axle" "
    select build, option, sum(axle = 'front') as front, sum(axle = 'rear') as rear
    from sheet_rows where quantity = 'pressure_recommended' group by 1, 2
    having front > 1 or rear > 1 limit 10"

# What a part's own command says of a build is what the sheet says of it.
for command in speedometer gearing load clearance; do
    nothing "$command: rows that are the sheet's" "
        select * from ${command}_rows except select * from sheet_rows;
        select * from sheet_rows where part = '$command'
            and build in (select build from ${command}_rows) except select * from ${command}_rows"
done
nothing "tasks: the outcome that compare has" "
    select * from task_rows join compare_rows as beside using (build, option)
    where task_rows.outcome <> beside.outcome or beside.outcome = '' limit 10"

# beside COLUMN STEP QUANTITY [AT]: what compare has in that column is the sheet's figure, of which one
# of the two may have a decimal less. Not where each axle has its own.
beside() {
    nothing "compare: $1 is the sheet's $3" "
        create temporary table pairs as
            select build, option, beside.\"$1\" as there, value as here
            from compare_rows as beside join sheet_rows using (build, option)
            where quantity = '$3' and at = '${4-}' and axle = '' and there <> '';
        select * from pairs where abs(here - there) > $2 * 0.5000001 + 1e-9;
        select 'none' where not exists (select * from pairs)"
}
beside overall_diameter_mm 1 overall_diameter
beside overall_diameter_change_mm 0.1 overall_diameter_change
beside revs_per_km 0.1 revolutions
beside speedometer_error_percent 0.01 speedometer_error "nominal, true 100 km/h"
beside true_speed_at_100 0.1 true_speed "shown 100 km/h"
beside effective_axle_ratio 0.001 effective_axle_ratio
beside restoring_axle_ratio 0.001 restoring_axle_ratio
beside load_kg 1 load_index_load

# The same cells in json, which has all digits of a number that csv rounds; and the csv made again from
# json that was made of it.
for demo in "$top"/demo/*.yaml; do
    for command in compare gearing sheet shortlist tasks; do
        name="$command of ${demo##*/}"
        "$build/tyresum" $command "$demo" --format csv >one.csv 2>err || continue
        "$build/tyresum" $command "$demo" --format json >one.json 2>err || continue
        rm -f rows.db
        {
            echo ".import --csv one.csv csv"
            echo "create table json as select key + 1 as row, value from json_each(readfile('one.json'));"
            # Found by its key, which needs the number's type, or all cells are looked through for each.
            echo "create table cells (row integer, key text, cell, primary key (row, key));
                  insert into cells select json.row, each.key, each.value
                  from json, json_each(json.value) as each where each.type <> 'object';"
        } | sqlite3 -bail rows.db >err 2>&1
        columns=$(sqlite3 rows.db "select group_concat('\"' || name || '\"') from pragma_table_info('csv')")
        for column in $(echo "$columns" | tr -d '"' | tr ',' ' '); do
            bound=0.5000001 # what may be no more or no less is rounded within
            [ "$column" != value ] ||
                bound="case when csv.quantity in ('largest_item', 'place_from', 'place_to') then 1 else $bound end"
            echo "insert into differ select '$column', csv.rowid, csv.\"$column\", cells.cell from csv
                  left join cells on row = csv.rowid and key = '$column'
                  where (cells.cell is null) <> (csv.\"$column\" = '')
                  or case when typeof(cells.cell) = 'text' then cells.cell <> csv.\"$column\"
                     else abs(cells.cell - csv.\"$column\") > ($bound) / power(10,
                          case instr(csv.\"$column\", '.') when 0 then 0
                          else length(csv.\"$column\") - instr(csv.\"$column\", '.') end) end;"
        done >script
        nothing "json and csv of $name" "create table differ (key, row, csv, json);
            $(cat script) select * from differ limit 10; select 'rows differ' where
            (select count(*) from csv) <> (select count(*) from json)"
        sqlite3 -json rows.db 'select * from csv' | jq -r '(.[0] | keys_unsorted) as $names |
            ($names | @csv), (.[] | [.[$names[]]] | @csv)' >again.csv
        echo ".import --csv again.csv again" | sqlite3 rows.db
        nothing "csv of json of csv of $name" "select * from csv except select * from again;
            select * from again except select * from csv"
    done
done

give_count
