"""Every allocation of the program, libcjson and libpng fails in turn: alone, and with all
that come after it. Each time the program says so and ends with 3, touches no output, leaves
nothing behind and frees all that it had; or does without and gives the same output."""

import sys

from driver import ENOMEM, Command, Run, for_each, table

SAYS = (b"not enough memory", b"Cannot allocate memory")


def try_all(name, words):
    command = Command(name, words)
    counts = {"undone": 0, "succeeded": 0}

    def visit(point, attempt):
        for action in "fF":
            def judge(ended):
                where = "allocation %d%s" % (point.number, " and all after" * (action == "F"))
                command.no_leak(where, ended)
                if ended.code == 0:
                    command.succeeded(where, ended)
                    counts["succeeded"] += 1
                else:
                    command.undone(where, ended, SAYS)
                    counts["undone"] += 1
            attempt(action, ENOMEM, judge)

    run = Run(command, "allocations").walk(visit)
    return command.done(), [name, run.points, run.tried, counts["succeeded"]]


def main():
    results = for_each(try_all)
    table(["command", "allocations", "failures tried", "done without"],
          [row for _, row in results])
    return 0 if results and all(good for good, _ in results) else 1


if __name__ == "__main__":
    sys.exit(main())
