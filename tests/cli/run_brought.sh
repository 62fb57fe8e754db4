#!/bin/sh
# Nitrous, spray and two chargers in a row: the shipped engines that have them
# answer every command, and what screens, tables, pages and JSON say of them.
#
#   run_brought.sh COLDGAP SOURCES
set -u
coldgap=$1
sources=$2
. "$(dirname "$0")/lib.sh"
engines=$sources/configs/engines
nitrous=$engines/nitrous_eight.cfg
sprayed=$engines/sprayed_four.cfg
caution='Nitrous melts pistons'

# flat: the words of stdin, whatever the lines.
flat() {
    tr -s ' \n' ' '
}

# key TABLE KEY: its value.
key() {
    awk -v key="$2" '$1 == key {print $2}' "$1"
}

for engine in nitrous_eight sprayed_four row_four; do
    config=$engines/$engine.cfg
    for command in find card seal lesson network; do
        expect 0 "$coldgap" $command "$config" -q -o "$work/$engine.$command"
    done
    "$coldgap" finish "$config" --simulate plateau -q >"$work/stdout"
    [ $? -le 1 ] || fail "finish $engine: no answer"
    expect 0 "$coldgap" ceiling "$config" -q --gap 0.9mm
    expect 0 "$coldgap" sweep "$config" -q -o "$work/$engine.sweep" \
        --vary charge.boost_kPa=60,80
    bore=$(sed -n 's/.*bore_mm = \([0-9.]*\);.*/\1/p' "$config")
    printf 'cylinder,bore_mm,top_gap_mm,second_gap_mm\n1,%s,0.80,0.90\n' \
        "$bore" >"$work/gaps.csv"
    expect 0 "$coldgap" sheet "$config" -q --measured "$work/gaps.csv"
done
for command in rings ladder; do
    expect 0 "$coldgap" $command "$nitrous" -q
done

# The caution of nitrous: once on a screen, in every table's head, on the page
# and in JSON, and with no engine that has none on.
expect 0 "$coldgap" find "$nitrous" -o "$work/n" --report "$work/n.html"
[ "$(flat <"$work/stdout" | grep -o "$caution" | wc -l)" = 1 ] ||
    fail "the caution stands once on the screen"
for table in "$work"/n/*.dat; do
    [ "$(grep -c "^# $caution" "$table")" = 1 ] || fail "$table: no caution"
done
grep -q "<li>$caution" "$work/n.html" || fail "page: no caution"
expect 0 "$coldgap" find "$nitrous" -q --json
says stdout "\"$caution"
expect 0 "$coldgap" find "$nitrous" -o "$work/road" --duty dyno_pull
grep -q "$caution" "$work/stdout" "$work"/road/*.dat &&
    fail "a caution of nitrous without any"

# The screen and the tables tell the same flow; without it they are silent.
expect 0 "$coldgap" find "$nitrous" --duty nitrous_pull -o "$work/pull"
says stdout '^  Nitrous  *216 kg/h'
says stdout '^  Heat of its coming apart  *112 kW'
flat <"$work/stdout" | grep -q 'Left out of nitrous: a flame that runs' ||
    fail "what is left out of nitrous"
grep -q '^# nitrous_flow 216 kg/h$' "$work/pull/summary.dat" ||
    fail "summary.dat: no flow"
grep -q nitrous_flow "$work/road/summary.dat" && fail "a flow that is off"

# The same pull without and with it: more power, and a wider gap.
expect 0 "$coldgap" find "$nitrous" --duty nitrous_pull -q -o "$work/off" \
    --set nitrous.flow_g_s=0.001
for figure in brake_power peak_pressure closure_top knock_integral; do
    awk -v off="$(key "$work/off/summary.dat" $figure)" \
        -v on="$(key "$work/pull/summary.dat" $figure)" \
        'BEGIN {exit !(on > 1.03 * off)}' || fail "$figure does not rise"
done
expect 0 "$coldgap" find "$nitrous" --duty nitrous_pull -o "$work/asked" \
    --set nitrous.flow_g_s=0 --set nitrous.power_kW=100
says stdout 'by rule for 100 kW'
awk -v off="$(key "$work/off/summary.dat" brake_power)" \
    -v on="$(key "$work/asked/summary.dat" brake_power)" \
    'BEGIN {exit !(on - off > 75 && on - off < 125)}' || fail "100 kW asked for"

# Spray: its flows, what is left out, and the pump that fails.
expect 0 "$coldgap" find "$sprayed" -o "$work/wet"
says stdout '^  Water sprayed  *18 kg/h'
says stdout '^  Methanol sprayed  *18 kg/h'
flat <"$work/stdout" | grep -q 'water that gets into the oil or past' ||
    fail "what is left out of the spray"
expect 0 "$coldgap" find "$sprayed" -o "$work/dry" --set spray.flow_g_s=0
grep -q 'Water sprayed\|of the spray' "$work/stdout" && fail "spray without any"
awk -v dry="$(key "$work/dry/summary.dat" burn50)" \
    -v wet="$(key "$work/wet/summary.dat" burn50)" \
    'BEGIN {exit !(wet < dry - 1)}' || fail "the spray holds no knock back"

# A duty that has nitrous on, and an engine that has none.
expect 2 "$coldgap" find "$sprayed" --duty nitrous_pull
says stderr 'a duty has nitrous on, but there is none'

# The lesson says what its sums leave out.
expect 0 "$coldgap" lesson "$nitrous"
flat <"$work/stdout" | grep -q 'takes in more than air and its fuel' ||
    fail "the lesson's sums"
finish
