#!/bin/sh
# `coldgap sheet` as a builder meets it: spreadsheet exports of all kinds,
# screens, tables, exit status.  Wrong files stand in tests/bad.
#
#   run_sheet.sh COLDGAP SOURCES
set -u
coldgap=$1
configs=$2/configs
. "$(dirname "$0")/lib.sh"
engine=$configs/engines/iron_six.cfg
sample=$configs/measured/iron_six.csv

# sheet STATUS FILE WORDS...: the sheet of the iron six.
sheet() {
    status=$1 file=$2
    shift 2
    expect "$status" "$coldgap" sheet "$engine" --measured "$file" "$@"
}

# row CYLINDER RING COLUMN: a value of the last sheet.dat.
row() {
    awk -v cylinder="$1" -v ring="$2" -v name="$3" '
        /^# cylinder /{gsub(/\[[^]]*\]/, ""); sub(/^# /, "")
                       for (i = 1; i <= NF; i++) at[$i] = i}
        !/^#/ && $1 == cylinder && $2 == ring {print $at[name]}' \
        "$work/out/sheet.dat"
}

# is CYLINDER RING COLUMN VALUE
is() {
    value=$(row "$1" "$2" "$3")
    [ "$value" = "$4" ] || fail "cylinder $1 $2 $3: $value, expected $4"
}

# The shipped sample: some too small, which is status 1.
sheet 1 "$sample" -o "$work/out"
says stdout 'TOO SMALL'
says stdout 'NOT SAFE'
says stdout 'too wide'
says stdout 'not measured'
says stdout 'filing step'
says stdout 'How to measure'
says stdout 'Date ____'
says stdout 'Builder ____'
says stdout 'Checked ____'
says stdout 'not a warranty'
[ -s "$work/stderr" ] && fail "sheet wrote to stderr"
longest=$(sed 1d "$work/stdout" | awk '{if (length > n) n = length} END {print n}')
[ "$longest" -le 80 ] || fail "a line of $longest letters on the sheet"
tables=$(cd "$work/out" && echo *)
[ "$tables" = "sheet.csv sheet.dat" ] || fail "tables: $tables"
for table in "$work"/out/*; do
    head -n 3 "$table" | grep -q '# .*not a warranty' ||
        fail "${table##*/} has no caution in its head"
    head -n 4 "$table" | grep -q '# coldgap [0-9].*config' ||
        fail "${table##*/} does not name version and config"
done

# Each row adds up: enough is taken off, in whole steps, and no step too many.
awk '!/^#/ {
    n++
    if (NF != 13) bad = bad " width"
    if ($13 == "not_measured") next
    need = $8; gap = $6; off = $9; steps = $10; then = $11
    if (off - 0.01 * steps > 1e-9 || 0.01 * steps - off > 1e-9) bad = bad " step"
    if (gap + off - then > 1e-6 || then - gap - off > 1e-6) bad = bad " sum"
    if (then < need - 1e-6 || (steps > 0 && then - 0.01 > need)) bad = bad " need"
    if (($13 == "too_small") != (gap < $7)) bad = bad " state"
    } END {if (bad) print bad; exit n != 12 || bad != ""}' "$work/out/sheet.dat" ||
    fail "rows of sheet.dat"
# The needs are those of `find`, by the size of the bore.
expect 0 "$coldgap" find "$engine" -o "$work/find"
awk 'FNR == NR {v[$1] = $2; next} !/^#/ && $2 == "top" {
    want = (v["closure_top"] + v["spread_top"]) * $3 / 86.5 + v["residual"]
    if ($7 - want > 2e-6 || want - $7 > 2e-6) bad = 1} END {exit bad}' \
    "$work/find/summary.dat" "$work/out/sheet.dat" ||
    fail "needs that find does not ask"
is 1 second state fits
is 3 second state fits
is 5 top state too_wide
is 6 second state not_measured
is 6 second gap_mm nan

# What a ring too wide costs is what seal finds for it, a sixth of the engine.
sheet 1 "$sample"
says stdout 'blow-by in that cylinder'
priced=$(awk '/^Too wide/ {on = 1} on && $2 == "top" {print $4; exit}' \
    "$work/stdout")
# leak TOP: blow-by by seal, the second gap as asked
leak() {
    "$coldgap" seal "$engine" -q -o "$work/seal" \
        --set "rings.top.cold_gap_mm=$1" \
        --set "rings.second.cold_gap_mm=$second" >/dev/null
    awk '$1 == "blow_by" {print $2}' "$work/seal/seal.dat"
}
second=$(row 4 second asked_mm)
top=$(awk '{v[$1] = $2} END {
    print v["closure_top"] + v["spread_top"] + v["residual"]}' \
    "$work/find/summary.dat")
wider=$(row 5 top gap_mm) asked=$(row 5 top asked_mm)
wider=$(awk "BEGIN {print $top + $wider - $asked}")
awk "BEGIN {p = ($(leak "$wider") - $(leak "$top")) / 6; d = p - $priced
    exit !(p > 0.01 && d < 0.002 * p && d > -0.002 * p)}" ||
    fail "priced at $priced g/s, not as seal does"

