#!/bin/sh
# recede swatch: paints of the library go in as swatches, measured, given as colours or
# photographed, with noise, and come out as they were; and everything that cannot be
# learnt is refused, with what to do next, and nothing written. tests/cli/swatches.py
# makes the swatches, with films and colours worked out a second time.
. tests/cli/lib.sh

swatches() {
    task=$1
    shift
    /usr/bin/python3 "$source/tests/cli/swatches.py" "$task" "$source" "$@" >near ||
        fault "swatches.py $task $*: $(cat near)"
}

# Round trips: within 1.0 CIEDE2000 at every strength, of spectra (noise of 0.001 in
# reflectance, written as CGATS) and of Lab (noise of 0.5), watercolour and opaque.
for paint in 'ultramarine blue' 'hansa yellow' 'burnt sienna' 'phthalo green, blue shade' \
    'cadmium red' 'lamp black' 'chromium oxide green'; do
    swatches spectra "$paint" 1
    run 0 "$recede" swatch card.json --measured readings.txt -o mine.json
    swatches near mine.json 1.0 "$paint"
    swatches labs "$paint" 1
    run 0 "$recede" swatch card.json -o mine.json
    swatches near mine.json 1.0 "$paint"
    swatches tints "$paint" 1
    run 0 "$recede" swatch card.json -o mine.json
    swatches near mine.json 1.0 "$paint"
done
swatches labs 'lamp black' 1
run 0 "$recede" swatch card.json
grep -q 'palest swatch, 16 water' out || fault "it does not ask for a thinner wash: $(cat out)"
swatches labs 'hansa yellow' 1
run 0 "$recede" swatch card.json
grep -q 'palest swatch' out && fault "it asks for a thinner wash: $(cat out)"
swatches tints 'burnt sienna' 1
run 0 "$recede" swatch card.json -o mine.json
grep -q '"measured": "5 swatches measured as spectra; fitted within 0' mine.json ||
    fault "how it was measured is not told: $(head -c 300 mine.json)"
grep -q '"medium": "oil"' mine.json || fault 'the medium is lost'
grep -q 'white to 1 paint' out || fault "no tints in the table: $(cat out)"
grep -q 'water' out && fault "water on an oil paint: $(cat out)"

# Spectra without the surface's own reflection: the same paint (the probe reads 1 on a
# perfect white all the same, so of internal R it reads R (1 - k2) / (1 - k2 R)).
swatches spectra 'burnt sienna' 2
/usr/bin/python3 - <<'END' || fault 'no readings without the surface'
import json, re
def inside(percent):
    outer = float(percent) / 100
    inner = (outer - 0.03) / (0.97 * 0.35 + 0.65 * (outer - 0.03))
    return "%.4f" % (35 * inner / (1 - 0.65 * inner))
lines = open("readings.txt").read().split("\n")
at = lines.index("BEGIN_DATA") + 1
while lines[at] != "END_DATA":
    name, *values = lines[at].split()
    lines[at] = " ".join([name] + [inside(v) for v in values])
    at += 1
open("readings.txt", "w").write("\n".join(lines))
card = json.load(open("card.json"))
json.dump(dict(card, surface="excluded"), open("card.json", "w"))
twin = dict(card["paints"][0], name="twin")
json.dump(dict(card, surface="excluded", paints=card["paints"] + [twin]), open("two.json", "w"))
END
run 0 "$recede" swatch card.json --measured readings.txt -o mine.json
swatches near mine.json 1.0 'burnt sienna'
grep -q "without the surface's own reflection" out || fault 'the surface is not told of'

# A paper read so is not as seen: the palette file leaves it out.
run 0 "$recede" swatch two.json --measured readings.txt -o box.json
grep -q '"paper"' box.json && fault 'the paper was taken as it looks'
grep -q '"name": "twin"' box.json || fault 'the second paint is not in the file'

