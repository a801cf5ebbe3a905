#!/bin/sh
# Outputs and standard output that cannot be written, for every command.
#     BUILD=build tests/faults/check_places.sh [COMMAND]
. tests/faults/lib.sh
plain places.py "${1:-}"
