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
says stdout '5 hold, 0 missed'

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
