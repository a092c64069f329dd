# awk -f same_rows.awk JSON_ROWS CSV_ROWS: fields apart by \037, a line a row. The rows are the same:
# a text to the letter, a number to half of the last decimal that csv has, but for what may be no more
# or no less, which csv keeps within.
BEGIN { FS = "\037" }

function is_number(text) {
    return text ~ /^-?[0-9]+(\.[0-9]+)?(e[-+]?[0-9]+)?$/
}

function is_same(row, json, csv,    step, off) {
    if (json "" == csv "")
        return 1
    if (!is_number(json) || !is_number(csv))
        return 0
    step = csv ~ /\./ ? 10 ^ -(length(csv) - index(csv, ".")) : 1
    off = json - csv
    if (row ~ /\037(largest_item|place_to)\037/)
        return off >= -2e-6 * step && off < step
    if (row ~ /\037place_from\037/)
        return off <= 2e-6 * step && off > -step
    return (off < 0 ? -off : off) <= step / 2 * (1 + 1e-6) + 1e-9
}

NR == FNR { expected[FNR] = $0; rows = FNR; next }

{
    fields = split(expected[FNR], field)
    same = fields == NF
    for (i = 1; same && i <= NF; i++)
        same = is_same($0, field[i], $i)
    if (!same && differing++ < 5)
        print "json: " expected[FNR] "\ncsv:  " $0
    seen = FNR
}

END {
    if (seen != rows)
        print rows + 0 " rows of json, " seen + 0 " of csv"
    exit differing > 0 || seen != rows || !rows
}
