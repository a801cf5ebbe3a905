#!/bin/sh
# Installed elsewhere: all files, a library that exports what its header declares and
# no more, a program built against it by pkg-config, the manual page as the program's
# own --help has it, completion, and nothing left once uninstalled. Seen to fail with all
# names exported, a name taken from the list, a command's name in the manual page changed
# and an option of completion changed: tools/mutations.txt.
set -eu
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
fault() { echo "install: $*"; exit 1; }

if nm "$BUILD/librecede.a" 2>/dev/null | grep -q __asan_; then
    echo "skipped: this build carries sanitizer symbols; the plain build is checked"
    exit 0
fi
place=$work/place
make -s BUILD="$BUILD" CC="${CC:-cc}" PREFIX=/opt/recede DESTDIR="$place" install > "$work/said" 2>&1 ||
    { cat "$work/said"; fault 'make install failed'; }
(cd "$place/opt/recede" && find . -type f | LC_ALL=C sort) > "$work/files"
cat > "$work/expected" <<'END'
./bin/recede
./include/recede.h
./lib/librecede.a
./lib/pkgconfig/recede.pc
./share/bash-completion/completions/recede
./share/man/man1/recede.1
END
diff "$work/expected" "$work/files" || fault 'other files than expected'

# The header's functions: the committed list, and the exports.
tools/public-symbols.sh > "$work/header"
diff tools/public-symbols.txt "$work/header" ||
    fault 'tools/public-symbols.txt is old: tools/public-symbols.sh > tools/public-symbols.txt'
nm -g --defined-only "$place/opt/recede/lib/librecede.a" | awk 'NF == 3 { print $3 }' |
    LC_ALL=C sort -u > "$work/exported"
diff "$work/header" "$work/exported" || fault 'the library exports other names than its header'

cat > "$work/use.c" <<'END'
#include <stdio.h>
#include <recede.h>
int main(void)
{
    recede_paint paint;
    recede_error error;
    if (recede_paint_named("PB29", &paint, &error))
        return 1;
    printf("%s %.4f\n", paint.name, recede_y_of_value(5));
    return 0;
}
END
PKG_CONFIG_PATH=$place/opt/recede/lib/pkgconfig PKG_CONFIG_SYSROOT_DIR=$place
export PKG_CONFIG_PATH PKG_CONFIG_SYSROOT_DIR
${CC:-cc} -o "$work/use" "$work/use.c" $(pkg-config --cflags --libs recede)
[ "$("$work/use")" = 'ultramarine blue 0.1927' ] || fault 'a program built against it says something else'
[ "recede $(pkg-config --modversion recede)" = "$("$place/opt/recede/bin/recede" --version)" ] ||
    fault 'two versions'

tools/manual.sh "$place/opt/recede/bin/recede" > "$work/manual"
diff man/recede.1 "$work/manual" ||
    fault 'the manual page is old: tools/manual.sh build/recede > man/recede.1'

complete() { # words so far; the last is what is being typed
    bash -c 'source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _recede 2>/dev/null
        echo "${COMPREPLY[*]}"' - "$place/opt/recede/share/bash-completion/completions/recede" \
        "$place/opt/recede/bin/recede" "$@"
}
[ "$(complete stu)" = study ] || fault 'completion does not know study'
[ "$(complete match --me)" = --medium ] || fault 'completion does not know --medium'
[ "$(complete match --medium g)" = gouache ] || fault 'completion does not know gouache'
[ "$(complete match --palette landscape-s)" = landscape-six ] || fault 'completion does not know palettes'
for command in $(sed -n 's/^\.SS //p' man/recede.1); do
    options=$("$place/opt/recede/bin/recede" "$command" --help | grep -o '^  -[-a-z]*' | tr -d ' ' | LC_ALL=C sort)
    offered=$(complete "$command" - | tr ' ' '\n' | LC_ALL=C sort)
    [ "$options" = "$offered" ] || fault "completion of $command offers: $offered"
done

make -s BUILD="$BUILD" PREFIX=/opt/recede DESTDIR="$place" uninstall
[ -z "$(find "$place" -type f)" ] || fault 'files are left'
