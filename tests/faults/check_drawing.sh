#!/bin/sh
# Memory runs out inside the drawing libraries, at a sample of places. Seen to fail with an
# output opened before it is drawn: tools/mutations.txt.
#     BUILD=build tests/faults/check_drawing.sh [COMMAND]
. tests/faults/lib.sh
try drawing.py "${1:-}"
