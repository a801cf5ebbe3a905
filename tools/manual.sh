#!/bin/sh
# The manual page: man/recede.1.in with each command as its own --help has it.
#
#     tools/manual.sh build/recede > man/recede.1
set -eu
recede=$1

# Help in the form of this program to roff: usage, what it does, options.
to_roff() {
    sed 's/\\/\\e/g; s/-/\\-/g' | awk -v command="$1" '
        NR == 1 { print ".SS " command; print ".B " $0; print ".PP"; next }
        /^  \\-/ {
            line = substr($0, 3)
            at = match(line, /   *[^ ]/)
            print ".TP"; print ".B " substr(line, 1, at - 1)
            print "\\&" substr(line, at + RLENGTH - 1); next
        }
        /^$/ { if (NR > 2) print ".PP"; next }
        { print "\\&" $0 }'
}

version=$("$recede" --version)
while IFS= read -r line; do
    case $line in
    @COMMANDS@)
        "$recede" --help | sed -n 's/^  \([a-z]*\)  .*/\1/p' | while read -r command; do
            "$recede" "$command" --help | to_roff "$command"
        done
        ;;
    *@VERSION@*) printf '%s\n' "$line" | sed "s/recede @VERSION@/$version/" ;;
    *) printf '%s\n' "$line" ;;
    esac
done < man/recede.1.in
