#!/bin/sh
# Memory runs out at every place where the program asks for it; prints how many there are.
#     BUILD=build tests/faults/check_allocations.sh [COMMAND]
. tests/faults/lib.sh
try allocations.py "${1:-}"
