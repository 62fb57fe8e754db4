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
    tells 'needed in\|needed with\|the model needs'
    to=$(awk '/^Top ring, file to /{print $5}' "$work/stdout")
    expect 0 "$coldgap" lesson "$config"
    sed -n '/^12/,/^13/p' "$work/stdout" >"$work/step"
    awk -v to="$to" '/^  (Gap needed|Shop rule) / {
            rows++
            match($0, /[0-9.]+ mm/)
            gap = substr($0, RSTART, RLENGTH - 3) + 0
            most = gap > most ? gap : most
        }
        END {exit !(rows >= 2 && most > 0 && to == most)}' "$work/step" ||
        fail "$config: file to $to, but step 12 says: $(cat "$work/step")"
done
expect 1 "$coldgap" lesson "$engine" --set rings.top.cold_gap_mm=0.1 --quiet
[ "$(wc -l <"$work/stdout")" -le 24 ] || fail "--quiet is long"
tells 'is TOO SMALL'
tells 'the ends touch'
expect 0 "$coldgap" lesson "$engine" --json
says stdout '"key": "file_to_top"'

# The first gap is the one to file to, and the last step before the questions
# and the question on filing come to the same; a gap too small is marked as a
# mistake before it is named, and is smaller.
for config in "$configs"/engines/*.cfg; do
    expect 0 "$coldgap" lesson "$config" --answers
    to=$(awk '/ mm /{print $5; exit}' "$work/stdout")
    awk -v to="$to" '/^9\. A mistake/ {inside = 1} /^10\./ {inside = 0}
        inside && /MISTAKE/ {marked = 1}
        inside && /mm/ && !marked {bad = 1}
        inside && /^  overlap = closure - gap too small/ {
            getline; if ($5 + 0 >= to || $4 != "-") bad = 1}
        /^  to file off = file to - measured/ {getline; asked = $2; filed++}
        END {exit bad || !marked || !filed || asked + 0 != to + 0}' \
        "$work/stdout" || fail "$config: first gap $to, and another"
    tells "File the top ring to $to mm"
done

# The closure of the sum is the one of the duty, worked out by hand just before;
# where the duty stops before all is hot, that is said.
for duty in dyno_pull settled cold_start_abuse lean_event; do
    expect 0 "$coldgap" lesson "$engine" --set duty.name=$duty
    awk '/^8\. / {inside = 1} /^9\. / {inside = 0}
        inside && /^  closure by hand = / {
            getline
            by_hand = $(NF - 1)
        }
        /^  gap needed = / {getline; sum = $2}
        END {d = by_hand - sum; exit !(d * d <= 0.005 ^ 2 && sum > 0)}' \
        "$work/stdout" || fail "$duty: the closure of the sum is another"
    sum=$(awk '/^  gap needed = /{getline; print $2}' "$work/stdout")
    tells "does not round on the way, has $sum mm"
    tells 'gap at the start = cold gap'
    case $duty in
    dyno_pull) tells 'At the start the engine has cruised .* begins tighter' ;;
    cold_start_abuse) tells 'nothing has warmed up' ;;
    settled) tells 'There, at the start, the gap is tightest' ;;
    lean_event) tells 'Knock itself is an input, .*lean_event) declares it, with 1.35' ;;
    esac
    [ $duty = settled ] || [ $duty = lean_event ] ||
        tells 'This one has none'
done
tr -s '\n ' '  ' <"$work/stdout" | grep -q 'This one has none' &&
    fail "lean_event declares no knock"
expect 0 "$coldgap" lesson "$engine" --set duty.name=settled
tr -s '\n ' '  ' <"$work/stdout" | grep -q 'as in step 6, the gap closes' &&
    fail "settled is held for longer than settled"
expect 0 "$coldgap" lesson "$engine"
tells 'retarded by = half burned - without knock'
expect 0 "$coldgap" lesson "$configs/engines/plain_four.cfg"
tells 'need not be retarded for knock'

# What is not known: the largest first, among find's first three; shares add up.
expect 0 "$coldgap" find "$engine"
sed -n '/^    Input  *closure/,+4p' "$work/stdout" >"$work/first"
expect 0 "$coldgap" lesson "$engine"
most=$(sed -n '/Not known exactly/{n;n;s/^ *//;s/  .*//;p;}' "$work/stdout")
grep -q "^    $most  " "$work/first" || fail "not known most: $most"
tells 'allowance then = allowance x root'
sed -n '/Not known exactly/,/all others/p' "$work/stdout" | awk '
    NR > 2 && /all others/ {sum += $NF; all = 1; next}
    NR > 2 {if (last != "" && $NF > last) bad = 1; last = $NF; sum += $NF; n++}
    END {exit bad || n != 5 || !all || sum < 97 || sum > 103}' ||
    fail "the shares of what is not known"
