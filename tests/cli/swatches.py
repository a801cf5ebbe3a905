"""Swatches of paints of the library as they would be measured or photographed, and how
near to those paints what was learnt of them comes. Films, colours and differences are
written here a second time, from their sources; noise has a fixed seed.

    swatches.py spectra SOURCE PIGMENT SEED    card.json, readings.txt (CGATS)
    swatches.py labs SOURCE PIGMENT SEED       card.json
    swatches.py tints SOURCE PIGMENT SEED      card.json of an opaque medium, spectra
    swatches.py photo SOURCE SEED PIGMENT...   card.json, card.png
    swatches.py manual SOURCE FOLDER           swatch-card.json, swatch-card.png of the manual
    swatches.py near SOURCE FILE LIMIT PIGMENT...   what was learnt, against the library
"""
import json
import math
import random
import re
import struct
import sys
import zlib

K1, K2 = 0.03, 0.65  # Saunderson 1942
WATERS = [0, 1, 2, 4, 8, 16]
TINTS = [0, 1, 3, 8, 20]


# ---- tables


def records(source, name):
    """The spectra of src/data/NAME.txt by name and key."""
    out = {}
    with open("%s/src/data/%s.txt" % (source, name)) as file:
        body = file.read().split("\n---\n")[1]
    for record in re.split(r"\n\n+", body.strip()):
        title = re.match("name: (.*)", record).group(1)
        found = re.findall(r"^(\w+):\n((?:  .*\n?)+)", record, re.M)
        out[title] = {key: [float(n) for n in text.split()] for key, text in found}
    return out


class World:
    def __init__(self, source):
        cie = records(source, "cie")
        self.pigments = records(source, "pigments")
        self.paper = records(source, "papers")["white cotton"]["values"]
        light = cie["D65"]["values"]
        self.bars = [cie[name]["values"] for name in "xyz"]
        whole = sum(e * y for e, y in zip(light, self.bars[1]))
        self.weights = [[e * v / whole for e, v in zip(light, bar)] for bar in self.bars]
        self.white = [sum(w) for w in self.weights]

    def xyz(self, reflectance):
        return [sum(w * r for w, r in zip(weights, reflectance)) for weights in self.weights]

    def lab(self, reflectance):
        return lab_of(self.xyz(reflectance), self.white)

    def linear(self, reflectance):
        """Linear sRGB (IEC 61966-2-1), white to the standard's white."""
        standard = (0.9505, 1.0, 1.089)
        x, y, z = (v * s / w for v, s, w in zip(self.xyz(reflectance), standard, self.white))
        return [3.2406 * x - 1.5372 * y - 0.4986 * z, -0.9689 * x + 1.8758 * y + 0.0415 * z,
                0.0557 * x - 0.2040 * y + 1.0570 * z]


def lab_of(xyz, white):
    """ISO/CIE 11664-4."""
    def f(t):
        return t ** (1 / 3) if t > (6 / 29) ** 3 else t / (3 * (6 / 29) ** 2) + 4 / 29
    x, y, z = (f(v / w) for v, w in zip(xyz, white))
    return [116 * y - 16, 500 * (x - y), 200 * (y - z)]


def difference(one, other):
    """CIEDE2000 (Sharma, Wu and Dalal 2005)."""
    l1, a1, b1 = one
    l2, a2, b2 = other
    mean_c = (math.hypot(a1, b1) + math.hypot(a2, b2)) / 2
    g = 0.5 * (1 - math.sqrt(mean_c ** 7 / (mean_c ** 7 + 25.0 ** 7)))
    c1, c2 = math.hypot(a1 * (1 + g), b1), math.hypot(a2 * (1 + g), b2)
    h1 = math.degrees(math.atan2(b1, a1 * (1 + g))) % 360
    h2 = math.degrees(math.atan2(b2, a2 * (1 + g))) % 360
    dh = h2 - h1
    if c1 * c2 == 0:
        dh = 0
    elif dh > 180:
        dh -= 360
    elif dh < -180:
        dh += 360
    big_h = 2 * math.sqrt(c1 * c2) * math.sin(math.radians(dh / 2))
    mean_l, mean_c = (l1 + l2) / 2, (c1 + c2) / 2
    mean_h = h1 + h2 if c1 * c2 == 0 else (h1 + h2) / 2
    if c1 * c2 and abs(h1 - h2) > 180:
        mean_h += 180 if h1 + h2 < 360 else -180
    cos = [math.cos(math.radians(d)) for d in (mean_h - 30, 2 * mean_h, 3 * mean_h + 6,
                                               4 * mean_h - 63)]
    t = 1 - 0.17 * cos[0] + 0.24 * cos[1] + 0.32 * cos[2] - 0.20 * cos[3]
    s_l = 1 + 0.015 * (mean_l - 50) ** 2 / math.sqrt(20 + (mean_l - 50) ** 2)
    s_c, s_h = 1 + 0.045 * mean_c, 1 + 0.015 * mean_c * t
    turn = math.radians(60 * math.exp(-((mean_h - 275) / 25) ** 2))
    r_t = -2 * math.sqrt(mean_c ** 7 / (mean_c ** 7 + 25.0 ** 7)) * math.sin(turn)
    dl, dc, dh = (l2 - l1) / s_l, (c2 - c1) / s_c, big_h / s_h
    return math.sqrt(dl * dl + dc * dc + dh * dh + r_t * dc * dh)


