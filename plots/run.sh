#!/bin/sh
# The main job: set up, find the gap of a shipped engine, draw its pictures.
#   sh plots/run.sh [CONFIG [OUT]]
set -eu
cd "$(dirname "$0")/.."
config=${1:-configs/engines/iron_six.cfg}
out=${2:-out}
sh tests/setup.sh
status=0
build/coldgap find "$config" -o "$out" || status=$?
# Status 1 is an answer too: "not safe".  Its pictures show why.
[ "$status" -le 1 ] || exit "$status"
sh plots/draw.sh "$out" >/dev/null
echo "Tables and pictures are in $out/"
exit "$status"
