# The work of sources.sh: fields apart by \037; `part` says which list is read.
#   rows    checks: number, id, command, pick, expected, tolerance, unit, source, edition, certainty
#   unit    unit.csv
#   tables  rows of the tables: name, certainty, source; without a certainty the table's line, which
#           says where it stands as a whole
# What a source must say by its certainty, the words for which are given in `words`, surest first:
#   published        the document and the place in it
#   derived          the same of what it follows from; or the law or definition, and that it was done
#                    by hand
#   common practice, from memory    these words are the mark
# Words that name no publication are refused wherever something is said to be published or derived.

BEGIN {
    count = split(words, word, ",")
    for (i = 1; i <= count; i++)
        rank[word[i]] = i
    place = "(UN R|VSI )[0-9]+,? [0-9S]|CFR [0-9]+\\.[0-9]|S[0-9]+\\.[0-9]|, [0-9]+(\\.[0-9]+)+|" \
        "(^|[ (,])([Aa]nnexe?|[Aa]ppendix|[Aa]rticle|section|chapter|ch\\.|pp?\\.|[Tt]able|fig\\.|eq\\." \
        "|para|reg\\.|row|rows|dataset|FAQ|sheets?) |'[^']+'|, Specifications|Sizes and Specifications" \
        "|[0-9]\\([0-9]+\\), [0-9]|Tragfaehigkeitskennzahl"
    law = "definition of|equilibrium of a rigid body|[Bb]oyle|Hooke's law|geometry of|Pythagoras|a letter"
    nobody = "club article|anonymous|course notes|service note|technical note|technical article" \
        "|magazine article|glossary|secondary|trade sources|state lists|as quoted$|tyre tables" \
        "|published German|gear article|tyre makers'|a tyre maker's|data sheet of the size"
}

# Publications that have another spelling here.
BEGIN {
    spelt = "Reimpell,|Reimpell et al\\., The Automotive Chassis, quoting|transposing Directive 92/23" \
        "|Tire and Rim Association Year|ECE R[0-9]|FMVSS|VSB14|trade journal|Standards Manual, design$"
}

part == "rows" { look("check " $2, $8, $10, "checks"); next }
part == "unit" { look("unit.csv " $3, $4, $5, "unit tests"); next }
part == "tables" {
    if ($2 == "") {
        whole[$1] = $3
        next
    }
    # Of a row that names no place itself, the table's own line does.
    look("table " $1, $3 == "" || !(whole[$1] ~ /named row by row/) ? whole[$1] : $3, $2, "table rows")
    safe = index(" " safety " ", " " $1 " ") > 0
    if (safe)
        counted["table rows that decide safety", $2]++
    next
}

END { exit report() }

function look(what, source, certainty, of,    wrong) {
    counted[of, certainty]++
    if (!(certainty in rank))
        wrong = "certainty \"" certainty "\" is none of " words
    else if (source == "")
        wrong = "names no source"
    else if (source ~ spelt)
        wrong = "spells a publication otherwise than the other sources do: " source
    else if (rank[certainty] <= 2) {
        if (source ~ nobody)
            wrong = "is " certainty " and names no publication: " source
        else if (source !~ place && !(certainty == word[2] && source ~ law))
            wrong = "is " certainty " and names no place in a document: " source
    }
    if (wrong == "") {
        passed++
        return
    }
    failed++
    if (!((what, wrong) in told))
        print "FAIL " what ": " wrong
    told[what, wrong] = 1
}

function report(    i, j, of, kinds, total) {
    kinds = split("checks,unit tests,table rows,table rows that decide safety", of, ",")
    for (i = 1; i <= kinds; i++) {
        total = 0
        for (j = 1; j <= count; j++)
            total += counted[of[i], word[j]]
        printf "%-30s %5d:", of[i], total
        for (j = 1; j <= count && total > 0; j++)
            printf " %5.1f %% %s%s", 100 * counted[of[i], word[j]] / total, word[j], j < count ? "," : ""
        print ""
    }
    print "count", passed + 0, failed + 0, 0
    return failed > 0
}
