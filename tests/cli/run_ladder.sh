#!/bin/sh
# `ladder`: its table against the commands that know a limit, the config it
# writes against all of them, and what it refuses.
#
#   run_ladder.sh COLDGAP SOURCES
set -u
coldgap=$(realpath "$1")
sources=$(realpath "$2")
. "$(dirname "$0")/lib.sh"
engines=$sources/configs/engines
# One duty, so that all asked here is soon answered.
quick="--duty settled"

# cell TABLE PART COLUMN
cell() {
    awk -v part="$2" -v column="$3" '$1 == part {print $column}' "$1"
}
# within NAME A B TOLERANCE
within() {
    awk -v a="$2" -v b="$3" -v t="$4" \
        'BEGIN {exit !(a - b <= t + 0 && b - a <= t + 0)}' ||
        fail "$1: $2 and $3"
}

# A gap given stops where ceiling says that it does.
# shellcheck disable=SC2086 # lists of words are meant to split
expect 1 "$coldgap" ceiling "$engines/iron_six.cfg" --json $quick --gap 0.42mm
ceiling=$(tr ',' '\n' <"$work/stdout" | sed -n 's/.*the gap stands \([0-9]*\) kPa.*/\1/p;
    s/.*"ceiling": *{*"*[a-z":]* *\([0-9.e+]*\).*/\1/p' | tail -n 1)
