#!/bin/sh
# `coldgap find` as a user meets it: status, screens, tables.
#
#   run_find.sh COLDGAP SOURCES
set -u
coldgap=$1
configs=$2/configs
. "$(dirname "$0")/lib.sh"
engine=$configs/engines/iron_six.cfg

# An answer, with all its tables.
expect 0 "$coldgap" find "$engine" -o "$work/out"
says stdout 'How the gap comes about'
top=$(head -n 10 "$work/stdout" |
    sed -n 's/^Top ring, file to  *\([0-9.]*\) mm (0\.0[0-9]* in)$/\1/p')
# Never below the model's, and the rule's where that is larger.
awk -v top="${top:-0}" '$1 == "cold_gap_top" {exit !(top >= $2 - 5e-3)}' \
    "$work/out/summary.dat" ||
    fail "the gap to file to is not in the first ten lines"
says stdout 'not a warranty'
[ -s "$work/stderr" ] && fail "find wrote to stderr"
tables=$(cd "$work/out" && echo *)
[ "$tables" = "clearance.dat cycle.dat duties.dat heat_balance.dat history.dat sensitivity.dat stroke.dat summary.dat" ] ||
    fail "tables: $tables"
for table in "$work"/out/*; do
    head -n 5 "$table" | grep -q '^# .*not a warranty' ||
        fail "${table##*/} has no caution in its head"
    head -n 5 "$table" | grep -q '^# coldgap [0-9].*config' ||
        fail "${table##*/} does not name version and config"
    grep -q -i 'inf' "$table" && fail "${table##*/} holds an infinity"
done

# The keys that outside scripts read, in their order, with their units.
cat >"$work/keys" <<'KEYS'
cold_gap_top mm
closure_top mm
closure_per_bore 1
gap_per_bore 1
spread_top mm
residual mm
cold_gap_second mm
tightest_time s
tightest_stroke mm
ring_top_max C
groove_top_max C
crown_max C
liner_top_max C
liner_coolest C
hot_gap_min mm
imep bar
brake_power kW
peak_pressure bar
air_flow kg/h
fuel_flow kg/h
burn50 deg
knock_integral 1
energy_residual 1
film_top um
film_second um
closure_duty mm
file_to_top mm
file_to_second mm
rule_top mm
rule_second mm
exhaust_valve C
exhaust_probe C
file_to_from word
hardest_duty word
KEYS
awk '!/^#/{print $1, $3}' "$work/out/summary.dat" >"$work/got"
diff -u "$work/keys" "$work/got" || fail "keys of summary.dat"
awk '!/^#/ && $3 != "word" && $2 + 0 != $2 {bad = 1; print} END {exit bad}' \
    "$work/out/summary.dat" || fail "summary.dat holds something not a number"

# The film by lubrication: said on the screen, over the crank in film.dat; a
# later run with the constant film takes that table away.
expect 0 "$coldgap" find "$engine" --set rings.film_law=reynolds -o "$work/film"
says stdout 'by Reynolds lubrication (film_law reynolds), 10W-40'
tr -s ' \n' ' ' <"$work/stdout" >"$work/words"
says words 'as much oil ahead of the rings as rings.oil_supply says'
awk '!/^#/ && NF {
         if (NF != 10 || !($2 > 0)) bad = 1
         rows++
     }
     END { exit bad || rows != 720 }' "$work/film/film.dat" ||
    fail "film.dat is not two blocks of 360 films above 0"
grep -q 'not a warranty' "$work/film/film.dat" || fail "film.dat: no caution"
expect 0 "$coldgap" find "$engine" -o "$work/film"
says stdout 'Oil film  *as set (film_law constant), 10W-40'
[ -e "$work/film/film.dat" ] && fail "film.dat of an earlier run is left"

# history.dat: the columns of the contract first, rows all as wide, time rises.
columns="time_s load speed_rpm manifold_kPa crown_C groove_top_C ring_top_C\
 ring_second_C liner_top_C liner_mid_C liner_low_C hot_gap_min_mm\
 hot_gap_top_mm closure_mm"
