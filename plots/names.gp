# The gap for each name of one setting, side by side.
#   coldgap sweep CONFIG --vary duty.name=settled,dyno_pull,drag_pass -o out
#   gnuplot -e "dir='out'" plots/names.gp
# needs: sweep.dat/names
name = "names"
table = "sweep.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
# columns: 1 name, 2 gap needed, 3 closure, 6 allowance, 7 minimum hot gap,
# 28 file to
array called[rows]
array told[rows]
array ends[rows]
end(text) = text eq "" || text eq "nan" ? 0 : real(text)
keep(i) = (called[i] = strcol(1), ends[i] = end(strcol(28)), told[i] = ends[i] > 0 ? sprintf("%.2f", ends[i]) : "no answer", 0)
stats file using (keep(int($0)+1)) nooutput
title = "Top ring: cold gap by ".swept_text(1)
set xlabel "cold gap, mm; the figures: file to"
set x2label "cold gap, thou (0.001 in)"
set link x2 via x/0.0254 inverse x*0.0254
set x2tics 5
set ylabel ""
set xrange [*<0:*]
set yrange [rows-0.4:-0.6] noextend
set offsets 0, graph 0.12, 0, 0
set ytics out scale 0 noenhanced
set grid noytics
do for [i=1:rows] {
    set label i told[i] at ends[i], i-1 offset 0.6,0 noenhanced
}
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot file using (0):0:(0):3:($0-0.34):($0+0.34):ytic(blanks(called[int($0)+1])) with boxxyerror fs solid 1 border lc rgb "#222222" fc rgb "#555555" title "closure", \
         file using 3:0:3:($3+$7):($0-0.34):($0+0.34) with boxxyerror fs solid 1 border lc rgb "#222222" fc rgb "#a8a8a8" title "minimum hot gap", \
         file using ($3+$7):0:($3+$7):($3+$6+$7):($0-0.34):($0+0.34) with boxxyerror fs pattern 4 border lc rgb "#222222" fc rgb "#222222" title "uncertainty allowance", \
         file using 28:($0-0.4):(0):(0.8) with vectors nohead ls 2 title "file to"
}
