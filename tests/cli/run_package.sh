#!/bin/sh
# The Debian packages: what they hold, what they ask for, and that the program
# runs from what was unpacked.
#
#   run_package.sh COLDGAP SOURCES BUILD
set -u
build=$3
. "$(dirname "$0")/lib.sh"
for tool in cpack dpkg-deb dpkg-shlibdeps file readelf; do
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
for file in bin/coldgap share/man/man1/coldgap.1.gz \
    share/man/man5/coldgap.cfg.5.gz \
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

# Under which licence, in both.
for copyright in "$work/root/usr/share/doc/coldgap/copyright" \
    "$work/dev/usr/share/doc/libcoldgap-dev/copyright"; do
    for words in '^Format: .*/copyright-format/1\.0/$' \
        '^Copyright: .* the coldgap authors$' '^License: GPL-3+$' \
        '/usr/share/common-licenses/GPL-3\.' 'GNU Scientific Library' \
        libconfig; do
        grep -q -e "$words" "$copyright" || fail "$copyright lacks: $words"
    done
done

# Hardened as it was asked for, however the system's compiler is set up.
readelf -hdlW "$work/root/usr/bin/coldgap" >"$work/elf"
readelf --dyn-syms -W "$work/root/usr/bin/coldgap" >"$work/symbols"
for words in 'FLAGS.*BIND_NOW' 'Flags: NOW' GNU_RELRO 'Type: *DYN'; do
    grep -q -e "$words" "$work/elf" || fail "coldgap is not hardened: $words"
done
for words in __stack_chk_fail '__[a-z]*_chk@'; do
    grep -q -e "$words" "$work/symbols" || fail "coldgap does not use $words"
done

# By the distribution's own rules.
if command -v lintian >/dev/null 2>&1; then
    lintian --allow-root --fail-on error,warning "$program" "$library" \
        >"$work/log" 2>&1 || { cat "$work/log"; fail "lintian complains"; }
else
    echo "left out: lintian not installed"
fi

find "$work/root" "$work/dev" -perm /022 ! -type l | grep . &&
    fail "writable by others"
# no place of the machine that built it
strings "$work/root/usr/bin/coldgap" 2>/dev/null >"$work/strings"
grep -F -e "$2" -e "$build" "$work/strings" && fail "the build's own paths"

expect 0 "$work/root/usr/bin/coldgap" find \
    "$work/root/usr/share/coldgap/configs/engines/iron_six.cfg" --quiet
says stdout '^Top ring, file to'
finish
