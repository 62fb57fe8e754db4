#!/bin/sh
# `coldgap card`: the figures are those of find and finish, the finish ordered
# passes, and a build before is set beside it, its changes and its proof.
#
#   run_card.sh COLDGAP SOURCES
set -u
coldgap=$(realpath "$1")
sources=$(realpath "$2")
. "$(dirname "$0")/lib.sh"
engines=$sources/configs/engines
four=$engines/boosted_four.cfg
cd "$work" || exit 1

# row NAME: what stands behind a label on the screen.
row() {
    sed -n "s/^ *$1   *//p" "$work/stdout" | head -n 1
}

for config in "$engines"/*.cfg; do
    name=$(basename "$config" .cfg)
    expect 0 "$coldgap" find "$config" -q -o "$work/find"
    cp "$work/stdout" "$work/found"
    expect 0 "$coldgap" card "$config" -o "$work/card"
    # every key of find, the same to the last digit
    grep -v '^#' "$work/find/summary.dat" >"$work/keys"
    [ -s "$work/keys" ] || fail "$name: find has no keys"
    grep -v '^#' "$work/card/card.dat" | head -n "$(wc -l <"$work/keys")" |
        diff "$work/keys" - || fail "$name: other figures than find's"
    for ring in 'Top ring' 'Second ring'; do
        same "$name: $ring: the gap of find" \
            "$(shown "$work/stdout" "$ring")" "$(shown "$work/found" "$ring")"
    done
    # the gaps come first, and no smaller one stands before them
    [ "$(grep -v '^coldgap' "$work/stdout" | grep -o '[0-9.]* mm' |
        head -n 1)" = "$(shown "$work/found" 'Top ring') mm" ] ||
        fail "$name: the first gap on the card is another"
    awk 'length > 80' "$work/stdout" | grep -v '^coldgap' &&
        fail "$name: wider than a terminal"
    # the finish ordered: oil as finish wants it, and the stones leave it
    expect 0 "$coldgap" finish "$config" --simulate plateau -q \
        -o "$work/finish" \
        --set bore.finish.base_grit="$(of "$work/card/card.dat" base_grit)" \
        --set bore.finish.plateau_grit="$(of "$work/card/card.dat" plateau_grit)"
    same "$name: oil needed as finish says" \
        "$(of "$work/card/card.dat" Vo_needed)" \
        "$(of "$work/finish/finish.dat" Vo_needed)"
    awk 'FNR == NR {key[$1] = $2; next} {got[$1] = $2}
         END {split("Rpk Rk Rvk Mr1 Mr2 Vo", words)
              for (i in words)
                  if (got[words[i]] == "" || key[words[i] "_most"] == "")
                      exit 1
              exit !(got["Rpk"] <= key["Rpk_most"] &&
              got["Rk"] <= key["Rk_most"] && got["Rvk"] >= key["Rvk_least"] &&
              got["Rvk"] <= key["Rvk_most"] && got["Mr1"] <= key["Mr1_most"] &&
              got["Mr2"] >= key["Mr2_least"] && got["Mr2"] <= key["Mr2_most"] &&
              got["Vo"] >= key["Vo_needed"] && got["Vo"] <= key["Vo_most"])}' \
        "$work/card/card.dat" "$work/finish/finish.dat" ||
        fail "$name: the stones named leave another finish than ordered"
    [ -e "$work/card/builds.dat" ] && fail "$name: builds out of nowhere"
done

# What a shop and a customer look for, in words.
expect 0 "$coldgap" card "$four" --set rings.top.width_mm=1.5 \
    --set rings.top.ports=crown
for words in 'crown ports of' 'nitrided_stainless' '10W-40' 'Cross-hatch' \
    'base 180 grit, then plateau 600' 'After the first hours' 'Left out: ' \
    '^  Date ____' 'dyno_pull' ', hardest' 'Too wide above' '^Holds for$' "^ *The skirt's minus: hot"; do
    says stdout "$words"
done
grep -q '20[0-9][0-9]-[0-9]' "$work/stdout" && fail "a date was computed"
expect 0 "$coldgap" card "$four" --units inch
awk 'length > 80' "$work/stdout" | grep -v '^coldgap' && fail "inch: too wide"
says stdout 'Gauge at  *68 F'
[ "$(row 'Filing allowance, up' | sed 's/,.*//')" = '0.0004 in (0.010 mm)' ] ||
    fail "the filing step in inches: $(row 'Filing allowance, up')"
expect 0 "$coldgap" card "$four" --brief
grep -q 'Finish to order' "$work/stdout" && fail "--brief is not brief"

