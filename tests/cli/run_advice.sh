#!/bin/sh
# One figure to file to for each ring, over all that the engine must survive:
# the same wherever it is told, and what a gap given is held against.
#
#   run_advice.sh COLDGAP SOURCES
set -u
coldgap=$1
configs=$2/configs
. "$(dirname "$0")/lib.sh"

# key NAME [DIR]: of a summary.
key() {
    awk -v key="$1" '$1 == key {print $2}' "$work/${2:-out}/summary.dat"
}

# holds WHAT EXPRESSION: awk's, of numbers.
holds() {
    awk "BEGIN {exit !($2)}" || fail "$config: $1: $2"
}

# shown FILE LABEL: the figure in mm behind a label that begins a line.
both() {
    echo "$(shown "$1" 'Top ring') $(shown "$1" 'Second ring')"
}

# told KEY: the value of a key of the JSON at hand.
told() {
    sed -n "s/^ *\"$1\": {\"value\": \"*\([^,\"]*\)\"*,.*/\1/p; s/^ *\"$1\": {\"value\": \"\([^\"]*\)\"}.*/\1/p" \
        "$work/json" | head -n 1
}

# hundredths VALUE: as screens show it, two digits.
hundredths() {
    awk -v v="$1" 'BEGIN {printf "%.2f", v}'
}

