#!/bin/sh
# finish: profile files of every kind, good and bad, and what comes of them.
#
#   run_finish.sh COLDGAP SOURCES
set -u
coldgap=$1
sources=$2
. "$(dirname "$0")/lib.sh"
config=$sources/configs/example.cfg
sample=$sources/configs/profiles/plateau.txt

# key NAME: a value of the table written last.
key() {
    awk -v name="$1" '$1 == name {print $2}' "$work/out/finish.dat"
}

# near GOT WANT RELATIVE WHAT
near() {
    awk -v a="$1" -v b="$2" -v r="$3" \
        'BEGIN {d = a - b; if (d < 0) d = -d; exit !(d <= r * b)}' ||
        fail "$4: $1, expected $2"
}

# bad TEXT WORDS...: refused with one line that says TEXT, and no NaN or table.
bad() {
    text=$1
    shift
    expect 2 "$coldgap" finish "$config" -o "$work/none" "$@"
    says stderr "$text"
    [ "$(wc -l <"$work/stderr")" -eq 1 ] || fail "$*: more than one line"
    [ ! -s "$work/stdout" ] || fail "$*: prints an answer"
    [ ! -d "$work/none" ] || fail "$*: writes tables"
}

# --- what it is asked for
bad 'one of --profile FILE and --simulate'
bad 'one of --profile FILE and --simulate' --profile "$sample" \
    --simulate plateau
bad 'allowed: standard gaussian robust none' --profile "$sample" --filter box
bad 'allowed: plateau coarse' --simulate mirror
bad 'such as 0.5um' --profile "$sample" --spacing 0.5
bad 'from 0.08 to 8 mm' --profile "$sample" --cutoff 80mm
bad 'finish: --spacing is for' --simulate plateau --spacing 0.5um

# --- files that are none
printf '' >"$work/p"
bad 'no points in it' --profile "$work/p"
printf '# only a comment\n\n' >"$work/p"
bad 'no points in it' --profile "$work/p"
expect 4 "$coldgap" finish "$config" --profile "$work/missing"
says stderr 'missing: cannot open'
expect 4 "$coldgap" finish "$config" --profile "$work"
says stderr 'cannot read'
head -c 3000 /dev/zero >"$work/p"
bad ':1: a zero byte' --profile "$work/p"
head -c 5000 "$coldgap" >"$work/p"
bad ':1: ' --profile "$work/p"
awk 'BEGIN {while (n++ < 9000) printf "7"; print ""}' >"$work/p"
bad ':1: a line of more than' --profile "$work/p"

# --- malformed
# rows N: a cosine of N points, 0.5 um apart, in mm and um.
rows() {
    awk -v n="$1" 'BEGIN {for (i = 0; i < n; i++)
        printf "%.4f %.6f\n", i * 0.0005, cos(i * 0.05)}'
}
rows 9600 >"$work/good"
sed '57s/.*/0.028 abc/' "$work/good" >"$work/p"
bad 'p:57: not a number: abc' --profile "$work/p"
sed '57s/.*/0.028 1 2/' "$work/good" >"$work/p"
bad 'p:57: more than two columns' --profile "$work/p"
sed '57s/.*/0.028/' "$work/good" >"$work/p"
bad 'p:57: 1 column after lines of 2' --profile "$work/p"
sed '57s/.*/0.028 nan/' "$work/good" >"$work/p"
bad 'p:57: nan: not a finite number' --profile "$work/p"
sed '57s/.*/0.028 -inf/' "$work/good" >"$work/p"
bad 'p:57: -inf: not a finite' --profile "$work/p"
sed '57s/.*/0.028 1e400/' "$work/good" >"$work/p"
bad 'p:57: 1e400: not a finite' --profile "$work/p"
sed '57s/.*/0.028 0x1p3/' "$work/good" >"$work/p"
bad 'p:57: not a number: 0x1p3' --profile "$work/p"
sed '57s/.*/0.028 1.5um/' "$work/good" >"$work/p"
bad 'p:57: not a number' --profile "$work/p"
sed '57s/.*/0.028 99999/' "$work/good" >"$work/p"
bad 'p:57: a height of 99999 um; up to 10000' --profile "$work/p"
sed '57d' "$work/good" >"$work/p"
bad 'p:57: a step of' --profile "$work/p"
sed '57s/.*/0.020 1/' "$work/good" >"$work/p"
bad 'p:57: the position 0.02 does not rise' --profile "$work/p"
sed 's/\./,/g' "$work/good" >"$work/p"
bad 'p:1: 0,0000: a decimal comma' --profile "$work/p"
sed 's/\./,/g; s/ /;/' "$work/good" >"$work/p"
bad 'p:1: 0,0000.*a decimal comma' --profile "$work/p"
awk '{print $2}' "$work/good" | sed 's/\./,/' >"$work/p"
bad 'p:1: 1,000000: a decimal comma' --profile "$work/p"
{ echo 'position height'; cat "$work/good"; } >"$work/p"
bad 'p:1: not a number: position' --profile "$work/p"
{ echo '# units: um furlong'; cat "$work/good"; } >"$work/p"
bad 'p:1: units:' --profile "$work/p"
{ echo '# spacing: none'; cat "$work/good"; } >"$work/p"
bad 'p:1: spacing:' --profile "$work/p"
awk '{print $2}' "$work/good" >"$work/column"
bad 'no spacing; give --spacing' --profile "$work/column"
bad 'has positions of its own' --profile "$work/good" --spacing 0.5um

