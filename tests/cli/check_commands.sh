#!/bin/sh
# What the commands do when all is well: conventions, and the scene that check
# prints, which plans to the same bytes.
. tests/cli/lib.sh

printf '{"paint":{"palette":"landscape-six","most_pigments":2,"most_parts":4},"planes":[%s]}' \
    "$plane" >small.json

# Standard input and output, options in any order and spelling.
run 0 "$recede" check small.json
cp out filled.json
run 0 "$recede" check filled.json
cmp -s out filled.json || fault 'what check prints does not read back the same'
"$recede" check - <small.json | cmp -s - filled.json || fault 'standard input reads differently'
run 0 "$recede" check -o a.json small.json
[ -s out ] && fault 'check -o printed something'
cmp -s a.json filled.json || fault 'check -o writes something else'
run 0 "$recede" check small.json -ob.json
cmp -s b.json filled.json || fault '-oFILE writes something else'
run 0 "$recede" check -o - -- small.json
cmp -s out filled.json || fault 'check -o - prints something else'
cp small.json ./-odd.json
run 0 "$recede" check -- -odd.json
run 0 "$recede" check
grep -q '"planes"' out || fault 'the built-in scene was not printed'

run 0 "$recede" --version
grep -qx 'recede [0-9]*\.[0-9]*\.[0-9]*' out || fault "version: $(cat out)"
run 0 "$recede" --help
for command in study check match chart; do
    grep -q "^  $command " out || fault "--help does not name $command"
    "$recede" $command --help >help || fault "$command --help"
    grep -q "^recede $command " help || fault "$command --help does not start with its usage"
done

# The scene as check prints it plans to the same bytes, for every scene; the
# plan is the same under another locale and in an environment that is empty (but for
# what a sanitizer wants to know).
run 0 "$recede" study small.json --json one.json -o one.png
run 0 "$recede" study --json=two.json -o two.png filled.json
cmp -s one.json two.json || fault 'the filled-in scene plans differently'
cmp -s one.png two.png || fault 'the filled-in scene draws differently'
run 0 env -i LSAN_OPTIONS="$LSAN_OPTIONS" LANG=de_DE.UTF-8 LC_ALL=de_DE.UTF-8 \
    "$recede" study small.json --json three.json -o three.png
cmp -s one.json three.json || fault 'another locale plans differently'
cmp -s one.png three.png || fault 'another locale draws differently'
run 0 env -i LSAN_OPTIONS="$LSAN_OPTIONS" "$recede" study small.json --json - -o four.png
cmp -s one.json out || fault '--json - prints something else'
cmp -s one.png four.png || fault 'an empty environment draws differently'

# umask, permissions and links are respected.
(umask 077; "$recede" check small.json -o private.json)
[ "$(stat -c %a private.json)" = 600 ] || fault 'the umask was not respected'
chmod 640 private.json
"$recede" check small.json -o private.json
[ "$(stat -c %a private.json)" = 640 ] || fault 'permissions were not kept'
ln -s private.json link.json
"$recede" check small.json -o link.json
[ -L link.json ] || fault 'a link was replaced'

# Interrupted, here while it waits for its scene, it ends by the signal and leaves
# nothing.
mkfifo waiting
before=$(ls -A)
"$recede" study waiting -o late.png >out 2>err &
exec 9>waiting # goes on once the other end is open
kill -TERM $!
{ wait $!; } 2>/dev/null
[ $? = 143 ] || fault 'it did not end by the signal'
exec 9>&-
[ "$(ls -A)" = "$before" ] || fault "something is left: $(ls -A)"

no_faults
