#!/bin/sh
# --json: it can be parsed, and holds the figures of the screen, of the page and
# of the table of keys, no more and no fewer.
#
#   run_json.sh COLDGAP SOURCES
set -u
coldgap=$(realpath "$1")
sources=$(realpath "$2")
. "$(dirname "$0")/lib.sh"
here=$(cd "$(dirname "$0")" && pwd)
command -v python3 >/dev/null 2>&1 || skip "python3 not installed"
engines=$sources/configs/engines

# Commands that are no reports yet, parted by blanks.
later=

# What a command needs besides CONFIG to have something to say.
words_of() {
    case $1 in
    ceiling) echo "--gap 0.46mm" ;;
    network | sweep) echo "-o $work/own" ;;
    sheet) echo "--measured $sources/configs/measured/iron_six.csv" ;;
    finish) echo "--simulate plateau" ;;
    esac
    [ "$1" = sweep ] && echo "--vary charge.boost_kPa=0:100:50"
}

# takes COMMAND OPTION: whether it has it.
takes() {
    "$coldgap" "$1" --help | grep -q -e "$2"
}

# same COMMAND CONFIG WORDS...: the answer thrice, and all figures alike.
same() {
    command=$1
    page= dir=
    shift
    "$coldgap" "$command" "$@" >"$work/screen" 2>"$work/stderr"
    want=$?
    [ "$want" -le 1 ] || fail "$command: exit $want: $(cat "$work/stderr")"
    if takes "$command" '--report'; then
        page=$work/page.html
        "$coldgap" "$command" "$@" --report "$page" >/dev/null 2>&1
    fi
    case " $* " in
    *" -o "*) dir=$work/own ;;
    *)
        rm -rf "$work/dir"
        takes "$command" '-o, --out' && dir=$work/dir &&
            "$coldgap" "$command" "$@" -o "$dir" >/dev/null 2>&1
        ;;
    esac
    expect "$want" "$coldgap" "$command" "$@" --json
    [ -s "$work/stderr" ] && fail "$command --json: words on stderr"
    python3 "$here/json_check.py" "$work/stdout" "$work/screen" "$page" \
        "$dir" >"$work/broken" 2>&1
    [ -s "$work/broken" ] && fail "$command $*: $(cat "$work/broken")"
}

count=0
for command in $("$coldgap" --help |
    sed -n '/^Commands/,/^$/s/^  \([a-z]*\) .*/\1/p'); do
    takes "$command" '--json' || continue
    count=$((count + 1))
    case " $later " in *" $command "*) continue ;; esac
    # shellcheck disable=SC2046 # lists of words are meant to split
    same "$command" "$engines/iron_six.cfg" $(words_of "$command")
done
[ "$count" -ge 8 ] || fail "only $count commands have --json"

# What an easy question does not show.
same find "$engines/taught_four.cfg"
same find "$engines/boosted_four.cfg" --samples 16 --duty settled --set rings.film_law=reynolds
same find "$engines/iron_six.cfg" --set rings.top.cold_gap_mm=0.1 \
    --set duty.name=cold_start_abuse --set rings.second.cold_gap_mm=0.3
same find "$engines/iron_six.cfg" --set piston.skirt_clearance_mm=0.06
same find "$engines/iron_six.cfg" --set uncertainty.bore_size_mm=1

# Nothing but JSON, whatever else is asked for.
expect 0 "$coldgap" find "$engines/iron_six.cfg" --json --units inch -o "$work/o"
python3 -m json.tool "$work/stdout" >/dev/null || fail "more than JSON"
finish
