#!/bin/sh
# `find --samples`: the same bytes whatever the threads, other bytes for another
# seed, and what the screen and the tables say.
#
#   run_samples.sh COLDGAP SOURCES
set -u
coldgap=$1
sources=$2
. "$(dirname "$0")/lib.sh"
engine=$sources/configs/engines/boosted_four.cfg

# sample FOLDER WORDS...
sample() {
    folder=$1
    shift
    expect 0 "$coldgap" find "$engine" --duty settled \
        --set margin.risk=0.05 --samples 300 -o "$work/$folder" "$@"
    grep -v '^Computed in\|^Pictures: ' "$work/stdout" >"$work/$folder.screen"
    [ -s "$work/stderr" ] && fail "$folder: words on stderr"
}
same() {
    diff -r "$work/$1" "$work/one" || fail "$2: other tables"
    cmp "$work/$1.screen" "$work/one.screen" || fail "$2: another screen"
}

sample one --threads 1
sample two --threads 2
same two "two threads"
sample seven --threads 7
same seven "seven threads"
sample all
same all "all cores"
sample seed1 --seed 1
same seed1 "seed 1, the default"
sample seed2 --seed 2
cmp -s "$work/seed2/histogram.dat" "$work/one/histogram.dat" &&
    fail "another seed gives the same samples"
head -n 3 "$work/one/histogram.dat" | grep -q '^# .*not a warranty' ||
    fail "histogram.dat has no caution in its head"

# The screen: both ways side by side, and which was used.
cp "$work/one.screen" "$work/stdout"
says stdout 'first order *sampled'
says stdout '300 samples, seed 1'
says stdout 'Uncertainty allowance .*, sampled, for a risk'
says stdout 'uses the sampled allowance'
expect 0 "$coldgap" find "$engine" --duty settled --samples 20
says stdout 'too few samples for a risk of 0.001 (10000 or more)'
expect 0 "$coldgap" find "$engine" --duty settled --samples 20 -q
grep -q 'few samples\|sampled' "$work/stdout" && fail "--quiet is not"

# Tables: counts are the samples, densities make one, total effects are there.
awk '!/^#/ {n += $3; one += $4 * ($2 - $1); first += $5 * ($2 - $1)}
     END {exit !(n == 300 && one > 0.9999 && one < 1.0001 &&
                 first > 0.9 && first < 1.0001)}' "$work/one/histogram.dat" ||
    fail "histogram.dat does not add up"
awk '!/^#/ && $1 != "law" {if (!($4 >= 0 && $4 < 1)) bad = 1; n++}
     END {exit bad || n < 10}' "$work/one/sensitivity.dat" ||
    fail "total effects of sensitivity.dat"
spread=$(awk '$1 == "spread_top" || $1 == "closure_top" {s += $2}
              END {printf "%.4f", s}' "$work/one/summary.dat")
quantile=$(awk '/^# quantile/ {printf "%.4f", $3}' "$work/one/histogram.dat")
[ "$spread" = "$quantile" ] || fail "closure and spread: $spread, $quantile"

# Without samples an earlier histogram does not stay behind.
expect 0 "$coldgap" find "$engine" --duty settled -o "$work/one"
[ -e "$work/one/histogram.dat" ] && fail "an earlier run's histogram stays"
awk '!/^#/ && $4 != "nan" {bad = 1} END {exit bad}' \
    "$work/one/sensitivity.dat" || fail "total effects without samples"

# What the screen says of the first-order answer (CG_FIRST_ORDER_SHORT); the standard
# error of 10,000 is 0.006 mm.
expect 0 "$coldgap" find "$engine" --duty dyno_pull --samples 10000
awk '/closure at the risk/ {more = $6 - $5; seen = 1}
     END {exit !(seen && more > -0.006 && more < 0.03 + 0.006)}' \
    "$work/stdout" || fail "sampled against first order: not as the screen says"

for words in "--samples 1" "--samples 1000001" "--samples 1.5" \
    "--samples nan" "--samples -5" "--samples" "--seed 0" "--seed x" \
    "--seed 4294967296" "--threads 0" "--threads 257" "--threads two"; do
    # shellcheck disable=SC2086
    expect 2 "$coldgap" find "$engine" $words
    [ "$(wc -l <"$work/stderr")" -eq 1 ] || fail "find $words: one line"
done
finish
