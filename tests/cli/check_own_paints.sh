#!/bin/sh
# Paints of the painter's own: files named by scenes and on the command line, and
# planes mixed of the palette. Paints other than the library's are invented.
. tests/cli/lib.sh

# bands N: the number 36 times.
bands() {
    i=1
    printf '[%s' "$1"
    while [ $i -lt 36 ]; do
        printf ', %s' "$1"
        i=$((i + 1))
    done
    printf ']'
}

# pigment NAME K: a file's content.
pigment() {
    printf '{"name": "%s",\n "k": %s,\n "s": %s}\n' "$1" "$(bands "$2")" "$(bands 0.25)"
}

# scene PALETTE [OWN]: a scene's content.
scene() {
    printf '{"paint": {"palette": %s, "most_pigments": 2},\n "planes": [%s,\n' "$1" "$plane"
    printf '{"name": "bank", "distance": 30, %s}]}\n' "${2:-\"foliage\": \"meadow grass\"}"
}

mkdir moor moor/paints
pigment 'my grey' 0.5 >moor/paints/grey.json
printf '{"purpose": "for the moor", "paper": {"lab": [94, 0, 3]},\n "paints": ["PB29", "PY43", "grey.json"]}' \
    >moor/paints/box.json

# A palette file with a pigment file in it: plans, from any folder; reads back the same.
scene '"paints/box.json"' '"mix": {"my grey": 1, "PY43": 3, "water": 2}' >moor/scene.json
run 0 "$recede" study moor/scene.json -o study.png --json plan.json
grep -q 'my grey' out || fault "the study does not name the paint: $(cat out)"
[ -s study.png ] || fault 'no study'
run 0 "$recede" check moor/scene.json -o moor/filled.json
grep -q '"palette": "paints/box.json"' moor/filled.json || fault 'the palette went by another name'
grep -q '"my grey": 1' moor/filled.json || fault 'the mix is not there'
run 0 "$recede" check moor/filled.json
cmp -s out moor/filled.json || fault 'what check writes reads back as something else'
(cd moor && "$recede" study --json ../again.json scene.json >/dev/null) || fault 'not from its folder'
cmp -s plan.json again.json || fault 'another folder, another plan'
(cd moor && "$recede" check - <scene.json >/dev/null) || fault 'not from standard input'

# An object in the file's place: the same plan, recipe by recipe and colour by colour, in
# the box's own medium and in the scene's.
box() { # in which folder its pigment file is
    printf '{"medium": "oil", "paper": {"lab": [74, 2, 13]},\n "paints": ["PW6", "PB29", "PY43", '
    printf '"%sgrey.json"]}' "$1"
}
box '' >moor/paints/oil.json
for medium in oil gouache; do
    own=
    [ $medium = oil ] || own=", \"medium\": \"$medium\""
    scene "\"paints/oil.json\"$own" '"mix": {"my grey": 1, "PY43": 3}' >moor/named.json
    scene "$(box paints/)$own" '"mix": {"my grey": 1, "PY43": 3}' >moor/object.json
    run 0 "$recede" study moor/named.json --json named.json
    sed 's/paints\/oil.json/a palette of its own/' out >named.txt
    run 0 "$recede" study moor/object.json -o object.png --json object.json
    grep -q "\"medium\": \"$medium\"" object.json || fault "the plan is not in $medium"
    /usr/bin/python3 "$source/tests/cli/own_paints.py" apart named.json object.json ||
        fault "from the object another plan than from the file in $medium"
    cmp -s out named.txt || fault "other words: $(diff out named.txt)"
done

