#!/bin/sh
# Each recipe of each scene's plan, recomputed by independent code.
set -eu
LSAN_OPTIONS=suppressions=$PWD/tests/cli/leaks.txt:print_suppressions=0
export LSAN_OPTIONS
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
for scene in scenes/*.json; do
    "$BUILD/recede" study "$scene" -o "$work/study.png" --json "$work/plan.json" >/dev/null
    /usr/bin/python3 tests/plan/recompute.py "$work/plan.json"
done
