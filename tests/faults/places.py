"""Outputs that cannot be written, in ways that hold for root too: for each command and each of
its outputs a missing folder, a file for a folder, a folder and a full device; standard output
a full device, a pipe that nobody reads and closed; and limits on the size of files. The
other outputs, there already, stay as they were."""

import os
import resource
import signal
import subprocess
import sys

from driver import Command, Ended, as_usual, for_each, table

PLACES = [("none/out", b"No such file or directory; check the name and the folder"),
          ("scene.json/out", b"Not a directory; check the folder's name"),
          ("folder", b"Is a directory; name a file, not a folder"),
          ("/dev/full", b"No space left on device; make room")]
LIMITED = b": cannot be written: File too large; raise the limit"


def run(command, words, stdout, prepare=lambda: None):
    def begin():
        as_usual()
        prepare()
    done = subprocess.run([command.program] + words, cwd=command.folder.path, check=False,
                          stdin=subprocess.DEVNULL, stdout=stdout, stderr=subprocess.PIPE,
                          preexec_fn=begin)
    return Ended(done.returncode, max(0, -done.returncode), 0, 0, done.stderr, done.stdout or b"")


def judge(command, where, ended, says):
    command.undone(where, ended, [says])
    if ended.printed:
        command.fault(where, "printed although nothing is done: %s" % ended.printed[:100])
    command.folder.restore()
    return 1


def outputs(command):
    os.mkdir(command.folder.at("folder"))
    command.folder.inputs.add("folder")
    tried = 0
    for output in command.folder.outputs:
        for place, reason in PLACES:
            words = [place if word == output else word for word in command.words]
            ended = run(command, words, subprocess.PIPE)
            says = place.encode() + b": cannot be written: " + reason
            tried += judge(command, "%s for %s" % (place, output), ended, says)
    return tried


def closed_pipe(command):
    reader, writer = os.pipe()
    os.close(reader)
    ended = run(command, command.words, writer,
                lambda: signal.signal(signal.SIGPIPE, signal.SIG_DFL))
    os.close(writer)
    return ended


def standard_output(command):
    if not command.printed:
        return 0
    says = b"standard output: cannot be written: "
    with open("/dev/full", "wb") as full:
        ended = run(command, command.words, full)
    tried = judge(command, "full standard output", ended, says + b"No space left on device; ")
    tried += judge(command, "closed pipe", closed_pipe(command), says + b"Broken pipe; ")
    ended = run(command, command.words, subprocess.PIPE, lambda: os.close(1))
    tried += judge(command, "closed standard output", ended, says + b"Bad file descriptor; ")
    return tried


def limits(command):
    sizes = [len(content) for content in command.folder.new.values()]
    tried = 0
    for size in (0, 1, max(sizes) // 2, max(sizes) - 1) if sizes else ():
        ended = run(command, command.words, subprocess.PIPE,
                    lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (size, size)))
        tried += judge(command, "files of %d bytes" % size, ended, LIMITED)
    return tried


def try_all(name, words):
    command = Command(name, words)
    row = [name, outputs(command), standard_output(command), limits(command)]
    return command.done(), row


def main():
    results = for_each(try_all)
    table(["command", "places", "standard output", "limits on size"],
          [row for _, row in results])
    return 0 if results and all(good for good, _ in results) else 1


if __name__ == "__main__":
    sys.exit(main())
