#!/bin/sh
# `rings`: the table's columns, the same bytes whatever the threads, materials
# and faces of a user's own, and what the screen says.
#
#   run_rings.sh COLDGAP SOURCES
set -u
coldgap=$1
sources=$2
. "$(dirname "$0")/lib.sh"
engine=$sources/configs/engines/iron_six.cfg

expect 0 "$coldgap" rings "$engine" -o "$work/one" --threads 1
grep -v '^Computed in' "$work/stdout" >"$work/one.screen"
[ -s "$work/stderr" ] && fail "words on stderr"
expect 0 "$coldgap" rings "$engine" -o "$work/three" --threads 3
diff -r "$work/one" "$work/three" || fail "three threads: other tables"
grep -v '^Computed in' "$work/stdout" | cmp - "$work/one.screen" ||
    fail "three threads: another screen"

cp "$work/one.screen" "$work/stdout"
says stdout '^  Peak pressure .* bar'
says stdout '^  Pressure rise at most .* bar/deg, .*no knock'
says stdout 'Larson-Miller'
says stdout '15\. plain_steel, bare (yours)'
says stdout '^Best of 15 top rings: .*fits'
says stdout '^Number 15 of 15 top rings: plain_steel, bare (yours)'
says stdout 'knock'
says stdout 'not a warranty'
says stdout '^    4032  *[0-9.]* *[0-9.]* *[0-9.]* *[0-9.]* *\(below\|in\|above\)$'
awk 'length > 80 {print; bad = 1} END {exit bad}' "$work/one.screen" ||
    fail "lines wider than 80"

# Brief: the best and your own, on one screen; JSON: the whole ranking.
expect 0 "$coldgap" rings "$engine" -q
says stdout '^Number 15 of 15 top rings'
says stdout '^With it, file to .*mm'
[ "$(wc -l <"$work/stdout")" -le 24 ] || fail "-q: more than a screen"
expect 0 "$coldgap" rings "$engine" --json
says stdout '\["15\. plain_steel, bare (yours)", "[a-z]*", 0\.000[0-9]*, "[0-9]*->*[0-9]*"\]'

# What rests on bands is told as one.
expect 0 "$coldgap" rings "$engine" -q
tr -s '\n ' ' ' <"$work/stdout" |
    grep -q 'It fits to a boost of some \(over\|[0-9]* to\) [over ]*[0-9]*0 kPa' ||
    fail "no band of boosts"

# Duties to survive beside the one asked for: no ring fits to more, some to less.
expect 0 "$coldgap" rings "$engine" -o "$work/alone" -q --set margin.duties=
for folder in one alone; do
    grep -v '^#' "$work/$folder/rings.dat" | awk '{print $1, $2, $6}' | sort \
        >"$work/$folder.boost"
done
paste -d ' ' "$work/one.boost" "$work/alone.boost" |
    awk '$1 != $4 || $2 != $5 || $3 > $6 + 0.5 {bad = 1; print}
         $3 < $6 - 0.5 {less = 1} END {exit bad || !less}' ||
    fail "rings over the list of duties"

table=$work/one/rings.dat
head -n 3 "$table" | grep -q '^# .*not a warranty' || fail "no caution"
grep -q '^# material  face  cold_gap_mm  ring_top_C  tension_left_pct  stops_fitting_kPa  verdict' \
    "$table" || fail "columns of rings.dat"
awk '!/^#/ {n++; if ($7 != "fits" && $7 != "marginal" && $7 != "unfit") bad = 1
            if (!($3 > 0.1 && $3 < 1 && $4 > 120 && $4 < 300 && $5 > 50 &&
                  $5 < 100 && $6 >= 0 && $6 <= 600)) bad = 1}
     END {exit bad || n < 15}' "$table" || fail "rows of rings.dat"
for ring in "grey_iron_ring sprayed_molybdenum" "ductile_iron_ring chromium" \
    "plain_steel vapour_crn" "nitrided_stainless nitrided" "plain_steel bare"; do
    grep -q "^$ring " "$table" || fail "no $ring"
done
[ "$(grep -vc '^#' "$work/one/pistons.dat")" -eq 5 ] || fail "piston alloys"

# More boost, no better: nothing that was unfit fits.
expect 0 "$coldgap" rings "$engine" -o "$work/more" -q \
    --set charge.boost_kPa=400
