# The trade-off of the top gap: what it risks against what it leaks.
# gnuplot -e "dir='out'" plots/seal_gap.gp
# needs: seal_gap.dat
if (exists("page")) shape = "size 560,760"
name = "seal_gap"
table = "seal_gap.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
blocks = 1
while (block(blocks) ne "") { blocks = blocks+1 }
boost(i) = until(block(i), "kPa")
file_to(i) = real(until(word(block(i), 3), "mm"))
array style_of[3] = [3, 1, 5]
pick(i) = blocks == 1 ? 1 : style_of[i+1]
title = "Top gap: the chance of too little against what it leaks"
set xlabel "cold gap, mm"
set x2label "cold gap, thou (0.001 in)"
set link x2 via x/0.0254 inverse x*0.0254
set x2tics 4
set xrange [*:*] noextend
set ylabel "chance of less than the minimum hot gap, %"
set y2label "blow-by, % of the charge"
set yrange [0:100]
most = 0
stats file using (leak = real(strcol(5)), most = leak > most ? leak : most, 0) nooutput
set y2range [0:most > 0 ? 1.6*most : 1]
set ytics 20
set y2tics
set offsets 0, 0, 0, 0
do for [out in outs] {
    eval out eq "png" ? png : svg
    unset arrow
    do for [i=0:blocks-1] {
        set arrow i+1 from file_to(i), graph 0 to file_to(i), graph 0.07 nohead ls pick(i) lw 1.5
        set label i+1 sprintf("%.2f", file_to(i)) at file_to(i), graph (exists("page") ? 0.095+0.05*i : 0.095) center font ",10"
    }
    plot for [i=0:blocks-1] file index i using 1:($2*100) with lines ls pick(i) title "too little, ".boost(i)." kPa boost (left)" noenhanced, \
         for [i=0:blocks-1] file index i using 1:5 axes x1y2 with linespoints ls pick(i) lw 1.2 pt 4+2*i ps 0.7 title "blow-by, ".boost(i)." kPa boost (right)" noenhanced, \
         NaN with lines ls 6 lw 1.5 title "at the foot: file to"
}
