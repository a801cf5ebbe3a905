# What the checks of faults share: builds the library that makes faults, and runs a
# program of this folder. Needs BUILD and CC. That the checks notice is shown by
# tools/mutate.sh tests/faults, which breaks the program for each kind of fault.
set -u
case ${BUILD:?} in /*) ;; *) BUILD=$PWD/$BUILD ;; esac
export BUILD
LSAN_OPTIONS=suppressions=$PWD/tests/cli/leaks.txt:print_suppressions=0
export LSAN_OPTIONS
here=tests/faults
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
trap 'exit 1' HUP INT TERM
TMPDIR=$work
export TMPDIR

# plain PROGRAM [COMMAND]: runs it as it is.
plain() {
    /usr/bin/python3 -B "$here/$1" "${2:-}"
}

# try PROGRAM [COMMAND]: with the library, where it can be used.
try() {
    if nm "$BUILD/recede" | grep -q '__asan_\|__ubsan_\|__tsan_\|__msan_\|__gcov_'; then
        echo 'skipped: built with sanitizers or to measure coverage, which allocate and write too'
        return 0
    fi
    echo 'void *__libc_malloc(unsigned long); int main(void) { return !__libc_malloc(1); }' \
        >"$work/glibc.c"
    if ! ${CC:-cc} -w -o "$work/glibc" "$work/glibc.c"; then
        echo 'skipped: this C library is not glibc'
        return 0
    fi
    ${CC:-cc} -std=gnu11 -O1 -g -Wall -Wextra -shared -fPIC -o "$work/faults.so" $here/*.c ||
        return 1
    RECEDE_FAULT_LIBRARY=$work/faults.so
    export RECEDE_FAULT_LIBRARY
    plain "$@"
}
