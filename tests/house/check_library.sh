#!/bin/sh
# The core keeps its promise: nothing but libm and memory functions, recede_
# names only, and a wasm32 build that imports nothing. Seen to fail with a name made global,
# and with a call of abort: tools/mutations.txt.
set -eu
lib=$BUILD/librecede.a
cc=${CC:-cc}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
status=0

case "$(nm "$lib" 2>/dev/null | grep -c __asan_)" in
0) ;;
*) echo "skipped: this build carries sanitizer symbols; the plain build is checked"; exit 0 ;;
esac

# Undefined symbols that no member of the library defines.
nm -u "$lib" | awk 'NF == 2 && $1 == "U" { print $2 }' | sort -u > "$work/undefined"
nm --defined-only "$lib" | awk 'NF == 3 { print $3 }' | sort -u > "$work/defined"
grep -v '^#' tests/house/allowed-symbols.txt | sort -u > "$work/allowed"
comm -23 "$work/undefined" "$work/defined" | comm -23 - "$work/allowed" > "$work/strangers"
if [ -s "$work/strangers" ]; then
    echo "the library calls what tests/house/allowed-symbols.txt does not list:"
    cat "$work/strangers"
    status=1
fi

# Global names start recede_.
if nm -g --defined-only "$lib" | awk 'NF == 3 { print $3 }' | grep -v '^recede_'; then
    echo "the names above are exported without recede_ in front"
    status=1
fi

# The same sources for wasm32: linked with nothing left open but what the C
# library for it defines, and no import in the module.
clang --target=wasm32-wasi --sysroot=/usr -isystem /usr/include/wasm32-wasi -std=c11 \
    -ffp-contract=off -O1 -Iinclude -Isrc -nostartfiles -Wl,--no-entry -Wl,--export-dynamic \
    -Wl,--export=recede_plan_new -Wl,--export=recede_picture_paint -Wl,--export=recede_smooth_of_xyz \
    -L/usr/lib/wasm32-wasi -o "$work/core.wasm" \
    src/colour/*.c src/air/*.c src/paint/*.c src/plan/*.c src/picture/*.c "$BUILD"/data/[!b]*.c
"${CC:-cc}" -std=c11 -o "$work/imports" tools/wasm-imports.c
imports=$("$work/imports" "$work/core.wasm")
if [ "$imports" != 0 ]; then
    echo "the wasm32 module has $imports imports; it should have none"
    status=1
fi
exit $status
