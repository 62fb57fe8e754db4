# What stops at which boost, before the changes and after; the gap over it.
# gnuplot -e "dir='out'" plots/ladder.gp
# needs: ladder.dat ladder_boost.dat
if (exists("page")) shape = "size 560,960"
name = "ladder"
table = "ladder.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
gaps = dir."/ladder_boost.dat"
target = real(word(note("target "), 1))
end = real(word(note("target "), 3))
title = "The ladder: what stops at which boost, and the gap to file to"
set datafile missing
upto(c) = strcol(c) eq "nan" ? end : real(strcol(c))
set xrange [0:end] noextend
narrow = exists("page")
set lmargin at screen narrow ? 0.30 : 0.17
set rmargin at screen narrow ? 0.95 : 0.93
set arrow 1 from target, graph 0 to target, graph 1 nohead lw 1.5 dt (6,4) lc rgb "#000000" front
do for [out in outs] {
    eval out eq "png" ? png : svg
    set multiplot
    set lmargin at screen narrow ? 0.30 : 0.17
    set rmargin at screen narrow ? 0.95 : 0.93
    set title offset 0,1.6
    set key at screen 0.5, narrow ? 0.965 : 0.885 center top horizontal maxrows 1 maxcols auto samplen 2
    if (narrow) { set key font ",13" vertical maxrows auto maxcols 1 }
    set tmargin at screen narrow ? 0.875 : 0.825
    set bmargin at screen narrow ? 0.66 : 0.59
    set ylabel narrow ? "top gap, mm" : "cold top gap, mm"
    set xlabel ""
    set format x ""
    set ytics autofreq
    set yrange [*:*]
    set grid
    set offsets 0, 0, graph 0.1, graph 0.1
    set label 1 "wanted" at target, graph 0.06 right offset -0.6,0 font ",10" front
    # file to: what is needed, or the rule where that is more
    plot gaps index 1 using 1:3 with lines ls 1 lw 4 title "file to, changed", \
         gaps index 0 using 1:3 with lines ls 3 title "file to, as it is", \
         gaps index 0 using 1:4 with lines ls 6 title "shop rule"
    unset title
    unset label 1
    set offsets 0, 0, 0, 0
    set tmargin at screen narrow ? 0.63 : 0.56
    set bmargin at screen narrow ? 0.165 : 0.16
    set key at screen 0.5, narrow ? 0.110 : 0.085 center top horizontal maxrows 1 maxcols auto samplen 2 width -2
    if (narrow) { set key font ",13" vertical maxrows auto maxcols 1 }
    set xlabel "boost, kPa" offset 0, narrow ? 0.5 : 0.7
    set format x
    set ylabel ""
    set yrange [rows-0.4:-0.6] noextend
    set ytics out scale 0 noenhanced
    set grid noytics
    plot file using (0):0:(0):(end):($0-0.42):($0+0.40):ytic(blanks(strcol(1))) with boxxyerror fs solid 1 border lc rgb "#bbbbbb" fc rgb "#ffffff" title "no more", \
         file using (0):0:(0):(upto(3)):($0-0.42):($0+0.02) with boxxyerror fs pattern 4 border lc rgb "#222222" fc rgb "#555555" title "marginal", \
         file using (0):0:(0):(upto(2)):($0-0.42):($0+0.02) with boxxyerror fs solid 1 border lc rgb "#222222" fc rgb "#8a8a8a" title "fits, as it is", \
         file using (0):0:(0):(upto(6)):($0+0.02):($0+0.40) with boxxyerror fs pattern 4 border lc rgb "#222222" fc rgb "#555555" notitle, \
         file using (0):0:(0):(upto(4)):($0+0.02):($0+0.40) with boxxyerror fs solid 1 border lc rgb "#222222" fc rgb "#d9d9d9" title "fits, changed"
    unset multiplot
}
