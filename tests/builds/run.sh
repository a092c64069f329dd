#!/bin/sh
# sh tests/builds/run.sh TYRESUM NAME: the program built otherwise prints the same bytes as TYRESUM,
# for the demos, all listed sizes and random builds, and no sanitizer speaks. NAME is one of
#   integer   clang's sanitizers of integers, conversions and floats; the unit tests too
#   memory    MemorySanitizer, with libyaml built by it
#   i686      32 bits, floats in registers of 80
#   s390x     big endian, under qemu
# libyaml is built from Debian's source package. What cannot be had here is skipped and counted.
# TEST_SEED=N repeats the builds.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
top=$(dirname "$(dirname "$here")")
emulator=
random=40
across=
set -- "${1-}" "${2-}"
case $2 in
integer)
    compiler="clang -g -O1 -fsanitize-ignorelist=$here/ignored"
    compiler="$compiler -fsanitize=undefined,float-divide-by-zero,integer,implicit-conversion"
    ;;
memory)
    compiler="clang -g -O1 -fsanitize=memory -fno-omit-frame-pointer"
    ;;
i686)
    compiler="i686-linux-gnu-gcc -O1 -static"
    across="--build=$(cc -dumpmachine) --host=i686-linux-gnu"
    ;;
s390x)
    compiler="s390x-linux-gnu-gcc -O1 -static"
    across="--build=$(cc -dumpmachine) --host=s390x-linux-gnu"
    emulator=qemu-s390x-static
    random=8
    ;;
*) set -- ;;
esac
if [ $# -ne 2 ] || [ ! -x "$1" ] || [ ! -x "$(dirname "$1")/write_builds" ]; then
    echo "usage: sh tests/builds/run.sh TYRESUM integer|memory|i686|s390x (write_builds beside it)" >&2
    exit 2
fi
binary=$(absolute "$1")
which=$2
work_in builds
cd "$work" || exit 1
seed=${TEST_SEED:-$(date +%s)}
LC_ALL=C
export LC_ALL

skip() {
    echo "skipped: the build $which: $*"
    skipped=$((skipped + 1))
    give_count
    exit
}

# The sources of libyaml, in $sources, by a list of packages of our own: the system's stays as it is.
libyaml_sources() {
    mkdir -p apt/lists/partial
    apt-cache policy libyaml-dev 2>/dev/null | awk '
        / Packages$/ { split($3, suite, "/"); print "deb-src", $2, suite[1], suite[2] }' >apt/list
    [ -s apt/list ] || return 1
    set -- -q -o Dir::Etc::SourceList="$work/apt/list" -o Dir::Etc::SourceParts=- \
        -o Dir::State::Lists="$work/apt/lists" -o Dir::Cache="$work/apt/cache"
    (cd apt && apt-get "$@" update && apt-get "$@" source --download-only libyaml) >log 2>&1 || return 1
    tar -xzf apt/libyaml_*.orig.tar.gz || return 1
    sources=$(echo "$work"/libyaml-*/)
}

# What links with a small program here, and runs, can build the whole.
printf 'int main(void)\n{\n    return 0;\n}\n' >probe.c
# shellcheck disable=SC2086 # flags are words
{ $compiler -o probe probe.c && $emulator ./probe; } >log 2>&1 || skip "${compiler%% *} $emulator is not here"
set --
if [ "$which" != integer ]; then
    libyaml_sources || skip "no sources of libyaml: $(tail -n 1 log)"
    mkdir yaml
    version='-DYAML_VERSION_MAJOR=0 -DYAML_VERSION_MINOR=0 -DYAML_VERSION_PATCH=0'
    # shellcheck disable=SC2086
    (cd yaml && $compiler $version -DYAML_VERSION_STRING='"0"' -I"$sources/include" \
        -c "$sources"/src/*.c && ar cr libyaml.a ./*.o) >err 2>&1
    check_exit "libyaml" $? 0
    set -- YAML_CFLAGS="-I$sources/include" YAML_LIBS="$work/yaml/libyaml.a"
fi
targets=tyresum
[ "$which" != integer ] || targets="tyresum unit_tests"
mkdir build
# shellcheck disable=SC2086 # words
(cd build && "$top/configure" -q --disable-hardening $across CC="$compiler" CC_FOR_BUILD=cc \
    CFLAGS= "$@" && make -s $targets) >err 2>&1
check_exit "configure and make" $? 0
[ "$failed" -eq 0 ] || {
    give_count
    exit
}
echo "builds: TEST_SEED=$seed"
"$(dirname "$binary")/write_builds" "$seed" "$random" || exit 1

# same ARGUMENT...: the same bytes, standard error too, and the same exit.
same() {
    "$binary" "$@" <input >expected 2>expected.err
    expected=$?
    $emulator build/tyresum "$@" <input >out 2>err
    check_exit "$which: $*" $? $expected same_bytes
}
same_bytes() {
    cmp expected out && cmp expected.err err
}

awk -F, '/^[^#]/ && $1 != "designation" { print $1 }' "$top/tables/standard_sizes.csv" >input
for units in metric us; do
    for format in csv json; do
        same size - --units $units --format $format
    done
    same compare - --fitted '205/55R16 91V' --units $units
done
for build in "$top"/demo/*.yaml; do
    for format in table csv json markdown html; do
        same sheet "$build" --units both --format $format
    done
    for command in gearing clearance load; do
        same $command "$build" --format svg
    done
    for command in compare tasks shortlist check; do
        same $command "$build"
    done
done
for build in [0-9]*.yaml; do
    for command in check sheet shortlist; do
        same $command "$build" --format csv
    done
done
if [ "$which" = integer ]; then
    (cd build && srcdir=$top CK_FORK=no ./unit_tests) >out 2>&1
    status=$?
    grep -a 'runtime error:' out | sort | uniq -c >err
    check_exit "unit tests" $status 0
fi
give_count
