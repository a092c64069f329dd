#!/bin/sh
# sh tests/newcomer.sh [--long]: how demo/run.sh and tests/run.sh begin on a machine that is not
# ready for them: one sentence says what is wrong and what to do, and no tool speaks; two starts wait
# for each other. With --long, real builds from such places.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/part.sh
. "$here/part.sh"
top=$(dirname "$here")
work_in newcomer
cd "$work" || exit 1
chmod 755 .
unset TYRESUM_BUILD

# starts FOLDER: a checkout there, as far as the beginning needs it.
starts() {
    mkdir -p "$1/demo" "$1/tests" && cp "$top/demo/run.sh" "$1/demo" &&
        cp "$top/tests/run.sh" "$top/tests/prepare.sh" "$1/tests"
}

# as_user COMMAND...: not as root, whom every folder lets write; skipped where nobody else can be had.
user=
if [ "$(id -u)" -ne 0 ]; then
    user=self
elif setpriv --reuid=65534 --regid=65534 --clear-groups true 2>/dev/null; then
    user=nobody
fi
as_user() {
    if [ "$user" = nobody ]; then
        HOME=/nonexistent setpriv --reuid=65534 --regid=65534 --clear-groups "$@"
    else
        "$@"
    fi
}
for_user() { # COUNT
    [ -z "$user" ] || return 0
    skipped=$((skipped + $1))
    echo "skipped: $1 checks that need another user than root"
    return 1
}

# one_sentence PATTERN: that is all that is said, but for the count of the tests.
one_sentence() {
    [ "$(wc -l <err)" -eq 1 ] && grep -q "$1" err &&
        { [ ! -s out ] || [ "$(tr -d '\n' <out)" = "0 passed, 1 failed" ]; }
}

# both_refuse NAME PATTERN FOLDER [COMMAND...]: demo/run.sh and tests/run.sh, with the command before.
both_refuse() {
    title=$1 pattern=$2 folder=$3
    shift 3
    for script in demo tests; do
        "$@" sh "$folder/$script/run.sh" >out 2>err </dev/null
        check_exit "$title: $script/run.sh" $? 1 one_sentence "$pattern"
    done
}

