# Reads the plain subset of YAML that the demo build files are written in: block mappings and lists
# by indentation, flow mappings and lists over any number of lines, plain scalars, comments. Anything
# else (quotes, anchors, tabs) ends it with a message, rather than be read wrongly.
# Gives one line a scalar: PATH <tab> VALUE, list elements counted from 1: tyres/options/2/name
BEGIN { OFS = "\t"; depth = 0; kept = ""; open_brackets = 0 }
/\t/ || /[&*!|>'"`]/ && $0 !~ /^ *#/ && code_of($0) ~ /[&*!|>'"`\t]/ {
    stop("no plain YAML: " $0)
}
{
    line = code_of($0)
    if (line ~ /^ *$/)
        next
    if (open_brackets == 0) {
        kept = line
    } else {
        sub(/^ +/, " ", line)
        kept = kept line
    }
    open_brackets += brackets(line)
    if (open_brackets < 0)
        stop("a bracket too many: " $0)
    if (open_brackets == 0)
        block_line(kept)
}
END {
    if (open_brackets != 0 && !stopped)
        stop("a bracket is missing")
}

function stop(what)
{
    print FILENAME ": " what > "/dev/stderr"
    stopped = 1
    exit 1
}
# The line without its comment: # at the start or after a space.
function code_of(text,    at)
{
    at = match(text, /(^|[ \t])#/)
    if (at)
        text = substr(text, 1, at - 1)
    sub(/ +$/, "", text)
    return text
}
function brackets(text,    copy)
{
    copy = text
    return gsub(/[[{]/, "", copy) - gsub(/[]}]/, "", copy)
}
function trimmed(text)
{
    sub(/^ +/, "", text)
    sub(/ +$/, "", text)
    return text
}
# One line of block style. level[d] is the indentation and name[d] the path of the d-th open level.
function block_line(text,    indent, at, key)
{
    match(text, /^ */)
    indent = RLENGTH
    text = trimmed(text)
    while (text ~ /^- /) {
        close_levels(indent)
        if (depth == 0 || level[depth] < indent || !is_list[depth])
            open_level(indent, pending, 1)
        count[depth]++
        element = name[depth] "/" count[depth]
        text = substr(text, 2)
        match(text, /^ */)
        indent += 1 + RLENGTH
        text = trimmed(text)
        if (text ~ /^[[{]/ || !colon_at(text)) {
            value_at(element, text)
            return
        }
        pending = element
    }
    if (text ~ /^[[{]/) {
        value_at(pending, text)
        return
    }
    at = colon_at(text)
    if (!at)
        stop("no key: " text)
    close_levels(indent)
    if (depth == 0 || level[depth] < indent || is_list[depth])
        open_level(indent, pending, 0)
    key = trimmed(substr(text, 1, at - 1))
    text = trimmed(substr(text, at + 1))
    key = (name[depth] == "" ? "" : name[depth] "/") key
    if (text == "")
        pending = key
    else
        value_at(key, text)
}
function close_levels(indent)
{
    while (depth > 0 && level[depth] > indent)
        depth--
}
function open_level(indent, path, list)
{
    depth++
    level[depth] = indent
    name[depth] = path
    is_list[depth] = list
    count[depth] = 0
    pending = ""
}
# Where the colon after a key stands, outside of brackets; 0 where there is none.
function colon_at(text,    i, c, inside)
{
    inside = 0
    for (i = 1; i <= length(text); i++) {
        c = substr(text, i, 1)
        if (c == "{" || c == "[")
            inside++
        else if (c == "}" || c == "]")
            inside--
        else if (c == ":" && !inside && substr(text, i + 1, 1) ~ /^[ ]?$/)
            return i
    }
    return 0
}
# A value: a scalar, or a flow mapping or list, whose parts are values again.
function value_at(path, text,    c)
{
    text = trimmed(text)
    c = substr(text, 1, 1)
    if (c != "{" && c != "[")
        print path, text
    else
        flow_parts(path, substr(text, 2, length(text) - 2), c == "[")
}
function flow_parts(path, text, list,    i, c, inside, from, n)
{
    inside = 0
    from = 1
    n = 0
    text = text ","
    for (i = 1; i <= length(text); i++) {
        c = substr(text, i, 1)
        if (c == "{" || c == "[")
            inside++
        else if (c == "}" || c == "]")
            inside--
        else if (c == "," && !inside) {
            n++
            flow_part(path, trimmed(substr(text, from, i - from)), list, n)
            from = i + 1
        }
    }
}
function flow_part(path, text, list, n,    at)
{
    if (text == "")
        return
    if (list) {
        value_at(path "/" n, text)
        return
    }
    at = colon_at(text)
    if (!at)
        stop("no key in braces: " text)
    value_at(path "/" trimmed(substr(text, 1, at - 1)), substr(text, at + 1))
}
