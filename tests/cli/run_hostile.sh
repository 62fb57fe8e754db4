#!/bin/sh
# Names, paths and texts are data: whatever is in them, nothing is run, nothing
# forges a line, nothing reaches the terminal but letters.
#
#   run_hostile.sh COLDGAP SOURCES
set -u
coldgap=$(realpath "$1")
sources=$(realpath "$2")
. "$(dirname "$0")/lib.sh"
engine=$sources/configs/engines/iron_six.cfg
export LC_ALL=C.UTF-8 HOME="$work"
figures=yes
command -v gnuplot >/dev/null 2>&1 || figures=no
cd "$work" || exit 1

# nothing_ran WHAT: the names below would leave a file `hit` here or further in.
nothing_ran() {
    [ -z "$(find "$work" -name 'hit*' ! -path '*/dat/*')" ] || {
        fail "$1: something was run"
        find "$work" -name 'hit*' -exec rm -rf {} +
    }
}

# letters_only FILE: no control characters but line ends and tabs, no C1, no turn
# of the reading direction, and UTF-8 throughout.
letters_only() {
    acting=$(LC_ALL=C awk '/[\001-\010\013-\037\177]|\302[\200-\237\255]/ ||
        /\342\200[\213-\217\250-\256]|\342\201[\240-\257]/ ||
        /\330\234|\357\273\277/ {n++} END {print n + 0}' "$1")
    [ "$acting" -eq 0 ] || fail "$2: $acting lines of $1 act on a terminal"
    command -v iconv >/dev/null 2>&1 || return 0
    iconv -f UTF-8 -t UTF-8 "$1" >/dev/null 2>&1 || fail "$2: $1 is no UTF-8"
}

# 1. A material's name that a shell would run, as gnuplot asked one to.
hostile="x';touch\${IFS}hit;'"
cat >hostile.inc <<EOF
ring_materials = ( { name = "$hostile"; use = [ "ring" ];
  density_kg_m3 = 7700.0; poisson = 0.29; hot_limit_C = 300.0;
  expansion_C = [ 100.0, 400.0 ]; expansion_1e6_K = [ 11.0, 12.5 ];
  conductivity_C = [ 20.0 ]; conductivity_W_mK = [ 40.0 ];
  heat_capacity_C = [ 20.0 ]; heat_capacity_J_kgK = [ 460.0 ];
  modulus_C = [ 20.0 ]; modulus_GPa = [ 205.0 ]; } );
EOF
{ cat "$engine"; echo '@include "hostile.inc"'; } >hostile.cfg
expect 2 "$coldgap" rings hostile.cfg -q --report x.html
says stderr '^hostile.inc:1: error: ring_materials\[0\].name: must be a name of'
nothing_ran "a material's name"
# An engine's name is free text: nothing but shown, in tables and pictures.
named="x';touch\${IFS}hit;'\`touch hit\`\$(:>hit)@h{^_Z}"
sed "s|engine = { name = \"[^\"]*\";|engine = { name = \"$named\";|" "$engine" >named.cfg
# What --set says is data in the config that ladder writes of it.
for hostile in 'x"; }; charge = { boost_kPa = 1.0; }; # \' "$named" 'a\' '*/ "" /*' \
    "$(printf 'a\nmargin = { residual_mm = 0.0; };\n')"; do
    expect 0 "$coldgap" ladder "$engine" --duty settled -q --to 60kPa \
        --set "engine.name=$hostile" --write set.cfg
    expect 0 "$coldgap" lesson set.cfg -q -o set
    expect 0 "$coldgap" lesson "$engine" --duty settled -q -o unset \
        --set charge.boost_kPa=60 --set "engine.name=$hostile"
    same "the written name" "$(grep '^# engine: ' set/lesson.dat)" \
        "$(grep '^# engine: ' unset/lesson.dat)"
    grep '^ *residual_mm' set.cfg && fail "$hostile: a line of its own"
    [ "$(grep -c '^ *boost_kPa' set.cfg)" -eq 1 ] || fail "$hostile: it sets a boost"
    rm -rf set unset set.cfg
done
nothing_ran "a value of --set"
expect 2 "$coldgap" sweep "$engine" -q -o sweep \
    --vary "charge.boost_kPa=0,1" --vary "fuel.name=gasoline,\$(touch\${IFS}hit)"
says stderr 'a value of more than letters'

# Tables of whatever origin are drawn, and what is in them is only shown.
drawn() {
    [ "$figures" = yes ] || return 0
    expect 0 sh "$sources/plots/draw.sh" "$1"
    [ -s "$work/stderr" ] && fail "$1: $(cat "$work/stderr")"
    nothing_ran "pictures of $1"
}
expect 0 "$coldgap" lesson named.cfg -q -o named --report named/page.html
grep -q -F -x "# engine: $named" named/lesson.dat || fail "engine.name is lost"
drawn named
[ "$figures" = no ] || grep -q 'touch${IFS}hit' named/lesson.svg ||
    fail "a picture does not show engine.name"
nothing_ran "an engine's name"
expect 0 "$coldgap" sweep "$engine" -q -o names \
    --vary fuel.name=gasoline,methanol
mkdir dat
for command in find rings "seal" "find --samples 64"; do
    # shellcheck disable=SC2086 # words are meant to be split
    set -- $command
    expect 0 "$coldgap" "$1" "$engine" -q -o dat ${2:+"$2" "$3"}
done
expect 0 "$coldgap" finish "$engine" --simulate plateau -q -o dat
expect 0 "$coldgap" lesson "$engine" -q -o dat
expect 0 "$coldgap" sweep "$engine" -q -o curves --vary charge.boost_kPa=0,100 \
    --vary fuel.name=gasoline,methanol
# A word of a table, a file's name in its head, and the name of a block.
word="x';touch\${IFS}hit1;'\`touch\${IFS}hit2\`\$(touch\${IFS}hit3)@hit4{/=60^_Z}"
line="$word;system(touch hit5) %s %n | touch hit6 <touch hit7"
export word line
for table in dat/*.dat curves/sweep.dat names/sweep.dat; do
    awk '
        FILENAME ~ /(rings|pistons|sensitivity)[.]dat$/ && !/^#/ {
            sub(/^[^ ]+/, "")
            $0 = ENVIRON["word"] $0
        }
        FILENAME ~ /sweep[.]dat$/ && $1 == "methanol" { $1 = ENVIRON["word"] }
        FILENAME ~ /sweep[.]dat$/ && $2 == "methanol" {
            $2 = ENVIRON["word"]
        }
        /^# coldgap / { sub(/config .*/, ""); $0 = $0 "config " ENVIRON["line"] }
        /^# (engine|boost|fuel|duty): / { sub(/: .*/, ": " ENVIRON["line"]) }
        /^# axis [12]: / { sub(/: .*/, ": " ENVIRON["line"]) }
        /^# block: [a-z]*_/ { sub(/: /, ": " ENVIRON["line"] " ") }
        { print }' "$table" >"$table.new"
    mv "$table.new" "$table"
