# Cold skirt clearance by piston alloy.   gnuplot -e "dir='out'" plots/pistons.gp
# needs: pistons.dat
name = "pistons"
table = "pistons.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
title = "Cold skirt clearance: by this model, and fitted by the trade"
set xlabel ""
set ylabel "diametral, mm"
set y2label "diametral, thou (0.001 in)"
set link y2 via y/0.0254 inverse y*0.0254
set y2tics 1
set xrange [-0.6:rows-0.4]
set yrange [0:*]
set offsets 0, 0, graph 0.08, 0
set xtics out scale 0 noenhanced
set grid noxtics
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot file using ($0-0.17):(0):($0-0.32):($0-0.02):(0):2:xtic(strcol(1)) with boxxyerror fs solid 1 border lc rgb "#222222" fc rgb "#555555" title "by this model, margin in it", \
         file using ($0+0.17):6:($0+0.02):($0+0.32):6:7 with boxxyerror fs pattern 4 border lc rgb "#222222" fc rgb "#222222" title "the trade's band (common practice, no source)"
}
