# Compares expected rows (first file, as put() writes them) with the program's (second file, the
# same ten columns from its json). Rows of one name that stand several times (a figure against two
# published limits) are paired by what agrees. Gives FAIL lines, coverage, and counts.
BEGIN {
    FS = "\t"
    OFS = "\t"
}
function key_of() { return $1 FS $2 FS $3 FS $4 FS $5 FS $6 }
function near(a, b,    scale)
{
    if (a == "null" || b == "null")
        return a == b
    if (a !~ /^-?[0-9]/ || b !~ /^-?[0-9]/)
        return 0
    scale = a < 0 ? -a : a + 0
    scale = scale < 1 ? 1 : scale
    return a - b <= 1e-6 * scale && b - a <= 1e-6 * scale
}
function limit_near(wanted, given,    part, n, i)
{
    if (wanted == "-")
        return 1
    n = split(wanted, part, " ")
    for (i = 1; i <= n; i++)
        if (near(part[i], given))
            return 1
    return 0
}
NR == FNR {
    k = key_of()
    i = ++wanted[k]
    w_value[k, i] = $7
    w_unit[k, i] = $8
    w_limit[k, i] = $9
    w_verdict[k, i] = $10
    next
}
{
    k = key_of()
    numeric = $7 != "null"
    rows += numeric
    judgements += $10 != ""
    if (!(k in wanted)) {
        if (numeric || $10 != "")
            missing[$1 " " $5 ", " (numeric ? "no formula here" : "a finding without a figure")]++
        next
    }
    # the first that agrees in all; else the first that is left
    chosen = 0
    for (i = 1; i <= wanted[k]; i++)
        if (!((k, i) in taken) && near(w_value[k, i], $7) && limit_near(w_limit[k, i], $9) &&
            (w_verdict[k, i] == "-" || w_verdict[k, i] == $10)) {
            chosen = i
            break
        }
    for (i = 1; !chosen && i <= wanted[k]; i++)
        if (!((k, i) in taken))
            chosen = i
    if (!chosen) {
        fault($0, "stands more often than it was computed: program " $7)
        next
    }
    taken[k, chosen] = 1
    covered += numeric
    wrong = ""
    compare(near(w_value[k, chosen], $7), "value", w_value[k, chosen], $7)
    compare(w_unit[k, chosen] == $8, "unit", w_unit[k, chosen], $8)
    compare(limit_near(w_limit[k, chosen], $9), "limit", w_limit[k, chosen], $9)
    compare(w_verdict[k, chosen] == "-" || w_verdict[k, chosen] == $10, "verdict",
        w_verdict[k, chosen], $10)
    limits += w_limit[k, chosen] != "-" && $9 != "null"
    verdicts += w_verdict[k, chosen] != "-" && $10 != ""
    if (wrong == "")
        passed++
    else
        fault($0, wrong)
}
function compare(right, what, ours, theirs)
{
    if (!right)
        wrong = wrong (wrong == "" ? "" : "; ") what " here " (ours == "" ? "none" : ours) \
            ", program " (theirs == "" ? "none" : theirs)
}
function fault(line, what,    part)
{
    failed++
    split(line, part, FS)
    print "FAIL " build ": " part[1] " " part[5] ", option " part[2] ", state " part[3] ", axle " \
        part[4] ", at " part[6] ": " what
}
END {
    for (k in wanted)
        for (i = 1; i <= wanted[k]; i++)
            if (!((k, i) in taken)) {
                split(k, part, FS)
                fault(k, "no such row in the program, here " w_value[k, i])
            }
    # nine tenths of all figures at least, or a new part of the sheet is not computed twice
    if (covered >= 0.9 * rows && rows > 0)
        passed++
    else {
        failed++
        print "FAIL " build ": only " covered + 0 " of " rows + 0 " numeric rows recomputed"
    }
    printf "%s: %d of %d numeric rows recomputed (%.1f %%), %d of %d verdicts, %d limits\n", build, \
        covered, rows, rows ? 100 * covered / rows : 0, verdicts, judgements, limits
    for (name in missing)
        print build ": not recomputed: " name ", " missing[name] " rows" | "sort"
    close("sort")
    print "counted", passed + 0, failed + 0
}
