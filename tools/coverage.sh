#!/bin/sh
# Runs the tests of a build made with --coverage, then sums up its lines by folder
# and names what was not run. Exit 1 where the core has less than 90 in 100.
set -eu
find "$BUILD" -name '*.gcda' -delete
GCOV_ERROR_FILE=$BUILD/gcov-errors # where a limit on files stops it, as some checks ask
export GCOV_ERROR_FILE
for test in $(find "$BUILD/tests" -name 'test_*' -type f -perm -u+x | sort) \
    tests/cli/check_*.sh tests/page/check_*.sh; do
    CC=gcc "$test" > "$BUILD/said" 2>&1 || echo "(a test fails in this build: $test)"
done
for source in src/*/*.c; do
    data=$BUILD/${source%.c}.gcda
    if [ -f "$data" ]; then
        gcov -t -o "${data%.gcda}.o" "$data" 2> /dev/null |
            awk -v source="$source" '/:    0:Source:/ { ours = index($0, "Source:" source) > 0 }
                                     ours { print source ":" $0 }'
    fi
done > "$BUILD/lines"
awk -F: '
    { split($1, path, "/"); part = path[2]; count = $2; gsub(/[ *]/, "", count); line = $3 + 0
      if (line == 0 || count == "-") next
      lines[part]++
      if (count ~ /^[#=]/) {
        missed[part]++
        where[part] = where[part] "\n    " $1 ":" line
        if (!in_file[$1]++) files[part] = files[part] " " $1
      } }
    END {
      order = split("colour air paint plan picture text file draw cli", parts, " ")
      for (i = 1; i <= order; i++) {
        p = parts[i]
        if (!lines[p]) continue
        printf "%-8s %5d lines, %5.1f %% run\n", p, lines[p], 100 * (1 - missed[p] / lines[p])
        if (i <= 5) { core += lines[p]; gone += missed[p]; left = left where[p] }
        else outside = outside files[p]
      }
      print "not run outside the core, lines by file:"
      count = split(outside, names, " ")
      for (i = 1; i <= count; i++) printf "    %s %d\n", names[i], in_file[names[i]]
      printf "the core %5d lines, %5.1f %% run; not run:%s\n", core, 100 * (1 - gone / core), left
      exit !(core && gone <= 0.1 * core)
    }' "$BUILD/lines"