# The examples of the manual plan, and all files keep to the schemas.
mkdir manual
cd manual || exit 1
python="/usr/bin/python3 $source/tests/cli/own_paints.py"
$python examples "$source/docs" || fault 'no examples in docs/paints.md'
run 0 "$recede" study scene.json --json plan.json
grep -q 'my green' out || fault "the manual's green is not used: $(cat out)"
run 0 "$recede" check scene.json -o filled.json
run 0 "$recede" match 52,-14,22 --palette box.json
run 0 "$recede" match 52,-14,22 --palette 'ultramarine blue, PY43, my-green.json'
$python scenes "$source/docs" || fault 'not the examples of docs/scene.md'
run 0 "$recede" study plain.json
run 0 "$recede" study object.json --json object-plan.json
grep -q '"medium": "gouache"' object-plan.json || fault "the manual's object has another medium"
cd .. || exit 1
$python valid "$source/docs" pigment manual/my-green.json moor/paints/grey.json || fault 'pigments'
$python valid "$source/docs" palette manual/box.json moor/paints/box.json || fault 'palettes'
$python valid "$source/docs" scene manual/scene.json manual/filled.json manual/plain.json \
    manual/object.json moor/scene.json moor/filled.json moor/object.json ||
    fault 'scenes'
$python changed "$source/docs" || fault 'schemas accept too much'

# Every command that takes a scene.
for words in 'chart -o sheet.png --range' 'puddle' 'wish --steps 0.5' 'ladder' 'skies'; do
    run 0 "$recede" $words moor/scene.json
done
run 0 "$recede" ladder --mix '2 my grey + 1 yellow ochre + 3 water' moor/scene.json
grep -q '2 my grey' out || fault "no word of the mix: $(cat out)"
# With other paints or another medium, planes mixed of the scene's keep their colour.
run 0 "$recede" chart -o sheet.png --range --palette landscape-six moor/scene.json
run 0 "$recede" chart -o sheet.png --range --medium gouache moor/scene.json
run 2 "$recede" ladder --mix '2 burnt sienna' moor/scene.json
one_line 'burnt sienna' 'nearest known'
run 2 "$recede" ladder --mix '2 my grey, 1 yellow ochre' moor/scene.json
one_line 'join paints with +'
run 2 "$recede" ladder --mix '2 phthalo blue, red shade' moor/scene.json
grep -q 'join paints' err && fault "a name with a comma: $(cat err)"
for wrong in 'my grey' '0 my grey' '1.5 my grey' '13 my grey' '2 water' '1 my grey + 1 my grey' '+' \
    '1 my grey + -1 water'; do
    run 2 "$recede" ladder --mix "$wrong" moor/scene.json
    one_line '--mix'
done

# The same K and S as in the library under another name: the same recipes.
/usr/bin/python3 - "$source/src/data/pigments.txt" >twin.json <<'EOF' || fault 'no file made'
import json, re, sys
record = open(sys.argv[1]).read().split("name: ultramarine blue\n")[1].split("\n\n")[0]
bands = [[float(n) for n in re.search("^%s:\n((?:  .*\n?)+)" % key, record, re.M).group(1).split()]
         for key in "ks"]
print(json.dumps({"name": "another old blue", "colour_index": "PB29", "k": bands[0], "s": bands[1]}))
EOF
run 0 "$recede" match 62,-8,6 --palette 'PB29, PY43, PR101' --json library.json
run 0 "$recede" match 62,-8,6 --palette 'twin.json, PY43, PR101' --json own.json
grep -q 'another old blue' own.json || fault 'the twin is not used'
sed 's/another old blue/ultramarine blue/' own.json | cmp -s - library.json ||
    fault "other recipes: $(sed 's/another old blue/ultramarine blue/' own.json | diff - library.json)"
scene '["PB29", "PY43", "PR101"]' >moor/one.json
cp twin.json moor
scene '["twin.json", "PY43", "PR101"]' >moor/other.json
run 0 "$recede" study moor/one.json
cp out one.txt
run 0 "$recede" study moor/other.json
sed 's/another old blue/ultramarine blue/' out | cmp -s - one.txt || fault 'another study'

