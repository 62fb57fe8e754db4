#!/bin/sh
# `ladder`: its figures against the commands that know a limit, the config it
# writes against all of them, and what it refuses.  One duty, so that what is
# asked here is soon answered.
#
#   run_ladder.sh COLDGAP SOURCES
set -u
coldgap=$(realpath "$1")
sources=$(realpath "$2")
. "$(dirname "$0")/lib.sh"
engines=$sources/configs/engines
cd "$work" || exit 1

# cell FOLDER PART COLUMN
cell() {
    awk -v part="$2" -v column="$3" '$1 == part {print $column}' "$1/ladder.dat"
}
# within NAME A B TOLERANCE: two numbers, or none of both.
within() {
    awk -v a="$2" -v b="$3" -v t="$4" 'BEGIN {
        if (a == "" || b == "") exit 1
        if (a == "nan" || b == "nan") exit a != b
        exit !(a - b <= t + 0 && b - a <= t + 0)}' || fail "$1: $2 and $3"
}
# summary FILE KEY: a figure of a report in JSON.
summary() {
    sed -n "s/^ *\"$2\": {\"value\": \([-0-9.e+]*\).*/\1/p" "$1"
}
climb() {
    folder=$1
    engine=$2
    shift 2
    expect 0 "$coldgap" ladder "$engines/$engine.cfg" --duty settled \
        -o "$folder" --json "$@"
    cp stdout "$folder.json"
}

# The gap: where ceiling stops it, which shows whole kPa below.
for engine in boosted_four iron_six big_eight; do
    case $engine in
    boosted_four) gap=0.40 ;;
    iron_six) gap=0.42 ;;
    *) gap=0.58 ;;
    esac
    climb $engine $engine --to 180kPa --set rings.top.cold_gap_mm=$gap
    "$coldgap" ceiling "$engines/$engine.cfg" --duty settled --gap ${gap}mm \
        --json >stdout
    ceiling=$(tr '\n' ' ' <stdout | sed 's/.*the gap stands \([0-9]*\) kPa.*/\1/
        s/.*"key": "ceiling".*stopped by the gap", "value": \([0-9]*\),.*/\1/')
    [ "$ceiling" -lt 1000 ] || ceiling=$((ceiling / 1000))
    within "$engine: gap, ceiling" "$(cell $engine top_gap 3)" "$ceiling" 1.1

    # The ring: rings looks in steps, within 1 kPa; past the end there is none.
    expect 0 "$coldgap" rings "$engines/$engine.cfg" --duty settled -q -o rings
    awk -v end=205 '!/^#/ && $24 == 1 {
        print $6 < end ? $6 : "nan", $8 < end ? $8 : "nan"}' rings/rings.dat \
        >own
    awk '($1 == "ring_face" || $1 == "ring_metal") {
            if ($2 != "nan" && (low == "" || $2 + 0 < low)) low = $2 + 0
            if ($3 != "nan" && (high == "" || $3 + 0 < high)) high = $3 + 0}
         END {print low == "" ? "nan" : low, high == "" ? "nan" : high}' \
        $engine/ladder.dat >ring
    within "$engine: ring fits" "$(cut -d ' ' -f 1 ring)" \
        "$(cut -d ' ' -f 1 own)" 1.5
    within "$engine: ring stands" "$(cut -d ' ' -f 2 ring)" \
        "$(cut -d ' ' -f 2 own)" 1.5

    # At the target: what seal and finish say there.
    "$coldgap" seal "$engines/$engine.cfg" --duty settled --json \
        --set charge.boost_kPa=180 --set rings.top.cold_gap_mm=$gap >seal.json
    "$coldgap" finish "$engines/$engine.cfg" --simulate plateau -q -o finish \
        --set charge.boost_kPa=180 >stdout
    within "$engine: seat" "$(summary $engine.json unseat_angle_before)" \
        "$(summary seal.json hardest_unseat_angle)" 0.01
    within "$engine: blow-by" "$(summary $engine.json blow_by_before)" \
        "$(summary seal.json blow_by)" 0.0001
    within "$engine: oil held" "$(summary $engine.json oil_held_before)" \
        "$(awk '$1 == "Vo" {print $2 * 10}' finish/finish.dat)" 0.0001
    within "$engine: oil needed" "$(summary $engine.json oil_needed_before)" \
        "$(awk '$1 == "Vo_needed" {print $2 * 10}' finish/finish.dat)" 0.0001
done

# Knock, over the duties of the config: within the band that ceiling keeps.
expect 0 "$coldgap" ladder "$engines/boosted_four.cfg" -q -o knock --to 160kPa
"$coldgap" ceiling "$engines/boosted_four.cfg" --gap 1mm --json >stdout
says stdout 'stopped by knock'
within "knock, ceiling" "$(cell knock spark 3)" "$(tr '\n' ' ' <stdout |
    sed 's/.*"key": "ceiling"[^}]*"value": \([0-9]*\)000,.*/\1/')" 10.5

# The finish: enough just below, too little just above.
climb e85 boosted_four --to 200kPa --set fuel.name=e85
for more in -2:0 2:1; do
    expect "${more#*:}" "$coldgap" finish "$engines/boosted_four.cfg" \
        --simulate plateau -q --set fuel.name=e85 --set charge.boost_kPa="$(
        cell e85 bore_finish 2 | awk -v more="${more%:*}" '{print $1 + more}')"
done

