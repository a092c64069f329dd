#!/bin/sh
# sh tests/analysis/run.sh BUILD: gcc -fanalyzer, clang-tidy and cppcheck over the sources.
# BUILD is a folder in which the program is built: the tables compiled in are read from there.
# What is allowed, with its reason, stands in analyzer.allowed, cppcheck.suppressions and, for
# clang-tidy, .clang-tidy at the top of the checkout and NOLINT comments beside the code.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
top=$(CDPATH='' cd -- "$here/../.." && pwd) || exit 1
build=$(CDPATH='' cd -- "$1" && pwd) || exit 1
work_in analysis
cd "$top" || exit 1
processors=$(getconf _NPROCESSORS_ONLN 2>/dev/null || echo 2)
flags="-std=c11 -D_XOPEN_SOURCE=700 -Isrc -I$build -I$build/src $(pkg-config --cflags yaml-0.1) -DSCHEMA_DIRECTORY=__FILE__"

# verdict TOOL FILE: the tool is content where its report is empty.
verdict() {
    if [ -s "$2" ]; then
        failed=$((failed + 1))
        echo "FAIL $1: $(wc -l <"$2") lines of complaint"
        head -n 60 "$2"
    else
        passed=$((passed + 1))
    fi
}

sources() {
    find src -name '*.c'
}

# Each file by itself, as many at a time as there are processors. $1 is the command for some files.
in_parallel() {
    sources | xargs -P "$processors" -n 4 sh -c "$1" sh
}

analyzer() {
    in_parallel "for file do gcc -O2 -fanalyzer $flags -c -o /dev/null \"\$file\" 2>&1; done" >"$work/analyzer.all"
    # A finding is one line "file:line:column: warning: words [-Wanalyzer-name]"; the rest is its path.
    awk 'NR == FNR { if ($1 !~ /^#/ && NF > 2) allowed[$1 " " $2] = 1; next }
         / (warning|error): / {
             file = $1
             sub(/:.*/, "", file)
             name = $NF
             gsub(/[][]/, "", name)
             if (!((file " " name) in allowed)) print
             else used[file " " name] = 1
         }
         END { for (a in allowed) if (!(a in used)) print "allowed, but not found: " a }' \
        "$here/analyzer.allowed" "$work/analyzer.all" >"$work/analyzer"
    verdict "gcc -fanalyzer" "$work/analyzer"
}

# Without tablegen, which runs while building and keeps what it read until it ends: half of
# clang-tidy's words would be about that.
tidy_up() {
    in_parallel "for file do
        case \$file in */tablegen*.c) continue ;; esac
        clang-tidy --quiet \"\$file\" -- $flags 2>/dev/null
    done" >"$work/tidy"
    verdict clang-tidy "$work/tidy"
}

# shellcheck disable=SC2086 # flags are words
check_c() {
    cppcheck -j "$processors" -q --enable=warning,style,performance,portability \
        --std=c11 -D_XOPEN_SOURCE=700 -Isrc "-I$build/src" --inline-suppr \
        --suppressions-list="$work/suppressions" src tests/unit tests/bench \
        >"$work/cppcheck" 2>&1 || echo "cppcheck ended with $?" >>"$work/cppcheck"
    verdict cppcheck "$work/cppcheck"
}

# It takes no blank line nor comment in the middle of its list in every version.
grep -v '^#' "$here/cppcheck.suppressions" >"$work/suppressions"

if gcc -fanalyzer -x c -c -o /dev/null /dev/null 2>/dev/null; then
    analyzer
else
    skipped=$((skipped + 1))
fi
tidy_up
check_c
give_count
