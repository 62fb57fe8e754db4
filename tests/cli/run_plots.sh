#!/bin/sh
# Draws every picture there is a script for.
#
#   run_plots.sh COLDGAP SOURCES
set -u
coldgap=$1
sources=$2
. "$(dirname "$0")/lib.sh"

command -v gnuplot >/dev/null 2>&1 || skip "gnuplot not installed"
export LC_ALL=C.UTF-8

# draw FOLDER: the pictures that its tables allow; each is looked at.
draw() {
    sh "$sources/plots/draw.sh" "$1" >"$work/drawn" 2>"$work/stderr" ||
        fail "draw.sh $1 failed"
    if [ -s "$work/stderr" ]; then
        fail "gnuplot complains"
        cat "$work/stderr"
    fi
    while read -r picture; do
        name=$(basename "$picture" .png)
        echo "$name" >>"$work/all"
        size=$(wc -c <"$1/$name.png" 2>/dev/null || echo 0)
        [ "$size" -gt 5000 ] || fail "$name.png: $size bytes"
        [ "$(head -c 4 "$1/$name.png" | tail -c 3)" = PNG ] ||
            fail "$name.png is no PNG"
        size=$(wc -c <"$1/$name.svg" 2>/dev/null || echo 0)
        [ "$size" -gt 5000 ] || fail "$name.svg: $size bytes"
        tail -c 20 "$1/$name.svg" | grep -q '</svg>' ||
            fail "$name.svg is not whole"
        grep -q 'not a warranty' "$1/$name.svg" || fail "$name has no caution"
        # the engine and its case, or what is left of it that is not varied
        grep -q '>[A-Z][a-z]* [a-z]*, .*[a-z]' "$1/$name.svg" ||
            fail "$name does not say what it is of"
        # axes carry words, not keys
        ! grep -E '>(engine|charge|rings|cooling|fuel|duty)[.][a-z]' \
            "$1/$name.svg" || fail "$name shows a key"
    done <"$work/drawn"
}

expect 0 "$coldgap" find "$sources/configs/engines/boosted_four.cfg" \
    -o "$work/out"
draw "$work/out"
# The shortest duty and a touching ring must not break a picture.
expect 1 "$coldgap" find "$sources/configs/engines/iron_six.cfg" \
    --set duty.name=settled --set rings.top.cold_gap_mm=0.1 -o "$work/touch"
draw "$work/touch"
expect 0 "$coldgap" find "$sources/configs/logs/logged_four.cfg" -q \
    -o "$work/logged"
draw "$work/logged"
engine=$sources/configs/engines/iron_six.cfg
expect 0 "$coldgap" find "$engine" --set rings.film_law=reynolds -q \
    -o "$work/film"
draw "$work/film"
expect 0 "$coldgap" find "$engine" --samples 200 -q -o "$work/sampled"
draw "$work/sampled"
expect 0 "$coldgap" sweep "$engine" --vary charge.boost_kPa=0:200:50 -q \
    -o "$work/line"
draw "$work/line"
expect 0 "$coldgap" sweep "$engine" --vary charge.boost_kPa=0:200:50 \
    --vary cooling.coolant_C=80,90,100 -q -o "$work/map"
draw "$work/map"
expect 0 "$coldgap" lesson "$engine" -q -o "$work/lesson"
draw "$work/lesson"
# A plateau finish, and one whose probability curve is a single line.
expect 0 "$coldgap" finish "$engine" --simulate plateau -q -o "$work/finish"
draw "$work/finish"
awk 'BEGIN {srand(1); for (i = 0; i < 9600; i++)
    print rand() + rand() + rand() + rand()}' >"$work/one_line"
expect 1 "$coldgap" finish "$engine" --profile "$work/one_line" \
    --spacing 0.5um -q -o "$work/one"
grep -q 'block: one line' "$work/one/finish_probability.dat" ||
    fail "one normal law bends"