done
drawn dat
drawn curves
drawn names
if [ "$figures" = yes ]; then
    for picture in dat/rings dat/pistons dat/shares curves/curves names/names; do
        # letter by letter, but for "_", which stands for a blank
        sed 's/&apos;/'"'"'/g; s/_/ /g' "$picture.svg" >shown
        grep -q -F "$(echo "$word" | tr _ ' ')" shown ||
            fail "$picture does not show the name as it is"
    done
fi
# No way from a picture's words to a command is left, or comes back.
grep -n -E 'system|popen|`|"[<|]|(^|[^a-z])@[a-z]' "$sources"/plots/*.gp |
    grep -v ':#' && fail "a script in plots/ may run what it reads"

# 2. Folders of any name: for tables, pages, pictures and the scripts themselves.
expect 0 "$coldgap" lesson "$engine" -q -o plain
drawn plain
line_end='
'
for name in 'a b' "a'b" 'a"b' 'a;touch hit;b' 'a$(touch hit)b' 'a`touch hit`b' \
    'a[b]' 'a[b' 'a*?' '-a' '--help' '-' '<touch hit' '|touch hit' '~' '~root' \
    '$HOME' '$a' 'a\n\' '%s%n' '#a' 'a&&touch hit' "''" "a${line_end}b" \
    "a$line_end" "$(printf 'a\303\244\377\033[2J')"; do
    mkdir -p folders
    cd folders || exit 1
    expect 0 "$coldgap" lesson "$engine" -q -o "$name" \
        --report "$name/page.html"
    cmp -s "./$name/lesson.dat" "$work/plain/lesson.dat" ||
        fail "$name: no table in it"
    if [ "$figures" = yes ]; then
        grep -q '<svg ' "./$name/page.html" || fail "$name: no picture on a page"
        expect 0 sh "$sources/plots/draw.sh" "$name"
        [ -s "$work/stderr" ] && fail "$name: $(cat "$work/stderr")"
        letters_only "$work/stdout" "draw.sh $name"
        [ "$(wc -l <"$work/stdout")" -eq 1 ] || fail "$name: a line is forged"
        cmp -s "./$name/lesson.png" "$work/plain/lesson.png" ||
            fail "$name: another picture"
    fi
    expect 0 "$coldgap" sweep "$engine" -o "$name" \
        --vary charge.boost_kPa=0,100
    letters_only "$work/stdout" "sweep -o $name"
    # What it says to type works as it stands.
    case $name in
    *[![:print:]]*) ;;
    *)
        next=$(sed -n 's/^Pictures: //p' "$work/stdout")
        [ "$figures" = no ] || expect 0 sh -c "$next"
        ;;
    esac
    cd ..
    rm -rf folders
    nothing_ran "a folder called $name"
done
# Typed by hand, a name that gnuplot would take for a command.
for name in '<touch hit' '|touch hit' '$GRID'; do
    [ "$figures" = yes ] || break
    mkdir "$name"
    cp plain/lesson.dat "$name"
    expect 0 gnuplot -e "dir='$name'" "$sources/plots/lesson.gp"
    cmp -s "$name/lesson.png" plain/lesson.png || fail "$name: nothing by hand"
    rm -rf "$name"
    nothing_ran "by hand, $name"
done
# The scripts in a folder of such a name, for draw.sh, by hand and for a page;
# run.sh too, in a tree that is set up already.
tree="$work/t [r] 'e' \"e\" \$(touch hit) ;&*"
mkdir -p "$tree/build" "$tree/tests"
cp -r "$sources/plots" "$sources/configs" "$tree"
rm -rf "$tree"/plots/*.png
: >"$tree/tests/setup.sh"
ln -s "$coldgap" "$tree/build/coldgap"
if [ "$figures" = yes ]; then
    rm plain/lesson.svg
    expect 0 sh "$tree/plots/draw.sh" plain
    [ -s plain/lesson.svg ] || fail "scripts in an odd folder draw nothing"
    rm plain/lesson.svg
    expect 0 gnuplot -e "dir='plain'" "$tree/plots/lesson.gp"
    [ -s plain/lesson.svg ] || fail "nothing drawn by hand in an odd folder"
    (cd "$tree" && rm "$work/plain/lesson.svg" &&
        gnuplot -e "dir='../plain'" plots/lesson.gp) || fail "from the tree's root"
    [ -s plain/lesson.svg ] || fail "nothing drawn from the tree's root"
    expect 0 env COLDGAP_PLOTS="$tree/plots" TMPDIR="$tree" "$coldgap" lesson \
        "$engine" -q --report "$tree/page.html"
    grep -q '<svg ' "$tree/page.html" || fail "no picture by scripts elsewhere"
    expect 0 sh "$tree/plots/run.sh" configs/engines/plain_four.cfg "-o'u t;"
    [ -s "$tree/-o'u t;/why.png" ] || fail "run.sh drew nothing"
fi
nothing_ran "scripts in an odd folder"

# 3. What acts on a terminal or forges a line, from a file or the command line.
acts=$(printf 'a\nTop ring, file to  0.01 mm\033[2J\302\23331m\342\200\256b\377\177\r')
mkdir files
cp "$engine" "files/$acts.cfg"
cp "$sources/configs/measured/iron_six.csv" "files/$acts.csv"
# says_little STATUS LINES WORDS...: at most so many lines on stderr.
says_little() {
    want=$1 lines=$2
    shift 2
    "$@" >"$work/stdout" 2>"$work/stderr"
    got=$?
    [ "$got" -eq "$want" ] || fail "$*: exit $got, expected $want"
    letters_only "$work/stdout" "$*"
    letters_only "$work/stderr" "$*"
    grep -q '^Top ring, file to  *0.01 mm' "$work/stdout" "$work/stderr" &&
        fail "$*: a forged line"
    [ "$(wc -l <"$work/stderr")" -le "$lines" ] ||
        fail "$*: $(wc -l <"$work/stderr") lines on stderr"
}
config="files/$acts.cfg"
for command in find card rings ladder seal lesson network "finish --simulate=plateau"; do
    # shellcheck disable=SC2086 # words are meant to be split
    set -- $command
    says_little 0 0 "$coldgap" "$1" "$config" ${2:+"$2"} -o "o$acts" \
        --set duty.name=settled
done
says_little 0 0 "$coldgap" card "$config" --from "$config" -o "o$acts" \
    --set duty.name=settled --report "o$acts/card.html"
says_little 0 0 "$coldgap" ceiling "$config" --gap 0.7mm \
    --set duty.name=settled
says_little 0 0 "$coldgap" sweep "$config" -o "o$acts" \
    --vary engine.bore_mm=86,860
says_little 0 0 "$coldgap" sweep "$config" -o "o$acts" --part 1/2 \
    --vary engine.bore_mm=86,87
says_little 1 0 "$coldgap" sheet "$config" -o "o$acts" --units metric \
    --measured "files/$acts.csv" --report "o$acts/page.html"
awk 'BEGIN {srand(1); for (i = 0; i < 9600; i++)
    print rand() + rand() + rand() + rand()}' >"files/$acts.txt"
says_little 1 0 "$coldgap" finish "$config" -o "o$acts" --spacing 0.5um \
    --profile "files/$acts.txt" --report "o$acts/finish.html"
count=0
for file in "o$acts"/*; do
    cp "$file" "$work/table"
    letters_only "$work/table" "${file##*/}"
    case $file in
    *.dat)
        # the config's line is whole, and the rows are of numbers and words
        grep -q '^# coldgap .*0.01 mm' "$work/table" ||
            case $file in *_of_*) ;; *) fail "$file: a torn head" ;; esac
        grep -q '^Top' "$work/table" && fail "$file: a forged row"
        ;;
    esac
    count=$((count + 1))
