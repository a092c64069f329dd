# Reads CSV as RFC 4180 has it (quoted fields, doubled quotes, line ends inside quotes, CRLF), with
# comment lines that start with # between records. Used by run.sh for two tasks:
#   rows  check files in, one line a check out, fields apart by \037, a number for the command first
#   pick  the program's output as csv in; "right", or what is wrong, out

BEGIN {
    if (task == "pick")
        read_pick(ENVIRON["PICK"])
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
    else
        output_row()
}

END {
    if (task == "pick")
        print verdict()
    else if (broken)
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

function check_row(    i, line) {
    if (records == 1)
        return
    if (fields != 9 || field[1] in seen || field[2] == "" || field[3] == "" || field[4] == "" ||
        field[7] == "" || field[9] !~ /^(published|derived|from memory|common practice)$/ ||
        field[5] !~ /^[0-9.]*$/) {
        printf "%s:%d: not a check: %s\n", FILENAME, FNR, record > "/dev/stderr"
        broken = 1
        return
    }
    seen[field[1]] = 1
    if (!(field[2] in number))
        number[field[2]] = ++commands
    line = number[field[2]]
    for (i = 1; i <= fields; i++)
        line = line "\037" field[i]
    print line
}

function read_pick(text,    part, i, at) {
    keys = split(text, part, / *; */) - 1
    column = part[1]
    for (i = 1; i <= keys; i++) {
        at = index(part[i + 1], "=")
        key[i] = substr(part[i + 1], 1, at - 1)
        wanted[i] = substr(part[i + 1], at + 1)
    }
}

function output_row(    i) {
    if (records == 1) {
        for (i = 1; i <= fields; i++)
            place[field[i]] = i
        return
    }
    for (i = 1; i <= keys; i++)
        if (!(key[i] in place) || field[place[key[i]]] != wanted[i])
            return
    found++
    if (column in place)
        value = field[place[column]]
    if ("unit" in place && unit_column == "")
        unit_column = field[place["unit"]]
}

function verdict(    i, expected, off) {
    expected = ENVIRON["EXPECTED"]
    if (!(column in place))
        return "no column " column
    for (i = 1; i <= keys; i++)
        if (!(key[i] in place))
            return "no column " key[i]
    if (found != 1)
        return (found + 0) " rows where " ENVIRON["PICK"]
    if (column == "value" && unit_column != unit)
        return "unit " unit_column ", expected " unit
    if (tolerance == "")
        return value == expected ? "right" : "is '" value "', expected '" expected "'"
    if (value !~ /^[+-]?[0-9]+(\.[0-9]+)?([eE][+-]?[0-9]+)?$/)
        return "is '" value "', expected the number " expected
    off = value - expected
    # The tolerance itself still counts, whatever binary fractions make of it.
    if ((off < 0 ? -off : off) > tolerance + 1e-9)
        return "is " value ", expected " expected " within " tolerance " " unit
    return "right"
}
