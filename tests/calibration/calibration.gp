# Each fact against what all others foresee.   sh tests/calibration.sh BUILD README --write
#   gnuplot -e "data='build/calibration.dat'; out='tests/calibration/calibration.png'" tests/calibration/calibration.gp
# What tests/calibration leaves is no table of an answer: style.gp is not for it.
set encoding utf8
stats data using 5 nooutput
rows = STATS_records
blanks(text) = strstrt(text, "_") == 0 ? text : text[1:strstrt(text, "_")-1]." ".blanks(text[strstrt(text, "_")+1:*])
set terminal pngcairo size 900,900 font "sans,11"
set output out
set title "Each fact against what the others foresee"
set xlabel "standard deviations from what is foreseen; of a one-sided fact (triangle) below 0: unlikely"
set border 31 lw 1 lc rgb "#444444"
set grid xtics lw 0.5 lc rgb "#bbbbbb"
set yrange [rows-0.4:-0.6]
set xrange [-4:4]
set lmargin at screen 0.27
set ytics out scale 0 noenhanced
set key bottom center at screen 0.6, 0.015 horizontal samplen 1
set bmargin 5
set arrow 1 from -2,graph 0 to -2,graph 1 nohead dt 2 lc rgb "#444444"
set arrow 2 from 2,graph 0 to 2,graph 1 nohead dt 2 lc rgb "#444444"
clip(x) = x > 3.9 ? 3.9 : x < -3.9 ? -3.9 : x
pick(held, sided, h, s, x) = held == h && sided == s ? clip(x) : NaN
plot data using (pick($3,$4,0,0,$5)):0:ytic(blanks(strcol(1))) with points pt 7 ps 1.2 lc rgb "#000000" title "calibrated on, left out in turn", \
     data using (pick($3,$4,0,1,$5)):0 with points pt 9 ps 1.4 lc rgb "#000000" notitle, \
     data using (pick($3,$4,1,0,$5)):0 with points pt 6 ps 1.4 lw 2 lc rgb "#b2182b" title "checked against, held back", \
     data using (pick($3,$4,1,1,$5)):0 with points pt 8 ps 1.6 lw 2 lc rgb "#b2182b" notitle
