#!/bin/sh
# Small inputs end soon, and small stacks with a line: files that are none,
# files that include each other many ways, long lists of wrong keys, histories
# without end; and a gap wider than any that a config may give.
#
#   run_small.sh COLDGAP SOURCES
#
# `timeout 300` only keeps a hanging program from hanging the test.
set -u
coldgap=$1
sources=$2
. "$(dirname "$0")/lib.sh"
ulimit -c 0
engine=$sources/configs/engines/iron_six.cfg
measured=$sources/configs/measured/iron_six.csv

# ends STATUS WORDS...: coldgap with these words.
ends() {
    want=$1
    shift
    expect "$want" timeout 300 "$coldgap" "$@"
}
lines() { # FILE NUMBER
    [ "$(wc -l <"$work/$1")" -eq "$2" ] || {
        fail "$1: $2 lines expected"
        head -n 5 "$work/$1"
    }
}

# --- only files are read, and nothing waits for a pipe that no one fills
mkfifo "$work/pipe"
ends 4 find "$work/pipe"
says stderr 'pipe: cannot read: a pipe or a device; a regular file'
lines stderr 1
ends 4 sheet "$engine" --measured "$work/pipe"
says stderr 'pipe: cannot read: a pipe'
ends 4 finish "$engine" --profile "$work/pipe"
says stderr 'pipe: cannot read: a pipe'
ends 4 find /dev/null
says stderr '/dev/null: cannot read: a pipe or a device'
echo '@include "pipe"' >"$work/include.cfg"
cat "$engine" >>"$work/include.cfg"
ends 2 find "$work/include.cfg"
says stderr 'include.cfg:1: error: @include: .*pipe: cannot read: a pipe'
{ cat "$engine"; echo 'evidence_from = "pipe";'; } >"$work/notebook.cfg"
ends 2 find "$work/notebook.cfg"
says stderr 'notebook.cfg:[0-9]*: error: evidence_from: .*pipe: cannot read: a pipe'
echo 'builds = ( { engine = "pipe"; found = ( ); } );' >"$work/builds.cfg"
{ cat "$engine"; echo 'evidence_from = "builds.cfg";'; } >"$work/notebook.cfg"
ends 2 find "$work/notebook.cfg"
says stderr 'builds.cfg:1: error: builds\[0\].engine: .*pipe: cannot read: a pipe'
cp -r "$sources/configs" "$work/configs"
for list in materials/ring_faces duties/dyno_pull; do
    rm "$work/configs/$list.cfg"
    mkfifo "$work/configs/$list.cfg"
    expect 4 timeout 300 env COLDGAP_CONFIGS="$work/configs" "$coldgap" find \
        "$engine"
    says stderr "$list.cfg: cannot read: a pipe"
    rm "$work/configs/$list.cfg"
    cp "$sources/configs/$list.cfg" "$work/configs/$list.cfg"
done
mkdir "$work/resumed" && mkfifo "$work/resumed/sweep.dat"
ends 4 sweep "$engine" --vary fuel.lambda=0.8,0.9 --resume -o "$work/resumed"
says stderr 'sweep.dat: could not write: it is a named pipe'
# What was handed over open is read as it comes.
(sleep 0.2
 cat "$engine") | timeout 300 "$coldgap" find /dev/stdin --quiet \
    >"$work/stdout" 2>"$work/stderr" || fail "a config from stdin is not read"
says stdout '^Top ring, file to'

# --- a config is read to its bounds
mkdir "$work/ways"
for depth in 1 2 3 4 5 6 7 8; do
    for way in 1 2 3 4 5; do
        echo "@include \"$((depth + 1)).cfg\""
    done >"$work/ways/$depth.cfg"
done
echo '# nothing' >"$work/ways/9.cfg"
ends 2 find "$work/ways/1.cfg"
says stderr 'error: more than 100 files included in all'
lines stderr 2
awk 'BEGIN {for (i = 0; i < 60000; i++) print "k" i " = 1;"}' >"$work/keys.cfg"
ends 2 find "$work/keys.cfg"
says stderr 'keys.cfg:201: error: more than 200 settings in one group'
# as many groups as fit, each full of long names
awk 'BEGIN {
    for (g = 0; g < 62; g++) {
        printf "g%d = {", g
        for (i = 0; i < 190; i++)
            printf "a_long_name_that_is_like_no_other_but_for_its_end_%d=1;", i
        print "};"
    }}' >"$work/groups.cfg"
ends 2 find "$work/groups.cfg"
says stderr 'g0: unknown group'
lines stderr 22
awk 'BEGIN {
    printf "ring_materials = ("
    for (g = 0; g < 100; g++) {
        printf "%s{name = \"m%d\";", g ? "," : "", g
        for (i = 0; i < 100; i++)
            printf "a_long_name_that_is_like_no_other_but_for_its_end_%d=1;", i
        print "}"
    }
    print ");"}' >"$work/metals.cfg"
