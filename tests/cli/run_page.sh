#!/bin/sh
# Report pages: what they must hold, that they stand by themselves, and what
# happens where they cannot be made.
#
#   run_page.sh COLDGAP SOURCES
set -u
coldgap=$(realpath "$1")
sources=$(realpath "$2")
. "$(dirname "$0")/lib.sh"
here=$(cd "$(dirname "$0")" && pwd)
engine=$sources/configs/engines/iron_six.cfg
mkdir "$work/tmp"
TMPDIR=$work/tmp
export TMPDIR
figures=yes
command -v gnuplot >/dev/null 2>&1 || figures=no

# page FILE FIGURES: every promise of a page.
page() {
    awk -f "$here/page_check.awk" "$1" >"$work/broken"
    awk -f "$here/contrast.awk" "$1" >>"$work/broken"
    if command -v xmllint >/dev/null 2>&1; then
        xmllint --noout "$1" 2>>"$work/broken" || echo "$1: no XML" >>"$work/broken"
    fi
    [ -s "$work/broken" ] && fail "$(head -n 5 "$work/broken")"
    drawn=$(grep -c '<svg ' "$1")
    [ "$figures" = no ] || [ "$drawn" -eq "$2" ] ||
        fail "$1: $drawn figures, expected $2"
    grep -q 'not a warranty' "$1" || fail "$1: no caution"
    grep -q -i 'produced by\|gnuplot [0-9]' "$1" && fail "$1: names gnuplot"
    grep -q "$work/tmp\|coldgap-" "$1" && fail "$1: names a passing folder"
    left=$(ls -A "$work/tmp")
    [ -z "$left" ] || fail "left in TMPDIR: $left"
}

# holds FILE TEXT
holds() {
    grep -q -e "$2" "$1" || fail "${1##*/} does not hold: $2"
}

# The commands that have it.
expect 0 "$coldgap" find "$engine" --report "$work/find.html" -o "$work/out"
page "$work/find.html" 8
[ -s "$work/stderr" ] && fail "find --report wrote to stderr"
gap=$(awk '$1 == "file_to_top" {printf "%.2f mm", $2}' "$work/out/summary.dat")
hardest=$(awk '$1 == "hardest_duty" {print $2}' "$work/out/summary.dat")
holds "$work/find.html" "Top ring, file to <strong>$gap</strong> <span>("
holds "$work/find.html" "$hardest, hardest"
expect 0 "$coldgap" find "$engine" -q --units inch --report "$work/inch.html"
holds "$work/inch.html" "<strong>0.[0-9]* in</strong> <span>($gap)"
expect 1 "$coldgap" find "$engine" -q --set rings.top.cold_gap_mm=0.1 \
    --set rings.film_law=reynolds --samples 64 --report "$work/all.htm"
page "$work/all.htm" 10
holds "$work/all.htm" 'verdict bad.*TOO SMALL'
expect 0 "$coldgap" find "$sources/configs/engines/taught_four.cfg" -q \
    --report "$work/taught.html"
page "$work/taught.html" 8
for words in '>Evidence</h2>' 'What was learned' 'The answer without it' \
    'The evidence was fitted'; do
    holds "$work/taught.html" "$words"
done
grep -q '>Evidence</h2>' "$work/find.html" && fail "evidence out of nowhere"
holds "$work/find.html" '>Piston</h2>'
holds "$work/find.html" 'shop rule'
expect 1 "$coldgap" sheet "$engine" --measured \
    "$sources/configs/measured/iron_six.csv" -q --report "$work/sheet.html"
page "$work/sheet.html" 0
holds "$work/sheet.html" '<tr class="bad"><th scope="row">1.*TOO SMALL'
holds "$work/sheet.html" 'Take off, mm (in)'
holds "$work/sheet.html" '>Too wide</h2>'
holds "$work/sheet.html" '<th scope="row">5</th><td>top</td><td>0.33[0-9] (0.01[0-9]*)</td><td>0.0[0-9]* ('
[ "$(grep -c '^<li>[A-Z]' "$work/sheet.html")" -eq 10 ] ||
    fail "not five cautions and five steps on the sheet"
expect 0 "$coldgap" sweep "$engine" --vary charge.boost_kPa=0:200:100 -q \
    -o "$work/line" --report "$work/line.html"
page "$work/line.html" 1
expect 0 "$coldgap" sweep "$engine" --vary charge.boost_kPa=0:100:50 \
    --vary cooling.coolant_C=80,90 -q -o "$work/map" \
    --report "$work/map.html" --threads 1
page "$work/map.html" 1
[ "$(grep -c '<tr><th scope="row">' "$work/map.html")" -eq 8 ] ||
    fail "not six rows of the sweep, and two of the gaps needed"
expect 0 "$coldgap" sweep "$engine" --vary engine.bore_mm=86,860 -q \
    -o "$work/odd" --report "$work/odd.html"
page "$work/odd.html" 0
holds "$work/odd.html" '<tr class="bad"><th scope="row">860'
expect 0 "$coldgap" finish "$engine" --simulate plateau -q \
    --report "$work/finish.html"