# On the command line: a palette file, a pigment file, both among names, any path.
run 0 "$recede" match 52,-4,2 --palette moor/paints/box.json
grep -q 'my grey' out || fault "no own paint in: $(cat out)"
run 0 "$recede" match 52,-4,2 --palette "$work/moor/paints/grey.json"
run 0 "$recede" match 52,-4,2 --palette 'PB29, moor/paints/grey.json'
run 0 "$recede" chart -o chart.png --palette moor/paints/box.json --rows 'PY43' \
    --columns 'my grey, PB29'
run 0 "$recede" chart -o chart.png --rows PY43 --columns moor/paints/grey.json
run 1 "$recede" match 52,-4,2 --palette moor/paints/box.json --medium oil
one_line 'needs a white'
run 3 "$recede" match 52,-4,2 --palette moor/nix.json
one_line 'moor/nix.json' 'No such file'
run 2 "$recede" match 52,-4,2 --palette 'PB29, moor/paints/box.json'
one_line 'palette file'
printf '{"paints": [7]}' >moor/odd.json
run 1 "$recede" match 52,-4,2 --palette moor/odd.json
one_line 'moor/odd.json:1:13: ' 'name of a paint'

# refused CODE PLACE PART... with the palette on standard input: nothing is written.
refused() {
    expected_code=$1 place=$2
    shift 2
    scene "$(cat)" >moor/bad.json
    rm -f new.png new.json
    echo kept >old.json
    run "$expected_code" "$recede" study moor/bad.json -o new.png --json old.json
    one_line "$place" "$@"
    [ -s out ] && fault "study printed something: $(head -c 80 out)"
    [ ! -e new.png ] || fault 'a study was written'
    [ "$(cat old.json)" = kept ] || fault 'a plan was written'
    run "$expected_code" "$recede" check moor/bad.json -o new.json
    one_line "$place" "$@"
    [ ! -e new.json ] || fault 'a scene was written'
}

echo '"nix.json"' | refused 3 'moor/bad.json:1:23: ' 'moor/nix.json' 'No such file'
echo '["PB29", "nix.json"]' | refused 3 'moor/bad.json:1:32: ' 'moor/nix.json' 'No such file'
pigment 'out of it' 1 >outside.json
echo '["PB29", "../outside.json"]' | refused 1 'moor/bad.json:1:32: ' '..' 'same folder'
echo "[\"PB29\", \"$work/outside.json\"]" | refused 1 'moor/bad.json:1:32: ' 'root' 'same folder'
printf '%s' '"c:\\outside.json"' | refused 1 'moor/bad.json:1:23: ' 'backslash' 'same folder'
mkdir moor/folder.json
echo '"folder.json"' | refused 3 'moor/bad.json:1:23: ' 'folder.json' 'directory'
head -c 1048577 /dev/zero | tr '\0' ' ' >moor/large.json
echo '"large.json"' | refused 1 'moor/bad.json:1:23: ' 'large.json' '1048576 bytes'
printf '{"name": "a",\n "k": [1, 2,],\n "s": []}' >moor/broken.json
echo '["PB29", "broken.json"]' | refused 1 'moor/broken.json:2:13: ' ']'
printf '{"paints": [\n "broken.json"]}' >moor/paints/outer.json
cp moor/broken.json moor/paints
echo '"paints/outer.json"' | refused 1 'moor/paints/broken.json:2:13: ' ']'
printf '{"paints": [\n "../broken.json"]}' >moor/paints/outer.json
echo '"paints/outer.json"' | refused 1 'moor/paints/outer.json:2:2: ' '..'
printf '{"paints": [\n "nix.json"]}' >moor/paints/outer.json
echo '"paints/outer.json"' | refused 3 'moor/paints/outer.json:2:2: ' 'moor/paints/nix.json'
pigment 'ultramarine blue' 1 >moor/twin.json
echo '["PB29", "twin.json"]' | refused 1 'moor/bad.json:1:32: ' 'stands twice'
no_faults