done
[ "$count" -ge 20 ] || fail "only $count tables"
# Words of tables are words: a blank in a name is none.
sed 's/plain_steel/my steel/' hostile.inc | sed "s/name = \"[^\"]*\"/name = \"my steel\"/" >blank.inc
{ sed 's/plain_steel/my steel/' "$engine"; cat blank.inc; } >blank.cfg
expect 0 "$coldgap" rings blank.cfg -q -o blank
grep -q '^my_steel ' blank/rings.dat || fail "a blank parts a word of a table"
drawn blank
# Errors: each in its line.
says_little 2 1 "$coldgap" "$acts"
says_little 2 1 "$coldgap" find "--$acts"
says_little 2 1 "$coldgap" find "$engine" "$acts"
says_little 4 1 "$coldgap" find "$acts"
says_little 2 2 "$coldgap" find "$engine" --set "$acts=1"
says_little 2 2 "$coldgap" find "$engine" --set "fuel.name=$acts"
shorter=$(printf 'a\nTop\033[2J\302\23331m\342\200\256b\377\177\r')
says_little 0 0 "$coldgap" lesson "$engine" -q -o acting --set "engine.name=$shorter"
letters_only acting/lesson.dat "engine.name"
[ "$(grep -c '^Top' acting/lesson.dat)" -eq 0 ] || fail "engine.name forges a row"
says_little 2 1 "$coldgap" find "$engine" --units "$acts"
says_little 2 1 "$coldgap" sweep "$engine" --vary "$acts"
says_little 2 1 "$coldgap" sweep "$engine" --vary "fuel.name=$acts"
says_little 2 1 "$coldgap" sweep "$engine" --vary "$acts=1,2"
says_little 4 1 "$coldgap" find "$engine" -o "none/$acts/out"
says_little 2 1 "$coldgap" find "$engine" --report "$acts"
says_little 4 1 "$coldgap" sheet "$engine" --measured "$acts"
says_little 4 1 "$coldgap" finish "$engine" --profile "$acts"
echo "@include \"$(printf 'a\033[2J')\"" >include.cfg
says_little 2 2 "$coldgap" find include.cfg
{ cat "$engine"; printf 'evidence_from = "a\033[2J";\n'; } >notebook.cfg
says_little 2 2 "$coldgap" find notebook.cfg
echo 'builds = ( { engine = "a\x1b[2Jb"; found = ( ); } );' >named.cfg
{ cat "$engine"; echo 'evidence_from = "named.cfg";'; } >notebook.cfg
says_little 2 2 "$coldgap" find notebook.cfg
printf 'engine = { bore_mm = "\033]0;x\007"; };\n\302\233 = 1;\n' >bytes.cfg
says_little 2 4 "$coldgap" find bytes.cfg
# Headings and cells of someone else's table.
printf 'cylinder,bore_mm,"top\033[2Jgap","a\nb"\n1,86.5,\302\233,\n' >heads.csv
says_little 2 3 "$coldgap" sheet "$engine" --measured heads.csv
printf 'cylinder,bore_mm,top_gap_mm,\n1,86.5,"0.4\033[2J\nx",\n2,86.5,0.4,"\342\200\256"\n' \
    >cells.csv