ends 2 find "$work/metals.cfg"
says stderr '^\.\.\. and [0-9]* more$'
lines stderr 22
awk 'BEGIN {for (i = 0; i < 20000; i++)
    print "# a comment that goes on for some sixty letters and says nothing"
    }' >"$work/long.cfg"
cat "$engine" >>"$work/long.cfg"
ends 2 find "$work/long.cfg"
says stderr 'long.cfg:1: error: more than 1048576 bytes in all'
awk 'BEGIN {printf "list = "; for (i = 0; i < 500000; i++) printf "("}' \
    >"$work/deep.cfg"
ends 2 find "$work/deep.cfg"
says stderr 'more than 32 groups and lists inside each other'
yes '# ------------------------------------------------------------' |
    timeout 300 "$coldgap" finish "$engine" --profile /dev/stdin \
        >"$work/stdout" 2>"$work/stderr"
says stderr 'stdin: larger than 256 MB'

# --- a history is no longer than it can be read; the step named would do
grep -v '^duty' "$engine" >"$work/drive.cfg"
cat >>"$work/drive.cfg" <<'END'
duty = { segments = ( { seconds = 600; speed_rpm = 3000; load = 0.5; } ); };
END
ends 2 find "$work/drive.cfg" -q -o "$work/rows" --set solver.table_step_s=0.001
says stderr 'solver.table_step_s: 0.001 s over a duty of 600 s are 600001 rows'
says stderr 'at most 200000 are allowed; 0.0031 s would do'
lines stderr 1
[ -z "$(ls "$work/rows" 2>/dev/null)" ] || fail "tables were begun"
ends 2 find "$work/drive.cfg" -q --report "$work/rows.html" \
    --set solver.table_step_s=0.001
[ -e "$work/rows.html" ] && fail "a page was begun"
# ... which nothing else hangs on
ends 1 ceiling "$work/drive.cfg" --gap 0.2mm -q --set solver.table_step_s=0.001
ends 0 find "$work/drive.cfg" -q --set solver.table_step_s=0.001
sed 's/seconds = 600/seconds = 1.9/' "$work/drive.cfg" >"$work/short.cfg"
ends 0 find "$work/short.cfg" -q -o "$work/rows" --set solver.table_step_s=0.001
[ "$(grep -c '^[0-9]' "$work/rows/history.dat")" -eq 1901 ] ||
    fail "1901 rows of history expected"

# --- a setting is one setting; the same key again stands for the one before
ends 0 find "$engine" -q --set charge.boost_kPa=100 --set charge.boost_kPa=20
says stdout 'boost 20 kPa'

# --- no gap that a config may give: not an answer
far="--set uncertainty.bore_size_mm=1"
none='no gap in range will do: the gap needed'
ends 1 find "$engine" -q $far
tr -s ' \n' ' ' <"$work/stdout" >"$work/words"
says words "Top ring: $none is 10\.[0-9]* mm"
says words "Second ring: $none is 9\.[0-9]* mm"
says words 'at most 8.152 mm (0.3210 in) is allowed'
grep -q 'ring, file to ' "$work/stdout" && fail "a gap out of range is asked for"
gap=$(sed -n 's/.*Top ring: [^,]*needed is \([0-9.]*\) mm.*/\1/p' "$work/words")
ends 2 find "$engine" -q $far --set "rings.top.cold_gap_mm=$gap"
says stderr 'cold_gap_mm: error: must be at most 0.03 of the circumference'
ends 1 find "$engine" -q $far --report "$work/far.html"
grep -q "Top ring: $none" "$work/far.html" || fail "the page does not say it"
ends 1 lesson "$engine" -q $far
says stdout "Top ring: $none"
ends 1 seal "$engine" -q $far
says stdout "Top ring: $none"
says stdout "Second ring: $none"
ends 1 rings "$engine" -q $far --threads 2
says stdout 'It is unfit; no gap in'
grep -q ' fits$' "$work/stdout" && fail "a ring without a gap fits"
ends 1 sheet "$engine" -q $far --measured "$measured"
says stdout "Top ring: $none"
ends 0 sweep "$engine" -q --vary uncertainty.bore_size_mm=0.005,1 \
    -o "$work/far" --threads 2
[ "$(grep -A 1 "^# no answer: top ring: $none" "$work/far/sweep.dat" |
    grep -c ' nan .* out_of_range$')" -eq 1 ] ||
    fail "the row does not say it"
ends 1 sweep "$engine" -q --vary uncertainty.bore_size_mm=0.9,1 \
    -o "$work/far" --threads 2
