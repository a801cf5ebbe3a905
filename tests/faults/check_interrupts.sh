#!/bin/sh
# Interrupts at every system call, at allocations and at moments of a run. Seen to fail with
# temporary files left, signals let through in the middle, and the old file gone for a
# moment: tools/mutations.txt.
#     BUILD=build tests/faults/check_interrupts.sh [COMMAND]
. tests/faults/lib.sh
try interrupts.py "${1:-}"