# A boost that washes more oil off asks for coarser stones and deeper valleys.
expect 0 "$coldgap" card "$engines/plain_four.cfg" -q -o "$work/low"
expect 0 "$coldgap" card "$engines/big_eight.cfg" -q -o "$work/high"
awk -v a="$(of "$work/low/card.dat" Rvk_least)" \
    -v b="$(of "$work/high/card.dat" Rvk_least)" 'BEGIN {exit !(b > a)}' ||
    fail "valleys do not grow with the fuel"

# The same config twice: nothing is changed, every figure the same.
expect 0 "$coldgap" card "$four" --from "$four" -o "$work/same"
says stdout 'Nothing: every setting, metal, face and duty is the same'
[ -n "$(of "$work/same/builds.dat" file_to_top)" ] ||
    fail "no figures of two builds"
awk '!/^#/ && ($2 != $3 || $5 != 0)' "$work/same/builds.dat" | grep . &&
    fail "the same build twice differs"
grep -q '^# setting  then  now  follows' "$work/same/build_changes.dat" ||
    fail "no table of changes"
grep -v '^#' "$work/same/build_changes.dat" && fail "changes out of nowhere"
says stdout 'The build before has no evidence'

# What is changed is told, what is not is not; what only follows is marked.
expect 0 "$coldgap" card "$four" --from "$four" --set charge.boost_kPa=140 \
    --set rings.top.material=plain_steel --set engine.stroke_mm=86 \
    --set engine.rod_mm=147 -o "$work/other"
grep -v '^#' "$work/other/build_changes.dat" | cut -d ' ' -f 1,4 >"$work/list"
printf '%s\n' 'engine.stroke_mm 0' 'charge.boost_kPa 0' \
    'rings.top.material 0' >"$work/wanted"
grep ' 0$' "$work/list" | diff "$work/wanted" - ||
    fail "other settings are told as changed"
grep ' 1$' "$work/list" | grep -q -v 'piston\.\|bore\.' &&
    fail "what follows the stroke: $(cat "$work/list")"
says stdout 'charge.boost_kPa  *140.0, was 120.0'
says stdout 'rings.top.material  *"plain_steel", was "nitrided_stainless"'
# a choice is its word; a gap that is no more given is not to file to
expect 0 "$coldgap" card "$engines/plain_four.cfg" --from "$four" -q \
    -o "$work/other_engine"
grep -q '^charge.charger turbine none 0$' \
    "$work/other_engine/build_changes.dat" || fail "a choice without its word"
sed 's/top = {/& cold_gap_mm = 0.5;/' "$four" >"$work/gap.cfg"
expect 0 "$coldgap" card "$four" --from "$work/gap.cfg"
flat <stdout | grep -q -F \
    'cold_gap_mm not given, was 0.5 (the old gap is not to file to)' ||
    fail "the old gap reads as one to file to"
# each figure then and now is that of its own config's find
expect 0 "$coldgap" find "$four" -q -o "$work/then"
expect 0 "$coldgap" find "$four" -q -o "$work/now" \
    --set charge.boost_kPa=140 --set rings.top.material=plain_steel \
    --set engine.stroke_mm=86 --set engine.rod_mm=147
for key in file_to_top file_to_second closure_top peak_pressure crown_max \
    groove_top_max ring_top_max liner_top_max fuel_flow brake_power \
    knock_integral; do
    line=$(awk -v key=$key '$1 == key {print $2, $3}' "$work/other/builds.dat")
    a=$(of "$work/then/summary.dat" $key) b=$(of "$work/now/summary.dat" $key)
    awk -v line="$line" -v a="$a" -v b="$b" 'BEGIN {
        if (split(line, x, " ") != 2 || a == "" || b == "") exit 1
        exit !((x[1] - a)^2 <= 1e-8 * a^2 &&
                                    (x[2] - b)^2 <= 1e-8 * b^2)}' ||
        fail "$key: $line, find says $a and $b"
done
grep -q '^ring_metal nitrided_stainless plain_steel word 1$' \
    "$work/other/builds.dat" || fail "the ring's metal is not marked"
grep -q '^fuel gasoline gasoline word 0$' "$work/other/builds.dat" ||
    fail "the fuel is marked"

