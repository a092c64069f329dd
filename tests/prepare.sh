# shellcheck shell=sh
# Sourced by demo/run.sh and tests/run.sh: what is needed on the machine, and a build out of tree.
# The caller sets $top to the checkout. Gives: $scratch, step, need, need_for_build,
# generate_configure, is_configured, configure_in, compile_in; ends through give_up.
# shellcheck disable=SC2154 # $top is the caller's

scratch=$(mktemp -d "${TMPDIR:-/tmp}/tyresum.XXXXXX") || exit 1
trap 'rm -rf "$scratch"' EXIT
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

# Runs a command without its output, which is shown in full if it fails.
quietly() {
    "$@" >"$scratch/quiet.log" 2>&1 </dev/null && return 0
    cat "$scratch/quiet.log" >&2
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
missing_packages() {
    for need in "$@"; do
        case $need in
        compiler) can_compile "${CC:-cc}" || echo gcc libc6-dev ;;
        sanitizers) can_compile "${CC:-cc}" -fsanitize=address,undefined || echo gcc libc6-dev ;;
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

by_hand() {
    cat >&2 <<END

Please install by hand, then run this again:
    apt-get install $1
On a system without apt-get the same things under its own names: a C11 compiler with its headers,
make, autoconf (2.69 or newer), automake (1.15 or newer), pkg-config, the headers of libyaml, and
for the tests Check (0.12 or newer), jq, SQLite, bc, GNU units, mandoc, xmllint and tidy.
END
    give_up
}

install_packages() {
    if ! command -v apt-get >/dev/null 2>&1; then
        step "Missing on this machine, and there is no apt-get here to install it with: $1"
        by_hand "$1"
    fi
    if [ "$(id -u)" -ne 0 ]; then
        if ! command -v sudo >/dev/null 2>&1; then
            step "Missing on this machine, and installing it takes root (there is no sudo here): $1"
            by_hand "$1"
        fi
        step "Root is asked for, through sudo, for one thing: to install $1"
        sudo -v || by_hand "$1"
    fi
    step "installing $1"
    # A list that is old but there may still do, so a failing update alone does not stop us.
    as_root apt-get -q -o DPkg::Lock::Timeout=300 update >"$scratch/update.log" 2>&1 </dev/null ||
        cat "$scratch/update.log" >&2
    # shellcheck disable=SC2086 # the packages are words
    quietly as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -y -o DPkg::Lock::Timeout=300 \
        install --no-install-recommends $1 || by_hand "$1"
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
    step "Still missing after $try installations: $packages"
    by_hand "$packages"
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
    case $top in
    *[[:space:]]*)
        step "The path of this checkout holds a space, and autoconf cannot build there: $top"
        give_up
        ;;
    esac
    if [ -f "$top/config.status" ]; then
        step "The sources are configured in place, which forbids a build beside them."
        step "Run 'make distclean' in $top first."
        give_up
    fi
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

# compile_in DIRECTORY TARGET...: returns 1, with the compiler's words, if it fails.
compile_in() {
    directory=$1
    shift
    step "building ${directory#"$top"/}"
    for target in "$@"; do
        quietly make -s -j "$(processors)" -C "$directory" "$target" || return 1
    done
}
