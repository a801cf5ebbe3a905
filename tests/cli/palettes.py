"""What `recede palette --json` writes against its schema, with a general-purpose
validator, and against what the paints are: whatever is told of a pigment stands in
the library's table too, and a paint of one's own in its file.

    palettes.py valid DOCS FILE...
    palettes.py changed DOCS LIST SHOWN      changed ones, which the schema must refuse
    palettes.py table TABLE LIST             LIST tells what the table has
    palettes.py own PIGMENT SHOWN            SHOWN tells what the pigment file has
"""
import copy
import json
import sys

import jsonschema


def load(path):
    with open(path) as file:
        return json.load(file)


def checker(docs):
    content = load(docs + "/paints-list.schema.json")
    jsonschema.Draft202012Validator.check_schema(content)
    return jsonschema.Draft202012Validator(content)


def valid(docs, *paths):
    faults = ["%s: %s" % (path, error.message[:300]) for path in paths
              for error in checker(docs).iter_errors(load(path))]
    return faults


LIST_CHANGES = [(["palettes"], ...), (["palettes"], []), (["pigments", 0, "source"], ...),
                (["pigments", 0, "parts"], 1), (["pigments", 0, "hue"], "x"),
                (["palettes", 0, "opaque"], 1), (["palettes", 0, "paints"], ["a", "a"])]
SHOWN_CHANGES = [(["medium"], "ink"), (["paper"], ...), (["paints"], []), (["pigments"], []),
                 (["paints", 0, "made_of"], ...), (["paints", 0, "own"], {}),
                 (["paints", 0, "made_of", 0, "parts"], ...),
                 (["paints", 0, "strengths", 0, "white"], 1),
                 (["paints", 0, "strengths", 0, "water"], ...),
                 (["paints", 0, "strengths", 0, "colour", "lab"], [1, 2]),
                 (["paints", 0, "strengths"], [])]


def changed(docs, *paths):
    faults, check = [], checker(docs)
    for path, changes in zip(paths, (LIST_CHANGES, SHOWN_CHANGES)):
        for where, value in changes:
            document = copy.deepcopy(load(path))
            at = document
            for step in where[:-1]:
                at = at[step]
            if value is ...:
                del at[where[-1]]
            else:
                at[where[-1]] = value
            if check.is_valid(document):
                faults.append("%s: accepted with %r at %r" % (path, value, where))
    return faults


def table(path, listed):
    """The records of a table: lines "field: text" with a name first."""
    keys = ("colour_index", "transparency", "permanence", "staining", "granulation", "measured",
            "source", "caution")
    records = {}
    with open(path) as file:
        for line in file.read().split("---\n", 1)[1].splitlines():
            key, _, text = line.partition(": ")
            if key == "name":
                record = records.setdefault(text, {})
            elif key in keys and text:
                record[key] = text
    told = {p["name"]: {k: v for k, v in p.items() if k != "name"}
            for p in load(listed)["pigments"]}
    return [] if told == records and len(records) > 20 else ["the list is not the table"]


def own(pigment, shown):
    given, faults = load(pigment), []
    for paint in load(shown)["paints"]:
        if paint["name"] != given["name"]:
            continue
        told = dict(paint["own"], name=paint["name"], colour_index=paint["colour_index"])
        told.pop("file")
        if told != {k: v for k, v in given.items() if k not in ("k", "s")}:
            faults.append("%r is not what the file has" % told)
        return faults
    return ["the paint is not shown"]


if __name__ == "__main__":
    FOUND = {"valid": valid, "changed": changed, "table": table, "own": own}[sys.argv[1]](
        *sys.argv[2:])
    print("\n".join(FOUND), end="\n" if FOUND else "")
    sys.exit(1 if FOUND else 0)
