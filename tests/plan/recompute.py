"""Recomputes every recipe of a plan from the plan's own JSON and compares.

    recompute.py PLAN.json

Independent of the library: the pigments' K and S are read from the table of
figures, the observer and D65 from the open data of the colord-data package, the
film equation is Kubelka 1948 in its hyperbolic form with Saunderson 1942, and
L*a*b* is written from ISO/CIE 11664-4.
"""
import json
import math
import re
import sys

K1, K2 = 0.03, 0.65
TOLERANCE = 0.01
BANDS = range(380, 731, 10)


def colord(path):
    text = open("/usr/share/colord/" + path, errors="replace").read()
    keys = dict(re.findall(r'(SPECTRAL_\w+)\s+"?([\d.]+)"?', text))
    start, end = float(keys["SPECTRAL_START_NM"]), float(keys["SPECTRAL_END_NM"])
    count = int(keys["SPECTRAL_BANDS"])
    step = (end - start) / (count - 1)
    rows = re.search(r"BEGIN_DATA\n(.*?)END_DATA", text, re.S).group(1).strip().split("\n")
    numbers = [[float(word) for word in row.split()[-count:]] for row in rows]
    return [[row[round((nm - start) / step)] for nm in BANDS] for row in numbers]


def pigments():
    """The table's records: name -> (K, S)."""
    body = open("src/data/pigments.txt").read().split("\n---\n", 1)[1]
    found = {}
    for record in body.split("\n\n"):
        fields, last = {}, None
        for line in record.split("\n"):
            if line.startswith("#"):
                continue
            if line[:1].isspace() and last:
                fields[last] += " " + line.strip()
            elif ":" in line:
                last, value = line.split(":", 1)
                fields[last] = value.strip()
        if "name" in fields:
            found[fields["name"]] = tuple(
                [float(word) for word in fields[key].split()] for key in ("k", "s"))
    return found


OBSERVER = colord("cmf/CIE1931-2deg-XYZ.cmf")
D65 = colord("illuminant/CIE-D65.sp")[0]
SCALE = sum(y * e for y, e in zip(OBSERVER[1], D65))
PIGMENTS = pigments()


def lab(reflectance):
    def f(t):
        return t ** (1 / 3) if t > (6 / 29) ** 3 else t * (29 / 6) ** 2 / 3 + 4 / 29
    xyz = [sum(c * e * r for c, e, r in zip(row, D65, reflectance)) / SCALE for row in OBSERVER]
    white = [sum(c * e for c, e in zip(row, D65)) / SCALE for row in OBSERVER]
    x, y, z = (f(v / w) for v, w in zip(xyz, white))
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def inside(r):
    """Saunderson the other way: what the film itself reflects."""
    return (r - K1) / ((1 - K1) * (1 - K2) + K2 * (r - K1))


def outside(r):
    return K1 + (1 - K1) * (1 - K2) * r / (1 - K2 * r)


def film(k, s, x, ground):
    a = 1 + k / s
    b = math.sqrt(a * a - 1)
    if x is None:
        return outside(a - b)
    if x == 0:
        return ground
    g = inside(ground)
    if b * s * x > 300:
        return outside(a - b)
    coth = 1 / math.tanh(b * s * x)
    return outside((1 - g * (a - b * coth)) / (a - g + b * coth))


def k_and_s(item):
    """A pigment's K and S, or the weighted means of what a tube is made of."""
    if "made_of" in item:
        return mean([(k_and_s(part), part["parts"]) for part in item["made_of"]])
    return PIGMENTS[item["name"]]


def mean(weighted):
    total = sum(parts for _, parts in weighted)
    return tuple([sum(ks[i][j] * parts for ks, parts in weighted) / total for j in range(36)]
                 for i in (0, 1))


def recompute(recipe, medium, ground):
    if not recipe["pigments"]:
        return ground
    k, s = mean([(k_and_s(item), item["parts"]) for item in recipe["pigments"]])
    x = None
    if medium == "watercolour":
        x = 8 / (1 + recipe["water_per_paint"])
        assert abs(recipe["film"] - x) < 1e-9 * x, recipe
        assert abs(recipe["paint_fraction"] * (1 + recipe["water_per_paint"]) - 1) < 1e-9, recipe
    return [film(k[j], s[j], x, ground[j]) for j in range(36)]


def ends(wash):
    return [(name, wash[name]) for name in ("crest", "base")] if "crest" in wash else [("", wash)]


def washes(plan):
    """(label, wash, the wash below it or None) of every end of every wash."""
    for name, wash in zip(("horizon", "overhead"), plan["sky"]):
        yield name, wash, None
    for plane in plan["planes"]:
        lit = dict(ends(plane["lit"]))
        for side in ("lit", "shadow"):
            for end, wash in ends(plane[side]):
                below = lit.get(end, lit.get("", lit.get("crest")))
                yield " ".join((plane["name"], side, end)), wash, below


def main():
    plan = json.load(open(sys.argv[1]))
    medium, paper = plan["paint"]["medium"], plan["paint"]["paper"]
    worst, count, over = 0.0, 0, 0
    for label, wash, below in washes(plan):
        ground = paper
        if wash["ground"] == "lit":
            ground = recompute(below["recipe"], medium, paper)
            over += 1
        found = lab(recompute(wash["recipe"], medium, ground))
        error = max(abs(a - b) for a, b in zip(found, wash["mix"]["lab"]))
        worst, count = max(worst, error), count + 1
        if not error <= TOLERANCE:
            print(f"{label}: the plan says {wash['mix']['lab']}, its recipe gives {list(found)}")
            sys.exit(1)
    print(f"{count} recipes recomputed, {over} of them over a lit wash, "
          f"largest error {worst:.2g} in L*, a* or b*")
    if count < 4 or (over == 0) != (plan["scene"]["paint"]["shadows"] == "beside"):
        sys.exit(1)


main()
