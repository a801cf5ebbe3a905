#!/bin/sh
# Breaks the code on purpose, once for each line of tools/mutations.txt, in a copy of the
# tree: the test named must go red. A test that stays green proves nothing.
#
#     tools/mutate.sh [WORD]     only lines that hold WORD
set -eu
word=${1:-}
copy=$(mktemp -d)
trap 'rm -rf "$copy"' EXIT
git ls-files -co --exclude-standard | tar -cf - -T - | tar -xf - -C "$copy"
mkdir -p "$copy/build"
[ -d build/fetched ] && cp -r build/fetched "$copy/build/"
cd "$copy"
jobs=$(nproc 2>/dev/null || echo 1)
make -s -j "$jobs" BUILD=build/m build/m/recede tests-built > build/log 2>&1 || { tail -5 build/log; exit 1; }

red=0
green=0
grep -v '^#' tools/mutations.txt | grep -F -- "$word" > build/list || true
while IFS='|' read -r test file change; do
    test=$(echo "$test" | tr -d ' ')
    file=$(echo "$file" | tr -d ' ')
    change=${change# }
    [ -n "$test" ] || continue
    argument=
    case $test in *:*) argument=${test#*:} test=${test%%:*} ;; esac
    cp -p "$file" build/kept
    sed -i "$change" "$file"
    if cmp -s "$file" build/kept; then
        echo "CHANGES NOTHING  $file: $change"
        green=$((green + 1))
        continue
    fi
    case $test in
    *.sh) made=build/m/recede run=$test ;;
    *) made=build/m/$test run=build/m/$test ;;
    esac
    if make -s -j "$jobs" BUILD=build/m "$made" build/m/recede > build/log 2>&1; then
        # shellcheck disable=SC2086 # no word, no argument
        if BUILD=build/m CC=${CC:-cc} timeout 300 "$run" $argument > build/log 2>&1 < /dev/null; then
            echo "GREEN  $test with $file: $change"
            green=$((green + 1))
        else
            echo "red    $test with $file: $change"
            red=$((red + 1))
        fi
    else
        echo "DOES NOT BUILD  $file: $change"
        tail -3 build/log
        green=$((green + 1))
    fi
    mv build/kept "$file"
    touch "$file"
done < build/list
echo "$red faults noticed, $green not"
[ "$green" = 0 ] && [ "$red" -gt 0 ]
