#!/bin/sh
# Draws every picture whose tables are in a folder: each script names them in
# its line "# needs:".
#   sh plots/draw.sh OUT
set -eu
plots=$(dirname "$0")
out=${1:?which folder of tables? write: sh $0 OUT}
command -v gnuplot >/dev/null 2>&1 || {
    echo "draw.sh: gnuplot is not installed: no pictures of $out" >&2
    exit 4
}
# The degree sign needs UTF-8, which a bare machine does not speak by itself.
export LC_ALL=C.UTF-8
for script in "$plots"/*.gp; do
    needs=$(sed -n 's/^# needs: //p' "$script")
    [ -n "$needs" ] || continue
    for table in $needs; do
        # "sweep.dat/2": a sweep over two settings
        axes=${table#*/}
        file=$out/${table%/*}
        [ -f "$file" ] || continue 2
        [ "$axes" = "$table" ] ||
            [ "$axes" = "$(sed -n 's/^# grid of.*points://p' "$file" | wc -w |
                           awk '{print $1 / 2}')" ] || continue 2
    done
    gnuplot -e "dir='$out'" "$script"
    echo "$out/$(basename "$script" .gp).png"
done
