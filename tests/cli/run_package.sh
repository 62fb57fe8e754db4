#!/bin/sh
# The Debian packages: what they hold, what they ask for, and that the program
# runs from what was unpacked.
#
#   run_package.sh COLDGAP SOURCES BUILD
set -u
build=$3
. "$(dirname "$0")/lib.sh"
for tool in cpack dpkg-deb dpkg-shlibdeps file; do
    command -v "$tool" >/dev/null 2>&1 || skip "$tool not installed"
done
nm "$1" 2>/dev/null | grep -q "__asan_init\|__gcov_init" &&
    skip "a sanitized or counting program is not for packages"

(cd "$build" && cpack -B "$work/packages") >"$work/log" 2>&1 ||
    { cat "$work/log"; fail "cpack"; finish; }
program=$(echo "$work"/packages/coldgap_*.deb)
library=$(echo "$work"/packages/libcoldgap-dev_*.deb)
for package in "$program" "$library"; do
    [ -f "$package" ] || { fail "no $package"; finish; }
done

depends=$(dpkg-deb -f "$program" Depends)
for needed in libc6 libgsl libconfig; do
    case $depends in
    *$needed*) ;;
    *) fail "Depends without $needed: $depends" ;;
    esac
done
case $(dpkg-deb -f "$library" Depends) in
*libgsl-dev*) ;;
*) fail "libcoldgap-dev does not depend on libgsl-dev" ;;
esac

dpkg-deb -x "$program" "$work/root" && dpkg-deb -x "$library" "$work/dev"
for file in bin/coldgap share/man/man1/coldgap.1 \
    share/bash-completion/completions/coldgap \
    share/zsh/vendor-completions/_coldgap share/coldgap/plots/draw.sh \
    share/coldgap/configs/materials/ring_materials.cfg; do
    [ -s "$work/root/usr/$file" ] || fail "coldgap has no $file"
done
[ -e "$work/root/usr/include" ] && fail "coldgap holds headers"
[ -s "$work/dev/usr/include/coldgap/coldgap.h" ] ||
    fail "libcoldgap-dev has no coldgap.h"
find "$work/dev" -name coldgap.pc | grep -q . ||
    fail "libcoldgap-dev has no coldgap.pc"
find "$work/root" "$work/dev" -perm /022 ! -type l | grep . &&
    fail "writable by others"
# no place of the machine that built it
strings "$work/root/usr/bin/coldgap" 2>/dev/null >"$work/strings"
grep -F -e "$2" -e "$build" "$work/strings" && fail "the build's own paths"

expect 0 "$work/root/usr/bin/coldgap" find \
    "$work/root/usr/share/coldgap/configs/engines/iron_six.cfg" --quiet
says stdout 'Top ring .*file to'
finish
