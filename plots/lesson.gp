# The lesson: ring, bore and gap against boost.
#   coldgap lesson CONFIG -o out
#   gnuplot -e "dir='out'" plots/lesson.gp
# needs: lesson.dat
name = "lesson"
table = "lesson.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
# columns of block 0: 1 boost, 3 ring's growth, 4 bore's, 6 cold gap
title = "More boost: the ring outgrows the bore, and the gap must grow with it"
set xlabel "boost, kPa"
set x2label "boost, psi"
set ylabel "around the ring, mm"
set y2label "around the ring, thou (0.001 in)"
set link x2 via x/psi inverse x*psi
set link y2 via y/0.0254 inverse y*0.0254
set x2tics 5
set y2tics 5
set xrange [*:*] noextend
set yrange [0:*]
set offsets 0, 0, graph 0.08, 0
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot file index 0 using 1:3:($4+$6) with filledcurves fc rgb "#e2e2e2" title "gap left while hot, settled at full load", \
         file index 0 using 1:4:3 with filledcurves fc rgb "#b0b0b0" title "closure: gap used up by heat", \
         file index 0 using 1:($4+$6) with linespoints ls 4 pt 9 title "bore's growth plus the cold gap: ends touch here", \
         file index 0 using 1:3 with linespoints ls 2 pt 7 title "ring's growth", \
         file index 0 using 1:4 with linespoints ls 3 pt 5 title "bore's growth"
}
