# Hot clearances of the piston.   gnuplot -e "dir='out'" plots/clearance.gp
# needs: clearance.dat
name = "clearance"
table = "clearance.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
title = "Hot clearances of the piston over the duty"
set xrange [0:*] noextend
set xlabel "time, s"
set ylabel "skirt and groove side, mm"
set y2label "skirt and groove side, thou (0.001 in)"
set link y2 via y/0.0254 inverse y*0.0254
set y2tics 1
set arrow 1 from graph 0, first 0 to graph 1, first 0 nohead lw 1.2 lc rgb "#000000"
set label 1 "below: the skirt springs" at graph 0.02, first 0 offset 0,-0.8 font ",9"
set offsets 0, 0, graph 0.08, graph 0.05
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot file using 1:2 with lines ls 1 title "skirt, diametral", \
         file using 1:6 with lines ls 3 title "top ring, side", \
         file using 1:8 with lines ls 4 title "second ring, side"
}