# A photograph: three paints, coloured light, stray light, noise. One is more vivid than
# the file's colours reach, is told as clipped, and comes within 2.
swatches photo 5 'yellow ochre' 'burnt sienna' 'ultramarine blue'
run 0 "$recede" swatch card.json --photo card.png -o box.json
cp out photo.txt
swatches near box.json 2.0 'yellow ochre' 'burnt sienna' 'ultramarine blue'
grep -q 'clipped, a channel' out || fault "clipping is not told: $(cat out)"
grep -q 'my ultramarine blue, 3 water to 1 paint' out || fault 'nor where'
grep -q 'my yellow ochre, masstone' out && fault "clipped where it is not: $(cat out)"
swatches near box.json 1.0 'yellow ochre' 'burnt sienna'
grep -q '"paper"' box.json || fault 'the paper is not in the file'
run 0 "$recede" swatch card.json --photo bright.png
grep -q 'the card is clipped' out || fault "an exposure too long is not told: $(cat out)"
sed 's/\[192, 10, 40, 40\]/[180, 14, 40, 28]/' card.json >edge.json
run 0 "$recede" swatch edge.json --photo card.png
grep -q 'an edge or streaks in the patch: the paper\.' out || fault "an edge is not told: $(cat out)"
grep -q 'patches disagree' out && fault 'the card is told to disagree'
grep -q 'makes this paint doubtful' out && fault "doubtful for the paper's edge: $(cat out)"
sed 's/\[64, 14, 28, 28\]/[64, 14, 38, 28]/' card.json >glare.json
run 0 "$recede" swatch glare.json --photo card.png
[ "$(grep -c 'makes this paint doubtful' out)" = 1 ] || fault "no doubt of a masstone: $(cat out)"
sed 's/0\.18,/0.25,/' card.json >wrong.json
run 0 "$recede" swatch wrong.json --photo card.png
grep -q 'patches disagree' out || fault "a card misnamed is not told: $(cat out)"
run 1 "$recede" swatch card.json --photo sloping.png -o new.json
one_line 'card.json:1:' 'a colour that no paper has' 'even light'

# One paint makes a pigment file, several a palette file: both hold to their schemas, and
# plan a scene; nothing is written without -o; to standard output goes the file alone.
python="/usr/bin/python3 $source/tests/cli/own_paints.py"
$python valid "$source/docs" palette box.json || fault 'not a palette file'
$python valid "$source/docs" pigment mine.json || fault 'not a pigment file'
printf '{"paint": {"palette": "box.json"}, "planes": [%s]}' "$plane" >scene.json
run 0 "$recede" study scene.json
grep -q 'my yellow ochre' out || fault "the paints are not used: $(cat out)"
run 0 "$recede" match 60,10,40 --palette mine.json
run 0 "$recede" swatch card.json --photo card.png
grep -q 'Nothing is written' out || fault 'it does not say that nothing is written'
run 0 "$recede" swatch card.json --photo card.png -o -
cmp -s out box.json || fault 'standard output holds something else than the file'
"$recede" swatch - --photo card.png -o again.json <card.json >/dev/null || fault 'not from -'
cmp -s again.json box.json || fault 'standard input reads differently'

# Cautions: the painter's own words, else the library's for the Colour Index name.
lab='{"water":0,"lab":[48,64,45]},{"water":3,"lab":[62,56,40]},{"water":9,"lab":[78,32,24]}'
card() {
    printf '{"paper":{"lab":[95,0,3]},\n"paints":[{"name":"mine",%s"swatches":[%s]}]}' "$1" "$2"
}
card '"colour_index":"PR108",' "$lab" >card.json
run 0 "$recede" swatch card.json -o mine.json
grep -q '"caution": "cadmium' mine.json || fault 'no caution of the library'
grep -q 'Caution: cadmium' out || fault "no caution in the table: $(cat out)"
card '"colour_index":"PR108","caution":"gloves",' "$lab" >card.json
run 0 "$recede" swatch card.json -o mine.json
grep -q '"caution": "gloves"' mine.json || fault "the painter's caution is lost"

# The description keeps to its schema; changed ones do not.
cp "$source/docs/swatch-card.json" .
/usr/bin/python3 "$source/tests/cli/swatch_schema.py" "$source/docs/swatches.schema.json" \
    card.json swatch-card.json || fault 'the schema'

# refused CODE PLACE PART... with the description on standard input and OPTIONS: one
# line says what is wrong and what to do, and nothing is written.
options=
refused() {
    code=$1 place=$2
    shift 2
    cat >bad.json
    echo kept >old.json
    rm -f new.json
    run "$code" "$recede" swatch bad.json $options -o new.json
    one_line "$place" "$@"
    [ -s out ] && fault "it printed something: $(head -c 80 out)"
    [ ! -e new.json ] || fault "a file was written: $place"
    run "$code" "$recede" swatch bad.json $options -o old.json
    [ "$(cat old.json)" = kept ] || fault 'a file was replaced'
}
masstone='{"water":0,"lab":[40,60,40]}'
card '' "$masstone" |
    refused 1 'bad.json:2:11: ' 'has 1 swatch, and needs 3' 'paint out thinner washes'
