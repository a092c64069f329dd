# Compares the counts in each option's heading with what stands below it, on a sheet or a part for
# the terminal. What stands under "whichever tyre" is counted with each; what is unknown of the build
# is so with a no go, and among the tasks of the others.
function close_block(    kind, told) {
    if (heading == "" || pass == 1)
        return
    for (kind in said) {
        told = seen[kind] + shared[kind]
        if (said[kind] != told + of_build[kind] && (kind != "unknown" || said[kind] != told)) {
            print heading ": says " said[kind] " " kind ", tells " told + of_build[kind]
            wrong = 1
        }
    }
    for (kind in seen)
        if (seen[kind] > 0 && !(kind in said)) {
            print heading ": tells of " kind " that it does not count"
            wrong = 1
        }
    heading = ""
}
function open_block(text,    parts, i, count, words) {
    for (i in said)
        delete said[i]
    for (i in seen)
        delete seen[i]
    heading = text
    count = split(text, parts, /, |: |; in this part |; /)
    for (i = 1; i <= count; i++)
        if (parts[i] ~ /^[0-9]+ (fail|unknown|tasks?|cautions?)$/) {
            split(parts[i], words, " ")
            sub(/s$/, "", words[2])
            said[words[2]] = words[1]
        }
    blocks++
}
# Twice over the same file: first for what is shared.
FNR == 1 { pass++; heading = ""; in_shared = 0 }
/^$/ {
    if (gathered ~ /: (go|go after work|open|no go);( in this part)? /)
        open_block(gathered)
    gathered = ""
    close_block()
    in_shared = in_build = 0
}
/^whichever tyre/ { in_shared = 1 }
/^the build, whichever tyre/ { in_build = 1 }
# What is unknown for want of the same stands in one: "unknown  3 figures: ...".
{ told_here = $3 == "figures:" ? $2 : 1 }
pass == 1 && in_shared && /^  (fail|unknown|caution) / { shared[$1] += told_here }
pass == 1 && in_build && /^  (fail|unknown|caution) / { of_build[$1] += told_here }
pass == 1 { next }
gathered != "" && /^   [^ ]/ && !/^ +[0-9]+ [a-z]+ / { sub(/^ */, ""); gathered = gathered " " $0; next }
gathered != "" {
    if (gathered ~ /^([A-Z]+|fitted) .*: (go|go after work|open|no go);( in this part)? /)
        open_block(gathered)
    gathered = ""
}
/^([A-Z]+|fitted) / { gathered = $0; next }
heading != "" && /^ +[0-9]+ (measure|order|unload|alter|set|label|tell) / { seen["task"]++ }
heading != "" && /^  (fail|unknown|caution) / && !/what the build has/ { seen[$1] += told_here }
END { close_block(); print blocks " headings"; exit wrong }
