#!/bin/sh
# Every command of the program from the folder BUILD under valgrind, on a small scene:
# no invalid use of memory, no leak. Fontconfig alone is excused (tools/valgrind.supp).
set -eu
recede=$(cd "$BUILD" && pwd)/recede
suppressions=$(cd tools && pwd)/valgrind.supp
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
cat > scene.json <<'END'
{ "paint": { "palette": ["PY74", "PB29", "PBr7"], "most_pigments": 2, "most_parts": 3 },
  "planes": [ { "name": "bank", "distance": "30 m", "foliage": "meadow grass" },
              { "name": "ridge", "distance": "9 km", "surface": "rock", "crest": "300 m" } ] }
END
sed 's/"PY74"/"titanium white", "PY74"/; s/"most_pigments"/"medium": "oil", "most_pigments"/' scene.json > oil.json
echo '{ "planes": [ { "name": "bank", "distance": "30 fathoms" } ] }' > broken.json
cat > card.json <<'END'
{ "medium": "watercolour", "paper": { "lab": [95, 0, 4] },
  "paints": [ { "name": "my blue", "swatches": [ { "water": 0, "lab": [30, 45, -80] },
    { "water": 3, "lab": [48, 15, -62] }, { "water": 15, "lab": [74, -2, -32] } ] } ] }
END
failed=0
count=0
while read -r expected words; do
    code=0
    # shellcheck disable=SC2086
    valgrind --quiet --error-exitcode=99 --leak-check=full --show-leak-kinds=definite,indirect \
        --errors-for-leak-kinds=definite,indirect --suppressions="$suppressions" \
        "$recede" $words > said 2> complaint || code=$?
    count=$((count + 1))
    if [ "$code" != "$expected" ]; then
        echo "recede $words: exit code $code, expected $expected"
        tail -20 complaint
        failed=$((failed + 1))
    fi
done <<'END'
0 --help
0 --version
0 names
0 palette
0 palette landscape-six -o out.png --json out.json
0 check scene.json
0 study scene.json -o out.png --json out.json
0 study oil.json -o out.pdf
0 match 52,-14,22 --palette landscape-six --pigments 2 --parts 3
0 chart scene.json -o out.png
0 chart scene.json --range -o out.png
0 puddle scene.json -o out.pdf --json out.json
0 wish scene.json --steps 0.4
0 ladder scene.json -o out.png
0 skies scene.json -o out.png
0 swatch card.json -o my-blue.json
1 study broken.json -o out.png
1 check broken.json
2 study --nonsense
3 study scene.json -o missing/out.png
END
echo "valgrind: $count runs, $failed with faults"
[ "$failed" = 0 ]
