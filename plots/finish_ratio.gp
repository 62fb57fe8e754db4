# Material ratio curve with its core line, peaks and valleys; a table of
# finish.   gnuplot -e "dir='out'" plots/finish_ratio.gp
# needs: finish_ratio.dat finish.dat
name = "finish_ratio"
table = "finish_ratio.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
take(key, value) = key eq "Mr1" ? (mr1 = value) : key eq "Mr2" ? (mr2 = value) : \
                   key eq "Rpk" ? (rpk = value) : key eq "Rk" ? (rk = value) : \
                   key eq "Rvk" ? (rvk = value) : key eq "Vo" ? (vo = value) : 0
stats dir."/finish.dat" using (take(strcol(1), $2)) nooutput
title = sprintf("Material ratio: Rpk %.2f, Rk %.2f, Rvk %.2f µm, oil held %.4f mm³/cm²", rpk, rk, rvk, vo)
set xlabel "share of the length above the height, %"
set ylabel "height, µm"
set y2label "height, microinch"
set link y2 via y/0.0254 inverse y*0.0254
stats file index 0 using 2 nooutput
apart = (STATS_max-STATS_min)/0.0254/6
ten = 10**floor(log10(apart))
apart = (apart < 2*ten ? 2 : apart < 5*ten ? 5 : 10)*ten
set y2tics apart
set xrange [0:100]
set offsets 0, 0, graph 0.05, graph 0.05
set label 1 "Mr1" at mr1, graph 0.5 offset 0.5,0
set label 2 "Mr2" at mr2, graph 0.5 right offset -0.5,0
do for [out in outs] {
    eval out eq "png" ? png : svg
    set arrow 1 from mr1, graph 0 to mr1, graph 1 nohead ls 6 lw 1.2
    set arrow 2 from mr2, graph 0 to mr2, graph 1 nohead ls 6 lw 1.2
    plot file index 2 using 1:2 with filledcurves closed fc rgb "#bdbdbd" title "peaks that run in", \
         file index 3 using 1:2 with filledcurves closed fc rgb "#e3e3e3" title "valleys that hold oil", \
         file index 0 using 1:2 with lines ls 1 lw 3 title "measured", \
         file index 1 using 1:2 with lines ls 3 title "core line"
}
