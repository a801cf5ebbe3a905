"""Replays an order of work from its JSON, pouring and painting, and checks each step.

    replay.py WORK.json [MOST_RATIO]

Independent of the library: wells are dictionaries of millilitres. Nothing may be
taken out of a puddle but by painting, which takes all of it in proportion; at the
moment of painting the proportions must be those of the recipe told, and there must
be half as much again as the wash needs. MOST_RATIO: the summed difference is at
most so many times that of separate mixes.
"""
import json
import sys

NEAR = 1e-9


def near(a, b):
    return abs(a - b) <= NEAR * max(1.0, abs(a), abs(b)) + 1e-12


def check(truth, step, what):
    if not truth:
        print(f"step {step}: {what}")
        sys.exit(1)


def replay(work):
    wells = {}
    for number, step in enumerate(work["steps"], 1):
        if step["kind"] == "bare":
            check(not step["pigments"], number, "something is mixed for a bare ground")
            continue
        well = step["well"]
        check(1 <= well <= work["wells"], number, "no such well")
        puddle = wells.get(well, {})
        left = sum(puddle.values())
        if step["kind"] == "start":
            check(well not in wells, number, "the well is not clean")
        if step["kind"] == "washed":
            check(well in wells, number, "the well is clean already")
        if step["kind"] != "added":
            puddle = {}
        else:
            check(near(left, step["left_ml"]), number, f"{left} ml are left, not {step['left_ml']}")
            check(left > 0, number, "nothing is left to add to")
        for item in step["pigments"]:
            check(item["added_ml"] >= 0, number, "paint is taken out")
            puddle[item["name"]] = puddle.get(item["name"], 0) + item["added_ml"]
        water = step.get("water_added_ml", 0)
        check(water >= 0, number, "water is taken out")
        puddle["water"] = puddle.get("water", 0) + water
        mixed = sum(puddle.values())
        check(near(mixed, step["mixed_ml"]), number, f"{mixed} ml are mixed, not {step['mixed_ml']}")
        check(mixed >= 1.5 * step["need_ml"] - 1e-9, number, "less than half as much again")
        parts = {item["name"]: item["parts"] for item in step["pigments"]}
        paint = mixed - puddle["water"]
        for name, amount in puddle.items():
            if name == "water":
                wanted = paint * step.get("water_per_paint", 0)
            else:
                wanted = paint * parts.get(name, 0) / sum(parts.values())
            check(near(amount, wanted), number, f"{amount} ml of {name}, the recipe has {wanted}")
        share = (mixed - step["need_ml"]) / mixed
        wells[well] = {name: amount * share for name, amount in puddle.items()}


def same_paints(work):
    """Both ends of a graded wash take the same paints; in opaque media they need not."""
    if not any("water_per_paint" in step for step in work["steps"]):
        return
    for number, (one, other) in enumerate(zip(work["steps"], work["steps"][1:]), 1):
        alike = [one.get(key) == other.get(key) for key in ("plane", "side")]
        if "end" in one and "end" in other and all(alike) and one["end"] != other["end"]:
            names = [[item["name"] for item in step["pigments"]] for step in (one, other)]
            check(names[0] == names[1], number, "the two ends take different paints")


def dearer(rows, what):
    for one, other in zip(rows, rows[1:]):
        check(other["sum"] >= one["sum"], 0, f"a smaller sum with fewer {what}")


def squeezed(names):
    """The tubes for these paints: "pale X" is X and titanium white, let down beforehand."""
    made = {tube for name in names if name.startswith("pale ")
            for tube in (name[len("pale "):], "titanium white")}
    return made | {name for name in names if not name.startswith("pale ")}


def choices(work):
    rows = work.get("choices", [])
    wells = rows[:3]
    check([row["wells"] for row in wells] in ([], [1, 2, 3]), 0, "not 1 to 3 wells first")
    dearer(wells[::-1], "wells")
    tubes = rows[3:]
    own = [row for row in wells if row["wells"] == work["wells"]]
    if tubes and len(squeezed(tubes[0]["tubes"])) < len(squeezed(own[0]["tubes"])):
        tubes = own + tubes
    check(all(len(squeezed(a["tubes"])) > len(squeezed(b["tubes"]))
              for a, b in zip(tubes, tubes[1:])), 0, "rows not by tubes")
    dearer(tubes, "tubes")


def main():
    work = json.load(open(sys.argv[1]))["work"]
    replay(work)
    same_paints(work)
    choices(work)
    total = sum(step["delta_e"] for step in work["steps"])
    check(near(total, work["difference"]), 0, "the differences do not add up")
    tubes = squeezed({item["name"] for step in work["steps"] for item in step["pigments"]})
    check(len(tubes) == work["tubes"] and len(tubes) <= work["most_tubes"], 0, "too many tubes")
    if len(sys.argv) > 2:
        check(work["difference"] <= float(sys.argv[2]) * work["planned_difference"], 0,
              "farther off than separate mixes allow")
    print(work["sum"])


main()
