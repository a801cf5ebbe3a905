"""The formats of docs/paints.md: its examples taken out, and files held to the
schemas, with a general-purpose validator.

    own_paints.py examples DOCS             writes my-green.json, box.json, scene.json
    own_paints.py scenes DOCS               and of docs/scene.md plain.json, object.json
    own_paints.py apart PLAN PLAN           where two plans differ, their palettes' names aside
    own_paints.py valid DOCS KIND FILE...   KIND is pigment, palette or scene
    own_paints.py changed DOCS              changed ones, which the schemas must refuse
"""
import copy
import json
import re
import sys

import jsonschema

NAMES = {"paints.md": ["my-green.json", "box.json", "scene.json"],
         "scene.md": ["plain.json", "object.json"]}


def schema(docs, kind):
    with open("%s/%s.schema.json" % (docs, kind)) as file:
        content = json.load(file)
    jsonschema.Draft202012Validator.check_schema(content)
    return jsonschema.Draft202012Validator(content)


def write_examples(docs, page):
    with open("%s/%s" % (docs, page)) as file:
        examples = re.findall("```json\n(.*?)```", file.read(), re.S)
    if len(examples) != len(NAMES[page]):
        return 1
    for name, example in zip(NAMES[page], examples):
        with open(name, "w") as file:
            file.write(example)
    return 0


def differ(*paths):
    """The keys under which two plans differ; the name that the palette goes by may."""
    plans = []
    for path in paths:
        with open(path) as file:
            plans.append(json.load(file))
        for paint in (plans[-1]["paint"], plans[-1]["scene"]["paint"]):
            del paint["palette"]
    keys = plans[0].keys() | plans[1].keys()
    return " ".join(sorted(key for key in keys if plans[0].get(key) != plans[1].get(key))) or 0


def check_valid(docs, kind, paths):
    faults = 0
    for path in paths:
        with open(path) as file:
            for error in schema(docs, kind).iter_errors(json.load(file)):
                print("%s: %s" % (path, error.message[:300]))
                faults += 1
    return faults


BANDS = [0.5] * 36
PIGMENT = {"name": "a", "k": BANDS, "s": BANDS}
PALETTE = {"paints": ["PB29"]}
PLANE = {"name": "a", "distance": 1, "mix": {"PB29": 1}}
SCENE = {"planes": [PLANE]}
CHANGES = [
    ("pigment", PIGMENT, [{"name": ""}, {"name": "water"}, {"name": ...}, {"k": ...}, {"s": ...},
                          {"k": BANDS[1:]}, {"s": [-1] + BANDS[1:]}, {"k": [1e7] + BANDS[1:]},
                          {"medium": "ink"}, {"is_white": 1}, {"extra": 1}, {"source": 5},
                          {"caution": "a\u202e"}]),
    ("palette", PALETTE, [{"paints": ...}, {"paints": []}, {"paints": ["a"] * 2},
                          {"paints": ["../a.json"]}, {"paints": ["/a.json"]},
                          {"paints": ["b//a.json"]}, {"paints": ["b\\a.json"]},
                          {"paints": ["c:a.json"]}, {"paints": [{"name": "a"}]},
                          {"paints": [str(i) for i in range(25)]}, {"paper": {}},
                          {"paper": {"lab": [90, 0, 0], "colour": "#ffffff"}},
                          {"paper": {"reflectance": BANDS[1:]}}, {"medium": "ink"}]),
    ("scene", SCENE, [{"paint": {"palette": "../a.json"}}, {"paint": {"palette": ["/a.json"]}},
                      {"paint": {"palette": [{"name": "a", "k": BANDS}]}}] +
     [{"paint": {"palette": palette}} for palette in
      ({}, {"paints": []}, {"paints": "PB29"}, {"paints": ["PB29"], "purpse": "a"}, 7,
       {"paints": ["PB29", "PB29"]}, {"paints": [PIGMENT, {"name": "b"}]},
       {"paints": ["PB29"], "medium": "ink"}, {"paints": ["PB29"], "paper": {}})] +
     [{"planes": [dict(PLANE, mix=mix)]} for mix in
      ({}, {"water": 2}, {"PB29": 0}, {"PB29": 1.5}, {"PB29": 13}, {"PB29": 1, "water": -1},
       {"PB29": 1, "water": 1001}, {str(i): 1 for i in range(6)}, ["PB29"])] +
     [{"planes": [dict(PLANE, foliage="willow")]}]),
]


def check_changed(docs):
    faults = 0
    for kind, document, changes in CHANGES:
        checker = schema(docs, kind)
        if not checker.is_valid(document):
            print("%s: refused as it stands" % kind)
            faults += 1
        for change in changes:
            changed = copy.deepcopy(document)
            for key, value in change.items():
                if value is ...:
                    del changed[key]
                else:
                    changed[key] = value
            if checker.is_valid(changed):
                print("%s: accepted with %r" % (kind, change))
                faults += 1
    return faults


def main(task, docs, *rest):
    if task in ("examples", "scenes"):
        return write_examples(docs, "paints.md" if task == "examples" else "scene.md")
    if task == "apart":
        return differ(docs, *rest)
    if task == "valid":
        return 1 if check_valid(docs, rest[0], rest[1:]) else 0
    return 1 if check_changed(docs) else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
