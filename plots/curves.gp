# The gap against one setting, a curve for each name of another.
#   coldgap sweep CONFIG --vary charge.boost_kPa=0:240:20 \
#                        --vary rings.top.material=plain_steel,nitrided_stainless -o out
#   gnuplot -e "dir='out'" plots/curves.gp
# needs: sweep.dat/curves
name = "curves"
table = "sweep.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
# Columns: the settings, then 1 cold gap, 2 closure, 5 spread, 6 residual.
axes = swept(2) eq "" ? 1 : 2
need(row) = column(axes+2) + column(axes+5) + column(axes+6)
# The names take turns, row by row.
names = axes == 1 ? 1 : int(real(until(after(word(after(note("grid of"), "points: "), 4), "("), ")")))
array called[names]
if (axes > 1) { stats file every ::::names-1 using (called[int($0)+1] = strcol(2), 0) nooutput }
title = "Top ring: gap needed before rounding".(axes == 1 ? "" : ", by ".swept_text(2))
set xlabel swept_text(1) noenhanced
set ylabel "gap needed, mm"
set y2label "gap needed, thou (0.001 in)"
set link y2 via y/0.0254 inverse y*0.0254
set y2tics 2
set xrange [*:*] noextend
set yrange [0:*]
set offsets 0, 0, graph 0.08, 0
if (axes == 1) { unset key }
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot for [i=1:names] file every names::i-1 using 1:(need(0)) \
         with linespoints ls 100+i title axes == 1 ? "all" : called[i] noenhanced
}
