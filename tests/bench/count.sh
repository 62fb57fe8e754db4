#!/bin/sh
# Counts the instructions of the program, start and reading included, by
# valgrind's callgrind: unlike time, the same on a busy machine.
#
#   count.sh COLDGAP CONFIGS
#
# Prints a row a job, in millions.  A sweep's point, and 10,000 samples, are
# counted by the difference of a longer run and a shorter one.
set -eu
program=$1
export COLDGAP_CONFIGS=$2
here=$(cd "$(dirname "$0")" && pwd)
command -v valgrind >/dev/null || { echo "valgrind not found: no counts"; exit 0; }
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

# count WORDS...: instructions of the program with these words
count() {
    status=0
    valgrind --tool=callgrind --callgrind-out-file=/dev/null "$program" "$@" \
        --threads 1 >/dev/null 2>"$scratch/errors" || status=$?
    [ "$status" -le 1 ] || { cat "$scratch/errors" >&2; exit 1; }
    awk '/Collected :/{print $NF}' "$scratch/errors"
}

# row WORDS INSTRUCTIONS
row() {
    awk -v words="$1" -v n="$2" 'BEGIN{printf "%-40s  %10.1f\n", words, 1e-6*n}'
}

# difference WORDS FACTOR LONGER SHORTER
difference() {
    row "$1" "$(awk -v f="$2" -v a="$3" -v b="$4" 'BEGIN{print f*(a - b)}')"
}

printf '%-40s  %10s\n' "instructions" "millions"
row "find, settled and held" "$(count find "$here/settled.cfg" -q)"
row "find, settled start, 20 s pull" "$(count find "$here/pull.cfg" -q)"
row "find, dyno_pull" "$(count find "$here/dyno.cfg" -q)"
row "find, the list of duties" "$(count find "$here/list.cfg" -q)"
vary=charge.boost_kPa
difference "a sweep's point, settled and held" 0.25 \
    "$(count sweep "$here/settled.cfg" -q -o "$scratch" --vary "$vary=100:120:4")" \
    "$(count sweep "$here/settled.cfg" -q -o "$scratch" --vary "$vary=100:104:4")"
difference "10,000 samples of dyno_pull" 100 \
    "$(count find "$here/dyno.cfg" -q --samples 200)" \
    "$(count find "$here/dyno.cfg" -q --samples 100)"
