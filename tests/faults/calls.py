"""Every system call by which the program reads and writes fails in turn, in each way that
it can: the outputs stay as they were (there already, or not there), and the program says
why; or it goes on and all is as without the fault."""

import errno
import sys

from driver import Command, Run, calls_of, for_each, table

FAILS, GOES_ON, EITHER, TOO_LATE = "fails", "goes on", "either", "too late"

# name of the call: what is tried, and what must come of it. Actions are those of points.h.
WRITTEN = [("f", errno.EACCES, FAILS), ("f", errno.ENOSPC, FAILS), ("f", errno.EMFILE, FAILS)]
TRIED = {
    "open to read": [("f", errno.EACCES, FAILS), ("f", errno.EMFILE, FAILS),
                     ("f", errno.ENOMEM, FAILS)],
    "open to write": WRITTEN,
    "open a folder": [("f", errno.EACCES, GOES_ON)],
    "read": [("f", errno.EIO, FAILS), ("f", errno.EINTR, GOES_ON), ("S", 99, GOES_ON),
             ("h", errno.EIO, EITHER)],
    "write": [("f", errno.EIO, FAILS), ("f", errno.ENOSPC, FAILS), ("f", errno.EDQUOT, FAILS),
              ("f", errno.EFBIG, FAILS), ("f", errno.EINTR, GOES_ON), ("s", 1, GOES_ON),
              ("h", errno.ENOSPC, FAILS), ("h", errno.EINTR, GOES_ON), ("F", errno.EIO, FAILS)],
    "sync": [("f", errno.EIO, FAILS), ("f", errno.ENOSPC, FAILS), ("f", errno.EINVAL, GOES_ON)],
    "sync a folder": [("f", errno.EIO, GOES_ON)],
    "close what was read": [("d", errno.EIO, GOES_ON)],
    "close what was written": [("d", errno.EIO, FAILS), ("d", errno.ENOSPC, FAILS)],
    "close an empty file": [("d", errno.EIO, EITHER)],
    # the files are replaced by then; it was closed once before, to hear of this in time
    "close standard output": [("d", errno.EIO, TOO_LATE), ("d", errno.ENOSPC, TOO_LATE)],
    "close a folder": [("d", errno.EIO, GOES_ON)],
    "link": [("f", errno.EPERM, GOES_ON), ("f", errno.EMLINK, GOES_ON)],
    "rename": [("f", errno.EIO, FAILS), ("f", errno.EXDEV, FAILS), ("f", errno.EBUSY, FAILS)],
    "fchmod": [("f", errno.EPERM, FAILS)],
    "faccessat": [("f", errno.EROFS, FAILS), ("f", errno.EACCES, FAILS)],
    "fstat": [("f", errno.EBADF, FAILS)],
    "stat": [("f", errno.EIO, EITHER)],  # of an input: it does without
    "lstat": [("f", errno.EIO, FAILS)],
    # nothing can be done about it: what it leaves behind is allowed
    "unlink": [("f", errno.EIO, EITHER)],
}
READING = ("open to read", "read", "close what was read")  # the same whatever is written
SAYS = (b": cannot be written: ", b": cannot be read: ")
SEEN = set()


def judge_as(command, where, expected, counts):
    def judge(ended):
        command.no_leak(where, ended)
        counts["went on" if ended.code == 0 else "failed"] += 1
        if expected == FAILS or (expected == EITHER and ended.code != 0):
            command.undone(where, ended, SAYS)
        elif expected == TOO_LATE:
            command.said(where, ended, SAYS)
            if not command.folder.all_new():
                command.fault(where, "not whole: %s" % sorted(command.folder.names()))
        elif expected == EITHER and command.folder.left():
            for name in command.folder.outputs:
                if command.folder.get(name) != command.folder.new[name]:
                    command.fault(where, "%s is not whole" % name)
        else:
            command.succeeded(where, ended)
    return judge


def try_call(command, point, attempt, counts):
    SEEN.add(point.name)
    if point.name not in TRIED:
        command.fault("call %d" % point.number, "nobody knows of %s" % point.name)
    for action, value, expected in TRIED.get(point.name, []):
        where = "call %d, %s, %s %d" % (point.number, point.name, action, value)
        attempt(action, value, judge_as(command, where, expected, counts), point.number)


def try_all(name, words):
    row, counts, good = [0, 0], {"failed": 0, "went on": 0}, True
    for existing in (True, False):
        command = Command(name, words, existing)
        begins = calls_of(command)

        def visit(begin, attempt):
            for point in begins[begin.number]:
                if existing or point.name not in READING:
                    try_call(command, point, attempt, counts)

        run = Run(command, "calls").walk(visit)
        good = command.done() and good
        row = [row[0] + run.points, row[1] + run.tried]
    return good, [name] + row + [counts["failed"], counts["went on"]], SEEN


def main():
    results = for_each(try_all)
    good = bool(results) and all(good for good, _, _ in results)
    table(["command", "calls", "failures tried", "nothing touched", "went on"],
          [row for _, row, _ in results])
    seen = set().union(*(seen for _, _, seen in results))
    if not any(sys.argv[1:]) and seen != set(TRIED):
        good = False
        print("never called: %s" % sorted(set(TRIED) - seen), file=sys.stderr)
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main())
