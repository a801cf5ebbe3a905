#!/bin/sh
# recede chart: the sheets as files, which paints stand on them, and faults.
. tests/cli/lib.sh

# A PNG that pngcheck passes and a PDF, one page here; the same bytes under another
# locale and in an empty environment.
run 0 "$recede" chart -o twelve.png
tr '\n' ' ' <out | grep -q 'Left out, being neither .* columns: pyrrole red; quinacridone magenta[.]' ||
    fault "the reds are left out silently: $(cat out)"
grep -q -- '--third take' out || fault 'no word of what to do'
pngcheck -q twelve.png || fault 'pngcheck does not pass the chart'
run 0 env -i LSAN_OPTIONS="$LSAN_OPTIONS" LC_ALL=de_DE.UTF-8 "$recede" chart -o other.png
cmp -s twelve.png other.png || fault 'another locale draws differently'
run 0 "$recede" chart -o twelve.pdf
[ "$(head -c 5 twelve.pdf)" = '%PDF-' ] || fault 'no PDF'
pngcheck twelve.png | grep -q 3508x2480 || fault 'not one page'
run 0 "$recede" chart --palette landscape-twenty-four -o many.png
pngcheck many.png | grep -q 3508x9920 || fault 'not four pages'
"$recede" chart -o - | cmp -s - twelve.png || fault '-o - draws differently'

# The default names are the palette's own; a third, other paints and other media
# change the sheet; a paint that the palette lacks may stand on it.
run 0 "$recede" chart -o named.png --columns 'PB29, cobalt blue,phthalo blue, green shade,viridian' \
    --rows 'hansa yellow,diarylide yellow,yellow ochre,raw sienna,burnt sienna,burnt umber'
[ -s out ] && fault 'what the painter left out is told'
cmp -s named.png twelve.png && fault 'the sheet does not tell what is left out'
run 0 "$recede" chart -o third.png --third 'burnt sienna'
cmp -s third.png twelve.png && fault 'the third paint shows nowhere'
tr '\n' ' ' <out | grep -q 'pyrrole red; quinacridone magenta[.]' || fault 'on the chart, yet left out, or none'
run 0 "$recede" chart -o third.png --third 'pyrrole red'
tr '\n' ' ' <out | grep -q 'columns: quinacridone magenta[.]' || fault 'the third is left out'
run 0 "$recede" chart -o rows.png --rows 'quinacridone magenta,pyrrole red,PY43'
grep -q 'pyrrole\|neither' out && fault 'a paint on the chart is left out'
tr '\n' ' ' <out | grep -q 'that were named: hansa yellow; .*; burnt umber[.]' ||
    fault "what is not named is not told: $(cat out)"
run 0 "$recede" chart -o oil.png --medium oil
tr '\n' ' ' <out | grep -q 'lightens every mix with white: pale .*; pale ' || fault 'no pale paints'
grep -q 'titanium' out && fault 'the white is in the mixes'
if command -v pdftotext >/dev/null 2>&1; then
    run 0 "$recede" chart -o oil.pdf --medium oil
    pdftotext oil.pdf sheet.txt
    tr '\n' ' ' <sheet.txt | grep -q 'Left out, being neither' || fault 'not told on the sheet'
fi
run 0 "$recede" chart -o all.png --palette 'yellow ochre,viridian'
[ -s out ] && fault "nothing is left out: $(cat out)"
run 0 "$recede" chart -o lacking.png --palette 'ultramarine blue' --rows 'aureolin'
printf '{"paint":{"palette":["yellow ochre","viridian"]},"planes":[%s]}' "$plane" >scene.json
run 0 "$recede" chart scene.json -o scene.png
run 0 "$recede" chart -o list.png --palette 'yellow ochre,viridian'
cmp -s scene.png list.png || fault "the scene's paints draw differently"

# The range, with the plan inside, for a scene and with other paints.
printf '{"paint":{"palette":"landscape-six","most_parts":4},"planes":[%s]}' "$plane" >six.json
run 0 "$recede" chart --range six.json -o range.png
pngcheck -q range.png || fault 'pngcheck does not pass the range'
pngcheck -t range.png | grep -q 'recede plan' || fault 'the plan is not inside'
run 0 "$recede" chart --range six.json -o again.png
cmp -s range.png again.png || fault 'the same range draws differently'
run 0 sh -c "'$recede' chart --range - -o stdin.png <six.json"
cmp -s range.png stdin.png || fault 'standard input draws differently'
run 0 "$recede" chart --range six.json --palette landscape-twelve --parts 3 -o range.pdf
[ "$(head -c 5 range.pdf)" = '%PDF-' ] || fault 'no PDF of the range'

# What is wrong, in one line, with nothing written.
echo kept >sheet.png
refused() {
    expected=$1
    words=$2
    shift 2
    eval "run $expected \"\$recede\" chart $words"
    one_line 'recede chart' "$@" 'ee recede chart --help'
    [ "$(cat sheet.png)" = kept ] || fault "a file was harmed: $words"
}
refused 2 '' 'give -o FILE'
refused 2 '-o sheet.png --range --third viridian' '--range has no rows'
refused 2 '-o sheet.png --palette "pyrrole red"' 'no yellows and earths' '--rows'
refused 2 '-o sheet.png --palette "hansa yellow"' 'no blues and greens' '--columns'
refused 2 '-o sheet.png --rows "hansa yelow"' 'did you mean "hansa yellow"?'
refused 2 '-o sheet.png --rows "hansa yellow,PY74"' 'stands twice'
refused 2 '-o sheet.png --third "viridian,cobalt blue"' 'one paint'
refused 2 '-o sheet.png --palette landscape-twenty-four --rows aureolin' '24 paints'
refused 1 '-o sheet.png --medium oil --palette viridian' 'titanium white'
run 3 "$recede" chart none.json -o sheet.png
one_line 'none.json: cannot be read'
run 1 "$recede" chart --range -o sheet.png /dev/null
one_line '/dev/null:1:1' 'empty'
run 3 "$recede" chart -o none/sheet.png
one_line 'none/sheet.png: cannot be written'
[ "$(cat sheet.png)" = kept ] || fault 'a file was harmed'

no_faults
