# bash completion for coldgap

# TABLES

# Offers lines.
_coldgap_lines()
{
    COMPREPLY=()
    [[ -z $1 ]] || mapfile -t COMPREPLY <<<"$1"
}

# Offers the words that begin as the one being typed.
_coldgap_offer()
{
    _coldgap_lines "$(compgen -W "$1" -- "$cur")"
}

# Offers files that end in $1 (empty: all) and folders.
_coldgap_files()
{
    compopt -o filenames 2>/dev/null
    _coldgap_lines "$(compgen -d -- "$cur"
        [[ $1 == folder ]] || compgen -f -X "!*$1" -- "$cur" |
            while IFS= read -r name; do
                [[ -d $name ]] || printf '%s\n' "$name"
            done)"
}

# A setting, and after its = a value.
_coldgap_setting()
{
    if [[ $cur == *=* ]]; then
        local key=${cur%%=*} value
        local -a values
        read -ra values <<<"$(_coldgap_values "$key")"
        for value in "${values[@]}"; do
            [[ $key=$value == "$cur"* ]] && COMPREPLY+=("$key=$value")
        done
    else
        compopt -o nospace 2>/dev/null
        _coldgap_lines "$(compgen -S = -W "$_coldgap_keys" -- "$cur")"
    fi
}

_coldgap()
{
    local cur prev command= kind word glue= i
    local -a words=()
    COMPREPLY=()
    # bash parts words at = and : too; put them together again.
    for ((i = 1; i <= COMP_CWORD; i++)); do
        word=${COMP_WORDS[i]}
        if [[ ${#words[@]} -gt 0 && ($word == [=:]* || -n $glue) ]]; then
            words[${#words[@]} - 1]+=$word
        else
            words+=("$word")
        fi
        glue=
        [[ $word == *[=:] ]] && glue=yes
    done
    local typed=${words[${#words[@]} - 1]}
    cur=$typed
    prev=
    [[ ${#words[@]} -gt 1 ]] && prev=${words[${#words[@]} - 2]}
    [[ ${#words[@]} -gt 1 ]] && command=${words[0]}
    if [[ $cur == --*=* ]]; then
        prev=${cur%%=*}
        cur=${cur#*=}
    fi
    kind=$(_coldgap_argument "$prev")
    if [[ -z $command ]]; then
        _coldgap_offer "$(cut -d: -f1 <<<"$_coldgap_commands") --help --version"
    elif [[ -n $kind ]]; then
        case $kind in
        folder) _coldgap_files folder ;;
        file) _coldgap_files '' ;;
        setting) _coldgap_setting ;;
        words*) _coldgap_offer "${kind#words }" ;;
        esac
    elif [[ $cur == -* ]]; then
        _coldgap_offer "$(_coldgap_options "$command" | cut -d: -f1)"
    elif [[ $_coldgap_without_config != *" $command "* ]]; then
        _coldgap_files .cfg
    fi
    # Only what follows the last = or : is replaced on the line.
    if [[ $typed == *[=:]* && $COMP_WORDBREAKS == *=* ]]; then
        local kept=${cur%"${cur##*[=:]}"}
        for i in "${!COMPREPLY[@]}"; do
            COMPREPLY[i]=${COMPREPLY[i]#"$kept"}
        done
    fi
}
complete -F _coldgap coldgap
