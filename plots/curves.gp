# The gap against one setting, a curve for each name of another.
#   coldgap sweep CONFIG --vary charge.boost_kPa=0:240:20 \
#                        --vary rings.top.material=plain_steel,nitrided_stainless -o out
#   gnuplot -e "dir='out'" plots/curves.gp
# needs: sweep.dat/curves
load system("dirname '".ARG0."'")."/style.gp"
file = dir."/sweep.dat"
# Columns: the settings, then 1 cold gap, 2 closure, 5 spread, 6 residual.
axes = swept(2) eq "" ? 1 : 2
need(row) = column(axes+2) + column(axes+5) + column(axes+6)
names = axes == 1 ? "all" : system("awk '!/^#/ && !seen[$2]++ {printf \"%s \", $2}' '".file."'")
rows(name) = axes == 1 ? file : sprintf("< awk '!/^#/ && $2 == \"%s\"' '%s'", name, file)
set title "Top ring: gap needed before rounding"
set xlabel swept(1) noenhanced
set ylabel "gap needed, mm"
set y2label "gap needed, thou (0.001 in)"
set link y2 via y/0.0254 inverse y*0.0254
set y2tics 2
set xrange [*:*] noextend
set yrange [0:*]
set offsets 0, 0, graph 0.08, 0
set key outside top center horizontal
if (axes == 1) { unset key }
do for [out in outs] {
    eval (out eq "png" ? png : svg)."curves.".out."'"
    plot for [i=1:words(names)] rows(word(names, i)) using 1:(need(0)) \
         with lines ls (i-1)%6+1 dt i title word(names, i) noenhanced
}
