#!/bin/sh
# sh tests/structure.sh [TOP]: the rules of the house that no compiler holds, over the sources.
#   folders    a folder of src/ includes itself and those below it: base < tables, output < size <
#              build < yaml, compute < drawing < report < reading < cli < docgen; main.c on top
#   parts      a part's folder in report/ includes no other part's, but for the headers in $shared
#   circles    includes lead nowhere back; x.c, x.h and x_internal.h count as one
#   verdicts   one file alone writes a figure's verdict: $judge
#   sentences  nothing searches or compares basis, action, at or line of a figure; the file that has
#              figure_same() may compare whole ones
#   lengths    500 lines a file, in src/ and tests/; 60 lines a function of C
# A breach is a line "FAIL FILE: WHAT". Before that it is shown, on a made-up tree, that each rule can
# be broken. Last line: "count PASSED FAILED SKIPPED"; exits 1 if anything failed.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/part.sh
. "$here/part.sh"
top=${1:-$(dirname "$here")}
judge=src/report/judge.c
shared=
work_in structure

# look_at TOP: every breach, and "ok RULE" where there is none.
look_at() {
    find "$1/./src" "$1/./tests" -type f ! -name 'tables_data.*' \( -name '*.[ch]' -o -name '*.sh' \
        -o -name '*.awk' -o -name '*.py' -o -name '*.zsh' -o -name '*.case' \) |
        LC_ALL=C sort >"$work/files"
    # Names of files here have no blanks.
    # shellcheck disable=SC2046
    LC_ALL=C awk -v judge="$judge" -v shared="$shared" -f "$here/structure.awk" $(cat "$work/files")
}

# put FILE LINE...: a file of the made-up tree.
put() {
    mkdir -p "$(dirname "$tree/$1")"
    made=$tree/$1
    shift
    printf '%s\n' "$@" >"$made"
}

# A tree that keeps every rule, near to breaking each.
make_tree() {
    tree=$work/tree
    rm -rf "$tree"
    mkdir -p "$tree/tests"
    put src/base/text.h 'bool same_text(const char *a, const char *b);'
    put src/base/text.c '#include "base/text.h"'
    put src/tables/lookup.h '#include "base/text.h"'
    put src/output/number.h '#include "base/text.h"'
    put src/size/size.h '#include "tables/lookup.h"' '#include "output/number.h"'
    put src/size/size_internal.h '#include "size/size.h"'
    put src/size/size.c '#include "size/size_internal.h"'
    put src/build/keys.h '#include "size/size.h"'
    put src/yaml/walk.h '#include "build/keys.h"'
    put src/compute/sums.h '#include "build/keys.h"'
    put src/drawing/drawing.h '#include "compute/sums.h"'
    put src/report/figures.h '#include "drawing/drawing.h"'
    put src/report/judge.c '#include "report/figures.h"' 'void judge(struct figure *figure)' '{' \
        '    figure->verdict = VERDICT_FAIL;' '}'
    put src/report/figures.c '#include "report/figures.h"' \
        'bool figure_same(const struct figure *a, const struct figure *b)' '{' \
        '    return same_text(a->action, b->action);' '}'
    put src/report/load/view.h '#include "report/figures.h"'
    put src/report/load/load.c '#include "report/load/view.h"' 'void f(struct figure *figure)' '{' \
        '    figure->action = "strstr(figure->at) .verdict = 1"; /* figure->verdict = 2; */' \
        '    item->verdict = figure->verdict;' '    if (figure->verdict == VERDICT_FAIL)' \
        '        strncmp(name, word.at, word.length);' '}'
    put src/report/tyre/tyre.c '#include "report/figures.h"'
    put src/reading/page.c '#include "report/load/view.h"' '#include "config.h"'
    put src/cli/cmd.h '#include "yaml/walk.h"' '#include "report/figures.h"'
    put src/docgen/manual.c '#include "cli/cmd.h"'
    put src/main.c '#include "cli/cmd.h"'
    {
        echo 'static int longest(void)'
        echo '{'
        yes '    f();' | head -n 57
        echo '}'
        yes '/* line */' | head -n 440
    } >"$tree/tests/longest.c"
}

# can_fail RULE PATTERN: what was put into the tree breaks that rule, and says so.
can_fail() {
    look_at "$tree" >"$work/seen"
    if grep -q "^FAIL $2" "$work/seen" && ! grep -qx "ok $1" "$work/seen" &&
        [ "$(grep -c '^FAIL' "$work/seen")" -eq 1 ]; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "FAIL tests/structure.sh: cannot tell a breach of the rule about $1 (expected $2):"
        sed 's/^/    /' "$work/seen"
    fi
    make_tree
}

show_that_rules_fail() {
    make_tree
    look_at "$tree" >"$work/seen"
    if [ "$(grep -c '^ok ' "$work/seen")" -eq 7 ] && ! grep -q '^FAIL' "$work/seen"; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "FAIL tests/structure.sh: a tree that keeps every rule is said to break some:"
        sed 's/^/    /' "$work/seen"
    fi
    put src/base/low.c '#include "cli/cmd.h"'
    can_fail folders 'src/base/low.c: includes src/cli/cmd.h'
    put src/tables/side.c '#include "output/number.h"'
    can_fail folders 'src/tables/side.c: includes src/output/number.h'
    put src/compute/side.c '#include "yaml/walk.h"'
    can_fail folders 'src/compute/side.c: includes src/yaml/walk.h'
    put src/reading/high.c '#include "cli/cmd.h"'
    can_fail folders 'src/reading/high.c: includes src/cli/cmd.h'
    put src/text/old.c '#include "base/text.h"'
    can_fail folders 'src/text/old.c: lies in a folder'
    put src/report/tyre/tyre.c '#include "report/load/view.h"'
    can_fail parts 'src/report/tyre/tyre.c: includes src/report/load/view.h'
    put src/build/rules.h '#include "build/keys.h"'
    put src/build/keys.c '#include "keys.h"' '#include "build/rules.h"'
    can_fail circles 'src/build/.*: includes lead in a circle'
    for line in 'figure.verdict = VERDICT_OK;' 'struct figure f = {.verdict = VERDICT_NONE};' \
        'figure->verdict = ok ? figure->verdict : VERDICT_FAIL;'; do
        put src/report/tyre/tyre.c 'void f(void)' '{' "    $line" '}'
        can_fail verdicts 'src/report/tyre/tyre.c:'
    done
    put src/report/judge.c '#include "report/figures.h"'
    can_fail verdicts 'src/report/judge.c: writes no verdict'
    for line in 'return strstr(figure->at, "nominal") != NULL;' 'strncmp(figure.action, "set", 3);' \
        'return same_text(a->state, b->state) && same_text(a->line, b->line);' \
        'same_text(a[i].basis,' 'strcmp("x", list->items[i]->basis);'; do
        put src/reading/words.c 'void f(void)' '{' "    $line" '        other);' '}'
        can_fail sentences 'src/reading/words.c:'
    done
    echo '/* one more */' >>"$tree/tests/longest.c"
    can_fail 'file length' 'tests/longest.c: 501 lines'
    sed '3s/$/\
    f();/; 500d' "$tree/tests/longest.c" >"$work/longer" && cp "$work/longer" "$tree/tests/longest.c"
    can_fail 'function length' 'tests/longest.c: longest() has 61 lines'
}

show_that_rules_fail
look_at "$top" >"$work/seen"
grep -v '^ok ' "$work/seen"
passed=$((passed + $(grep -c '^ok ' "$work/seen")))
failed=$((failed + $(grep -c '^FAIL' "$work/seen")))
give_count
