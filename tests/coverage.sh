#!/bin/sh
# How much of models/ the tests reach: lines, and branches taken either way.
#
#   cmake -S . -B build_coverage -DCG_COVERAGE=ON && cmake --build build_coverage
#   ctest --test-dir build_coverage
#   sh tests/coverage.sh build_coverage
#
# Exit status 1 below 95 % of lines or 85 % of branches.  Branches inside
# assert() are not counted: their other side is a bug.
set -eu
build=$(cd "$1" && pwd)
cd "$(dirname "$0")/.."
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
objects=$build/CMakeFiles/coldgap_models.dir/models
sources=$PWD
cd "$scratch"
for source in "$sources"/models/*/*.c; do
    name=${source#"$sources"/models/}
    [ -f "$objects/$name.gcda" ] || { echo "$name: never run"; continue; }
    gcov -b -c -o "$objects/$name.gcno" "$source" >/dev/null
    awk -v name="$name" '
        /^ +-:/ {next}
        /^ *[0-9#=*]+\**:/ {
            split($0, part, ":")
            text = substr($0, index($0, part[3]))
            ours = text !~ /assert\(/
            lines++
            if (part[1] ~ /#|=/) { bare = bare " " part[2] + 0 } else hit++
            next
        }
        /^branch/ && ours {
            branches++
            if ($0 ~ /never executed/ || $4 == 0) missing[part[2] + 0]++
            else taken++
        }
        END {
            for (line in missing) half = half " " line
            printf "%s\t%d\t%d\t%d\t%d\t%s\t%s\n", name, lines, hit, branches,
                taken, bare, half
        }' "$(basename "$name").gcov" >>rows
done
awk -F'\t' '
    {
        lines += $2; hit += $3; branches += $4; taken += $5
        printf "%-26s lines %5.1f %%  branches %5.1f %%", $1, 100 * $3 / $2,
            $4 ? 100 * $5 / $4 : 100
        if ($6 != "") printf "  not reached:%s", $6
        print ""
    }
    END {
        printf "models/: %d of %d lines, %.1f %%; %d of %d branches, %.1f %%\n",
            hit, lines, 100 * hit / lines, taken, branches,
            100 * taken / branches
        exit !(hit >= 0.95 * lines && taken >= 0.85 * branches)
    }' rows
