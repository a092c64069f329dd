# Rows of formulas.csv: kind and note as they were, the rest as measured.
function quoted(text) {
    if (text !~ /[",]/)
        return text
    gsub(/"/, "\"\"", text)
    return "\"" text "\""
}

part == "" {
    kind[$1] = $3
    note[$1] = $7
    next
}

part == "rows" {
    id[++ids] = $2
    next
}

{
    total = 0
    patterns = split($3, pattern, " ")
    for (i = 1; i <= patterns; i++) {
        size = length(pattern[i])
        if (substr(pattern[i], size) != "*")
            total++
        else
            for (j = 1; j <= ids; j++)
                total += substr(id[j], 1, size - 1) == substr(pattern[i], 1, size - 1)
    }
    tests = split($4, test, /; /)
    for (i = 1; i <= tests; i++) {
        sub(/.*\(/, "", test[i])
        total += test[i] + 0
    }
    print $1 "," $2 "," (kind[$1] == "" ? "formula" : kind[$1]) "," quoted($3) "," quoted($4) "," \
        total "," quoted(note[$1])
}
