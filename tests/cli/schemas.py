"""Validates scenes and plans against the schemas, with a general-purpose
validator, and checks that changed ones are refused.

    schemas.py DOCS FOLDER      given-*, filled-* and plan-*.json in FOLDER
"""
import copy
import glob
import json
import sys

import jsonschema


def schema(path):
    with open(path) as file:
        content = json.load(file)
    jsonschema.Draft202012Validator.check_schema(content)
    return jsonschema.Draft202012Validator(content)


def load(path):
    with open(path) as file:
        return json.load(file)


def change(document, path, value):
    """A copy with the value at path changed, or dropped where it is Ellipsis."""
    changed = copy.deepcopy(document)
    at = changed
    for step in path[:-1]:
        at = at[step]
    if value is Ellipsis:
        del at[path[-1]]
    else:
        at[path[-1]] = value
    return changed


SCENE_CHANGES = [
    (["planes"], ...), (["planes"], []), (["extra"], 1), (["air", "visability"], 3),
    (["air", "visibility"], "3 parsec"), (["air", "visibility"], 10), (["air", "haze"], "thick"),
    (["air", "haze"], 3), (["light", "sky"], "painted"), (["light", "horizon"], "#ffffff"),
    (["light", "sun_height"], "2 hands"), (["light", "sun_side"], 181),
    (["paint", "medium"], "pastel"), (["paint", "most_pigments"], 2.5),
    (["paint", "most_parts"], 13), (["paint", "palette"], []), (["picture", "darks"], "dark"),
    (["paint", "shadows"], "under"), (["paint", "medium"], "oil"),  # with shadows over
    (["picture", "sky_value"], 11), (["planes", 0, "name"], ...), (["planes", 0, "name"], ""),
    (["planes", 0, "distance"], ...), (["planes", 0, "distance"], -4),
    (["planes", 0, "distance"], "-4 m"), (["planes", 0, "colour"], "#12345"),
    (["planes", 0, "lab"], [50, 0, 0]), (["planes", 0, "share"], 2), (["title"], "a\u202e"),
]
WASH = ["planes", 0, "lit"]
PLAN_CHANGES = [
    (["scene"], ...), (["extra"], 1), (["air", "haze_per_km"], [1]), (["air", "eye_m"], None),
    (["light", "sky"], "blue"), (["light", "lit", 35], ...), (["paint", "medium"], "pastel"),
    (["paint", "palette"], []), (["sky", 1], ...), (["sky_grading", "graded"], ...),
    (["planes"], []), (["planes", 0, "edge"], "crisp"), (["planes", 0, "lit"], ...),
    (["planes", 0, "value_step"], None), (["warnings"], [{"kind": "odd", "sentence": "x"}]),
    (["warnings"], [{"kind": "merge"}]), (["sky", 0, "target"], ...),
    (["sky", 0, "target", "value_as_seen"], ...), (["sky", 0, "mix", "lab", 2], ...),
    (["sky", 0, "mix", "srgb", 1], 1.5), (["sky", 0, "mix", "value_as_seen"], 5),
    (["sky", 0, "own_share"], 1.5), (["sky", 0, "ground"], "sand"),
    (["sky", 0, "recipe", "pigments"], ...), (["sky", 0, "recipe", "film"], 9),
    (["sky", 0, "delta_e"], -1), (["sky", 0, "slip"], None), (["sky", 0, "reachable"], "maybe"),
]


def main(docs, folder):
    scene, plan = schema(docs + "/scene.schema.json"), schema(docs + "/plan.schema.json")
    faults = 0
    counts = {"given": 0, "filled": 0, "plan": 0}
    for kind, changes in (("given", []), ("filled", SCENE_CHANGES), ("plan", PLAN_CHANGES)):
        checker = plan if kind == "plan" else scene
        for path in sorted(glob.glob("%s/%s-*.json" % (folder, kind))):
            document = load(path)
            counts[kind] += 1
            for error in checker.iter_errors(document):
                print("%s: %s" % (path, error.message[:300]))
                faults += 1
            if kind == "plan":
                for error in scene.iter_errors(document["scene"]):
                    print("%s: scene: %s" % (path, error.message[:300]))
                    faults += 1
            for where, value in changes:
                if checker.is_valid(change(document, where, value)):
                    print("%s: accepted although %s was changed to %r" % (path, where, value))
                    faults += 1
    if min(counts.values()) < 5:
        print("too few documents: %r" % counts)
        faults += 1
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2]))