draw "$work/one"
expect 0 "$coldgap" rings "$engine" -q -o "$work/rings"
draw "$work/rings"
expect 0 "$coldgap" ladder "$engine" -q --duty settled --to 180kPa -o "$work/ladder"
draw "$work/ladder"
expect 0 "$coldgap" seal "$engine" -q -o "$work/seal"
draw "$work/seal"
# Without boost there is one block in the trade-off.
expect 0 "$coldgap" seal "$sources/configs/engines/plain_four.cfg" -q \
    -o "$work/plain"
draw "$work/plain"
# One setting of numbers, alone or for each name of another; boost in any unit.
for vary in "engine.speed_rpm=4000,5000 curves" \
    "charge.boost_kPa=0,100 --vary fuel.name=gasoline,methanol curves" \
    "charge.boost_psi=0,10 boost" "charge.boost_bar=0,1 boost" \
    "charge.boost_MPa=0,0.1 boost"; do
    wanted=${vary##* }
    rm -rf "$work/other"
    # shellcheck disable=SC2086 # a list of words
    expect 0 "$coldgap" sweep "$engine" -q -o "$work/other" --vary ${vary% *}
    draw "$work/other"
    [ "$(ls "$work/other")" = "$(printf '%s\n' $wanted.png $wanted.svg \
        sweep.dat | sort)" ] || fail "$vary: $(ls "$work/other")"
done
# One of names alone is bars, also where a name has no answer.
for vary in "fuel.name=gasoline,methanol" "fuel.name=gasoline,tea"; do
    rm -rf "$work/names"
    expect 0 "$coldgap" sweep "$engine" -q -o "$work/names" --vary $vary
    draw "$work/names"
done
grep -q 'no answer' "$work/names/names.svg" || fail "a name without an answer"
# Two of names are no picture: it says so, and nothing is drawn wrong.
rm -rf "$work/other"
expect 0 "$coldgap" sweep "$engine" -q -o "$work/other" \
    --vary fuel.name=gasoline,methanol --vary duty.name=settled,dyno_pull
expect 4 sh "$sources/plots/draw.sh" "$work/other"
says stderr 'no picture of this sweep'
[ -z "$(ls "$work/other" | grep -v sweep.dat)" ] || fail "names are drawn"
expect 4 sh "$sources/plots/draw.sh" "$work/nowhere"
says stderr 'holds no table to draw'
# Names that a shell or gnuplot would act on; the same bytes; nothing left over.
odd="$work/a'b \"c\" \$(touch hit) ;touch hit; \`touch hit\`"
mkdir "$odd"
cp "$work/lesson"/*.dat "$work/lesson"/lesson_*.svg "$odd"
(cd "$work" && sh "$sources/plots/draw.sh" "$odd" >/dev/null 2>"$work/stderr") ||
    fail "draw.sh: an odd name"
diff -r "$work/lesson" "$odd" || fail "draw.sh: an odd name, other pictures"
[ -z "$(find "$work" -name hit)" ] || fail "draw.sh: a name was acted on"
# A picture takes no link's or folder's place, and is not drawn through one.
echo precious >"$work/target"
for what in "ln -s $work/target" "ln -s nowhere" mkfifo mkdir; do
    rm -rf "$odd/lesson.png"
    $what "$odd/lesson.png"
    expect 4 sh "$sources/plots/draw.sh" "$odd"
    says stderr 'lesson.png: only a plain file is replaced'
    [ -f "$odd/lesson.png" ] && [ ! -L "$odd/lesson.png" ] &&
        fail "draw.sh: $what was replaced"
    [ "$(ls -A "$odd")" = "$(ls -A "$work/lesson")" ] ||
        fail "draw.sh: left $(ls -A "$odd")"
done
[ "$(cat "$work/target")" = precious ] || fail "draw.sh wrote through a link"
for script in "$sources"/plots/*.gp; do
    name=$(basename "$script" .gp)
    [ "$name" = style ] || grep -q -x "$name" "$work/all" ||
        fail "$name was never drawn: does it say which tables it needs?"
done
finish
