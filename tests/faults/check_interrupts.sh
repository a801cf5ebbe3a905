#!/bin/sh
# Interrupts at every system call, at allocations and at moments of a run.
#     BUILD=build tests/faults/check_interrupts.sh [COMMAND]
. tests/faults/lib.sh
try interrupts.py "${1:-}"
