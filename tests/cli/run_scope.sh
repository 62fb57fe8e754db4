#!/bin/sh
# What coldgap answers for: the sentence that says it stands in find, help and
# README; what stands above the gap where the gap is not the trouble; what an
# answer hangs on that was not given.
#
#   run_scope.sh COLDGAP SOURCE_FOLDER
set -u
coldgap=$1
source=$2
. "$source/tests/cli/lib.sh"
four=$source/configs/engines/boosted_four.cfg
scope="For four-stroke engines alone, diesels among them, cooled by coolant or, \
other than diesels, by air: no two-stroke. Two chargers in a row and, other than \
in diesels, nitrous and sprayed water and methanol are in it where the config has \
them."

# flat: the words of stdin, whatever the lines.
flat() {
    tr -s ' \n' ' '
}

for words in --help "find --help" "find $four"; do
    # shellcheck disable=SC2086
    expect 0 "$coldgap" $words
    flat <"$work/stdout" | grep -qF "$scope" || fail "$words: no scope"
done
flat <"$source/README.md" | grep -qF "$scope" || fail "README: no scope"

# beyond WHAT SET...: a verdict above the gap, status 1, in text and JSON.
beyond() {
    what=$1
    shift
    expect 1 "$coldgap" find "$four" -q "$@"
    says stdout "^NOT SAFE AT ANY GAP: in "
    flat <"$work/stdout" | grep -q "$what" || fail "$*: no $what"
    awk '/^NOT SAFE AT ANY GAP/ && !gap {above = 1} /file to/ {gap = 1}
         END {exit !above}' "$work/stdout" || fail "$*: not above the gap"
    expect 1 "$coldgap" find "$four" --json "$@"
    says stdout "NOT SAFE AT ANY GAP"
}
beyond "KNOCK is predicted" --set charge.boost_kPa=300
beyond "the coolant reaches" --set cooling.coolant_C=139
beyond "aluminium begins to melt" --set fuel.name=methanol \
    --set charge.boost_kPa=300 --set piston.oil_jet=false \
    --set duty.name=settled --set piston.splash_W_m2K=30
beyond "film of steam" --set cooling.coolant_film_W_m2K=30000 \
    --set fuel.name=methanol --set charge.boost_kPa=600 \
    --set combustion.heat_factor=3

# The shop's sheet says it too.
printf 'cylinder,bore_mm,top_gap_mm,second_gap_mm\n1,85.30,0.90,1.10\n' \
    >"$work/four.csv"
expect 1 "$coldgap" sheet "$four" --measured "$work/four.csv" -q \
    -o "$work/sheet" --set charge.boost_kPa=300
says stdout "^NOT SAFE AT ANY GAP: in dyno_pull KNOCK"

# A duty that declares knock says it itself.
expect 1 "$coldgap" find "$four" -q --duty settled --set charge.boost_kPa=300
flat <"$work/stdout" | grep -q "in settled KNOCK" || fail "settled: no knock"
expect 0 "$coldgap" find "$four" -q --duty lean_event \
    --set charge.boost_kPa=200 --set fuel.octane=85

# Coolant past boiling in a duty that coldgap adds informs; in one that the
# config names it is a verdict.
lukewarm="--set duty.name=drag_pass --set cooling.coolant_pressure_kPa=90 \
--set cooling.coolant_glycol_pct=0 --set cooling.coolant_C=90"
# shellcheck disable=SC2086
expect 0 "$coldgap" find "$four" -q $lukewarm
# shellcheck disable=SC2086
expect 1 "$coldgap" find "$four" -q $lukewarm --duty tow_grade
says stdout "in tow_grade the coolant reaches 102 C"
# shellcheck disable=SC2086
expect 1 "$coldgap" find "$four" -q $lukewarm --set margin.duties=tow_grade
says stdout "in tow_grade the coolant reaches 102 C"

# What hangs on a block wall that was not given: the range stands on the first
# screen, as find answers at both ends of it (to a filing step: the range is
# worked out in fewer cells).
sed 's/ block_thickness_mm = [0-9.]*;//' "$four" >"$work/wall.cfg"
expect 0 "$coldgap" find "$four" -q
grep -q 'block_thickness is not given' "$work/stdout" && fail "it was given"
expect 0 "$coldgap" find "$work/wall.cfg" -q
flat <"$work/stdout" | sed -n 's/.*block_thickness is not given: with 2 to 12 mm of it the gap needed is \([0-9.]*\) mm [^m]* to \([0-9.]*\) mm.*/\1 \2/p' \
    >"$work/range"
echo >>"$work/range"
for wall in 12 2; do
    expect 0 "$coldgap" find "$work/wall.cfg" -q -o "$work/wall" \
        --set bore.block_thickness_mm=$wall
    awk '$1 == "cold_gap_top" {print $2}' "$work/wall/summary.dat"
done | tr '\n' ' ' >>"$work/range"
tr '\n' ' ' <"$work/range" | awk 'function off(a, b) {return a > b ? a - b : b - a}
    {exit !(NF == 4 && $1 < $2 && off($1, $3) < 0.0101 &&
            off($2, $4) < 0.0101)}' ||
    fail "block wall: $(tr '\n' ' ' <"$work/range")"

# The shop rule has an end, and the ceiling stops at the first of what stops it.
hard="--set charge.boost_kPa=320 --set fuel.name=methanol"
# shellcheck disable=SC2086
"$coldgap" find "$four" -q $hard | flat | grep -q "ends at 300 kPa" ||
    fail "no end of the shop rule"
"$coldgap" find "$four" -q --set fuel.name=methanol | grep "ends at 300" &&
    fail "an end of the shop rule below it"
# ceiling_by WHAT GAP SET...: the boost that it stops at, and what stops it.
ceiling_by() {
    what=$1
    gap=$2
    shift 2
    "$coldgap" ceiling "$four" --gap "$gap" -q "$@" >"$work/stdout"
    flat <"$work/stdout" | grep -q "stopped by $what" ||
        fail "ceiling $gap $*: not stopped by $what"
    sed -n 's/^Ceiling, boost  *\([0-9]*\) kPa.*/\1/p' "$work/stdout" \
        >"$work/boost"
    boost=$(cat "$work/boost")
    [ "${boost:-999}" -le 300 ] || fail "ceiling $gap $*: $boost kPa"
}
ceiling_by "the gap" 0.38mm --set margin.duties=
narrow=$boost
ceiling_by knock 2mm --set margin.duties=
[ "$boost" -gt "$narrow" ] || fail "a wide gap stands no more than a narrow"
knock=$boost
for at in "$knock" $((knock + 20)); do
    "$coldgap" find "$four" -q --set margin.duties= \
        --set charge.boost_kPa="$at" >/dev/null
    echo $?
done | tr '\n' ' ' >"$work/either_side"
[ "$(cat "$work/either_side")" = "0 1 " ] ||
    fail "find on either side of the ceiling: $(cat "$work/either_side")"
ceiling_by "the end of the shop rule" 2mm --set margin.duties= \
    --set fuel.octane=150
ceiling_by "the coolant, which boils" 2mm --set margin.duties= \
    --set cooling.coolant_C=139
[ "$boost" = 0 ] || fail "coolant that boils without boost: $boost kPa"

finish
