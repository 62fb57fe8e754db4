#!/bin/sh
# Draws every picture whose tables are in a folder: each script names them in
# its line "# needs:".
#   sh plots/draw.sh OUT
# Exit status 4 where there is nothing to draw, or a picture fails.
#
# A folder may have any name: gnuplot is told none. It is started inside the
# folder of the tables, where dir is ".", with the whole path of a script, from
# which that finds its own folder; -d: what else lies there is not read.
set -eu
out=${1:?which folder of tables? write: sh $0 OUT}
case $0 in
*/*) plots=${0%/*}/ ;;
*) plots=./ ;;
esac
case $plots in
/*) ;;
*) plots=$PWD/$plots ;;
esac
. "${plots}plain.sh"
command -v gnuplot >/dev/null 2>&1 || {
    printf 'draw.sh: gnuplot is not installed: no pictures of %s\n' \
        "$(shown "$out")" >&2
    exit 4
}
# The degree sign needs UTF-8, which a bare machine does not speak by itself.
export LC_ALL=C.UTF-8

# Whether a sweep, "# grid of N points: PATH=FIRST..LAST (COUNT) ...", is one that
# a picture is of: boost alone, in any unit (boost); two settings of numbers
# (map); one of numbers, before one of names or alone (curves); one of names
# (names).
is_sweep_of() {
    sed -n '/^# grid of/{s/^# grid of.*points: //p; q;}' "$1" | awk -v wanted="$2" '{
            for (i = 1; i < NF; i += 2) {
                value = $i
                sub(/^[^=]*=/, "", value)
                kinds = kinds \
                    (value ~ /^[-+0-9.eE]*[.][.][-+0-9.eE]*$/ ? "1" : "a")
            }
            boost = kinds == "1" && $1 ~ /^charge[.]boost_[A-Za-z]+=/
            is = boost ? "boost" : kinds == "11" ? "map" : \
                kinds == "1" || kinds == "1a" ? "curves" : \
                kinds == "a" ? "names" : "none"
            exit is != wanted
        }'
}

# Pictures are drawn in a folder of this run's own, below that of the tables, and
# put in place when they are whole.
scratch=
trap '[ -z "$scratch" ] || rm -rf "$scratch"' EXIT
trap 'exit 129' HUP
trap 'exit 130' INT
trap 'exit 143' TERM
make_scratch() {
    scratch=$(mktemp -d .pictures-XXXXXX) || {
        printf 'draw.sh: %s: could not write into it\n' "$(shown "$out")" >&2
        exit 4
    }
}

# draw_one SCRIPT: both forms of a picture; old ones go where it fails.
draw_one() {
    for file in "$name.png" "$name.svg"; do
        if [ -L "$file" ] || { [ -e "$file" ] && [ ! -f "$file" ]; }; then
            printf 'draw.sh: %s/%s: only a plain file is replaced\n' \
                "$(shown "$out")" "$file" >&2
            return 1
        fi
    done
    [ -n "$scratch" ] || make_scratch
    if gnuplot -d -e "dir='.'; to='$scratch'" "$1" &&
        mv -f "$scratch/$name.png" "$scratch/$name.svg" .; then
        return 0
    fi
    rm -f "$name.png" "$name.svg"
    return 1
}

failed=0
drawn=0
# With "./" before it no name is "-" or looked for elsewhere.
case $out in
/*) tables=$out ;;
*) tables=./$out ;;
esac
cd "$tables" 2>/dev/null || {
    printf 'draw.sh: %s holds no table to draw\n' "$(shown "$out")" >&2
    exit 4
}
for script in "$plots"*.gp; do
    needs=$(sed -n 's/^# needs: //p' "$script")
    [ -n "$needs" ] || continue
    for table in $needs; do
        file=${table%/*}
        [ -f "$file" ] || continue 2
        case $table in
        */*) is_sweep_of "$file" "${table#*/}" || continue 2 ;;
        esac
    done
    name=$(basename "$script" .gp)
    if draw_one "$script"; then
        printf '%s/%s.png\n' "$(shown "$out")" "$name"
        drawn=$((drawn + 1))
    else
        echo "draw.sh: $name could not be drawn" >&2
        failed=$((failed + 1))
    fi
done
if [ $((drawn + failed)) -eq 0 ]; then
    if [ -f sweep.dat ]; then
        echo "draw.sh: no picture of this sweep: drawn are one or two settings of" \
            "numbers, one of names, and one of numbers before one of names" >&2
    else
        printf 'draw.sh: %s holds no table to draw\n' "$(shown "$out")" >&2
    fi
    exit 4
fi
[ $failed -eq 0 ] || exit 4
