#!/bin/sh
# `ladder --write`: what is written is what is told, where it may be written,
# and that nothing is left where all is not well.
#
#   run_ladder_write.sh COLDGAP SOURCES
set -u
coldgap=$(realpath "$1")
sources=$(realpath "$2")
. "$(dirname "$0")/lib.sh"
engines=$sources/configs/engines
cd "$work" || exit 1

# value, answer FILE KEY: of a report in JSON, the latter in mm as shown.
# gap FILE N: the Nth gap of a config [mm].
value() {
    sed -n "s/^ *\"$2\": {\"value\": \([-0-9.e+]*\).*/\1/p" "$1"
}
answer() {
    sed -n "s/.*\"is\": \"answer\", \"key\": \"$2\",.*\"metric\": \"\([0-9.]*\) mm\".*/\1/p" "$1"
}
gap() {
    sed -n 's/^ *cold_gap_mm = \([0-9.]*\);.*/\1/p' "$1" | sed -n "$2p"
}
no_part() {
    grep -F .part stdout stderr && fail "$1: a part is named"
    [ -z "$(find . -name '*.part')" ] || fail "$1: a part is left"
}

# What was written stands in the report, also in the brief one and in JSON; no
# gap to file to is smaller than the written one, evidence or none.
for engine in iron_six touched_six shop_four taught_four; do
    expect 0 "$coldgap" ladder "$engines/$engine.cfg" --duty settled \
        --to 180kPa -q --write new.cfg
    says stdout '^new.cfg: written, and read back; find passes it\.'
    cp stdout brief
    expect 0 "$coldgap" ladder "$engines/$engine.cfg" --duty settled \
        --to 180kPa --json --write new.cfg
    cp stdout json
    for n in 1:top 2:second; do
        same "$engine: the ${n#*:} gap to file to" \
            "$(answer json "file_to_${n#*:}")" "$(gap new.cfg "${n%:*}")"
        for key in "written_gap_${n#*:}" "file_to_${n#*:}_after"; do
            awk -v told="$(value json "$key")" \
                -v is="$(gap new.cfg "${n%:*}")" 'BEGIN {
                exit !(told > 0 && (told - is)^2 < 1e-12)}' ||
                fail "$engine: the written ${n#*:} gap is another in $key"
        done
    done
    same "$engine: on the screen" "$(shown brief 'Top ring')" \
        "$(gap new.cfg 1)"
    same "$engine: stands" "$(value json written_stands)" 1
    left=$(value json written_evidence_left_out)
    same "$engine: evidence left out" "$left" \
        "$([ $engine = iron_six ] && echo 0 || echo 1)"
done

# Evidence of a cooler piston lets a skirt stand that the written config, which
# has none, does not: the answer is no, and says so.
{
    cat "$engines/iron_six.cfg"
    echo 'evidence = ( { what = "groove_top"; temperature_C = 240.0;'
    echo '    how = "thermal_plug"; duty = "settled"; } );'
} >cool.cfg
skirt=piston.skirt_clearance_mm=0.125
expect 0 "$coldgap" ladder cool.cfg --duty settled -q --to 150kPa --set $skirt
expect 1 "$coldgap" ladder cool.cfg --duty settled -q --to 150kPa \
    --set $skirt --write cold.cfg
flat <stdout | grep -q -F 'cold.cfg: written, and read back, and find does NOT pass it: its skirt clearance is TOO TIGHT' ||
    fail "a written config that does not stand is not told as one"
expect 1 "$coldgap" find cold.cfg -q

# Beside the build before: what evidence has moved is no change of the build.
expect 0 "$coldgap" ladder "$engines/touched_six.cfg" --duty settled -q \
    --to 180kPa --from "$engines/touched_six.cfg" -o from
same "changes of the build" \
    "$(awk '!/^#/ {printf "%s%s", n++ ? " " : "", $1}' from/build_changes.dat)" \
    'charge.boost_kPa rings.top.face duty.name duty.start margin.duties'
awk '!/^#/ && $2 == $3' from/build_changes.dat | grep . &&
    fail "changes that change nothing"

# Files of the config's own folder are others in another folder: refused, in one
# line and ahead of the climb.
mkdir here there
cp "$sources/configs/duties/settled.cfg" here/mine.cfg
sed '/^duty/d' "$engines/iron_six.cfg" >here/plain.cfg
{
    cat here/plain.cfg
    echo 'duty = { name = "mine"; };'
} >here/duty.cfg
{
    sed '/^margin/d' here/plain.cfg
    echo 'duty = { name = "settled"; };'
    echo 'margin = { duties = [ "mine" ]; };'
} >here/survive.cfg
{
    cat here/plain.cfg
    echo 'duty = { log = "pull.csv"; columns = { time_s = "t";'
    echo '    speed_rpm = "n"; boost_kPa = "p"; }; };'
} >here/log.cfg
awk 'BEGIN {print "t,n,p"
    for (i = 0; i <= 20; i++)
        printf "%.1f,%d,%d\n", i / 10, 3000 + 50 * i, 40 + i}' >here/pull.csv
for case in duty:duty.name survive:margin.duties log:duty.log; do
    config=here/${case%:*}.cfg
    expect 2 "$coldgap" ladder "$config" --to 60kPa --write there/new.cfg
    [ "$(wc -l <stderr)" -eq 1 ] || fail "$config: not one line: $(cat stderr)"
    says stderr "there/new.cfg: ${case#*:} of $config names a file in that"
    [ -s stdout ] && fail "$config: half an answer"
    no_part "$config"
done
[ -z "$(ls there)" ] || fail "left behind: $(ls there)"
(cd here && "$coldgap" ladder duty.cfg --to 60kPa -q --write ../there/new.cfg \
    >"$work/stdout" 2>&1)
[ $? -eq 2 ] || fail "another folder from within: $(cat stdout)"
expect 0 "$coldgap" ladder here/duty.cfg --to 60kPa -q \
    --write there/../here/new.cfg
expect 0 "$coldgap" find here/new.cfg -q
expect 0 "$coldgap" ladder here/log.cfg --to 60kPa -q --write here/new.cfg
grep -q '^ *log = "pull.csv";' here/new.cfg || fail "the log is lost"
# without that duty there is nothing to refuse, and nothing of it is kept
expect 0 "$coldgap" ladder here/log.cfg --to 60kPa -q --duty settled \
    --write there/new.cfg
grep 'pull.csv\|columns' there/new.cfg && fail "the log is kept"
expect 0 "$coldgap" find there/new.cfg -q

# It comes last: where the answer cannot be told it is not there.
if [ -c /dev/full ]; then
    "$coldgap" ladder "$engines/iron_six.cfg" --duty settled -q --to 60kPa \
        --write last.cfg >/dev/full 2>stderr
    got=$?
    [ "$got" -eq 4 ] || fail "a full disk: exit $got, expected 4"
    says stderr 'cannot write the output'
    [ -e last.cfg ] && fail "a config of which nothing was told"
fi
# A limit on the size of files stands in for a full disk: its name, no other.
(trap '' XFSZ
 ulimit -f 0
 "$coldgap" ladder "$engines/iron_six.cfg" --duty settled -q --to 60kPa \
    --write last.cfg 2>&1 >/dev/null) | cat >stdout
says stdout 'last.cfg: could not write: '
[ -e last.cfg ] && fail "a config of a full disk"
no_part "a full disk"
finish
