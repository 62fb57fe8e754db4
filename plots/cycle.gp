# Pressure and gas-side coefficient over crank angle, at rated speed and full
# load.   gnuplot -e "dir='out'" plots/cycle.gp
# needs: cycle.dat
name = "cycle"
table = "cycle.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
title = "Cycle at rated speed, full load"
set xlabel "crank angle, degrees (0: TDC firing)"
set ylabel "pressure, bar"
set y2label "gas-side coefficient, kW/m²K"
set y2tics
set xrange [-180:360]
set xtics 60
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot file index 0 using 1:2 with lines ls 1 title "pressure", \
         file index 0 using 1:($4/1000) axes x1y2 with lines ls 2 dt (8,4) title "coefficient (right)"
}
