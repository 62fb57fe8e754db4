# A map of the cold gap over two settings.
#   coldgap sweep CONFIG --vary charge.boost_kPa=0:240:20 \
#                        --vary cooling.coolant_C=70:110:5 -o out
#   gnuplot -e "dir='out'" plots/map.gp
# needs: sweep.dat/map
load system("dirname '".ARG0."'")."/style.gp"
file = dir."/sweep.dat"
# A blank line where the first setting changes makes a grid of the rows.
rows = sprintf("< awk '!/^#/{if(n++ && $1!=p)print \"\"; p=$1; print}' '%s'", file)
missed = system("awk '!/^#/ && !/\"ok\"$/ {n++} END {print n+0}' '".file."'") + 0
set title "Top ring: gap needed before rounding, mm".(missed > 0 ? "  (white: no answer)" : "")
set xlabel swept(1) noenhanced
set ylabel swept(2) noenhanced
unset key
set style textbox opaque fc rgb "#ffffff" noborder margins 0.4, 0.4
set view map
set tics out
set pm3d interpolate 4,4
set contour base
set cntrlabel start 3 interval 100 font ",10"
set cntrparam levels 8 linear
set cntrparam firstlinetype 101
do for [i=101:130] { set linetype i lc rgb "#000000" lw 1.2 }
set palette defined (0 "#f7f7f7", 1 "#8a8a8a")
set cblabel "mm"
set xrange [*:*] noextend
set yrange [*:*] noextend
do for [out in outs] {
    eval (out eq "png" ? png : svg)."map.".out."'"
    splot rows using 1:2:($4+$7+$8) with pm3d nocontour notitle, \
          rows using 1:2:($4+$7+$8) with lines lc rgb "#000000" nosurface notitle, \
          rows using 1:2:($4+$7+$8) with labels boxed nosurface notitle
}
