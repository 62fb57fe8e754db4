#!/bin/sh
# The starter config is a config: it runs as it is printed.
#
#   run_template.sh COLDGAP
set -u
coldgap=$1
. "$(dirname "$0")/lib.sh"

"$coldgap" template >"$work/start.cfg" || fail "template: exit $?"
expect 0 "$coldgap" find "$work/start.cfg"
says stdout '^Top ring, file to'
expect 0 "$coldgap" network "$work/start.cfg" -o "$work/out" --quiet

# With its comment signs taken off it says the defaults aloud: same answer
# (but that a gap to judge is then given, and the second gap goes with it; a
# retard that is given would take the knock limit's place).
sed -E '/in place of the knock limit/!s/^( *)#([a-zA-Z0-9_]+ = )/\1\2/' "$work/start.cfg" >"$work/all.cfg"
expect 0 "$coldgap" find "$work/start.cfg" -o "$work/start"
# Of gaps and minimums it holds something of their size, which may be too small.
"$coldgap" find "$work/all.cfg" -o "$work/all" >"$work/stdout" 2>"$work/stderr"
[ $? -le 1 ] || fail "all settings: $(cat "$work/stderr")"
said=$(diff "$work/start.cfg" "$work/all.cfg" | grep -c '^>')
[ "$said" -gt 80 ] || fail "only $said settings in the template"
for folder in start all; do
    grep -v '^#\|^hot_gap_min\|^energy_residual\|^cold_gap_second' "$work/$folder/summary.dat" \
        >"$work/$folder.keys"
done
diff "$work/start.keys" "$work/all.keys" ||
    fail "the template's defaults are not the defaults"
finish
