# A logged run in the log's own time.   gnuplot -e "dir='out'" plots/log.gp
# needs: log.dat
name = "log"
table = "log.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
# columns: 1 log's time, 2 speed, 3 manifold, 9 closure; block 1: tightest
title = "Where in the log: ".note("log: ")
stats file index 0 using 1:9 name "run" nooutput
stats file index 0 using 2 name "speed" nooutput
stats file index 0 using 3 name "manifold" nooutput
set xrange [run_min_x:run_max_x] noextend
set xlabel "the log's own time, s"
set ylabel "closure of the top ring, mm"
set y2label "speed and manifold pressure, % of the run's most"
set y2range [-130:105]
set y2tics 0,25,100
set yrange [run_min_y-0.05*(run_max_y-run_min_y):run_max_y+1.15*(run_max_y-run_min_y)]
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot file index 0 using 1:(100*$2/speed_max) axes x1y2 with lines ls 3 lw 1.5 title sprintf("speed, most %.0f rpm", speed_max), \
         file index 0 using 1:(100*$3/manifold_max) axes x1y2 with lines ls 4 lw 1.5 title sprintf("manifold, absolute, most %.0f kPa", manifold_max), \
         file index 0 using 1:9 with lines ls 1 title "closure", \
         file index 1 using 1:9 with points pt 7 ps 1.4 lc rgb "#b2182b" title "tightest instants", \
         file index 1 using 1:9:(sprintf("%.1f s", $1)) with labels offset 0,1 font ",10" notitle
}