page "$work/finish.html" 3
expect 0 "$coldgap" seal "$engine" -q -o "$work/seal" \
    --report "$work/seal.html"
page "$work/seal.html" 3
leak=$(awk '$1 == "blow_by" {printf "%.3g g/s", $2}' "$work/seal/seal.dat")
holds "$work/seal.html" "Blow-by <strong>$leak</strong> <span>([0-9.]* lb/h)"
holds "$work/seal.html" 'needed in cold_start_abuse; shop rule '
"$coldgap" seal "$engine" -q --set rings.top.cold_gap_mm=0.2 \
    --report "$work/small.html" >/dev/null
holds "$work/small.html" 'verdict bad.*TOO SMALL'
expect 0 "$coldgap" rings "$engine" -q --report "$work/rings.html" --threads 1
page "$work/rings.html" 2
holds "$work/rings.html" '<th scope="row">15.*plain_steel, bare (yours)'
holds "$work/rings.html" 'peak pressure [0-9]* of 70-100 bar ([0-9]* of 1015-1450 psi)'
expect 0 "$coldgap" card "$engine" -q --report "$work/card.html" \
    --from "$sources/configs/engines/shop_four.cfg"
page "$work/card.html" 0
holds "$work/card.html" "Top ring, file to <strong>$gap</strong> <span>("
holds "$work/card.html" '<th scope="row">Peak pressure</th><td>[0-9]* bar ([0-9]* psi)</td><td>[0-9]* bar ([0-9]* psi)</td><td>changed'
[ "$(grep -c '^<p class="blank">' "$work/card.html")" -eq 4 ] ||
    fail "not four lines to sign on the card"
cp "$work/rings.html" "$work/first"
expect 0 "$coldgap" rings "$engine" -q --report "$work/rings.html" --threads 2
cmp -s "$work/first" "$work/rings.html" || fail "threads change a page"
expect 0 "$coldgap" ladder "$engine" -q --duty settled --to 180kPa \
    --report "$work/ladder.html"