named=$(sed -n '1s/^# //p' "$work/out/history.dat" |
    tr -s ' ' | cut -d' ' -f1-14)
[ "$named" = "$columns" ] || fail "columns of history.dat: $named"
awk '!/^#/ && NF {n = n ? n : NF; if (NF != n || ($1 <= t && seen)) bad = 1
     t = $1; seen = 1} END {exit bad || !seen}' "$work/out/history.dat" ||
    fail "rows of history.dat"
named=$(sed -n '1s/^# //p' "$work/out/cycle.dat" | tr -s ' ')
[ "$named" = "crank_deg p_bar T_K h_W_m2K exposed_mm block" ] ||
    fail "columns of cycle.dat: $named"
grep -q '^# block: tightest' "$work/out/stroke.dat" ||
    fail "stroke.dat has no tightest block"
sum=$(awk '!/^#/{s += $3} END {printf "%.5f", s}' "$work/out/sensitivity.dat")
[ "$sum" = 1.00000 ] || fail "shares of sensitivity.dat sum to $sum"

# closure + spread + residual, rounded up to the filing step, is the gap needed.
awk '{v[$1] = $2} END {
    exact = v["closure_top"] + v["spread_top"] + v["residual"]
    up = v["cold_gap_top"] - exact
    exit !(up > -1e-6 && up < 0.01)}' "$work/out/summary.dat" ||
    fail "the gap is not the sum of its parts"
# The history's tightest row is the summary's.
awk 'FNR == NR {v[$1] = $2; next} !/^#/ && NF {if (low == "" || $12 < low) low = $12}
     END {d = low - v["hot_gap_min"]; exit !(d > -1e-3 && d < 1e-3)}' \
    "$work/out/summary.dat" "$work/out/history.dat" ||
    fail "history.dat and summary.dat differ in the smallest hot gap"

# Equal input, equal bytes, whatever was in the folder.
expect 0 "$coldgap" find "$engine" -o "$work/again"
diff -r "$work/out" "$work/again" || fail "two runs differ"
expect 0 "$coldgap" find "$engine" -o "$work/again"
diff -r "$work/out" "$work/again" || fail "a run over old tables differs"

# Quiet: the gaps and the cautions; inch: the answer in both units.
expect 0 "$coldgap" find "$engine" --quiet
says stdout '^Top ring, file to'
says stdout 'not a warranty'
grep -q 'sigma' "$work/stdout" && fail "--quiet is not"
expect 0 "$coldgap" find "$engine" --units inch -o "$work/inch"
says stdout ' in '
says stdout '(.* mm)'
diff -r "$work/out" "$work/inch" || fail "--units inch changes the tables"

# A gap that is too small: an answer, status 1; and one that is wide.
expect 1 "$coldgap" find "$engine" --set rings.top.cold_gap_mm=0.15 \
    -o "$work/small"
says stdout 'TOO SMALL'
head -n 10 "$work/stdout" | grep -q 'TOO SMALL' ||
    fail "the verdict is not in the first ten lines"
[ -s "$work/small/summary.dat" ] || fail "no tables when the gap is too small"
expect 1 "$coldgap" find "$engine" --set rings.top.cold_gap_mm=0.15 --quiet
says stdout 'TOO SMALL'
expect 0 "$coldgap" find "$engine" --set rings.top.cold_gap_mm=0.9
says stdout 'fits'
gap=$(awk '$1 == "file_to_top"{print $2}' "$work/out/summary.dat")
expect 0 "$coldgap" find "$engine" --set "rings.top.cold_gap_mm=$gap"
expect 1 "$coldgap" find "$engine" --set rings.top.cold_gap_mm=0.10 \
    --set duty.name=cold_start_abuse
says stdout 'touch'

# The second gap has its reason; one that stays open can be too small for gas.
expect 0 "$coldgap" find "$configs/engines/plain_four.cfg" \
    --duty dyno_pull --set margin.second_factor=3
