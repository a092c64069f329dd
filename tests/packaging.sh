#!/bin/sh
# sh tests/packaging.sh TOP BUILD: what a packager does. Installs into a staging folder and takes it
# all away again; links statically; builds against musl; builds from a release as if for another
# machine. BUILD is a build that is done.
set -u
if [ $# -ne 2 ] || [ ! -x "$2/tyresum" ]; then
    echo "usage: sh tests/packaging.sh TOP BUILD" >&2
    exit 2
fi
top=$(CDPATH='' cd -- "$1" && pwd) || exit 1
build=$(CDPATH='' cd -- "$2" && pwd) || exit 1
work=$(mktemp -d "${TMPDIR:-/tmp}/tyresum-packaging.XXXXXX") || exit 1
trap 'chmod -R u+w "$work"; rm -rf "$work"' EXIT
trap 'exit 130' INT TERM HUP
cd "$work" || exit 1

passed=0
failed=0
skipped=0

check() { # NAME COMMAND...
    name=$1
    shift
    if "$@" >log 2>&1 </dev/null; then
        passed=$((passed + 1))
        return 0
    fi
    failed=$((failed + 1))
    echo "FAIL $name"
    tail -n 15 log | sed 's/^/    /'
    return 1
}

cat >expected <<'END'
usr/bin/tyresum
usr/share/bash-completion/completions/tyresum
usr/share/fish/vendor_completions.d/tyresum.fish
usr/share/man/man1/tyresum.1
usr/share/man/man5/tyresum-build.5
usr/share/tyresum/tyresum-build.schema.json
usr/share/tyresum/tyresum-rows.schema.json
usr/share/zsh/site-functions/_tyresum
END
installed() {
    (cd stage && find . -type f | sed 's/^\.\///' | LC_ALL=C sort) >found && diff expected found
}
nothing_left() {
    [ -z "$(find stage -type f -o -type l)" ]
}
same_sheet() { # TYRESUM
    "$build/tyresum" sheet "$top/demo/survey_wagon.yaml" --format csv >plain.csv &&
        "$1" sheet "$top/demo/survey_wagon.yaml" --format csv >other.csv && cmp plain.csv other.csv
}
check "make install with DESTDIR" make -C "$build" install DESTDIR="$work/stage" prefix=/usr
check "what is installed, and where" installed
check "the installed program" stage/usr/bin/tyresum --version
check "make uninstall" make -C "$build" uninstall DESTDIR="$work/stage" prefix=/usr
check "nothing is left of it" nothing_left

configure() { # DIRECTORY FLAG...
    mkdir -p "$1" && cd "$1" && shift && "${source:-$top}/configure" -q "$@"
}
in_folder() { # DIRECTORY FLAG...: configured in a shell of its own
    (configure "$@")
}

check "configure --enable-static-program" in_folder static --enable-static-program &&
    check "a static build" make -C static &&
    check "it needs no library" sh -c '! readelf -d static/tyresum | grep NEEDED' &&
    check "it computes the same" same_sheet static/tyresum

# Debian has no libyaml for musl. The library is C code that calls sixteen functions of the C
# library, all but one of them in musl: so it is linked as it is, and that one is written here.
# That of this machine: another processor's may be installed beside it.
library=$(pkg-config --variable=libdir yaml-0.1 2>/dev/null)/libyaml.a
[ -f "$library" ] || library=
if command -v musl-gcc >/dev/null 2>&1 && [ -n "$library" ]; then
    mkdir yaml
    cp /usr/include/yaml.h yaml/
    cat >yaml/checked.c <<'END'
#include <stdarg.h>
#include <stdio.h>
int __sprintf_chk(char *text, int flag, size_t size, const char *format, ...);
int __sprintf_chk(char *text, int flag, size_t size, const char *format, ...)
{
    (void)flag;
    va_list arguments;
    va_start(arguments, format);
    int length = vsnprintf(text, size, format, arguments);
    va_end(arguments);
    return length;
}
END
    musl-gcc -c -o yaml/checked.o yaml/checked.c
    check "configure for musl" in_folder musl CC=musl-gcc LDFLAGS=-static \
        YAML_CFLAGS="-I$work/yaml" YAML_LIBS="$library $work/yaml/checked.o" &&
        check "a build against musl" make -C musl &&
        check "it computes the same" same_sheet musl/tyresum
else
    skipped=$((skipped + 3))
    echo "skipped: 3 checks that need musl-gcc and libyaml.a"
fi

# A release holds the manuals, which a build for another machine cannot write.
check "make dist" make -C "$build" dist distdir=release &&
    check "unpacks" tar -xzf "$build/release.tar.gz" -C "$work"
rm -f "$build/release.tar.gz"
source=$work/release
machine=$("$top/.build-aux/config.guess" 2>/dev/null || "${CC:-cc}" -dumpmachine)
check "configure for another machine" in_folder cross --build="$machine" \
    --host="${machine%%-*}-other-linux-gnu" CC="${CC:-cc}" &&
    check "builds" make -C cross &&
    check "names no folder of this machine" sh -c '! grep -F "$1" cross/tyresum cross/config.h' sh "$work" &&
    check "writes no manuals" test ! -e cross/doc &&
    check "makes a release of its own" make -C cross dist distdir=again &&
    check "with the manuals" sh -c 'tar -tzf cross/again.tar.gz | grep -x again/doc/tyresum.1' &&
    check "installs those of the release" make -C cross install DESTDIR="$work/stage" prefix=/usr &&
    check "all of them" installed

# The same program from every folder.
mkdir -p other/folder && cp -R release other/folder/again
check "configure in another folder" sh -c 'cd other/folder && mkdir build && cd build && shift &&
    ../again/configure -q "$@"' sh x --build="$machine" --host="${machine%%-*}-other-linux-gnu" CC="${CC:-cc}" &&
    check "builds there" make -C other/folder/build tyresum &&
    check "the same program, byte for byte" cmp cross/tyresum other/folder/build/tyresum

# A real cross build, of the checkout: a build for this machine writes the manuals of its release.
triplet=aarch64-linux-gnu
if command -v $triplet-gcc >/dev/null 2>&1 && [ -f /usr/lib/$triplet/pkgconfig/yaml-0.1.pc ]; then
    source=$top
    PKG_CONFIG_LIBDIR=/usr/lib/$triplet/pkgconfig
    export PKG_CONFIG_LIBDIR
    check "configure for $triplet" in_folder arm --build="$machine" --host=$triplet &&
        check "makes a release" make -C arm dist distdir=arm-release &&
        check "unpacks" tar -xzf arm/arm-release.tar.gz -C "$work" &&
        check "with the manuals that a native build writes" diff -r release/doc arm-release/doc &&
        check "which name no folder of this machine" sh -c '! grep -rF "$1" arm-release/doc' sh "$work"
    unset PKG_CONFIG_LIBDIR
else
    skipped=$((skipped + 5))
    echo "skipped: 5 checks that need $triplet-gcc and its libyaml"
fi

echo "count $passed $failed $skipped"
[ "$failed" -eq 0 ]
