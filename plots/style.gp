# Common look of all pictures: legible on a phone, printed in grey, and for
# readers who see few colours: lines differ in dash and width as well.
# A picture script sets `name`, loads this, defines `picture`, and plots twice.
if (!exists("dir")) dir = "out"
set encoding utf8
set border 31 lw 1 lc rgb "#444444"
set grid lw 0.5 lc rgb "#bbbbbb"
set tics nomirror
set key top left reverse Left samplen 3 spacing 1.15 opaque
set datafile missing "nan"
set style line 1 lc rgb "#000000" lw 2.5 dt 1
set style line 2 lc rgb "#b2182b" lw 2.5 dt 1
set style line 3 lc rgb "#2166ac" lw 2.5 dt (12,4)
set style line 4 lc rgb "#5e7f2c" lw 2.5 dt (4,3)
set style line 5 lc rgb "#7b4f9e" lw 2.5 dt (14,4,3,4)
set style line 6 lc rgb "#555555" lw 2.5 dt (2,3)
# A report page asks for drawings alone, into another folder, small enough for a
# phone: its own words are the title, and the key stands clear of the curves.
if (!exists("outs")) outs = "png svg"
if (!exists("to")) to = dir
if (!exists("shape")) shape = exists("page") ? "size 560,540" : "size 1000,640"
look = exists("page") ? "set title ' '; set lmargin; set bmargin; set key below center vertical maxcols 1 height 0.8 noopaque; " : ""
# Which engine a picture is of stands beside the caution; a page says it itself.
# `file`, the table, is known by the time a picture is drawn.
caution = "An estimate, not a warranty. The ring or piston maker's minimum wins where larger."
config = "sed -n '2{s/^# coldgap [^,]*, config //;s,^[^ ]*/,,;s/^\\(.\\{60\\}\\).*/\\1.../;p;q}' "
foot(file) = exists("page") ? caution : system(config."'".file."'").":  ".caution
show_caution = "set label 100 foot(file) at screen 0.5, ".(exists("page") ? "0.975 center font ',10'" : "0.018 center font ',9'")." noenhanced tc rgb '#555555'"
set bmargin 4.5
# The n-th setting of a sweep's table, as its key is written.
swept(n) = system(sprintf("sed -n 's/^# grid of.*points: //p' '%s' | awk '{sub(/=.*/, \"\", $%d); print $%d}'", file, 2*n-1, 2*n-1))
# Columns are counted, never read from a head: commented heads would eat a row.
png = show_caution."; set terminal pngcairo size 1000,640 font 'DejaVu Sans,12' enhanced; set output '".to."/"
svg = look.show_caution."; set terminal svg ".shape." font 'DejaVu Sans,14' enhanced background rgb 'white'; set output '".to."/"
