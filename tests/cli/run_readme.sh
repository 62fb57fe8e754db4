#!/bin/sh
# The README's run is real: each block after `<!-- run: coldgap ... -->` equals
# what the program prints (but for the time taken).
#   run_readme.sh COLDGAP ROOT          compare
#   run_readme.sh COLDGAP ROOT --write  bring the README up to date
set -eu
COLDGAP=$1 root=$2
export COLDGAP
cd "$root"
new=$(mktemp)
trap 'rm -f "$new"' EXIT
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
        runs++
        next
    }
    { print }
    END { if (!runs) exit 1 }
' README.md >"$new"
if [ "${3:-}" = --write ]; then
    cat "$new" >README.md
else
    diff -u README.md "$new"
fi
