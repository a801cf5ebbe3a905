#!/bin/sh
# recede page: writes the page where the program carries it; where not, it says how
# to get it. What the page does is for make test-page. Seen to fail with a policy that
# allows more: tools/mutations.txt.
. tests/cli/lib.sh

run 0 "$recede" page --help
run 2 "$recede" page more
run 2 "$recede" page -x

code=0
"$recede" page -o planner.html >out 2>err || code=$?
case $code in
0)
    grep -q "Content-Security-Policy\" content=\"default-src 'none'; script-src 'sha256-" planner.html ||
        fault 'the page has no policy'
    [ "$(tail -c 8 planner.html)" = '</html>' ] || fault 'the page is cut short'
    "$recede" page | cmp -s - planner.html || fault 'standard output gets another page'
    run 3 "$recede" page -o nowhere/planner.html
    ;;
3)
    grep -q "make page" err || fault "no page, and no word how to get it: $(cat err)"
    [ ! -e planner.html ] || fault 'an empty page was written'
    ;;
*) fault "recede page ended with $code" ;;
esac
no_faults
