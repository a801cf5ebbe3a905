#!/bin/sh
# Every system call that reads or writes fails; prints how many there are. Seen to fail with
# errors of close, sync and read ignored, half a write taken for all, and nothing tidied or
# taken back: tools/mutations.txt.
#     BUILD=build tests/faults/check_calls.sh [COMMAND]
. tests/faults/lib.sh
try calls.py "${1:-}"
