# shellcheck shell=sh
# Sourced by demo/run.sh and tests/run.sh: what is needed on the machine, and a build out of tree.
# The caller sets $top to the checkout. Gives: $scratch, leave, step, begin, need, need_for_build,
# generate_configure, is_configured, configure_in, compile_in; ends through give_up.
# shellcheck disable=SC2154 # $top is the caller's

scratch=$(mktemp -d "${TMPDIR:-/tmp}/tyresum.XXXXXX" 2>/dev/null) || {
    echo "No temporary folder can be made in ${TMPDIR:-/tmp}: set TMPDIR to a folder that can be written." >&2
    exit 1
}
lock=

# What every end clears away.
leave() {
    rm -rf "$scratch"
    [ -z "$lock" ] || rm -rf "$lock"
}
trap leave EXIT
trap 'exit 130' INT
trap 'exit 143' TERM HUP

# How a step that cannot go on ends; a caller may put its own words in place of this.
give_up() {
    exit 1
}

# Steps go to standard error, so that standard output holds only what was asked for.
step() {
    printf '%s\n' "$*" >&2
}

# refuse SENTENCE...: why it cannot go on, and what to do.
refuse() {
    step "$*"
    give_up
}

elsewhere="give a folder to build in, such as TYRESUM_BUILD=/tmp/tyresum-build"

# Neither autoconf nor make can take every path: what they read by themselves, and ':', which parts
# the two sides of a rule.
check_path() { # PATH WHAT
    bad=$(printf '%s' "$1" | tr '\n' ' ' | LC_ALL=C tr -d 'A-Za-z0-9/._+,@=^~\200-\377-' | cut -c 1)
    case $bad in
    '') return ;;
    [[:space:][:cntrl:]]) bad="a blank or a control character" ;;
    *) bad="the character $bad" ;;
    esac
    refuse "The path of $2 has $bad in it, which autoconf or make cannot take:" \
        "move it to a path of letters, digits, - and _, or $elsewhere"
}

# is_alive PROCESS: of any user.
is_alive() {
    kill -0 "$1" 2>/dev/null || [ -e "/proc/$1" ]
}

# One start at a time in a folder: the others wait. A lock whose process has died is taken over, by
# the one that can make the folder named after the dead. (There need be no flock.)
take_lock() { # FOLDER
    told='' tries=0
    until mkdir "$1/lock" 2>/dev/null; do
        tries=$((tries + 1))
        [ -d "$1/lock" ] || [ $tries -lt 100 ] || refuse "$1 cannot be written: $elsewhere"
        [ -d "$1/lock" ] || continue # given back just now
        holder=$(cat "$1/lock/process" 2>/dev/null)
        if [ -n "$holder" ] && ! is_alive "$holder" && mkdir "$1/lock/$holder" 2>/dev/null; then
            [ "$(cat "$1/lock/process")" != "$holder" ] || break
            rmdir "$1/lock/$holder" # another had it, and it is a new one
        fi
        [ -n "$told" ] || step "waiting for another start${holder:+ (process $holder)} that builds here;" \
            "if there is none, remove $1/lock"
        told=yes
        sleep 1
    done
    lock=$1/lock
    echo $$ >"$lock/new" && mv "$lock/new" "$lock/process"
}

# begin: makes sure of a folder that can be built in, for this start alone. Where TYRESUM_BUILD names
# one, the sources are copied there, and $top is the copy; the checkout stays as it is.
begin() {
    place=$top
    if [ -n "${TYRESUM_BUILD-}" ]; then
        place=$(mkdir -p "$TYRESUM_BUILD/tyresum" 2>/dev/null &&
            CDPATH='' cd -- "$TYRESUM_BUILD/tyresum" && pwd)
        [ -n "$place" ] && [ -w "$place" ] ||
            refuse "The folder to build in cannot be written: name another in TYRESUM_BUILD"
        case $place/ in
        "$top"/*) refuse "The folder to build in lies within the checkout: name one elsewhere in TYRESUM_BUILD" ;;
        esac
    elif [ ! -w "$top" ]; then
        refuse "This checkout cannot be written: $elsewhere"
    fi
    check_path "$place" "$([ "$place" = "$top" ] && echo this checkout || echo the folder to build in)"
    mkdir -p "$place/.build" 2>/dev/null
    take_lock "$place/.build"
    [ "$place" != "$top" ] || return 0
    for entry in "$top"/* "$top"/.[!.]*; do
        case $entry in
        */.git | */.build | */autom4te.cache) ;;
        *) cp -R -p -f "$entry" "$place" 2>/dev/null || refuse "The sources could not be copied to $place" ;;
        esac
    done
    chmod -R u+w "$place"
    top=$place
}

