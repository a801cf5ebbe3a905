#!/bin/sh
# recede palette: lists, one palette in full, swatches as files, and faults. Paints
# other than the library's are those of docs/paints.md, or invented here.
. tests/cli/lib.sh
python="/usr/bin/python3 $source/tests/cli/palettes.py"

# has TEXT...: out holds each of these.
has() {
    for part in "$@"; do
        grep -qF -- "$part" out || fault "'$part' is not told"
    done
}

# The list: palettes, pigments, where figures come from, each caution once.
run 0 "$recede" palette
has landscape-six landscape-twenty-four 'two earths, a magenta' 'naples yellow' NB1 fugitive \
    granulating '[3]' 'FORS Spectral Database' 'cobalt blue' "labels and the makers' safety sheets"
[ "$(grep -c 'lead and antimony' out)" = 1 ] || fault 'the caution on lead is not told once'
grep -q '^! *cobalt blue' out || fault 'cobalt blue has no mark'
grep -q '^  *hansa yellow' out || fault 'hansa yellow has a mark'
run 0 "$recede" palette --json list.json
$python table "$source/src/data/pigments.txt" list.json || fault 'the list is not the table'

# One palette; in an opaque medium nobody speaks of water.
run 0 "$recede" palette landscape-six --json six.json
has '6 paints in watercolour' 'ultramarine blue, PB29' 'staining: low' 'figures from [2]'
cp out six.txt
run 0 "$recede" palette --palette landscape-six
cmp -s out six.txt || fault '--palette tells something else'
grep -q '\[3\]' out && fault 'a source that none of the paints has'
run 1 "$recede" palette 'PB29,PY43' --medium oil
one_line 'add "titanium white" to the list' '"paints" of the palette file' 'take opaque-sixteen'
# One paint may be read about in any medium, and figures assume no more than they must.
for medium in oil gouache acrylic; do
    run 0 "$recede" palette 'cadmium red' --medium $medium -o red.png
    has "2 paints in $medium" 'cadmium: harmful' 'titanium white is added, to let it down with'
done
for medium in oil gouache acrylic watercolour; do
    run 0 "$recede" palette 'PB29,PW6' --medium $medium
    tr -s '\n ' ' ' <out >said
    grep -q 'gives the same is assumed' said
    assumes=$?
    case $medium in
    acrylic) [ $assumes = 1 ] || fault 'in acrylic the binder is assumed to make no difference' ;;
    *) [ $assumes = 0 ] || fault "in $medium nothing is assumed of the binder" ;;
    esac
    grep -q 'gum arabic' said && fault "acrylic figures speak of gum arabic in $medium"
    run 0 "$recede" palette 'cadmium red,PW6' --medium $medium
    tr -s '\n ' ' ' <out | grep -q 'gum arabic.*from the transparency; that another binder'
    case $?$medium in
    0oil | 0acrylic | 1gouache | 1watercolour) ;;
    *) fault "of what was measured in gum arabic $medium says the wrong thing" ;;
    esac
done
run 0 "$recede" palette 'PW6,PB29,yellow ochre' --medium oil --json oil.json
has '3 paints in oil' 'on a ground of' 'hides black ink well' 'does not show on black ink'
grep -q 'L\* above' out && fault 'a figure where words are wanted'
! grep -qiE 'water|staining|granulation' out oil.json >words ||
    grep -qvE '"(staining|granulation)":' words && fault "an oil palette with: $(cat words)"
grep -q '"white": 20' oil.json || fault 'no paint let down with white'
run 0 "$recede" palette 'cadmium yellow, deep hue, chinese white'
has 'taken for 6 diarylide yellow + 1 pyrrole red' '(diarylide yellow), very good' \
    'taken for titanium white'

# Paints of one's own: the words of their files.
/usr/bin/python3 "$source/tests/cli/own_paints.py" examples "$source/docs" || fault 'no examples'
run 0 "$recede" palette box.json -o box.png --json box-told.json
has 'box.json: for the moor' 'my green, PG23' 'from my-green.json, measured in watercolour' \
    'invented, to show the format' 'caution: do not breathe the dust of the dry paint'
$python own my-green.json box-told.json || fault "the file's words are not told"
run 0 "$recede" palette 'ultramarine blue, my-green.json' --json pair.json
has 'a palette of your own' 'from my-green.json'
$python own my-green.json pair.json || fault "the file's words are not told in a list"
run 0 "$recede" palette my-green.json --json alone.json
$python own my-green.json alone.json || fault "the file's words are not told alone"
$python valid "$source/docs" list.json six.json oil.json box-told.json pair.json alone.json ||
    fault 'the schema refuses'
$python changed "$source/docs" list.json six.json || fault 'the schema accepts what is wrong'

# Sheets: a PNG that pngcheck passes and a PDF; the same bytes under another locale.
run 0 "$recede" palette landscape-twelve -o twelve.png
pngcheck -q twelve.png || fault 'pngcheck does not pass the swatches'
pngcheck twelve.png | grep -q 3508x4960 || fault 'not two pages'
run 0 env -i LSAN_OPTIONS="$LSAN_OPTIONS" LC_ALL=de_DE.UTF-8 "$recede" palette landscape-twelve \
    -o other.png
cmp -s twelve.png other.png || fault 'another locale draws differently'
run 0 "$recede" palette opaque-sixteen --medium gouache -o ten.pdf
[ "$(head -c 5 ten.pdf)" = '%PDF-' ] || fault 'no PDF'
"$recede" palette landscape-twelve -o - | cmp -s - twelve.png || fault '-o - draws differently'

# What is wrong, in one line, with nothing written.
echo kept >sheet.png
refused() {
    expected=$1
    words=$2
    shift 2
    eval "run $expected \"\$recede\" palette $words"
    one_line 'recede palette' "$@"
    [ "$(cat sheet.png)" = kept ] || fault "a file was harmed: $words"
}
refused 2 '-o sheet.png' 'name it' 'recede palette --help'
refused 2 '--medium oil' 'name it' 'opaque-sixteen' 'recede palette --help'
refused 2 'landscape-six --palette landscape-six -o sheet.png' 'given twice'
refused 2 '"landscape-sx" -o sheet.png' 'did you mean "landscape-six"?'
refused 2 'landscape-six --medium ink -o sheet.png' 'watercolour, gouache, acrylic or oil'
refused 2 '"yellow ochre, box.json" -o sheet.png' 'box.json: it is a palette file' \
    'name the palette file alone' '"paints" inside it'
refused 3 'none.json -o sheet.png' 'none.json'
printf '{"name":"a"}' >bad.json
run 1 "$recede" palette bad.json -o sheet.png
one_line 'bad.json:1:2'
run 3 "$recede" palette landscape-six -o none/sheet.png
one_line 'none/sheet.png: cannot be written'
[ "$(cat sheet.png)" = kept ] || fault 'a file was harmed'

no_faults
