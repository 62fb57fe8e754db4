#!/bin/sh
# --drawings: what the program draws by itself, in JSON and on pages, the same
# with gnuplot and without.
#
#   run_drawings.sh COLDGAP SOURCES
set -u
coldgap=$(realpath "$1")
sources=$(realpath "$2")
. "$(dirname "$0")/lib.sh"
here=$(cd "$(dirname "$0")" && pwd)
command -v python3 >/dev/null 2>&1 || skip "python3 not installed"
engines=$sources/configs/engines
mkdir "$work/none"

# holds NAMES WORDS...: the command's JSON holds those drawings, and else what it
# holds without.
holds() {
    names=$1
    shift
    "$coldgap" "$@" --json >"$work/without" 2>"$work/stderr"
    want=$?
    expect "$want" "$coldgap" "$@" --json --drawings
    [ -s "$work/stderr" ] && fail "$*: words on stderr"
    # shellcheck disable=SC2086 # a list of words is meant to split
    python3 "$here/drawings_check.py" "$work/stdout" "$work/without" $names \
        >"$work/broken" 2>&1
    [ -s "$work/broken" ] && fail "$*: $(head -n 5 "$work/broken")"
}

find_has="why hot_gap stroke shares"
count=0
for config in "$engines"/*.cfg "$sources/configs/logs/logged_four.cfg"; do
    holds "$find_has" find "$config"
    count=$((count + 1))
    # a page takes them all, and asks for nothing else
    (PATH=$work/none
     export PATH
     "$coldgap" find "$config" -q --report "$work/page.html" >/dev/null 2>&1)
    [ "$(grep -c '<svg ' "$work/page.html")" -eq 4 ] ||
        fail "$config: no four drawings on a page without gnuplot"
done
[ "$count" -gt 10 ] || fail "only $count engines"

# What an easy question does not show: ends that touch, no gap in range, inches,
# samples, a course by a log, names.
iron=$engines/iron_six.cfg
holds "$find_has" find "$iron" --set rings.top.cold_gap_mm=0.1
says stdout 'TOO SMALL'
says stdout 'ends touch'
holds "$find_has" find "$iron" --set uncertainty.bore_size_mm=1
says stdout 'no gap in range will do'
holds "$find_has" find "$iron" --units inch --samples 16 --duty settled
says stdout 'alone and with others'
holds "$find_has" find "$iron" --duty cold_start_abuse \
    --set 'engine.name=<b>&"'"'"'</text>'
grep -q '<b>' "$work/stdout" && [ -z "$(grep -o '"svg": "[^"]*<b>' "$work/stdout")" ] ||
    fail "a name is markup"
holds "lesson_ring lesson_gap" lesson "$iron" --duty settled
for range in 0:200:100 0,150 200,0,100; do
    holds boost sweep "$iron" --duty settled -o "$work/sweep" \
        --vary "charge.boost_kPa=$range"
done
holds boost sweep "$iron" --duty settled -o "$work/sweep" \
    --vary charge.boost_psi=0,20
holds "" sweep "$iron" --duty settled -o "$work/sweep" \
    --vary charge.boost_time_s=1,2

# A page is the same with gnuplot and without, as far as these go.
if command -v gnuplot >/dev/null 2>&1; then
    "$coldgap" find "$iron" -q --report "$work/full.html" >/dev/null 2>&1
    (PATH=$work/none
     export PATH
     "$coldgap" find "$iron" -q --report "$work/page.html" >/dev/null 2>&1)
    for page in full page; do
        # figures are counted, so their numbers differ
        sed -n '/viewBox="0 0 360 /,/<\/svg>/p' "$work/$page.html" |
            sed 's/figure-[0-9]*/figure/g' >"$work/$page"
    done
    [ -s "$work/full" ] && cmp -s "$work/full" "$work/page" ||
        fail "gnuplot changes what the program draws"
fi

# Without --json it is refused, and other commands have it not.
expect 2 "$coldgap" find "$iron" --drawings
says stderr '^coldgap: --drawings: only with --json is allowed$'
[ "$(wc -l <"$work/stderr")" -eq 1 ] || fail "more than a line"
expect 2 "$coldgap" seal "$iron" --json --drawings
says stderr 'takes no option --drawings, find does'
finish
