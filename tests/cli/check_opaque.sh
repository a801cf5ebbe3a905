#!/bin/sh
# Gouache, acrylic and oil through every command: their own words, on the terminal, in
# JSON and on the sheets; what is let down beforehand is said; pale planes are met.
. tests/cli/lib.sh

scene() {
    cat <<EOF
{"title": "Weir Farm from the gate", "air": {"visibility": "16 km"},
 "light": {"sun_height": 32, "sun_side": 100}, "paint": {"medium": "$1"$2},
 "planes": [{"name": "gate meadow", "distance": 25, "foliage": "meadow grass"},
            {"name": "barn", "distance": 90, "surface": "slate"},
            {"name": "middle hill", "distance": "4 km", "base": 20, "crest": 900,
             "foliage": "heather"},
            {"name": "far ridge", "distance": "12 km", "foliage": "dark conifer"}]}
EOF
}

# Words of watercolour. What a sheet of the built-in white paper is called in a scene, a
# reminder to wash one's hands, and the names of JSON's members are not among them.
wrong='water|puddle|bare paper|dry paper|scrap of the same paper|\bwash|\bwells?\b'
hands='wash your( hands)?|wash$'
words_of() {
    grep -niE "$wrong" "$1" | grep -vE "$hands" | head -n 3
}
silent() {
    found=$(words_of "$1")
    [ -z "$found" ] || fault "$2 says: $found"
}
values_of() { # the strings of a JSON file but for its members' names
    /usr/bin/python3 -c 'import json, sys
def walk(v):
    if isinstance(v, dict):
        [walk(x) for k, x in v.items() if k != "kind"]
    elif isinstance(v, list):
        [walk(x) for x in v]
    elif isinstance(v, str):
        print(v)
walk(json.load(open(sys.argv[1])))' "$1"
}
# Solvents and rags, on the terminal and on every sheet in oil; in no other medium.
rags() {
    tr -s '\n\f ' ' ' <"$1" | grep -q 'Rags wet with oil can take fire'
    case $?$medium in
    0oil | 1gouache | 1acrylic) ;;
    *) fault "$2, $medium: rags wet with oil" ;;
    esac
}
members_of() {
    grep -oE '"(water[a-z_]*|wet|paint_fraction|film)":' "$1" | head -n 1
}

for medium in gouache acrylic oil; do
    scene $medium '' >usual.json
    scene $medium ', "most_parts": 6' >scene.json # and sooner done
    scene $medium ', "palette": ["titanium white", "hansa yellow", "burnt umber", "ultramarine blue"], "most_parts": 6' \
        >few.json
    for command in study puddle ladder skies chart wish; do
        out_to="-o $command.pdf --json $command.json"
        case $command in
        chart) out_to="-o $command.pdf" ;;
        wish) out_to="--steps 0.4 --json $command.json" ;;
        esac
        # shellcheck disable=SC2086
        run 0 "$recede" $command scene.json $out_to
        # A ladder has a white beside it, a surface by name: whitewash.
        sed 's/whitewash/white/g' out >told
        silent told "recede $command, $medium,"
        case $command in
        study | puddle) rags out "recede $command" ;;
        esac
        if [ -f $command.json ]; then
            values_of $command.json | sed 's/whitewash/white/g; s/^washed$//' >told
            silent told "the JSON of recede $command, $medium,"
            [ -z "$(members_of $command.json)" ] ||
                fault "recede $command, $medium: $(members_of $command.json)"
        fi
        if [ -f $command.pdf ]; then
            if command -v pdftotext >/dev/null 2>&1; then
                pdftotext $command.pdf sheet.txt
                sed 's/whitewash/white/g' sheet.txt >told
                silent told "the sheet of recede $command, $medium,"
                rags told "the sheet of recede $command"
            fi
        fi
        rm -f ./*.pdf $command.json
    done
    run 0 "$recede" check usual.json
    grep -q '"most_parts": 12' out || fault "$medium has other than 12 parts by default"
    if command -v pdftotext >/dev/null 2>&1; then
        run 0 "$recede" palette opaque-sixteen --medium $medium -o palette.pdf
        pdftotext palette.pdf sheet.txt
        rags sheet.txt 'the sheet of recede palette'
    fi
    run 0 "$recede" chart --medium $medium -o chart.pdf
    silent out "recede chart --medium $medium"
    run 0 "$recede" match '#b9c4cf' --medium $medium --json match.json
    silent out "recede match --medium $medium"
    grep -q 'beforehand: 1 part ' out || fault "recede match does not say what is let down"
    values_of match.json >told
    silent told "the JSON of recede match --medium $medium"
    run 0 "$recede" match '#d8dee6' --medium $medium \
        --palette 'titanium white, burnt umber, ultramarine blue'
    grep -q 'let down beforehand (1 part with 11 of white)' out ||
        fault "no word of letting a strong paint down"
    run 0 "$recede" study few.json
    silent out "recede study of few paints, $medium,"
    tr '\n' ' ' <out | grep -q 'let down *beforehand' || fault "no advice to let down in $medium"
    run 0 "$recede" study scene.json
    grep -q 'Let down beforehand: 1 part ' out || fault "the study does not say what is let down"
    for name in opaque-sixteen $medium; do
        grep -q "$name" out || fault "$name is not named"
    done
done

# Watercolour keeps its words.
run 0 "$recede" match '#47584a' --palette landscape-six --parts 5
grep -q 'wet it looks a .* darker: it dries lighter' out || fault 'no word of how it looks wet'
run 0 "$recede" match '#f4efe2' --palette landscape-six --parts 5
grep -q 'dries lighter' out && fault 'a pale wash hardly changes'

no_faults
