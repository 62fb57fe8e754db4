# Common look of all pictures: legible on a phone, printed in grey, and for
# readers who see few colours: lines differ in dash and width as well.
# A picture script sets `name`, its own, and `table`, then loads this; it plots
# once for each of `outs`, after `eval out eq "png" ? png : svg`.
#
# A folder's name and what stands in a table are data: neither comes into
# system(), a pipe, a @macro or an evaluated text. Words are read with stats.
if (!exists("dir")) dir = "out"
# What begins with < or | would be a command to gnuplot, with $ a block of data.
if (strstrt("/~", dir[1:1]) == 0) { dir = "./".dir }
if (!exists("to")) to = dir
file = dir."/".table
set encoding utf8
psi = 6.894757 # kPa
set border 31 lw 1 lc rgb "#444444"
set grid lw 0.5 lc rgb "#bbbbbb"
set tics nomirror
# No key covers a curve.
set key outside top center horizontal reverse Left samplen 3 spacing 1.15
set datafile missing "nan"
set style line 1 lc rgb "#000000" lw 2.5 dt 1
set style line 2 lc rgb "#b2182b" lw 2.5 dt 1
set style line 3 lc rgb "#2166ac" lw 2.5 dt (12,4)
set style line 4 lc rgb "#5e7f2c" lw 2.5 dt (4,3)
set style line 5 lc rgb "#7b4f9e" lw 2.5 dt (14,4,3,4)
set style line 6 lc rgb "#555555" lw 2.5 dt (2,3)
# Any number of curves: no two share dash, mark and colour, and neighbours differ
# in all three, the colours in how light they are too.
array many_colour[6] = ["#000000", "#b2182b", "#4f8fc6", "#5e7f2c", "#3b2a6b", "#c08a2e"]
array many_mark[13] = [7, 4, 9, 12, 5, 10, 13, 6, 11, 8, 2, 1, 3]
do for [i=1:78] {
    colour = many_colour[(i-1)%6+1]
    dashes = (i-1)%5+1
    mark = many_mark[(i-1)%13+1]
    set style line 100+i lc rgb colour lw 2 dt dashes pt mark ps 1
}
# The table's comments, a line each, and the number of its rows. A line of text
# is one column, up to a double quote.
comments = "\n"
rows = 0
take(line) = line[1:1] eq "#" ? (comments = comments.line."\n", 0) : (rows = rows+1, 0)
set datafile commentschars ""
set datafile separator "\001"
stats file using (take(strcol(1))) nooutput
set datafile commentschars
set datafile separator
# Text after the first `mark`, "" without one; text before it, all without one.
after(text, mark) = strstrt(text, mark) == 0 ? "" : text[strstrt(text, mark)+strlen(mark):*]
until(text, mark) = strstrt(text, mark) == 0 ? text : text[1:strstrt(text, mark)-1]
# What follows the first comment that begins so; "" where there is none.
note(start) = until(after(comments, "\n# ".start), "\n")
# The name of a block, the first being 0.
blocks_from(i) = after(i == 0 ? comments : blocks_from(i-1), "\n# block: ")
block(i) = until(blocks_from(i), "\n")
# The n-th setting of a sweep's table, as its key is written.
swept(n) = until(word(after(note("grid of"), "points: "), 2*n-1), "=")
# What it stands for: words and a unit.
swept_text(n) = note(sprintf("axis %d: ", n))
# Names as they read.
blanks(text) = strstrt(text, "_") == 0 ? text : until(text, "_")." ".blanks(after(text, "_"))
# A report page asks for drawings alone, into another folder, small enough for a
# phone: its own words are the title, and the key stands clear of the curves.
if (!exists("outs")) outs = "png svg"
if (!exists("shape")) shape = exists("page") ? "size 560,540" : "size 1000,640"
# Every picture says which engine, boost, fuel and duty it is of: its own words,
# `title`, and below them these; what its rows differ in is on its axes.
said(text, words) = text eq "" || text eq "varied" ? "" : ", ".text.words
subject = said(note("engine: "), "").said(note("boost: "), " boost").said(note("fuel: "), "").said(blanks(note("duty: ")), "")
subject = subject[3:*]
title = ""
look = exists("page") ? "set title ' '; set lmargin; set bmargin; set key below center vertical maxcols 1 height 0.8 noopaque; " : "set title title.\"\\n\".subject noenhanced; "
# Which engine a picture is of stands beside the caution; a page says it itself.
caution = "An estimate, not a warranty. Where the maker gives a larger minimum gap, file to that."
config = after(note("coldgap "), "config ")
sets = config[strlen(until(config, " --set "))+1:*]
config = until(config, " --set ")
while (strstrt(config, "/") > 0) { config = after(config, "/") }
config = config.sets
if (strlen(config) > 60) { config = config[1:60]."..." }
foot = exists("page") ? caution : config.":  ".caution
show_caution = "set label 100 foot at screen 0.5, ".(exists("page") ? "0.975 center font ',10'" : "0.018 center font ',9'")." noenhanced tc rgb '#555555'"
set bmargin 4.5
# Columns are counted, never read from a head: commented heads would eat a row.
to_file = "; set output to.'/'.name.'.'.out"
png = look.show_caution."; set terminal pngcairo size 1000,640 font 'DejaVu Sans,12' enhanced".to_file
svg = look.show_caution."; set terminal svg ".shape." font 'DejaVu Sans,14' enhanced background rgb 'white'".to_file
