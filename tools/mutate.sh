#!/bin/sh
# Breaks the code on purpose, once for each line of tools/mutations.txt, in a copy of the
# tree: the test named must be green before and go red. A test that stays green proves
# nothing, and neither does one that is always red, or that never comes to an end.
#
#     tools/mutate.sh [WORD]     only lines that hold WORD
set -eu
word=${1:-}
copy=$(mktemp -d)
trap 'rm -rf "$copy"' EXIT
git ls-files -co --exclude-standard | tar -cf - -T - | tar -xf - -C "$copy"
mkdir -p "$copy/build/tried"
[ -d build/fetched ] && cp -r build/fetched "$copy/build/"
cd "$copy"
jobs=$(nproc 2>/dev/null || echo 1)

# made WHAT...: builds it, and what the checks run.
made() {
    make -s -j "$jobs" BUILD=build/m build/m/recede "$@" > build/log 2>&1
}
# run TEST ARGUMENT: its exit code.
run() {
    case $1 in
    *.sh) program=$1 ;;
    *) program=build/m/$1 ;;
    esac
    # shellcheck disable=SC2086 # no word, no argument
    BUILD=build/m CC=${CC:-cc} timeout 300 "$program" $2 > build/log 2>&1 < /dev/null
}
# what TEST: what must be built for it.
what() {
    case $1 in
    *.sh) ;;
    *) echo "build/m/$1" ;;
    esac
}
# green TEST ARGUMENT: whether it is before anything is broken; tried once.
green() {
    tried=build/tried/$(echo "$1 $2" | tr ' /' '__')
    # shellcheck disable=SC2046
    [ -e "$tried" ] || { made $(what "$1") && run "$1" "$2" && : > "$tried"; }
}

made || { tail -5 build/log; exit 1; }
carries_page=
build/m/recede page > /dev/null 2>&1 && carries_page=yes
red=0
other=0
not() {
    printf '%s\n' "$*"
    other=$((other + 1))
}
grep -v '^#' tools/mutations.txt | grep -F -- "$word" > build/list || true
while IFS='|' read -r test file change; do
    test=$(echo "$test" | tr -d ' ')
    file=$(echo "$file" | tr -d ' ')
    change=${change# }
    [ -n "$test" ] || continue
    argument=
    case $test in *:*) argument=${test#*:} test=${test%%:*} ;; esac
    case $carries_page$test in tests/page/*)
        echo "left out, for the program carries no page: $test"
        continue
        ;;
    esac
    if ! green "$test" "$argument"; then
        not "RED UNBROKEN  $test $argument"
        tail -3 build/log
        continue
    fi
    cp -p "$file" build/kept
    sed -i "$change" "$file"
    # shellcheck disable=SC2046
    if cmp -s "$file" build/kept; then
        not "CHANGES NOTHING  $file: $change"
    elif ! made $(what "$test"); then
        not "DOES NOT BUILD  $file: $change"
        tail -3 build/log
    else
        code=0
        run "$test" "$argument" || code=$?
        case $code in
        0) not "GREEN  $test with $file: $change" ;;
        124) not "NO END  $test with $file: $change" ;;
        *)
            printf 'red    %s with %s: %s\n' "$test" "$file" "$change"
            red=$((red + 1))
            ;;
        esac
    fi
    mv build/kept "$file"
    touch "$file"
done < build/list
echo "$red faults noticed, $other not"
[ "$other" = 0 ] && [ "$red" -gt 0 ]
