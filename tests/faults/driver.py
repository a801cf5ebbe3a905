"""Runs a command with the library of points.c before it and tries faults at its points.
What must hold after each fault is judged here, by what is left in the folder."""

import collections
import concurrent.futures
import os
import resource
import shutil
import signal
import socket
import struct
import subprocess
import sys
import tempfile

import commands

ENOMEM = 12
OLD_TIME = 10 ** 18  # ns, of the outputs that were there before: in 2001
OLD_MODE = 0o640
MOST_SECONDS = 60
# A child has no threads but its own: where a drawing library's thread was at work when it
# was forked it may wait for ever. What hangs each time is a fault.
TRIES_OF_HANGING = 3

Point = collections.namedtuple("Point", "number name")
Ended = collections.namedtuple("Ended", "code signal live leaked_at said printed")


class Folder:
    """A folder with the inputs, and outputs that were there before (or were not)."""

    def __init__(self, words, existing):
        self.path = tempfile.mkdtemp()
        self.outputs = commands.outputs_of(words)
        self.existing = self.outputs if existing else []
        for name, content in commands.files().items():
            self.put(name, content)
        self.inputs = set(os.listdir(self.path))
        self.new = {}
        self.restore()

    def at(self, name):
        return os.path.join(self.path, name)

    def put(self, name, content):
        with open(self.at(name), "wb") as file:
            file.write(content)

    def get(self, name):
        """None where there is no such file."""
        if not os.path.exists(self.at(name)):
            return None
        with open(self.at(name), "rb") as file:
            return file.read()

    def old(self, name):
        return b"old " + name.encode()

    def names(self):
        return set(os.listdir(self.path)) - self.inputs

    def restore(self):
        """Everything as before the command ran."""
        for name in self.names():
            os.unlink(self.at(name))
        for name in self.existing:
            self.put(name, self.old(name))
            os.chmod(self.at(name), OLD_MODE)
            os.utime(self.at(name), ns=(OLD_TIME, OLD_TIME))
        self.was = self.state()

    def state(self):
        stats = [os.stat(self.at(name)) for name in self.existing if name in self.names()]
        return [(s.st_ino, s.st_mode, s.st_mtime_ns, s.st_size, s.st_nlink) for s in stats]

    def untouched(self):
        return (self.names() == set(self.existing) and self.state() == self.was and
                all(self.get(name) == self.old(name) for name in self.existing))

    def all_new(self):
        return (self.names() == set(self.outputs) and
                all(self.get(name) == self.new[name] for name in self.outputs) and
                all(os.stat(self.at(name)).st_mode & 0o777 == OLD_MODE for name in self.existing))

    def left(self):
        return sorted(self.names() - set(self.outputs))

    def remove(self):
        shutil.rmtree(self.path)


class Command:
    def __init__(self, name, words, existing=True):
        self.name, self.words = name, words
        self.folder = Folder(words, existing)
        self.program = os.path.join(os.environ["BUILD"], "recede")
        self.faults = 0
        done = subprocess.run([self.program] + words, cwd=self.folder.path, capture_output=True,
                              stdin=subprocess.DEVNULL, check=False)
        if done.returncode != 0 or done.stderr:
            raise SystemExit("%s: without a fault it ends with %d: %s" %
                             (name, done.returncode, done.stderr))
        self.printed = done.stdout
        self.folder.new = {output: self.folder.get(output) for output in self.folder.outputs}
        self.folder.restore()

    def fault(self, where, what):
        self.faults += 1
        if self.faults <= 10:
            print("%s: %s: %s" % (self.name, where, what), file=sys.stderr)

    def done(self):
        self.folder.remove()
        return self.faults == 0

    # ---- what may be after a fault

    def said(self, where, ended, says):
        """Exit code 3 and one line with one of these."""
        if ended.signal or ended.code != 3:
            self.fault(where, "ended with %s: %s" % (ended[:2], ended.said))
        elif ended.said.count(b"\n") != 1 or not ended.said.endswith(b"\n"):
            self.fault(where, "not one line: %s" % ended.said)
        elif not any(part in ended.said for part in says):
            self.fault(where, "it says %s" % ended.said)

    def undone(self, where, ended, says):
        """That, and nothing touched."""
        self.said(where, ended, says)
        if not self.folder.untouched():
            self.fault(where, "an output was harmed or something is left: %s" %
                       sorted(self.folder.names()))

    def succeeded(self, where, ended):
        """As without a fault: the same bytes in the files and printed."""
        if ended.signal or ended.code != 0 or ended.said:
            self.fault(where, "ended with %s: %s" % (ended[:2], ended.said))
        if not self.folder.all_new():
            self.fault(where, "not the outputs of other times: %s" % sorted(self.folder.names()))
        if ended.printed != self.printed:
            self.fault(where, "not what is printed other times: %s" % ended.printed[:200])

    def interrupted(self, where, ended, number):
        """Ended by that signal, with all outputs old or all new and nothing else left."""
        if ended.signal != number:
            self.fault(where, "ended with %s: %s" % (ended[:2], ended.said))
        if not self.folder.untouched() and not self.folder.all_new():
            self.fault(where, "half done, or something is left: %s" % sorted(self.folder.names()))

    def no_leak(self, where, ended):
        if ended.live:
            self.fault(where, "%d blocks are not freed; one was made at %#x" %
                       (ended.live, ended.leaked_at))


