#!/bin/sh
# sh tests/hardening.sh TYRESUM: what configure promises of a default build, read from the program.
# Skipped, and said so, where the file is no ELF program or the compiler has no such flags.
set -u
binary=$1
passed=0
failed=0
skipped=0

check() { # WHAT COMMAND...
    what=$1
    shift
    if "$@"; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "FAIL $what"
    fi
}

header() { readelf -hW "$binary" | grep -q "$1"; }
segment() { readelf -lW "$binary" | grep -q "$1"; }
dynamic() { readelf -dW "$binary" | grep -q "$1"; }
symbol() { readelf -sW "$binary" | grep -q "$1"; }
stack_is_data() { readelf -lW "$binary" | grep 'GNU_STACK' | grep -qv 'RWE'; }

if command -v readelf >/dev/null 2>&1 && readelf -h "$binary" >/dev/null 2>&1; then
    check "position-independent program" header 'Type: *DYN'
    check "relocations read-only" segment GNU_RELRO
    check "all of them before the start" dynamic BIND_NOW
    check "stack not executable" stack_is_data
    check "stack protector" symbol __stack_chk_fail
    check "fortified C library" symbol '__[a-z]*_chk@'
else
    skipped=6
fi
echo "count $passed $failed $skipped"
[ "$failed" -eq 0 ]
