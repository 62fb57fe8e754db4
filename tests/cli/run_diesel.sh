#!/bin/sh
# Engines fired by compression: each answers with every command without boost and
# with much, and no screen speaks of a spark, knock, octane or a throttle.
#
#   run_diesel.sh COLDGAP SOURCES
set -u
coldgap=$1
sources=$2
. "$(dirname "$0")/lib.sh"

# quiet_of WHAT: nothing of the other kind of engine on the screen just shown.
quiet_of() {
    grep -inE 'spark|knock|octane|throttle|gasoline|(^|[^a-z])nan([^a-z]|$)' \
        "$work/stdout" && fail "$1: a word of spark engines"
    [ -s "$work/stdout" ] || fail "$1: says nothing"
}

# answers STATUS ENGINE COMMAND WORDS...
answers() {
    status=$1
    file=$sources/configs/engines/$2.cfg
    shift 2
    command=$1
    shift
    expect "$status" "$coldgap" "$command" "$file" "$@"
    quiet_of "$command $file $*"
}

for engine in truck_six pickup_eight; do
    printf 'cylinder,bore_mm,top_gap_mm,second_gap_mm\n1,%s,1.10,1.30\n' \
        "$(sed -n 's/.*bore_mm = \([0-9.]*\).*/\1/p' \
            "$sources/configs/engines/$engine.cfg")" >"$work/$engine.csv"
    for boost in 0 200; do
        set="charge.boost_kPa=$boost"
        answers 0 "$engine" find --set "$set"
        answers 0 "$engine" seal --set "$set"
        answers 0 "$engine" rings --set "$set"
        answers 0 "$engine" lesson --set "$set"
        answers 0 "$engine" card --set "$set"
        answers 0 "$engine" finish --simulate plateau --set "$set"
        answers 0 "$engine" sheet --measured "$work/$engine.csv" --set "$set"
        answers 0 "$engine" network --set "$set" -o "$work/$engine"
    done
    answers 1 "$engine" ceiling --gap 0.60mm
    answers 0 "$engine" ladder --to 250kPa
    answers 0 "$engine" sweep --vary charge.boost_kPa=0,400 -o "$work/$engine"
    # Past what a cylinder stands, whatever the gap, and what would mend it.
    answers 1 "$engine" find --set charge.boost_kPa=400
    says stdout "^NOT SAFE AT ANY GAP: in .* the cylinder's pressure"
    says stdout "later injection"
    # More boost wants more gap, by the model itself.
    "$coldgap" sweep "$sources/configs/engines/$engine.cfg" -q \
        --vary charge.boost_kPa=0:400:100 -o "$work/rise" >"$work/stdout"
    awk '!/^#/ && NF {print $2}' "$work/rise/sweep.dat" >"$work/needs"
    [ "$(wc -l <"$work/needs")" -eq 5 ] || fail "$engine: not five points"
    sort -g -c "$work/needs" || fail "$engine: the gap does not rise with boost"
done

# One clear line for what is of the other kind.
refuses() {
    expect 2 "$coldgap" find "$sources/configs/engines/$1.cfg" --set "$2"
    says stderr "$3"
}
refuses truck_six combustion.burn50_deg=9 "is of spark ignition alone"
refuses truck_six fuel.lambda=1.05 "must be at least: 1.15"
refuses truck_six fuel.name=gasoline "compression ignition burns diesel"
refuses truck_six duty.name=lean_event "declares knock"
refuses truck_six engine.speed_rpm=3900 "no diesel turns so fast.*at most: 379[67]"
refuses pickup_eight engine.speed_rpm=6500 "must be at most: 6000"
refuses truck_six engine.compression_ratio=10 "must be at least: 11"
refuses iron_six combustion.injection_deg=-9 "is of compression ignition alone"
refuses iron_six fuel.name=Diesel "allowed with combustion.ignition"
refuses iron_six fuel.lambda=2 "must be at most: 1.8"
finish
