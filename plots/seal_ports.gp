# What gas ports change: how far the groove lags, and what passes into the crankcase.
# gnuplot -e "dir='out'" plots/seal_ports.gp
# needs: seal_cycle.dat
if (exists("page")) shape = "size 560,640"
name = "seal_ports"
table = "seal_cycle.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
ports(i) = until(block(i), ", ")
speed = after(block(0), ", ")
set xrange [-360:360] noextend
set xtics exists("page") ? 120 : 60
title = "Gas ports into the top groove, full load, ".speed
do for [out in outs] {
    eval out eq "png" ? png : svg
    set multiplot
    set lmargin at screen exists("page") ? 0.15 : 0.09
    set rmargin at screen 0.97
    set title offset 0,1.6
    if (exists("page")) { set key font ",11" samplen 2 width -3 spacing 1 }
    set key at screen 0.5, exists("page") ? 0.98 : 0.90 center top horizontal maxrows 2
    set xlabel ""
    set format x ""
    set ylabel "cylinder less groove, bar"
    set bmargin at screen 0.54
    set tmargin at screen exists("page") ? 0.91 : 0.83
    plot file index 0 using 1:($2-$3) with lines ls 1 title ports(0) noenhanced, \
         file index 1 using 1:($2-$3) with lines ls 2 dt (8,5) title ports(1) noenhanced
    unset title
    set xlabel "crank angle after TDC firing, degrees"
    set format x
    set ylabel "to the crankcase, g/s"
    set tmargin at screen 0.50
    set bmargin at screen 0.13
    plot file index 0 using 1:11 with lines ls 1 notitle, \
         file index 1 using 1:11 with lines ls 2 dt (8,5) notitle
    unset multiplot
}
