#!/bin/sh
# Sweeps: the same bytes whatever the threads, the parts or a stop in between.
#
#   run_sweep.sh COLDGAP SOURCES
set -u
coldgap=$1
sources=$2
. "$(dirname "$0")/lib.sh"
config=$sources/configs/engines/plain_four.cfg
vary="--vary charge.boost_kPa=0:100:20 --vary rings.top.material=plain_steel,grey_iron_ring"

# sweep FOLDER WORDS...
sweep() {
    folder=$1
    shift
    # shellcheck disable=SC2086 # a list of words
    "$coldgap" sweep "$config" --set charge.charger=turbine $vary \
        -o "$work/$folder" --quiet "$@" 2>"$work/stderr"
}
same() {
    cmp -s "$work/$1" "$work/whole/sweep.dat" || fail "$2: other bytes"
}

sweep whole --threads 1 || fail "sweep: exit $?"
rows=$(grep -c -v '^#' "$work/whole/sweep.dat")
[ "$rows" -eq 12 ] || fail "12 rows expected, got $rows"
grep -v '^#' "$work/whole/sweep.dat" | grep -v ' ok$' && fail "rows not ok"

sweep two --threads 2
same two/sweep.dat "two threads"

for k in 1 2 3 4 5; do
    sweep parts --part $k/5 || fail "part $k: exit $?"
done
cat "$work"/parts/sweep_?_of_5.dat >"$work/parts/sweep.dat"
for table in parts whole; do
    grep -v '^#' "$work/$table/sweep.dat" >"$work/$table.rows"
done
cmp -s "$work/parts.rows" "$work/whole.rows" || fail "five parts: other rows"
# Each part is a table by itself, with the whole one's head.
head -n 9 "$work/whole/sweep.dat" >"$work/head"
for k in 1 2 3 4 5; do
    head -n 9 "$work/parts/sweep_${k}_of_5.dat" | cmp -s - "$work/head" ||
        fail "part $k: another head"
done
sweep parts --resume || fail "resume of joined parts: exit $?"
same parts/sweep.dat "resumed from joined parts"

# A table cut short goes on where it ends.
mkdir "$work/cut"
head -n 13 "$work/whole/sweep.dat" >"$work/cut/sweep.dat"
sweep cut --resume || fail "resume: exit $?"
same cut/sweep.dat "resumed"
sweep cut --resume || fail "resume of a whole table: exit $?"
same cut/sweep.dat "resumed when whole"

# A row cut short is computed again, and so is what a killed run left aside.
head -n 13 "$work/whole/sweep.dat" | head -c -40 >"$work/cut/sweep.dat"
sweep cut --resume || fail "resume of a torn table: exit $?"
same cut/sweep.dat "resumed from a torn row"
head -n 13 "$work/whole/sweep.dat" | head -c -40 >"$work/cut/sweep.dat.part"
rm "$work/cut/sweep.dat"
sweep cut --resume || fail "resume of a killed run: exit $?"
same cut/sweep.dat "resumed from what was left aside"
[ -e "$work/cut/sweep.dat.part" ] && fail "what was left aside stays"

# What another sweep left aside takes no table's place.
cp "$work/whole/sweep.dat" "$work/cut/sweep.dat"
sed 's/=/==/' "$work/whole/sweep.dat" >"$work/cut/sweep.dat.part"
echo 1 >>"$work/cut/sweep.dat.part"
sweep cut --resume || fail "resume beside another's part: exit $?"
same cut/sweep.dat "beside another's part"

# What stands in the config now must give the rows that are there.
sed 's/speed_rpm *= *[0-9]*/speed_rpm = 4321/' "$config" >"$work/changing.cfg"
cmp -s "$config" "$work/changing.cfg" && fail "no speed to change"
for speed in 4321 4322; do
    sed -i "s/speed_rpm *= *[0-9]*/speed_rpm = $speed/" "$work/changing.cfg"
    "$coldgap" sweep "$work/changing.cfg" --vary fuel.lambda=0.8,0.9,1 \
        -o "$work/changed" --resume --quiet 2>"$work/stderr"
    got=$?
    [ $speed = 4321 ] || [ $got -eq 2 ] || fail "another engine: exit $got"
done
grep -q 'row 1 of the table there is not' "$work/stderr" ||
    fail "another engine: not said"

# A table of another sweep is not taken over, and stays as it is.
"$coldgap" sweep "$config" --vary fuel.lambda=0.8,0.9 -o "$work/cut" \
    --resume --quiet 2>/dev/null
[ $? -eq 2 ] || fail "another sweep's table: exit 2 expected"
same cut/sweep.dat "refused"

# A point that cannot be computed is a row with its reason.
expect 0 "$coldgap" sweep "$config" --vary engine.compression_ratio=10,99 \
    -o "$work/bad" --quiet
says stdout '1 of 2 points without an answer; the first: --set'
grep -A 1 '^# no answer: .*must be' "$work/bad/sweep.dat" |
    grep -q '^99 nan .* not_allowed$' || fail "no reason above the row"
grep -q '^10 .* ok$' "$work/bad/sweep.dat" || fail "the good point is not ok"
# The reason is taken over with its row, and asked for again without it.
cp "$work/bad/sweep.dat" "$work/bad/first"
expect 0 "$coldgap" sweep "$config" --vary engine.compression_ratio=10,99 \
    -o "$work/bad" --quiet --resume
cmp -s "$work/bad/sweep.dat" "$work/bad/first" || fail "the reason is lost"
sed -i '/^# no answer/d' "$work/bad/sweep.dat"
expect 2 "$coldgap" sweep "$config" --vary engine.compression_ratio=10,99 \
    -o "$work/bad" --quiet --resume

expect 0 "$coldgap" sweep "$config" --vary engine.compression_ratio=10,99 \
    -o "$work/bad" --json
says stdout '"points": {"value": 2,'
says stdout '\["10", [0-9.e-]*, [0-9.e-]*, "[a-z]*", [0-9.e-]*, "[a-z_]*", [0-9.]*\], \["99", null, null, "-", null, "-", null\]'
# Two settings of one name are told apart.
expect 0 "$coldgap" sweep "$config" --vary rings.top.material=plain_steel \
    --vary rings.second.material=plain_steel -o "$work/bad"
says stdout '^    rings.top.material  rings.second.material   *Top  Second  from '

# An interrupt leaves the finished rows, and says how to go on.
"$coldgap" sweep "$config" --vary fuel.lambda=0.8:1.0:0.0001 -o "$work/stop" \
    --quiet 2>"$work/stderr" &
sleep 1
kill -INT $! 2>/dev/null
wait $!
[ $? -eq 3 ] || fail "interrupt: exit 3 expected"
grep -q -e '--resume' "$work/stderr" || fail "interrupt: no word of --resume"
grep -v '^#' "$work/stop/sweep.dat" | grep -v ' ok$' && fail "a torn row"
[ -z "$(find "$work" -name '*.part')" ] || fail "a part is left"

for words in "--vary nonsense" "--vary charge.bost_kPa=1,2" \
    "--vary fuel.lambda=1:2:0" "--vary fuel.lambda=1:2:-0.1" "--part 3/2" \
    "--threads 0" ""; do
    # shellcheck disable=SC2086
    "$coldgap" sweep "$config" $words -o "$work/no" >/dev/null 2>"$work/stderr"
    [ $? -eq 2 ] || fail "sweep $words: exit 2 expected"
    [ "$(wc -l <"$work/stderr")" -eq 1 ] || fail "sweep $words: one line"
done
finish