# Equal input, equal bytes.
sheet 1 "$sample" -o "$work/again"
diff -r "$work/out" "$work/again" || fail "two runs differ"

# The same measurements in other dress give the same sheet.
plain=$work/plain.csv
printf '%s\n' 'cylinder,bore_mm,top_gap_mm,second_gap_mm' \
    '1,86.512,0.54,0.65' '2,86.5,0.55,' '4,86.49,0.57,0.66' >"$plain"
sheet 0 "$plain" -o "$work/plain"
says stdout '^    3  *not in file'
says stdout 'cylinder 3 is not in the file'
grep -q 'blow-by' "$work/stdout" && fail "a price where nothing is too wide"
# dressed NAME: $work/NAME.csv reads like the plain one.
dressed() {
    sheet 0 "$work/$1.csv" -o "$work/out"
    grep -v '^#' "$work/out/sheet.dat" >"$work/got"
    grep -v '^#' "$work/plain/sheet.dat" | diff - "$work/got" ||
        fail "$1 reads otherwise"
}
printf '\357\273\277' | cat - "$plain" >"$work/mark.csv"
dressed mark
sed 's/$/\r/' "$plain" >"$work/crlf.csv"
dressed crlf
tr '\n' '\r' <"$plain" >"$work/cr.csv"
dressed cr
tr , ';' <"$plain" >"$work/semicolon.csv"
dressed semicolon
tr , '\t' <"$plain" >"$work/tab.csv"
dressed tab
tr ., ',;' <"$plain" >"$work/comma.csv"
dressed comma
tr ., ',\t' <"$plain" >"$work/tab_comma.csv"
dressed tab_comma
sed 's/[^,]*/"&"/g' "$plain" >"$work/quoted.csv"
dressed quoted
sed 's/,/ , /g; s/^/ /; s/$/  /' "$plain" >"$work/blanks.csv"
dressed blanks
{ echo '# of the bench, "not" for reading'; cat "$plain"; echo; echo ' ,,,'; } \
    >"$work/remarks.csv"
dressed remarks
{ echo '"# a remark, quoted",,,'; sed 's/$/,,/' "$plain"; } >"$work/wide.csv"
dressed wide
awk -F, -v OFS=, '{print $4, $3, $1, $2}' "$plain" >"$work/order.csv"
dressed order
awk -F, 'NR == 1; {line[NR] = $0} END {for (i = NR; i > 1; i--) print line[i]}' \
    "$plain" >"$work/upside.csv"
dressed upside
head -c -1 "$plain" >"$work/cut.csv"
dressed cut
{ printf '\357\273\277'; sed 's/[^,]*/"&"/g' "$plain" | tr ., ',;' |
    sed 's/$/\r/'; } >"$work/export.csv"
dressed export

# Units in the header: 21.5 thou are 0.5461 mm.
printf '%s\n' 'cylinder,bore_in,top_gap_thou,second_gap_in' \
    '1,3.4055,21.5,0.0256' >"$work/inch.csv"
sheet 0 "$work/inch.csv" -o "$work/out"
is 1 top gap_mm 0.5461
is 1 second gap_mm 0.65024
is 1 top bore_mm 86.4997
sheet 0 "$work/inch.csv" --units inch
says stdout 'Bore  *3.4055 in$'
says stdout ' 0.0215 '
# asked in thousandths and halves
sed -n 's/^Top ring, file to *\([0-9.]*\) in.*/\1/p' \
    "$work/stdout" | awk '{off = $1 != sprintf("%.4f",
        int($1 * 2000 + 0.5) / 2000)} END {exit off || NR != 1}' ||
    fail 'the gap to file to in inch is no half thousandth'
# inch on the screen leaves the tables
sheet 0 "$work/inch.csv" --units inch -o "$work/again"
diff -r "$work/out" "$work/again" || fail "--units inch changes the tables"

# The table for the spreadsheet speaks as the file did.
sheet 0 "$work/export.csv" -o "$work/out"
grep -q '^1;top;86,512;.*;0,54;' "$work/out/sheet.csv" ||
    fail "sheet.csv is not in semicolons and decimal commas"
sed 's/^"#.*//' "$work/out/sheet.csv" | tr ',;' '.,' >"$work/turned"
sheet 0 "$plain" -o "$work/out"
sed 's/^"#.*//' "$work/out/sheet.csv" | diff - "$work/turned" ||
    fail "sheet.csv differs by its dress"
# and holds what sheet.dat holds
awk -F, '!/^"#/ && NR > 4 {for (i = 1; i <= NF; i++)
    printf "%s%s", $i == "" ? "nan" : $i, i < NF ? " " : "\n"}' \
    "$work/out/sheet.csv" >"$work/got"
grep -v '^#' "$work/out/sheet.dat" | diff - "$work/got" ||
    fail "sheet.csv and sheet.dat differ"

