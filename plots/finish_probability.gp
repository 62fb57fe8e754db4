# Material ratio on probability paper: a plateau finish is two straight lines;
# a table of finish.   gnuplot -e "dir='out'" plots/finish_probability.gp
# needs: finish_probability.dat
name = "finish_probability"
table = "finish_probability.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
bends = block(1) ne block(2)
title = bends ? "Probability paper: plateau and valleys each keep a line" : "Probability paper: one line, one stage of honing"
set xlabel "share of the length above the height, % (normal scale)"
set ylabel "height, µm"
set y2label "height, microinch"
set link y2 via y/0.0254 inverse y*0.0254
stats file index 0 using 2 nooutput
apart = (STATS_max-STATS_min)/0.0254/6
ten = 10**floor(log10(apart))
apart = (apart < 2*ten ? 2 : apart < 5*ten ? 5 : 10)*ten
set y2tics apart
set xrange [-3.5:3.5]
set xtics ("0.1" -3.0902, "1" -2.3263, "10" -1.2816, "30" -0.5244, "50" 0, "70" 0.5244, "90" 1.2816, "99" 2.3263, "99.9" 3.0902)
set offsets 0, 0, graph 0.05, graph 0.05
do for [out in outs] {
    eval out eq "png" ? png : svg
    if (bends) {
        plot file index 0 using 1:2 with lines ls 1 title "measured", \
             file index 1 using 1:2 with lines ls 3 lw 4 title block(1).", slope Rpq" noenhanced, \
             file index 2 using 1:2 with lines ls 2 lw 4 title block(2).", slope Rvq" noenhanced
    } else {
        plot file index 0 using 1:2 with lines ls 1 title "measured", \
             file index 1 using 1:2 with lines ls 3 lw 4 title block(1) noenhanced
    }
}
