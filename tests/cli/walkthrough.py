"""Runs the commands of a document in the current folder and compares what they print
with what it says.

    walkthrough.py DOCUMENT

In a fenced block marked console, a line that starts with "$ " is a command for the
shell; the lines up to the next are what it prints, where a line of three dots stands
for any lines. Where no lines follow, it prints nothing. A block marked json or text
whose paragraph before ends in "`NAME`:" is the content of the file of that name: a
file that is there already has to be the same.
"""
import os
import re
import subprocess
import sys

BLOCK = re.compile(r"([^\n]*)\n\n```(console|json|text)\n(.*?)```(?=\n)", re.S)
NAMED = re.compile(r"`([\w.-]+)`:$")


def put_file(name, content):
    if not os.path.exists(name):
        with open(name, "w") as file:
            file.write(content)
        return 0
    with open(name) as file:
        if file.read() == content:
            return 0
    print("%s is not as the document has it" % name)
    return 1


def matches(said, printed):
    """said, a list of lines with three dots for any lines, against printed ones."""
    pattern = "".join(r"(?:.*\n)*?" if line == "..." else re.escape(line) + r"\n" for line in said)
    return re.fullmatch(pattern, "".join(line + "\n" for line in printed)) is not None


def run(command, said):
    done = subprocess.run(["sh", "-c", command], capture_output=True, text=True, check=False)
    printed = (done.stdout + done.stderr).split("\n")[:-1]
    if done.returncode == 0 and matches(said, printed):
        return 0
    print("%s: exit %d; it prints\n%s\nand the document says\n%s"
          % (command, done.returncode, "\n".join(printed), "\n".join(said)))
    return 1


def main(document):
    faults = commands = files = 0
    with open(document) as file:
        text = file.read()
    for before, kind, body in BLOCK.findall(text):
        name = NAMED.search(before)
        if kind != "console":
            if name:
                faults += put_file(name.group(1), body)
                files += 1
            continue
        for entry in re.split(r"^\$ ", body, flags=re.M)[1:]:
            command, *said = entry.rstrip("\n").split("\n")
            faults += run(command, [line for line in said])
            commands += 1
    if commands != text.count("\n$ ") or commands < 3 or files < 1:
        print("%d commands run, %d files made" % (commands, files))
        faults += 1
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
