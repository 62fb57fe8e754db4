#!/bin/sh
# Draws every picture from a run's tables; and every script is in plots/run.sh.
#
#   run_plots.sh COLDGAP SOURCES
set -u
coldgap=$1
sources=$2
. "$(dirname "$0")/lib.sh"

for script in "$sources"/plots/*.gp; do
    name=$(basename "$script" .gp)
    [ "$name" = style ] && continue
    grep -q -w "$name" "$sources/plots/run.sh" ||
        fail "plots/run.sh does not draw $name"
done
command -v gnuplot >/dev/null 2>&1 || skip "gnuplot not installed"
export LC_ALL=C.UTF-8

# draw FOLDER
draw() {
    for script in "$sources"/plots/*.gp; do
        name=$(basename "$script" .gp)
        [ "$name" = style ] && continue
        (cd "$sources" && gnuplot -e "dir='$1'" "plots/$name.gp") \
            >"$work/stdout" 2>"$work/stderr" || fail "$name: gnuplot failed"
        if [ -s "$work/stderr" ]; then
            fail "$name: gnuplot complains"
            cat "$work/stderr"
        fi
        size=$(wc -c <"$1/$name.png" 2>/dev/null || echo 0)
        [ "$size" -gt 5000 ] || fail "$name.png: $size bytes"
        [ "$(head -c 4 "$1/$name.png" | tail -c 3)" = PNG ] ||
            fail "$name.png is no PNG"
        size=$(wc -c <"$1/$name.svg" 2>/dev/null || echo 0)
        [ "$size" -gt 5000 ] || fail "$name.svg: $size bytes"
        tail -c 20 "$1/$name.svg" | grep -q '</svg>' ||
            fail "$name.svg is not whole"
        grep -q 'not a warranty' "$1/$name.svg" || fail "$name has no caution"
    done
}

expect 0 "$coldgap" find "$sources/configs/engines/boosted_four.cfg" \
    -o "$work/out"
draw "$work/out"
# The shortest duty and a touching ring must not break a picture.
expect 1 "$coldgap" find "$sources/configs/engines/iron_six.cfg" \
    --set duty.name=settled --set rings.top.cold_gap_mm=0.1 -o "$work/touch"
draw "$work/touch"
finish