for folder in one more; do
    grep -v '^#' "$work/$folder/rings.dat" | awk '{print $1, $2, $7}' | sort \
        >"$work/$folder.verdict"
done
paste -d ' ' "$work/one.verdict" "$work/more.verdict" |
    awk 'BEGIN {r["fits"] = 0; r["marginal"] = 1; r["unfit"] = 2}
         $1 != $4 || $2 != $5 || r[$6] < r[$3] {bad = 1}
         r[$6] > r[$3] {worse = 1} END {exit bad || !worse}' ||
    fail "more boost, better verdicts"

# A user's material takes part: bare without a kind, with it in every coat.
cat >"$work/mine.cfg" <<EOF
engine = { bore_mm = 86.0; stroke_mm = 86.0; speed_rpm = 6500; };
charge = { boost_kPa = 100.0; };
rings = { top = { material = "mine"; face = "my_coat"; }; };
ring_materials = (
  { name = "mine"; use = [ "ring" ]; density_kg_m3 = 7800; poisson = 0.3;
    expansion_C = [ 100.0, 300.0 ]; expansion_1e6_K = [ 11.0, 12.0 ];
    conductivity_C = [ 20.0 ]; conductivity_W_mK = [ 30.0 ];
    heat_capacity_C = [ 20.0 ]; heat_capacity_J_kgK = [ 460.0 ];
    modulus_C = [ 20.0 ]; modulus_GPa = [ 205.0 ];
    hot_limit_C = 300.0; } );
ring_faces = (
  { name = "my_coat"; on = [ "mine" ]; temperature_C = [ 300, 400 ];
    peak_pressure_bar = [ 150, 190 ]; peak_rise_bar_deg = [ 4.0, 6.5 ];
    thickness_um = 10; conductivity_W_mK = 5.0; failure = "unknown yet"; } );
EOF
expect 0 "$coldgap" rings "$work/mine.cfg" -o "$work/mine"
says stdout 'mine, my_coat (yours)'
says stdout 'unknown yet'
[ "$(grep -c '^mine ' "$work/mine/rings.dat")" -eq 2 ] || fail "mine: not two"
sed -i 's/poisson = 0.3;/poisson = 0.3; kind = "steel";/' "$work/mine.cfg"
expect 0 "$coldgap" rings "$work/mine.cfg" -o "$work/mine" -q
[ "$(grep -c '^mine ' "$work/mine/rings.dat")" -eq 6 ] || fail "mine as steel"

# An unboosted engine is looked at with a turbine, and says so.
expect 0 "$coldgap" rings "$sources/configs/engines/plain_four.cfg"
says stdout 'this engine has no charger'

# Where nothing stands it, the answer is: not safe.
expect 1 "$coldgap" rings "$engine" --set charge.boost_kPa=600 \
    --set combustion.heat_factor=2 --set rings.top.service_h=20000 -q
says stdout 'unfit'

# find: the piston's own margin, and its table.
expect 0 "$coldgap" find "$engine" -o "$work/find"
says stdout 'Cold skirt clearance by this model'
one_line() { tr -s '\n ' '  ' <"$work/stdout"; }
# What the words about a skirt say is what the table says, for every alloy.
expect 0 "$coldgap" rings "$engine" -o "$work/alloys"
says stdout 'coldgap does not size skirts'
grep -v '^#' "$work/alloys/pistons.dat" | while read -r alloy cold _ _ _ low high _; do
    lies=$(awk -v c="$cold" -v l="$low" -v h="$high" \
        'BEGIN {print (c < l ? "below" : c > h ? "above" : "in")}')
    "$coldgap" find "$engine" --set piston.alloy="$alloy" >"$work/stdout" 2>&1
    one_line | grep -q "coldgap does not size skirts: .* lies $lies that band" ||
        echo "find, $alloy: $cold of $low to $high"
    grep -q 'errs to the wide side' "$work/stdout" && echo "$alloy: wide side"
done >"$work/wrong"
[ ! -s "$work/wrong" ] || fail "$(cat "$work/wrong")"
awk '!/^#/ {n++; if (!($3 > 0.1 && $6 > 0.03 && $7 > 0.1)) bad = 1}
     END {exit bad || n < 100}' "$work/find/clearance.dat" ||
    fail "clearance.dat"
expect 0 "$coldgap" find "$engine" --set piston.skirt_clearance_mm=0.4
says stdout '^  Your skirt clearance: 0.400 mm .*This model wants no more'
finish
