#!/bin/sh
# The page is one file that loads nothing, and a second build, in a folder of
# another name, gives the same bytes.
#
#   build.sh TOP BUILD
set -u
top=$(realpath "$1")
built=$(realpath "$2")
. "$top/tests/cli/lib.sh"
page=$built/coldgap.html
cmake -S "$top/src/page" -B "$work/other" \
    -DCMAKE_TOOLCHAIN_FILE="$top/src/page/wasi.cmake" \
    -DCG_SOURCES="$built/page/sources" \
    -DCG_VERSION="$("$built/coldgap" --version | awk '{print $2; exit}')" \
    >"$work/log" 2>&1 &&
    cmake --build "$work/other" --parallel 2 >>"$work/log" 2>&1 ||
    { cat "$work/log"; fail "the second build"; finish; }
cmp "$built/page/coldgap.wasm" "$work/other/coldgap.wasm" ||
    fail "the program is another"
node "$top/src/page/assemble.js" "$top" "$work/other/coldgap.wasm" \
    "$built/page/sources/versions" "$work/again.html" || fail "assemble"
cmp "$page" "$work/again.html" || fail "the page is another"

# Nothing that a browser fetches: no address but those that name things, no
# source, no import, nothing sent.
grep -v -E '^<script type="(text/plain" id="program|application/json)' "$page" \
    >"$work/own"
grep -n -E 'https?://' "$work/own" && fail "an address"
grep -n -i -E '<(link|iframe|object|embed|base)|<(img|script)[^>]* src=' \
    "$work/own" && fail "something loaded"
grep -n -E 'fetch\(|XMLHttpRequest|WebSocket|sendBeacon|importScripts|import\(|innerHTML|document\.write|eval\(' \
    "$work/own" && fail "something sent, or markup made"
grep -q "default-src 'none'" "$page" || fail "no policy"
grep -q 'GNU General Public License' "$page" || fail "no licence"
grep -q "gsl $(sed -n 's/^gsl //p' "$built/page/sources/versions")" "$page" ||
    fail "the sources are not named"
[ "$(wc -c <"$page")" -lt 900000 ] || fail "larger than 900 kB"
# No path of the machine that built it.
grep -c -F "$top" "$page" | grep -q '^0$' || fail "a path of this machine"
grep -c -F "$top" "$built/page/coldgap.wasm" | grep -q '^0$' ||
    fail "a path of this machine in the program"
finish
