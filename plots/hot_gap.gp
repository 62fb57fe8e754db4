# Hot gap over the duty.   gnuplot -e "dir='out'" plots/hot_gap.gp
# needs: history.dat summary.dat
name = "hot_gap"
table = "history.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
stats dir."/summary.dat" using (strcol(1) eq "residual" ? (residual = $2) : 0) nooutput
title = "Top ring: gap left while hot"
set xrange [0:*] noextend
set xlabel "time, s"
set ylabel "gap, mm"
set y2label "gap, thou (0.001 in)"
set link y2 via y/0.0254 inverse y*0.0254
set y2tics 2
set yrange [0:*]
set offsets 0, 0, graph 0.08, 0
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot file using 1:13 with lines ls 3 title "where the ring turns at the top", \
         file using 1:12 with lines ls 1 title "tightest place of the stroke", \
         residual with lines ls 2 dt (8,6) title "minimum hot gap"
}
