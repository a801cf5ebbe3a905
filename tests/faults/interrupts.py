"""SIGINT, SIGTERM and SIGHUP arrive before and after every system call, at allocations spread
over the run, and after so many milliseconds: the outputs are all old or all new, nothing
else is left, and the program ends by the signal. SIGKILL, which nobody can catch, may leave
temporary files and some outputs replaced, but each of them whole."""

import signal
import subprocess
import sys
import time

from driver import Command, Ended, Run, as_usual, calls_of, for_each, table

ENDING = [signal.SIGINT, signal.SIGTERM, signal.SIGHUP]
MOMENTS = 12  # of each kind that are spread over a run
NAMES_LEFT = ".recede-"


def judge_ending(command, where, number):
    return lambda ended: command.interrupted(where, ended, number)


def judge_killed(command, where):
    def judge(ended):
        if ended.signal != signal.SIGKILL:
            command.fault(where, "ended with %s" % (ended[:2],))
        for name in command.folder.outputs:
            if command.folder.get(name) not in (command.folder.old(name),
                                                command.folder.new[name]):
                command.fault(where, "%s is neither old nor new" % name)
        if not all(name.startswith(NAMES_LEFT) for name in command.folder.left()):
            command.fault(where, "left: %s" % command.folder.left())
    return judge


def at_calls(command):
    begins = calls_of(command)

    def visit(begin, attempt):
        for point in begins[begin.number]:
            where = "call %d, %s" % (point.number, point.name)
            for number in ENDING:
                for action in "ba":
                    attempt(action, number, judge_ending(command, where, number), point.number)
            attempt("b", signal.SIGKILL, judge_killed(command, where), point.number)

    return Run(command, "calls").walk(visit).tried


def at_allocations(command):
    points = Run(command, "allocations").walk(lambda point, attempt: 2 ** 31 - 1).points
    step = max(1, points // MOMENTS)

    def visit(point, attempt):
        number = ENDING[point.number // step % len(ENDING)]
        where = "allocation %d" % point.number
        attempt("b", number, judge_ending(command, where, number))
        return step - 1

    return Run(command, "allocations").walk(visit).tried


def run_for(command, seconds, number):
    process = subprocess.Popen([command.program] + command.words, cwd=command.folder.path,
                               stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
                               stderr=subprocess.PIPE, preexec_fn=as_usual)
    time.sleep(seconds)
    process.send_signal(number)
    printed, said = process.communicate()
    return Ended(process.returncode, max(0, -process.returncode), 0, 0, said, printed)


def after_a_while(command):
    """It may have done all before the signal comes."""
    began = time.monotonic()
    run_for(command, 0, 0)
    whole = time.monotonic() - began
    command.folder.restore()
    for i in range(MOMENTS):
        number = ENDING[i % len(ENDING)]
        ended = run_for(command, whole * i / MOMENTS, number)
        where = "%d of %d moments" % (i, MOMENTS)
        if ended.signal:
            command.interrupted(where, ended, number)
        else:
            command.succeeded(where, ended)
        command.folder.restore()
    return MOMENTS


def try_all(name, words):
    command = Command(name, words)
    row = [name, at_calls(command), at_allocations(command), after_a_while(command)]
    return command.done(), row


def main():
    results = for_each(try_all)
    table(["command", "at calls", "at allocations", "after a while"], [row for _, row in results])
    return 0 if results and all(good for good, _ in results) else 1


if __name__ == "__main__":
    sys.exit(main())
