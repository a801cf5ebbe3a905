"""Holds swatch descriptions to their schema with a general-purpose validator, and checks
that changed ones are refused.

    swatch_schema.py SCHEMA FILE...
"""
import copy
import json
import sys

import jsonschema

SWATCH = {"water": 0, "lab": [30, 0, 0]}
CARD = {"paper": {"lab": [95, 0, 3]}, "paints": [{"name": "a", "swatches": [SWATCH]}]}
OIL = {"medium": "oil", "white": "titanium white",
       "paints": [{"name": "a", "swatches": [{"white": 0, "colour": "#203040"}]}]}
PATCH = {"reflectance": 0.18, "patch": [0, 0, 9, 9]}
TOPS = [{"paper": ...}, {"paints": ...}, {"paints": []}, {"paint": []}, {"medium": "ink"},
        {"medium": "oil"}, {"white": "titanium white"}, {"surface": "gloss"}, {"paper": {}},
        {"paper": {"lab": [95, 0, 3], "patch": [0, 0, 9, 9]}}, {"paper": {"lab": [95, 0]}},
        {"card": []}, {"card": [{"patch": [0, 0, 9, 9]}]}, {"card": [dict(PATCH, reflectance=18)]},
        {"card": [dict(PATCH, reflectance=0.01)]},
        {"card": [dict(PATCH, patch=[0, 0, 9])]}, {"card": [dict(PATCH, patch=[0, 0, 9.5, 9])]}]
PAINTS = [{"name": ...}, {"name": " "}, {"name": "Water"}, {"swatches": ...}, {"swatches": []},
          {"swatches": [SWATCH] * 25}, {"is_white": 1}, {"k": [0.5] * 36}, {"caution": "a\u202e"}]
SWATCHES = [{"water": ...}, {"water": -1}, {"water": 1001}, {"lab": ...}, {"lab": [101, 0, 0]},
            {"white": 1}, {"colour": "#203040"}, {"extra": 1}, {"lab": ..., "colour": "red"},
            {"lab": ..., "sample": ""}, {"lab": ..., "reflectance": [0.5] * 35},
            {"lab": ..., "patch": [-1, 0, 9, 9]}]


def apply(at, change):
    for key, value in change.items():
        if value is ...:
            del at[key]
        else:
            at[key] = value


def main(schema, *paths):
    with open(schema) as file:
        content = json.load(file)
    jsonschema.Draft202012Validator.check_schema(content)
    checker = jsonschema.Draft202012Validator(content)
    faults = 0
    for path in paths:
        with open(path) as file:
            for error in checker.iter_errors(json.load(file)):
                print("%s: %s" % (path, error.message[:300]))
                faults += 1
    for good in (CARD, OIL, dict(CARD, medium="watercolour", card=[PATCH], surface="included")):
        if not checker.is_valid(good):
            print("refused: %r" % good)
            faults += 1
    for level, changes in enumerate((TOPS, PAINTS, SWATCHES)):
        for change in changes:
            changed = copy.deepcopy(CARD)
            paint = changed["paints"][0]
            apply((changed, paint, paint["swatches"][0])[level], change)
            if checker.is_valid(changed):
                print("accepted with %r" % change)
                faults += 1
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
