#!/bin/sh
# The schemas in docs/ against what the program prints: every scene, as given
# and filled in, and every plan; and changed ones, which they must refuse.
. tests/cli/lib.sh

for scene in "$source"/scenes/*.json; do
    name=$(basename "$scene" .json)
    run 0 "$recede" check "$scene"
    cp out "filled-$name.json"
    run 0 "$recede" study "$scene" --json "plan-$name.json"
    cp "$scene" "given-$name.json"
done
no_faults || exit 1
/usr/bin/python3 "$source/tests/cli/schemas.py" "$source/docs" . || exit 1