# What of the proof holds: a run without contact proves the same parts in duties
# no harder, and nothing else.
# proven FILE DUTY: that build, and a run of it without contact.
proven() {
    {
        cat "$four"
        echo 'evidence = ( { touched = false; cold_gap_mm = 0.44;'
        echo "    duty = \"$2\"; boost_kPa = 140.0; } );"
    } >"$work/$1"
}
proven proven.cfg cold_start_abuse
proven proven_easy.cfg dyno_pull
proof() {
    awk '!/^#/ {printf "%s%s", n++ ? " " : "", $7} END {print ""}' \
        "$work/proof/build_proof.dat"
}
for words in 'proven holds' 'proven_easy easier'; do
    expect 0 "$coldgap" card "$four" --from "$work/${words% *}.cfg" \
        -o "$work/proof" --set charge.boost_kPa=80
    [ "$(proof)" = "${words#* }" ] || fail "${words% *}: the proof: $(proof)"
    awk -v want="${words#* }" '!/^#/ {exit !(want == "holds" ? $5 >= $6 - 0.001 : $5 < $6)}' \
        "$work/proof/build_proof.dat" || fail "closures do not say so"
done
flat <stdout | grep -q 'Evidence 1 entry, from [^ ]*proven_easy.cfg Runs' ||
    fail "one entry is not told as one"
says stdout 'NO PROOF NOW: ends apart at 0.44 mm, in dyno_pull at 140 kPa'
# the closure now is that of the config with the evidence in it
expect 0 "$coldgap" find "$work/proven_easy.cfg" -q -o "$work/now" \
    --set charge.boost_kPa=80
awk -v a="$(awk '!/^#/ {print $6}' "$work/proof/build_proof.dat")" '
    !/^#/ {most = $2 > most ? $2 : most}
    END {exit !(a > 0 && (a - most)^2 < 1e-10)}' "$work/now/duties.dat" ||
    fail "another closure than the evidence's own find"
expect 0 "$coldgap" card "$four" --from "$work/proven.cfg" \
    -o "$work/proof" --set charge.boost_kPa=80 --set piston.alloy=4032
[ "$(proof)" = parts ] || fail "with another piston the proof: $(proof)"
expect 0 "$coldgap" card "$four" --from "$engines/touched_six.cfg" \
    -o "$work/proof"
[ "$(proof)" = warns ] || fail "ends that touched: $(proof)"
expect 0 "$coldgap" card "$four" --from "$engines/shop_four.cfg" \
    -o "$work/proof" --set charge.boost_kPa=60
flat <stdout | grep -q 'Evidence 5 entries, from [^ ]*shop_four.cfg, notebook' ||
    fail "the evidence is not told with its source"
[ "$(proof | cut -d ' ' -f 2,4,5)" = "measured measured warns" ] ||
    fail "the notebook's entries: $(proof)"

# Exit statuses: as find's for the build wanted, whatever the one before was.
expect 1 "$coldgap" card "$four" --set rings.top.cold_gap_mm=0.1
says stdout 'TOO SMALL'
expect 0 "$coldgap" card "$four" --from "$work/proven.cfg"
expect 4 "$coldgap" card "$four" --from "$work/none.cfg"
says stderr 'none.cfg'
expect 2 "$coldgap" card "$four" --from "$sources/tests/bad/unknown_fuel.cfg"
says stderr 'unknown_fuel.cfg:'
expect 2 "$coldgap" card "$four" --from ""
expect 2 "$coldgap" find "$four" --from "$four"
expect 2 "$coldgap" card "$four" --from "$four" --report "$work/card.txt"
[ -s "$work/stdout" ] && fail "half an answer"

# Names and texts are data, also those of the build before.
odd="$work/a'\"<b>&\$(touch hit).cfg"
sed 's/name = "Boosted four"/name = "<script>\&$(touch hit)"/' "$four" >"$odd"
expect 0 "$coldgap" card "$odd" --from "$odd" --set charge.boost_kPa=90 \
    --report "$work/odd.html" -o "$work/odd"
expect 0 "$coldgap" card "$four" --from "$odd" -o "$work/odd" --json \
    --report "$work/odd2.html"
grep -q '<script\|<b>' "$work/odd.html" "$work/odd2.html" &&
    fail "a page holds what a name says"
[ -e "$work/hit" ] && fail "a name was run"
grep -q '&lt;script&gt;' "$work/odd2.html" || fail "the name is lost"

# Equal input, equal bytes.
expect 0 "$coldgap" card "$four" --from "$work/proven.cfg" -q \
    --report "$work/one.html"
expect 0 "$coldgap" card "$four" --from "$work/proven.cfg" -q \
    --report "$work/two.html"
sed 's/two.html/one.html/' "$work/two.html" | cmp -s - "$work/one.html" ||
    fail "two cards differ"
# A card without a build before leaves no tables of an earlier one.
expect 0 "$coldgap" card "$four" -q -o "$work/same"
ls "$work/same" | grep -q build && fail "tables of an earlier card are left"
finish