card '' "$masstone,{\"water\":3,\"lab\":[60,40,30]}" |
    refused 1 'bad.json:2:11: ' 'has 2 swatches, and needs 3' '3 and 8 water'
card '' '{"water":1,"lab":[45,60,40]},{"water":3,"lab":[60,40,30]},{"water":9,"lab":[75,20,15]}' |
    refused 1 'bad.json:2:11: ' 'no masstone' '"water": 0'
card '' "$masstone,{\"water\":3,\"lab\":[60,40,30]},{\"water\":9,\"lab\":[20,20,15]}" |
    refused 1 'bad.json:2:96: ' 'L* 20.0, darker than its masstone with L* 40.0' 'exchanged'
card '' "$masstone,{\"water\":3,\"lab\":[60,40,30]},{\"water\":3,\"lab\":[61,40,30]}" |
    refused 1 'bad.json:2:96: ' 'as much water' 'another strength'
card '' "$masstone,{\"water\":3,\"lab\":[60,-40,30]},{\"water\":9,\"lab\":[70,20,-35]}" |
    refused 1 'bad.json:2:' 'contradict one another' 'off'
card '' "$lab" | sed 's/95,0,3/45,0,3/' |
    refused 1 'bad.json:1:17: ' 'L* 45.0' 'read the bare paper'
card '' "$lab" | sed 's/95,0,3/0.95,0,0.03/' |
    refused 1 'bad.json:1:17: ' 'L* 0.9' 'Lab runs from L* 0 to 100'
# a dark paper goes before the washes; on white paper they are doubted
yellow='{"water":0,"lab":[68,5,60]},{"water":3,"lab":[50,2,50]},{"water":9,"lab":[60,0,20]}'
card '' "$yellow" | sed 's/95,0,3/64,0,3/' |
    refused 1 'bad.json:1:17: ' 'L* 64.0, darker than paper for washes' 'before you doubt a wash'
card '' "$yellow" | refused 1 'bad.json:2:' 'darker than its masstone'
card '' "$lab" | sed 's/95,0,3/65,0,3/' |
    refused 1 'bad.json:1:17: ' 'L* 65.0' 'before you doubt a wash, read the bare paper'
card '' "$lab" | sed 's/95,0,3/73,0,3/' |
    refused 1 'bad.json:1:17: ' 'L* 73.0, darker than a swatch' 'read the bare paper'
shares='{"water":0,"lab":[0.4,0.6,0.4]},{"water":3,"lab":[0.6,0.4,0.3]},{"water":9,"lab":[0.8,0.2,0]}'
card '' "$shares" |
    refused 1 'bad.json:2:' 'Lab runs from L* 0 to 100' 'shares of 1?'
card '' "$lab" | sed 's/"paper".*/"medium":"watercolour",/' |
    refused 1 'bad.json:1:1: ' 'no "paper"' 'read the bare paper'
card '' "$lab" | sed 's/"paints"/"paint"/' | refused 1 'bad.json:2:1: ' 'did you mean "paints"'
card '' "$masstone,{\"water\":3,\"patch\":[0,0,9,9]}" | refused 1 'bad.json:2:86: ' '--photo FILE'
card '' "$masstone,{\"water\":3,\"sample\":\"A1\"}" | refused 1 'bad.json:2:87: ' '--measured FILE'
card '' "$lab" | sed '2s/^/"card":[{"reflectance":1,"patch":[0,0,9,9]}],/' |
    refused 1 'bad.json:2:9: ' '"card"' '--photo FILE'
printf '{"medium":"oil","paints":[{"name":"a","swatches":[{"white":0,"lab":[40,0,0]}]}]}' |
    refused 1 'bad.json:1:27: ' 'has 1 swatch' '2 and 8 white'
echo '{"paints": [' | refused 1 'bad.json:2:1: ' ''

swatches spectra 'burnt sienna' 2
options='--measured readings.txt'
sed 's/"A3"/"A33"/' card.json | refused 1 'bad.json:1:' '"A33"' '"A3"'
card '' "$lab" | refused 1 'bad.json:1:1: ' 'nothing here is a "sample"'
sed 's/"sample": "paper"/"lab": [95, 0, 3]/; s/"paper"/"surface": "excluded", "paper"/' card.json |
    refused 1 'bad.json:1:' 'only spectra'