# --- paths that autoconf or make cannot take
# shellcheck disable=SC1003 # a backslash it is
for character in "'" '"' '$' '#' '&' ':' '\' '`' ';' '*' '(' '%' '|'; do
    starts "odd/a${character}b"
    both_refuse "a path with $character" "has the character [$character] in it, which autoconf" \
        "odd/a${character}b"
done
for character in ' ' '	' '
'; do
    starts "odd/a${character}b"
    both_refuse "a path with a blank" "has a blank or a control character in it" "odd/a${character}b"
done
starts good
both_refuse "a folder to build in with &" "the folder to build in has the character &" good \
    env TYRESUM_BUILD="$work/a&b"
both_refuse "a folder to build in within the checkout" "lies within the checkout" good \
    env TYRESUM_BUILD="$work/good/build"
both_refuse "a file for a folder to build in" "folder to build in cannot be written" good \
    env TYRESUM_BUILD=/dev/null
both_refuse "no temporary folder" "set TMPDIR" good env TMPDIR="$work/nowhere"

# --- a checkout that cannot be written
if for_user 6; then
    starts locked
    chmod -R a-w locked
    both_refuse "a checkout that cannot be written" "checkout cannot be written: give a folder" locked as_user
    both_refuse "nor the folder to build in" "folder to build in cannot be written" locked \
        as_user env TYRESUM_BUILD="$work/locked/build"
    chmod -R u+w locked
    mkdir locked/.build && chmod 555 locked/.build && chmod 777 locked
    both_refuse "a .build that cannot be written" "\.build cannot be written: give a folder" locked as_user
fi

# --- nothing can be installed: a PATH with what every machine has, and no compiler
mkdir -p bare
for tool in sh awk cat chmod cp cut dirname env find grep id kill ls mkdir mktemp mv rm rmdir sed sleep sort \
    touch tr uname; do
    ln -s "$(command -v $tool)" bare/$tool
done
# stand_in NAME EXIT: a tool that makes noise and ends so.
stand_in() {
    printf '#!/bin/sh\necho "noise of %s"; echo "noise of %s" >&2\nexit %d\n' "$1" "$1" "$2" >"bare/$1"
    chmod 755 "bare/$1"
}
named='autoconf automake gcc libc6-dev libyaml-dev make pkg-config'
both_refuse "no apt-get" "there is no apt-get: $named;" good env PATH="$work/bare"
if [ "$(id -u)" -eq 0 ]; then
    stand_in apt-get 100
    printf 'installing %s\n' "$named" >before
    for script in demo tests; do
        PATH=$work/bare sh good/$script/run.sh >out 2>err </dev/null
        status=$?
        sed "1{/^installing $named\$/d;}" err >rest
        mv rest err
        check_exit "no network: $script/run.sh" $status 1 one_sentence "is there a network?): $named;"
    done
else
    skipped=$((skipped + 2))
    echo "skipped: 2 checks that need root"
fi
if for_user 4; then
    stand_in apt-get 0
    chmod 777 good
    chmod -R a+w good
    both_refuse "no sudo" "that takes root, and there is no sudo: $named;" good as_user env PATH="$work/bare"
    stand_in sudo 1
    for script in demo tests; do
        as_user env PATH="$work/bare" sh good/$script/run.sh >out 2>err </dev/null
        status=$?
        sed '1{/^Root is asked for/d;}' err >rest
        mv rest err
        check_exit "sudo refuses: $script/run.sh" $status 1 one_sentence "sudo has refused: $named;"
    done
fi

# --- two starts at once. Each adds one to what the file says, which only one at a time does rightly.
mkdir together
echo 0 >together/number
cat >one.sh <<'END'
top=$PWD/together
. "$1/tests/prepare.sh"
begin
number=$(cat together/number)
[ -z "${2-}" ] || { echo held >held; cat <"$2"; } # held until something comes
echo $((number + 1)) >together/number
END
for each in 1 2 3 4 5 6; do
    sh one.sh "$top" 2>>err.$each &
done
wait
cat err.* >err
check_exit "six starts at once, one after another" 0 0 [ "$(cat together/number)" = 6 ]
check_exit "no lock is left" 0 0 [ ! -e together/.build/lock ]

mkfifo gate said
sh one.sh "$top" gate 2>err.1 &
first=$!
exec 8>gate # once the first has the lock
until [ -s held ]; do :; done
sh one.sh "$top" 2>said &
second=$!
IFS= read -r line <said # what it says comes before it waits
echo "$line" >err
check_exit "the second says for whom it waits" 0 0 \
    grep -q "^waiting for another start (process $first) that builds here; if there is none, remove $work/together/.build/lock\$" err
kill -KILL $first
exec 8>&-
wait $first 2>/dev/null
wait $second
check_exit "the lock of one that was killed is taken over" $? 0 [ "$(cat together/number)" = 7 ]
check_exit "and given back" 0 0 [ ! -e together/.build/lock ]

# --- whole builds
if [ "${1-}" = --long ]; then
    sheet() {
        grep -q '^E  255/70R16 111S  *go ' "$1"
    }
    mkdir clone
    for entry in "$top"/* "$top"/.[!.]*; do
        case $entry in
        */.git | */.build* | */autom4te.cache | */configure | */Makefile.in | */aclocal.m4) ;;
        *) cp -R -p "$entry" clone ;;
        esac
    done
    cp -R -p clone 'clone a&b'
    mkdir -p 'path,of=odd+but@good~ones^'
    cp -R -p clone 'path,of=odd+but@good~ones^/tyr-é_1.0'
    sh 'path,of=odd+but@good~ones^/tyr-é_1.0/demo/run.sh' >out 2>err
    check_exit "a path of odd characters that make takes" $? 0 sheet out
    TYRESUM_BUILD=$work/elsewhere sh 'clone a&b/demo/run.sh' >out 2>err
    check_exit "a path with & and a folder to build in" $? 0 sheet out
    check_exit "whose checkout stays as it is" 0 0 diff -r clone 'clone a&b'
    sh clone/demo/run.sh >out.1 2>err.1 &
    first=$!
    sh clone/demo/run.sh >out 2>err
    check_exit "two starts on a fresh clone, one" $? 0 sheet out
    wait $first
    check_exit "two starts on a fresh clone, the other" $? 0 cmp out out.1
    if for_user 1; then
        chmod -R a-w 'clone a&b'
        mkdir users && chmod 777 users
        as_user env TYRESUM_BUILD="$work/users" sh 'clone a&b/demo/run.sh' >out 2>err
        check_exit "a checkout that only others can write" $? 0 sheet out
        chmod -R u+w 'clone a&b'
    fi
fi
give_count