says stderr "no point of 2 has an answer.*$none"
# the second ring alone, of a metal that grows
cp "$engine" "$work/grows.cfg"
cat >>"$work/grows.cfg" <<'END'
ring_materials = ( { name = "grows"; use = [ "ring" ];
    density_kg_m3 = 7200.0; poisson = 0.25; hot_limit_C = 400.0;
    expansion_C = [ 20.0 ]; expansion_1e6_K = [ 60.0 ];
    conductivity_C = [ 20.0 ]; conductivity_W_mK = [ 45.0 ];
    heat_capacity_C = [ 20.0 ]; heat_capacity_J_kgK = [ 500.0 ];
    modulus_C = [ 20.0 ]; modulus_GPa = [ 110.0 ]; } );
END
ends 1 find "$work/grows.cfg" -q --set uncertainty.bore_size_mm=0.7 \
    --set rings.second.material=grows
says stdout 'Top ring, file to  *7\.'
tr -s ' \n' ' ' <"$work/stdout" >"$work/words"
says words "Second ring: $none is [89]\."
# a top gap that the case gives, and that will do, stands
ends 0 find "$engine" -q --set uncertainty.bore_size_mm=0.7 \
    --set rings.top.cold_gap_mm=8.1
says stdout 'gap of .* fits'
# in a large bore the setting's own band ends before
sed 's/bore_mm = 86.5; stroke_mm = 96.0; rod_mm = 152.0/bore_mm = 400; stroke_mm = 500; rod_mm = 900/
     s/speed_rpm = 6500/speed_rpm = 600/; s/width_mm = 1.2;//; s/width_mm = 1.5;//
     s/width_mm = 3.0;//; s/wall_thickness_mm = 6.0;//' "$engine" >"$work/large.cfg"
ends 1 find "$work/large.cfg" -q $far --set uncertainty.gap_measure_mm=1 \
    --set margin.risk=1e-6 --set margin.residual_mm=4 \
    --set charge.boost_kPa=50
tr -s ' \n' ' ' <"$work/stdout" >"$work/words"
says words "Top ring: $none is 2[0-9]\."
says words 'at most 20.000 mm'

# --- a small stack: it works, or a line says why not.  A sanitized program
# wants more than others.
grep -q __asan_init "$coldgap" && finish

# stack WHAT WORDS...: after a limit has been set; a status of 128 and more is
# a signal.
stack() {
    what=$1
    shift
    timeout 300 "$@" >/dev/null 2>"$work/stderr"
    got=$?
    case $got in
    0 | 1) ;;
    3) grep -q 'stack is limited' "$work/stderr" && lines stderr 1 ||
        fail "$what: $*: not said why" ;;
    *) fail "$what: $*: exit $got" ;;
    esac
}
every() {
    stack "$1" "$coldgap" template
    stack "$1" "$coldgap" find "$engine" -q -o "$work/s" --samples 4 --threads 2
    stack "$1" "$coldgap" find "$sources/configs/engines/taught_four.cfg" -q
    stack "$1" "$coldgap" sweep "$engine" -q -o "$work/s" --threads 2 \
        --vary charge.boost_kPa=0,100
    stack "$1" "$coldgap" ceiling "$engine" --gap 0.5mm -q
    stack "$1" "$coldgap" seal "$engine" -q -o "$work/s"
    stack "$1" "$coldgap" sheet "$engine" -q --measured "$measured" \
        -o "$work/s" --samples 4 --threads 2
    stack "$1" "$coldgap" finish "$engine" -q --simulate plateau -o "$work/s"
    stack "$1" "$coldgap" rings "$engine" -q --threads 2
    stack "$1" "$coldgap" ladder "$engine" -q --duty settled
    stack "$1" "$coldgap" lesson "$engine" -q -o "$work/s"
    stack "$1" "$coldgap" network "$engine" -q -o "$work/s"
    stack "$1" "$coldgap" --version
}
for kilobytes in 64 128 256 512 1024; do
    (
        failed=0
        ulimit -s $kilobytes
        every "$kilobytes kB of stack"
        exit "$failed"
    ) || fail "$kilobytes kB of stack"
done
# Threads have stacks of their own.
for room in 16k 64k 128k 256k 512k 1M; do
    OMP_STACKSIZE=$room
    export OMP_STACKSIZE
    stack "threads of $room" "$coldgap" sweep "$engine" -q -o "$work/s" \
        --threads 2 --vary charge.boost_kPa=0,100
    stack "threads of $room" "$coldgap" find "$engine" -q --samples 4 \
        --threads 2
    stack "threads of $room" "$coldgap" rings "$engine" -q --threads 2
    stack "threads of $room" "$coldgap" sweep -q -o "$work/s" --threads 2 \
        "$sources/configs/engines/taught_four.cfg" \
        --vary combustion.heat_factor=1,1.1
done
finish
