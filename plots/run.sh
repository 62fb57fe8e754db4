#!/bin/sh
# The main job: set up, find the gap of a shipped engine, draw its pictures.
#   sh plots/run.sh [CONFIG [OUT]]
set -eu
case $0 in
/*) cd "${0%/*}/.." ;;
*/*) cd "./${0%/*}/.." ;;
*) cd .. ;;
esac
. plots/plain.sh
config=${1:-configs/engines/iron_six.cfg}
out=${2:-out}
sh tests/setup.sh
status=0
build/coldgap find "$config" -o "$out" || status=$?
# Status 1 is an answer too: "not safe".  Its pictures show why.
[ "$status" -le 1 ] || exit "$status"
sh plots/draw.sh "$out" >/dev/null
printf 'Tables and pictures are in %s/\n' "$(shown "$out")"
exit "$status"
