#!/bin/sh
# sh tests/office/run.sh TYRESUM: the csv of every command in LibreOffice, in an English and in a
# German locale (decimal comma, from --decimal comma). Every field of a number column must come out
# as a number with the value that is in the file, every other as text. Takes a minute or two.
set -u
if [ $# -ne 1 ] || [ ! -x "$1" ]; then
    echo "usage: sh tests/office/run.sh TYRESUM" >&2
    exit 2
fi
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
demo=$(dirname "$(dirname "$here")")/demo
binary=$(absolute "$1")
work_in office
cd "$work" || exit 1
if ! command -v soffice >/dev/null 2>&1 || ! command -v python3 >/dev/null 2>&1; then
    echo "FAIL LibreOffice (soffice) or python3 is not on this machine"
    echo "count 0 1 0"
    exit 1
fi

# name and arguments of each csv
while read -r name arguments; do
    eval "\"$binary\" $arguments --format csv" >"$name.en.csv" 2>err || { cat err; }
    eval "\"$binary\" $arguments --format csv --decimal comma --bom" >"$name.de.csv" 2>err || cat err
    eval "\"$binary\" $arguments --format json" >"$name.json" 2>err || cat err
done <<END
size size '205/55R16 91V' 'LT245/75R16 120/116R' '31x10.50R15LT 109R' --units both
compare compare "$demo/survey_wagon.yaml" --units both
speedometer speedometer "$demo/survey_wagon.yaml"
gearing gearing "$demo/survey_wagon.yaml"
load load "$demo/survey_wagon.yaml" --units both
clearance clearance "$demo/survey_wagon.yaml"
sheet sheet "$demo/repair_van.yaml" --units us
shortlist shortlist "$demo/survey_wagon.yaml" --best 5
check check "$demo/survey_wagon.yaml"
tables tables
END

# Filter options: separator, text mark, character set (76: UTF-8), first line, columns, language
# (1033 English, 1031 German), quoted fields are text (false), special numbers are read (false:
# dates and the like stay text). This is what a double click does in that locale.
convert() { # SEPARATOR LANGUAGE FILE...
    options="$1,34,76,1,,$2,false,false"
    shift 2
    soffice -env:UserInstallation="file://$work/profile" --headless --norestore \
        --infilter="Text - txt - csv (StarCalc):$options" --convert-to fods --outdir fods "$@" \
        >office.log 2>&1 </dev/null || cat office.log
}
convert 44 1033 ./*.en.csv
convert 59 1031 ./*.de.csv

python3 "$here/cells.py" . fods
