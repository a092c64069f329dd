# Takes the records of .case files apart: one folder under work/records for each, one file in it
# for each part. run.sh describes the format. Any line that is not understood ends it.

function fault(text) {
    printf "%s:%d: %s\n", FILENAME, FNR, text > "/dev/stderr"
    broken = 1
    exit 1
}

function put(name, text) {
    print text >> (folder "/" name)
    close(folder "/" name)
}

function touch(name) {
    printf "" > (folder "/" name)
    close(folder "/" name)
}

function folder_of(record) {
    return sprintf("%s/records/%04d", work, record)
}

# All folders by one command: one for each record takes longer than what is done in most of them.
BEGIN {
    make = "xargs mkdir -p"
    for (i = 1; i < ARGC; i++)
        while ((getline line < ARGV[i]) > 0)
            if (line ~ /^case: /)
                printf "\"%s/files\"\n", folder_of(++folders) | make
    close(make)
}

function end_record() {
    if (folder != "" && (!has["run"] || !has["exit"]))
        fault("the record before this line lacks its run: or its exit:")
}

function begin_record(name) {
    end_record()
    folder = folder_of(++records)
    touch("setup"); touch("stdin"); touch("checks")
    split("", has)
    put("name", FILENAME ":" FNR ": " name)
}

# The text behind "KEY:" with the blanks between.
function after(key) {
    text = substr($0, length(key) + 2)
    sub(/^[ \t]+/, "", text)
    return text
}

FNR == 1 && block != "" { fault("the block before this file has no end line") }

block != "" {
    if ($0 == end_word)
        block = ""
    else
        put(block, $0)
    next
}

/^[ \t]*(#|$)/ { next }
/^case: / { begin_record(after("case")); next }
folder == "" { fault("case: expected first") }
/^(run|exit|golden|needs): / {
    key = $1
    sub(/:$/, "", key)
    if (has[key]++)
        fault(key ": given twice")
    put(key, after(key))
    next
}
/^setup: / { put("setup", after("setup")); next }
/^file [A-Za-z0-9_.-]+ <<[A-Z]+$/ {
    end_word = substr($3, 3)
    block = "files/" $2
    touch(block)
    next
}
/^(stdin|stdout|stderr) <<[A-Z]+$/ {
    end_word = substr($2, 3)
    block = $1
    touch(block)
    next
}
/^(stdout|stderr) empty$/ { put("checks", $0); next }
/^(stdout|stderr) (contains|lacks|line|matches|lines): ./ {
    sub(/: */, " ")
    put("checks", $0)
    next
}
{ fault("not understood: " $0) }

END {
    if (!broken && block != "")
        fault("the last block has no end line")
    if (!broken)
        end_record()
    if (!broken && records == 0) {
        print "no records" > "/dev/stderr"
        exit 1
    }
}
