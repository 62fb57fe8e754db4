#!/bin/sh
# Logged runs: the shipped ones, one made from a shipped duty, a long one, and
# more segments than a duty once held.
#
#   run_log.sh COLDGAP SOURCE
set -u
coldgap=$1
source=$2
. "$source/tests/cli/lib.sh"
logs=$source/configs/logs

# engine NAME LINES...: the example with the duty that the lines give.
engine() {
    name=$1
    shift
    sed '/^duty/d; /^margin/d' "$source/configs/example.cfg" >"$work/$name.cfg"
    printf '%s\n' "$@" 'margin = { duties = []; };' >>"$work/$name.cfg"
}

# The shipped pull, with the shipped lap beside it.
expect 0 "$coldgap" find "$logs/logged_four.cfg" -o "$work/pull"
says stdout 'pull.csv: 761 lines, 0 to 38 s'
says stdout 'lap.csv: 1005 lines'
grep -q '^lap ' "$work/pull/duties.dat" || fail "the lap is none of the duties"
grep -q '^# block: tightest' "$work/pull/log.dat" || fail "log.dat: no block"
awk '/^# block: tightest/ { on = 1; next } on && NF { exit !($1 > 22 && $1 < 23) }' \
    "$work/pull/log.dat" || fail "not tightest where the throttle was shut"
tight=$(of "$work/pull/summary.dat" tightest_time)
awk -v t="$tight" 'BEGIN { exit !(t > 15 && t < 20) }' ||
    fail "tightest at $tight s: not where the throttle was shut"

# The lap alone, as the duty of a config beside it.
expect 0 "$coldgap" find "$logs/logged_four.cfg" --duty lap -q -o "$work/lap"

# The broken one: eight lines, each its own.
sed 's/pull\.csv/broken.csv/; s/MAP (kPa)/Boost (kPa)/; s/manifold_kPa/boost_kPa/
     /burn50_deg/s/burn50_deg = [^;]*;//; /oil_C/d' "$logs/logged_four.cfg" |
    sed 's/\(coolant_C = "ECT (C)";\)/\1 }; };/' >"$work/broken.cfg"
cp "$logs/broken.csv" "$logs/lap.csv" "$logs/lap.cfg" "$work"
expect 2 "$coldgap" find "$work/broken.cfg"
for line in 6 7 8 9 10 11 12 13; do
    [ "$(grep -c "broken.csv:$line: error: " "$work/stderr")" -eq 1 ] ||
        fail "line $line of the broken log is not told once"
done
[ "$(wc -l <"$work/stderr")" -eq 9 ] || fail "more or less than eight lines"

# A log made from a shipped duty answers as the duty does: the history of the
# run is the log.
for duty in dyno_pull drag_pass road_lap tow_grade; do
    file=$source/configs/duties/$duty.cfg
    engine own "duty = { name = \"$duty\"; };"
    expect 0 "$coldgap" find "$work/own.cfg" -q -o "$work/own" \
        --set solver.table_step_s=0.02
    cp "$work/own/history.dat" "$work/run.log"
    start=$(sed -n 's/^ *\(start = [^;]*;\).*/\1/p' "$file")
    cruise=$(sed -n 's/^ *\(cruise_load = [^;]*;\).*/\1/p' "$file")
    engine logged "duty = { log = \"run.log\"; $start $cruise" \
        'columns = { time_s = "time_s"; speed_rpm = "speed_rpm";' \
        'manifold_kPa = "manifold_kPa"; }; };'
    expect 0 "$coldgap" find "$work/logged.cfg" -q -o "$work/logged"
    for figure in closure_top spread_top; do
        asked=$(of "$work/own/summary.dat" $figure)
        logged=$(of "$work/logged/summary.dat" $figure)
        near "$asked" "$logged" 1 ||
            fail "$duty: $figure $asked of the duty, $logged of its log"
    done
done