sed 's/^A3 [0-9.]*/A3 125/' readings.txt >over.txt
options='--measured over.txt'
refused 1 'over.txt:' '125' 'expected a reflectance' <card.json
sed 's/^A2 /A1 /' readings.txt >twice.txt
options='--measured twice.txt'
refused 1 'twice.txt:' 'A1' <card.json
# Colours by their samples' names, of which one stands twice.
labs='SAMPLE_ID SAMPLE_NAME LAB_L LAB_A LAB_B'
printf '%s\n' CGATS.17 'ILLUMINANT "D65"' 'OBSERVER "2"' 'NUMBER_OF_FIELDS 5' BEGIN_DATA_FORMAT \
    "$labs" END_DATA_FORMAT 'NUMBER_OF_SETS 5' BEGIN_DATA '1 paper 95 0 3' '2 thick 48 64 45' \
    '3 wash 62 56 40' '4 pale 78 32 24' '5 wash 63 56 40' END_DATA >labs.txt
named='{"water":0,"sample":"thick"},{"water":9,"sample":"pale"},{"water":3,"sample":'
card '' "$named\"3\"}" | sed 's/"lab":\[95,0,3\]/"sample":"paper"/' >named.json
run 0 "$recede" swatch named.json --measured labs.txt
grep -q '^masstone  *L\* 48' out || fault "not the colours of the file: $(cat out)"
options='--measured labs.txt'
sed 's/"3"/"wash"/' named.json | refused 1 'bad.json:2:' '2 samples' 'SAMPLE_ID'
sed 's/^{/{"surface":"excluded",/' named.json |
    refused 1 'bad.json:1:' 'no spectrum' 'leave "surface" out'
options='--measured nix.txt'
refused 3 'nix.txt' 'No such file' <card.json
printf 'CGATS.17\n' >short.txt
options='--measured short.txt'
refused 1 'short.txt:' '' <card.json

swatches photo 5 'burnt sienna'
options='--photo card.png'
sed 's/\[192, 10, 40, 40\]/[220, 10, 40, 40]/' card.json |
    refused 1 'bad.json:1:' 'ends at pixel 260 across' '240 wide and 140 high'
sed 's/\[192, 10, 40, 40\]/[192, 110, 40, 40]/' card.json |
    refused 1 'bad.json:1:' 'ends at pixel 150 down' '240 wide and 140 high'
sed 's/"card": \[[^]]*\]}, [^]]*\]}, [^]]*\]}\], //' card.json |
    refused 1 'bad.json:1:1: ' 'no "card"' 'grey or white card'
sed 's/0\.9,/0.01,/' card.json | refused 1 'bad.json:1:' '0.01' '0.02 to 1'
sed 's/0\.9,/0.05,/; s/0\.04,/0.9,/' card.json | refused 1 'bad.json:1:' 'reads lighter' 'exchanged'
card '' "$lab" | refused 1 'bad.json:1:1: ' 'nothing here is a "patch"'
# a dark card said to be white: what is lighter than it is lighter than white
printf '{"medium":"oil","card":[{"reflectance":1,"patch":[14,58,28,28]}],
"paints":[{"name":"a","swatches":[{"white":0,"patch":[64,14,28,28]},
{"white":1,"patch":[108,14,28,28]},{"white":3,"patch":[152,14,28,28]}]}]}' |
    refused 1 'bad.json:' 'Lab value of' '0 to 110' 'read it again'
options='--photo card.json'
refused 1 'card.json' 'PNG' <card.json
options='--photo nix.png'
refused 3 'nix.png' 'No such file' <card.json
head -c 2000 card.png >cut.png
options='--photo cut.png'
refused 1 'cut.png' '' <card.json

# Usage, and what cannot be read or written.
run 2 "$recede" swatch
one_line 'name the description' '--help'
run 2 "$recede" swatch card.json card.json
run 3 "$recede" swatch nix.json -o new.json
one_line 'nix.json' 'No such file'
run 3 "$recede" swatch card.json --photo card.png -o nix/new.json
one_line 'nix/new.json'
head -c 1048577 /dev/zero | tr '\0' ' ' >large.json
run 1 "$recede" swatch large.json
one_line '1048576 bytes'
no_faults
