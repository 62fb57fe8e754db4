#!/bin/sh
# The dossier: every check against something from outside, in one table.
#
#   sh tests/dossier.sh BUILD                  prints it, writes BUILD/dossier.dat
#   sh tests/dossier.sh BUILD README           the README's counts are these?
#   sh tests/dossier.sh BUILD README --write   bring them up to date
#
# The suites leave their rows (tests/dossier.h) in BUILD/dossier/ whenever
# ctest runs; those missing or older than their suite are run here.  Rows of
# tests/outside/, tests/program/outside_* and tests/peer/ all count; of the
# other suites those whose source is someone else's work.  Equal rows count
# once; of a loop of more than a hundred points, or of any loop over a formula
# in the other suites, the worst point stands for all.
# Exit status 1: a check is missed, or the README differs.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
build=$(cd "$1" && pwd)
rows=$build/dossier
table=$build/dossier.dat
mkdir -p "$rows"

stale() {
    [ ! -f "$rows/$1.rows" ] || [ "$2" -nt "$rows/$1.rows" ]
}

for suite in "$build"/tests/outside_* "$build"/tests/test_* \
    "$build"/tests/peer_*; do
    name=$(basename "$suite")
    [ -x "$suite" ] && [ -f "$suite" ] || continue
    stale "$name" "$suite" || continue
    echo "running $name" >&2
    CG_DOSSIER=$rows/$name.rows "$suite" >"$rows/$name.log" 2>&1 || true
    [ -f "$rows/$name.rows" ] || : >"$rows/$name.rows"
done
if stale cli_network "$build/coldgap"; then
    echo "running cli_network" >&2
    CG_DOSSIER=$rows/cli_network.rows sh "$here/cli/run_network.sh" \
        "$build/coldgap" "$here/.." >"$rows/cli_network.log" 2>&1 || true
fi
touch "$rows/cli_network.rows"

sort -u "$rows"/*.rows >"$rows/all"
awk -f "$here/dossier.awk" -v part=rows "$rows/all" | sort >"$rows/kept"
{
    echo "# Every check of coldgap against something from outside"
    echo "# kind: published, derived (a published formula worked out, a"
    echo "#   definition, a limit), memory (recalled, not looked up again),"
    echo "#   practice (of the trade, no source), solver (someone else's program)"
    echo "# expected and allowed: of a band its middle and half its width"
    echo "# points: of a long loop, whose worst point is shown"
    echo "# subject  check  what  kind  source  expected  got  difference  allowed  verdict  points"
    awk -F'\t' '{
        for (i = 1; i <= 5; i++) gsub(/"/, "'\''", $i)
        printf "\"%s\" \"%s\" \"%s\" %s \"%s\" %s %s %.4g %s %s %d\n",
            $1, $2, $3, $4, $5, $6, $7, $7 - $6, $8, $9, $10
    }' "$rows/kept"
} >"$table.part"
mv "$table.part" "$table"
awk -f "$here/dossier.awk" -v part=counts "$rows/kept" >"$rows/counts"

if [ $# -lt 2 ]; then
    awk -f "$here/dossier.awk" -v part=text "$rows/kept"
    echo
    cat "$rows/counts"
    echo
    echo "The same as a table: $table"
else
    for solver in ngspice CalculiX CVODE; do
        if ! cut -f5 "$rows/kept" | grep -q "$solver"; then
            echo "skipped: no rows of $solver here, so the counts differ"
            exit 77
        fi
    done
    awk -v counts="$rows/counts" '
        /^<!-- dossier -->$/ {
            print; print ""
            while ((getline line <counts) > 0) print line
            print ""
            while ((getline line) > 0 && line !~ /^<!-- end/) continue
            print line; found = 1
            next
        }
        { print }
        END { exit !found }' "$2" >"$rows/readme"
    if [ "${3:-}" = --write ]; then
        cat "$rows/readme" >"$2"
    else
        diff -u "$2" "$rows/readme"
    fi
fi
missed=$(cut -f9 "$rows/kept" | grep -c MISSED || true)
[ "$missed" -eq 0 ] || echo "$missed missed"
[ "$missed" -eq 0 ]