# Runs a command without its output, which is shown in full if it fails.
quietly() {
    quiet_log=$(mktemp "$scratch/quiet.XXXXXX") # two may run at once
    "$@" >"$quiet_log" 2>&1 </dev/null && return 0
    cat "$quiet_log" >&2
    return 1
}

# can_compile COMPILER FLAG...: whether it makes a program here (headers and libraries included).
can_compile() {
    printf '#include <stdio.h>\nint main(void)\n{\n    return puts("") < 0;\n}\n' >"$scratch/probe.c"
    "$@" -o "$scratch/probe" "$scratch/probe.c" >/dev/null 2>&1
}

can_fuzz() {
    printf 'int LLVMFuzzerTestOneInput(const unsigned char *d, unsigned long n);\n%s\n' \
        'int LLVMFuzzerTestOneInput(const unsigned char *d, unsigned long n) { return !d && n; }' \
        >"$scratch/probe.c"
    clang -fsanitize=fuzzer,address,undefined -o "$scratch/probe" "$scratch/probe.c" \
        >/dev/null 2>&1
}

can_validate() {
    python3 -c 'import jsonschema, yaml' 2>/dev/null ||
        /usr/bin/python3 -c 'import jsonschema, yaml' 2>/dev/null
}

has_fonts() {
    test -d /usr/share/fonts/truetype/dejavu -a -d /usr/share/fonts/truetype/liberation \
        -a -d /usr/share/fonts/truetype/noto
}

# Prints the Debian packages that bring those of the named needs which are not met.
# shellcheck disable=SC2086 # CC may be several words
missing_packages() {
    for need in "$@"; do
        case $need in
        compiler) can_compile ${CC:-cc} || echo gcc libc6-dev ;;
        sanitizers) can_compile ${CC:-cc} -fsanitize=address,undefined || echo gcc libc6-dev ;;
        libyaml) pkg-config --exists yaml-0.1 2>/dev/null || echo libyaml-dev ;;
        check) pkg-config --exists 'check >= 0.12' 2>/dev/null || echo check ;;
        xmllint) command -v xmllint >/dev/null 2>&1 || echo libxml2-utils ;;
        validator) can_validate || echo python3-jsonschema python3-yaml ;;
        office) command -v soffice >/dev/null 2>&1 || echo libreoffice-calc-nogui ;;
        pdftotext) command -v pdftotext >/dev/null 2>&1 || echo poppler-utils ;;
        fonts) has_fonts || echo fonts-dejavu-core fonts-liberation fonts-noto-core ;;
        i686) command -v i686-linux-gnu-gcc >/dev/null 2>&1 || echo gcc-i686-linux-gnu libc6-dev-i386-cross ;;
        s390x)
            command -v s390x-linux-gnu-gcc >/dev/null 2>&1 &&
                command -v qemu-s390x-static >/dev/null 2>&1 ||
                echo gcc-s390x-linux-gnu libc6-dev-s390x-cross qemu-user-static
            ;;
        musl) command -v musl-gcc >/dev/null 2>&1 || echo musl-tools ;;
        fuzzer) can_fuzz || echo clang "$(fuzzer_runtime)" ;;
        *) command -v "$need" >/dev/null 2>&1 || echo "$need" ;;
        esac
    done | tr ' ' '\n' | sort -u | tr '\n' ' ' | sed 's/ *$//'
}

# Newer Debian releases keep libFuzzer's library in a package of its own, named by version.
fuzzer_runtime() {
    apt-cache depends clang 2>/dev/null |
        sed -n 's/.*Depends: clang-\([0-9][0-9]*\)$/libclang-rt-\1-dev/p' | head -n 1
}

as_root() {
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    else
        sudo "$@"
    fi
}

