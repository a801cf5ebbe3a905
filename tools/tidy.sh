#!/bin/sh
# clang-tidy over files with the flags of the build.
#
#     tools/tidy.sh FLAG... FILE...
set -eu
flags=
while case ${1:-} in -*) true ;; *) false ;; esac; do
    flags="$flags $1"
    shift
done
# shellcheck disable=SC2086
clang-tidy --quiet "$@" -- -std=c11 -Iinclude -Isrc $flags 2>/dev/null
