#!/bin/sh
# The sources under clang-tidy (.clang-tidy) and cppcheck (tests/cppcheck.txt):
# both clean, but for what those two files leave out and why.
#
#   run_lint.sh TOOL SOURCES [FILE...]
set -u
tool=$1
sources=$2
shift 2
. "$(dirname "$0")/lib.sh"
command -v "$tool" >/dev/null 2>&1 || skip "$tool not installed"
cd "$sources" || exit 1
[ $# -gt 0 ] || set -- models/*.c src/*.c

case $tool in
clang-tidy)
    printf '%s\n' "$@" | xargs -P 2 -I FILE clang-tidy --quiet FILE -- \
        -std=c11 -Imodels -Isrc -DCG_VERSION='""' -DCG_CONFIGS_BUILD='""' \
        -DCG_CONFIGS_INSTALL='""' >"$work/said" 2>"$work/counts" ||
        fail "clang-tidy"
    ;;
cppcheck)
    cppcheck --quiet --std=c11 -j 2 --error-exitcode=1 \
        --enable=warning,style,performance,portability \
        --suppressions-list=tests/cppcheck.txt -Imodels -Isrc \
        "$@" >"$work/said" 2>&1 || fail "cppcheck"
    ;;
*) fail "no such tool: $tool" ;;
esac
[ "$failed" -eq 0 ] || cat "$work/said"
finish
