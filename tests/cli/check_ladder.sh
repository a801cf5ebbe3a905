#!/bin/sh
# recede ladder through the real program: what it writes, and what it refuses.
. tests/cli/lib.sh

printf '{"paint":{"palette":"landscape-six","most_pigments":2,"most_parts":4},"planes":[%s]}' \
    "$plane" >small.json

# What it writes: a PNG of four pages with its numbers inside, a PDF, JSON, text.
run 0 "$recede" ladder small.json -o ladder.png --json ladder.json
pngcheck -q ladder.png >/dev/null || fault 'pngcheck does not like ladder.png'
pngcheck ladder.png | grep -q '3508x9920' || fault "not four pages: $(pngcheck ladder.png)"
pngcheck -v ladder.png | grep -q 'iTXt' || fault 'nothing is kept inside ladder.png'
grep -q '^Then greyer' out || fault 'no text to read out'
tr '\n' ' ' <out | grep -q 'The paper must hold the sunlit white too' ||
    fault 'no word of the scale that the white sets'
[ "$(tr '\n' ' ' <out | grep -o 'C\* [0-9]* (CIELAB chroma)' | wc -l)" = 2 ] ||
    fault 'C* is not named where each air begins'
[ "$(tr '\n' ' ' <out | grep -o 'chroma' | wc -l)" = 3 ] || fault 'chroma without its name'
[ "$(grep -c '^- At ' out)" = 18 ] || fault "not a caption for each of 18 rungs: $(cat out)"
run 0 "$recede" ladder small.json -o ladder.PDF
[ "$(head -c 5 ladder.PDF)" = '%PDF-' ] || fault 'ladder.PDF is no PDF'
run 0 "$recede" ladder small.json --blank -o blank.png
pngcheck blank.png | grep -q '3508x4960' || fault 'the exercise and its answers are not two pages'
run 0 "$recede" ladder small.json --blank -o - </dev/null
pngcheck -q out >/dev/null || fault 'no PNG on standard output'
run 0 "$recede" ladder small.json --json -
/usr/bin/python3 - out ladder.json <<'END' || fault 'the JSON is not what it should be'
import json, math, sys
out, ladder = (json.load(open(name)) for name in sys.argv[1:])
assert out == ladder
assert [air["visibility_km"] for air in ladder["airs"]] == [20, 5]
assert len(ladder["lessons"]) == 5
for air in ladder["airs"]:
    assert [rung["distance_m"] for rung in air["rungs"]] == [10, 30, 100, 300, 1000, 2000, 5000,
                                                            10000, 20000]
    for rung in air["rungs"]:
        for row in ("lit", "shadow", "white"):
            wash = rung[row]
            assert 0 <= wash["own_share"] <= 1
            # of the light, weighed by the eye: about that of the middle bands
            own, air_light = wash["own_light"], wash["air_light"]
            assert len(own) == len(air_light) == 36
            middle = slice(12, 24)
            share = sum(own[middle]) / (sum(own[middle]) + sum(air_light[middle]))
            assert math.isclose(share, wash["own_share"], abs_tol=0.03), (share, wash["own_share"])
END

# The same whatever the order of distances, the locale and the place.
run 0 "$recede" ladder small.json --distances '10 m,1 km, 400 yd' --json one.json
run 0 env -i LC_ALL=de_DE.UTF-8 "$recede" ladder small.json --distances='400 yd, 10 m, 1km' --json two.json
cmp -s one.json two.json || fault 'order or locale changes the ladder'

# Its options.
for options in "--foliage willow" "--surface slate" "--colour #a03020" "--white snow" \
    "--visibility 30km --haze-visibility haze"; do
    # shellcheck disable=SC2086
    run 0 "$recede" ladder $options small.json
    [ -s out ] || fault "nothing to read: $options"
done
run 0 "$recede" ladder "$source/scenes/evening-into-sun.json" --distances '50 m, 2 km'
grep -q 'sun 8 degrees high' out || fault "the scene's light was not taken"
"$recede" ladder --help >help || fault 'ladder --help'
grep -q '^recede ladder \[SCENE\]' help || fault 'ladder --help does not start with its usage'

# Wrong usage.
wrong() {
    why=$1
    shift
    run 2 "$recede" ladder small.json "$@" -o none.png
    one_line 'recede ladder' "$why" 'see recede ladder --help'
    [ -e none.png ] && fault "none.png was made: $*"
}
run 2 "$recede" ladder --foliage oak
one_line 'did you mean "summer oak"?' 'ecede ladder --help'
wrong 'keep one' --foliage willow --surface slate
wrong '#rrggbb' --colour red
wrong '#rrggbb' --colour '#12345g'
wrong 'is 4 parsec' --distances '10 m, 4 parsec'
wrong 'two or more' --distances '10 m'
wrong 'it stands twice' --distances '10 m, 1 km, 1000 m'
wrong 'expected 10 cm to 300 km' --distances '1 cm, 1 m'
wrong 'does not start with a number' --distances '10 m,,1 km'
wrong 'more than 12' --distances '1m,2m,3m,4m,5m,6m,7m,8m,9m,10m,11m,12m,13m'
wrong 'expected 20 m to 250 km' --visibility '1 m'
wrong 'does not start with a number' --visibility murky
wrong 'no thicker' --visibility '5 km' --haze-visibility '6 km'
run 2 "$recede" ladder a b
one_line 'one word too many' 'see recede ladder --help'

# Refused input, and what cannot be read or written.
printf '{"planes":[{"name":"a","distance":-4,"foliage":"willow"}]}' >bad.json
run 1 "$recede" ladder bad.json -o none.png
one_line 'bad.json:1:35: ' 'distance is -4'
run 3 "$recede" ladder none.json -o none.png
one_line 'none.json: cannot be read'
[ -e none.png ] && fault 'none.png was made'
for place in none/a.png . /dev/full; do
    run 3 "$recede" ladder small.json -o "$place"
    one_line "$place: cannot be written"
    [ -s out ] && fault "printed, although nothing was done: $place"
done
run 3 sh -c "exec '$recede' ladder small.json >/dev/full"
one_line 'standard output: cannot be written'
[ -z "$(ls -A | grep '^\.')" ] || fault "hidden files are left: $(ls -A)"

no_faults
