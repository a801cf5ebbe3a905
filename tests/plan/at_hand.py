"""What a table of choices sends home: no tube that a mix, or a paint let down that a mix
names, is made from. By the names alone: "pale X" is X and titanium white."""
import json
import sys


def homes(lines):
    """The last column of each row of the choices, put together again."""
    at = next(i for i, line in enumerate(lines) if "STAY AT HOME" in line)
    column, rows = lines[at].index("STAY AT HOME"), []
    for line in lines[at + 2:]:
        if not line.strip():
            return rows
        if line[0].isdigit():
            rows.append([line[:column].split(), ""])
        rows[-1][1] += " " + line[column:].strip()
    return rows


def at_hand(choice):
    names = set(choice["tubes"])
    for name in choice["tubes"]:
        if name.startswith("pale "):
            names |= {name[len("pale "):], "titanium white"}
    return names


def main():
    work = json.load(open(sys.argv[1]))["work"]
    lines = open(sys.argv[2], encoding="utf-8").read().splitlines()
    rows, wrong = homes(lines), []
    hands = [at_hand(choice) for choice in work["choices"]]
    for choice, hand in zip(work["choices"], hands):
        if set(choice.get("for_let_down", [])) != hand - set(choice["tubes"]):
            wrong.append(f"for_let_down of {choice['tubes']}")
    for cells, home in rows:
        home = {name.strip() for name in home.split(";")} - {""}
        tubes, pale = int(cells[1]), int(cells[3]) if cells[2] == "+" else 0
        fits = [hand for hand in hands if not hand & home
                and len([n for n in hand if n.startswith("pale ")]) == pale
                and len([n for n in hand if not n.startswith("pale ")]) == tubes]
        if not fits:
            wrong.append(f"{' '.join(cells)} sends home {sorted(home)}")
    print("; ".join(wrong))
    return bool(wrong) or len(rows) < 3


sys.exit(main())