# A ring gauged in another bore: pi times 0.03 mm less than it seemed there.
printf '%s\n' 'cylinder,bore_mm,top_gap_mm,measured_in' \
    '1,86.53,0.50,' '2,86.50,0.50,1' '3,86.50,0.50,3' >"$work/carried.csv"
sheet 1 "$work/carried.csv" -o "$work/out"
is 2 top measured_mm 0.5
is 2 top gap_mm 0.4057522
is 2 top state too_small
is 3 top gap_mm 0.5
says stdout 'cylinder 2: gaps measured in the bore of cylinder 1'
says stdout '0.094 mm less'

# A bore not measured is said, not guessed at.
printf '%s\n' 'cylinder,bore_mm,top_gap_mm' '1,,0.55' >"$work/no_bore.csv"
sheet 0 "$work/no_bore.csv" -o "$work/out"
says stdout 'cylinder 1: bore not measured, engine.bore of 86.500 mm is taken'
is 1 top bore_mm nan
grep -q 'Gap against bore' "$work/stdout" && fail "bores compared without one"

# The settings count: a coarser file, a lower bar for too wide, another margin.
printf '%s\n' 'cylinder,bore_mm,top_gap_mm' '1,86.5,0.48' '2,86.5,0.60' \
    >"$work/two.csv"
sheet 1 "$work/two.csv" --set margin.filing_step_mm=0.02 -o "$work/out"
is 1 top steps 3
is 1 top take_off_mm 0.06
is 2 top state fits
sheet 1 "$work/two.csv" --set margin.wide_factor=1.1 -o "$work/out"
is 2 top state too_wide
sheet 1 "$work/two.csv" --set margin.risk=0.5 --set margin.residual_mm=0.01 \
    -o "$work/out"
is 1 top state file # enough by the model, below the shop rule
sheet 1 "$work/two.csv" --set duty.name=cold_start_abuse \
    --set margin.residual_mm=0.5 -o "$work/out"
is 2 top state too_small
sheet 1 "$work/two.csv" --samples 64 --threads 2
sheet 1 "$work/two.csv" --quiet
says stdout 'TOO SMALL'
says stdout 'not a warranty'
grep -q 'How to measure' "$work/stdout" && fail "--quiet is not"
sheet 1 "$work/two.csv" --json
says stdout '"too_small": {"value": 1,'
says stdout '\[1, "TOO SMALL", [45][0-9.]*e-05, '
# What asks for action is said in brief too.
sheet 1 "$sample" --quiet
says stdout 'cylinder 5, top ring: 0.3.* wider than to file to; only another ring'
says stdout 'needed in cold_start_abuse; shop rule 0.50 mm'

# Not text at all, and too much of it.
head -c 3000 "$coldgap" >"$work/binary.csv"
sheet 2 "$work/binary.csv"
says stderr 'zero byte'
printf '\377\376c\000y\000l\000' >"$work/utf16.csv"
sheet 2 "$work/utf16.csv"
says stderr 'zero byte'
printf 'cylinder,bore_mm,top_gap_mm\n%s,86.5,0.42\n' \
    "$(head -c 100000 /dev/zero | tr '\0' 1)" >"$work/long.csv"
sheet 2 "$work/long.csv"
says stderr 'long.csv:2: error: cylinder'
awk 'length > 300 {exit 1}' "$work/stderr" || fail "an error without end"
{ echo 'cylinder,bore_mm,top_gap_mm'
  yes '9,86.5,0.42' | head -n 300000; } >"$work/many.csv"
sheet 2 "$work/many.csv"
says stderr 'and 299980 more'
says stderr '300000 errors'
{ echo 'cylinder,bore_mm,top_gap_mm'; head -c 17000000 /dev/zero | tr '\0' 1; } \
    >"$work/huge.csv"
sheet 2 "$work/huge.csv"
says stderr 'larger than 16 MB'
printf 'cylinder,bore_mm,top_gap_mm\n1,\033[31m86.5,0.42\n' >"$work/escape.csv"
sheet 2 "$work/escape.csv"
grep -q "$(printf '\033')" "$work/stderr" && fail "an escape reaches the terminal"

# Places that cannot be written.
sheet 4 "$plain" -o "$work/none/such/out"
: >"$work/file"
sheet 4 "$plain" -o "$work/file"
if [ -w /dev/full ]; then
    "$coldgap" sheet "$engine" --measured "$plain" >/dev/full 2>"$work/stderr"
    got=$?
    [ "$got" -eq 4 ] || fail "sheet >/dev/full: exit $got, expected 4"
fi
# A limit on the size of files (blocks of 512 bytes) stands in for a full disk.
(trap '' XFSZ
 ulimit -f 1
 "$coldgap" sheet "$engine" --measured "$plain" -q -o "$work/full" >/dev/null \
     2>"$work/stderr")
got=$?
[ "$got" -eq 4 ] || fail "a full disk: exit $got, expected 4"
says stderr '[.]dat: could not write'
[ -e "$work/full" ] && fail "a half-written table was kept, or its folder"
left=$(find "$work" -name '*.part')
[ -z "$left" ] || fail "left behind: $left"
finish
