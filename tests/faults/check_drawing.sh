#!/bin/sh
# Memory runs out inside the drawing libraries, at a sample of places.
#     BUILD=build tests/faults/check_drawing.sh [COMMAND]
. tests/faults/lib.sh
try drawing.py "${1:-}"
