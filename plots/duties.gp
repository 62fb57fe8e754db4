# The duties side by side: what each needs of the top gap, and what to file to.
# gnuplot -e "dir='out'" plots/duties.gp
# needs: duties.dat
name = "duties"
table = "duties.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
# columns: 1 duty, 2 closure, 3 gap needed, 9 hardest, 10 allowance, 11 minimum hot gap
array called[rows]
array needed[rows]
array hardest[rows]
keep(i) = (called[i] = strcol(1), needed[i] = real(strcol(3)), hardest[i] = int(strcol(9)), 0)
stats file using (keep(int($0)+1)) nooutput
figure(text) = text eq "" ? NaN : real(until(text, " mm"))
file_to = figure(note("file to "))
rule = figure(note("shop rule "))
title = "Top ring: what each duty needs"
subject = said(note("engine: "), "").said(note("boost: "), " boost").said(note("fuel: "), "")
subject = subject[3:*]
set xlabel "cold gap, mm; beside a bar: gap needed"
set x2label "cold gap, thou (0.001 in)"
set link x2 via x/0.0254 inverse x*0.0254
set x2tics 5
set ylabel ""
set xrange [*<0:*]
set yrange [rows-0.4:-0.6] noextend
set offsets 0, graph 0.14, 0, 0
set ytics out scale 0 noenhanced
set grid noytics
set rmargin 9
do for [i=1:rows] {
    set label i sprintf("%.2f", needed[i]) at graph 1.01, first i-1 noenhanced
}
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot file using (0):0:(0):2:($0-0.34):($0+0.34):ytic(blanks(called[int($0)+1]).(hardest[int($0)+1] && rows > 1 ? ", hardest" : "")) with boxxyerror fs solid 1 border lc rgb "#222222" fc rgb "#555555" title "closure", \
         file using 2:0:2:($2+$11):($0-0.34):($0+0.34) with boxxyerror fs solid 1 border lc rgb "#222222" fc rgb "#a8a8a8" title "minimum hot gap", \
         file using ($2+$11):0:($2+$11):($2+$10+$11):($0-0.34):($0+0.34) with boxxyerror fs pattern 4 border lc rgb "#222222" fc rgb "#222222" title "uncertainty allowance", \
         "+" using (rule):(-0.6):(0):(rows+0.2) every ::0::0 with vectors nohead ls 3 title "shop rule (common practice)", \
         "+" using (file_to):(-0.6):(0):(rows+0.2) every ::0::0 with vectors nohead ls 2 title sprintf("file to, %.2f mm", file_to)
}
