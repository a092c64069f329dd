# awk -v seed=N -v each=K -f mutants.awk FILE.c...: K deliberate faults in each function of the files,
# and in the constants between functions. One line each, apart by tabs:
#   file  line  column  text-to-replace  replacement  function
# Relies on the project's own format: a function's name stands at the left edge, its body ends with
# '}' there, and binary operators have a blank on both sides. Loop headings are left alone: a fault
# there mostly never ends, which proves nothing about a formula. So are tests for what was not given
# (isnan, NULL, counts), which are no arithmetic; their faults are found by other tests. Nor is a fraction
# in a drawing moved: one percent of it is a tenth of a pixel.

function hash(text,    i, value) {
    value = seed + 7
    for (i = 1; i <= length(text); i++)
        value = (value * 31 + index(CHARACTERS, substr(text, i, 1))) % 1000003
    return value
}

# Comments and literals give no candidates: blanks in their place keep the columns.
function code_of(line,    out, i, c, quote) {
    out = ""
    for (i = 1; i <= length(line); i++) {
        c = substr(line, i, 1)
        if (in_comment) {
            if (substr(line, i, 2) == "*/") { in_comment = 0; i++; out = out " " }
            out = out " "
        } else if (quote != "") {
            if (c == "\\") { i++; out = out " " }
            else if (c == quote) quote = ""
            out = out " "
        } else if (substr(line, i, 2) == "/*") {
            in_comment = 1; i++; out = out "  "
        } else if (c == "\"" || c == "'") {
            quote = c; out = out " "
        } else
            out = out c
    }
    return out
}

function candidate(column, old, new) {
    n++
    at_line[n] = FNR; at_column[n] = column; was[n] = old; becomes[n] = new
}

function operators(code,    i, token, from) {
    for (i = 1; i <= operator_count; i++) {
        token = operator_old[i]
        from = 1
        while ((p = index(substr(code, from), token)) > 0) {
            if (substr(code, from + p - 1 + length(token)) !~ /^[0-9.]+e-/) # no slack for rounding
                candidate(from + p - 1, token, operator_new[i])
            from += p + length(token) - 1
        }
    }
}

# 0.96 becomes 0.9696, and 2 becomes 3; 0 and 1 are mostly counts and starts.
function numbers(code,    from, text, before, after) {
    from = 1
    while (match(substr(code, from), /[0-9]+(\.[0-9]+)?/)) {
        text = substr(code, from + RSTART - 1, RLENGTH)
        before = from + RSTART > 2 ? substr(code, from + RSTART - 2, 1) : " "
        after = substr(code, from + RSTART - 1 + RLENGTH, 1)
        if (substr(code, 1, from + RSTART - 2) ~ /[0-9]e-?$/) after = "e" # an exponent of a slack
        if (before !~ /[A-Za-z0-9_.\[]/ && after !~ /[A-Za-z0-9_.\]]/) {
            if (text !~ /\./) {
                if (text + 0 > 1) candidate(from + RSTART - 1, text, text + 1)
            } else if (text + 0 != 0 && file !~ /(drawing|picture)/)
                candidate(from + RSTART - 1, text, sprintf("%.9g", text * 1.01))
        }
        from += RSTART + RLENGTH - 1
    }
}

function choose(    i, k, left, best, order, taken) {
    for (k = 1; k <= each && k <= n; k++) {
        best = 0
        for (i = 1; i <= n; i++) {
            order = hash(file ":" name ":" at_line[i] - first ":" at_column[i] ":" becomes[i])
            if (!(i in taken) && (!best || order < left)) { best = i; left = order }
        }
        taken[best] = 1
        printf "%s\t%d\t%d\t%s\t%s\t%s\n", file, at_line[best], at_column[best], was[best], \
            becomes[best], name
    }
    n = 0
}

BEGIN {
    for (i = 32; i < 127; i++) CHARACTERS = CHARACTERS sprintf("%c", i)
    operator_count = split(" * | / | + | - | < | > | <= | >= | += | -= |fmin(|fmax(|sin(|cos(|sqrt(|hypot(", operator_old, "|")
    split(" / | * | - | + | >= | <= | > | < | -= | += |fmax(|fmin(|cos(|sin(|fabs(|fmax(", operator_new, "|")
    each = each ? each : 1
}

FNR == 1 { if (n) choose(); file = FILENAME; name = "constants"; first = 0; inside = 0; in_comment = 0; n = 0 }
{ code = code_of($0) }
/^[a-z].*\(/ && !/;[ \t]*$/ && !inside && !/^(struct|enum|union|static const|typedef)[^(]*$/ {
    text = code
    sub(/\(.*/, "", text)
    if (text !~ /=/) { if (n) choose(); name = text; sub(/^.*[ *]/, "", name); first = FNR }
}
/^{/ { inside = 1 }
/^}/ { inside = 0; choose(); name = "constants"; first = FNR }
code !~ /^#/ && code !~ /(for|while) \(/ && code !~ /NULL|isnan|is_known|sizeof|count|\[[a-z]/ {
    if (inside || code ~ /=/) { operators(code); numbers(code) }
}
END { if (n) choose() }