# --- measured, and not a surface
rows 60 >"$work/p"
bad '60 points are too few' --profile "$work/p"
echo '0.5' >"$work/p"
bad '1 points are too few' --profile "$work/p"
rows 2000 >"$work/p"
bad 'too short for a cut-off of 0.8 mm' --profile "$work/p"
bad 'too coarse for a cut-off' --profile "$work/column" --spacing 90um
sed 's/ .*/ 3.25/' "$work/good" >"$work/p"
bad 'heights are equal' --profile "$work/p"
awk '{print $1, $1}' "$work/good" >"$work/p"
bad 'one straight line' --profile "$work/p"
awk '{print 0.1}' "$work/good" >"$work/p"
bad 'heights are equal' --profile "$work/p" --spacing 0.5um

# --- a cliff: every height near it lies far from any line
awk 'BEGIN {for (i = 0; i < 9600; i++) print i < 4800 ? 0 : 1}' >"$work/p"
expect 3 "$coldgap" finish "$config" --profile "$work/p" --spacing 0.5um \
    --filter robust
says stderr 'p: filter: around 2.* mm all heights are outliers'

# --- huge: refused at the first point too many, not at the end
awk 'BEGIN {while (n++ < 20000000) print n % 7}' | {
    "$coldgap" finish "$config" --profile /dev/stdin --spacing 0.5um \
        >"$work/stdout" 2>"$work/stderr"
    echo $? >"$work/status"
} 2>/dev/null
[ "$(cat "$work/status")" -eq 2 ] || fail "20 million points: not refused"
says stderr ':4000001: more than 4000000 points'

# --- every way to write the same profile gives the same figures
# same WORDS...: as the table kept in first.dat.
same() {
    expect 1 "$coldgap" finish "$config" -q -o "$work/out" "$@"
    grep -v '^#' "$work/out/finish.dat" >"$work/new.dat"
    cmp -s "$work/new.dat" "$work/first.dat" || {
        fail "$*: other figures"
        diff "$work/first.dat" "$work/new.dat"
    }
}
expect 1 "$coldgap" finish "$config" -q -o "$work/out" \
    --profile "$work/column" --spacing 0.5um
grep -v '^#' "$work/out/finish.dat" >"$work/first.dat"
[ "$(wc -l <"$work/first.dat")" -ge 20 ] || fail "few keys in finish.dat"
awk '{printf "%d %s\n", NR, $1}' "$work/first.dat" | head -n 12 >"$work/keys"
printf '%s\n' '1 Ra' '2 Rq' '3 Rz' '4 Rk' '5 Rpk' '6 Rvk' '7 Mr1' '8 Mr2' \
    '9 A1' '10 A2' '11 Vo' '12 Vo_needed' | cmp -s - "$work/keys" ||
    fail "finish.dat: keys or their order"
same --profile "$work/column" --spacing 0.0005mm
{ echo '# spacing: 0.5 um'; cat "$work/column"; } >"$work/p"
same --profile "$work/p"
sed 's/$/\r/' "$work/p" >"$work/crlf"
same --profile "$work/crlf"
{ printf '\357\273\277'; cat "$work/p"; } >"$work/bom"
same --profile "$work/bom"
printf '%s' "$(cat "$work/p")" >"$work/unended"
same --profile "$work/unended"
awk '{printf "%.4fe-3\n", $1 * 1e3}' "$work/column" >"$work/exponent"
awk '{printf "%.9f\n", $1 / 1e3}' "$work/column" >"$work/mm"
{ echo '# units: mm'; echo '# spacing: 0.5 um'; cat "$work/mm"; } >"$work/p"
same --profile "$work/p"
# positions that are rounded, and separators
for style in 's/ / /' 's/ /\t/' 's/ /;/' 's/ / ; /' 's/ /,/' 's/ /, /'; do
    sed "$style" "$work/good" >"$work/p"
    same --profile "$work/p"
