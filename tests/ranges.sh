#!/bin/sh
# Heat and temperatures of the shipped engines, held settled, beside what others
# publish for such engines: a picture of where the model stands, no check.
#
#   sh tests/ranges.sh BUILD                    prints the table
#   sh tests/ranges.sh BUILD README             is it the README's?
#   sh tests/ranges.sh BUILD README --write     brings the README up to date
#
# In README it stands between <!-- ranges --> and <!-- end -->.  Exit status 1:
# the README differs.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
build=$(cd "$1" && pwd)
engines='plain_four boosted_four iron_six big_eight'
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

for engine in $engines; do
    status=0
    "$build/coldgap" find "$here/../configs/engines/$engine.cfg" --brief \
        --set duty.name=settled -o "$work/$engine" >/dev/null || status=$?
    [ "$status" -le 1 ] || exit 1
done

# figures ENGINE: key and value, one a line.
figures() {
    awk '!/^#/ {print $1, $2}' "$work/$1/summary.dat"
    awk '!/^#/ {print "share_" $1, $3}' "$work/$1/heat_balance.dat"
    awk '!/^#/ {print "liner_mid", $10; print "face_side",
                ($6 - $7) / ($7 - ($9 + $10 + $11) / 3); exit}' \
        "$work/$1/history.dat"
}

{
    printf '| figure | published | %s |\n|---|---|---|---|---|---|\n' \
        "$(echo "$engines" | sed 's/ / | /g')"
    for engine in $engines; do
        figures "$engine" | sed "s/^/$engine /"
    done | awk -v engines="$engines" '
        { value[$1, $2] = $3 }
        function row(what, key, low, high, form, unit, source,
                     i, n, v, list) {
            n = split(engines, list, " ")
            printf("| %s | %g to %g%s, %s |", what, low, high, unit, source)
            for (i = 1; i <= n; i++) {
                v = key == "carried" ? \
                    value[list[i], "share_to_coolant"] + \
                    value[list[i], "share_to_oil"] : value[list[i], key]
                printf((v < low || v > high) ? " **" form "** |" \
                                             : " " form " |", v)
            }
            print ""
        }
        END {
            heywood = "J. B. Heywood (1988), table 12.1, from memory"
            row("brake work, of the fuel", "share_brake", 25, 28, "%.1f",
                " %", heywood)
            row("coolant and oil, of the fuel", "carried", 20, 36, "%.1f",
                " %", heywood)
            row("exhaust as heat, of the fuel", "share_exhaust", 34, 45,
                "%.1f", " %", heywood)
            row("probe in the collector", "exhaust_probe", 900, 1000, "%.0f", " C",
                "rated power of boosted engines: maintenance texts, second hand")
            row("crown", "crown_max", 200, 300, "%.0f", " C",
                "full load: Heywood (1988), ch. 12, from memory")
            row("top groove", "groove_top_max", 180, 250, "%.0f", " C",
                "up to where piston alloys soften, common practice, no source")
            row("(groove - ring) / (ring - bore)", "face_side", 1, 99, "%.1f",
                "", "the groove side the larger: Trans. JSME 29(201) 988 (1963)")
            row("bore where the top ring turns", "liner_top_max", 120, 180,
                "%.0f", " C", "limit of the oil, Heywood (1988), sec. 12.1")
            row("bore at mid-stroke", "liner_mid", 110, 125, "%.0f", " C",
                "800 cc unboosted petrol engine, RISS record 5747798778e0f6c6")
        }'
} >"$work/table"

if [ $# -lt 2 ]; then
    cat "$work/table"
    exit 0
fi
sh "$here/put_table.sh" "$work/table" ranges "$2" ${3:+"$3"}
