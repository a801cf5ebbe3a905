#!/bin/sh
# Every system call that reads or writes fails; prints how many there are.
#     BUILD=build tests/faults/check_calls.sh [COMMAND]
. tests/faults/lib.sh
try calls.py "${1:-}"