tr -s ' \n' ' ' <"$work/stdout" >"$work/words"
says words 'a smaller one does not keep the top ring seated'
says stdout "Shop rule, second ring"
expect 1 "$coldgap" find "$configs/engines/plain_four.cfg" --duty dyno_pull \
    --set margin.second_factor=3 --set rings.second.cold_gap_mm=0.30
tr -s ' \n' ' ' <"$work/stdout" >"$work/words"
says words 'gas between the rings lifts the top ring too soon'
expect 0 "$coldgap" find "$engine" --set seal.seated_to_deg=180
tr -s ' \n' ' ' <"$work/stdout" >"$work/words"
says words "no more than the shop rule is taken"
expect 0 "$coldgap" find "$engine" --set seal.seated_to_deg=180 \
    --set margin.second_factor=3
says stdout 'No gap up to'

# Places that cannot be written.
expect 4 "$coldgap" find "$engine" -o "$work/none/such/out"
says stderr 'none/such/out'
: >"$work/file"
expect 4 "$coldgap" find "$engine" -o "$work/file"
if [ "$(id -u)" -ne 0 ]; then
    mkdir "$work/locked" && chmod 555 "$work/locked"
    expect 4 "$coldgap" find "$engine" -o "$work/locked/out"
fi
if [ -w /dev/full ]; then
    "$coldgap" find "$engine" >/dev/full 2>"$work/stderr"
    got=$?
    [ "$got" -eq 4 ] || fail "find >/dev/full: exit $got, expected 4"
    says stderr 'cannot write'
fi
# A table that cannot be finished leaves no part behind.  A limit on the size of
# files (blocks of 512 bytes) stands in for a full disk.
(trap '' XFSZ
 ulimit -f 16
 "$coldgap" find "$engine" -q -o "$work/full" >/dev/null 2>"$work/stderr")
got=$?
[ "$got" -eq 4 ] || fail "a full disk: exit $got, expected 4"
says stderr 'history.dat: could not write'
[ -s "$work/full/summary.dat" ] || fail "the table before it was not kept"
[ -e "$work/full/history.dat" ] && fail "a half-written table was kept"
left=$(find "$work" -name '*.part')
[ -z "$left" ] || fail "left behind: $left"

# Every shipped engine and duty runs.
for config in "$configs"/engines/*.cfg "$configs"/example.cfg; do
    expect 0 "$coldgap" find "$config" --quiet
    case $config in
    */touched_*) [ "$(wc -l <"$work/stdout")" -le 27 ] || # no warning is left out
        fail "$config: no terminal shows it at once" ;;
    */engines/*) [ "$(wc -l <"$work/stdout")" -le 24 ] ||
        fail "$config: no terminal shows it at once" ;;
    esac
    [ "$(head -n 10 "$work/stdout" | grep -c "^[TS][a-z]* ring, file to  *[0-9]")" -eq 2 ] ||
        fail "$config: what to file to is not in the first ten lines"
done
for name in $(duties_for "$configs" "$engine"); do
    # past a limit the gap is not the trouble: a verdict, and no other cause
    "$coldgap" find "$engine" --set "duty.name=$name" --quiet \
        >"$work/stdout" 2>"$work/stderr"
    got=$?
    says stdout '^Top ring, file to  *[0-9]'
    grep -q '^NOT SAFE AT ANY GAP: in ' "$work/stdout"
    [ "$got" -eq $((1 - $?)) ] || fail "$name: exit $got"
done
# A skirt clearance given is judged, in a quiet run too; one taken is not.
for quiet in "" -q; do
    # shellcheck disable=SC2086 # a word or none
    expect 1 "$coldgap" find "$engine" --set piston.skirt_clearance_mm=0.06 $quiet
    says stdout '^Your skirt clearance of 0.060 mm.*TOO TIGHT'
    says stdout 'not a warranty'
done
expect 0 "$coldgap" find "$engine" --set margin.skirt_pressure_kPa=10 -q
grep -q 'TOO TIGHT' "$work/stdout" && fail "a clearance nobody gave is judged"
finish
