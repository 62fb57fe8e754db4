# A map of the cold gap over two settings.
#   coldgap sweep CONFIG --vary charge.boost_kPa=0:240:20 \
#                        --vary cooling.coolant_C=70:110:5 -o out
#   gnuplot -e "dir='out'" plots/map.gp
# needs: sweep.dat/map
name = "map"
table = "sweep.dat"
load ARG0[1:strlen(ARG0)-strlen(name.".gp")]."style.gp"
# A blank line where the first setting changes makes a grid of the rows.
array first[rows]
array point[rows]
cell(n) = strcol(n) eq "" ? " nan" : " ".strcol(n)
take(i) = (first[i] = strcol(1), point[i] = cell(1).cell(2).cell(4).cell(7).cell(8), 0)
stats file using (take(int($0)+1)) nooutput
missed = 0
last = first[1]
set print $grid
do for [i=1:rows] {
    if (first[i] ne last) { print "" }
    if (word(point[i], 3) eq "nan") { missed = missed+1 }
    print point[i]
    last = first[i]
}
set print
title = "Top ring: gap needed before rounding, mm".(missed > 0 ? "  (white: no answer)" : "")
set xlabel swept_text(1) noenhanced
set ylabel swept_text(2) noenhanced
unset key
set title offset 0,1.2
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
    eval out eq "png" ? png : svg
    splot $grid using 1:2:($3+$4+$5) with pm3d nocontour notitle, \
          $grid using 1:2:($3+$4+$5) with lines lc rgb "#000000" nosurface notitle, \
          $grid using 1:2:($3+$4+$5) with labels boxed nosurface notitle
}
