#!/bin/sh
# Equal input, equal bytes: run after run, with 1, 2 and 3 threads, without
# optimisation and with -O3, by gcc and by clang.
#
#   sh tests/determinism.sh [FOLDER]     a folder for the builds
#
# All seven digits of every number in every table are the same between the four
# builds on one machine: the sources keep the order of sums (-ffp-contract=off,
# no -ffast-math; -fopenmp-simd only where the source names a reduction).
# Between machines the mathematical library may differ in its last bit.
# Takes a few minutes; not part of ctest.  Status 77: no gcc or no clang.
set -eu
cd "$(dirname "$0")/.."
folder=${1:-build_determinism}
failed=0

# tables BUILD FOLDER THREADS
tables() {
    rm -rf "$2"
    mkdir -p "$2"
    for engine in boosted_four iron_six big_eight plain_four; do
        "$1/coldgap" find "configs/engines/$engine.cfg" --quiet \
            -o "$2/find_$engine" >/dev/null
    done
    "$1/coldgap" find configs/engines/boosted_four.cfg --quiet \
        --set rings.film_law=reynolds -o "$2/film" >/dev/null
    "$1/coldgap" sweep configs/engines/boosted_four.cfg --quiet \
        --vary charge.boost_kPa=0:200:50 --vary fuel.lambda=0.8,0.95 \
        --threads "$3" -o "$2/sweep"
    "$1/coldgap" find configs/engines/plain_four.cfg --quiet --samples 200 \
        --threads "$3" -o "$2/samples" >/dev/null
    # status 1 is an answer: too little oil
    "$1/coldgap" finish configs/engines/plain_four.cfg --quiet \
        --simulate plateau -o "$2/finish" >/dev/null || [ $? -eq 1 ]
    "$1/coldgap" network configs/engines/iron_six.cfg --quiet -o "$2/network"
}

first=
for flavour in gcc-O3 gcc-O0 clang-O3 clang-O0; do
    compiler=${flavour%-*}
    command -v "$compiler" >/dev/null || { echo "skipped: no $compiler"; exit 77; }
    build=$folder/$flavour
    mkdir -p "$build"
    cmake -S . -B "$build" -DCMAKE_C_COMPILER="$compiler" -DBUILD_TESTING=OFF \
        -DCMAKE_BUILD_TYPE=None -DCMAKE_C_FLAGS="-${flavour##*-}" >/dev/null
    cmake --build "$build" -j2 >"$build/log" 2>&1 ||
        { cat "$build/log"; exit 1; }
    for threads in 1 2 3; do
        tables "$build" "$build/$threads" $threads
        first=${first:-$build/$threads}
        if diff -r "$first" "$build/$threads" >"$build/different"; then
            echo "$flavour, $threads threads: the same bytes"
        else
            echo "$flavour, $threads threads: other bytes"
            head -n 20 "$build/different"
            failed=1
        fi
    done
done
echo "$(find "$first" -name '*.dat' | wc -l) tables"
exit $failed
