#!/bin/sh
# The order of work: every step of every scene replayed by independent code; fewer
# wells and fewer tubes never give a smaller sum; the plan and the study carry it.
. tests/cli/lib.sh

replay() {
    /usr/bin/python3 "$source/tests/plan/replay.py" "$@" >sum || fault "$(cat sum)"
}

for scene in "$source"/scenes/*.json; do
    run 0 "$recede" puddle "$scene" --json work.json
    replay work.json 1.5
    run 0 "$recede" study "$scene" --json plan.json
    replay plan.json
done

# Mist and heights: graded washes on their lit sides. Invented.
cat >mist.json <<'END'
{"air":{"visibility":"12 km","haze":"fine","eye":"90 m","mist":{"visibility":"700 m","top":"60 m"}},
"light":{"sun_height":12,"sun_side":150},
"planes":[{"name":"near wood","distance":"300 m","base":"20 m","crest":"75 m","foliage":"spring beech"},
{"name":"far hill","distance":"4 km","base":"10 m","crest":"260 m","surface":"pale rock"}]}
END
run 0 "$recede" puddle mist.json --json work.json
replay work.json

# at_least LESS: the sum now is no smaller than LESS
at_least() {
    awk -v now="$(cat sum)" -v less="$1" 'BEGIN { exit !(now >= less - 1e-9) }' ||
        fault "a smaller sum, $(cat sum) after $1: $2"
}
last=0
for wells in 3 2 1; do
    run 0 "$recede" puddle --wells $wells --json work.json
    replay work.json
    at_least "$last" "$wells wells"
    last=$(cat sum)
done
last=0
for tubes in 12 8 5 3 1; do
    run 0 "$recede" puddle --tubes $tubes --json work.json
    replay work.json
    at_least "$last" "$tubes tubes"
    last=$(cat sum)
done

# The same twice, and in another locale; the sheet is sound.
run 0 "$recede" puddle --json one.json -o one.png
pngcheck -q one.png >/dev/null || fault 'pngcheck refuses the sheet'
run 0 env LC_ALL=de_DE.UTF-8 "$recede" puddle --json two.json -o two.png
cmp -s one.json two.json || fault 'another locale gives another order'
cmp -s one.png two.png || fault 'another locale draws differently'
run 0 "$recede" puddle -o one.pdf

# In oil what is let down is said before the first step, and a tube that others are let
# down from does not stay at home. Invented.
cat >oil.json <<'END'
{"paint":{"medium":"oil","most_parts":6},"air":{"visibility":"16 km"},
"planes":[{"name":"gate meadow","distance":25,"foliage":"meadow grass"},
{"name":"far ridge","distance":"12 km","foliage":"dark conifer"}]}
END
run 0 "$recede" puddle oil.json --json work.json
replay work.json
/usr/bin/python3 "$source/tests/plan/at_hand.py" work.json out >said || fault "$(cat said)"
sed 's/pyrrole red/titanium white/' out >wrong
cmp -s out wrong && fault 'pyrrole red is needed: the scene shows nothing'
/usr/bin/python3 "$source/tests/plan/at_hand.py" work.json wrong >said &&
    fault 'a tube in use may stay at home'
grep -n . out | grep -A99 'NO ' | grep 'Let down beforehand' && fault 'let down after the steps'
grep -q 'Let down beforehand: 1 part' out || fault 'what is let down is not told'
grep -q '^Take care:' out || fault 'no word of care'
grep -q '[0-9]\.[0-46-9][0-9]* peas' out && fault 'peas that no hand can measure'
grep -q '0\.1 and\|bring the sum' out && fault 'costs are told to a painter'
tr '\n' ' ' <out | grep -q 'It takes [0-9]* tubes; [0-9]* paints are let down' || fault 'no word of the tubes'
last=0
for tubes in 10 8 6 5 4 3 2; do # the white and the tubes that are only let down among them
    run 0 "$recede" puddle oil.json --tubes $tubes --json work.json
    replay work.json
    at_least "$last" "oil, $tubes tubes"
    last=$(cat sum)
    /usr/bin/python3 "$source/tests/plan/at_hand.py" work.json out >said || fault "$(cat said)"
done
run 0 "$recede" puddle oil.json --tubes 1
tr -s ' \n' ' ' <out | grep -q 'another colour than the one wanted' || fault 'no warning: one paint'
run 0 "$recede" study oil.json
[ "$(grep -n 'Let down' out | cut -d: -f1)" -lt "$(grep -n '^PLANE' out | cut -d: -f1)" ] ||
    fault 'the study lets down after its recipes'

# What is wrong, in one line, with nothing written.
run 2 "$recede" puddle --wells 4
one_line 'wells' 'from 1 to 3'
run 2 "$recede" puddle --tubes none
one_line 'tubes' 'from 1 to 24'
run 3 "$recede" puddle absent.json
one_line 'absent.json'
run 3 "$recede" puddle --json /dev/full
one_line '/dev/full'
run 3 "$recede" puddle -o one.pdf/under.pdf
[ -e one.pdf ] || fault 'an existing file was harmed'

no_faults
