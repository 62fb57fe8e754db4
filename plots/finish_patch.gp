# Simulated honed surfaces, 1 mm square: the base stage alone and with its
# plateau; a table of finish --simulate.
# gnuplot -e "dir='out'" plots/finish_patch.gp
# needs: finish_patch.dat
if (exists("page")) shape = "size 560,900"
name = "finish_patch"
table = "finish_patch.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
stats file index 0 using 3 nooutput
low = STATS_min
high = STATS_max
title = "Simulated honing, invented for teaching; heights in µm"
unset key
unset grid
set bmargin 0
set palette defined (0 "#151515", 0.55 "#8a8a8a", 1 "#f4f4f4")
# The plateau's own height in mid-grey, valleys black.
stats file index 1 using 3 nooutput
set cbrange [STATS_mean-3*STATS_stddev:STATS_mean+2*STATS_stddev]
set zrange [low:high]
set xyplane at low
set view 42, 25, exists("page") ? 0.95 : 1.15, 0.5
set xtics 0.5 offset 0,-0.3
set ytics 0.5
set ztics 4
set border 127 lw 0.5 lc rgb "#444444"
set xlabel "around, mm" offset 0,-0.6
set ylabel "along, mm" offset -2,-0.6
unset zlabel
set pm3d depthorder lighting primary 0.35 specular 0
unset colorbox
do for [out in outs] {
    eval out eq "png" ? png : svg
    if (exists("page")) { set label 100 at screen 0.5, 0.018 }
    # Only the picture in pixels gets every point: as lines it would be huge.
    step = out eq "png" ? 1 : exists("page") ? 6 : 4
    set multiplot layout exists("page") ? 2 : 1, exists("page") ? 1 : 2 title title."\n".subject noenhanced
    set title "base stage alone"
    splot file index 0 every step:step using 1:2:3 with pm3d notitle
    unset label 100
    set title "base stage and plateau stage"
    splot file index 1 every step:step using 1:2:3 with pm3d notitle
    unset multiplot
}
