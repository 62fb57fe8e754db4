#!/bin/sh
# One constant of models/ made 5 % larger: which check turns red?
#
#   mutant.sh SOURCES BUILD SCRATCH FILE NUMBER LINE LITERAL
#
# Compiles what the constant touches, links it before the library into one
# suite after the other, quick ones first, and stops at the first red.  Prints
# a row: "module" "file:line" literal "suite" "test" "what it said".
set -u
sources=$1 build=$2 scratch=$3 file=$4 number=$5 line=$6 literal=$7
here=$(dirname "$0")
module=${file%.[ch]}
folder=$scratch/${module}_$number
row() {
    printf '"%s" "%s:%s" %s "%s" "%s" "%s"\n' "$module" "$file" "$line" \
        "$literal" "$1" "$2" "$3"
    rm -rf "$folder"
    exit 0
}

mkdir -p "$folder"
cp "$sources"/models/*.h "$sources"/models/*/*.[ch] "$folder"
cp "$folder/$file" "$folder/$file.whole"
awk -f "$here/literals.awk" -v scale="$number" "$folder/$file.whole" \
    >"$folder/$file"
case $file in
*.c) touched=$file ;;
*.h)
    # who uses the macro on that line; all, if another header does
    name=$(sed -n "${line}s/^#define \([A-Z_0-9]*\).*/\1/p" "$folder/$file")
    touched=$(cd "$folder" && grep -l -w "${name:-.}" ./*.c)
    for other in "$folder"/*.h; do
        [ "$other" = "$folder/$file" ] || ! grep -q -w "${name:-.}" "$other" ||
            touched=$(cd "$folder" && ls ./*.c)
    done
    ;;
esac
for source in $touched; do
    # shellcheck disable=SC2046 # lists of words are meant to split
    cc -std=c11 -O1 -w -fopenmp-simd -ffp-contract=off \
        $(pkg-config --cflags gsl) -c "$folder/$source" \
        -o "$folder/$(basename "$source" .c).o" || row build "" "not compiled"
done

for suite in test_"$module" outside_"$module" $(cat "$scratch/order"); do
    object=$(find "$build/tests/CMakeFiles/$suite.dir" -name "$suite.c.o" \
        2>/dev/null)
    [ -n "$object" ] || continue
    # shellcheck disable=SC2046
    cc "$object" "$folder"/*.o "$build/libcoldgap_program.a" \
        "$build/libcoldgap.a" -fopenmp -o "$folder/suite" \
        $(pkg-config --libs check gsl libconfig) -lm || row link "$suite" ""
    (cd "$folder" && timeout 300 ./suite) >"$folder/said" 2>&1 && continue
    red=$(grep -E '^[^ ]+:[0-9]+:[FE]:' "$folder/said" | head -n 1)
    test=$(echo "$red" | cut -d: -f5)
    said=$(echo "$red" | cut -d: -f7- | tr '"' "'" | cut -c 2-90)
    row "$suite" "$test" "$said"
done
row SURVIVED "" ""
