#!/bin/sh
# The walk-through of docs/own-paints.md: its commands, run as it says in a fresh
# folder, print what it says; and the photograph is the one that the program makes.
. tests/cli/lib.sh

cp "$source/docs/swatch-card.json" "$source/docs/swatch-card.png" .
mkdir bin
ln -s "$recede" bin/recede
PATH=$work/bin:$PATH /usr/bin/python3 "$source/tests/cli/walkthrough.py" \
    "$source/docs/own-paints.md" || fault 'the document says something else'
for sheet in box.png study.png; do
    [ "$(head -c 4 $sheet | tail -c 3)" = PNG ] || fault "$sheet was not drawn"
done

# The description is as the program writes it, and the photograph reads alike.
mkdir made
/usr/bin/python3 "$source/tests/cli/swatches.py" manual "$source" made || fault 'not made'
cmp -s made/swatch-card.json swatch-card.json || fault 'swatch-card.json is another one'
[ "$(wc -c <swatch-card.png)" -lt 60000 ] || fault 'swatch-card.png is over 60 kB'
run 0 "$recede" swatch swatch-card.json --photo swatch-card.png
cp out committed.txt
run 0 "$recede" swatch swatch-card.json --photo made/swatch-card.png
cmp -s out committed.txt || fault 'the photograph of docs/ is another than the program makes'

# The comparison can fail.
sed 's/^masstone  /masstone! /' "$source/docs/own-paints.md" >changed.md
(PATH=$work/bin:$PATH /usr/bin/python3 "$source/tests/cli/walkthrough.py" changed.md) >/dev/null &&
    fault 'a changed document passes'
no_faults
