# Completion of recede's commands, options and files for bash. It asks the program
# itself, so it knows what the installed one knows.
_recede()
{
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} program=${COMP_WORDS[0]}
    local command=${COMP_WORDS[1]} said
    COMPREPLY=()
    if ((COMP_CWORD == 1)); then
        said=$("$program" --help 2>/dev/null | sed -n 's/^  \([a-z]*\)  .*/\1/p')
        COMPREPLY=($(compgen -W "$said --help --version" -- "$word"))
        return
    fi
    if [[ $word == -* ]]; then
        said=$("$program" "$command" --help 2>/dev/null |
            sed -n 's/^  \(-[a-z]\)\?,\? *\(--[a-z-]*\)\?.*/\1 \2/p')
        COMPREPLY=($(compgen -W "$said" -- "$word"))
        return
    fi
    case $before in
    --medium)
        COMPREPLY=($(compgen -W 'watercolour gouache acrylic oil' -- "$word"))
        return
        ;;
    --palette)
        said=$("$program" names 2>/dev/null | sed -n '/^Palettes/,/^$/ s/^  \([a-z-]*\) (.*/\1/p')
        COMPREPLY=($(compgen -W "$said" -- "$word") $(compgen -f -X '!*.json' -- "$word"))
        return
        ;;
    esac
    compopt -o filenames 2>/dev/null
    COMPREPLY=($(compgen -f -- "$word"))
}
complete -F _recede recede
