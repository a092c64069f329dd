# The public functions of headers, a line "FILE NAME" each: prototypes begin in the first column.
{
    line = $0
    # Comments go first: they hold words with brackets too.
    while (1) {
        if (in_comment) {
            at = index(line, "*/")
            if (!at) {
                line = ""
                break
            }
            line = substr(line, at + 2)
            in_comment = 0
        }
        at = index(line, "/*")
        if (!at)
            break
        before = before substr(line, 1, at - 1)
        line = substr(line, at + 2)
        in_comment = 1
    }
    line = before line
    before = ""
}

line ~ /^[a-z][a-z0-9_ *]*[ *][A-Za-z_][A-Za-z0-9_]*\(/ && line !~ /^(typedef|static|extern) / {
    sub(/\(.*/, "", line)
    sub(/.*[ *]/, "", line)
    file = FILENAME
    sub(/.*\/src\//, "", file)
    print file, line
}
