"""Holds what recede wish --json writes against its schema, and against the plan
of the scene that it wrote, made by recede study.

    wish.py DOCS ANSWER.json PLAN.json
"""
import json
import sys

import jsonschema


def load(path):
    with open(path) as file:
        return json.load(file)


def crest(side):
    return side.get("crest", side)["target"]["value"]


def main(docs, answer_path, plan_path):
    schema, answer, plan = load(docs + "/wish.schema.json"), load(answer_path), load(plan_path)
    jsonschema.Draft202012Validator.check_schema(schema)
    checker = jsonschema.Draft202012Validator(schema)
    faults = [error.message[:300] for error in checker.iter_errors(answer)]
    for key in schema["required"]:
        if checker.is_valid({k: v for k, v in answer.items() if k != key}):
            faults.append("accepted without " + key)
    found, wish = answer["found"], answer["wish"]
    if abs(plan["air"]["visibility_km"] - found["visibility_km"]) > 1e-12:
        faults.append("the scene written has another visibility")
    if plan["light"].get("sun_height_deg") != found.get("sun_height_deg"):
        faults.append("the scene written has another sun")
    for plane, neighbour in zip(plan["planes"], found["neighbours"], strict=True):
        if plane["name"] != neighbour["plane"]:
            faults.append("planes in another order")
        for side, key in (("lit", "value"), ("shadow", "value_shadow")):
            if abs(crest(plane[side]) - neighbour[key]) > 1e-9:
                faults.append("%s has another value on its %s side" % (plane["name"], side))
    if wish["kind"] == "value":
        reached = next(crest(p["lit"]) for p in plan["planes"] if p["name"] == wish["plane"])
        lack = abs(reached - wish["value"])
    else:
        planes = found["neighbours"] if wish["sky"] else found["neighbours"][1:]
        keys = ["value_step"] + ["value_step_shadow"] * wish["shadows"]
        reached = min(abs(p[key]) for p in planes for key in keys)
        lack = max(0, wish["value"] - reached)
    if abs(reached - found["reached"]) > 1e-9:
        faults.append("reached is %g, said %g" % (reached, found["reached"]))
    if (lack <= 0.01) != (answer["outcome"] != "denied"):
        faults.append("%s, although %g is lacking" % (answer["outcome"], lack))
    for fault in faults:
        print(fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
