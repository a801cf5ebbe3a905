#!/bin/sh
# Outputs and standard output that cannot be written, for every command. Seen to fail with
# files replaced before all is written, and with the signals of pipe and size not ignored:
# tools/mutations.txt.
#     BUILD=build tests/faults/check_places.sh [COMMAND]
. tests/faults/lib.sh
plain places.py "${1:-}"
