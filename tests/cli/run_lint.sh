#!/bin/sh
# The program's sources under clang-tidy (.clang-tidy) and cppcheck
# (tests/cppcheck.txt): both clean, but for what those two files leave out and
# why.  The suites are left out: what the tools say of them is about Check's
# macros.
#
#   run_lint.sh TOOL SOURCES [FILE...]
set -u
tool=$1
sources=$2
shift 2
. "$(dirname "$0")/lib.sh"
command -v "$tool" >/dev/null 2>&1 || skip "$tool not installed"
cd "$sources" || exit 1
[ $# -gt 0 ] || set -- models/*/*.c src/*.c src/*/*.c

rooms=$(ls -d models models/*/ src src/*/ | sed s/^/-I/)
# shellcheck disable=SC2086 # a list of words is meant to split
case $tool in
clang-tidy)
    # A function is followed along 50000 steps, not 225000: a third of the
    # time, and what the longer paths found more of was never a fault.
    printf '%s\n' "$@" | xargs -P 2 -I FILE clang-tidy --quiet FILE -- \
        -std=c11 $rooms -include tests/lint.h -DCG_VERSION='""' \
        -DCG_CONFIGS_FROM_PROGRAM='""' -DCG_CONFIGS_INSTALL='""' \
        -Xclang -analyzer-config -Xclang max-nodes=50000 \
        >"$work/said" 2>"$work/counts" || fail "clang-tidy"
    ;;
cppcheck)
    cppcheck --quiet --std=c11 -j 2 --error-exitcode=1 \
        --enable=warning,style,performance,portability \
        --suppressions-list=tests/cppcheck.txt $rooms \
        "$@" >"$work/said" 2>&1 || fail "cppcheck"
    ;;
*) fail "no such tool: $tool" ;;
esac
[ "$failed" -gt 0 ] || finish
cat "$work/said"
# Versions differ in what they find; nobody's tests fail by a newer tool.
version=$("$tool" --version | grep -o '[0-9][0-9]*\.[0-9][0-9]*' | head -n 1)
case "$tool $version" in
"clang-tidy 14."* | "cppcheck 2.10") finish ;;
*) skip "found by $tool $version; clang-tidy 14 and cppcheck 2.10 count" ;;
esac
