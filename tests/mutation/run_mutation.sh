#!/bin/sh
# Does a check notice a wrong constant?  Every floating constant of models/,
# one at a time, 5 % larger.
#
#   run_mutation.sh SOURCES BUILD [FILE...]
#
# Writes BUILD/mutation.dat, a row a constant, and prints how many each module
# has and how many turned a check red.  left_out.txt names the constants that
# are no physics, with the reason.  Exit status 1 when one survives.  Takes a
# quarter of an hour on two cores; give files of models/ for less, or CG_SLOWEST=3 in
# the environment to leave out suites of more than three seconds.
set -eu
sources=$(cd "$1" && pwd)
build=$(cd "$2" && pwd)
shift 2
here=$(cd "$(dirname "$0")" && pwd)
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

for library in libcoldgap.a libcoldgap_program.a; do
    [ -f "$build/$library" ] || { echo "$build/$library: build first" >&2; exit 1; }
done

[ $# -gt 0 ] || set -- $(cd "$sources/models" && ls *.h */*.[ch] | sed "s,.*/,,")
for file in "$@"; do
    awk -f "$here/literals.awk" "$(ls "$sources"/models/"$file" \
        "$sources"/models/*/"$file" 2>/dev/null)" |
        sed "s/^/$file /"
done | awk -v list="$here/left_out.txt" '
    BEGIN {
        while ((getline line <list) > 0)
            if (line !~ /^(#|$)/) {
                split(line, word, " ")
                of[++rules] = word[1]
                what[rules] = word[2]
            }
    }
    {
        for (i = 1; i <= rules; i++)
            if ((of[i] == $1 || of[i] == "all") &&
                (what[i] == $4 || what[i] == "all" ||
                 (what[i] ~ /^~/ && $4 ~ substr(what[i], 2))))
                next
        print
    }
' >"$scratch/list"
echo "$(wc -l <"$scratch/list") constants"

# suites, the quick ones first, as ctest last timed them
costs=$build/Testing/Temporary/CTestCostData.txt
{ [ ! -f "$costs" ] || cat "$costs"; } |
    awk -v most="${CG_SLOWEST:-1e9}" '$1 ~ /^(test|outside)_|^peer_cycle$/ && $1 !~ /^test_memory/ &&
        NF == 3 && $3 <= most {print $3, $1}' | sort -n |
    cut -d' ' -f2 >"$scratch/order"
[ -s "$scratch/order" ] ||
    (cd "$build/tests" && ls -d test_* outside_* peer_cycle | grep -v test_memory) >"$scratch/order"

# The suites run from a folder of their own, and must be green when nothing is
# changed: else every constant would seem to be noticed.
COLDGAP_CONFIGS=$sources/configs
export COLDGAP_CONFIGS
control=$(sh "$here/mutant.sh" "$sources" "$build" "$scratch" gas.c 0 0 none)
case $control in
*'"SURVIVED"'*) ;;
*) echo "red without a change: $control" >&2; exit 1 ;;
esac

xargs -r -P 2 -L 1 sh "$here/mutant.sh" "$sources" "$build" "$scratch" \
    <"$scratch/list" >"$scratch/rows"
{
    echo "# Constants of models/, 5 % larger one at a time: the check that noticed"
    echo "# module  place  constant  suite  check  what it said"
    sort "$scratch/rows"
} >"$build/mutation.dat.part"
mv "$build/mutation.dat.part" "$build/mutation.dat"

awk '!/^#/ {
         module = $1; gsub(/"/, "", module)
         all[module]++
         if ($4 ~ /^"(SURVIVED|build|link)"$/) {
             left[module]++
             print "not noticed:", $2, $3, $4
         } else if (!(module in first))
             first[module] = $4 " " $5
     }
     END {
         for (module in all)
             printf("%-22s %3d constants, %3d noticed, first by %s\n", module,
                 all[module], all[module] - left[module], first[module])
     }' "$build/mutation.dat"
! grep -q -E '"(SURVIVED|build|link)"' "$build/mutation.dat"