expect 0 "$coldgap" lesson "$engine" --json
says stdout '"key": "unknown"'

# The drawings, to scale of the engine: ring, groove and land as the config has
# them, and the gap as the sum has it, whatever gap the config gives.
for config in "$configs"/engines/*.cfg; do
    expect 0 "$coldgap" lesson "$config" -o "$work/drawn" \
        --set rings.top.width_mm=1.5 --set rings.top.depth_mm=3.0 \
        --set rings.top.side_clearance_mm=0.06 \
        --set rings.top.back_clearance_mm=0.6 --set piston.land_clearance_mm=0.5
    cp "$work/stdout" "$work/screen"
    awk -F'"' '/<polygon/ && !piston {
            piston = 1
            split($2, p, /[ ,]/) # left, top, land, top, land, groove, back...
            land = p[3]; groove = p[6]; back = p[7]; lower = p[10]
        }
        /fill="#9a9a9a"/ {x = $2; y = $4; depth = $6; width = $8}
        function near(a, b) {return (a - b) ^ 2 < (0.01 * b + 0.02) ^ 2}
        END {mm = depth / 3.0
            exit !(mm > 20 && near(width, 1.5 * mm) &&
                near(y - groove, 0.06 * mm) && near(lower - y - width, 0) &&
                near(x - back, 0.6 * mm) && near(x + depth - land, 0.25 * mm))}' \
        "$work/drawn/lesson_ring.svg" || fail "$config: the ring is out of scale"
    to=$(awk '/^Top ring, file to /{print $5}' "$work/screen")
    awk '/^  gap needed = /{getline; print $2, $5}' "$work/screen" >"$work/sum"
    awk -F'"' -v to="$to" 'NR == FNR {split($0, sum, " "); next}
        /fill="#9a9a9a"/ {
            if (++n % 2) end = $2 + $6
            else gap[n / 2] = $2 - end
        }
        function near(a, b) {return (a - b) ^ 2 < 1}
        END {mm = gap[1] / to
            exit !(n == 6 && mm > 100 && near(gap[2], mm * (to - sum[1])) &&
                near(gap[3], mm * (to - sum[1] - sum[2])))}' \
        "$work/sum" "$work/drawn/lesson_gap.svg" ||
        fail "$config: the gap is out of scale"
    for name in ring gap; do
        file=$work/drawn/lesson_$name.svg
        grep -q 'not a warranty' "$file" || fail "$file: no caution"
        grep -q -i '"[^"]*nan\|"[^"]*inf[^"o]*"' "$file" &&
            fail "$file: no number"
        grep -o '#[0-9a-f]\{6\}' "$file" | grep -v '#\(..\)\1\1' >"$work/colour"
        [ -s "$work/colour" ] && fail "$file: a colour: $(head -1 "$work/colour")"
        # legible at 360 px, and inside the drawing (0.65 of a letter's size)
        sed -n 's/.*<text x="\([^"]*\)".*size="\([^"]*\)".*anchor="\([^"]*\)"[^>]*>\(.*\)<.text>/\1 \2 \3 \4/p' \
            "$file" | sed "s/&#39;/'/g; s/&[a-z]*;/x/g" | awk '
            {at = $1; size = $2; how = $3
             text = $0; sub(/^[^ ]* [^ ]* [^ ]* /, "", text)
             wide = 0.6 * size * length(text)
             if (how == "middle") at -= wide / 2
             if (size < 10 || at < 0 || at + wide > 360) {print; bad = 1}}
            END {exit bad || NR < 10}' >"$work/text" ||
            fail "$file: $(cat "$work/text")"
    done
done
expect 0 "$coldgap" lesson "$engine" -o "$work/asked" -q
expect 1 "$coldgap" lesson "$engine" -o "$work/mistake" -q \
    --set rings.top.cold_gap_mm=0.1
cmp -s "$work/asked/lesson_gap.svg" "$work/mistake/lesson_gap.svg" ||
    fail "a gap too small is drawn"

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
