# Pressures around the rings and the top ring's lift over the cycle.
# gnuplot -e "dir='out'" plots/seal_cycle.gp
# needs: seal_cycle.dat
if (exists("page")) shape = "size 560,640"
name = "seal_cycle"
table = "seal_cycle.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
set xrange [-180:360] noextend
set xtics 60
title = "Gas around the rings at full load: ".block(0)
do for [out in outs] {
    eval out eq "png" ? png : svg
    set multiplot
    set lmargin at screen exists("page") ? 0.15 : 0.09
    set rmargin at screen 0.97
    set title offset 0,1.6
    set xlabel ""
    set format x ""
    set ylabel "pressure, bar"
    set logscale y
    set yrange [0.8:*]
    if (exists("page")) { set key font ",11" samplen 2 width -3 spacing 1 }
    set key at screen 0.5, exists("page") ? 0.99 : 0.90 center top horizontal maxrows 2
    set bmargin at screen 0.40
    set tmargin at screen exists("page") ? 0.91 : 0.83
    plot file index 0 using 1:2 with lines ls 1 title "cylinder", \
         file index 0 using 1:3 with lines ls 2 dt (8,5) title "behind the top ring", \
         file index 0 using 1:4 with lines ls 3 title "between the rings", \
         file index 0 using 1:5 with lines ls 4 title "behind the second ring"
    unset logscale y
    unset title
    set xlabel "crank angle after TDC firing, degrees"
    set format x
    set ylabel "lift, µm"
    set yrange [-4:*]
    set key at screen 0.5, 0.385 center top horizontal maxrows 2
    set tmargin at screen 0.34
    set bmargin at screen 0.13
    plot file index 0 using 1:6 with lines ls 1 title "top ring above its lower flank", \
         file index 0 using 1:7 with lines ls 3 title "second ring"
    unset multiplot
}
