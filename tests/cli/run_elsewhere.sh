#!/bin/sh
# The project in a folder with a blank, a quote and brackets in its name.  It is
# configured; with CI set it is also built and run, which takes a minute.
#
#   run_elsewhere.sh SOURCES
set -u
sources=$1
. "$(dirname "$0")/lib.sh"
tree="$work/a [b] 'c"
mkdir "$tree"
for part in CMakeLists.txt README.md models src configs plots tests; do
    cp -r "$sources/$part" "$tree" || fail "$part is not to be copied"
done
cd "$tree" || exit 1
expect 0 cmake -S . -B build -DBUILD_TESTING=ON
cmake --build build --target help >"$work/targets" 2>&1
for target in coldgap pages test_chain test_page outside_film replay_config; do
    grep -q "$target\$" "$work/targets" || fail "no target $target"
done
if [ -n "${CI:-}" ] && [ "$failed" -eq 0 ]; then
    expect 0 cmake --build build --parallel 2 --target coldgap pages
    : >tests/setup.sh
    expect 0 sh plots/run.sh configs/engines/iron_six.cfg "o [u] 't"
    [ -s "o [u] 't/summary.dat" ] || fail "no tables"
    command -v gnuplot >/dev/null 2>&1 && [ ! -s "o [u] 't/why.png" ] &&
        fail "no pictures"
fi
finish
