#!/bin/sh
# Sets up, builds and runs every test.  In CI (the variable CI is set) the tools
# that a few of them skip without are installed too.
set -eu
cd "$(dirname "$0")/.."
what=tests
[ -z "${CI:-}" ] || what=ci
sh tests/setup.sh "$what"
ctest --test-dir build --output-on-failure --no-tests=error \
    --parallel "$(nproc)" "$@"
