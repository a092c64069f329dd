# awk -f same_rows.awk JSON_ROWS CSV_ROWS: fields apart by \037, a line a row. The rows are the same:
# a text to the letter, a number to half of the last decimal that csv has.
BEGIN { FS = "\037" }

function is_number(text) {
    return text ~ /^-?[0-9]+(\.[0-9]+)?(e[-+]?[0-9]+)?$/
}

function is_same(json, csv,    step, off) {
    if (json "" == csv "")
        return 1
    if (!is_number(json) || !is_number(csv))
        return 0
    step = csv ~ /\./ ? 10 ^ -(length(csv) - index(csv, ".")) : 1
    off = json - csv
    return (off < 0 ? -off : off) <= step / 2 * (1 + 1e-6) + 1e-9
}

NR == FNR { expected[FNR] = $0; rows = FNR; next }

{
    fields = split(expected[FNR], field)
    same = fields == NF
    for (i = 1; same && i <= NF; i++)
        same = is_same(field[i], $i)
    if (!same && differing++ < 5)
        print "json: " expected[FNR] "\ncsv:  " $0
    seen = FNR
}

END {
    if (seen != rows)
        print rows + 0 " rows of json, " seen + 0 " of csv"
    exit differing > 0 || seen != rows || !rows
}
