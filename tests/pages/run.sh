#!/bin/sh
# sh tests/pages/run.sh TYRESUM: pages and drawings in a browser. In headless Chromium every text has
# its place in its drawing or cell, none overlaps another, none is below 9 pt on paper or 14 px on a
# screen, each has a contrast of 4.5 to 1, in three fonts; sheets have the pages that they are said
# to have, on A4 and on Letter; and figures are those of the csv. Takes some minutes.
set -u
if [ $# -ne 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/pages/run.sh TYRESUM" >&2
    exit 2
fi
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
top=$(dirname "$(dirname "$here")")
binary=$(absolute "$1")
work_in pages
cd "$work" || exit 1
if ! command -v chromium >/dev/null 2>&1 || ! command -v pdftotext >/dev/null 2>&1; then
    echo "FAIL chromium or pdftotext is not on this machine"
    echo "count 0 1 0"
    exit 1
fi

pass() {
    passed=$((passed + 1))
}

fail() {
    failed=$((failed + 1))
    echo "FAIL $*"
}

browser() {
    chromium --headless --no-sandbox --disable-gpu --allow-file-access-from-files \
        --user-data-dir="$work/profile" "$@" 2>/dev/null
}

# --- the builds: the demo's, our own, and one of 1, 2, 5 and 10 options
cp "$top"/demo/*.yaml "$here"/*.yaml . || exit 1
cp -r "$top"/demo/*.csv . 2>/dev/null
for options in 1 2 5; do
    awk -v most=$options '/^    - \{name/ && ++n > most {next} {print}' ten.yaml >"ten_$options.yaml"
done
mv ten.yaml ten_10.yaml

# written FILE COMMAND...: one page or drawing, valid.
written() {
    file=$1
    shift
    if ! "$binary" "$@" >"$file" 2>err; then
        fail "$file: $(head -n 2 err)"
        return
    fi
    case $file in
    *.svg) xmllint --noout "$file" >valid 2>&1 ;;
    *) tidy -q -e "$file" >valid 2>&1 ;;
    esac
    if [ -s valid ]; then fail "$file: $(head -n 3 valid)"; else pass; fi
    pages="$pages $file"
}

pages=
for build in *.yaml; do
    name=${build%.yaml}
    written "$name.sheet.html" sheet "$build" --format html
    written "$name.tasks.html" tasks "$build" --format html
    written "$name.compare.html" compare "$build" --format html
    for part in speedometer gearing load clearance; do
        "$binary" $part "$build" >/dev/null 2>&1 || continue
        written "$name.$part.html" $part "$build" --format html
        [ $part = speedometer ] || written "$name.$part.svg" $part "$build" --format svg
    done
done
for units in us both; do
    written "ten_10.$units.html" sheet ten_10.yaml --units $units --format html
    for part in gearing load clearance; do
        written "ten_2.$part.$units.svg" $part ten_2.yaml --units $units --format svg
    done
done
written shortlist.html shortlist survey_wagon.yaml --format html
written arguments.html compare 205/55R16 205/60R16 --format html

# --- every text's box
measured() { # FONT FILE...: what is wrong, and how many texts there are, into found
    {
        printf '<!DOCTYPE html>\n<html data-font="%s"><meta charset="utf-8"><body>\n' "$1"
        shift
        for file in "$@"; do
            printf '<iframe width="1000" height="800" data-name="%s" src="%s"></iframe>\n' \
                "$file" "$file"
        done
        printf '<script src="%s"></script>\n' "$here/boxes.js"
    } >driver.html
    browser --dump-dom "file://$work/driver.html" |
        sed -n '/<pre id="found">/,$ { s/.*<pre id="found">//; s/<.*//; p; }' | sort -u >found
}

