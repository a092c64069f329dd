# The report of coverage.sh. Fields are apart by \037; `part` says which list is read.
part == "help" {
    if ($0 ~ /^  [a-z]+   *[a-z]/) {
        split($0, word, " ")
        command[++commands] = word[1]
    }
    next
}

part == "rows" {
    split($3, word, " ")
    id[++ids] = $2
    by_command[word[1], $10]++
    by_command[word[1], "all"]++
    by_certainty[$10]++
    next
}

part == "functions" {
    split($0, word, " ")
    header[word[2]] = word[1]
    function_name[++functions] = word[2]
    next
}

part == "unit" {
    listed[$1 ":" $3] = 1
    next
}

part == "gone" {
    wrong("unit.csv: there is no test " $0)
    next
}

part == "formulas" {
    check_formula()
    next
}

part == "sizes" {
    split($0, word, " ")
    size[word[1]] = word[2]
    next
}

part == "tables" {
    check_table()
    next
}

END { exit report() }

function wrong(text) {
    failed++
    print "FAIL " text
}

function check_formula(    i, j, pattern, patterns, test, tests, total, hits, length_of, before) {
    before = failed
    entries++
    if ($1 in entry)
        wrong("formulas.csv: " $1 " stands there twice")
    entry[$1] = 1
    if (!($1 in header))
        wrong("formulas.csv: no header has a function " $1)
    else if (header[$1] != $2)
        wrong("formulas.csv: " $1 " stands in " header[$1] ", not in " $2)
    if ($3 !~ /^(formula|look-up|access)$/)
        wrong("formulas.csv: " $1 ": kind \"" $3 "\"; expected formula, look-up or access")
    patterns = split($4, pattern, " ")
    for (i = 1; i <= patterns; i++) {
        hits = 0
        length_of = length(pattern[i])
        if (substr(pattern[i], length_of) == "*") {
            for (j = 1; j <= ids; j++)
                hits += substr(id[j], 1, length_of - 1) == substr(pattern[i], 1, length_of - 1)
        } else
            for (j = 1; j <= ids; j++)
                hits += id[j] == pattern[i]
        if (!hits)
            wrong("formulas.csv: " $1 ": no check is " pattern[i])
        total += hits
    }
    tests = split($5, test, /; /)
    for (i = 1; i <= tests; i++) {
        hits = test[i]
        sub(/ \([0-9]+\)$/, "", test[i])
        if (!(test[i] in listed))
            wrong("formulas.csv: " $1 ": unit.csv has no test " test[i])
        sub(/.*\(/, "", hits)
        total += hits + 0
    }
    if (total != $6)
        wrong("formulas.csv: " $1 ": " total + 0 " checks, and not " $6)
    kinds[$3]++
    if ($3 != "access" && total < 3) {
        lacking++
        lack[lacking] = sprintf("  %-28s %-28s %d%s", $1, $2, total, $7 == "" ? "" : "  " $7)
    }
    good += failed == before
}

function check_table(    before) {
    before = failed
    tables++
    table_line[tables] = sprintf("  %-24s %5d of %5d rows, %4d checks: %s", $1, $3, $2, $5, $6)
    if (!($1 in size))
        wrong("tables.csv: there is no table " $1)
    else if (size[$1] != $2)
        wrong("tables.csv: " $1 " has " size[$1] " rows, and not " $2)
    delete size[$1]
    good += failed == before
}

function report(    i, name, column, columns) {
    columns = split("published,derived,from memory,common practice,all", column, ",")
    printf "%-16s", "checks"
    for (i = 1; i <= columns; i++)
        printf " %15s", column[i]
    print ""
    for (name = 1; name <= commands; name++) {
        printf "  %-14s", command[name]
        for (i = 1; i <= columns; i++)
            printf " %15d", by_command[command[name], column[i]]
        print ""
    }
    printf "  %-14s", "all"
    for (i = 1; i < columns; i++)
        printf " %15d", by_certainty[column[i]]
    printf " %15d\n\n", ids
    print "tables: rows of which a number stands behind a check's figure"
    for (i = 1; i <= tables; i++)
        print table_line[i]
    for (i = 1; i <= functions; i++)
        if (!(function_name[i] in entry))
            wrong("formulas.csv lacks " function_name[i] " of " header[function_name[i]])
    for (name in size)
        wrong("tables.csv lacks the table " name)
    printf "\nfunctions in the headers: %d formulas, %d look-ups, %d that compute nothing\n", \
        kinds["formula"], kinds["look-up"], kinds["access"]
    printf "lacking (fewer than three checks from outside): %d\n", lacking
    for (i = 1; i <= lacking; i++)
        print lack[i]
    print "count", good + 0, failed + 0, 0
    return failed > 0
}