# ---- films


def seen(inner):
    return K1 + (1 - K1) * (1 - K2) * inner / (1 - K2 * inner)


def below(outer):
    return (outer - K1) / ((1 - K1) * (1 - K2) + K2 * (outer - K1))


def film(k, s, x, ground):
    """Kubelka 1948, the hyperbolic form."""
    s = max(s, 1e-9)
    a = 1 + k / s
    b = math.sqrt(a * a - 1) or 1e-9
    tanh = math.tanh(min(b * s * x, 300))
    if tanh == 0:
        return ground
    return (1 - ground * (a - b / tanh)) / (a - ground + b / tanh)


def wash(paint, water, paper):
    return [seen(film(k, s, 8 / (1 + water), below(g)))
            for k, s, g in zip(paint["k"], paint["s"], paper)]


def tint(paint, white, parts):
    out = []
    for k, s, white_k, white_s in zip(paint["k"], paint["s"], white["k"], white["s"]):
        ratio = (k + parts * white_k) / (s + parts * white_s)
        out.append(seen(1 + ratio - math.sqrt(ratio * ratio + 2 * ratio)))
    return out


# ---- swatches as read


def write_json(name, content):
    with open(name, "w") as file:
        json.dump(content, file)


def noisy(values, deviation, least=0.0):
    return [max(least, v + random.gauss(0, deviation)) for v in values]


def write_cgats(rows):
    """CGATS.17 text, in percent, spectral columns."""
    bands = ["SPECTRAL_NM%d" % nm for nm in range(380, 740, 10)]
    with open("readings.txt", "w") as file:
        file.write("CGATS.17\nORIGINATOR \"a test; invented\"\nNUMBER_OF_FIELDS 37\n")
        file.write("BEGIN_DATA_FORMAT\nSAMPLE_ID %s\nEND_DATA_FORMAT\n" % " ".join(bands))
        file.write("NUMBER_OF_SETS %d\nBEGIN_DATA\n" % len(rows))
        for name, reflectance in rows:
            file.write("%s %s\n" % (name, " ".join("%.3f" % (100 * r) for r in reflectance)))
        file.write("END_DATA\n")


def write_spectra(world, pigment):
    paint = world.pigments[pigment]
    rows = [("paper", noisy(world.paper, 0.001))]
    swatches = []
    for i, water in enumerate(WATERS):
        rows.append(("A%d" % i, noisy(wash(paint, water, world.paper), 0.001)))
        swatches.append({"water": water, "sample": "A%d" % i})
    write_cgats(rows)
    write_json("card.json", {"paper": {"sample": "paper"},
                             "paints": [{"name": "mine", "swatches": swatches}]})


def write_labs(world, pigment):
    """Noise of 0.5 in Lab."""
    paint = world.pigments[pigment]
    swatches = []
    for water in WATERS:
        lab = world.lab(wash(paint, water, world.paper))
        away = [random.gauss(0, 1) for _ in lab]
        size = 0.5 / math.hypot(*away)
        swatches.append({"water": water, "lab": [v + size * w for v, w in zip(lab, away)]})
    write_json("card.json", {"paper": {"lab": world.lab(world.paper)},
                             "paints": [{"name": "mine", "swatches": swatches}]})


def write_tints(world, pigment):
    paint, white = world.pigments[pigment], world.pigments["titanium white"]
    swatches = [{"white": parts, "reflectance": noisy(tint(paint, white, parts), 0.0005)}
                for parts in TINTS]
    write_json("card.json", {"medium": "oil", "paints": [{"name": "mine", "swatches": swatches}]})


