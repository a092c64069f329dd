# A source file of the program in, the same out with every public function in two: as written, under
# another name, and one of its own name that calls it and may spoil what it gives (spoil.h).
#   -v functions="NAME NAME..."
BEGIN {
    count = split(functions, name, " ")
    for (i = 1; i <= count; i++)
        public[name[i]] = 1
    print "#include \"spoil.h\""
}

# A definition begins in the first column; its brace stands on a line of its own.
!head && /^[a-z].*\(/ && !/^(static|typedef|#|return)/ && !/;[ \t]*$/ {
    head = $0
    next
}

head && !/^\{/ {
    head = head " " $0
    next
}

head && /^\{/ {
    define(head)
    head = ""
}

{ print }

END {
    for (i = 1; i <= wrappers; i++)
        printf "%s", wrapper[i]
}

function define(head,    before, called, parameters) {
    before = head
    sub(/\(.*/, "", before)
    called = before
    sub(/.*[ *]/, "", called)
    if (!(called in public)) {
        print head
        return
    }
    before = substr(before, 1, length(before) - length(called))
    parameters = substr(head, length(before called) + 1)
    print before called "_as_written" parameters
    wrapper[++wrappers] = wrap(before, called, parameters)
}

# The type of what is given back, the name, and the parameters with their brackets.
function wrap(type, called, parameters,    list, count, i, each, arguments, before, after, spoilt, text) {
    gsub(/[ \t]+/, " ", parameters)
    list = substr(parameters, 2, length(parameters) - 2)
    count = list == "void" ? 0 : split(list, each, / *, */)
    for (i = 1; i <= count; i++) {
        text = each[i]
        size = ""
        if (text ~ /\[.*\]$/) {
            size = text
            sub(/.*\[/, "", size)
            sub(/\]$/, "", size)
            sub(/\[.*/, "", text)
        }
        argument = text
        sub(/.*[ *]/, "", argument)
        # A row that was given by another look-up may be a spoilt copy.
        arguments = arguments (i > 1 ? ", " : "") \
            (text ~ /_row \*after$/ ? "spoil_original(after)" : argument)
        if (size != "" && text ~ /^double/)
            spoilt = spoilt "        spoil_memory(" argument ", sizeof(double) * " size ");\n"
        else if (text ~ /^double \*/ || (type ~ /^void/ && text ~ /^struct [a-z_]+ \*[a-z_]*out$/))
            spoilt = spoilt "        spoil_memory(" argument ", sizeof *" argument ");\n"
        else if (type ~ /^void/ && text ~ /^struct [a-z_]+ \*/) {
            # Added to, not filled: only what it changed is its own.
            sub(/ \*.*/, "", text)
            before = before "    " text " before = *" argument ";\n"
            spoilt = spoilt "        spoil_changed(" argument ", &before, sizeof before);\n"
        }
    }
    text = "\n" type called parameters "\n{\n" before
    if (type ~ /^void/)
        return text "    " called "_as_written(" arguments ");\n    if (spoil_chosen(\"" called \
            "\")) {\n" spoilt "    }\n}\n"
    text = text "    " type "result = " called "_as_written(" arguments ");\n    if (spoil_chosen(\"" \
        called "\")) {\n"
    if (spoilt != "")
        text = text spoilt
    else if (type ~ /^double/)
        text = text "        result = spoil_double(result);\n"
    else if (type ~ /^bool/)
        text = text "        result = !result;\n"
    else if (type ~ /^const char \*/)
        text = text "        result = \"spoilt\";\n"
    else if (type ~ /^const struct [a-z_]+_row \*/)
        text = text "        result = spoil_row(result);\n"
    else if (type ~ /^const struct/)
        text = text "        (void)result;\n"
    else if (type ~ /^struct/)
        text = text "        spoil_memory(&result, sizeof result);\n"
    else
        text = text "        result = spoil_integer(result);\n"
    return text "    }\n    return result;\n}\n"
}
