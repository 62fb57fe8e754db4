#!/bin/sh
# What is written where: by one run at a time, over plain files alone, and never
# over what the run is made from.  A run that is to be met is stopped (SIGSTOP),
# so that nothing here hangs on time.
#
#   run_folder.sh COLDGAP SOURCES
set -u
coldgap=$(realpath "$1")
sources=$(realpath "$2")
. "$(dirname "$0")/lib.sh"
engine=$sources/configs/engines/plain_four.cfg
measured=$sources/configs/measured/iron_six.csv
profile=$sources/configs/profiles/plateau.txt
mkdir "$work/tmp"
TMPDIR=$work/tmp
export TMPDIR
patient=
timeout --version >/dev/null 2>&1 && patient="timeout 30" # a pipe may block
vary="--vary fuel.lambda=0.8:0.86:0.001"

# sweep WORDS...: long enough to be met at work; its rows fill some buffers.
# shellcheck disable=SC2086 # a list of words
sweep() {
    "$coldgap" sweep "$engine" $vary -q --threads 1 "$@"
}

# halt TEST FILE WORDS...: starts coldgap, waits until the file is there (e) or
# has something in it (s), and stops it; $met is the process.
halt() {
    kind=$1 file=$2
    shift 2
    "$coldgap" "$@" >/dev/null 2>"$work/met" &
    met=$!
    tries=0
    until test "-$kind" "$file" || [ $tries -eq 600 ]; do
        sleep 0.05
        tries=$((tries + 1))
    done
    kill -STOP $met || fail "$*: ended before it was met"
    test "-$kind" "$file" || fail "$*: ${file##*/} never came"
}
# halt_sweep TEST FILE WORDS...
# shellcheck disable=SC2086
halt_sweep() {
    kind=$1 file=$2
    shift 2
    halt "$kind" "$file" sweep "$engine" $vary -q --threads 1 "$@"
}
go_on() {
    kill -CONT $met
    wait $met
    got=$?
    [ $got -eq 0 ] || fail "the run that was met: exit $got"
}
kill_met() {
    kill -KILL $met
    wait $met 2>/dev/null
}

# refused STATUS TEXT FOLDER WORDS...: coldgap says so in one line, gives no
# answer, and changes nothing in the folder.
refused() {
    want=$1 text=$2 folder=$3
    shift 3
    ls -lAR "$folder" >"$work/before" 2>&1
    # shellcheck disable=SC2086 # a word or two
    expect "$want" $patient "$coldgap" "$@"
    ls -lAR "$folder" >"$work/after" 2>&1
    if ! cmp -s "$work/before" "$work/after"; then
        fail "$*: the folder has changed"
        diff "$work/before" "$work/after"
    fi
    [ "$(wc -l <"$work/stderr")" -eq 1 ] || fail "$*: one line expected"
    [ -s "$work/stdout" ] && fail "$*: an answer that is kept nowhere"
    says stderr "$text"
}

sweep -o "$work/whole" --report "$work/whole.html" || fail "sweep: exit $?"

