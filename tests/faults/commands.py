"""The commands whose failures are tried: one line each, with files small enough that
a run takes some tens of milliseconds. {sheet} and {data} stand for the outputs."""

import binascii
import json
import os
import struct
import subprocess
import zlib

# name, its words
COMMANDS = [
    ("help", ["--help"]),
    ("version", ["--version"]),
    ("usage", ["study", "--help"]),
    ("check", ["check", "scene.json", "-o", "out.json"]),
    ("names", ["names"]),
    ("page", ["page", "-o", "out.html"]),
    ("study", ["study", "scene.json", "-o", "out.png", "--json", "out.json"]),
    ("study, PDF", ["study", "own.json", "-o", "out.pdf", "--json", "out.json"]),
    ("match", ["match", "52,-14,22", "--palette", "box.json", "--parts", "2",
               "--json", "out.json"]),
    ("chart", ["chart", "scene.json", "-o", "out.png"]),
    ("chart --range", ["chart", "scene.json", "--range", "-o", "out.pdf"]),
    ("puddle", ["puddle", "scene.json", "-o", "out.png", "--json", "out.json"]),
    ("wish", ["wish", "two.json", "--steps", "0.5", "-o", "scene.out.json",
              "--json", "out.json"]),
    ("ladder", ["ladder", "scene.json", "--distances", "30 m, 3 km", "-o", "out.png",
                "--json", "out.json"]),
    ("skies", ["skies", "scene.json", "--lights", "lights.json", "-o", "out.png",
               "--json", "out.json"]),
    ("palette", ["palette", "box.json", "-o", "out.png", "--json", "out.json"]),
    ("palettes", ["palette", "--json", "out.json"]),
    ("swatch", ["swatch", "colours.json", "-o", "out.json"]),
    ("swatch, measured", ["swatch", "measured.json", "--measured", "readings.txt",
                          "-o", "out.json"]),
    ("swatch, photo", ["swatch", "patches.json", "--photo", "card.png", "-o", "out.json"]),
]

# A program built without the planning page has none to write.
CARRIES_PAGE = subprocess.run([os.path.join(os.environ.get("BUILD", "build"), "recede"), "page"],
                              stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                              stdin=subprocess.DEVNULL, check=False).returncode == 0
if not CARRIES_PAGE:
    COMMANDS = [command for command in COMMANDS if command[0] != "page"]

OUTPUTS = ("out.", "scene.out.")


def outputs_of(words):
    return [word for word in words if word.startswith(OUTPUTS)]


# ---- files; all paints and colours in them are invented

PAINTS = ["ultramarine blue", "hansa yellow"]
OAK = {"name": "oak", "distance": 400, "foliage": "summer oak"}
RIDGE = {"name": "ridge", "distance": 6000, "foliage": "heather"}
WASHES = (0, 2, 8)  # water to one of paint
COLOURS = ("#5c7a2e", "#9cb070", "#d8dfc4")
PAPER = "#f4f2ea"


def scene(palette, planes):
    return {"paint": {"palette": palette, "most_pigments": 2, "most_parts": 2},
            "paper": {"width": "8 cm", "height": "6 cm"}, "planes": planes}


def paint(name, sources):
    swatches = [dict(source, water=water) for water, source in zip(WASHES, sources)]
    return {"name": name, "swatches": swatches}


def card(paper, paints, **more):
    return dict({"medium": "watercolour", "paper": paper, "paints": paints}, **more)


def rgb(colour):
    return bytes.fromhex(colour[1:])


def grey(reflectance):
    """A grey of that reflectance as sRGB has it (IEC 61966-2-1)."""
    level = 1.055 * reflectance ** (1 / 2.4) - 0.055
    return bytes([round(255 * level)] * 3)


CARD = (0.05, 0.2, 0.5, 0.85)
SIDE = 24  # of a patch, pixels


def patches():
    """What lies on the photograph, from left to right."""
    return [grey(r) for r in CARD] + [rgb(PAPER)] + [rgb(c) for c in COLOURS]


def place(index):
    return [index * SIDE + 2, 2, SIDE - 4, SIDE - 4]


def chunk(kind, content):
    return (struct.pack(">I", len(content)) + kind + content +
            struct.pack(">I", binascii.crc32(kind + content)))


def photograph():
    row = b"\0" + b"".join(colour * SIDE for colour in patches())
    header = struct.pack(">IIBBBBB", SIDE * len(patches()), SIDE, 8, 2, 0, 0, 0)
    return (b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"sRGB", b"\0") +
            chunk(b"IDAT", zlib.compress(row * SIDE)) + chunk(b"IEND", b""))


def readings():
    """Lab values as a CGATS text (ISO 28178 names the parts)."""
    samples = [("P", 95, 0, 3), ("A1", 48, -18, 36), ("A2", 68, -12, 26), ("A3", 87, -4, 12)]
    lines = ["CGATS.17", 'ILLUMINANT "D65"', "NUMBER_OF_FIELDS 4", "BEGIN_DATA_FORMAT",
             "SAMPLE_ID LAB_L LAB_A LAB_B", "END_DATA_FORMAT",
             "NUMBER_OF_SETS %d" % len(samples), "BEGIN_DATA"]
    lines += [" ".join(map(str, sample)) for sample in samples]
    return "\n".join(lines + ["END_DATA", ""])


def files():
    """The inputs, by name, as bytes."""
    colours = [{"colour": c} for c in COLOURS]
    grey_paint = {"name": "my grey", "k": [0.5] * 36, "s": [0.25] * 36}
    contents = {
        "scene.json": scene(PAINTS, [OAK]),
        "two.json": scene(PAINTS, [OAK, RIDGE]),
        "own.json": scene("box.json", [OAK, {"name": "bank", "distance": 30,
                                             "mix": {"my grey": 1, "hansa yellow": 1}}]),
        "grey.json": grey_paint,
        "box.json": {"paper": {"lab": [95, 0, 3]}, "paints": ["grey.json", "hansa yellow"]},
        "lights.json": {"lights": [{"name": "noon", "light": {"sun_height": 50}}]},
        "colours.json": card({"colour": PAPER}, [paint("my green", colours),
                                                 paint("my other green", colours)]),
        "measured.json": card({"sample": "P"}, [
            paint("my green", [{"sample": "A%d" % i} for i in (1, 2, 3)])]),
        "patches.json": card({"patch": place(4)}, [
            paint("my green", [{"patch": place(i)} for i in (5, 6, 7)])],
            card=[{"reflectance": r, "patch": place(i)} for i, r in enumerate(CARD)]),
    }
    made = {name: json.dumps(content, indent=1).encode() for name, content in contents.items()}
    made["card.png"] = photograph()
    made["readings.txt"] = readings().encode()
    return made
