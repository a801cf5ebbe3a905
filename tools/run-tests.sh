#!/bin/sh
# Runs the test programs given, then the checks in tests/*.sh, and sums up.
# Needs BUILD and, for the checks that compile, CC in the environment.
set -u
passed=0
failed=0
for test in "$@" $(ls tests/*/check_*.sh 2>/dev/null); do
    echo "== $test"
    if "$test"; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "FAILED: $test"
    fi
done
echo
echo "$passed passed, $failed failed"
[ "$failed" = 0 ] && [ "$passed" -gt 0 ]
