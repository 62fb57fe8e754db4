#!/bin/sh
# `coldgap lesson`: every printed result is worked out again from the printed
# numbers by by_hand.awk, which knows nothing of the program.
#
#   run_lesson.sh COLDGAP SOURCES
set -u
coldgap=$1
sources=$2
configs=$2/configs
. "$(dirname "$0")/lib.sh"
engine=$configs/engines/iron_six.cfg
checker=$sources/tests/cli/by_hand.awk

# lesson LEAST WORDS...: a lesson of at least so many lines to work out, that
# ends with status `safe`.
safe=0
lesson() {
    least=$1
    shift
    expect $safe "$coldgap" lesson "$@"
    [ -s "$work/stderr" ] && fail "lesson $*: something on stderr"
    awk -f "$checker" "$work/stdout" >"$work/worked" ||
        fail "lesson $*: $(cat "$work/worked")"
    worked=$(awk '/lines worked out/{print $1}' "$work/worked")
    [ "${worked:-0}" -ge "$least" ] ||
        fail "lesson $*: only $worked lines worked out"
    says stdout 'not a warranty'
    # A sum stays on one line; words keep to the width of a terminal.
    sed 1d "$work/stdout" | awk 'length > (/ = / ? 88 : 80)' >"$work/long"
    [ -s "$work/long" ] && fail "lesson $*: a long line: $(cat "$work/long")"
}

# tells WORDS: the screen says so, wherever its lines break.
tells() {
    tr -s '\n ' '  ' <"$work/stdout" | grep -q -e "$1" || fail "no word of: $1"
}

# The checker itself: it must refuse what is wrong.
refuses() {
    printf "%s\n" "$1" "${2:-}" >"$work/wrong"
    awk -v quiet=1 -f "$checker" "$work/wrong" >/dev/null &&
        fail "by_hand.awk accepts: $1 $2"
}
refuses '  a = 2.0 mm x 3 = 6.1 mm'
refuses '  a = 2.0 mm x 3 + 1 = 7.0 mm'
refuses '  a = 20000 x 30000 = 600000000'
refuses '  a = b x 3' '    = 2.0 mm / 3 = 0.7 mm'
refuses '  a = b x 3' '    = 2.0 mm x 4 = 8.0 mm'
refuses '  a = sqrt 2.0 = 1.5'
refuses '  a = 2.0 / 0.0 = inf'
printf '  a = sqrt b\n    = sqrt 2.0 m2 = 1.4 m\n  c = 1.4 m - 2.0 m = -0.6 m\n' \
    >"$work/right"
awk -v quiet=1 -f "$checker" "$work/right" >"$work/worked" ||
    fail "by_hand.awk refuses what is right: $(cat "$work/worked")"

