#!/bin/sh
# What every screen keeps to: with --units inch no metric figure but beside its
# like in inches; never a colour, terminal or not, whatever NO_COLOR says.
#
#   run_screens.sh COLDGAP SOURCES
set -u
. "$(dirname "$0")/lib.sh"
# Links, for words that are split: the folders may have blanks in their names.
ln -s "$(realpath "$1")" "$work/coldgap"
ln -s "$(realpath "$2")" "$work/sources"
coldgap=$work/coldgap
sources=$work/sources
engine=$sources/configs/engines/iron_six.cfg

# What a command needs besides CONFIG to have something to say.
words_of() {
    case $1 in
    ceiling) echo --gap 0.018in ;;
    network) echo -o "$work/out" ;;
    sheet) echo --measured "$sources/configs/measured/iron_six.csv" ;;
    finish) echo --simulate plateau ;;
    lesson) echo --level first ;; # the second reckons resistances in SI
    esac
}

# Lines on which a parenthesis is open go on with the next.
whole() {
    awk '{held = held $0; line = held
          if (gsub(/\(/, "", line) > gsub(/\)/, "", line) && ++on < 4) {
              held = held " "
              next
          }
          print held
          held = ""
          on = 0}
         END {if (held != "") print held}' "$1"
}

# metric FILE: figures in a metric unit, those in parentheses left aside.
metric() {
    whole "$1" | sed 's/([^()]*)//g' | grep -E \
        '[0-9] ?(mm|um|m|bar|kPa|MPa|kW|kJ|N|kg/h|g/s|L/min|l/min|MW/m2|C|K)([ ,;:)]|$)'
}

# in_inches WORDS...: runs them in both units; the metric screen must have
# shown that `metric` sees what it looks for, if $figures says so.
in_inches() {
    "$@" >"$work/metric" 2>"$work/stderr"
    got=$?
    [ "$got" -le 1 ] || fail "$*: exit $got; what does it need?"
    expect "$got" "$@" --units inch
    if [ "$figures" = yes ] && ! metric "$work/metric" >"$work/seen"; then
        fail "$*: no metric figure on the metric screen"
    fi
    metric "$work/stdout" && fail "$* --units inch: metric figures, above"
}
count=0
for command in $("$coldgap" --help |
    sed -n '/^Commands/,/^$/s/^  \([a-z]*\) .*/\1/p'); do
    "$coldgap" "$command" --help | grep -q -e '--units' || continue
    [ "$command" = template ] && continue
    figures=yes
    [ "$command" = network ] && figures=no # its screen shows none
    # shellcheck disable=SC2046 # lists of words are meant to split
    in_inches "$coldgap" "$command" "$engine" $(words_of "$command")
    count=$((count + 1))
done
[ "$count" -ge 3 ] || fail "only $count commands take --units"
figures=yes
# Notes and verdicts that an easy duty does not show.
in_inches "$coldgap" find "$engine" --set duty.name=cold_start_abuse \
    --set rings.top.cold_gap_mm=0.1 --set rings.second.cold_gap_mm=0.6
in_inches "$coldgap" find "$engine" --set duty.name=lean_event \
    --set charge.boost_kPa=250 --set piston.oil_jet=false
in_inches "$coldgap" ceiling "$engine" --gap 0.2mm
in_inches "$coldgap" find "$engine" --samples 64 --threads 1

# The template in inches is the same engine.
expect 0 "$coldgap" template --units inch
grep -E '_(mm|um|kPa|bar|MPa|C) =' "$work/stdout" &&
    fail "metric keys in the inch template"
says stdout 'bore_in = '
cp "$work/stdout" "$work/inch.cfg"
"$coldgap" template >"$work/metric.cfg"
for name in metric inch; do
    expect 0 "$coldgap" find "$work/$name.cfg" -q -o "$work/$name.out"
done
paste "$work/metric.out/summary.dat" "$work/inch.out/summary.dat" |
    awk '!/^#/ && $1 != "energy_residual" {d = $2 - $5; n++
         if (d * d > 1e-8 * $2 * $2 + 1e-10) {print; bad = 1}}
         END {exit bad || n < 15}' || fail "the inch template is another engine"

# Colour: asked for in every way a program may listen to.
escape=$(printf '\033')
command -v script >/dev/null 2>&1 || { echo "left out: script not installed"; finish; }
for words in --help "find $engine" "find $engine --samples 64" "find none.cfg" \
    "sweep $engine --vary charge.boost_kPa=0:20:10 -o $work/sweep"; do
    for variable in CLICOLOR_FORCE=1 NO_COLOR=1; do
        env $variable FORCE_COLOR=1 TERM=xterm-256color script -qec \
            "$coldgap $words" /dev/null </dev/null >"$work/screen" 2>&1
        [ -s "$work/screen" ] || fail "$words: nothing on the terminal"
        grep -q "$escape" "$work/screen" && fail "$words: colour ($variable)"
    done
done
finish
