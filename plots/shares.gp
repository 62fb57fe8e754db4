# What the closure's spread is made of.   gnuplot -e "dir='out'" plots/shares.gp
# needs: sensitivity.dat
name = "shares"
table = "sensitivity.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
sampled = 0
stats file using (strcol(4) ne "" ? (sampled = 1) : 0) nooutput
title = "What the uncertainty allowance is made of"
set xlabel "share of the variance, %"
set ylabel ""
set yrange [rows-0.4:-0.6] noextend
set xrange [0:*]
set offsets 0, graph 0.06, 0, 0
set lmargin at screen 0.21
set ytics out scale 0 noenhanced
set grid noytics
# Half a bar each when both are there, first order above.
half = sampled ? 0.0 : 0.36
first = "using (0):($0):(0):($3*100):($0-0.36):($0+half):ytic(blanks(strcol(5)))"
second = "using (0):($0):(0):($4*100):($0):($0+0.36)"
draw = "plot file ".first." with boxxyerror fs solid 1 border lc rgb '#222222' fc rgb '#555555' title 'alone (first order)'"
both = draw.", file ".second." with boxxyerror fs solid 1 border lc rgb '#222222' fc rgb '#d5d5d5' title 'alone and with others (sampled)'"
do for [out in outs] {
    eval out eq "png" ? png : svg
    eval (sampled ? both : draw)
}
