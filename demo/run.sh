#!/bin/sh
# sh demo/run.sh [FILE]: builds tyresum in .build and prints the sheet for FILE, or for the main
# demo. Works from any directory; installs what a fresh Debian lacks. TYRESUM_BUILD=FOLDER builds
# there instead, from a copy of the sources.
set -u
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd) || exit 1

case ${1-} in
-h | --help)
    echo "usage: sh demo/run.sh [FILE]"
    exit 0
    ;;
esac
if [ $# -gt 1 ]; then
    echo "usage: sh demo/run.sh [FILE]" >&2
    exit 2
fi
file=${1-$top/demo/survey_wagon.yaml}

# shellcheck source=SCRIPTDIR/../tests/prepare.sh
. "$top/tests/prepare.sh"

begin
need_for_build
if is_configured "$top/.build"; then
    generate_configure # a build made for the tests does as well, whatever its flags
else
    configure_in "$top/.build"
fi
compile_in "$top/.build" '' all || {
    step "The build failed: see above."
    exit 1
}
step ""
rm -rf "$lock"
lock=
"$top/.build/tyresum" sheet "$file"
