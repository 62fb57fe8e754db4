#!/bin/sh
# The table of a README that stands between <!-- MARK --> and <!-- end -->.
#
#   sh tests/put_table.sh TABLE MARK README             is it TABLE?
#   sh tests/put_table.sh TABLE MARK README --write     makes it so
#
# Exit status 1: the README differs, or has no such mark.
set -eu
fresh=$(mktemp)
trap 'rm -f "$fresh"' EXIT
awk -v table="$1" -v mark="<!-- $2 -->" '
    $0 == mark {
        print; print ""
        while ((getline line <table) > 0) print line
        print ""
        while ((getline line) > 0 && line !~ /^<!-- end/) continue
        print line; found = 1
        next
    }
    { print }
    END { exit !found }' "$3" >"$fresh"
if [ "${4:-}" = --write ]; then
    cat "$fresh" >"$3"
else
    diff -u "$3" "$fresh"
fi
