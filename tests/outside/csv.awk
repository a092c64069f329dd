# Reads CSV as RFC 4180 has it (quoted fields, doubled quotes, line ends inside quotes, CRLF), with
# comment lines that start with # between records. The tasks:
#   rows   check files in, one line a check out, fields apart by \037, a number for the command first
#          and the file last; what lies beside them about coverage is passed over
#   judge  those lines (part=rows), how each command ended (part=statuses) and the program's output
#          as csv, a line of \036 and the command's number before each (part=output), in; the
#          failures and their count out
#   plain  any file in, its rows without the heading (with_heading: with it) out, fields apart by \037
#   columns  a table of tables/ in, the names of its columns of numbers out

# The words for how sure a check is stand in one place, which is read from tests/outside.
BEGIN {
    while (task == "rows" && (getline line < "../../src/tables/certainty.h") > 0)
        if (line ~ /^#define [A-Z_]+ "/) {
            gsub(/^[^"]*"|".*/, "", line)
            certainties[line] = known = 1
        }
    if (task == "rows" && !known) {
        print "csv.awk: ../../src/tables/certainty.h cannot be read: go to tests/outside" > "/dev/stderr"
        broken = 1
        exit
    }
}

task == "rows" && FILENAME ~ /(^|\/)(formulas|tables|unit)\.csv$/ { next }

task == "columns" && /^# types: / {
    types = $0
    sub(/^# types: */, "", types)
    split(types, type, / *, */)
}

task == "judge" && part == "statuses" {
    split($0, field, "\037")
    status[field[1]] = field[2]
    complaint[field[1]] = field[3]
    next
}

task == "judge" && part == "rows" {
    keep_check()
    next
}

task == "judge" && !in_quotes && /^\036/ {
    command = substr($0, 2)
    records = 0
    split("", place)
    next
}

# The first line of each file begins anew: a heading follows.
FNR == 1 { record = ""; in_quotes = 0; records = 0 }

{
    sub(/\r$/, "")
    if (!in_quotes && (/^#/ || /^$/))
        next
    record = in_quotes ? record "\n" $0 : $0
    quotes = gsub(/"/, "\"")
    if (quotes % 2)
        in_quotes = !in_quotes
    if (in_quotes)
        next
    split_record(record)
    records++
    if (task == "rows")
        check_row()
    else if (task == "judge")
        output_row()
    else if (task == "plain" && (records > 1 || with_heading))
        print joined()
    else if (task == "columns" && records == 1)
        for (i = 1; i <= fields; i++)
            if (type[i] == "number" || type[i] == "integer")
                print field[i]
}

END {
    if (task == "judge")
        exit report_all()
    if (broken)
        exit 1
}

# Puts the fields of a record into field[1..fields].
function split_record(text,    at) {
    fields = 0
    do {
        fields++
        if (substr(text, 1, 1) == "\"") {
            field[fields] = ""
            text = substr(text, 2)
            while ((at = index(text, "\"")) > 0) {
                field[fields] = field[fields] substr(text, 1, at - 1)
                text = substr(text, at + 1)
                if (substr(text, 1, 1) != "\"")
                    break
                field[fields] = field[fields] "\""
                text = substr(text, 2)
            }
        } else {
            at = index(text, ",")
            field[fields] = at ? substr(text, 1, at - 1) : text
            text = at ? substr(text, at) : ""
        }
        at = substr(text, 1, 1) == ","
        text = substr(text, 2)
    } while (at)
}

function joined(    i, line) {
    line = field[1]
    for (i = 2; i <= fields; i++)
        line = line "\037" field[i]
    return line
}

function check_row() {
    if (records == 1)
        return
    if (fields != 9 || field[1] in seen || field[2] == "" || field[3] == "" || field[4] == "" ||
        field[7] == "" || !(field[9] in certainties) ||
        field[5] !~ /^[0-9.]*$/) {
        printf "%s:%d: not a check: %s\n", FILENAME, FNR, record > "/dev/stderr"
        broken = 1
        return
    }
    seen[field[1]] = 1
    if (!(field[2] in number))
        number[field[2]] = ++commands
    file = FILENAME
    sub(/.*\//, "", file)
    print number[field[2]] "\037" joined() "\037" file
}

# A line of task rows into arrays by the check's number; of a command, into its list of checks.
function keep_check(    part_of, i, at, keys) {
    split($0, field, "\037")
    checks++
    for (i = 1; i <= 10; i++)
        row[checks, i] = field[i]
    of_command[field[1], ++count_of[field[1]]] = checks
    keys = split(field[4], part_of, / *; */) - 1
    key_count[checks] = keys
    column[checks] = part_of[1]
    for (i = 1; i <= keys; i++) {
        at = index(part_of[i + 1], "=")
        key[checks, i] = substr(part_of[i + 1], 1, at - 1)
        wanted[checks, i] = substr(part_of[i + 1], at + 1)
    }
}

function output_row(    i, check) {
    if (records == 1) {
        for (i = 1; i <= fields; i++)
            place[field[i]] = i
        for (i = 1; i <= count_of[command]; i++)
            find_columns(of_command[command, i])
        return
    }
    for (i = 1; i <= count_of[command]; i++) {
        check = of_command[command, i]
        if (!lacking[check] && picked(check)) {
            found[check]++
            value[check] = field[place[column[check]]]
            if ("unit" in place)
                its_unit[check] = field[place["unit"]]
        }
    }
}

function find_columns(check,    i) {
    has_columns[check] = 1
    if (!(column[check] in place))
        lacking[check] = column[check]
    for (i = 1; i <= key_count[check] && !lacking[check]; i++)
        if (!(key[check, i] in place))
            lacking[check] = key[check, i]
}

function picked(check,    i) {
    for (i = 1; i <= key_count[check]; i++)
        if (field[place[key[check, i]]] != wanted[check, i])
            return 0
    return 1
}

# Right, or what is wrong with a check.
function verdict(check,    expected, tolerance, unit, off) {
    expected = row[check, 5]
    tolerance = row[check, 6]
    unit = row[check, 7]
    if (status[row[check, 1]] != "0")
        return "exit " status[row[check, 1]] ": " complaint[row[check, 1]]
    if (!has_columns[check] || lacking[check])
        return "no column " (lacking[check] ? lacking[check] : column[check])
    if (found[check] != 1)
        return (found[check] + 0) " rows where " row[check, 4]
    if (column[check] == "value" && its_unit[check] != unit)
        return "unit " its_unit[check] ", expected " unit
    if (tolerance == "")
        return value[check] == expected "" ? "right" : \
            "is '" value[check] "', expected '" expected "'"
    if (value[check] !~ /^[+-]?[0-9]+(\.[0-9]+)?([eE][+-]?[0-9]+)?$/)
        return "is '" value[check] "', expected the number " expected
    off = value[check] - expected
    # The tolerance itself still counts, whatever binary fractions make of it.
    if ((off < 0 ? -off : off) > tolerance + 1e-9)
        return "is " value[check] ", expected " expected " within " tolerance " " unit
    return "right"
}

# The failures and the count; 1 where there is any.
function report_all(    i, words, failed) {
    for (i = 1; i <= checks; i++) {
        words = verdict(i)
        if (words == "right")
            continue
        failed++
        printf "FAIL %s: %s\n    tyresum %s\n    %s (%s)\n", row[i, 2], words, row[i, 3], \
            row[i, 8], row[i, 10]
    }
    print "count", checks - failed, failed + 0, 0
    return failed > 0
}
