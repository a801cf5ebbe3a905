#!/bin/sh
# Bad input through the real program: the exit code, one line that names file,
# line, column and remedy, nothing written, and no file harmed. Works as root. Seen to fail
# with outputs not compared with what was read: tools/mutations.txt.
. tests/cli/lib.sh

# refused PLACE PART... with the scene on standard input of this function: both
# commands refuse it with 1, say so at PLACE, and leave the output files alone.
refused() {
    place=$1
    shift
    cat >scene.json
    echo kept >study.png
    echo kept >plan.json
    run 1 "$recede" check scene.json -o study.png
    one_line "scene.json:$place: " "$@"
    [ -s out ] && fault "check printed something: $(head -c 80 out)"
    run 1 "$recede" study scene.json -o study.png --json plan.json
    one_line "scene.json:$place: " "$@"
    [ -s out ] && fault "study printed something: $(head -c 80 out)"
    [ "$(cat study.png plan.json)" = "kept
kept" ] || fault "an output file was harmed"
    [ "$(ls -A)" = "err
out
plan.json
scene.json
study.png" ] || fault "something is left: $(ls -A)"
}

refused 1:1 'empty' 'expected JSON' </dev/null
printf '{"planes":[%s}' "$plane" | refused 1:64 "found '}'" "expected ']', or a comma"
printf '{"planes":[%s],}' "$plane" | refused 1:66 'take out the comma'
printf '{\n  "plains": [%s]\n}' "$plane" | refused 2:3 'plains' 'did you mean'
printf '{"planes":[{"name":"a","distance":5,\n "foliage":"sumer oak"}]}' |
    refused 2:12 'sumer oak' 'did you mean "summer oak"?'
printf '{"paint":{"palette":["ultramarin blue"]},"planes":[%s]}' "$plane" |
    refused 1:22 'ultramarin blue' 'did you mean "ultramarine blue"'
printf '{"planes":[{"name":"a","distance":-4,"foliage":"willow"}]}' |
    refused 1:35 'distance is -4' 'expected 0.1 m to 300000 m'
printf '{"planes":[{"name":"a","distance":NaN,"foliage":"willow"}]}' |
    refused 1:35 'NaN' 'write a finite one'
printf '{"planes":[{"name":"a","distance":1e999,"foliage":"willow"}]}' | refused 1:35 'too large'
printf '{"planes":[{"name":"a","distance":04,"foliage":"willow"}]}' |
    refused 1:35 'found 04' 'JSON writes numbers as'
printf '{"planes":[{"name":"a","distance":"4 parsec","foliage":"willow"}]}' |
    refused 1:35 '4 parsec' 'mm, cm, m, km, in, ft, yd and mi'
printf '{"planes":[{"name":"a","name":"b","distance":4,"foliage":"willow"}]}' |
    refused 1:24 'the key "name" a second time' 'keep one'
printf '{"planes":[%s,\n%s]}' "$plane" "$plane" | refused 2:9 'stands twice' 'give each its own'
printf '{"planes":[]}' | refused 1:11 'it is empty' 'expected a list of 1 to 64 planes'
{
    printf '{"planes":[\n'
    i=0
    while [ $i -lt 65 ]; do
        [ $i = 0 ] || printf ',\n'
        printf '{"name":"%d","distance":5,"foliage":"willow"}' $i
        i=$((i + 1))
    done
    printf ']}\n'
} | refused 66:1 '65 planes' 'leave some out'
printf '\357\273\277{"planes":[%s,]}' "$plane" | refused 1:65 'take out the comma'
printf '\377\376{\000}\000' | refused 1:1 'saved as UTF-16' 'save it as UTF-8'
printf '\211PNG\r\n\032\n' | refused 1:1 'a PNG picture, not a text' '--photo'
printf '{"light":{"sun_height":45,5},"planes":[%s]}' "$plane" |
    refused 1:24 'found 45,5' 'write 45.5'
printf '{"title":"a\377","planes":[%s]}' "$plane" | refused 1:12 '0xFF' 'UTF-8'
printf '{"title":"a\342\200\256","planes":[%s]}' "$plane" | refused 1:12 'U+202E' 'take it out'
printf '{"title":"a\000","planes":[%s]}' "$plane" | refused 1:12 'U+0000'
printf '{"paint":{"medium":"oil","palette":"landscape-six"},"planes":[%s]}' "$plane" |
    refused 1:36 'white' 'titanium white'
printf '{"paint":{"medium":"oil","shadows":"over"},"planes":[%s]}' "$plane" |
    refused 1:36 'oil hides what it is laid over' '"beside"'

# Too large a file: refused, though no place can be named.
head -c 1048577 /dev/zero | tr '\0' ' ' >large.json
run 1 "$recede" check large.json
one_line 'large.json: ' '1048576 bytes' 'shorten it'

# What cannot be read.
run 3 "$recede" check none.json
one_line 'none.json: cannot be read: No such file' 'check the name'
run 3 "$recede" study none.json -o a.png
one_line 'none.json: cannot be read' 'check the name'
[ -e a.png ] && fault 'a.png was made'
run 3 "$recede" check .
one_line 'Is a directory' 'name a file'
run 3 sh -c "exec '$recede' check - <&-"
one_line 'standard input: cannot be read'

# What cannot be written.
printf '{"paint":{"palette":"landscape-six","most_pigments":1},"planes":[%s]}' "$plane" >good.json
echo kept >file
for command in "check good.json -o" "study good.json -o" "study good.json --json"; do
    for place in file/a none/a . /dev/full; do
        # shellcheck disable=SC2086
        run 3 "$recede" $command "$place"
        one_line "$place: cannot be written" '; '
        [ -s out ] && fault "printed, although nothing was done: $command $place"
    done
done
run 3 "$recede" study good.json -o a.png --json none/b.json
[ -e a.png ] && fault 'a.png was made although the plan could not be'
run 3 "$recede" study good.json -o a.png --json ./a.png
one_line 'a.png' 'give each its own'
[ -e a.png ] && fault 'a.png was made twice over'
run 0 sh -c "exec '$recede' check good.json -o fine.json <&- >&- 2>&-"
rm -f fine.json
for command in check study --help --version "check --help"; do
    # shellcheck disable=SC2086
    run 3 sh -c "exec '$recede' $command >/dev/full"
    one_line 'standard output: cannot be written' 'make room'
    run 3 sh -c "exec '$recede' $command >&-"
    one_line 'standard output: cannot be written' 'closed'
done
run 3 sh -c "trap '' PIPE; { sleep 1; '$recede' check good.json; echo \$? >code; } 2>pipe_err | true
             exit \$(cat code)"
said=$( (ulimit -f 0; "$recede" check good.json -o file) 2>&1)
[ $? = 3 ] || fault 'a limit on file sizes was not noticed'
echo "$said" >err
one_line 'file: cannot be written: File too large' 'raise the limit'
[ "$(cat file)" = kept ] || fault 'the file was harmed'
[ -z "$(ls -A | grep '^\.')" ] || fault "hidden files are left: $(ls -A)"

# No output takes the place of an input, by whatever name; sheets are PNG or PDF.
cp good.json scene.json
ln -s scene.json link.json
for words in "study scene.json --json scene.json" "study scene.json --json link.json" \
    "study link.json --json scene.json -o a.png" "check scene.json -o scene.json" \
    "check scene.json -o ./scene.json"; do
    # shellcheck disable=SC2086
    run 2 "$recede" $words
    one_line 'would take the place of a file that was read' 'choose another'
    cmp -s good.json scene.json || fault "an input was overwritten: $words"
done
for name in a.jpg a.JPEG a.svg a.json; do
    run 2 "$recede" study scene.json -o "$name"
    one_line "$name" 'end in .png or .pdf'
    [ -e "$name" ] && fault "$name was made"
done
[ -e a.png ] && fault 'a.png was made beside an input that was not to be overwritten'
rm scene.json link.json

# Wrong usage.
for words in "" "chek" "check a b" "check --none" "check -x" "check -o" "study --json" \
    "study --json=" "check -o a -o b" "check --help=1" "study a b"; do
    # shellcheck disable=SC2086
    run 2 "$recede" $words
    one_line 'recede' 'ee recede'
done
run 2 "$recede" chek
one_line 'did you mean "check"?'
run 2 "$recede" study --jsno x
one_line 'did you mean "json"?'

no_faults
