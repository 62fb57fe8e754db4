#!/bin/sh
# Temperatures of a log that teach the model, and a logged run in a notebook.
#
#   run_log_evidence.sh COLDGAP SOURCE
set -u
coldgap=$(realpath "$1")
source=$(realpath "$2")
. "$source/tests/cli/lib.sh"

# A pull of four seconds: the probe lags, and is hottest when the throttle has
# been shut for 0.4 s; a word in line 13 of one column, what cannot be in 14.
mkdir "$work/shop" "$work/mine"
awk 'BEGIN {
    print "t,n,map,lam,EGT,Liner,words,wild,none,EGT F"
    for (i = 0; i <= 60; i++) {
        t = i / 10
        n = t < 4 ? 4000 + 500 * t : 6000 - 400 * (t - 4)
        map = t < 4 ? 220 : 40
        egt = t < 4.4 ? 700 + 50 * t : 920 - 60 * (t - 4.4)
        printf "%.1f,%.0f,%.0f,0.82,%.1f,%.1f,%s,%s,,%.0f\n", t, n, map, egt,
               118 + 3 * t, i == 11 ? "hot" : "1", i == 12 ? "2000" : "1", 32 + 1.8 * egt
    }
}' >"$work/shop/pull.csv"
cat >"$work/shop/pull.cfg" <<'EOF'
duty = { log = "pull.csv";
         columns = { time_s = "t"; speed_rpm = "n"; manifold_kPa = "map";
                     lambda = "lam"; }; };
EOF

# engine FOLDER LINES...: the example, with what the lines say.
engine() {
    folder=$1
    shift
    { sed '/^margin/d; /^duty/d' "$source/configs/example.cfg"
      printf '%s\n' 'margin = { duties = []; };' "$@"; } >"$work/$folder/my.cfg"
}
settled='duty = { name = "settled"; };'

# entry FOLDER DUTY ENTRY: the example with one entry.
entry() {
    engine "$1" "$2" "evidence = ( { $3 } );"
}

# A probe is read where it was highest, the engine held as it ran before that;
# a body's highest stands beside the model's of the run.
engine shop "$settled" 'evidence = (' \
    '{ what = "exhaust_probe"; column_C = "EGT"; duty = "pull"; },' \
    '{ what = "liner"; depth_mm = 10.0; column_C = "Liner";' \
    '  how = "thermocouple"; spread_K = 30.0; duty = "pull"; } );'
expect 0 "$coldgap" find "$work/shop/my.cfg" -o "$work/out"
flat <"$work/stdout" >"$work/flat"
says flat 'exhaust_probe: highest of "EGT" in pull.csv, 920 C at 4.4 s of the log'
says flat 'liner: highest of "Liner" in pull.csv, 136 C at 6 s of the log'
held=$(sed -n 's|.*engine held[^:]*: \([0-9]*\) rpm, \([0-9]*\) % .*|\1 \2|p' \
    "$work/flat")
# means of 1.4 to 3.9 s, and not of the shut throttle after it
echo "$held" | awk '{ exit !($1 > 5000 && $1 < 5600 && $2 > 95 && $2 < 102) }' ||
    fail "held at $held"
awk '/^exhaust_probe/ { on = $2 == 920 } END { exit !on }' "$work/out/evidence.dat" ||
    fail "evidence.dat: $(grep exhaust_probe "$work/out/evidence.dat")"

# The same typed by hand teaches the same: at what the log says, held.
set -- $held
entry shop "$settled" 'what = "exhaust_probe"; column_C = "EGT"; duty = "pull";'
expect 0 "$coldgap" find "$work/shop/my.cfg" -q -o "$work/out"
by_log=$(awk '/^exhaust_probe/ { print $4 }' "$work/out/evidence.dat")
entry shop "$settled" "what = \"exhaust_probe\"; temperature_C = 920.0;
    speed_rpm = $1; load = $(echo "$2" | awk '{ print ($1 > 100 ? 100 : $1) / 100 }');"
expect 0 "$coldgap" find "$work/shop/my.cfg" -q -o "$work/out"
by_hand=$(awk '/^exhaust_probe/ { print $4 }' "$work/out/evidence.dat")
awk -v a="$by_log" -v b="$by_hand" 'BEGIN { exit !(a - b < 4 && b - a < 4) }' ||
    fail "model before: $by_log C of the log, $by_hand C by hand"

# The config's own log, by a key in F; and asked of another folder.
entry shop "$(cat "$work/shop/pull.cfg")" 'what = "exhaust_probe"; column_F = "EGT F";'
expect 0 env -C "$work" "$coldgap" find shop/my.cfg -q -o out
awk '/^exhaust_probe/ { on = $2 > 919.9 && $2 < 920.1 } END { exit !on }' \
    "$work/out/evidence.dat" || fail "1688 F is not 920 C"

# refused TEXT ENTRY: one line, with file and line.
refused() {
    entry shop "$settled" "$2"
    expect 2 "$coldgap" find "$work/shop/my.cfg"
    says stderr "$1"
    grep -q ':[0-9]*: error: ' "$work/stderr" || fail "no place: $1"
    [ "$(grep -c error: "$work/stderr")" -eq 1 ] ||
        fail "not one line: $(cat "$work/stderr")"
}
probe='what = "exhaust_probe"; duty = "pull";'
refused 'column_C: does not go with a temperature, one of' \
    "$probe column_C = \"EGT\"; temperature_C = 900.0;"