# Two runs into one folder: the second is refused, whatever it is, and the table
# of the first is whole.
two=$work/two
halt_sweep e "$two/sweep.dat.part" -o "$two"
busy=': another run is writing into this folder'
for words in "find CONFIG" "seal CONFIG" "network CONFIG" "lesson CONFIG" \
    "card CONFIG" "rings CONFIG" "ladder CONFIG" "finish CONFIG --simulate plateau" \
    "sweep CONFIG $vary" \
    "sweep CONFIG $vary --resume" "sweep CONFIG $vary --part 1/2"; do
    # shellcheck disable=SC2086 # words are meant to be split
    refused 4 "two$busy" "$two" ${words%% *} "$engine" -q -o "$two" \
        ${words#*CONFIG}
done
refused 4 "two$busy" "$two" sheet "$sources/configs/engines/iron_six.cfg" -q \
    -o "$two" --measured "$measured"
ln -s two "$work/also"
refused 4 "also$busy" "$two" find "$engine" -q -o "$work/also"
go_on
cmp -s "$two/sweep.dat" "$work/whole/sweep.dat" || fail "two: other bytes"

# A killed run holds nothing, and --resume takes what it left.
rm -f "$two"/*
halt_sweep s "$two/sweep.dat.part" -o "$two"
refused 4 "two$busy" "$two" find "$engine" -q -o "$two"
kill_met
[ -s "$two/sweep.dat.part" ] || fail "the killed run left nothing"
expect 0 "$coldgap" find "$engine" -q -o "$two"
expect 0 sweep -o "$two" --resume
cmp -s "$two/sweep.dat" "$work/whole/sweep.dat" || fail "resumed: other bytes"
[ -e "$two/sweep.dat.part" ] && fail "resumed: the part stays"

# Blocks of a job array go side by side; the same block twice does not.
array=$work/array
halt_sweep s "$array/sweep_1_of_2.dat.part" -o "$array" --part 1/2
expect 0 sweep -o "$array" --part 2/2
for words in "" --resume; do
    # shellcheck disable=SC2086
    refused 4 'sweep_1_of_2.dat: another run is writing it' "$array" \
        sweep "$engine" $vary -q -o "$array" --part 1/2 $words
done
refused 4 "array$busy" "$array" find "$engine" -q -o "$array"
go_on
grep -v '^#' "$work/whole/sweep.dat" >"$work/rows"
cat "$array"/sweep_?_of_2.dat | grep -v '^#' | cmp -s - "$work/rows" ||
    fail "two blocks joined: other rows"

# Two runs to one page: it is the first one's, whole.
halt_sweep e "$work/three/sweep.dat.part" -o "$work/three" \
    --report "$work/page.html"
refused 4 'page.html: another run is writing it' "$work/three" find "$engine" \
    -q --report "$work/page.html"
go_on
cmp -s "$work/page.html" "$work/whole.html" || fail "page: not the first one's"
halt_sweep e "$work/four/sweep.dat.part" -o "$work/four" \
    --report "$work/page.html"
kill_met
expect 0 "$coldgap" find "$engine" -q --report "$work/page.html"
[ -e "$work/page.html.part" ] && fail "page: a part is left"

# What is no plain file is neither followed nor replaced, nor anything written
# beside it.
plain=$work/plain
mkdir "$plain"
echo precious >"$work/target"
stand() {
    case $1 in
    'a named pipe') mkfifo "$2" ;;
    'a symbolic link') ln -s "$work/target" "$2" ;;
    'a symbolic link ') ln -s nowhere "$2" ;;
    'a folder') mkdir "$2" ;;
    'a device') mknod "$2" c 1 3 ;;
    esac
}
mknod "$work/null" c 1 3 2>/dev/null || echo "left out: no devices here"
for kind in 'a named pipe' 'a symbolic link' 'a symbolic link ' 'a folder' \
    'a device'; do
    is="could not write: it is ${kind% }"
    for ending in '' .part; do
        [ "$kind" != 'a device' ] || [ -c "$work/null" ] || continue
        for name in cycle.dat page.html sweep.dat evidence.dat; do
            file=$plain/$name$ending
            stand "$kind" "$file"
            case $name in
            page.html) refused 4 "$name$ending: $is" "$plain" find "$engine" \
                -q --report "$plain/$name" ;;
            sweep.dat) for words in "" --resume; do
                # shellcheck disable=SC2086
                refused 4 "$name$ending: $is" "$plain" sweep "$engine" $vary \
                    -q -o "$plain" $words
            done ;;
            *) refused 4 "$name$ending: $is" "$plain" find "$engine" -q \
                -o "$plain" ;;
            esac
            rm -rf "$file"
        done
    done
done
[ "$(cat "$work/target")" = precious ] || fail "a link was written through"
# A folder made for a run that is refused goes again.
refused 4 'folder (make the one above' "$plain" find "$engine" -q \
    -o "$plain/new" --report "$plain/no/such/page.html"

# Nothing is written over what the run is made from, whatever it is called: the
# config, what it includes, a table of measurements, a profile, a material.
made=$work/made
mkdir "$made"
own='this run is made from that file'
# kept FILE TEXT-FOLDER WORDS...: FILE is an input of the words.
kept() {
    input=$1
    shift
    cp "$input" "$work/input"
    refused 2 "$own" "$made" "$@"
    cmp -s "$input" "$work/input" || fail "$*: ${input##*/} was written over"
    rm -rf "$made"
    mkdir "$made"
}
for name in summary.dat cycle.dat evidence.dat summary.dat.part; do
    cp "$engine" "$made/$name"
    kept "$made/$name" find "$made/$name" -q -o "$made"
