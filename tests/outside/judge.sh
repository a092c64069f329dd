#!/bin/sh
# sh tests/outside/judge.sh WORK: judges what commands have given. WORK holds rows (csv.awk, task
# rows), statuses (a line of a command's number, exit status and first line of complaint, apart by
# \037) and NUMBER.json of each command that ended well. Prints failures and their count.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
work=$1

# An array of objects as csv, with every name that any of them has but the places, which `at` has as
# text, after a line that says which command's it is.
# shellcheck disable=SC2016 # the names are jq's
as_csv='"\u001e" + (input_filename | sub(".*/"; "") | rtrimstr(".json")),
    (map(del(.place)) | ([.[] | keys_unsorted[]] | unique) as $names |
        $names, (.[] | [.[$names[]]]) | @csv)'

# What is no such array ends jq: then it is asked again, file by file, to name those.
: >"$work/csv"
set -- "$work"/*.json
if [ -f "$1" ] && ! jq -r "$as_csv" "$@" >"$work/csv" 2>"$work/err"; then
    : >"$work/csv"
    for output in "$@"; do
        if jq -r "$as_csv" "$output" >"$work/one" 2>"$work/err"; then
            cat "$work/one" >>"$work/csv"
        else
            number=$(basename "$output" .json)
            printf '%s\037json\037%s\n' "$number" "$(head -n 1 "$work/err")" >>"$work/statuses"
        fi
    done
fi

exec awk -v task=judge -f "$here/csv.awk" part=statuses "$work/statuses" part=rows "$work/rows" \
    part=output "$work/csv"
