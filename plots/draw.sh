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

# Whether a sweep's table has so many axes, all of numbers, and, if one is
# named, that one first: "# grid of N points: PATH=FIRST..LAST (COUNT) ..."
axes_fit() {
    sed -n 's/^# grid of.*points: //p' "$1" | awk -v count="${2%%:*}" \
        -v first="${2#*:}" '{
            for (i = 1; i < NF; i += 2) {
                value = $i
                sub(/^[^=]*=/, "", value)
                if (value !~ /^[-+0-9.eE]*[.][.][-+0-9.eE]*$/) exit 1
            }
            exit !(NF == 2 * count && (first == count || $1 ~ "^" first "="))
        }'
}

failed=0
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
    else
        echo "draw.sh: $name could not be drawn" >&2
        rm -f "$out/$name.png" "$out/$name.svg"
        failed=1
    fi
done
exit $failed