# What is written fits at the target, by all who know; each changed line says
# what it was; nothing is left to change.
for engine in boosted_four iron_six big_eight plain_four touched_six; do
    expect 0 "$coldgap" ladder "$engines/$engine.cfg" --duty settled -q \
        --to 180kPa --write new.cfg
    expect 0 "$coldgap" find new.cfg -q
    expect 0 "$coldgap" seal new.cfg -q
    expect 0 "$coldgap" finish new.cfg -q --simulate plateau
    expect 0 "$coldgap" rings new.cfg -q -o new
    awk '!/^#/ && $24 == 1 {found = $7 != "unfit"} END {exit !found}' \
        new/rings.dat || fail "$engine: the written ring is unfit"
    grep -q '^ *boost_kPa = 180.0; # the target; was ' new.cfg ||
        fail "$engine: no target in the config"
    expect 0 "$coldgap" ladder new.cfg -q
    says stdout '^Nothing to change for 180 kPa'
done
expect 0 "$coldgap" ladder "$engines/iron_six.cfg" --duty settled -q \
    --to 180kPa --write new.cfg --set rings.top.cold_gap_mm=0.42
grep -q '^ *cold_gap_mm = 0.54; # was 0.42$' new.cfg || fail "gap: $(cat new.cfg)"
grep -q '^ *face = "chromium"; # was bare$' new.cfg || fail "face: $(cat new.cfg)"

# What stands a boost stands less: the same rungs, fewer changes.
climb less iron_six --to 100kPa --set rings.top.cold_gap_mm=0.42
climb least iron_six --to 20kPa --set rings.top.cold_gap_mm=0.42
for part in top_gap ring_face; do
    within "less: $part" "$(cell less $part 2)" "$(cell iron_six $part 2)" 1
done
[ "$(cell least top_gap 5)" = - ] || fail "a change that 20 kPa does not need"
says stdout 'Nothing to change for 20 kPa'
expect 0 "$coldgap" ladder "$engines/plain_four.cfg" --duty settled -q
says stdout '^Nothing to change for 0 kPa'

# In order of boost; no quotes, words alone.
awk '/^#/ {next} $2 != "nan" && (none || $2 < last) {exit 1}
     $2 == "nan" {none = 1} {last = $2 + 0; rows++} END {exit rows != 13}' \
    iron_six/ladder.dat || fail "rows of ladder.dat"
head -n 1 iron_six/ladder.dat |
    grep -q '^# part  stops_kPa  stops_high_kPa  holds_to_kPa  change' ||
    fail "columns of ladder.dat"

# Where nothing offered will do the answer is no, and says for what.
expect 1 "$coldgap" ladder "$engines/iron_six.cfg" --duty settled -q \
    --to 300kPa --set cooling.coolant_film_W_m2K=500 \
    --set engine.compression_ratio=12
says stdout 'does NOT stand'
says stdout '^NOTHING OFFERED WILL DO for '

# A name is data, in the new config too.
{
    echo 'engine = { name = "# a \\" #"; bore_mm = 86; stroke_mm = 86;'
    echo '    speed_rpm = 6500; };'
    echo 'charge = { boost_psi = 5; };'
    echo 'ring_materials = ( { name = "mine"; use = [ "ring" ];'
    echo '    density_kg_m3 = 7800; poisson = 0.3; expansion_C = [ 100.0 ];'
    echo '    expansion_1e6_K = [ 11.5 ]; conductivity_C = [ 20.0 ];'
    echo '    conductivity_W_mK = [ 30.0 ]; heat_capacity_C = [ 20.0 ];'
    echo '    heat_capacity_J_kgK = [ 460.0 ]; modulus_C = [ 20.0 ];'
    echo '    modulus_GPa = [ 205.0 ]; hot_limit_C = 300.0; } );'
    echo 'rings = { top = { material = "mine"; }; };'
} >"named.cfg"
expect 0 "$coldgap" ladder named.cfg --duty settled -q --to 7psi --write "a b;.cfg"
[ "$(grep -c 'boost_' "a b;.cfg")" -eq 1 ] || fail "boost twice: $(cat "a b;.cfg")"
grep -q -F 'name = "# a \" #";' "a b;.cfg" || fail "the engine's name is lost"
expect 0 "$coldgap" find "a b;.cfg" -q
says stdout '^Top ring, file to'

# What it refuses, and leaves nothing of.
for wrong in --to=600psi --to=-1kPa --to=250 --to=nankPa --write=new.txt --write=.cfg; do
    expect 2 "$coldgap" ladder named.cfg "$wrong"
    [ "$(wc -l <stderr)" -eq 1 ] || fail "$wrong: not one line"
done
cp named.cfg kept.cfg
expect 2 "$coldgap" ladder named.cfg --duty settled -q --write named.cfg
expect 2 "$coldgap" ladder named.cfg --duty settled -q --write ./named.cfg
cmp -s named.cfg kept.cfg || fail "the config was written over"
ln -s named.cfg link.cfg
expect 4 "$coldgap" ladder named.cfg --duty settled -q --write link.cfg
expect 4 "$coldgap" ladder named.cfg --duty settled -q --write no/folder/n.cfg
expect 4 "$coldgap" ladder missing.cfg --write made.cfg
mkdir folder.cfg
expect 4 "$coldgap" ladder named.cfg --duty settled -q --write folder.cfg
left=$(find . -name '*.part' -o -name made.cfg)
[ -z "$left" ] || fail "left behind: $left"
finish
