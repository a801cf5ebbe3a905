#!/bin/sh
# Runs fuzz targets from the folder BUILD, SECONDS_EACH long, on their seeds and what
# earlier runs kept, and sums up: inputs run, and what was found.
#
#     BUILD=build/fuzz SECONDS_EACH=1200 tools/fuzz.sh scene plan
set -eu
if [ "${1:-}" = --one ]; then
    target=$2
    mkdir -p "$BUILD/corpus/$target" "$BUILD/found"
    "$BUILD/fuzz_$target" -max_total_time="$SECONDS_EACH" -artifact_prefix="$BUILD/found/$target-" \
        "$BUILD/corpus/$target" "tests/fuzz/seeds/$target" > "$BUILD/$target.log" 2>&1 || true
    runs=$(sed -n 's/^Done \([0-9]*\) runs in \([0-9]*\) second.*/\1 runs in \2 s/p' "$BUILD/$target.log")
    echo "$target: ${runs:-stopped early: see $BUILD/$target.log}; $(find "$BUILD/found" -name "$target-*" | wc -l) found"
    exit 0
fi
printf '%s\n' "$@" | xargs -P "$(nproc 2>/dev/null || echo 1)" -I{} "$0" --one {}
[ -z "$(ls "$BUILD/found" 2>/dev/null)" ]
