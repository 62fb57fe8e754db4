#!/bin/sh
# An engine that air cools: every command answers, none speaks of a coolant, and
# what belongs to the other medium is refused in one line.
#
#   run_air.sh COLDGAP SOURCE_FOLDER
set -u
coldgap=$1
source=$2
. "$source/tests/cli/lib.sh"
twin=$source/configs/engines/air_twin.cfg
four=$source/configs/engines/plain_four.cfg

# dry FILE...: no word of a coolant, but in the sentence of the scope.
dry() {
    for file; do
        tr -s ' \n' ' ' <"$file" |
            sed 's/cooled by coolant or, other than diesels, by air//g' |
            grep -qiE 'coolant|boil|jacket' && fail "$file speaks of a coolant"
    done
}

# answers WORDS...: exit 0, and dry.
answers() {
    expect 0 "$coldgap" "$@"
    dry "$work/stdout"
}

printf 'cylinder,bore_mm,top_gap_mm,second_gap_mm\n1,96.00,0.50,0.60\n2,96.01,,\n' \
    >"$work/twin.csv"
answers find "$twin" -o "$work/find" --report "$work/find.html"
says stdout "^  Heat to the air past the fins "
says stdout "^    air and fins "
says stdout "^    cooling of the hottest cylinder "
says stdout "^    cold_start_air "
says stdout "^Note: every gap here is measured in the choke"
answers find "$twin" --json
answers find "$twin" --units inch
answers find "$twin" -q --samples 200
answers sweep "$twin" --vary cooling.air_speed_mph=40,90 -o "$work/sweep" --quiet
answers ceiling "$twin" --gap 0.5mm
answers ladder "$twin" --to 60kPa -o "$work/ladder" --report "$work/ladder.html"
answers seal "$twin" -o "$work/seal"
answers sheet "$twin" --measured "$work/twin.csv" -o "$work/sheet"
answers card "$twin" -o "$work/card" --report "$work/card.html"
says stdout "^  Air at the fins "
says stdout "^  Cooled by "
says stdout "measured in the choke"
answers rings "$twin" -o "$work/rings"
answers lesson "$twin" --answers -o "$work/lesson" --report "$work/lesson.html"
says stdout "Colder air cools the bore"
answers network "$twin" -o "$work/network"
expect 0 "$coldgap" finish "$twin" --simulate plateau
dry "$work/stdout"
find "$work" -type f ! -name stderr ! -name stdout >"$work/files"
while read -r file; do
    dry "$file"
done <"$work/files"
says find/heat_balance.dat "^to_air "
[ "$(grep -c coolant "$work/ladder/ladder.dat")" = 0 ] || fail "ladder.dat"

# An engine with coolant speaks of no fins.
expect 0 "$coldgap" find "$four"
grep -qiE 'fins|air cooled' "$work/stdout" && fail "plain_four has fins"

# Two gaps of one ring: in the choke it is pi times the choke smaller.
for at in skirt choke; do
    expect 0 "$coldgap" find "$twin" -o "$work/$at" \
        --set bore.gap_measured_at=$at
    awk '$1 == "closure_top" {print $2; exit}' "$work/$at/summary.dat"
done | awk '{at[NR] = $1} END {off = at[1] - at[2] - 3.14159265 * 0.05
    exit !(NR == 2 && off < 1e-5 && off > -1e-5)}' || fail "choke and skirt"

# refused WHAT WORDS...: one line more than the sum, exit 2.
refused() {
    what=$1
    shift
    expect 2 "$coldgap" find "$@"
    says stderr "$what"
}
refused "cooling.coolant_C: error: no coolant in this engine" "$twin" \
    --set cooling.coolant_C=80
refused "coolant_C: no coolant in this engine" "$twin" --duty tow_grade
refused "cooling.fins_W_m2K: error: no air past fins in this engine" "$four" \
    --set cooling.fins_W_m2K=800
refused "air_pct: no air past fins in this engine" "$four" \
    --duty slow_climb_air
refused "air_pct: goes with the engine's speed" "$twin" \
    --duty slow_climb_air --set cooling.air_drive=fan
refused "cooling by oil is not modelled" "$twin" --set cooling.medium=oil
refused "flaps in the cooling air" "$twin" --set cooling.cowl_flaps=1
answers find "$twin" -q --duty slow_climb_air

finish
