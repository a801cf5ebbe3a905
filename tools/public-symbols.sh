#!/bin/sh
# The functions that the header declares, one a line: tools/public-symbols.txt.
set -eu
header=$(mktemp)
trap 'rm -f "$header"' EXIT
"${CC:-cc}" -E -P include/recede.h > "$header"
grep -o '\brecede_[a-z0-9_]*(' "$header" | tr -d '(' | LC_ALL=C sort -u
