#!/bin/sh
# Each scene of scenes/: the study is a sound PNG (pngcheck), the same twice, and
# the scene that check prints gives it again, byte for byte.
. tests/cli/lib.sh

for scene in "$source"/scenes/*.json; do
    name=$(basename "$scene" .json)
    run 0 "$recede" study "$scene" -o "$name.png" --json "$name.plan"
    pngcheck -q "$name.png" >/dev/null || fault "pngcheck refuses the study of $name"
    run 0 "$recede" check "$scene" -o filled.json
    run 0 env -i LSAN_OPTIONS="$LSAN_OPTIONS" LANG=tr_TR.UTF-8 \
        "$recede" study filled.json -o again.png --json again.plan
    cmp -s "$name.png" again.png || fault "$name: check prints another picture's scene"
    cmp -s "$name.plan" again.plan || fault "$name: check prints another plan's scene"
done

no_faults
