#!/bin/sh
# What the READMEs quote is real: each block after `<!-- run: coldgap ... -->`
# equals what the program prints (but for the time taken).  The first README is
# short: 150 lines of 80 columns.
#   run_readme.sh COLDGAP ROOT          compare
#   run_readme.sh COLDGAP ROOT --write  bring them up to date
set -eu
COLDGAP=$1 root=$2
export COLDGAP
cd "$root"
new=$(mktemp)
trap 'rm -f "$new"' EXIT
bring() {
    awk '
    /^<!-- run: coldgap / {
        print
        command = $0
        sub(/^<!-- run: coldgap /, "", command)
        sub(/ -->$/, "", command)
        getline; print
        command = "\"$COLDGAP\" " command
        n = 0
        while ((command | getline line) > 0)
            if (line !~ /^Computed in /) { kept[++n] = line }
        while (n > 0 && kept[n] == "") n--
        for (i = 1; i <= n; i++) print kept[i]
        while ((getline line) > 0 && line != "```") continue
        print "```"
        next
    }
    { print }
' "$1"
}

runs=0
for file in README.md */README.md; do
    count=$(grep -c '^<!-- run: coldgap ' "$file" || true)
    runs=$((runs + count))
    [ "$count" -gt 0 ] || continue
    bring "$file" >"$new"
    if [ "${3:-}" = --write ]; then
        cat "$new" >"$file"
    else
        diff -u "$file" "$new"
    fi
done
[ "$runs" -gt 4 ] || { echo "$runs runs quoted"; exit 1; }
awk 'length($0) > 80 && !/^<!--/ { print "README.md:" NR ": over 80 columns"; bad = 1 }
     END { if (NR > 150) { print "README.md: " NR " lines"; bad = 1 } exit bad }' README.md
