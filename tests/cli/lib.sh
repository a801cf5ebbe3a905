# What the command line's checks share. Sets recede and a folder of their own,
# in which they run.
set -u
case ${BUILD:?} in /*) ;; *) BUILD=$PWD/$BUILD ;; esac
recede=$BUILD/recede
source=$PWD
LSAN_OPTIONS=suppressions=$source/tests/cli/leaks.txt:print_suppressions=0
export LSAN_OPTIONS
work=$(mktemp -d)
faults=$(mktemp) # a file, for parts of a pipeline cannot set variables
trap 'rm -rf "$work" "$faults"' EXIT
trap 'exit 1' INT TERM
cd "$work" || exit 1

fault() {
    echo "$*" | tee -a "$faults" >&2
}

# The last line of a check: fails where there was a fault.
no_faults() {
    [ ! -s "$faults" ]
}

# run CODE COMMAND...: the command must end with that code. Its standard output
# is left in out, its standard error in err.
run() {
    expected=$1
    shift
    "$@" >out 2>err </dev/null
    code=$?
    [ "$code" = "$expected" ] || fault "exit $code, expected $expected: $* ($(head -c 300 err))"
}

# one_line PART...: err holds one line, with each of these in it.
one_line() {
    [ "$(wc -l <err)" = 1 ] || fault "not one line: $(cat err)"
    for part in "$@"; do
        grep -qF -- "$part" err || fault "'$part' is not in: $(cat err)"
    done
}

# A scene that is in order.
plane='{"name":"oak","distance":400,"foliage":"summer oak"}'
