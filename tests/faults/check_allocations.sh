#!/bin/sh
# Memory runs out at every place where the program asks for it; prints how many there are.
# Seen to fail with results not looked at, a block not freed, half a text taken for whole,
# and a shortage not told: tools/mutations.txt.
#     BUILD=build tests/faults/check_allocations.sh [COMMAND]
. tests/faults/lib.sh
try allocations.py "${1:-}"