class Run:
    """One run of a command; at each point of a kind visit(point, attempt) may call
    attempt(action, value, judge), with the point's number where it is to be a later one, and
    returns how many points are passed before the next is visited."""

    REPORT = struct.Struct("=iiqqq40s")
    ORDER = struct.Struct("=iiq")

    def __init__(self, command, kind):
        self.command = command
        self.streams = [tempfile.TemporaryFile(), tempfile.TemporaryFile()]
        for stream in self.streams:  # so that it can be emptied under the process
            flags = os.O_APPEND | os.O_RDWR
            fd = os.open("/proc/self/fd/%d" % stream.fileno(), flags)
            os.dup2(fd, stream.fileno())
            os.close(fd)
        self.socket, theirs = socket.socketpair(socket.AF_UNIX, socket.SOCK_SEQPACKET)
        self.socket.settimeout(MOST_SECONDS)
        environment = dict(os.environ, LD_PRELOAD=os.environ["RECEDE_FAULT_LIBRARY"],
                           RECEDE_FAULTS=kind, RECEDE_FAULT_CONTROL=str(theirs.fileno()))
        self.process = subprocess.Popen([command.program] + command.words,
                                        cwd=command.folder.path, stdin=subprocess.DEVNULL,
                                        stdout=self.streams[0], stderr=self.streams[1],
                                        env=environment, pass_fds=[theirs.fileno()],
                                        restore_signals=True, preexec_fn=as_usual)
        theirs.close()
        self.points = self.tried = self.number = 0

    def hear(self):
        what, status, number, live, leaked_at, name = self.REPORT.unpack(
            self.socket.recv(self.REPORT.size))
        name = name.rstrip(b"\0").decode()
        return chr(what), status, number, live, leaked_at, name

    def take(self):
        texts = []
        for stream in self.streams:
            stream.seek(0)
            texts.append(stream.read())
            stream.truncate(0)
        return texts

    def ended(self, status, live, leaked_at):
        printed, said = self.take()
        died = os.WTERMSIG(status) if os.WIFSIGNALED(status) else 0
        code = os.WEXITSTATUS(status) if os.WIFEXITED(status) else None
        return Ended(code, died, live, leaked_at, said, printed)

    def attempt(self, action, value, judge, at=None):
        """Tries one fault, here or at a later point; judge(ended) looks at the folder before
        it is put in order."""
        self.tried += 1
        for _ in range(TRIES_OF_HANGING):
            self.socket.send(self.ORDER.pack(ord(action), value, at or self.number))
            _, status, _, live, leaked_at, _ = self.hear()
            ended = self.ended(status, live, leaked_at)
            if ended.signal != signal.SIGALRM:
                break
        judge(ended)
        if not self.command.folder.untouched():
            self.command.folder.restore()

    def walk(self, visit):
        while True:
            what, _, number, live, leaked_at, name = self.hear()
            if what == "d":
                self.points = number
                break
            self.number = number
            passed = visit(Point(number, name), self.attempt) or 0
            self.socket.send(self.ORDER.pack(ord("g"), passed, 0))
        code = self.process.wait(MOST_SECONDS)
        printed, said = self.take()
        ended = Ended(code, 0, live, leaked_at, said, printed)
        self.command.succeeded("all points passed", ended)
        self.command.no_leak("all points passed", ended)
        self.socket.close()
        self.command.folder.restore()
        return self


def calls_of(command):
    """All calls of a run, and where a child has to begin to come to each: where it is made,
    or, once anything is written, at the last call before that, for a child must not meet
    what its parent has done."""
    points = []
    Run(command, "calls").walk(lambda point, attempt: points.append(point))
    writing = next(i for i, point in enumerate(points)
                   if point.name in ("open to write", "write"))
    last = points[writing - 1].number
    begins = collections.defaultdict(list)
    for point in points:
        begins[min(point.number, last)].append(point)
    return begins


def as_usual():
    """A job in the background inherits SIGINT ignored; and crashes leave no cores."""
    for number in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP):
        signal.signal(number, signal.SIG_DFL)
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


def table(heads, rows):
    """Rows of a name and numbers, and their sums."""
    rows = rows + [["all"] + [sum(column) for column in list(zip(*rows))[1:]]]
    print("| " + " | ".join(heads) + " |")
    print("| --- |" + " ---: |" * (len(heads) - 1))
    for row in rows:
        print("| " + " | ".join(map(str, row)) + " |")


def for_each(work, wanted=lambda words: True):
    """work(name, words) for each command, as many at a time as there are processors; those
    whose name holds a word of the command line, all without one. Gives the results."""
    asked = [word for word in sys.argv[1:] if word]
    chosen = [(name, words) for name, words in commands.COMMANDS
              if wanted(words) and (not asked or any(word in name for word in asked))]
    with concurrent.futures.ProcessPoolExecutor(max_workers=os.cpu_count()) as pool:
        return list(pool.map(work, *zip(*chosen))) if chosen else []
