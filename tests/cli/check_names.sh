#!/bin/sh
# recede names: whatever it lists a scene may use, and it lists what the tables hold.
. tests/cli/lib.sh

run 0 "$recede" names
[ ! -s err ] || fault "names complains: $(cat err)"
cp out names.txt
[ "$(awk 'length > 100' names.txt | wc -l)" = 0 ] || fault 'lines of over 100 columns'
/usr/bin/python3 - "$source/src/data" <<'END' || fault 'the list is not that of the tables'
import json, re, sys
text = open("names.txt").read()
parts = dict(part.split("\n", 1) for part in text.split("\n\n"))
listed = {heading: " ".join(body.split()) for heading, body in parts.items()}
tables = {table: re.findall(r"^name: (.*)$", open(f"{sys.argv[1]}/{table}.txt").read(), re.M)
          for table in ("foliage", "surfaces", "pigments", "palettes", "tubes")}
scenes = 0
for heading, key, table in (("Foliage", "foliage", "foliage"), ("Surfaces", "surface", "surfaces")):
    assert listed[heading].split(", ") == tables[table], listed[heading]
    for name in listed[heading].split(", "):
        plane = {"name": name, "distance": "300 m", key: name}
        with open(f"{scenes}.scene", "w") as file:
            json.dump({"paint": {"palette": ["PB29"], "most_parts": 1}, "planes": [plane]}, file)
        scenes += 1
for heading in ("Pigments", "Palettes", "Tubes"):
    body = next(body for title, body in parts.items() if title.startswith(heading))
    column = None if heading == "Palettes" else 32 # a long name goes on below itself
    there = " ".join(" ".join(line[:column] for line in body.split("\n")).split())
    for name in tables[heading.lower()]:
        assert name in there, name
END
for scene in *.scene; do
    run 0 "$recede" check "$scene"
done
no_faults
