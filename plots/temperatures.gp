# Temperatures over the duty.   gnuplot -e "dir='out'" plots/temperatures.gp
# needs: history.dat
name = "temperatures"
table = "history.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
title = "Temperatures over the duty"
set xrange [0:*] noextend
set xlabel "time, s"
set ylabel "temperature, °C"
set y2label "temperature, °F"
set link y2 via y*1.8+32 inverse (y-32)/1.8
set y2tics 50
set key outside right center vertical
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot file using 1:5 with lines ls 2 title "crown", \
         file using 1:6 with lines ls 1 dt (10,3) title "top groove", \
         file using 1:7 with lines ls 3 title "top ring", \
         file using 1:8 with lines ls 5 title "second ring", \
         file using 1:9 with lines ls 4 title "bore, top", \
         file using 1:11 with lines ls 6 title "bore, low"
}
