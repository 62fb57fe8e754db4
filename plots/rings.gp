# Which top rings fit up to which boost.   gnuplot -e "dir='out'" plots/rings.gp
# needs: rings.dat
if (exists("page")) shape = "size 560,700"
name = "rings"
table = "rings.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
own = real(word(note("boost "), 1))
title = "Top rings: boost up to which each fits"
set xlabel "boost, kPa"
set ylabel ""
set x2label "boost, psi"
set link x2 via x/psi inverse x*psi
set x2tics 20
set yrange [rows-0.4:-0.9] noextend
set xrange [0:600]
set lmargin at screen 0.34
set ytics out scale 0 font ",10" noenhanced
set grid noytics
set arrow 1 from own, graph 0 to own, graph 1 nohead lw 1.5 dt (6,4) lc rgb "#000000" front
set label 1 "this engine" at own, graph 0.985 offset 0.6,0 font ",9" front
do for [out in outs] {
    eval out eq "png" ? png : svg
    if (exists("page")) {
        set lmargin at screen 0.46
        set ytics font ",12"
        set rmargin at screen 0.95
        set xtics 200
        set x2tics 30
    }
    plot file using (0):0:(0):6:($0-0.34):($0+0.34):ytic(blanks(strcol(1).", ".strcol(2))) with boxxyerror fs solid 1 border lc rgb "#222222" fc rgb "#8a8a8a" title "fits", \
         file using 6:0:6:8:($0-0.34):($0+0.34) with boxxyerror fs pattern 4 border lc rgb "#222222" fc rgb "#555555" title "marginal"
}
