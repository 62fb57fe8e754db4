# Gap needed, over the bore, of several engines against boost beside the rule.
#   coldgap sweep CONFIG --set duty.name=settled --vary charge.boost_kPa=0:300:25 \
#       -o out/NAME      for each engine
#   gnuplot -e "dir='out'; engines='NAME NAME'; out='rule.png'" tests/calibration/rule.gp
# More than one table: style.gp is not for it.
set encoding utf8
set terminal pngcairo size 900,560 font "sans,12"
set output out
rule(kpa) = kpa <= 0 ? 0.0040 : kpa < 100 ? 0.0040 + 0.0010*kpa/100 : \
            kpa < 200 ? 0.0050 + 0.0015*(kpa-100)/100 : \
            kpa < 300 ? 0.0065 + 0.0010*(kpa-200)/100 : 0.0075
spoken(text) = strstrt(text, "_") == 0 ? text : text[1:strstrt(text, "_")-1]." ".spoken(text[strstrt(text, "_")+1:*])
set title "Top ring, held settled at full load: gap over bore against boost"
set xlabel "boost, kPa"
set ylabel "gap over bore, 1/1000"
set border 3 lw 1 lc rgb "#444444"
set grid lw 0.5 lc rgb "#cccccc"
set tics nomirror
set xrange [0:300]
set yrange [0:*]
set key left top
plot "+" using 1:(1e3*rule($1)) with lines lw 3 dt (8,4) lc rgb "#000000" title "shop rule (common practice)", \
     for [i=1:words(engines)] dir."/".word(engines, i)."/sweep.dat" using 1:(1e3*$5) \
         with linespoints lw 2 pt 4+2*i ps 1.2 lc rgb (i == 1 ? "#2166ac" : "#b2182b") title spoken(word(engines, i)).", gap needed" noenhanced
