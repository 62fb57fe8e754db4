#!/bin/sh
# Memory: valgrind on every command and on what fails.  What is still
# reachable at the end is not counted: the OpenMP library keeps 8 bytes.
#
#   run_leaks.sh COLDGAP SOURCES
set -u
coldgap=$1
sources=$2
. "$(dirname "$0")/lib.sh"
command -v valgrind >/dev/null 2>&1 || skip "valgrind not installed"
grep -q __asan_init "$coldgap" && skip "built with sanitizers"

# check STATUS WORDS...
check() {
    want=$1
    shift
    valgrind --quiet --error-exitcode=99 --leak-check=full \
        --show-leak-kinds=definite,indirect,possible \
        --errors-for-leak-kinds=definite,indirect,possible \
        "$coldgap" "$@" >"$work/stdout" 2>"$work/stderr"
    got=$?
    if [ "$got" -ne "$want" ]; then
        fail "coldgap $*: exit $got, expected $want"
        cat "$work/stderr"
    fi
}

engines=$sources/configs/engines
# valgrind is slow: a settled duty walks the same code
quick='--set duty.name=settled'
# shellcheck disable=SC2086 # a list of words is meant to split
{
check 0 find "$engines/big_eight.cfg" $quick -o "$work/out"
check 1 find "$engines/plain_four.cfg" --set rings.top.cold_gap_mm=0.1
check 0 find "$engines/iron_six.cfg" $quick --report "$work/page.html"
check 4 find "$engines/iron_six.cfg" --report "$work/no/such/page.html"
check 0 network "$engines/plain_four.cfg" $quick -o "$work/out"
check 1 sheet "$engines/iron_six.cfg" $quick -o "$work/out" \
    --measured "$sources/configs/measured/iron_six.csv"
check 0 lesson "$engines/boosted_four.cfg" $quick --answers -o "$work/out"
check 4 lesson "$engines/plain_four.cfg" -q -o "$work/none/such"
check 2 sheet "$engines/iron_six.cfg" \
    --measured "$sources/tests/bad/parts/sheet_many.csv"
check 0 card "$engines/boosted_four.cfg" $quick -o "$work/out" \
    --from "$engines/taught_four.cfg" --report "$work/card.html"
check 4 card "$engines/plain_four.cfg" --from "$work/none.cfg"
check 0 ladder "$engines/plain_four.cfg" $quick -o "$work/out" \
    --set margin.duties= --set uncertainty.other_laws=false \
    --write "$work/new.cfg"
check 0 seal "$engines/iron_six.cfg" $quick -o "$work/out"
}
check 0 template
sample=$sources/configs/profiles/plateau.txt
check 0 finish "$engines/plain_four.cfg" --profile "$sample" -o "$work/out"
check 0 finish "$engines/plain_four.cfg" --profile "$sample" --filter robust
check 0 finish "$engines/plain_four.cfg" --simulate plateau -o "$work/out"
check 2 finish "$engines/plain_four.cfg" --profile "$sources/README.md"
check 2 finish "$engines/plain_four.cfg" --profile "$sample" --cutoff 8mm
check 4 finish "$engines/plain_four.cfg" --profile "$sample" -o "$work/n/o"
check 0 find --help
check 2 find "$sources/tests/bad/unknown_fuel.cfg"
check 2 find "$engines/plain_four.cfg" --set engine.bore_mm=nonsense
check 4 find "$engines/plain_four.cfg" -o "$work/none/such"
check 4 find "$work/none.cfg"
finish