# ---- a photograph


def encode(c):
    """IEC 61966-2-1."""
    c = min(max(c, 0), 1)
    return 1.055 * c ** (1 / 2.4) - 0.055 if c > 0.0031308 else 12.92 * c


def png_chunk(kind, body):
    return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))


def write_png(name, width, rows, depth):
    """ISO/IEC 15948; rows of linear light, three a pixel, each row filtered by the row
    above it."""
    most = 2 ** depth - 1
    last = bytes(width * 3 * depth // 8)
    body = b""
    for row in rows:
        samples = [int(encode(c) * most + 0.5) for c in row]
        now = struct.pack(">%d%s" % (len(samples), "BH"[depth == 16]), *samples)
        body += b"\2" + bytes((n - u) & 255 for n, u in zip(now, last))
        last = now
    with open(name, "wb") as file:
        file.write(b"\x89PNG\r\n\x1a\n")
        file.write(png_chunk(b"IHDR", struct.pack(">IIBBBBB", width, len(rows), depth, 2, 0, 0, 0)))
        file.write(png_chunk(b"tEXt", b"Comment\0invented data, made by tests/cli/swatches.py"))
        file.write(png_chunk(b"sRGB", b"\0") + png_chunk(b"IDAT", zlib.compress(body, 9)))
        file.write(png_chunk(b"IEND", b""))


LIGHT, STRAY = (0.86, 0.80, 0.70), (0.004, 0.004, 0.005)  # afternoon daylight


def shoot(world, width, height, patches, noise, light=LIGHT, slope=0.0):
    """Rows of linear light: paper, with rectangles on it; noise as a share of the light."""
    paper = world.linear(world.paper)
    picture = [[paper] * width for _ in range(height)]
    for (left, top, wide, high), colour in patches:
        for y in range(top, top + high):
            picture[y][left:left + wide] = [colour] * wide
    rows = []
    for line in picture:
        row = []
        for x, colour in enumerate(line):
            here = 1 + slope * (2 * x / width - 1)
            for c, gain, stray in zip(colour, light, STRAY):
                row.append((c * gain * here + stray) * (1 + random.gauss(0, noise)))
        rows.append(row)
    return rows


def inside(patch):
    left, top, wide, high = patch
    return [left + 4, top + 4, wide - 8, high - 8]


def photo_card(world, pigments):
    """Patches with their colours, and the description of the card."""
    patches, card, paints = [], [], []
    for i, reflectance in enumerate((0.9, 0.18, 0.04)):
        patches.append(([10, 10 + 44 * i, 36, 36], [reflectance] * 3))
        card.append({"reflectance": reflectance, "patch": inside(patches[-1][0])})
    for i, pigment in enumerate(pigments):
        swatches = []
        for j, water in enumerate((0, 3, 10)):
            colour = world.linear(wash(world.pigments[pigment], water, world.paper))
            patches.append(([60 + 44 * j, 10 + 44 * i, 36, 36], colour))
            swatches.append({"water": water, "patch": inside(patches[-1][0])})
        paints.append({"name": "my " + pigment, "swatches": swatches})
    paper = [192, 10, 40, 40]
    return patches, {"card": card, "paper": {"patch": paper}, "paints": paints}


def write_photo(world, pigments):
    patches, card = photo_card(world, pigments)
    write_json("card.json", card)
    write_png("card.png", 240, shoot(world, 240, 140, patches, 0.01), 8)
    write_png("sloping.png", 240, shoot(world, 240, 140, patches, 0.01, slope=0.25), 8)
    write_png("bright.png", 240, shoot(world, 240, 140, patches, 0.01, (1.6, 1.5, 1.4)), 8)


# ---- the photograph of docs/own-paints.md: two invented paints, painted as one paints


def changed(paint, k, s):
    return {"k": [k * v for v in paint["k"]], "s": [s * v for v in paint["s"]]}


def brushed(width, height, left, top, wide, high):
    """Where a swatch's edge lies: two waves, as a brush leaves it."""
    for y in range(max(top - 3, 0), min(top + high + 3, height)):
        ripple = 1.5 * math.sin(0.21 * y + left) + 0.5 * math.sin(0.9 * y)
        for x in range(max(left - 3, 0), min(left + wide + 3, width)):
            droop = 1.5 * math.sin(0.17 * x + top) + 0.5 * math.sin(0.7 * x)
            if left + ripple <= x < left + wide - ripple and top + droop <= y < top + high - droop:
                yield x, y


def manual_rows(world, paints, width, height):
    """Rows of linear light: a sheet on a dark table, card patches cut straight, swatches
    brushed, a little thicker where the brush ended."""
    paper = world.linear(world.paper)
    picture = [[paper if 8 <= x < width - 8 and 8 <= y < height - 8 else [0.02, 0.017, 0.015]
                for x in range(width)] for y in range(height)]
    for i, reflectance in enumerate(MANUAL_CARD):
        for y in range(24 + 48 * i, 64 + 48 * i):
            picture[y][20:60] = [[reflectance] * 3] * 40
    for i, paint in enumerate(paints):
        for j, water in enumerate(MANUAL_WATERS):
            colour = world.linear(wash(paint, water, world.paper))
            end = world.linear(wash(paint, 0.8 * water, world.paper))
            left, top = 84 + 72 * j, 24 + 78 * i
            for x, y in brushed(width, height, left, top, 56, 60):
                picture[y][x] = end if x > left + 50 else colour
    return [[(c * gain + stray) * (1 + random.gauss(0, 0.006))
             for colour in line for c, gain, stray in zip(colour, LIGHT, STRAY)]
            for line in picture]


MANUAL_CARD, MANUAL_WATERS = (0.9, 0.18, 0.04), (0, 3, 10)


def listed(items, indent):
    """One to a line, in brackets."""
    lines = (",\n" + indent).join(items)
    return "[\n%s%s\n%s]" % (indent, lines, indent[2:])


def manual_card():
    """The description, laid out as one would type it."""
    cards = ['{"reflectance": %g, "patch": [26, %d, 28, 28]}' % (r, 30 + 48 * i)
             for i, r in enumerate(MANUAL_CARD)]
    paints = []
    for i, (name, index) in enumerate((("my yellow", "PY40"), ("my blue", "PB27"))):
        swatches = ['{"water": %d, "patch": [%d, %d, 32, 36]}' % (water, 96 + 72 * j, 36 + 78 * i)
                    for j, water in enumerate(MANUAL_WATERS)]
        paints.append('{"name": "%s", "colour_index": "%s", "swatches": %s}'
                      % (name, index, listed(swatches, "      ")))
    return '{\n  "card": %s,\n  "paper": {"patch": [78, 90, 200, 6]},\n  "paints": %s\n}\n' % (
        listed(cards, "    "), listed(paints, "    "))


def write_manual(world, folder):
    random.seed(11)
    yellow = changed(world.pigments["aureolin"], 1.15, 0.9)
    blue = changed(world.pigments["prussian blue"], 0.85, 1.4)
    rows = manual_rows(world, (yellow, blue), 308, 184)
    write_png(folder + "/swatch-card.png", 308, rows, 8)
    with open(folder + "/swatch-card.json", "w") as file:
        file.write(manual_card())


# ---- what was learnt


def learnt(name):
    with open(name) as file:
        content = json.load(file)
    return content.get("paints", [content])


def check_near(world, name, limit, pigments):
    """The farthest of many washes, or tints, from the library's."""
    faults = 0
    white = world.pigments["titanium white"]
    for paint, pigment in zip(learnt(name), pigments):
        worst = 0
        for step in range(41):
            added = 17 ** (step / 40) - 1  # 0 to 16
            if paint["medium"] == "watercolour":
                pair = [wash(p, added, world.paper) for p in (paint, world.pigments[pigment])]
            else:
                pair = [tint(p, white, added) for p in (paint, world.pigments[pigment])]
            worst = max(worst, difference(world.lab(pair[0]), world.lab(pair[1])))
        print("%s: %.2f off at the worst" % (pigment, worst))
        faults += not worst <= limit
    return faults


def main(task, source, *rest):
    world = World(source)
    if task == "near":
        return check_near(world, rest[0], float(rest[1]), rest[2:])
    if task == "manual":
        write_manual(world, rest[0])
    elif task == "photo":
        random.seed(int(rest[0]))
        write_photo(world, rest[1:])
    else:
        random.seed(int(rest[1]))
        {"spectra": write_spectra, "labs": write_labs, "tints": write_tints}[task](world, rest[0])
    return 0


if __name__ == "__main__":
    sys.exit(1 if main(*sys.argv[1:]) else 0)
