# awk -v first=N -f schemata.awk FAULTS FILE.c: the file with all of its faults in it, of which
# `is_planted` chooses one. FAULTS are lines of mutants.awk, numbered from N; those of other files and
# of constants between functions are passed over. A function with faults stands once more for each,
# under a name of its own, and begins with the choice.
# Relies on the project's own format, as mutants.awk does.

function header_of(    i, text) {
    text = ""
    for (i = 1; i <= count && line[i] != "{"; i++)
        text = text line[i] "\n"
    return text
}

# The names of the parameters, as a call has them.
function arguments_of(header,    inside, n, i, part, names) {
    inside = header
    sub(/^[^(]*\(/, "", inside)
    sub(/\)[ \n]*$/, "", inside)
    if (inside ~ /^ *void *$/) return ""
    while (match(inside, /\(\*[a-z_0-9]+\)\([^)]*\)/)) { # a function's pointer
        name = substr(inside, RSTART + 2)
        sub(/\).*/, "", name)
        inside = substr(inside, 1, RSTART - 1) name substr(inside, RSTART + RLENGTH)
    }
    n = split(inside, part, ",")
    for (i = 1; i <= n; i++) {
        sub(/\[[^]]*\][ \n]*$/, "", part[i])
        match(part[i], /[A-Za-z_0-9]+[ \n]*$/)
        names = names (i > 1 ? ", " : "") substr(part[i], RSTART, RLENGTH)
    }
    gsub(/[ \n]/, " ", names)
    return names
}

function put_function(    i, k, header, arguments, name, is_void, choices) {
    header = header_of()
    arguments = arguments_of(header)
    is_void = header ~ /^(static )?(inline )?void [a-z]/
    printf "%s;\n", header # one that calls itself
    for (k = 1; k <= faults; k++) {
        if (at[k] < begins || at[k] >= begins + count) continue
        name = name_of[k]
        text = header
        sub(/^static /, "", text)
        sub(/^inline /, "", text)
        sub("[^A-Za-z0-9_]" name "\\(", "&\001", text)
        sub(name "\\(\001", name "_fault_" number[k] "(", text)
        printf "static %s", text
        for (i = 1; i <= count && line[i] != "{"; i++) ;
        for (; i <= count; i++)
            print begins + i - 1 == at[k] ? planted(line[i], k) : line[i]
        choices = choices "    if (is_planted(" number[k] "))\n        " \
            (is_void ? "{ " : "return ") name "_fault_" number[k] "(" arguments ");" \
            (is_void ? " return; }" : "") "\n"
    }
    for (i = 1; i <= count; i++) {
        print line[i]
        if (line[i] == "{") printf "%s", choices
    }
    count = 0
}

function planted(text, k) {
    return substr(text, 1, column[k] - 1) becomes[k] substr(text, column[k] + length(was[k]))
}

FNR == NR {
    split($0, field, "\t")
    if (field[1] == file && field[6] != "constants") {
        faults++
        at[faults] = field[2]; column[faults] = field[3]; was[faults] = field[4]
        becomes[faults] = field[5]; name_of[faults] = field[6]; number[faults] = FNR
    }
    next
}

FNR == 1 { print "int is_planted(int number);" }
# What stands at the left edge may be a function's header, of several lines.
!inside && /^[a-z].*\(/ && !/;[ \t]*$/ { begins = FNR; count = 0; collecting = 1 }
collecting { line[++count] = $0; if ($0 == "{") inside = 1 }
collecting && !inside && /[;=]$/ { for (i = 1; i <= count; i++) print line[i]; collecting = 0; next }
collecting && /^}/ {
    if (inside) put_function(); else for (i = 1; i <= count; i++) print line[i]
    collecting = inside = 0
    next
}
!collecting { print }
