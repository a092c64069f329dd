# Reads source files and prints, a line each, what breaks the rules of the house; tests/structure.sh
# says which. Prints "ok RULE" for each rule that nothing breaks, and how many lines src/ has.
# Variables: judge, the one file that writes verdicts; shared, headers of a part's folder in report/
# that other parts may include too.

BEGIN {
    # A folder may include itself and those of a lower number.
    split("base 0 tables 1 output 1 size 2 build 3 yaml 4 compute 4 drawing 5 report 6 reading 7 cli 8 docgen 9", word, " ")
    for (i = 1; i in word; i += 2)
        rank[word[i]] = word[i + 1]
    count = split(shared, word, " ")
    for (i = 1; i <= count; i++)
        is_shared["src/" word[i]] = 1
    FILE_LINES = 500
    FUNCTION_LINES = 60
}

function fail(rule, where, what) {
    print "FAIL " where ": " what
    broken[rule]++
}

function ends_file() {
    if (file != "" && lines > FILE_LINES)
        fail("file length", file, lines " lines, expected at most " FILE_LINES)
    if (file ~ /^src\//)
        lines_of_src += lines
}

FNR == 1 {
    ends_file()
    file = FILENAME
    sub(/^.*\/\.\//, "", file) # given as TOP/./src/...
    sub(/^\.\//, "", file)
    is_c = file ~ /\.[ch]$/
    in_src = is_c && file ~ /^src\//
    in_comment = 0
    statement = ""
    signature = 0
}

{ lines = FNR }

!is_c { next }

# --- functions: from the line of the name to the brace that closes it, both at the line's beginning
/^[A-Za-z_]/ && !/;$/ {
    signature = FNR
    name = $0
    sub(/^START_TEST\(/, "", name)
    sub(/[()].*/, "", name)
    sub(/.*[ *]/, "", name)
}
/^\{/ || /^[A-Za-z_].*\) *\{$/ { body = signature }
/^}/ {
    if (body && FNR - body + 1 > FUNCTION_LINES)
        fail("function length", file, name "() has " FNR - body + 1 " lines, expected at most " \
            FUNCTION_LINES)
    body = 0
}

!in_src { next }

/^#include "/ { included(substr($0, 11, index(substr($0, 11), "\"") - 1)) }

# --- statements, without comments and what is in quotes
{
    text = $0
    gsub(/"([^"\\]|\\.)*"/, "\"\"", text)
    if (in_comment) {
        if (!sub(/^.*\*\//, "", text))
            next
        in_comment = 0
    }
    gsub(/\/\*([^*]|\*+[^*\/])*\*+\//, "", text)
    if (sub(/\/\*.*/, "", text))
        in_comment = 1
    if (statement == "")
        began = FNR
    statement = statement " " text
    if (text ~ /[;{}] *$/ || text ~ /^#/) {
        verdicts(statement)
        searches(statement)
        statement = ""
    }
}

/^[a-z].*[ *]figure_same\(/ && !/;$/ && file ~ /\.c$/ { compares[file] = 1 }

# A folder of src/, "" for main.c and what belongs to no folder.
function folder_of(path) {
    return split(path, piece, "/") > 2 ? piece[2] : ""
}

function part_of(path) {
    return split(path, piece, "/") > 3 && piece[2] == "report" ? piece[3] : ""
}

# x.c, x.h and x_internal.h, which is for the files beside x.c, are one.
function node_of(path) {
    sub(/(_internal)?\.[ch]$/, "", path)
    return path
}

function included(header,    from, to, part) {
    if (header == "config.h")
        return
    if (header !~ /\//)
        header = substr(file, 5, length(file) - 4 - length(last_piece(file))) header
    header = "src/" header
    from = folder_of(file)
    to = folder_of(header)
    part = part_of(header)
    if (node_of(header) != node_of(file) && !((node_of(file), node_of(header)) in edge)) {
        edge[node_of(file), node_of(header)] = 1
        follows[node_of(file), ++out[node_of(file)]] = node_of(header)
        if (!seen[node_of(file)]++)
            node[++nodes] = node_of(file)
    }
    if (from != "" && !(from in rank))
        fail("folders", file, "lies in a folder that the rule does not know")
    else if (!(to in rank))
        fail("folders", file, "includes " header ", of a folder that the rule does not know")
    else if (from != "" && from != to && rank[to] >= rank[from])
        fail("folders", file, "includes " header ": " from "/ is not above " to "/")
    else if (part != "" && from == "report" && part != part_of(file) && part_of(file) != "" &&
        !(header in is_shared))
        fail("parts", file, "includes " header ": another part's folder")
}

function last_piece(path) {
    return piece[split(path, piece, "/")]
}

# Only a copy of a verdict that stands may be written elsewhere.
function verdicts(text,    value) {
    while (match(text, /(\.|->)verdict *=[^=]/)) {
        if (file == judge) {
            judged = 1
            return
        }
        text = substr(text, RSTART + RLENGTH - 1)
        value = text
        sub(/[,;}].*/, "", value)
        if (value !~ /^ *[A-Za-z_][][A-Za-z_0-9.>-]*(\.|->)verdict *$/)
            fail("verdicts", file ":" began, "writes a verdict, which " judge " alone does")
    }
}

# Arguments of the call that the text begins with.
function arguments(text,    at, depth, c) {
    for (at = 1; at <= length(text); at++) {
        c = substr(text, at, 1)
        depth += (c == "(") - (c == ")")
        if (depth == 0)
            break
    }
    return substr(text, 1, at)
}

# Whether a sentence is among the arguments: a span's bytes are none, and go with its length.
function sentence_in(given,    base, field) {
    while (match(given, /[A-Za-z_][][A-Za-z_0-9.>-]*(\.|->)(basis|action|at|line)/)) {
        base = substr(given, RSTART, RLENGTH)
        field = substr(given, RSTART - 1, 1)
        given = substr(given, RSTART + RLENGTH)
        if (given ~ /^[A-Za-z_0-9[(]/ || field == "*")
            continue
        field = base
        sub(/(\.|->)[a-z]*$/, "", base)
        if (index(given, base ".length") == 0 && index(given, base "->length") == 0)
            return field
    }
    return ""
}

function searches(text,    call, given, found) {
    while (match(text, /(str(str|cmp|ncmp|chr|rchr|casecmp|ncasecmp|spn|cspn|pbrk|tok|coll)|memmem|sscanf|same_text|span_is|span_begins|span_contains) *\(/)) {
        call = substr(text, RSTART, RLENGTH)
        sub(/ *\($/, "", call)
        text = substr(text, RSTART + RLENGTH - 1)
        given = arguments(text)
        found = sentence_in(given)
        if (found != "")
            search[++search_count] = file ":" began "\t" call "\t" found
    }
}

# --- at the end: searches, but for the comparison of whole figures in the file that has it; circles
function judge_searches(    i, field, path) {
    for (i = 1; i <= search_count; i++) {
        split(search[i], field, "\t")
        path = field[1]
        sub(/:[0-9]+$/, "", path)
        if (!(path in compares && (field[2] == "same_text" || field[2] == "strcmp")))
            fail("sentences", field[1], field[2] "() on " field[3] ": facts are asked, not sentences")
    }
}

# Depth first; a way back to a node on the stack is a circle.
function visit(at,    i, to, j, circle) {
    state[at] = 1
    stack[++depth_now] = at
    for (i = 1; i <= out[at]; i++) {
        to = follows[at, i]
        if (state[to] == 1) {
            circle = ""
            for (j = depth_now; stack[j] != to; j--)
                circle = stack[j] " -> " circle
            fail("circles", to, "includes lead in a circle: " to " -> " circle to)
        } else if (!state[to])
            visit(to)
    }
    depth_now--
    state[at] = 2
}

END {
    ends_file()
    if (!judged)
        fail("verdicts", judge, "writes no verdict")
    judge_searches()
    for (i = 1; i <= nodes; i++)
        if (!state[node[i]])
            visit(node[i])
    count = split("file length,function length,folders,parts,circles,verdicts,sentences", rule, ",")
    for (i = 1; i <= count; i++)
        if (!broken[rule[i]])
            print "ok " rule[i]
    print "lines of src/: " lines_of_src + 0
}
