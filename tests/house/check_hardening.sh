#!/bin/sh
# What the Makefile asks of compiler and linker is in the program: code that can lie at
# any address, addresses found and sealed before it starts (full RELRO), no stack that
# can be run, guards on the stack, calls that know how much room there is. Seen to fail
# with each of them taken from the Makefile, as tools/mutations.txt lists.
set -eu
program=$BUILD/recede
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
status=0
fault() { echo "hardening: $*"; status=1; }

if nm "$BUILD/librecede.a" 2>/dev/null | grep -q '__asan_\|__gcov_'; then
    echo "skipped: this build carries a sanitizer or counts its lines; the plain build is checked"
    exit 0
fi
readelf -hldW "$program" > "$work/headers"
readelf -W --dyn-syms "$program" > "$work/symbols"
grep -q 'Type: *DYN' "$work/headers" || fault 'the program lies at a fixed address'
grep -q 'GNU_RELRO' "$work/headers" || fault 'nothing is sealed'
grep -q 'BIND_NOW' "$work/headers" || fault 'addresses are found while it runs'
grep -q 'GNU_STACK.* RW  ' "$work/headers" || fault 'the stack can be run'
grep -q ' __stack_chk_fail' "$work/symbols" || fault 'no guards on the stack'
grep -q ' __[a-z]*printf_chk' "$work/symbols" || fault 'printing does not know its room'
[ $status = 0 ] && echo 'any address, full RELRO, no stack that can be run, guards, checked calls'
exit $status
