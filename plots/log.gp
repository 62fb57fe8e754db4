# A logged run in the log's own time.   gnuplot -e "dir='out'" plots/log.gp
# needs: log.dat
name = "log"
table = "log.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
# columns: 1 log's time, 2 speed, 3 manifold, 9 closure; block 1: tightest
# What to file to stands above the closure, and is told most boldly.
title = "Where in the log: ".note("log: ")
stats file index 0 using 1:9 name "run" nooutput
stats file index 0 using 2 name "speed" nooutput
stats file index 0 using 3 name "manifold" nooutput
set xrange [run_min_x:run_max_x] noextend
set xlabel "the log's own time, s"
set ylabel "closure, not the gap to file to, mm"
set y2label "speed and manifold pressure, % of the run's most"
set y2range [-145:105]
set y2tics 0,25,100
file_to = note("file to ")
advised = file_to eq "" ? NaN : real(until(file_to, " mm"))
most = advised > run_max_y ? advised : run_max_y
low = run_min_y-0.05*(most-run_min_y)
set yrange [low:low+2*(most-low)]
told = sprintf("file to %.2f mm", advised)
if (advised == advised) {
    set label 1 told at graph 0.02, first advised offset 0,0.8 font ",18" front noenhanced
}
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot file index 0 using 1:(advised) with lines ls 2 lw 4 notitle, \
         file index 0 using 1:(100*$2/speed_max) axes x1y2 with lines ls 3 lw 1.5 title sprintf("speed, most %.0f rpm", speed_max), \
         file index 0 using 1:(100*$3/manifold_max) axes x1y2 with lines ls 4 lw 1.5 title sprintf("manifold, absolute, most %.0f kPa", manifold_max), \
         file index 0 using 1:9 with lines ls 1 title "closure", \
         file index 1 using 1:9 with points pt 7 ps 1.4 lc rgb "#000000" title "tightest instants", \
         file index 1 using 1:9:(sprintf("%.1f s", $1)) with labels offset 0,1 font ",10" notitle
}
