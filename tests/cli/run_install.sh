#!/bin/sh
# An installed copy in a place of its own: it finds its data, also when moved;
# its pictures draw from any folder; the C library works through pkg-config.
#
#   run_install.sh COLDGAP SOURCES BUILD
set -u
sources=$2
build=$3
. "$(dirname "$0")/lib.sh"

cmake --install "$build" --prefix "$work/first" >"$work/log" 2>&1 ||
    { cat "$work/log"; fail "cmake --install"; finish; }
mv "$work/first" "$work/moved place"
root="$work/moved place"
coldgap="$root/bin/coldgap"
for file in share/man/man1/coldgap.1 share/man/man5/coldgap.cfg.5 \
    share/bash-completion/completions/coldgap \
    share/zsh/site-functions/_coldgap share/coldgap/plots/style.gp \
    share/coldgap/plots/plain.sh; do
    [ -s "$root/$file" ] || fail "$file is not installed"
done
[ -e "$root/share/coldgap/plots/run.sh" ] &&
    fail "run.sh is installed, but sets up a source tree"

# From a folder of the user's own, with the shipped duties and materials.
mkdir "$work/user" && cd "$work/user" || exit 1
expect 0 "$coldgap" find "$root/share/coldgap/configs/engines/iron_six.cfg" \
    -o out
# as one word for a shell: there is a blank in it
says stdout "Pictures: sh '$root/share/coldgap/plots/draw.sh' out"
expect 2 env "COLDGAP_CONFIGS=" "$coldgap" find \
    "$sources/configs/example.cfg" --set duty.name=none
says stderr 'dyno_pull'
if command -v gnuplot >/dev/null 2>&1; then
    export LC_ALL=C.UTF-8
    expect 0 sh "$root/share/coldgap/plots/draw.sh" out
    [ -s "$work/stderr" ] && { fail "draw.sh complains"; cat "$work/stderr"; }
    [ -s out/why.svg ] || fail "draw.sh drew nothing"
    rm -f out/why.*
    expect 0 gnuplot -e "dir='out'" "$root/share/coldgap/plots/why.gp"
    [ -s out/why.png ] || fail "why.gp drew nothing"
fi
# The source tree's way, from its root.
grep -l 'load "plots/' "$sources"/plots/*.gp &&
    fail "style.gp is loaded from the current folder"

# The C library: the example compiled against the installed copy alone.
[ "$failed" -eq 0 ] || finish
command -v pkg-config >/dev/null 2>&1 || skip "pkg-config not installed"
library=$(find "$root" -name libcoldgap.a)
nm "$library" 2>/dev/null | grep -q "__asan_init\|__gcov_init" &&
    skip "a sanitized or counting library needs flags of its own"
# make cannot have blanks in a path
mv "$root" "$work/second"
root="$work/second"
PKG_CONFIG_PATH=$(dirname "$(find "$root" -name coldgap.pc)")
export PKG_CONFIG_PATH
cp -r "$root/share/doc/coldgap/example" "$work/example"
cd "$work/example" || exit 1
expect 0 make CFLAGS="-std=c11 -Wall -Wextra -Wpedantic -Werror"
expect 0 ./gap
says stdout 'not a warranty'
closure=$(awk '/^closure/{print $2}' "$work/stdout")
gap=$(awk '/^cold gap/{print $3}' "$work/stdout")
expect 0 "$root/bin/coldgap" find example.cfg -o out
awk -v closure="$closure" -v gap="$gap" '{v[$1] = $2} END {
    d = closure - v["closure_top"]
    exit !(d < 2e-6 && d > -2e-6 && gap + 0 == v["cold_gap_top"] + 0)}' \
    out/summary.dat ||
    fail "library: $closure and $gap mm, program: $(grep _top out/summary.dat)"

# Every promised header stands alone in C, and in a second object file.
for header in $(sed -n 's/^#include "\(.*\)"/\1/p' \
    "$sources/models/coldgap.h") coldgap.h; do
    echo "#include <coldgap/$header>" >"$work/alone.c"
    expect 0 ${CC:-cc} -std=c11 -Wall -Wextra -Wpedantic -Werror \
        -fsyntax-only $(pkg-config --cflags coldgap) "$work/alone.c"
done
finish
