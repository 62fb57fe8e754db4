#!/bin/sh
# What works side by side, under clang's thread sanitizer, in a build folder of
# its own: a sweep, samples and a ranking on two threads, none with a race.
#
#   threads.sh SOURCES FOLDER
#
# Part of the test run with -DCG_SANITIZED=ON, as CI has it; about a minute on two
# cores.  LLVM's OpenMP is needed, whose library archer tells the sanitizer where
# threads wait for each other; with gcc's every loop looks like a race.  Status
# 77: something is missing.  A race planted here must be found, and a loop without
# one pass, before what they say of coldgap counts.
set -eu
sources=$1
folder=$2
skip() {
    echo "skipped: $*"
    exit 77
}
command -v clang >/dev/null 2>&1 || skip "clang not installed"
mkdir -p "$folder/probe"
cat >"$folder/probe/probe.c" <<'PROBE'
#include <stdio.h>
int main(void)
{
    long sum = 0, item[64];
#pragma omp parallel for num_threads(2)
    for (int i = 0; i < 64; i++) {
        item[i] = i;
#ifndef RACE
#pragma omp critical
#endif
        sum += i;
    }
    return printf("%ld\n", sum + item[63]) < 0;
}
PROBE
# probe NAME FLAG...
probe() {
    program=$folder/probe/$1
    shift
    clang -g1 -O1 -fsanitize=thread -fopenmp "$@" -o "$program" \
        "$folder/probe/probe.c" >"$folder/probe/said" 2>&1 || {
        cat "$folder/probe/said"
        skip "no thread sanitizer or no libomp-dev for clang"
    }
}
probe clean
probe race -DRACE
omp=$(ldd "$folder/probe/clean" | awk '$1 ~ /^libomp/ {print $3}')
archer=$(dirname "$(realpath "$omp")")/libarcher.so
[ -f "$archer" ] || skip "no libarcher.so beside $omp"
export OMP_TOOL_LIBRARIES="$archer"
# The other side of a race is told, and counts, only while it is remembered:
# long, and the items below are short.
export TSAN_OPTIONS="exitcode=66 ignore_noninstrumented_modules=1 history_size=7"

# watched WORDS...: 66 is a race; 0 and 1 are answers.
watched() {
    got=0
    "$@" >"$folder/said" 2>&1 || got=$?
    [ $got -le 1 ]
}
watched "$folder/probe/clean" || {
    cat "$folder/said"
    skip "the sanitizer does not work on this machine"
}
# Which thread comes first is chance.
tries=0
while watched "$folder/probe/race"; do
    tries=$((tries + 1))
    [ $tries -lt 20 ] || skip "a race planted is not found"
done

cmake -S "$sources" -B "$folder" -DCMAKE_C_COMPILER=clang \
    -DBUILD_TESTING=OFF -DCMAKE_BUILD_TYPE=None \
    -DCMAKE_C_FLAGS="-O1 -g1 -fsanitize=thread"
cmake --build "$folder" --parallel "$(nproc)" --target coldgap
ldd "$folder/coldgap" | grep -q libomp ||
    skip "cmake did not find clang's OpenMP"

engine=$sources/configs/engines/plain_four.cfg
failed=0
# run COMMAND WORDS...
run() {
    command=$1
    shift
    if watched "$folder/coldgap" "$command" "$@" --threads 2 \
        -o "$folder/tables"; then
        echo "$command: no race"
    else
        echo "FAILED: $command $*: exit $got"
        cat "$folder/said"
        failed=1
    fi
}
run sweep "$engine" --vary fuel.lambda=0.8:0.88:0.02 \
    --vary rings.top.material=plain_steel,grey_iron_ring
# What each thread learns anew, and a point without an answer.
cp "$engine" "$folder/probe/engine.cfg"
cat >"$folder/probe/taught.cfg" <<'CONFIG'
@include "engine.cfg"
evidence = ( { what = "groove_top"; temperature_C = 190.0; how = "hardness";
    speed_rpm = 4000.0; load = 1.0; } );
CONFIG
run sweep "$folder/probe/taught.cfg" --set duty.name=settled \
    --vary combustion.heat_factor=0.9:1.1:0.01
run sweep "$engine" --set duty.name=settled --vary engine.compression_ratio=9,99 \
    --vary fuel.lambda=0.8:1.0:0.02
run find "$engine" --samples 16
run find "$engine" --samples 200 --set duty.name=settled
run sheet "$sources/configs/engines/iron_six.cfg" --samples 8 \
    --set duty.name=settled \
    --measured "$sources/configs/measured/iron_six.csv"
run rings "$engine" --set duty.name=settled
exit $failed
