# The ring's growth against the bore's.
# gnuplot -e "dir='out'" plots/why.gp
# needs: history.dat
name = "why"
table = "history.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
gap = real(word(note("cold gap"), 1))
title = "Growth of ring and bore, and the gap between"
set xrange [0:*] noextend
set xlabel "time, s"
set ylabel "growth around the ring, mm"
set y2label "growth around the ring, thou (0.001 in)"
set link y2 via y/0.0254 inverse y*0.0254
set y2tics 2
set yrange [0:*]
set offsets 0, 0, graph 0.08, 0
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot file using 1:15:($16+gap) with filledcurves fc rgb "#e2e2e2" title "gap left while hot", \
         file using 1:16:15 with filledcurves below fc rgb "#b0b0b0" title "closure: gap used up by heat", \
         file using 1:($16+gap) with lines ls 4 title "bore's growth plus cold gap: ends touch here", \
         file using 1:15 with lines ls 2 title "ring's growth", \
         file using 1:16 with lines ls 3 title "bore's growth"
}
