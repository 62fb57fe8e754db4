# Closures sampled over the uncertain inputs; a table of find --samples.
# gnuplot -e "dir='out'" plots/histogram.gp
# needs: histogram.dat summary.dat
name = "histogram"
table = "histogram.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
quantile = real(word(note("quantile"), 1))
linear = real(word(note("quantile"), 9))
take(key, value) = key eq "residual" ? (residual = value) : key eq "file_to_top" ? (gap = value) : 0
stats dir."/summary.dat" using (take(strcol(1), $2)) nooutput
title = "Top ring: gap used up by heat, all uncertain inputs moved at once"
set xlabel "closure, mm"
set x2label "closure, thou (0.001 in)"
set link x2 via x/0.0254 inverse x*0.0254
set x2tics 2
set ylabel "share of the samples, 1/mm"
stats file using 1 nooutput
low = STATS_min
stats file using 2 nooutput
most(a, b) = a > b ? a : b
high = most(most(STATS_max, gap-residual), most(linear, quantile))
set xrange [low:high+0.03*(high-low)]
set yrange [0:*]
set offsets 0, 0, graph 0.05, 0
set style fill solid 1 border lc rgb "#888888"
do for [out in outs] {
    eval out eq "png" ? png : svg
    set arrow 1 from linear, graph 0 to linear, graph 0.6 nohead ls 3
    set arrow 2 from quantile, graph 0 to quantile, graph 0.6 nohead ls 2
    set arrow 3 from gap-residual, graph 0 to gap-residual, graph 0.6 nohead ls 6
    plot file using (($1+$2)/2):4:($2-$1) with boxes fc rgb "#d5d5d5" title "sampled", \
         file using (($1+$2)/2):5 with lines ls 4 title "first order, a normal law", \
         NaN with lines ls 3 title "at the risk, first order", \
         NaN with lines ls 2 title "at the risk, sampled", \
         NaN with lines ls 6 title "what the gap to file to allows"
}
