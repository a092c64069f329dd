# Counts the words of every sentence of pages of HTML, and names those that are too long. A number
# with its unit is one word. What stands apart in brackets at the end of a text (the basis, the key of
# the build file) is not counted, nor are the standing cautions, the list of what rests on memory and
# the titles of drawn figures, which are rows of csv.
BEGIN {
    most = 14
    RS = "<"
    unit = "^(mm|m|km|in|mi|kg|lb|kPa|psi|bar|km/h|mph|rpm|%|deg|N/mm|lb/in|N|lbf|Nm|lb-ft|L|gal|min|/km|/mile|m/km|ft/mile|mpg)[,:;)]*$"
}
function end_bracket_off(text,    i, depth, c) {
    if (text !~ /\)$/)
        return text
    for (i = length(text); i > 0; i--) {
        c = substr(text, i, 1)
        depth += c == ")" ? 1 : c == "(" ? -1 : 0
        if (depth == 0)
            return end_bracket_off(i > 1 && substr(text, i - 1, 1) == " " ? substr(text, 1, i - 2) : "")
    }
    return text
}
function count(sentence,    words, n, i, found) {
    n = split(sentence, words, " ")
    for (i = 1; i <= n; i++)
        if (words[i] ~ /[A-Za-z0-9]/ && !(i > 1 && words[i] ~ unit && words[i - 1] ~ /[0-9]$/))
            found++
    return found
}
function is_exempt(text) {
    return text ~ /^For planning only\./ || text ~ /^These rest on figures/ || text ~ /^Planning only:/
}
function judge(text,    sentences, n, i) {
    gsub(/&quot;/, "\"", text)
    gsub(/&lt;/, "<", text)
    gsub(/&gt;/, ">", text)
    gsub(/&#39;/, "'", text)
    gsub(/&amp;/, "\\&", text)
    gsub(/[ \n]+/, " ", text)
    sub(/^ /, "", text)
    sub(/ $/, "", text)
    if (text !~ /[A-Za-z]/ || is_exempt(text))
        return
    n = split(end_bracket_off(text), sentences, /[.;?!] |[.;?!]$/)
    for (i = 1; i <= n; i++)
        if (sentences[i] != "" && ++seen && count(end_bracket_off(sentences[i])) > most && !told[sentences[i]]++) {
            print count(sentences[i]) " words: " sentences[i]
            wrong = 1
        }
}
{
    tag = tolower($0)
    sub(/[ \/>].*/, "", tag)
    closing = $0 ~ /^\//
    if (closing) {
        tag = tolower(substr($0, 2))
        sub(/>.*/, "", tag)
    }
    rest = index($0, ">") > 0 ? substr($0, index($0, ">") + 1) : ""
    if (tag == "i" || tag == "em" || tag == "a") {
        gathered = gathered rest
        next
    }
    if (!skip)
        judge(gathered)
    skip = tag == "style" || (tag == "title" && !closing) || (tag == "desc" && !closing)
    gathered = rest
}
END { if (!skip) judge(gathered); print seen + 0 " sentences"; exit wrong }