refused 'column_F: given twice' "$probe column_C = \"EGT\"; column_F = \"EGT\";"
refused "column_C: must be the column's heading in quotes" "$probe column_C = 4;"
refused 'pull.csv:1: error: EGR: no such heading for column_C, the nearest is EGT' \
    "$probe column_C = \"EGR\";"
refused 'pull.csv:13: error: words: .*(got hot)' "$probe column_C = \"words\";"
refused 'pull.csv:14: error: wild: cannot be, -40 to 1300 C.*(got 2000)' \
    "$probe column_C = \"wild\";"
refused 'pull.csv:2: error: none: no value in the whole run' \
    "$probe column_C = \"none\";"
refused 'at_s: does not go with a column' "$probe column_C = \"EGT\"; at_s = 2.0;"
refused 'speed_rpm: does not go with a column' \
    "$probe column_C = \"EGT\"; speed_rpm = 5000;"
refused 'column_C: is of a log, and this duty is none' \
    'what = "exhaust_probe"; column_C = "EGT"; duty = "drag_pass";'
refused 'column_C: goes with a temperature alone' \
    'what = "coolant_share"; share_pct = 20.0; column_C = "EGT"; duty = "pull";'
refused 'how: does not go with a column, which reads' \
    'what = "crown"; how = "hardness"; column_C = "Liner"; duty = "pull";'
refused 'must be at most 700 C for metal' \
    'what = "crown"; how = "thermocouple"; column_C = "EGT"; duty = "pull";'
refused 'column_C: goes with a temperature alone' \
    'touched = false; cold_gap_mm = 0.5; column_C = "EGT"; duty = "pull";'

# A run without contact in a notebook, with its log: duty and column are taken
# from the notebook's folder.
cat >"$work/shop/shop.cfg" <<'EOF'
builds = ( { engine = "../mine/my.cfg"; date = "2026-03-14";
  found = ( { touched = false; cold_gap_mm = 0.06; duty = "pull"; },
            { what = "exhaust_probe"; column_C = "EGT"; duty = "pull"; } ); } );
EOF
engine mine "$settled" 'evidence_from = "../shop/shop.cfg";'
expect 0 "$coldgap" find "$work/mine/my.cfg" -o "$work/out"
flat <"$work/stdout" >"$work/flat"
says flat 'From the notebook shop.cfg'
says flat 'did not touch 0.060'
says flat 'highest of "EGT" in pull.csv'
awk '$1 == "ends_apart" { on = $2 == 0.06 && $5 > $4 } END { exit !on }' "$work/out/evidence.dat" ||
    fail "no contact taught nothing: $(grep ends "$work/out/evidence.dat")"
# The log is what counts: as run slower it says less.
sed -i 's/"pull"/"cruise"/' "$work/shop/shop.cfg"
sed 's/pull\.csv/cruise.csv/' "$work/shop/pull.cfg" >"$work/shop/cruise.cfg"
awk -F, 'BEGIN { OFS = "," } NR > 1 { $2 *= 0.6; $3 *= 0.5; $4 = 1.0 } { print }' \
    "$work/shop/pull.csv" >"$work/shop/cruise.csv"
sed -i 's/column_C = "EGT"/temperature_C = 920.0; speed_rpm = 6000; load = 1.0/
        /exhaust/s/duty = "cruise";//' "$work/shop/shop.cfg"
cp "$work/out/evidence.dat" "$work/hard.dat"
expect 0 "$coldgap" find "$work/mine/my.cfg" -q -o "$work/out"
awk '$1 == "ends_apart" { print $4 }' "$work/out/evidence.dat" "$work/hard.dat" |
    awk '{ v[NR] = $1 } END { exit !(v[1] > v[2] + 0.01) }' ||
    fail "an easier log: $(cat "$work/out/evidence.dat" "$work/hard.dat")"
# Nowhere but there, and a column needs a duty there.
rm "$work/shop/cruise.cfg"
cp "$work/shop/pull.cfg" "$work/mine/cruise.cfg"
expect 2 "$coldgap" find "$work/mine/my.cfg"
says stderr 'shop.cfg:2: error: builds\[0\].found\[0\].duty: unknown "cruise"'
cat >"$work/shop/shop.cfg" <<'EOF'
builds = ( { engine = "../mine/my.cfg";
  found = ( { what = "exhaust_probe"; column_C = "EGT"; } ); } );
EOF
engine mine "$(sed 's/pull\.csv/..\/shop\/pull.csv/' "$work/shop/pull.cfg")" \
    'evidence_from = "../shop/shop.cfg";'
expect 2 "$coldgap" find "$work/mine/my.cfg"
says stderr 'duty: missing; a column is of the log that duty names'

# Loads of a log are of the boost of that run: the same manifold, one answer.
for boost in 120 160; do
    entry shop "$settled" "what = \"exhaust_probe\"; column_C = \"EGT\";
        duty = \"pull\"; boost_kPa = $boost.0;"
    expect 0 "$coldgap" find "$work/shop/my.cfg" -q -o "$work/out"
    awk '/^exhaust_probe/ { print $4 }' "$work/out/evidence.dat" >>"$work/both"
done
awk '{ v[NR] = $1 } END { d = v[1] - v[2]; exit !(NR == 2 && d * d < 1) }' \
    "$work/both" ||
    fail "another boost moves what the manifold had: $(cat "$work/both")"
finish
