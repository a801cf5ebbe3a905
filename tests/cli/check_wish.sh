#!/bin/sh
# recede wish through the real program: answers in words and as JSON, the scene
# it writes, which plans to the values it said, and wrong wishes.
. tests/cli/lib.sh

planes='{"name":"near bank","distance":30,"foliage":"meadow grass"},
{"name":"alder line","distance":900,"foliage":"summer oak"},
{"name":"far ridge = 2","distance":9000,"foliage":"heather"}'
scene() {
    printf '{"air":{"visibility":"%s"},"light":{%s},"paint":{"palette":"landscape-six",
"most_pigments":1,"most_parts":2},"planes":[%s]}' "$1" "$2" "$planes"
}
scene '25 km' '"sun_height":40' >clear.json
scene '9 km' '"sky":"overcast"' >grey.json

# asked OUTCOME SCENE WORD...: answered so, as JSON and in the scene written too.
asked() {
    outcome=$1
    given=$2
    shift 2
    run 0 "$recede" wish "$given" "$@"
    cp out said
    run 0 "$recede" wish "$given" "$@" -o found.json --json answer.json
    cmp -s out said || fault "with files it says something else: $*"
    grep -q "\"outcome\": \"$outcome\"" answer.json || fault "not $outcome: $* ($(cat said))"
    run 0 "$recede" study found.json --json plan.json
    /usr/bin/python3 "$source/tests/cli/wish.py" "$source/docs" answer.json plan.json ||
        fault "the answer is wrong: $*"
    [ "$(wc -L <said)" -le 100 ] || fault "wider than 100 columns: $*"
    [ "$outcome" = granted ] || return
    run 0 "$recede" wish found.json "$@"
    grep -q 'grants it as it stands' out || fault "asked again it does not hold: $* ($(cat out))"
}
says() {
    tr '\n' ' ' <said | grep -q -- "$1" || fault "it does not say '$1': $(cat said)"
}

asked granted clear.json --steps 0.6
says 'With visibility at [0-9.]* km instead of 25 km it is granted: the least step is 0.60'
says 'lit sides only, the sky included'
says 'far ridge = 2'
says 'Values are as seen, their darks fitted to the paints; no mixes are sought'
run 0 "$recede" wish --help
grep -q 'planes as painted' out && fault 'the help promises values as painted'
asked granted clear.json --value 'far ridge = 2=6.5'
says 'far ridge = 2 has value 6.50'
asked granted clear.json --value 'far ridge = 2=6.5' --sun
asked granted grey.json --steps 1 --shadows --without-sky
says 'lit sides and shadow sides, the sky left out'
asked holds clear.json --steps 0.1 --without-sky
says 'grants it as it stands'
asked denied clear.json --steps 4
says 'No visibility from 0.2 to 250 km grants it'
says 'short'
says 'What remains:'
asked denied grey.json --value 'near bank=9.5'
says 'away'
run 0 "$recede" wish --steps 0.3
run 0 sh -c "'$recede' wish --steps=0.3 - <clear.json"

# To standard output goes what was asked for, the words otherwise.
run 0 "$recede" wish clear.json --steps 0.6 -o -
cp out found.json
run 0 "$recede" check found.json
run 0 "$recede" wish clear.json --steps 0.6 --json -
[ "$(head -c 1 out)" = '{' ] || fault '--json - prints something else'

# Wrong wishes: one line with the remedy, nothing written, exit code 2.
wrong() {
    remedy=$1
    shift
    run 2 "$recede" wish "$@" -o none.json
    one_line 'recede wish: ' "$remedy"
    [ -s out ] && fault "printed something: $*"
    [ -e none.json ] && fault "wrote something: $*"
}
wrong 'no wish is given' clear.json
wrong 'one at a time' clear.json --steps 1 --value 'near bank=5'
wrong 'did you mean "alder line"?' clear.json --value 'adler line=5'
wrong 'the nearest known are' clear.json --value 'q=5'
wrong 'write a plane and its value' clear.json --value 'alder line'
wrong 'the value wished for is 11; expected a number from 0' clear.json --value 'alder line=11'
wrong 'expected a number from 0' clear.json --value 'alder line='
wrong 'expected a number from 0' clear.json --value 'alder line=five'
wrong '--steps is 0.05; expected a number from 0.1 to 9' clear.json --steps 0.05
wrong '--steps is nan; expected' clear.json --steps nan
wrong 'belong to --steps' clear.json --value 'alder line=5' --shadows
wrong 'only a clear sky has a sun' grey.json --steps 0.5 --sun
printf '{"planes":[%s]}' "$plane" >one.json
wrong 'no neighbour but the sky' one.json --steps 0.5 --without-sky
run 1 "$recede" wish --steps 0.5 - </dev/null
run 3 "$recede" wish --steps 0.5 none.json

no_faults