# Engines, levels, units.
for config in "$configs"/engines/*.cfg "$configs/example.cfg"; do
    for units in metric inch; do
        lesson 30 "$config" --level first --units $units --answers
        lesson 50 "$config" --level second --units $units --answers
    done
done

# Cases that bend a lesson: no heat yet, settled, a pressed joint let go, a bore
# that outgrows its ring, much boost and hardly any, a gap that touches.
for units in metric inch; do
    lesson 50 "$engine" --set duty.name=cold_start_abuse --units $units
    lesson 50 "$engine" --set duty.name=settled --units $units
    lesson 50 "$engine" --set duty.start=cold --units $units \
        --set charge.ambient_C=-30
    lesson 50 "$configs/engines/big_eight.cfg" --units $units \
        --set bore.interference_um=0 --set charge.boost_kPa=0 \
        --set engine.speed_rpm=2500 --set cooling.coolant_C=115
    tells 'let go'
    lesson 50 "$engine" --set bore.material=a356 --answers --units $units
    tells 'grows nearly as much'
    lesson 50 "$engine" --set charge.boost_kPa=400 --answers --units $units
    lesson 50 "$engine" --set charge.boost_kPa=1 --answers --units $units
    lesson 50 "$engine" --set charge.boost_kPa=0 --answers --units $units
    safe=1
    lesson 50 "$engine" --set rings.top.cold_gap_mm=0.1 --units $units
    tells 'TOO SMALL'
    tells 'Less than nothing is left'
    safe=0
    lesson 50 "$engine" --set rings.film_law=reynolds --units $units
    lesson 40 "$engine" --set piston.land_clearance_mm=0.1 --units $units
    tells 'no clearance left when hot'
done

# What a level has: the second is the default, and reckons the heat too.
expect 0 "$coldgap" lesson "$engine"
sed 1d "$work/stdout" >"$work/default" # the first line is the run
expect 0 "$coldgap" lesson "$engine" --level second
sed 1d "$work/stdout" | cmp -s - "$work/default" || fail "the default level"
for words in 'gas constant' 'heat of the fuel' 'flux = ' 'oil film = ' \
    'stress = ' 'sqrt' '^  10\. '; do
    says stdout "$words"
done
grep -q '^Answers' "$work/stdout" && fail "answers that nobody asked for"
expect 0 "$coldgap" lesson "$engine" --level first
for words in 'gas constant' 'K/W' 'stress = ' 'sqrt'; do
    grep -q "$words" "$work/stdout" && fail "level first says: $words"
done
questions=$(sed -n '/^Questions/,$p' "$work/stdout" | grep -c '^  [0-9]*\. ')
[ "$questions" -ge 6 ] || fail "only $questions questions"
expect 0 "$coldgap" lesson "$engine" --level first --answers
answers=$(sed -n '/^Answers/,$p' "$work/stdout" | grep -c '^  Answer [0-9]*$')
[ "$answers" -eq "$questions" ] || fail "$questions questions, $answers answers"

# The gap that is taught is the gap of find; by hand and by the model the
# closure is the same within 0.01 mm, for every engine.
for config in "$configs"/engines/*.cfg; do
    expect 0 "$coldgap" lesson "$config" -o "$work/out"
    awk '/^  apart = /{getline; if ($(NF - 1) + 0 > 0.010) bad = 1; seen = 1}
         END {exit bad || !seen}' "$work/stdout" ||
        fail "$config: hand and model are more than 0.01 mm apart"
    taught=$(awk '/^  gap needed = /{getline; print $(NF - 1)}' "$work/stdout")
    expect 0 "$coldgap" find "$config" -q -o "$work/out"
    found=$(awk '!/^#/ {printf "%.3f", $3; exit}' \
        "$work/out/duties.dat")
    [ "$taught" = "$found" ] || fail "$config: taught $taught, found $found"
done

# The first part fits a terminal: what to file to, where it comes from, and
# what a gap that is too small comes to.
for config in "$configs"/engines/*.cfg; do
    expect 0 "$coldgap" lesson "$config" --brief
    [ "$(wc -l <"$work/stdout")" -le 24 ] || fail "$config: --brief is long"
    grep -q 'Questions' "$work/stdout" && fail "$config: --brief is not"
    awk '/^Top ring, file to /{to = $5; getline; sub(/ mm .*/, "")
             other = $NF; exit}
         END {exit !(to > 0 && other > 0 && to >= other)}' "$work/stdout" ||
        fail "$config: $(sed -n 3,4p "$work/stdout")"
    tells 'shop rule'
    tells 'needed in\|the model needs'
    to=$(awk '/^Top ring, file to /{print $5}' "$work/stdout")
    expect 0 "$coldgap" lesson "$config"
    sed -n '/^11/,/^12/p' "$work/stdout" >"$work/step"
    awk -v to="$to" '/^  (Gap needed|Shop rule) / {
            rows++
            match($0, /[0-9.]+ mm/)
            gap = substr($0, RSTART, RLENGTH - 3) + 0
            most = gap > most ? gap : most
        }
        END {exit !(rows >= 2 && most > 0 && to == most)}' "$work/step" ||
        fail "$config: file to $to, but step 11 says: $(cat "$work/step")"
done
expect 1 "$coldgap" lesson "$engine" --set rings.top.cold_gap_mm=0.1 --quiet
[ "$(wc -l <"$work/stdout")" -le 24 ] || fail "--quiet is long"
tells 'is TOO SMALL'
tells 'the ends touch'
expect 0 "$coldgap" lesson "$engine" --json
says stdout '"key": "file_to_top"'

# The table: closure and gap rise with boost, equal bytes in any units.
expect 0 "$coldgap" lesson "$engine" -o "$work/a" -q
expect 0 "$coldgap" lesson "$engine" -o "$work/b" --units inch --level first
cmp -s "$work/a/lesson.dat" "$work/b/lesson.dat" || fail "tables differ"
grep -q 'not a warranty' "$work/a/lesson.dat" || fail "no caution"
block "$work/a/lesson.dat" boosts | awk '
    {if (NF != 10 || $9 != "nan" || (NR > 1 && !($1 > b && $2 > t && $5 > c && $6 >= g))) bad = 1
     b = $1; t = $2; c = $5; g = $6} END {exit bad || NR != 3 || b != 150}' ||
    fail "block boosts of lesson.dat"
block "$work/a/lesson.dat" duty | awk '$9 <= t || $1 != 150 {if (NR > 1) bad = 1}
    {t = $9} END {exit bad || NR != 5}' || fail "block duty"

# Wrong usage; places that cannot be written.
expect 2 "$coldgap" lesson "$engine" --level third
says stderr 'level third: unknown, allowed: first second'
expect 2 "$coldgap" lesson
expect 2 "$coldgap" find "$engine" --level first
expect 4 "$coldgap" lesson "$engine" -o "$work/none/such"
if [ -w /dev/full ]; then
    "$coldgap" lesson "$engine" >/dev/full 2>"$work/stderr"
    got=$?
    [ "$got" -eq 4 ] || fail "lesson >/dev/full: exit $got, expected 4"
fi
finish