says_little 2 3 "$coldgap" sheet "$engine" --measured cells.csv
says_little 4 1 sh "$sources/plots/draw.sh" "none$acts"
# A log: its name, its headings, what stands above them, and what is taken of it.
csi=$(printf '\033[2J\302\23331m')
log="l\$(touch hit)'\`touch hit\`<b>&$csi.csv"
{ printf '%s\n' '$(touch hit) <script>alert(1)</script>' \
    't$(touch hit);"n<b>alert(1)</b>""x";p`touch hit`;e'"$csi'|system(touch hit)"
  awk 'BEGIN { for (i = 0; i <= 20; i++)
      printf "%.1f;%d;120;%d\n", i / 10, 3000 + 50 * i, 900 + i }'; } >"$log"
quoted() { printf '%s' "$1" | sed 's/["\\]/\\&/g'; }
logged() {
    sed '/^duty/d; /^margin/d' "$sources/configs/example.cfg"
    printf 'margin = { duties = []; };\nduty = { log = "%s"; columns = {\n' \
        "$(quoted "$log")"
    printf '%s' 'time_s = "t$(touch hit)"; speed_rpm = "n<b>alert(1)</b>\"x"; '
    printf 'boost_kPa = "p`touch hit`"; %s }; };\n' "$1"
    printf 'evidence = ( { what = "exhaust_probe"; column_C = "%s"; } );\n' \
        "$(quoted "$2")"
}
probe="e$csi'|system(touch hit)"
logged '' "$probe" >logged.cfg
says_little 0 0 "$coldgap" find logged.cfg -o logged --report logged/page.html
says stdout 'l$(touch hit)'
says stdout "e?\[2J?31m'|system"
cp "$work/stdout" screen
for file in logged/*; do
    case $file in *.dat | *.html) letters_only "$file" "${file##*/}" ;; esac