for engine in big_eight boosted_four iron_six plain_four taught_four; do
    config=$configs/engines/$engine.cfg
    expect 0 "$coldgap" find "$config" -o "$work/out" --report "$work/page.html"
    cp "$work/stdout" "$work/screen"
    top=$(key file_to_top) second=$(key file_to_second)
    needed=$(key cold_gap_top) hardest=$(key hardest_duty)

    # No less than any of what it must be, and one of them rounded up.
    holds "the need" "$top >= $needed - 1e-9"
    holds "the shop rule" "$top >= $(key rule_top) - 1e-9"
    holds "a step" "$top < ($needed > $(key rule_top) ? $needed : $(key rule_top)) + 0.01"
    holds "the second ring" "$second >= $(key rule_second) - 1e-9"
    holds "the second ring" "$second >= 1.2 * $top - 1e-9"
    holds "the parts" "$needed >= $(key closure_top) + $(key spread_top) + $(key residual) - 1e-9"
    awk -v needed="$needed" -v second="$second" -v hardest="$hardest" '
        /^#/ {next}
        $1 == "less_boost" {less++}
        {rows++; most = $3 > most ? $3 : most; if ($4 > second + 1e-9) bad = 1
         if ($9 == 1) {marked++; if ($1 != hardest) bad = 1}
         if ($3 < $2 + $10 + $11 - 1e-6) bad = 1}
        END {d = most - needed; exit bad || rows != 4 + less || less > 1 || marked != 1 ||
             d > 1e-9 || d < -1e-9}' "$work/out/duties.dat" ||
        fail "$config: duties.dat does not fit the summary"

    # On the screen the first gap; in JSON, on the page, on the sheet the same.
    [ "$(shown "$work/screen" 'Top ring')" = "$(hundredths "$top")" ] ||
        fail "$config: the screen says $(shown "$work/screen" 'Top ring')"
    [ "$(shown "$work/screen" 'Second ring')" = "$(hundredths "$second")" ] ||
        fail "$config: the screen's second gap"
    first=$(grep -v '^coldgap' "$work/screen" | grep -o '[0-9.]* mm' | head -n 1)
    [ "$first" = "$(hundredths "$top") mm" ] ||
        fail "$config: the first gap on the screen is $first"
    grep -q "$hardest, hardest" "$work/screen" ||
        fail "$config: the hardest duty is not marked"
    "$coldgap" find "$config" --json >"$work/json"
    for name in file_to_top file_to_second cold_gap_top; do
        holds "$name in JSON" "($(told $name) - $(key $name))^2 < 1e-12"
    done
    for name in file_to_from hardest_duty; do
        [ "$(told $name)" = "$(key $name)" ] ||
            fail "$config: JSON: $name $(told $name)"
    done
    grep -o '[0-9][0-9.]* mm' "$work/page.html" | head -n 1 |
        grep -q "^$(hundredths "$top") mm$" ||
        fail "$config: the first gap on the page is not $top"
    "$coldgap" lesson "$config" -q >"$work/lesson"
    [ "$(shown "$work/lesson" 'Top ring')" = "$(hundredths "$top")" ] ||
        fail "$config: the lesson says $(shown "$work/lesson" 'Top ring')"
    "$coldgap" seal "$config" -q >"$work/seal"
    [ "$(both "$work/seal")" = "$(hundredths "$top") $(hundredths "$second")" ] ||
        fail "$config: seal says another"
    awk -v n="$("$coldgap" lesson "$config" | awk '$1 == "Cylinders" {print $2}')" \
        -v bore="$(awk -v gap="$needed" -v share="$(key gap_per_bore)" \
            'BEGIN {print gap / share}')" 'BEGIN {
        print "cylinder,bore_mm,top_gap_mm,second_gap_mm"
        for (i = 1; i <= n; i++) print i "," bore ",0.9,0.2"}' >"$work/bores.csv"
    "$coldgap" sheet "$config" --measured "$work/bores.csv" -q >"$work/sheet"
    [ "$(both "$work/sheet")" = "$(hundredths "$top") $(hundredths "$second")" ] ||
        fail "$config: the sheet says another"

    # Given back, both fit, and the second gap stays; a step less does not.
    expect 0 "$coldgap" find "$config" --set "rings.top.cold_gap_mm=$top" \
        --set "rings.second.cold_gap_mm=$second" -o "$work/back"
    says stdout '^Your top gap .* fits'
    says stdout '^Your second gap .* fits'
    [ "$(key file_to_second back)" = "$second" ] ||
        fail "$config: the second gap is $(key file_to_second back) then"
    less=$(awk -v top="$top" 'BEGIN {print top - 0.011}')
    expect 1 "$coldgap" find "$config" --set "rings.top.cold_gap_mm=$less" -q

    # A gap just above the need and below what the maker allows; one above.
    maker=$(awk -v top="$top" 'BEGIN {print top + 0.05}')
    expect 1 "$coldgap" find "$config" --set "rings.top.cold_gap_mm=$top" \
        --set "rings.top.maker_minimum_mm=$maker" -q -o "$work/maker"
    says stdout "^Your top gap .* is BELOW THE MAKER'S MINIMUM"
    says stdout 'File to '
    [ "$(key file_to_from maker)" = maker ] || fail "$config: not the maker's"
    holds "the maker's" "$(key file_to_top maker) >= $maker - 1e-9"
    expect 0 "$coldgap" find "$config" --set "rings.top.cold_gap_mm=$maker" \
        --set "rings.top.maker_minimum_mm=$maker" -q
    expect 0 "$coldgap" find "$config" -q -o "$work/maker" \
        --set rings.top.maker_minimum_mm=0.1 \
        --set rings.second.maker_minimum_mm=2
    [ "$(key file_to_top maker)" = "$top" ] ||
        fail "$config: a small minimum of the maker moves the figure"
    [ "$(key file_to_second maker)" = 2 ] || fail "$config: the second's maker"
done

# Below the shop rule alone: safe by the model, and not accepted.
config=$configs/engines/boosted_four.cfg
alone="--set margin.duties= --set uncertainty.flank_pct=0"
# shellcheck disable=SC2086 # words
expect 0 "$coldgap" find "$config" $alone -q -o "$work/rule"
[ "$(key file_to_from rule)" = rule ] || fail "the rule is not the largest"
gap=$(awk -v a="$(key cold_gap_top rule)" -v b="$(key rule_top rule)" \
    'BEGIN {print (a + b) / 2}')
