#!/bin/sh
# The suites once more under the address, leak and undefined-behaviour
# sanitizers, in a build folder of their own.
#
#   sanitized.sh SOURCES FOLDER
#
# Part of the test run with -DCG_SANITIZED=ON, as CI has it.
# Left out: other people's solvers, drivers of the
# program that valgrind watches as well (cli/run_leaks.sh); test_rings, ten
# rankings by code that test_ring_choice and test_memory_studies walk too; and
# test_laws, hundreds of answers by code that test_spread walks.
set -eu
export ASAN_OPTIONS=exitcode=99 UBSAN_OPTIONS=exitcode=99 # 1 is "not safe"
export CG_PAIRS=120 # test_band_ends: each takes 3 s here
cmake -S "$1" -B "$2" -DCG_SANITIZE=ON -DCG_SANITIZED=OFF \
    -DBUILD_TESTING=ON -DCMAKE_BUILD_TYPE=None -DCMAKE_C_FLAGS="-O1 -g1"
cmake --build "$2" --parallel "$(nproc)"
ctest --test-dir "$2" --output-on-failure --no-tests=error \
    --parallel "$(nproc)" -R '^(test|outside|replay)_|^cli_(bad|usage)$' \
    -E '^test_(rings|laws)$'
