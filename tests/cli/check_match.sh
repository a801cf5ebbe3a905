#!/bin/sh
# recede match: colours in both forms, plain text wherever that is called for, dabs
# where the terminal shows them, JSON by its schema, and faults.
. tests/cli/lib.sh

six='--palette landscape-six --parts 5'
escape=$(printf '\033')

# Both forms of one colour give one answer; #6a7f4c is L* 50.4, a* -17.0, b* 25.3
# (computed by the library; its own tests hold the conversion).
# shellcheck disable=SC2086
run 0 "$recede" match '#6a7f4c' $six
cp out srgb
head -n 1 srgb | grep -q '^#6a7f4c: L\* 50.4, a\* -17.0, b\* 25.3, value 4.9$' ||
    fault "the colour is told as $(head -n 1 srgb)"
for kind in closest simplest 'most forgiving' 'steadiest in lamp light'; do
    grep -q "^The .*$kind" srgb || fault "no recipe is called the $kind"
done
grep -q 'in lamp light [0-9.]* off, ' srgb || fault 'lamp light is not told'
grep -q 'illuminant A' srgb || fault 'what lamp light is is not said'
# shellcheck disable=SC2086
run 0 "$recede" match ' 95.8 , 0 , 2 ' $six
grep -q '  bare paper' out || fault 'nearly white needs no paint'

# Out of reach: which way, the nearest all the same, and the pigment that would help.
# shellcheck disable=SC2086
run 0 "$recede" match 50,-75,40 $six
grep -q 'misses the colour' out || fault 'a colour out of reach is not called so'
grep -q 'would bring it within [0-9.]*\.$' out || fault 'no pigment is named'
grep -q '^The closest' out || fault 'no nearest recipe'

# Pipes, NO_COLOR and plain terminals get no escape sequences; a terminal that shows
# 24-bit colours gets the colour itself, and the rest of the text is the same.
# shellcheck disable=SC2086
COLORTERM=truecolor TERM=xterm run 0 "$recede" match '#6a7f4c' $six
cmp -s out srgb || fault 'a pipe gets something else'
at_terminal() {
    env "$@" script -qec "'$recede' match '#6a7f4c' $six" /dev/null </dev/null |
        tr -d '\r' >terminal
}
terminals() {
    at_terminal COLORTERM=truecolor TERM=xterm NO_COLOR=
    grep -q "$escape\[48;2;106;127;76m" terminal || fault 'no dab at the terminal'
    grep -q "$escape\[0m\$" terminal || fault 'the colour is not taken back at the end of a line'
    grep -v "$escape" terminal | grep -v '^In each pair' | cmp -s - srgb ||
        fault 'the text at the terminal differs'
    at_terminal COLORTERM=24bit TERM=xterm NO_COLOR=
    grep -q "$escape" terminal || fault 'COLORTERM=24bit gets no dabs'
    for plain in 'COLORTERM=truecolor TERM=xterm NO_COLOR=1' 'COLORTERM=truecolor TERM=dumb NO_COLOR=' \
        'COLORTERM= TERM=xterm NO_COLOR=' 'COLORTERM=8bit TERM=xterm NO_COLOR='; do
        # shellcheck disable=SC2086
        at_terminal $plain
        cmp -s terminal srgb || fault "not plain with $plain"
    done
}
# Not every place can make a terminal: a bare chroot, say.
if script -qec true /dev/null </dev/null >/dev/null 2>&1; then
    terminals
else
    echo 'left out: no pseudo-terminal can be made here'
fi

# JSON, by its schema, the same in another locale; "-" takes the place of the text.
# shellcheck disable=SC2086
run 0 "$recede" match 50,-60,40 $six --json one.json
# shellcheck disable=SC2086
run 0 env LC_ALL=de_DE.UTF-8 "$recede" match 50,-60,40 $six --json -
cmp -s out one.json || fault '--json - differs'
run 0 "$recede" match 60,10,10 --medium oil --parts 4 --json oil.json
run 0 "$recede" match 60,10,10 --palette 'hansa yellow,phthalo blue, green shade, PR122' \
    --pigments 1 --json list.json
grep -q '"phthalo blue, green shade"' list.json || fault 'a name with a comma was not found'
for json in one oil list; do
    /usr/bin/python3 -c 'import json, sys, jsonschema
jsonschema.Draft202012Validator(json.load(open(sys.argv[1]))).validate(json.load(open(sys.argv[2])))' \
        "$source/docs/match.schema.json" $json.json || fault "$json.json breaks its schema"
done
grep -q '"medium": "oil"' oil.json || fault '--medium was not taken'

# What is wrong, in one line, with nothing printed.
refused() {
    expected=$1
    words=$2
    shift 2
    eval "run $expected \"\$recede\" match $words"
    one_line 'recede match' "$@" 'ee recede match --help'
    [ -s out ] && fault "printed something: $words"
}
refused 2 '' 'a colour is missing' 'quotes'
refused 2 6a7f4c "'#rrggbb'"
refused 2 "'#6a7f4'" 'six of 0 to 9 and a to f'
refused 2 "'#6a7f4g'" 'six of 0 to 9 and a to f'
refused 2 50,1 "'#rrggbb'" 'L,a,b'
refused 2 50,1,2,3 'L,a,b'
refused 2 50,1,x 'L,a,b'
refused 2 nan,0,0 'L,a,b'
refused 2 101,0,0 'L* goes from 0 to 100'
refused 2 50,0,-151 '-150 to 150'
refused 2 '50,0,1e999' '-150 to 150'
refused 2 '50,0,0 60,0,0' 'one word too many'
refused 2 '50,0,0 --palette landscape-sixx' 'did you mean "landscape-six"?'
refused 2 '50,0,0 --palette "hansa yellow,ultramarin blue"' 'did you mean "ultramarine blue"?'
refused 2 '50,0,0 --palette "viridian,PG18"' 'stands twice'
refused 2 '50,0,0 --palette ,' 'a name is missing'
refused 2 '50,0,0 --medium oils' 'watercolour, gouache, acrylic or oil'
refused 2 '50,0,0 --pigments 5' 'whole number from 1 to 4'
refused 2 '50,0,0 --pigments 2.5' 'whole number from 1 to 4'
refused 2 '50,0,0 --parts 0' 'whole number from 1 to 12'
refused 2 '50,0,0 --tie -1' 'from 0 to 10'
refused 2 '50,0,0 --tie one' 'from 0 to 10'
refused 1 '50,0,0 --medium oil --palette viridian' 'titanium white'
run 3 "$recede" match 50,0,0 --palette viridian --json none/a.json
one_line 'none/a.json: cannot be written'
run 3 sh -c "exec '$recede' match 50,0,0 --palette viridian >/dev/full"
one_line 'standard output: cannot be written'

no_faults
