#!/bin/sh
# The calibration: constants from facts outside, and every fact left out in turn.
#
#   sh tests/calibration.sh BUILD                  prints the tables
#   sh tests/calibration.sh BUILD README           the README's tables are these?
#   sh tests/calibration.sh BUILD README --write   brings README, the picture and
#                                                  models/case/calibrated.h up to date
#
# With --write build again: the defaults are other ones then.  Exit status 1:
# the README or the defaults differ.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
build=$(cd "$1" && pwd)
header=$here/../models/case/calibrated.h
facts=$here/calibration/facts.cfg
cd "$build"
if [ $# -lt 2 ]; then
    exec tests/calibrate "$facts" --data calibration.dat
fi
readme=$2
[ "${readme#/}" != "$readme" ] || readme=$OLDPWD/$readme
differ=0
if [ "${3:-}" = --write ]; then
    tests/calibrate "$facts" --data calibration.dat --write "$header" \
        >calibration.md
    gnuplot -e "data='calibration.dat'; out='$here/calibration/calibration.png'" \
        "$here/calibration/calibration.gp"
else
    tests/calibrate "$facts" --data calibration.dat --check "$header" \
        >calibration.md || differ=1
fi
sh "$here/put_table.sh" calibration.md calibration "$readme" ${3:+"$3"} ||
    differ=1
exit $differ
