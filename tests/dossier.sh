#!/bin/sh
# The dossier: every check against something from outside, in one table.
#
#   sh tests/dossier.sh BUILD                   prints it, writes BUILD/dossier.dat
#   sh tests/dossier.sh BUILD FILE...           the counts in FILE are these?
#   sh tests/dossier.sh BUILD FILE... --write   bring them up to date
#
# In FILE the tables stand between <!-- dossier --> and <!-- end -->, the
# sentence of their counts between <!-- dossier line --> and <!-- end -->.
#
# The suites leave their rows (tests/dossier.h) in BUILD/dossier/ whenever
# ctest runs; those older than their suite, or not all there, are run here.
# BUILD/dossier/suites, written by CMake, names the suites; dossier_rows.txt
# beside this script says how many rows each owes, so that one which crashes,
# is not built or leaves fewer is named.  A peer that is not installed owes none.
# Rows of tests/outside/, tests/program/outside/ and tests/peer/ all count; of
# the other suites those whose source is someone else's work.  Equal rows count
# once, and of a loop over one thing the worst point stands for all.  What the
# program was set by is `calibrated on`, and counted apart.
# Exit status 1: a check is missed, a suite owes rows, or the README differs.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
build=$(cd "$1" && pwd)
shift
write=false files=
for word; do # names without blanks: they are the project's own
    if [ "$word" = --write ]; then write=true; else files="$files $word"; fi
done
rows=$build/dossier
table=$build/dossier.dat
owed=$here/dossier_rows.txt
: >"$rows/all.part"
: >"$rows/broken"
: >"$rows/differs"
: >"$rows/absent"
sed '/^#/!d' "$owed" >"$rows/owed"

# left NAME: how many of a suite's rows count, or what went wrong.
left() {
    if [ -f "$rows/$1.rows" ]; then
        awk -f "$here/dossier.awk" -v part=left "$rows/$1.rows"
    else
        echo "left no rows"
    fi
}

owes() {
    awk -v name="$1" '$1 == name {n = $2} END {print n + 0}' "$owed"
}

# take NAME PROGRAM COMMAND...: the suite's rows, by running it where they are
# not those of the program as it is.
take() {
    name=$1 program=$2 status=0
    shift 2
    if [ ! -x "$program" ]; then
        echo "$name: not built" >>"$rows/broken"
        return
    fi
    if [ "$program" -nt "$rows/$name.rows" ] ||
        [ "$(left "$name")" != "$(owes "$name")" ]; then
        echo "running $name" >&2
        rm -f "$rows/$name.rows"
        CG_DOSSIER=$rows/$name.rows "$@" >"$rows/$name.log" 2>&1 || status=$?
    fi
    count "$name" "$status"
}

# count NAME STATUS: what a suite left against what it owes.
count() {
    got=$(left "$1")
    if [ "$2" -eq 77 ]; then
        echo "$1" >>"$rows/absent"
        got=$(owes "$1")
    elif [ "$got" = "$(owes "$1")" ]; then
        grep -v '^end' "$rows/$1.rows" >>"$rows/all.part" || true
    elif [ "${got#*[!0-9]}" != "$got" ]; then
        echo "$1: $got" >>"$rows/broken"
    else
        echo "$1: $got rows, owes $(owes "$1")" >>"$rows/differs"
        grep -v '^end' "$rows/$1.rows" >>"$rows/all.part" || true
    fi
    [ "$got" = 0 ] || echo "$1 $got" >>"$rows/owed"
}

while read -r suite; do
    take "$suite" "$build/tests/$suite" "$build/tests/$suite"
done <"$rows/suites"
take cli_network "$build/coldgap" \
    sh "$here/cli/run_network.sh" "$build/coldgap" "$here/.."
for suite in $(sed '/^#/d; s/ .*//' "$owed"); do
    case $suite in
    peer_*)
        grep -qx "$suite" "$rows/suites" || count "$suite" 77
        ;;
    cli_network) ;;
    *)
        grep -qx "$suite" "$rows/suites" ||
            echo "$suite: not among the suites" >>"$rows/broken"
        ;;
    esac
done

sort -u "$rows/all.part" >"$rows/all"
rm "$rows/all.part"
awk -f "$here/dossier.awk" -v part=rows "$rows/all" | sort >"$rows/kept"
{
    echo "# Every check of coldgap against something from outside"
    echo "# kind: measured (by others, on engines or their parts), printed (data and"
    echo "#   worked examples), mathematics (a formula worked out, a definition, a"
    echo "#   limit), solver (someone else's program), memory (recalled, not looked"
    echo "#   up again), practice (of the trade, no source)"
    echo "# expected and allowed: of a band its middle and half its width; or_less"
    echo "#   and or_more: a limit of one side"
    echo "# points: of a loop, whose worst point is shown"
    echo "# use: checked, or calibrated: the program was set by it"
    echo "# subject  check  what  kind  source  expected  got  difference  allowed  verdict  points  use"
    awk -F'\t' '{
        for (i = 1; i <= 5; i++) gsub(/"/, "'\''", $i)
        printf "\"%s\" \"%s\" \"%s\" %s \"%s\" %s %s %.4g %s %s %d %s\n",
            $1, $2, $3, $4, $5, $6, $7, $7 - $6, $8, $9, $10, $11
    }' "$rows/kept"
} >"$table.part"
mv "$table.part" "$table"
awk -f "$here/dossier.awk" -v part=counts "$rows/kept" >"$rows/counts"
awk -f "$here/dossier.awk" -v part=line "$rows/kept" |
    fold -s -w 80 | sed 's/ *$//' >"$rows/line"

if $write; then
    : >"$rows/differs"
fi
if [ -s "$rows/broken" ] || [ -s "$rows/differs" ]; then
    cat "$rows/broken" "$rows/differs"
    echo "Rows are owed, so the dossier is not whole (tests/dossier_rows.txt)"
    exit 1
fi
if [ -z "$files" ]; then
    awk -f "$here/dossier.awk" -v part=text "$rows/kept"
    echo
    cat "$rows/counts"
    echo
    echo "The same as a table: $table"
    [ ! -s "$rows/absent" ] || echo "Not installed: $(paste -sd' ' "$rows/absent")"
else
    if [ -s "$rows/absent" ]; then
        echo "skipped: counts want $(paste -sd' ' "$rows/absent")"
        exit 77
    fi
    for file in $files; do
        awk -v folder="$rows/" '
            /^<!-- dossier( line)? -->$/ {
                print
                blank = /line/ ? "" : "\n"
                from = folder (/line/ ? "line" : "counts")
                printf blank
                while ((getline line <from) > 0) print line
                printf blank
                while ((getline line) > 0 && line !~ /^<!-- end/) continue
                print line; found = 1
                next
            }
            { print }
            END { exit !found }' "$file" >"$rows/readme"
        if $write; then
            cat "$rows/readme" >"$file"
        else
            diff -u "$file" "$rows/readme"
        fi
    done
    ! $write || cat "$rows/owed" >"$owed"
fi
missed=$(cut -f9 "$rows/kept" | grep -c MISSED || true)
[ "$missed" -eq 0 ] || echo "$missed missed"
[ "$missed" -eq 0 ]
