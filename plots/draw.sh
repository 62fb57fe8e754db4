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

# Whether a sweep, "# grid of N points: PATH=FIRST..LAST (COUNT) ...", is one that
# a picture is of: boost alone, in any unit (boost); two settings of numbers
# (map); one of numbers, before one of names or alone (curves).
is_sweep_of() {
    sed -n 's/^# grid of.*points: //p' "$1" | awk -v wanted="$2" '{
            for (i = 1; i < NF; i += 2) {
                value = $i
                sub(/^[^=]*=/, "", value)
                kinds = kinds \
                    (value ~ /^[-+0-9.eE]*[.][.][-+0-9.eE]*$/ ? "1" : "a")
            }
            boost = kinds == "1" && $1 ~ /^charge[.]boost_[A-Za-z]+=/
            is = boost ? "boost" : kinds == "11" ? "map" : \
                kinds == "1" || kinds == "1a" ? "curves" : "none"
            exit is != wanted
        }'
}

# Pictures are drawn in a folder of this run's own and put in place when they are
# whole.  In it tables and scripts have names that no shell acts on.
scratch=
trap '[ -z "$scratch" ] || rm -rf "$scratch"' EXIT
trap 'exit 129' HUP
trap 'exit 130' INT
trap 'exit 143' TERM
make_scratch() {
    scratch=$(mktemp -d "$out/.pictures-XXXXXX") || {
        echo "draw.sh: $out: could not write into it" >&2
        exit 4
    }
    ln -s "$(cd "$out" && pwd)" "$scratch/tables"
    ln -s "$(cd "$plots" && pwd)" "$scratch/plots"
}

# draw_one NAME: both forms of a picture; old ones go where it fails.
draw_one() {
    for file in "$out/$1.png" "$out/$1.svg"; do
        if [ -L "$file" ] || { [ -e "$file" ] && [ ! -f "$file" ]; }; then
            echo "draw.sh: $file: only a plain file is replaced" >&2
            return 1
        fi
    done
    if (cd "$scratch" && gnuplot -e "dir='tables'; to='.'" "plots/$1.gp") &&
        mv -f "$scratch/$1.png" "$scratch/$1.svg" "$out/"; then
        return 0
    fi
    rm -f "$out/$1.png" "$out/$1.svg"
    return 1
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
        */*) is_sweep_of "$file" "${table#*/}" || continue 2 ;;
        esac
    done
    name=$(basename "$script" .gp)
    [ -n "$scratch" ] || make_scratch
    if draw_one "$name"; then
        echo "$out/$name.png"
        drawn=$((drawn + 1))
    else
        echo "draw.sh: $name could not be drawn" >&2
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