# by_hand PACKAGES WHY
by_hand() {
    refuse "Missing on this machine, and not installed since $2: $1;" \
        "install what is named (by Debian's names) and run this again"
}

may_be_root() {
    [ "$(id -u)" -eq 0 ] || sudo -n true >/dev/null 2>&1 || { [ -t 0 ] && [ -t 2 ] && sudo -v; }
}

install_packages() {
    command -v apt-get >/dev/null 2>&1 || by_hand "$1" "there is no apt-get"
    if [ "$(id -u)" -ne 0 ]; then
        command -v sudo >/dev/null 2>&1 || by_hand "$1" "that takes root, and there is no sudo"
        step "Root is asked for, through sudo, for one thing: to install $1"
    fi
    may_be_root || by_hand "$1" "sudo has refused"
    step "installing $1"
    # A list that is old but there may still do, so a failing update alone does not stop us.
    as_root apt-get -q -o DPkg::Lock::Timeout=300 update >/dev/null 2>&1 </dev/null
    # shellcheck disable=SC2086 # the packages are words
    as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -y -o DPkg::Lock::Timeout=300 \
        install --no-install-recommends $1 >/dev/null 2>&1 </dev/null ||
        by_hand "$1" "apt-get could not fetch or install them (is there a network?)"
}

# need NAME...: makes sure that each is there, installing what is not; does not return otherwise.
need() {
    # Twice, since what a package lacks may show only after the first lists have been fetched.
    for try in 1 2; do
        packages=$(missing_packages "$@")
        [ -n "$packages" ] || return 0
        install_packages "$packages"
    done
    packages=$(missing_packages "$@")
    [ -n "$packages" ] || return 0
    by_hand "$packages" "they are missing still after $try tries"
}

# wish NAME...: the same, but goes on without: what lacks it is skipped and counted.
wish() {
    for wished in "$@"; do
        (
            give_up() {
                exit 1
            }
            need "$wished"
        ) || step "going on without: $wished"
    done
}

need_for_build() {
    need compiler make autoconf automake pkg-config libyaml
}

generate_configure() {
    [ ! -f "$top/config.status" ] ||
        refuse "The sources are configured in place, which forbids a build beside them: run make distclean in $top first"
    if [ -f "$top/configure" ] && [ -f "$top/Makefile.in" ] && [ -d "$top/.build-aux" ] &&
        [ -z "$(find "$top/configure.ac" "$top/Makefile.am" -newer "$top/configure")" ]; then
        return 0
    fi
    step "generating configure"
    mkdir -p "$top/.build-aux" # autoreconf does not make it itself everywhere
    (cd "$top" && quietly autoreconf -fi) || {
        step "autoreconf failed: see above"
        give_up
    }
}

# is_configured DIRECTORY [FLAGS]: whether it was configured from here, and with just those flags.
is_configured() {
    [ -f "$1/config.status" ] && [ -f "$1/configured-with" ] || return 1
    [ "$(sed -n 1p "$1/configured-with")" = "$top" ] || return 1
    [ $# -lt 2 ] || [ "$(sed -n 2p "$1/configured-with")" = "$2" ]
}

# configure_in DIRECTORY FLAG...: nothing to do where it was configured so before.
configure_in() {
    directory=$1
    shift
    generate_configure
    is_configured "$directory" "$*" && return 0
    step "configuring ${directory#"$top"/}"
    mkdir -p "$directory"
    rm -f "$directory/configured-with"
    (cd "$directory" && quietly "$top/configure" -q "$@") || {
        step "configure failed: see above, and config.log in $directory"
        give_up
    }
    # Objects made with other flags would be kept by make, which compares times only.
    quietly make -C "$directory" clean || true
    printf '%s\n%s\n' "$top" "$*" >"$directory/configured-with"
}

processors() {
    getconf _NPROCESSORS_ONLN 2>/dev/null || echo 2
}

# compile_in DIRECTORY FLAGS TARGET...: with those compiler flags, or '' for the configured ones;
# returns 1, with the compiler's words, if it fails.
compile_in() {
    directory=$1
    compile_flags=$2
    shift 2
    step "building ${directory#"$top"/}: $*"
    for target in "$@"; do
        quietly make -s -j "$(processors)" -C "$directory" ${compile_flags:+"CFLAGS=$compile_flags"} "$target" || return 1
    done
}
