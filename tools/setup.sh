#!/bin/sh
# Makes sure that what the build (or the tests) need is there.
#
#     tools/setup.sh build|test|checks|bench|page|test-page
#
# Satisfied where pkg-config and the compiler find everything; else installs
# the missing Debian packages; on another system names them and stops.
set -eu

what=${1:-build}
fetched=${FETCHED:-build/fetched}
font=${FONT:-/usr/share/fonts/truetype/lato/Lato-Regular.ttf}
cc=${CC:-cc}
missing=

# need PACKAGE TEST...: the package is missing when the test fails.
need() {
    package=$1
    shift
    if ! "$@" >/dev/null 2>&1; then
        case " $missing " in *" $package "*) ;; *) missing="$missing $package" ;; esac
    fi
}
compiles() {
    printf '#include <math.h>\nint main(void) { return (int)sin(0.0); }\n' |
        "$cc" -x c - -o /dev/null -lm
}

# For the planning page: a compiler to WebAssembly, the sources of cJSON, and for
# its tests a browser and what drives it.
wasm_builtins() {
    ls /usr/lib/llvm-*/lib/clang/*/lib/wasi/libclang_rt.builtins-wasm32.a
}
look_for_page() {
    need clang command -v clang
    need lld command -v wasm-ld
    need wasi-libc test -r /usr/include/wasm32-wasi/stdlib.h
    need libclang-rt-14-dev-wasm32 wasm_builtins
    need dpkg-dev command -v dpkg-source
    if [ "$what" = test-page ]; then
        need chromium command -v chromium
        need nodejs command -v node
        need npm command -v npm
    fi
}
fetch() {
    case $what in
    *page) tools/fetch-cjson.sh "$fetched" ;;
    esac
    if [ "$what" = test-page ] && ! [ -d "$fetched/node/node_modules/axe-core" ]; then
        mkdir -p "$fetched/node"
        (cd "$fetched/node" && echo '{"private":true}' > package.json &&
            npm install --silent --no-audit --no-fund playwright-core@1 axe-core@4 > /dev/null)
    fi
}

look() {
    missing=
    need gcc command -v "$cc"
    need libc6-dev compiles
    need pkg-config command -v pkg-config
    need libpng-dev pkg-config --exists libpng
    need zlib1g-dev pkg-config --exists zlib
    need libcjson-dev pkg-config --exists libcjson
    need libcairo2-dev pkg-config --exists cairo
    need libpango1.0-dev pkg-config --exists pangocairo
    need libfontconfig-dev pkg-config --exists fontconfig
    need fonts-lato test -r "$font"
    case $what in *page) look_for_page ;; esac
    if [ "$what" = bench ]; then
        need libnlopt-dev pkg-config --exists nlopt
    fi
    if [ "$what" = checks ]; then
        need clang-tidy command -v clang-tidy
        need cppcheck command -v cppcheck
        need valgrind command -v valgrind
    fi
    if [ "$what" = test ]; then
        need libcmocka-dev pkg-config --exists cmocka
        need liblcms2-dev pkg-config --exists lcms2
        need colord-data test -r /usr/share/colord/cmf/CIE1931-2deg-XYZ.cmf
        need pngcheck command -v pngcheck
        need poppler-utils command -v pdftotext
        need python3-jsonschema /usr/bin/python3 -c 'import jsonschema'
        need clang command -v clang
        need lld command -v wasm-ld
        need wasi-libc test -r /usr/include/wasm32-wasi/stdlib.h
        need libclang-rt-14-dev-wasm32 sh -c 'ls /usr/lib/llvm-*/lib/clang/*/lib/wasi/libclang_rt.builtins-wasm32.a'
        need libclang-rt-14-dev sh -c 'ls /usr/lib/llvm-*/lib/clang/*/lib/linux/libclang_rt.asan*'
    fi
}

look
if [ -z "$missing" ]; then
    fetch
    exit 0
fi

if ! command -v apt-get >/dev/null 2>&1; then
    echo "setup: this is not a Debian system; please install what these Debian packages hold:$missing" >&2
    exit 1
fi
if [ "$(id -u)" = 0 ]; then
    as_root=
elif command -v sudo >/dev/null 2>&1; then
    if [ -t 0 ]; then as_root=sudo; else as_root="sudo -n"; fi
else
    echo "setup: these Debian packages are missing, and only root may install them:$missing" >&2
    exit 1
fi

echo "setup: installing$missing" >&2
DEBIAN_FRONTEND=noninteractive
export DEBIAN_FRONTEND
$as_root apt-get update -qq
$as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null

look
if [ -n "$missing" ]; then
    echo "setup: installed, but still not found:$missing" >&2
    exit 1
fi
fetch