page "$work/ladder.html" 1
holds "$work/ladder.html" '<li>Ring face, from [0-9]* kPa on: '
holds "$work/ladder.html" '<th scope="row">Ring face</th>'
# A lesson's lines can be keyed in from the page as from the screen.
for words in "--level first" "--answers" "--answers --units inch"; do
    # shellcheck disable=SC2086 # words are meant to be split
    expect 0 "$coldgap" lesson "$engine" $words --report "$work/lesson.html"
    page "$work/lesson.html" 3
    awk -v quiet=0 -f "$here/by_hand.awk" "$work/stdout" >"$work/screen" ||
        fail "the lesson's screen: $(cat "$work/screen")"
    awk '/<th scope="col">Time/ {gsub(/<[^>]*>/, " "); print; rows = 1}
         /<\/table>/ {rows = 0}
         rows && /<th scope="row">/ {gsub(/\([^)]*\)|<[^>]*>/, " "); print}
         /<pre/ {on = 1; sub(/.*<pre[^>]*>/, "")}
         on {line = $0; if (sub(/<\/pre>.*/, "", line)) on = 0
             gsub(/<\/?span>/, "", line); gsub(/&#39;/, "\047", line)
             print line}' "$work/lesson.html" >"$work/lines"
    awk -f "$here/by_hand.awk" "$work/lines" >"$work/paper" ||
        fail "the lesson's page: $(cat "$work/paper")"
    cmp -s "$work/screen" "$work/paper" ||
        fail "lines on page: $(cat "$work/paper"), screen: $(cat "$work/screen")"
done
holds "$work/lesson.html" '<code>coldgap lesson .*iron_six.cfg\(&#39;\)* --answers</code>'
holds "$work/lesson.html" '>Answers</h2>'
expect 0 "$coldgap" lesson "$engine" -q --report "$work/lesson.html"
grep -q '>Answers</h2>' "$work/lesson.html" && fail "answers not asked for"
grep -q '>13. Hand and model</h2>' "$work/lesson.html" || fail "not all steps"

# Equal input, equal bytes: again, with a folder for tables, other threads.
cp "$work/find.html" "$work/first"
expect 0 "$coldgap" find "$engine" -q --report "$work/find.html"
cmp -s "$work/first" "$work/find.html" || fail "two pages differ"
cp "$work/map.html" "$work/first"
expect 0 "$coldgap" sweep "$engine" --vary charge.boost_kPa=0:100:50 \
    --vary cooling.coolant_C=80,90 -q -o "$work/map2" \
    --report "$work/map.html" --threads 2
cmp -s "$work/first" "$work/map.html" || fail "threads change a page"
# and the tables are those without a page
expect 0 "$coldgap" find "$engine" -q -o "$work/out2"
diff -r "$work/out" "$work/out2" || fail "--report changes the tables"

# Names that a shell, gnuplot or a browser would act on.
odd="$work/a'b \"c\" \$(touch hit) ;touch hit; \`touch hit\` <b>&"
mkdir "$odd"
cp "$engine" "$odd/x'\"<script>.cfg"
TMPDIR="$odd/t'm\"p"
mkdir "$TMPDIR"
(cd "$odd" && expect 0 "$coldgap" find "x'\"<script>.cfg" -q \
    -o "$odd/o'u\"t" --report "$odd/p'\"<i>.html" && finish >/dev/null) ||
    fail "odd names"
TMPDIR=$work/tmp
page "$odd/p'\"<i>.html" 8
holds "$odd/p'\"<i>.html" '&quot;&lt;script&gt;.cfg'
[ -z "$(find "$work" -name hit)" ] || fail "a name was acted on"
bytes=$(printf '%s/\377\033.cfg' "$work")
cp "$engine" "$bytes"
expect 0 "$coldgap" find "$bytes" -q --report "$work/bytes.html"
page "$work/bytes.html" 8

# Without gnuplot, with one that fails, that leaves no drawing, or a bad one.
mkdir "$work/none" "$work/fake"
without() {
    (PATH=$1; export PATH
     "$coldgap" find "$engine" -q --report "$work/bare.html" \
         >/dev/null 2>"$work/stderr")
    got=$?
    [ "$got" -eq 0 ] || fail "$2: exit $got"
    holds "$work/bare.html" "$3"
    drawn=$(grep -c '<svg ' "$work/bare.html")
    # what the program draws by itself needs no gnuplot
    [ "$drawn" -eq 4 ] || fail "$2: $drawn figures"
    figures=no
    page "$work/bare.html" 4
}
kept=$figures
without "$work/none" "no gnuplot" 'gnuplot is not installed.*apt-get install'
[ "$(grep -c 'not installed' "$work/bare.html")" -eq 1 ] ||
    fail "says more than once that gnuplot is missing"
without "none:.::$work/none" "gnuplot from here" 'gnuplot is not installed'
printf '#!/bin/sh\nexit 1\n' >"$work/fake/gnuplot"
chmod +x "$work/fake/gnuplot"
without "$work/fake" "failing gnuplot" 'could not draw plots/temperatures.gp'
printf '#!/bin/sh\nexit 0\n' >"$work/fake/gnuplot"
without "$work/fake" "idle gnuplot" 'could not draw plots/temperatures.gp'
cat >"$work/fake/gnuplot" <<'FAKE'
#!/bin/sh
name=${4#plots/}
echo '<svg viewBox="0 0 1 1"><script>alert(1)</script></svg>' >"${name%.gp}.svg"
FAKE
without "$work/fake" "evil gnuplot" 'drew what a page does not take'
PATH=$work/none "$coldgap" lesson "$engine" -q --report "$work/lesson.html" \
    >/dev/null || fail "no lesson without gnuplot"
[ "$(grep -c '<svg ' "$work/lesson.html")" -eq 2 ] ||
    fail "without gnuplot the lesson's own drawings are missing"
figures=$kept
COLDGAP_PLOTS=$work/nowhere
export COLDGAP_PLOTS
expect 0 "$coldgap" find "$engine" -q --report "$work/bare.html"
[ "$figures" = no ] || holds "$work/bare.html" 'no scripts to draw with'
unset COLDGAP_PLOTS
TMPDIR=$work/nowhere
expect 0 "$coldgap" find "$engine" -q --report "$work/bare.html"
holds "$work/bare.html" 'no folder to draw in'
TMPDIR=$work/tmp

# Places that cannot be written: said before the work, nothing half-written.
expect 4 "$coldgap" find "$engine" -q --report "$work/no/such/page.html"
says stderr 'could not create the folder'
[ -s "$work/stdout" ] && fail "an answer before the page failed"
: >"$work/file"
expect 4 "$coldgap" find "$engine" -q --report "$work/file/page.html"
mkdir "$work/folder.html"
expect 4 "$coldgap" find "$engine" -q --report "$work/folder.html"
expect 0 "$coldgap" find "$engine" -q --report "$work/new/page.html"
page "$work/new/page.html" 8
# A full disk, which a limit on the size of files stands in for.
echo earlier >"$work/full.html"
(trap '' XFSZ
 ulimit -f 8 # blocks of 512 bytes
 "$coldgap" sheet "$engine" -q --report "$work/full.html" --measured \
     "$sources/configs/measured/iron_six.csv" >/dev/null 2>"$work/stderr")
got=$?
[ "$got" -eq 4 ] || fail "a full disk: exit $got, expected 4"
says stderr 'could not write'
[ "$(cat "$work/full.html")" = earlier ] || fail "an earlier page is lost"
expect 2 "$coldgap" sweep "$engine" --vary charge.boost_kPa=0,1 --part 1/2 \
    --report "$work/part.html" -o "$work/part"
says stderr 'whole sweep'
for name in page.cfg .html "" page.html/; do
    expect 2 "$coldgap" find "$engine" --report "$name"
done
expect 2 "$coldgap" ceiling "$engine" --gap 0.5mm --report "$work/c.html"
left=$(find "$work" -name '*.part')
[ -z "$left" ] || fail "left behind: $left"
finish