done
cp "$engine" "$made/sweep.dat"
# shellcheck disable=SC2086
kept "$made/sweep.dat" sweep "$made/sweep.dat" $vary -q -o "$made"
cp "$engine" "$made/page.html"
kept "$made/page.html" find "$made/page.html" -q --report "$made/page.html"
# by another name: through a link to the folder, a link, a second name
ln -s made "$work/made_too"
cp "$engine" "$made/summary.dat"
kept "$made/summary.dat" find "$work/made_too/summary.dat" -q -o "$made"
cp "$engine" "$made/summary.dat"
ln -s summary.dat "$made/link.cfg"
kept "$made/summary.dat" find "$made/link.cfg" -q -o "$made"
cp "$engine" "$made/second.cfg"
ln "$made/second.cfg" "$made/page.html"
kept "$made/second.cfg" find "$made/second.cfg" -q --report "$made/page.html"
cp "$engine" "$made/history.dat"
echo '@include "history.dat"' >"$made/outer.cfg"
kept "$made/history.dat" find "$made/outer.cfg" -q -o "$made"
cp "$measured" "$made/sheet.csv"
kept "$made/sheet.csv" sheet "$sources/configs/engines/iron_six.cfg" -q \
    -o "$made" --measured "$made/sheet.csv"
cp "$profile" "$made/finish_profile.dat"
kept "$made/finish_profile.dat" finish "$engine" -q -o "$made" \
    --profile "$made/finish_profile.dat"
cp -R "$sources/configs" "$work/configs"
for input in materials/ring_materials.cfg duties/dyno_pull.cfg; do
    ln "$work/configs/$input" "$made/stroke.dat"
    COLDGAP_CONFIGS=$work/configs
    export COLDGAP_CONFIGS
    kept "$work/configs/$input" find "$engine" --set duty.name=dyno_pull -q \
        -o "$made"
    unset COLDGAP_CONFIGS
done
# A config that lies beside the tables is in nobody's way.
cp "$engine" "$made/mine.cfg"
expect 0 "$coldgap" find "$made/mine.cfg" -q -o "$made"
cmp -s "$engine" "$made/mine.cfg" || fail "a config beside was written over"

# A signal takes away what is half-written, the folder made for it and that in
# which pictures are drawn, and ends who draws them.
mkdir "$work/fake"
cat >"$work/fake/gnuplot" <<FAKE
#!/bin/sh
name=\${4#plots/}
echo half >"\${name%.gp}.svg"
echo \$\$ >"$work/drawing"
exec sleep 300
FAKE
chmod +x "$work/fake/gnuplot"
for signal in 15 1; do
    for out in "" "-o $work/drawn"; do
        rm -rf "$work/drawn" "$work/drawing"
        # shellcheck disable=SC2086
        PATH=$work/fake:$PATH halt s "$work/drawing" find "$engine" -q $out \
            --report "$work/cut.html"
        kill -CONT $met
        kill -$signal $met
        wait $met 2>/dev/null
        got=$?
        [ $got -eq $((128 + signal)) ] || fail "signal $signal: exit $got"
        [ -z "$(ls -A "$work/tmp")" ] ||
            fail "signal $signal: left in TMPDIR: $(ls -A "$work/tmp")"
        [ -z "$(find "$work" -name 'cut.html*')" ] ||
            fail "signal $signal: a page is left"
        kill -0 "$(cat "$work/drawing")" 2>/dev/null &&
            fail "signal $signal: still drawing"
    done
done
finish
