# Oil film and friction of the compression rings over the crank, at rated speed
# and full load; needs rings.film_law reynolds.
#   gnuplot -e "dir='out'" plots/film.gp
# needs: film.dat
name = "film"
table = "film.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
title = "Oil film of the rings at rated speed, full load"
set xlabel "crank angle, degrees (0: TDC firing)"
set ylabel "film at the nearest point, µm"
set y2label "friction of the top ring, N"
set y2tics
set ytics nomirror
set xrange [-360:360]
set xtics 90
set yrange [0:*]
set y2range [0:*]
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot file index 0 using 1:2 with lines ls 1 title "top ring", \
         file index 1 using 1:2 with lines ls 2 dt (8,4) title "second ring", \
         file index 0 using 1:($7+$8) axes x1y2 with lines ls 3 dt (2,3) title "top ring friction (right)"
}