done
awk '{print $1 * 1000, $2}' "$work/good" >"$work/p"
same --profile "$work/p"
expect 1 "$coldgap" finish "$config" --profile "$work/p"
says stdout 'positions taken in um'
{ echo '# units: um um'; cat "$work/p"; } >"$work/q"
same --profile "$work/q"

# --- SMD text of ISO 5436-2 (as remembered), incremental and absolute
etx=$(printf '\003')
{ printf 'ISO 5436 - 2000 SAMPLE\nPRF 0 BORE\nCX I 9600 MM 1.0 D 0.0005\n'
  printf 'CZ A 9600 UM 1.0 D\n%s\nDATE none\n%s\n' "$etx" "$etx"
  cat "$work/column"; printf '%s\n1234\n%s\n' "$etx" "$etx"; } >"$work/smd"
same --profile "$work/smd"
sed 's/$/\r/' "$work/smd" >"$work/p"
same --profile "$work/p"
{ sed -n '1,2p' "$work/smd"; printf 'CX A 9600 MM 1.0 D\nCZ A 9600 NM 1000 D\n'
  printf '%s\n%s\n' "$etx" "$etx"; cat "$work/good"; } >"$work/p"
same --profile "$work/p"
expect 1 "$coldgap" finish "$config" --profile "$work/p"
says stdout 'ISO 5436-2 text'
sed 's/^CX.*/CX R 9600 MM 1.0 D/' "$work/smd" >"$work/p"
bad 'p:3: axis CX' --profile "$work/p"
sed 's/^CX.*/CX I 9600 MM 1.0 D/' "$work/smd" >"$work/p"
bad 'p:3: axis CX: type I needs an increment' --profile "$work/p"
sed 's/^CZ A 9600/CZ A 9000/' "$work/smd" >"$work/p"
bad 'p:4: axes of 9600 and 9000 points' --profile "$work/p"
sed 's/^CZ.*//' "$work/smd" >"$work/p"
bad 'p:5: the header ends without' --profile "$work/p"
sed 's/^PRF.*/SUR 0 BORE/' "$work/smd" >"$work/p"
bad 'p:2: an areal feature' --profile "$work/p"
sed '500d' "$work/smd" >"$work/p"
bad '9599 points; the header promises 9600' --profile "$work/p"
head -n 4 "$work/smd" >"$work/p"
bad 'ends before its data' --profile "$work/p"
sed '500s/.*/BAD/' "$work/smd" >"$work/p"
bad 'p:500: not a number: BAD' --profile "$work/p"

# --- the figures: a cosine of amplitude 1, 63 um long, far below the cut-off
expect 1 "$coldgap" finish "$config" -q -o "$work/out" --profile "$work/good" \
    --filter gaussian
near "$(key Ra)" 0.63662 0.003 "Ra of a cosine, 2/pi"
near "$(key Rq)" 0.70711 0.003 "Rq of a cosine"
near "$(key Rz)" 2 0.003 "Rz of a cosine"
# as long as the cut-off: half passes into the mean line
awk 'BEGIN {for (i = 0; i < 16000; i++)
    printf "%.4f %.6f\n", i * 0.0005, cos(i * 3.14159265 / 800)}' >"$work/p"
expect 1 "$coldgap" finish "$config" -q -o "$work/out" --profile "$work/p" \
    --filter gaussian
near "$(key Ra)" 0.31831 0.01 "Ra of a cosine as long as the cut-off"
# --filter none takes heights as they stand: rising heights are uniform
awk 'BEGIN {for (i = 0; i < 5000; i++) print (i + 0.5) / 1000}' >"$work/p"
expect 1 "$coldgap" finish "$config" -q -o "$work/out" --profile "$work/p" \
    --filter none
near "$(key Rk)" 5 0.001 "Rk of uniform heights"
near "$(key Mr2)" 100 0.001 "Mr2 of uniform heights"
near "$(key Vo)" 0 0 "Vo of uniform heights"

# --- the shipped sample, and the judgement
# With its waves left in, no plateau is to be seen.
for filter in standard gaussian robust none; do
    status=0
    [ $filter = none ] && status=1
    expect $status "$coldgap" finish "$config" -o "$work/out" \
        --profile "$sample" --filter $filter --set charge.boost_kPa=40
    [ $filter = none ] && says stdout 'waves are left in'
    says stdout 'Enough oil for this boost'
    says stdout 'a scale, not a law'
    says stdout 'an estimate, not a warranty'
    for table in finish finish_profile finish_ratio finish_probability; do
        grep -q 'not a warranty' "$work/out/$table.dat" ||
            fail "$table.dat has no caution"
        grep -q -i 'inf\|-nan' "$work/out/$table.dat" &&
            fail "$table.dat holds infinities"
    done
