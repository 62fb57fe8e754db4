# Gap against boost, with the confidence band and the shop rule.
#   coldgap sweep CONFIG --vary charge.boost_kPa=0:240:20 -o out
#   gnuplot -e "dir='out'" plots/boost.gp
# needs: sweep.dat/boost
name = "boost"
table = "sweep.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
# the unit the boost was swept in
unit = after(swept(1), "charge.boost_")
kPa = unit eq "psi" ? psi : unit eq "bar" ? 100.0 : unit eq "MPa" ? 1000.0 : 1.0
# columns: 1 boost, 2 gap needed, 3 closure, 5 gap over bore, 6 spread, 7 residual,
# 28 file to
rule(kpa) = kpa <= 0 ? 0.0040 : kpa < 100 ? 0.0040 + 0.0010*kpa/100 : \
            kpa < 200 ? 0.0050 + 0.0015*(kpa-100)/100 : \
            kpa < 300 ? 0.0065 + 0.0010*(kpa-200)/100 : 0.0075
title = "Top ring: cold gap against boost"
set xlabel "boost, kPa"
set x2label "boost, psi"
set ylabel "cold gap, mm"
set y2label "cold gap, thou (0.001 in)"
set link x2 via x/psi inverse x*psi
set link y2 via y/0.0254 inverse y*0.0254
set x2tics 5
set y2tics 2
set xrange [*:*] noextend
set yrange [0:*]
set offsets 0, 0, graph 0.08, 0
do for [out in outs] {
    eval out eq "png" ? png : svg
    plot file using ($1*kPa):($3+$7):($3+$6+$7) with filledcurves fc rgb "#d0d0d0" title "uncertainty allowance", \
         file using ($1*kPa):28 with fsteps ls 1 title "file to, in filing steps", \
         file using ($1*kPa):2 with fsteps ls 4 lw 1.5 title "gap needed", \
         file using ($1*kPa):($3+$7) with lines ls 3 title "closure and minimum hot gap", \
         file using ($1*kPa):3 with lines ls 6 title "closure: ends touch below", \
         file using ($1*kPa):(rule($1*kPa)*$2/$5) with lines ls 2 dt (8,4) title "shop rule (common practice)"
}