# What is wrong is found.
cat >wrong.svg <<'END'
<svg xmlns="http://www.w3.org/2000/svg" width="200" height="100" viewBox="0 0 200 100">
<text x="5" y="20" font-size="14">one</text><text x="10" y="22" font-size="14">two</text>
<text x="180" y="50" font-size="14">leaves</text><text x="5" y="70" font-size="10">small</text>
<text x="5" y="90" fill="#999" font-size="14">faint</text></svg>
END
cat >wrong.html <<'END'
<!DOCTYPE html><html><body><table style="width:60px;table-layout:fixed"><tr>
<td style="white-space:nowrap">leaves its cell by much</td><td>b</td></tr></table>
<p style="font-size:8px">tiny</p><p style="color:#aaa">pale</p></body></html>
END
for file in wrong.svg wrong.html; do
    measured "DejaVu Sans" "$file"
    for word in overlap leaves least contrast; do
        if grep -q "$word" found; then pass; else fail "$file: \"$word\" was not found"; fi
    done
done

for font in "DejaVu Sans" "Liberation Sans" "Noto Sans"; do
    # shellcheck disable=SC2086 # names without blanks
    measured "$font" $pages
    texts=$(sed -n 's/^texts //p' found)
    if [ "${texts:-0}" -lt 10000 ]; then fail "$font: only ${texts:-0} texts were found"; else pass; fi
    grep -v '^texts \|^$' found | sed 's/&lt;/</g; s/&gt;/>/g; s/&amp;/\&/g' >bad
    if [ -s bad ]; then
        fail "$font: $(wc -l <bad) texts that are not right; the first:"
        head -n "${SHOWN:-12}" bad
    else
        pass
    fi
done

# --- sheets on paper

# paper FILE SIZE CUSTOMER OPTIONS: one that many pages for the customer, then one an option, each of
# which begins with its heading; and what follows.
paper() {
    sed "s/@page {/@page { size: $2;/; s/sans-serif/'DejaVu Sans', sans-serif/" \
        "$1" >paper.html
    browser --no-pdf-header-footer --print-to-pdf="$work/paper.pdf" "file://$work/paper.html"
    pdftotext -layout paper.pdf paper.txt
    awk -v RS='\f' -v customer="$3" -v options="$4" '
        { first = $0; sub(/^[ \n]*/, "", first); sub(/\n.*/, "", first)
          kind = first ~ /For the workshop/ ? "w" : first ~ /What it rests on/ ? "r" : "" }
        NR == 1 && !/For the customer/ { print "page 1 is not the customer'"'"'s"; exit }
        kind == "w" { workshop++; if (NR != customer + workshop) print "page " NR " is for the workshop" }
        kind == "r" && NR != customer + options + 1 { print "the last part begins on page " NR }
        kind == "r" { rests = 1 }
        NR <= customer + options && NR > customer && kind != "w" { print "page " NR " begins with " first }
        NR <= customer && /UN R[0-9]|CFR|ISO [0-9]/ { print "a paragraph for the customer: " $0 }
        END { if (workshop != options || !rests) print workshop + 0 " pages for the workshop, not " options }
    ' paper.txt >wrong
    if [ -s wrong ]; then
        fail "$1 on $2: $(head -n 4 wrong)"
    else
        pass
    fi
}

while read -r name customer options; do
    for size in A4 letter; do
        paper "$name.sheet.html" $size "$customer" "$options"
    done
done <<END
ten_1 1 1
ten_2 1 2
ten_5 1 5
ten_10 2 10
survey_wagon 1 6
commuter_car 1 4
repair_van 1 3
twin 1 2
bare 1 1
odd 1 5
END

# --- figures
for file in $pages; do
    name=${file%%.*}
    case $file in
    odd.* | ten_*.us.* | ten_*.both.* | *compare* | shortlist* | arguments*) continue ;; # other names
    esac
    "$binary" sheet "$name.yaml" --format csv >figures.csv 2>/dev/null
    if awk -f "$top/tests/command/drawing.awk" figures.csv "$file" >said 2>&1; then
        pass
    else
        fail "$file: $(head -n 3 said)"
    fi
done

give_count
