#!/bin/sh
# The planning page in a real browser, against the command line.
#
#     BUILD=build PAGE=build/wasm/planner.html FETCHED=build/fetched tests/page/run.sh
set -eu
export BUILD PAGE FETCHED
# two files at a time, where this Node.js can be told so
two=--test-concurrency=2
node $two --version > /dev/null 2>&1 || two=
exec node --test $two tests/page/
