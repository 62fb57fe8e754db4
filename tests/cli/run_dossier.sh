#!/bin/sh
# The dossier must turn red, with the suite's name, when a suite crashes, fails,
# is missing or leaves fewer rows than it owes.
#
#   run_dossier.sh SOURCES SUITE      SUITE: one that leaves rows
set -u
sources=$1
suite=$2
. "$(dirname "$0")/lib.sh"
build=$work/build
mkdir -p "$work/tests/cli" "$build/tests" "$build/dossier"
cp "$sources/tests/dossier.sh" "$sources/tests/dossier.awk" "$work/tests/"
: >"$build/coldgap"
chmod +x "$build/coldgap"
printf 'outside_one 1\noutside_two 2\npeer_three 1\ncli_network 1\n' \
    >"$work/tests/dossier_rows.txt"
printf '%s\n' outside_one outside_two peer_three >"$build/dossier/suites"
printf '<!-- dossier -->\n<!-- end -->\n' >"$work/README"
printf '<!-- dossier line -->\nold\n<!-- end -->\n' >"$work/FIRST"

# fake FILE LINE...: a suite made of these lines; `row N` leaves a row.
fake() {
    file=$1
    shift
    {
        echo '#!/bin/sh'
        echo "row() { printf '%s\tt\tvalue\tx\tby hand\t%d\t%d\t0\tholds\n'" \
            "$(basename "$file").c" '"$1" "$1" >>"$CG_DOSSIER"; }'
        echo "end() { printf 'end\t%d\n' \"\$1\" >>\"\$CG_DOSSIER\"; }"
        printf '%s\n' "$@"
    } >"$file"
    chmod +x "$file"
}
two() {
    fake "$build/tests/outside_two" "$@"
    rm -f "$build/dossier/outside_two.rows"
}
dossier() { expect "$1" sh "$work/tests/dossier.sh" "$build"; }

fake "$build/tests/outside_one" 'row 1' 'end 0'
fake "$build/tests/peer_three" 'row 1' 'end 0'
fake "$work/tests/cli/run_network.sh" \
    'printf "run_network.sh\tt\tvalue\tx\tngspice\t1\t1\t0\tholds\n" \
        >"$CG_DOSSIER"' 'end 0'
two 'row 1' 'row 2' 'end 0'
dossier 0
says stdout '4 hold, 0 missed'

# A loop is one row with its worst member; what the program was set by is no
# check; the weakest word of a source decides.
line() { # WHAT SOURCE EXPECTED GOT ALLOWED
    printf '%s' 'printf "outside_two.c\tt\tvalue\t'"$1\t$2\t$3\t$4\t$5"
    printf '%s\n' '\tholds\n" >>"$CG_DOSSIER"'
}
two "$(line a 'measured film, a journal (2022)' 2 2 1)" \
    "$(line a 'measured film, a journal (2022)' 2 2.5 1)" \
    "$(line b 'calibrated on: a manual (2002)' 2 2 1)" \
    "$(line c 'a table (2002)' 2 2 1)" \
    "$(line d 'measured film (2002), from memory' 2 2 1)" 'end 0'
expect 0 sh "$work/tests/dossier.sh" "$build" "$work/README" "$work/FIRST" --write
for want in 'measured by others | 1 | 0' 'printed data.* | 1 | 1' \
    'mathematics | 2 | 0' 'other solvers | 1 | 0' 'from memory | 1 | 0' \
    'common practice | 0 | 0' 'all.. | 6 | 1'; do
    grep -q "$want" "$work/README" || fail "no row of counts: $want"
done
sed -n 5p "$work/README" | grep -q 'measured by others' ||
    fail "what others measured does not come first"
grep -q ') 1 is against what others' "$work/FIRST" || fail "no sentence"
grep -q old "$work/FIRST" && fail "the old sentence stays"
grep -q '"a" measured .* 2 2.5 0.5 1 holds 2 checked' "$build/dossier.dat" ||
    fail "a loop's worst member does not stand for it"
expect 0 sh "$work/tests/dossier.sh" "$build" "$work/README" "$work/FIRST"
printf '<!-- dossier -->\n<!-- end -->\n' >"$work/README"
printf 'outside_one 1\noutside_two 2\npeer_three 1\ncli_network 1\n' \
    >"$work/tests/dossier_rows.txt"

two 'row 1' 'row 2' 'kill -SEGV $$'
dossier 1
says stdout 'outside_two: did not come to its end'
two 'row 1' 'end 0'
dossier 1
says stdout 'outside_two: 1 rows, owes 2'
two 'row 1' 'row 2' 'end 1'
dossier 1
says stdout 'outside_two: 1 of its tests failed'
two 'exit 0'
dossier 1
says stdout 'outside_two: left no rows'

# Rows of an earlier run that broke off are not taken for the suite's.
two 'row 1' 'row 2' 'end 0'
printf 'outside_two.c\tt\tvalue\tx\tby hand\t1\t1\t0\tholds\n' \
    >"$build/dossier/outside_two.rows"
dossier 0

# What is broken is not written down; what is fewer is, for all to read.
two 'kill -SEGV $$'
expect 1 sh "$work/tests/dossier.sh" "$build" "$work/README" --write
grep -q 'outside_two 2' "$work/tests/dossier_rows.txt" ||
    fail "rows owed were written by a broken suite"
[ "$(wc -l <"$work/README")" -eq 2 ] || fail "README written in spite of it"
two 'row 1' 'end 0'
expect 0 sh "$work/tests/dossier.sh" "$build" "$work/README" --write
grep -q 'outside_two 1' "$work/tests/dossier_rows.txt" ||
    fail "rows owed were not written"
expect 0 sh "$work/tests/dossier.sh" "$build" "$work/README"

fake "$build/tests/peer_three" 'exit 77'
rm "$build/dossier/peer_three.rows"
expect 77 sh "$work/tests/dossier.sh" "$build" "$work/README"
rm "$build/tests/outside_two"
dossier 1
says stdout 'outside_two: not built'
printf 'outside_one\n' >"$build/dossier/suites"
dossier 1
says stdout 'outside_two: not among the suites'

# The suites' side: a closing row, and no row lost in silence.
expect 0 env CG_DOSSIER="$work/rows" "$suite"
[ "$(tail -n 1 "$work/rows")" = "$(printf 'end\t0')" ] || fail "no closing row"
expect 1 env CG_DOSSIER="$work/none/rows" "$suite"
finish
