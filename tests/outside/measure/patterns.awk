# Lines of checks (fields apart by \037, id second) and then ids in; the ids out in one line, those of
# which all that begin alike are among them as that beginning and *.
NR == FNR {
    all[++count] = $2
    next
}
{ wanted[$1] = 1 }

END {
    for (i = 1; i <= count; i++)
        note_beginnings(all[i], all[i] in wanted)
    for (i = 1; i <= count; i++)
        if (all[i] in wanted) {
            text = shortest(all[i])
            if (!(text in said)) {
                said[text] = 1
                line = line (line == "" ? "" : " ") text
            }
        }
    print line
}

# How many ids begin so, and whether one of them is not wanted: no pattern may stand for it.
function note_beginnings(id, is_wanted,    at) {
    for (at = 2; at < length(id); at++)
        if (substr(id, at, 1) == "-") {
            shared[substr(id, 1, at)]++
            if (!is_wanted)
                spoilt[substr(id, 1, at)] = 1
        }
}

function shortest(id,    at) {
    for (at = 2; at < length(id); at++)
        if (substr(id, at, 1) == "-" && !(substr(id, 1, at) in spoilt))
            return shared[substr(id, 1, at)] > 1 ? substr(id, 1, at) "*" : id
    return id
}
