# Hot gap along the stroke.   gnuplot -e "dir='out'" plots/stroke.gp
# needs: stroke.dat
name = "stroke"
table = "stroke.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
title = "Top ring's hot gap along the bore"
set xlabel "depth below the deck, mm"
set ylabel "gap, mm"
set y2label "gap, thou (0.001 in)"
set link y2 via y/0.0254 inverse y*0.0254
set y2tics 2
set yrange [0:*]
set offsets 0, 0, graph 0.08, 0
# "tightest t=14.73s" reads "tightest at 14.73 s".
short(text) = strlen(text) > 24 ? text[1:24]."..." : text
tidy(text) = short(blanks(until(text, "t="))."at ".until(after(text, "t="), "s")." s")
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot file index 1 using 1:2 with lines ls 6 title tidy(block(1)) noenhanced, \
         file index 2 using 1:2 with lines ls 4 title tidy(block(2)) noenhanced, \
         file index 3 using 1:2 with lines ls 3 title tidy(block(3)) noenhanced, \
         file index 4 using 1:2 with lines ls 5 title tidy(block(4)) noenhanced, \
         file index 0 using 1:2 with lines ls 1 lw 3.5 title tidy(block(0)) noenhanced
}
