#!/bin/sh
# Builders' words in a config: the answer and the tables are those of ours.
#
#   run_words.sh COLDGAP SOURCES
set -u
coldgap=$1
. "$(dirname "$0")/lib.sh"

# config CHARGER BOOST FUEL RING GAP SECOND BORE FACE SPEED
config() {
    cat <<CONFIG
engine = { bore_mm = 86.0; stroke_mm = 86.0; compression_ratio = 9.0;
           cylinders = 4; $9 = 6800; };
charge = { charger = "$1"; boost_kPa = $2; };
fuel = { name = "$3"; lambda = 0.82; };
rings = { top = { material = "$4"; $5 = 0.9; face = "$8"; };
          second = { material = "$6"; }; };
bore = { material = "$7"; };
CONFIG
}

# same OURS... -- THEIRS...: nine words each.
same() {
    for who in ours theirs; do
        mkdir -p "$work/$who"
        config "$@" >"$work/$who/words.cfg"
        shift 9
        expect 0 sh -c 'cd "$1" && "$2" find words.cfg -o out' sh \
            "$work/$who" "$coldgap"
        grep -v '^Computed in' "$work/stdout" >"$work/$who/screen"
    done
    cmp "$work/ours/screen" "$work/theirs/screen" || fail "another answer"
    diff -r "$work/ours/out" "$work/theirs/out" || fail "other tables"
}
coldgap=$(cd "$(dirname "$coldgap")" && pwd)/${coldgap##*/}

same turbine 40 gasoline plain_steel cold_gap_mm ductile_iron_ring grey_iron \
    chromium speed_rpm \
    Turbo 40 petrol steel gap_mm nodular_iron 'Cast iron' hard_chrome rpm
same belt 40 e85 ductile_iron_ring cold_gap_mm grey_iron_ring ductile_iron \
    sprayed_molybdenum speed_rpm \
    supercharger 40 E85 ductile end_gap_mm cast_iron sg-iron moly speed_rpm
same belt 30 gasoline plain_steel cold_gap_mm grey_iron_ring cgi vapour_crn \
    speed_rpm \
    blower 30 pump_gas steel gap_mm gray_iron compacted_graphite pvd_crn rpm

# A metal of the config's own comes before the word.
{
    config turbine 40 gasoline steel cold_gap_mm grey_iron_ring grey_iron \
        chromium speed_rpm
    sed -n '/name = "plain_steel"/,/^ *}/p' \
        "$2/configs/materials/ring_materials.cfg" |
        sed '1s/.*/ring_materials = ( { name = "steel";/;$s/.*/} );/'
} >"$work/own.cfg"
expect 0 "$coldgap" find "$work/own.cfg"
says stdout '^  Top ring  *steel, '

# A word is no word elsewhere.
expect 2 "$coldgap" find "$work/own.cfg" --set fuel.name=turbo
says stderr 'unknown fuel "turbo", allowed: '
finish
