#!/bin/sh
# `coldgap seal` as a user meets it: status, screens, tables.
#
#   run_seal.sh COLDGAP SOURCES
set -u
coldgap=$1
configs=$2/configs
. "$(dirname "$0")/lib.sh"
engine=$configs/engines/iron_six.cfg

expect 0 "$coldgap" seal "$engine" -o "$work/out"
says stdout '^Blow-by .*g/s'
says stdout 'L/min'
says stdout '^Second ring, file to .*mm'
says stdout 'not a warranty'
says stdout 'What this leaves out'
says stdout 'mass closes'
[ -s "$work/stderr" ] && fail "seal wrote to stderr"
awk 'length > 80 {print; bad = 1} END {exit bad}' "$work/stdout" ||
    fail "lines wider than 80"
tables=$(cd "$work/out" && echo *)
[ "$tables" = "seal.dat seal_cycle.dat seal_gap.dat" ] ||
    fail "tables: $tables"
for table in "$work"/out/*; do
    head -n 5 "$table" | grep -q '^# .*not a warranty' ||
        fail "${table##*/} has no caution in its head"
    grep -v '^#' "$table" | grep -q -i 'inf\|nan' &&
        fail "${table##*/} holds something not a number"
done

# The keys that outside scripts read, first and in their order.
cat >"$work/keys" <<'KEYS'
blow_by g/s
blow_by_share %
blow_by_volume L/min
unseat_angle deg
cold_gap_second mm
groove_lag deg
face_load N
power_loss_per_gap W
mass_residual 1
KEYS
awk '!/^#/{print $1, $3}' "$work/out/seal.dat" | head -n 9 >"$work/got"
diff -u "$work/keys" "$work/got" || fail "keys of seal.dat"
awk '$1 == "mass_residual"{m = $2} $1 == "cycle_change"{c = $2}
     END {exit !(m < 1e-12 && m > -1e-12 && c < 1e-6)}' \
    "$work/out/seal.dat" || fail "mass or cycle does not close"

# seal_cycle.dat: three blocks of a row each degree, the ends alike.
awk '/^# block:/{n++} !/^#/ && NF {rows[n]++; if (rows[n] == 1) first = $4
     last = $4; if (rows[n] == 721 && first != last) bad = 1}
     END {exit bad || n != 3 || rows[1] != 721 || rows[3] != 721}' \
    "$work/out/seal_cycle.dat" || fail "blocks of seal_cycle.dat"

# The second gap is that of find, and a given pair is looked at as given.
expect 0 "$coldgap" find "$engine" -q -o "$work/find"
for key in cold_gap_second; do
    a=$(awk -v k=$key '$1 == k{print $2}' "$work/out/seal.dat")
    b=$(awk -v k=$key '$1 == k{print $2}' "$work/find/summary.dat")
    [ "$a" = "$b" ] || fail "$key: seal $a, find $b"
done
expect 0 "$coldgap" seal "$engine" --set rings.top.cold_gap_mm=0.9 \
    --set rings.second.cold_gap_mm=1.1 -o "$work/given"
says stdout 'Top ring, cold .*0.900 mm .*yours'
says stdout 'file to what find'
awk '$1 == "cold_gap_top_fitted" && $2 == 0.9 {a = 1}
     $1 == "cold_gap_second_fitted" && $2 == 1.1 {b = 1}
     END {exit !(a && b)}' "$work/given/seal.dat" || fail "given gaps"

# A wider top gap leaks more.
at() {
    "$coldgap" seal "$engine" -q --set rings.top.cold_gap_mm="$1" \
        --set rings.second.cold_gap_mm=0.6 | awk '/^Blow-by/{print $2}'
}
awk -v a="$(at 0.4)" -v b="$(at 0.6)" 'BEGIN {exit !(a > 0 && b > a)}' ||
    fail "a wider gap leaks no more"

# Each kind of gas port.
for kind in crown land through; do
    expect 0 "$coldgap" seal "$engine" --set "rings.top.ports=$kind"
    says stdout '12 .* of 1 mm'
done

# Equal input, equal bytes; inch text leaves tables alone; quiet is short.
expect 0 "$coldgap" seal "$engine" --units inch -o "$work/again"
says stdout ' psi'
diff -r "$work/out" "$work/again" || fail "two runs differ"
expect 0 "$coldgap" seal "$engine" --quiet
says stdout '^Blow-by'
says stdout '^Second ring, file to'
grep -q -i 'crevices' "$work/stdout" && fail "--quiet is not"

# JSON: the keys of seal.dat, and the figures at full length.
expect 0 "$coldgap" seal "$engine" --json
grep -v '^#' "$work/out/seal.dat" | while read -r name value unit; do
    grep -q "\"$name\": {\"value\": .*\"unit\": \"$unit\"}" "$work/stdout" ||
        echo "no $name [$unit] ($value)"
done >"$work/missing"
[ ! -s "$work/missing" ] || fail "JSON: $(cat "$work/missing")"
says stdout '"is": "answer", "key": "blow_by"'
says stdout '"key": "file_to_second"'

# Far out: an answer (1: that gap is not safe), or one clear line and status 3; never nonsense.
for set in rings.second.cold_gap_mm=0 rings.top.cold_gap_mm=0 \
    engine.speed_rpm=15000 rings.top.side_clearance_mm=0.005 \
    seal.crankcase_kPa=-50 seal.seated_to_deg=180 \
    rings.top.port_diameter_mm=6; do
    "$coldgap" seal "$engine" --set "$set" >"$work/stdout" 2>"$work/stderr"
    got=$?
    [ "$got" -le 1 ] || [ "$got" -eq 3 ] || fail "$set: exit $got"
    [ "$got" -eq 3 ] && { says stderr 'coldgap: '; continue; }
    grep -q -w -i 'nan\|inf' "$work/stdout" && fail "$set: not a number"
done
expect 2 "$coldgap" seal "$engine" --set rings.top.ports=many
says stderr 'rings.top.ports: error: unknown'
expect 4 "$coldgap" seal "$engine" -o "$work/none/such/out"

# Every shipped engine and duty.
for config in "$configs"/engines/*.cfg "$configs"/example.cfg; do
    expect 0 "$coldgap" seal "$config" --quiet
done
for duty in $(duties_for "$configs" "$engine"); do
    expect 0 "$coldgap" seal "$engine" --quiet --set "duty.name=$duty"
done
finish
