#!/bin/sh
# Draws every picture whose tables are in a folder: each script names them in
# its line "# needs:".
#   sh plots/draw.sh OUT
# Exit status 4 where there is nothing to draw, or a picture fails.
set -eu
plots=$(dirname "$0")
out=${1:?which folder of tables? write: sh $0 OUT}
command -v gnuplot >/dev/null 2>&1 || {
    echo "draw.sh: gnuplot is not installed: no pictures of $out" >&2
    exit 4
}
# The degree sign needs UTF-8, which a bare machine does not speak by itself.
export LC_ALL=C.UTF-8

# Whether a sweep's table, "# grid of N points: PATH=FIRST..LAST (COUNT) ...",
# is what a picture needs: COUNT axes, all of numbers; COUNT:PATH, that one (in
# any unit) first; curves: one of numbers, then one of names or (but for boost,
# which has a picture of its own) none.
axes_fit() {
    sed -n 's/^# grid of.*points: //p' "$1" | awk -v needs="$2" '{
            for (i = 1; i < NF; i += 2) {
                value = $i
                sub(/^[^=]*=/, "", value)
                kinds = kinds \
                    (value ~ /^[-+0-9.eE]*[.][.][-+0-9.eE]*$/ ? "1" : "a")
            }
            boost = $1 ~ /^charge.boost(_[A-Za-z]+)?=/
            if (needs == "curves") exit !(kinds == "1a" || kinds == "1" && !boost)
            if (needs == "1:charge.boost") exit !(kinds == "1" && boost)
            exit kinds != "11"
        }'
}

failed=0
drawn=0
for script in "$plots"/*.gp; do
    needs=$(sed -n 's/^# needs: //p' "$script")
    [ -n "$needs" ] || continue
    for table in $needs; do
        file=$out/${table%/*}
        [ -f "$file" ] || continue 2
        case $table in
        */*) axes_fit "$file" "${table#*/}" || continue 2 ;;
        esac
    done
    name=$(basename "$script" .gp)
    if gnuplot -e "dir='$out'" "$script"; then
        echo "$out/$name.png"
        drawn=$((drawn + 1))
    else
        echo "draw.sh: $name could not be drawn" >&2
        rm -f "$out/$name.png" "$out/$name.svg"
        failed=$((failed + 1))
    fi
done
if [ $((drawn + failed)) -eq 0 ]; then
    if [ -f "$out/sweep.dat" ]; then
        echo "draw.sh: no picture of this sweep: drawn are one or two settings of" \
            "numbers, and one of numbers before one of names" >&2
    else
        echo "draw.sh: $out holds no table to draw" >&2
    fi
    exit 4
fi
[ $failed -eq 0 ] || exit 4
