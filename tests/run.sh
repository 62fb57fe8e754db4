#!/bin/sh
# Sets up, builds and runs every test.
set -eu
cd "$(dirname "$0")/.."
sh tests/setup.sh tests
ctest --test-dir build --output-on-failure --no-tests=error \
    --parallel "$(nproc)" "$@"
