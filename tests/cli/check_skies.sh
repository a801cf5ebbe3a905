#!/bin/sh
# recede skies through the real program: what it writes, and what it refuses.
. tests/cli/lib.sh

printf '{"paint":{"palette":"landscape-six","most_pigments":2,"most_parts":4},"planes":[%s,
    {"name":"far ridge","distance":"9 km","foliage":"heather"}]}' "$plane" >small.json

# What it writes.
run 0 "$recede" skies small.json -o skies.png --json skies.json
pngcheck -q skies.png >/dev/null || fault 'pngcheck does not like skies.png'
pngcheck skies.png | grep -q '3508x' || fault "not A4 at 300 dots: $(pngcheck skies.png)"
pngcheck -v skies.png | grep -q 'iTXt' || fault 'nothing is kept inside skies.png'
for light in 'morning haze' 'clear noon' 'overcast' 'evening, into the sun' \
    'evening, the sun behind'; do
    grep -q "^$light: visibility" out || fault "no $light in: $(cat out)"
done
grep -q '^- top of the sky: ' out || fault "the sky's top has another name"
grep -q 'never look into it' out || fault 'no caution about the sun'
run 0 "$recede" skies small.json -o skies.pdf
[ "$(head -c 5 skies.pdf)" = '%PDF-' ] || fault 'skies.pdf is no PDF'
run 0 "$recede" skies small.json --json -
cmp -s out skies.json || fault '--json - prints something else'

# Each light's changes are those between the two studies; the scene's own light
# changes nothing.
cat >lights.json <<'END'
{"lights": [
  {"name": "the same"},
  {"name": "frost", "air": {"visibility": "60 km"}, "light": {"sun_height": "1 fist", "sun_side": "side"}},
  {"name": "an orange evening", "light": {"sky": "painted", "horizon": "#f0a060", "light": "#ffe8d0"}}
]}
END
run 0 "$recede" skies small.json --lights lights.json --json three.json
/usr/bin/python3 - >frost.json <<'END' || fault 'python'
import json
scene = json.load(open("small.json"))
scene["air"] = {"visibility": "60 km"}
scene["light"] = {"sun_height": 10, "sun_side": 90}
print(json.dumps(scene))
END
run 0 "$recede" study small.json --json before.json -o before.pdf
run 0 "$recede" study frost.json --json after.json -o after.pdf
/usr/bin/python3 - <<'END' || fault 'the changes are not what they should be'
import json, math
skies, before, after = (json.load(open(name + ".json")) for name in ("three", "before", "after"))
same, frost, orange = skies["lights"]
assert all(change["same"] and change["words"] == "as before" for change in same["changes"])
assert [light["name"] for light in skies["lights"]] == ["the same", "frost", "an orange evening"]

def washes(plan):
    """(plane, side) to wash, flat planes only"""
    return {(plane["name"], side): plane[side] for plane in plan["planes"] for side in ("lit", "shadow")
            if "recipe" in plane[side]}

def names(wash):
    return {pigment["name"] for pigment in wash["recipe"]["pigments"]}

old, new = washes(before), washes(after)
told = {(change["plane"], change["side"]): change for change in frost["changes"]}
assert len(old) == len(new) == 4
for key, wash in new.items():
    change = told[key]
    assert set(change["coming"]) == names(wash) - names(old[key]), key
    assert set(change["going"]) == names(old[key]) - names(wash), key
    assert math.isclose(change["value_step"], wash["mix"]["value"] - old[key]["mix"]["value"],
                        abs_tol=1e-12)
    water, was = (w["recipe"].get("water_per_paint", 0) for w in (wash, old[key]))
    if water and was:
        assert math.isclose(change["water_ratio"], water / was, rel_tol=1e-12)
    else:
        assert "water_ratio" not in change
END
"$recede" skies --help >help || fault 'skies --help'
grep -q '^recede skies \[SCENE\]' help || fault 'skies --help does not start with its usage'

# A file of lights that is wrong: where, and what.
refused() {
    place=$1
    shift
    cat >wrong.json
    run 1 "$recede" skies small.json --lights wrong.json -o none.png
    one_line "wrong.json:$place: " "$@"
    [ -e none.png ] && fault 'none.png was made'
}
refused 1:1 'empty' </dev/null
echo '[]' | refused 1:1 'expected an object with "lights"'
echo '{"lights":[],"more":1}' | refused 1:1 'nothing else'
echo '{"lights":[]}' | refused 1:11 '1 to 8'
echo '{"lights":[{}]}' | refused 1:12 'a light has no "name"'
echo '{"lights":[{"name":"a","planes":[]}]}' | refused 1:24 'planes' 'not known in a light'
echo '{"lights":[{"name":"a","light":{"sun_hight":3}}]}' | refused 1:33 'did you mean "sun_height"?'
echo '{"lights":[{"name":"a"},{"name":"b","light":{"sun_height":95}}]}' |
    refused 1:59 'sun_height is 95' 'expected 0.5 degrees to 90 degrees'
echo '{"lights":[{"name":"a","air":{"visibility":"300 km"}}]}' | refused 1:44 'visibility is "300 km"' 'expected 0.02 km to 250 km'
echo '{"lights":[{"name":"a"},{"name":"a"}]}' | refused 1:25 'stands twice'
echo '{"lights":[{"name":"a","light":{"sky":"painted"}}]}' | refused 1:32 'no "horizon"'
{
    printf '{"lights":['
    for i in 1 2 3 4 5 6 7 8; do printf '{"name":"%d"},' $i; done
    printf '{"name":"9"}]}'
} | refused 1:11 '1 to 8'

# Wrong usage, refused input, what cannot be read or written.
run 2 "$recede" skies a b
one_line 'one word too many' 'see recede skies --help'
run 2 "$recede" skies --light x
one_line 'did you mean "lights"?'
printf '{"planes":[{"name":"a","distance":-4,"foliage":"willow"}]}' >bad.json
run 1 "$recede" skies bad.json
one_line 'bad.json:1:35: ' 'distance is -4'
run 3 "$recede" skies none.json
one_line 'none.json: cannot be read'
run 3 "$recede" skies small.json --lights none.json
one_line 'none.json: cannot be read'
run 3 "$recede" skies small.json -o none/a.png
one_line 'none/a.png: cannot be written'
run 3 sh -c "exec '$recede' skies small.json >/dev/full"
one_line 'standard output: cannot be written'
[ -z "$(ls -A | grep '^\.')" ] || fault "hidden files are left: $(ls -A)"

no_faults
