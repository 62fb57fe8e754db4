#!/bin/sh
# `coldgap network`: the files' form, and a circuit simulator that knows
# nothing of coldgap solving the same transient.
#
#   run_network.sh COLDGAP SOURCES
set -u
coldgap=$1
configs=$2/configs
. "$(dirname "$0")/lib.sh"

# form FOLDER: the tables, and that what they name exists.
form() {
    for part in nodes links baths sources; do
        grep -v '^#' "$1/network_$part.dat" >"$work/$part"
    done
    count=$(wc -l <"$work/nodes")
    [ "$count" -gt 50 ] || fail "only $count nodes"
    awk 'NF != 4 || $1 != NR - 1 || !($3 > 0) || !($4 > -60 && $4 < 600) ||
         seen[$2]++ {print; bad = 1} END {exit bad}' "$work/nodes" ||
        fail "nodes: node name capacity_J_K start_C"
    awk -v n="$count" 'NF != 3 || !($1 < n) || !($2 < n) || $1 == $2 ||
         !($3 >= 0) {print; bad = 1} END {exit bad || !NR}' "$work/links" ||
        fail "links: node other conductance_W_K"
    awk -v n="$count" 'NF != 3 || !($1 < n) || !($2 >= 0) ||
         !($3 > -60 && $3 < 4000) {print; bad = 1} END {exit bad || !NR}' \
        "$work/baths" || fail "baths: node conductance_W_K temperature_C"
    awk -v n="$count" 'NF != 2 || !($1 < n) {print; bad = 1}
         END {exit bad || !NR}' "$work/sources" || fail "sources: node heat_W"

    # The netlist holds the same elements.
    for pair in C:nodes RL:links RB:baths IS:sources; do
        kind=${pair%%:*}
        rows=$(awk -v k="$kind" '(k == "RL" && !($3 > 0)) ||
            (k == "RB" && !($2 > 0)) {next} {n++} END {print n + 0}' \
            "$work/${pair##*:}")
        lines=$(grep -c "^$kind[0-9]" "$1/network.cir")
        [ "$rows" -eq "$lines" ] || fail "$kind: $rows rows, $lines lines"
    done

    for column in crown_C groove_top_C ring_top_C liner_top_C liner_low_C; do
        id=$(sed -n "s/^# node $column = //p" "$1/network_run.dat")
        awk -v id="$id" '$1 == id {found = 1} END {exit !found}' \
            "$work/nodes" || fail "node of $column: '$id'"
    done
    awk '!/^#/ && NF != 6 {bad = 1} !/^#/ {last = $1}
         END {exit bad || last < 19.999 || last > 20.001}' \
        "$1/network_run.dat" || fail "rows of network_run.dat"
    head -n 5 "$1/network.cir" | grep -q '^\* .*not a warranty' ||
        fail "network.cir has no caution"
}

# peer FOLDER: ngspice on the netlist, with its five nodes written as a table
# in place of the .print line, against coldgap's own answer.
peer() {
    vectors=$(sed -n 's/^# node .* = \([0-9]*\)$/v(n\1)/p' \
        "$1/network_run.dat" | tr '\n' ' ')
    {
        sed '/^\.print/d; /^\.end$/d' "$1/network.cir"
        printf '.control\nset wr_singlescale\nset numdgt=9\nrun\n'
        printf 'wrdata %s %s\n.endc\n.end\n' "$work/peer.dat" "$vectors"
    } >"$work/peer.cir"
    (cd "$work" && timeout 300 ngspice -b peer.cir >peer.log 2>&1)
    [ -s "$work/peer.dat" ] || {
        fail "ngspice gave no answer"
        tail -n 20 "$work/peer.log"
        return
    }
    # the peer's steps are its own: straight lines between them
    awk -v name="$2" 'FNR == NR {n++; t[n] = $1; for (k = 2; k <= 6; k++)
            y[n, k] = $k; next}
        /^#/ || !NF {next}
        {   while (i < n - 1 && t[i + 1] < $1) i++
            if (i < 1) i = 1
            part = ($1 - t[i]) / (t[i + 1] - t[i])
            for (k = 2; k <= 6; k++) {
                d = y[i, k] + part * (y[i + 1, k] - y[i, k]) - $k
                d = d < 0 ? -d : d
                if (d > most) {most = d; at = $1; col = k}
            }
            rows++
        }
        END {printf "%s: %d rows, largest difference %.4f K (column %d, %g s)\n",
                 name, rows, most, col, at
             printf "run_network.sh\t%s\tvalue\tlargest difference of %d [K]\t" \
                    "H. Vogt et al., ngspice on the netlist\t0\t%.4g\t0.1\t%s\n",
                 name, rows * 5, most, most < 0.1 ? "holds" : "MISSED" >>found
             exit !(most < 0.1 && rows > 150)}' found="${CG_DOSSIER:-/dev/null}" \
        "$work/peer.dat" "$1/network_run.dat" || fail "$2: too far apart"
}

for name in boosted_four big_eight plain_four; do
    expect 0 "$coldgap" network "$configs/engines/$name.cfg" -o "$work/$name"
    form "$work/$name"
done
expect 0 "$coldgap" network "$configs/engines/plain_four.cfg" --quiet \
    --set duty.start=cold -o "$work/cold"
form "$work/cold"
expect 0 "$coldgap" network "$configs/engines/plain_four.cfg" --json \
    -o "$work/told"
says stdout "\"nodes\", .*\"value\": $(grep -c -v '^#' \
    "$work/told/network_nodes.dat"),"
expect 4 "$coldgap" network "$configs/engines/plain_four.cfg" \
    -o "$work/none/such"
[ "$failed" -eq 0 ] || finish
command -v ngspice >/dev/null 2>&1 || skip "ngspice not installed"
[ -z "${CG_DOSSIER:-}" ] || : >"$CG_DOSSIER"
for name in boosted_four big_eight plain_four cold; do
    peer "$work/$name" "$name"
done
[ -z "${CG_DOSSIER:-}" ] || printf 'end\t%d\n' "$failed" >>"$CG_DOSSIER"
finish