done
grep -q -i '<b>alert\|<b>&\|<script>alert' logged/page.html &&
    fail "a page takes what a log brings for its own"
drawn logged
nothing_ran "a log"
# The same where they are wrong.
logged 'lambda = "<b>\x1b[2J";' "$probe" >logged.cfg
says_little 2 2 "$coldgap" find logged.cfg
logged '' "$csi$acts" >logged.cfg
says_little 2 2 "$coldgap" find logged.cfg
sed "s/^1.0;/1.0$csi;/; s/;910\$/;$csi/" "$log" >"bad$log"
log="bad$log"
logged '' "$probe" >logged.cfg
says_little 2 2 "$coldgap" find logged.cfg
nothing_ran "a bad log"

# 4. A picture with anything in it but lines and letters is left out.
mkdir fake
cat >fake/gnuplot <<'FAKE'
#!/bin/sh
name=${4#plots/}
cat "$DRAWING" >"${name%.gp}.svg"
FAKE
chmod +x fake/gnuplot
echo '<svg viewBox="0 0 1 1"><g><text>well</text></g></svg>' >good
echo '<svg viewBox="0 0 1 1"><SCRIPT>alert(1)</SCRIPT></svg>' >bad1
echo '<svg viewBox="0 0 1 1"><g ONLOAD="alert(1)"></g></svg>' >bad2
echo '<svg viewBox="0 0 1 1"><use xlink:href="data:x#y"/></svg>' >bad3
for DRAWING in good bad1 bad2 bad3; do
    DRAWING=$work/$DRAWING
    export DRAWING
    expect 0 env PATH="$work/fake:$PATH" "$coldgap" lesson "$engine" -q \
        --report "$work/page.html"
    case $DRAWING in
    */good) grep -q '<text>well</text>' page.html || fail "a good picture is lost" ;;
    *)
        grep -q 'drew what a page does not take' page.html ||
            fail "nothing said of ${DRAWING##*/}"
        grep -q -i 'alert\|data:x' page.html && fail "${DRAWING##*/} is taken"
        ;;
    esac
done
finish