done
expect 1 "$coldgap" finish "$config" --profile "$sample" \
    --set charge.boost_kPa=400 --set fuel.name=methanol
says stdout 'TOO LITTLE oil for this boost'
says stdout 'Base stage: coarser stones, .* grit for 180'
[ ! -s "$work/stderr" ] || fail "stderr on a plain verdict"
last=0
for boost in 0 80 160 240; do
    "$coldgap" finish "$config" --profile "$sample" -o "$work/out" -q \
        --set charge.boost_kPa=$boost >/dev/null
    awk -v a="$last" -v b="$(key Vo_needed)" 'BEGIN {exit !(b > a)}' ||
        fail "boost $boost: needed oil does not rise"
    last=$(key Vo_needed)
done
expect 0 "$coldgap" finish "$config" --profile "$sample" --units inch \
    --set charge.boost_kPa=40
says stdout ' uin ([0-9.]* um)'
says stdout 'psi'

# --- simulated surfaces: seeds, both stages, the patch's table
expect 0 "$coldgap" finish "$config" --simulate plateau -o "$work/a" \
    --set charge.boost_kPa=40
says stdout 'invented for teaching'
says stdout '^    coarse '
expect 0 "$coldgap" finish "$config" --simulate plateau -o "$work/b" -q \
    --set charge.boost_kPa=40
for table in "$work"/a/*; do
    cmp -s "$table" "$work/b/$(basename "$table")" ||
        fail "$(basename "$table"): equal seeds, other bytes"
done
[ "$(block "$work/a/finish_patch.dat" plateau | wc -l)" -eq 40000 ] ||
    fail "finish_patch.dat: not 200 x 200"
"$coldgap" finish "$config" --simulate plateau --seed 2 -o "$work/b" -q \
    >/dev/null
cmp -s "$work/a/finish_patch.dat" "$work/b/finish_patch.dat" &&
    fail "another seed, the same patch"
# A base stage alone holds oil, and does not pass: there is no plateau.
for seed in 1 2 3 4 5; do
    expect 1 "$coldgap" finish "$config" --simulate coarse -o "$work/b" \
        --set charge.boost_kPa=0 --seed $seed
    says stdout '^Enough oil for this boost'
    says stdout '^NO PLATEAU, so do not run this bore: '
    says stdout 'Plateau stage: more strokes'
    [ ! -s "$work/stderr" ] || fail "stderr on a plain verdict"
    expect 0 "$coldgap" finish "$config" --simulate plateau -q \
        --set charge.boost_kPa=40 --seed $seed
    grep -q 'NO PLATEAU' "$work/stdout" && fail "seed $seed: no plateau"
done
# Fine as a plateau, and of one law: heights of a normal law, 0.25 um rms.
awk 'BEGIN {s = 1; for (i = 0; i < 9600; i++) {
    for (n = t = 0; n < 12; n++) {s = (s * 16807) % 2147483647
        t += s / 2147483647}
    printf "%.4f\n", (t - 6) / 4}}' >"$work/p"
expect 1 "$coldgap" finish "$config" --profile "$work/p" --spacing 0.5um \
    --set charge.boost_kPa=0 --set bore.finish.reference_oil_um=0.01
says stdout '^NO PLATEAU, .* the heights follow one law'
says stdout '^Enough oil for this boost'
# brief: the verdict and what to do; JSON: the keys of finish.dat
expect 1 "$coldgap" finish "$config" --simulate coarse -q \
    --set charge.boost_kPa=0
says stdout 'NO PLATEAU'
says stdout 'Plateau stage: more strokes'
says stdout 'simulated for teaching, of no bore'
grep -q 'Oil against fuel' "$work/stdout" && fail "-q is not brief"
expect 1 "$coldgap" finish "$config" --simulate coarse --json -o "$work/b" \
    --set charge.boost_kPa=0
grep -v '^#' "$work/b/finish.dat" | while read -r name value unit; do
    grep -q "\"$name\": {\"value\": .*\"unit\": \"$unit\"}" "$work/stdout" ||
        echo "no $name [$unit] ($value)"
done >"$work/missing"
[ ! -s "$work/missing" ] || fail "JSON: $(cat "$work/missing")"
# a profile's run leaves no patch of an earlier one behind
"$coldgap" finish "$config" --profile "$sample" -o "$work/b" -q >/dev/null
[ ! -e "$work/b/finish_patch.dat" ] || fail "a patch of an earlier run"

# --- files that cannot be written
expect 4 "$coldgap" finish "$config" --profile "$sample" -o "$work/no/such"
finish