# shellcheck disable=SC2086 # words
expect 1 "$coldgap" find "$config" $alone --set "rings.top.cold_gap_mm=$gap" -q
says stdout '^Your top gap .* is BELOW THE SHOP RULE'
says stdout 'evidence'
# shellcheck disable=SC2086 # words
expect 1 "$coldgap" find "$config" $alone --set rings.top.cold_gap_mm=0.1 -q
says stdout '^Your top gap .* is TOO SMALL'
# shellcheck disable=SC2086 # words
expect 1 "$coldgap" ceiling "$config" $alone --gap "${gap}mm" -q
says stdout 'BELOW THE SHOP RULE'

# The list: in any form, the duty asked for once, each of the shipped known.
expect 0 "$coldgap" find "$config" -q -o "$work/list" \
    --set margin.duties=dyno_pull,tow_grade
got=$(awk '!/^#/ && $1 != "less_boost" {print $1}' "$work/list/duties.dat" |
    tr '\n' ' ')
[ "$got" = "dyno_pull tow_grade " ] || fail "duties by --set: $got"
mkdir "$work/cfg"
with_duties() {
    grep -v '^margin' "$configs/example.cfg"
    printf 'margin = { duties = %s; };\n' "$1"
}
with_duties '["lean_event", "settled"]' >"$work/cfg/list.cfg"
expect 0 "$coldgap" find "$work/cfg/list.cfg" -q -o "$work/list"
got=$(awk '!/^#/ && $1 != "less_boost" {print $1}' "$work/list/duties.dat" |
    tr '\n' ' ')
case $got in
*"lean_event settled ") ;;
*) fail "duties of a file: $got" ;;
esac
expect 2 "$coldgap" find "$config" --set margin.duties=setled -q
says stderr 'margin.duties: error: unknown duty "setled", allowed: settled'
with_duties '[1, 2]' >"$work/cfg/bad.cfg"
expect 2 "$coldgap" find "$work/cfg/bad.cfg" -q
says stderr 'margin.duties: must be a list of names'

# One duty alone says so, and each duty of the table is what it is alone, but for
# the 0.01 K to which points that duties share are settled.
"$coldgap" find "$config" -q -o "$work/out" >"$work/screen"
for duty in dyno_pull settled cold_start_abuse lean_event; do
    "$coldgap" find "$config" --duty $duty -q -o "$work/one" >"$work/stdout"
    tr -s ' \n' ' ' <"$work/stdout" >"$work/words"
    says words "duty $duty alone"
    says stdout "^coldgap find .* --duty $duty\$"
    grep "^$duty " "$work/out/duties.dat" | cut -d' ' -f2-8,10- >"$work/a"
    grep "^$duty " "$work/one/duties.dat" | cut -d' ' -f2-8,10- >"$work/b"
    awk 'FNR == NR {n = split($0, v); next}
         {for (i = 1; i <= n; i++) {
             d = v[i] - $i; most = i == 4 || i == 5 ? 0.02 : 2e-4
             if (d > most || d < -most) bad = 1}}
         END {exit bad}' "$work/a" "$work/b" ||
        fail "$duty: alone it is another: $(cat "$work/a" "$work/b")"
done
expect 2 "$coldgap" find "$config" --duty nowhere -q
says stderr 'unknown duty "nowhere"'
expect 2 "$coldgap" find "$config" --duty '' -q

# A sweep tells the same at each point.
"$coldgap" sweep "$config" --vary charge.boost_kPa=60,120 -q -o "$work/sweep" \
    >"$work/stdout"
awk -v want="$(key file_to_top)" -v hardest="$(key hardest_duty)" '
    NR == 1 {for (i = 2; i <= NF; i++) at[$i] = i - 1; next}
    /^#/ {next}
    $1 == 120 {d = $at["file_to_top_mm"] - want
               ok = d < 1e-6 && d > -1e-6 && $at["hardest_duty"] == hardest}
    END {exit !ok}' "$work/sweep/sweep.dat" ||
    fail "the sweep's figure is another"
finish
