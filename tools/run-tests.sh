#!/bin/sh
# Runs the test programs given and the checks in tests/, as many at a time as there
# are processors, and sums up. What a test says is shown in one piece when it ends.
# Needs BUILD and, for the checks that compile, CC in the environment.
set -u

if [ "${1:-}" = --one ]; then
    said=$(mktemp "$3/XXXXXX") || exit 1
    echo "== $2" > "$said"
    if "$2" >> "$said" 2>&1; then
        echo "$2" > "$said.passed"
    else
        echo "FAILED: $2" | tee "$said.failed" >> "$said"
    fi
    cat "$said"
    exit 0
fi

LSAN_OPTIONS=suppressions=$PWD/tests/cli/leaks.txt:print_suppressions=0
export LSAN_OPTIONS

room=$(mktemp -d) || exit 1
trap 'rm -rf "$room"' EXIT
trap 'exit 1' HUP INT TERM
# the checks take longest: they begin first
for test in $(ls tests/*/check_*.sh 2>/dev/null) "$@"; do
    echo "$test"
done | xargs -P "$(nproc 2>/dev/null || echo 1)" -I{} "$0" --one {} "$room"
passed=$(find "$room" -name '*.passed' | wc -l)
failed=$(find "$room" -name '*.failed' | wc -l)
echo
cat "$room"/*.failed 2>/dev/null
echo "$passed passed, $failed failed"
[ "$failed" = 0 ] && [ "$passed" -gt 0 ]
