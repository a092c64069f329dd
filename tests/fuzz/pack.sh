#!/bin/sh
# The inputs of the fuzz targets are packed, a file of text a target: tests/fuzz/seeds/NAME.seeds.
#   sh tests/fuzz/pack.sh unpack NAME DIRECTORY
#       each input as a file of its own, in a new folder
#   sh tests/fuzz/pack.sh found [DIRECTORY]
#       after tests/fuzz/run.sh: of what each target has and found, the least that reaches as much
#       takes the place of what it had; what once broke something stays whatever it reaches
#   sh tests/fuzz/pack.sh broke NAME FILE WORD 'what it broke'
#       keeps an input that failed, by a name, once it fails no more
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
# shellcheck source=SCRIPTDIR/../part.sh
. "$here/../part.sh"
work_in pack

usage() {
    sed -n '2,/^set/s/^#   \(sh\)/usage: \1/p' "$here/pack.sh" >&2
    exit 2
}

# Least sets: what is kept must not hang on what counters happened to say.
found() { # DIRECTORY
    for packed in "$here"/seeds/*.seeds; do
        name=$(basename "$packed" .seeds)
        mkdir "$work/have" "$work/least" || exit 1
        "$work/pack" unpack "$packed" "$work/have" || exit 1
        "$1/fuzz_$name" -merge=1 -set_cover_merge=1 -use_counters=0 -close_fd_mask=1 "$work/least" \
            "$work/have" "$1/$name.found" >"$1/$name.merge.log" 2>&1 || {
            echo "fuzz_$name cannot merge: see $1/$name.merge.log" >&2
            exit 1
        }
        "$work/pack" pack "$packed" "$work/least" || exit 1
        rm -r "$work/have" "$work/least"
    done
}

"${CC:-cc}" -std=c11 -D_XOPEN_SOURCE=700 -o "$work/pack" "$here/pack.c" "$here/seeds.c" || exit 1
case ${1-}$# in
unpack3)
    mkdir "$3" && "$work/pack" unpack "$here/seeds/$2.seeds" "$3"
    ;;
found1) found "$here/../../.build/fuzz" ;;
found2) found "$2" ;;
broke5) "$work/pack" broke "$here/seeds/$2.seeds" "$3" "$4" "$5" ;;
*) usage ;;
esac