# 100,000 lines: a thousand seconds of laps, with noise on them.
awk 'BEGIN {
    print "time,rpm,map,lambda,ca50"
    rpm = 3000; map = 60; seed = 1
    for (i = 0; i < 100000; i++) {
        t = i / 100; lap = t % 30
        want = lap < 12 ? 3500 + 260 * lap : lap < 17 ? 6000 - 400 * (lap - 12) \
             : 3800 + 190 * (lap - 17)
        load = lap < 12 ? 1 : lap < 17 ? 0 : 0.7
        rpm += (want - rpm) * 0.05
        map += (35 + load * 186 - map) * 0.03
        seed = (seed * 16807) % 2147483647
        noise = seed / 1073741823.5 - 1
        lambda = map < 110 ? 1 : 1 - 0.18 * (map - 110) / 111
        burn = map < 110 ? 9 : 9 + 11 * (map - 110) / 111
        printf "%.2f,%.0f,%.2f,%.3f,%.2f\n", t, rpm + 9 * noise,
               map + 0.9 * noise, lambda + 0.005 * noise, burn + 0.3 * noise
    }
}' >"$work/long.csv"
engine long 'duty = { log = "long.csv"; columns = { time_s = "time";' \
    'speed_rpm = "rpm"; manifold_kPa = "map"; lambda = "lambda";' \
    'burn50_deg = "ca50"; }; };'
expect 0 "$coldgap" find "$work/long.cfg" -o "$work/long"
flat <"$work/stdout" >"$work/flat"
says flat 'long.csv: 100000 lines'
says flat 'closure moves by less than 1 um'

# A winding minute and a half that the usual map leaves more than 1 um out of:
# it is run finer, and less is left.
awk 'BEGIN {
    print "t,n,load"
    for (i = 0; i <= 180; i++)
        printf "%.1f,%.0f,%.1f\n", i / 2, 5100 + 720 * sin(0.155 * i),
               75 + 25 * cos(0.25 * i)
}' >"$work/winding.csv"
engine winding 'duty = { log = "winding.csv"; start = "settled";' \
    'columns = { time_s = "t"; speed_rpm = "n"; load_pct = "load"; }; };'
expect 0 "$coldgap" find "$work/winding.cfg" -o "$work/winding"
flat <"$work/stdout" >"$work/flat"
says flat 'Run finer than usual'
grep -q 'by more than 1 um' "$work/flat" && fail "more than 1 um is left out"
# So is every point of a sweep: the same closure as found for it alone.
expect 0 "$coldgap" sweep "$work/winding.cfg" -q -o "$work/winding" \
    --vary charge.boost_kPa=120,121
found=$(awk '$1 == "closure_top" {print $2}' "$work/winding/summary.dat")
swept=$(awk 'NR == 1 {for (i = 2; i <= NF; i++) # after the "#"
        if ($i == "closure_top_mm") at = i - 1}
    /^120 / {print $at}' "$work/winding/sweep.dat")
[ -n "$swept" ] && [ "$swept" = "$found" ] ||
    fail "a sweep's closure is ${swept:-none}, alone it is $found"

# 10,000 segments.
awk 'BEGIN {
    print "duty = { segments = ("
    speed = 4500; load = 0.7
    for (i = 0; i < 10000; i++) {
        next_speed = 4500 + 2000 * sin(i * 0.035) + 300 * sin(i * 0.155)
        next_load = 0.7 + 0.6 * sin(i * 0.0215)
        next_load = next_load > 1 ? 1 : next_load < 0 ? 0 : next_load
        printf "{ seconds=0.05; speed_rpm=%.1f; speed_end_rpm=%.1f; load=%.4f; load_end=%.4f; }%s\n",
               speed, next_speed, load, next_load, i < 9999 ? "," : ""
        speed = next_speed; load = next_load
    }
    print "); };"
}' >"$work/segments.txt"
engine many "$(cat "$work/segments.txt")"
expect 0 "$coldgap" find "$work/many.cfg" -o "$work/many"
flat <"$work/stdout" >"$work/flat"
says flat 'closure moves by less than 1 um'

finish
