#compdef coldgap
# zsh completion for coldgap

# TABLES

# A setting, and after its = a value.
_coldgap_setting() {
    local key
    local -a found
    if [[ $PREFIX == *=* ]]; then
        key=${PREFIX%%=*}
        compset -P 1 '*='
        found=(${=$(_coldgap_values $key)})
        compadd -a found
    else
        found=(${(f)_coldgap_keys})
        compadd -S = -a found
    fi
}

_coldgap() {
    local previous=$words[CURRENT-1] command= kind
    local -a found
    (( CURRENT > 2 )) && command=$words[2]
    if [[ $PREFIX == --*=* ]]; then
        previous=${PREFIX%%=*}
        compset -P 1 '*='
    fi
    kind=$(_coldgap_argument $previous)
    if [[ -z $command ]]; then
        found=(${(f)_coldgap_commands} '--help:print help and end'
            '--version:print the version and end')
        _describe command found
    elif [[ -n $kind ]]; then
        case $kind in
        folder) _files -/ ;;
        file) _files ;;
        setting) _coldgap_setting ;;
        words*)
            found=(${=kind#words})
            compadd -a found
            ;;
        esac
    elif [[ $PREFIX == -* ]]; then
        found=(${(f)"$(_coldgap_options $command)"})
        _describe -o option found
    elif [[ $_coldgap_without_config != *" $command "* ]]; then
        _files -g '*.cfg'
    fi
}

_coldgap "$@"
