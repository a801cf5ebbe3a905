"""Allocations of the drawing libraries fail, a sample of them spread over the run. Most of
these libraries end the program then, some carry on; but no output may be touched unless the
program ends well, and nothing may be left behind. Where a library carries on without a
word the output may differ: how often is printed."""

import sys

from commands import outputs_of
from driver import ENOMEM, Command, Run, for_each, table

TRIES = 16  # a command


def try_some(name, words):
    command = Command(name, words)
    passed_over = 2 ** 31 - 1
    points = Run(command, "drawing").walk(lambda point, attempt: passed_over).points
    step = max(1, points // TRIES)
    counts = {"ended": 0, "same": 0, "other": 0}

    def visit(point, attempt):
        def judge(ended):
            if ended.code == 0:
                counts["same" if command.folder.all_new() else "other"] += 1
                left = command.folder.left()
            else:
                counts["ended"] += 1
                left = not command.folder.untouched()
            if left:
                command.fault("drawing allocation %d" % point.number,
                              "ended with %s, %s; left: %s" %
                              (ended[:2], ended.said[:200], sorted(command.folder.names())))
        attempt("f", ENOMEM, judge)
        return step - 1

    run = Run(command, "drawing").walk(visit)
    row = [name, points, run.tried, counts["ended"], counts["same"], counts["other"]]
    return command.done(), row


def draws(words):
    return any(word.endswith((".png", ".pdf")) for word in outputs_of(words))


def main():
    results = for_each(try_some, draws)
    table(["command", "drawing allocations", "failures tried", "ended, nothing touched",
           "same output", "other output"], [row for _, row in results])
    return 0 if results and all(good for good, _ in results) else 1


if __name__ == "__main__":
    sys.exit(main())
