#!/bin/sh
# One beyond every limit of docs/limits.md: refused, with the words that the table has,
# and nothing written. Text from files is data, and no name in a file chooses where to
# write. Seen to fail with each limit lifted or lowered, with marks of direction, C1 and
# escapes let through, and with a name taken for an output, as tools/mutations.txt lists.
set -eu
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
recede=$(cd "$(dirname "$BUILD/recede")" && pwd)/recede
status=0
fault() { echo "limits: $*"; status=1; }

/usr/bin/python3 - "$work" <<'END'
import json, os, sys
os.chdir(sys.argv[1])
plane = {"name": "a", "distance": 10, "surface": "rock"}
paints = ["hansa yellow", "cadmium yellow, light", "aureolin", "diarylide yellow", "naples yellow",
          "yellow ochre", "burnt sienna", "raw sienna", "cadmium red", "pyrrole red",
          "quinacridone magenta", "red iron oxide", "burnt umber", "raw umber", "dioxazine violet",
          "ultramarine blue", "cobalt blue", "indanthrone blue", "cobalt chromite blue",
          "phthalo blue, green shade", "prussian blue", "indigo", "viridian", "cobalt green",
          "green earth"]
def scene(**more):
    return json.dumps({"planes": [plane], **more}, ensure_ascii=False)
cases = {
    "larger than the 1048576 bytes": scene() + " " * (1 << 20),
    "nested deeper than 16": '{"planes":' + "[" * 17 + "]" * 17 + "}",
    "found a string of 201 bytes": scene(title="x" * 201),
    "found a number of 42 characters": scene().replace("10", "1." + "0" * 40),
    "the first beyond 64": json.dumps({"planes": [{**plane, "name": str(i)} for i in range(65)]}),
    "a palette has at most 24": scene(paint={"palette": paints}),
    "most_pigments is 5; expected 1 to 4": scene(paint={"most_pigments": 5}),
    "most_parts is 13; expected 1 to 12": scene(paint={"most_parts": 13}),
    "expected 0.02 km to 250 km": scene(air={"visibility": "251 km"}),
    "the control character U+202E in": scene(title="a\u202eb"),
    "an escape for the control character U+202E": json.dumps({"title": "a\u202eb", "planes": [plane]}),
    "the control character U+0085": scene(title="a\u0085b"),
    "the control character U+001B": '{"title":"a\x1b[31m"}',
    "the control character U+0000": '{"title":"a\0b"}',
    "which is not UTF-8": b'{"title":"a\xff"}',
}
for number, (words, text) in enumerate(cases.items()):
    with open(f"{number}.json", "wb") as file:
        file.write(text if isinstance(text, bytes) else text.encode())
    with open(f"{number}.words", "w") as file:
        file.write(words)
# just within
with open("within.json", "w") as file:
    file.write(json.dumps({"title": "<b>&amp;</b>" + "x" * 188,
                           "paint": {"palette": paints[:24], "most_pigments": 1, "most_parts": 1},
                           "planes": [{**plane, "name": str(i)} for i in range(64)]}))
END

cd "$work"
count=0
for words in *.words; do
    scene=${words%.words}.json
    code=0
    "$recede" study "$scene" -o out.png --json out.json > said 2> complaint || code=$?
    [ "$code" = 1 ] || fault "$scene: exit code $code, not 1"
    [ "$(wc -l < complaint)" = 1 ] || fault "$scene: not one line: $(cat complaint)"
    grep -q "^$scene:" complaint || fault "$scene: the message does not begin with the file"
    grep -qF "$(cat "$words")" complaint || fault "$scene: $(cat complaint)"
    [ ! -s said ] || fault "$scene: something on standard output"
    [ ! -e out.png ] && [ ! -e out.json ] || fault "$scene: something was written"
    sed 's/^[^:]*:[0-9:]* */    /' complaint
    count=$((count + 1))
done
"$recede" check within.json > full.json || fault 'what stands just within the limits is refused'
grep -qF '<b>&amp;</b>' full.json || fault 'markup is not kept as plain text'

# Names that are paths, in every place of a file that holds a name: outputs stand where
# the command line says, and nowhere else. The palette and paints are invented.
mkdir -p names/here
cd names/here
/usr/bin/python3 - "$work/names" <<'END'
import json, sys
paths = ["../above.png", sys.argv[1] + "/root.json", "plain.png", "plain.json", "none/below.png"]
bands = [0.25] * 36
paints = [{"name": path, "source": path, "caution": path, "k": bands, "s": bands}
          for path in paths]
card = {"medium": "watercolour", "paper": {"lab": [95, 0, 4]},
        "paints": [{"name": "../above.json", "colour_index": paths[1], "source": paths[2],
                    "swatches": [{"water": 0, "lab": [30, 45, -80]},
                                 {"water": 3, "lab": [48, 15, -62]},
                                 {"water": 15, "lab": [74, -2, -32]}]}]}
scene = {"title": paths[1], "paint": {"palette": "box.json", "most_pigments": 1},
         "planes": [{"name": path, "distance": 30 * 4 ** i, "surface": "rock"}
                    for i, path in enumerate(paths)]}
box = {"purpose": paths[0], "paints": paints}
for name, what in (("box", box), ("card", card), ("scene", scene)):
    with open(name + ".json", "w") as file:
        json.dump(what, file)
END
stood='./complaint ./here/box.json ./here/card.json ./here/scene.json ./said '
tried=0
for words in "study scene.json -o out.png --json out.json" "study scene.json -o out.pdf" \
    "check scene.json -o out.json" "chart scene.json --range -o out.png" \
    "wish scene.json --steps 0.1" \
    "puddle scene.json -o out.png --json out.json" "ladder scene.json -o out.png" \
    "skies scene.json -o out.png" "palette box.json -o out.png --json out.json" \
    "swatch card.json -o out.json"; do
    # shellcheck disable=SC2086
    "$recede" $words > ../said 2> ../complaint || fault "recede $words: $(cat ../complaint)"
    rm -f out.png out.pdf out.json
    left=$(cd .. && find . -type f | LC_ALL=C sort | tr '\n' ' ')
    [ "$left" = "$stood" ] ||
        fault "recede $words: other files stand there: $left"
    tried=$((tried + 1))
done
cd "$work"
if ls -a | grep -q '\.part\|\.tmp'; then fault 'a temporary file is left'; fi
echo "$count limits and kinds of text; $tried commands with paths for names"
exit $status
