#!/bin/sh
# The planning page in a real browser, against the command line.
#
#     BUILD=build PAGE=build/wasm/planner.html FETCHED=build/fetched tests/page/run.sh
set -eu
export BUILD PAGE FETCHED
exec node --test tests/page/
