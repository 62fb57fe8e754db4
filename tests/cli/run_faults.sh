#!/bin/sh
# What goes wrong around the program: full disk, unwritable folder, closed
# pipe, interrupts, no gnuplot, no memory.  Each ends with the right status and
# a line that says why; a file under its final name is whole or not there.
#
#   run_faults.sh COLDGAP SOURCES
set -u
coldgap=$1
sources=$2
. "$(dirname "$0")/lib.sh"
ulimit -c 0
engine=$sources/configs/engines/plain_four.cfg
profile=$sources/configs/profiles/plateau.txt
measured=$sources/configs/measured/iron_six.csv

# job NAME FOLDER WORDS...: a command that writes tables.
job() {
    name=$1 folder=$2
    shift 2
    case $name in
    find) "$coldgap" find "$engine" --quiet -o "$folder" "$@" ;;
    card) "$coldgap" card "$engine" --from "$engine" --quiet \
        -o "$folder" "$@" ;;
    network) "$coldgap" network "$engine" --quiet -o "$folder" "$@" ;;
    finish) "$coldgap" finish "$engine" --quiet --simulate plateau \
        -o "$folder" "$@" ;;
    ladder) "$coldgap" ladder "$engine" --quiet --duty settled \
        -o "$folder" --write "$folder/new.cfg" "$@" ;;
    sheet) "$coldgap" sheet "$sources/configs/engines/iron_six.cfg" --quiet \
        --measured "$measured" -o "$folder" "$@" ;;
    sweep) "$coldgap" sweep "$engine" --vary fuel.lambda=0.8:1.0:0.02 \
        --quiet -o "$folder" "$@" ;;
    esac
}
jobs="find card network finish ladder sheet sweep"

# whole NAME FOLDER WHAT: each file there is as in an undisturbed run.
whole() {
    for file in "$2"/*; do
        case $file in
        *.part | *'/*') continue ;;
        esac
        cmp -s "$file" "$work/good_$1/$(basename "$file")" ||
            fail "$3: $(basename "$file") is not whole"
    done
}

one_line() {
    [ "$(wc -l <"$work/stderr")" -eq 1 ] || {
        fail "$1: one line on stderr expected"
        cat "$work/stderr"
    }
}

for name in $jobs; do
    job $name "$work/good_$name" >/dev/null 2>"$work/stderr"
    [ $? -le 1 ] || fail "$name"
done

# A disk that fills up: no file may grow beyond some blocks.
for name in $jobs; do
    seen=0
    for blocks in 0 1 2 4 8 16 32 64; do
        (
            trap '' XFSZ
            ulimit -f "$blocks"
            job $name "$work/full_${name}_$blocks" >/dev/null
        ) 2>"$work/stderr"
        got=$?
        whole $name "$work/full_${name}_$blocks" "$name, $blocks blocks"
        [ -z "$(find "$work/full_${name}_$blocks" -name '*.part')" ] ||
            fail "$name, $blocks blocks: a part is left"
        if [ $got -eq 4 ]; then
            seen=$((seen + 1))
        elif [ $got -gt 1 ]; then
            fail "$name, $blocks blocks: exit $got"
        fi
    done
    [ $seen -gt 0 ] || fail "$name never met the full disk"
done

# A real one, where a file system may be mounted.
mkdir "$work/disk"
if mount -t tmpfs -o size=24k tmpfs "$work/disk" 2>/dev/null; then
    job find "$work/disk/out" >/dev/null 2>"$work/stderr"
    [ $? -eq 4 ] || fail "full file system: exit 4 expected"
    grep -q 'No space left' "$work/stderr" || fail "full: no reason"
    whole find "$work/disk/out" "full file system"
    umount "$work/disk"
fi

# A file where the folder should be.
: >"$work/file"
for name in $jobs; do
    job $name "$work/file" >/dev/null 2>"$work/stderr"
    [ $? -eq 4 ] || fail "$name into a file: exit 4 expected"
    one_line "$name into a file"
done

# No one reads the output, or there is none; the tables are whole.
for name in $jobs; do
    (trap '' PIPE; job $name "$work/pipe_$name" 2>"$work/stderr"
     echo $? >"$work/status") | :
    whole $name "$work/pipe_$name" "$name, closed pipe"
    job $name "$work/shut_$name" >&- 2>"$work/stderr"
    whole $name "$work/shut_$name" "$name, no stdout"
    job $name "$work/mute_$name" >/dev/null 2>&-
    whole $name "$work/mute_$name" "$name, no stderr"
done
(trap '' PIPE
 sleep 0.2
 "$coldgap" find "$engine" 2>"$work/stderr"
 echo $? >"$work/status") | :
[ "$(cat "$work/status")" -eq 4 ] || fail "closed pipe: exit 4 expected"
grep -q 'cannot write the output' "$work/stderr" || fail "closed pipe: no reason"
(sleep 0.2
 "$coldgap" find "$engine" 2>"$work/stderr") | :
[ -s "$work/stderr" ] && fail "a reader that leaves is no trouble to tell of"
"$coldgap" find "$engine" >&- 2>"$work/stderr"
[ $? -eq 4 ] || fail "no stdout: exit 4 expected"

# Stopped at any time: nothing half-written under a final name.
if timeout --version >/dev/null 2>&1; then
    stopped=0
    for name in find network sweep; do
        for delay in 0.01 0.02 0.03 0.05 0.07 0.1 0.13 0.17 0.2 0.3; do
            for signal in INT TERM KILL; do
                folder=$work/stop_${name}_${delay}_$signal
                (case $name in
                 find) timeout -s $signal $delay "$coldgap" find "$engine" \
                     --quiet -o "$folder" ;;
                 network) timeout -s $signal $delay "$coldgap" network \
                     "$engine" --quiet -o "$folder" ;;
                 sweep) timeout -s $signal $delay "$coldgap" sweep "$engine" \
                     --vary fuel.lambda=0.8:1.0:0.02 --quiet -o "$folder" ;;
                 esac) >/dev/null 2>&1
                [ $? -le 1 ] || stopped=$((stopped + 1))
                [ $signal = KILL ] ||
                    [ -z "$(find "$folder" -name '*.part' 2>/dev/null)" ] ||
                    fail "$name, $signal at $delay s: a part is left"
                if [ $name = sweep ] && [ -f "$folder/sweep.dat" ]; then
                    # an interrupt keeps the finished rows, whole ones
                    head -n "$(wc -l <"$folder/sweep.dat")" \
                        "$work/good_sweep/sweep.dat" |
                        cmp -s - "$folder/sweep.dat" ||
                        fail "sweep, $signal at $delay s: torn"
                else
                    whole $name "$folder" "$name, $signal at $delay s"
                fi
            done
        done
    done
    [ $stopped -gt 10 ] || fail "only $stopped runs were stopped in time"
fi

# Without gnuplot the pictures say so.
mkdir "$work/bin"
for tool in sh sed awk basename dirname wc cat; do
    ln -s "$(command -v $tool)" "$work/bin/$tool"
done
PATH=$work/bin sh "$sources/plots/draw.sh" "$work/good_find" \
    >"$work/stdout" 2>"$work/stderr"
[ $? -eq 4 ] || fail "no gnuplot: exit 4 expected"
says stderr 'gnuplot is not installed'
one_line "no gnuplot"

# No memory: refused in one line, whatever the file.  A limit that stops even
# the loader (127), or libgomp before main (its words, status 1), says nothing
# about coldgap.
if ! grep -q __asan_init "$coldgap"; then
    awk 'BEGIN {print "engine = { bore_mm = 86.0; };"; printf "list = (1"
         for (i = 0; i < 200000; i++) printf ",1"
         print ");"}' >"$work/large.cfg"
    # sparse FROM TO STEP WORDS...
    memory() {
        kilobytes=$1 last=$2 step=$3
        shift 3
        seen=0
        while [ "$kilobytes" -le "$last" ]; do
            (ulimit -v "$kilobytes" && "$@") >/dev/null 2>"$work/stderr"
            got=$?
            case $got in
            0 | 2 | 127) ;;
            1) grep -q libgomp "$work/stderr" ||
                fail "$* in $kilobytes kB: exit 1" ;;
            3)
                seen=$((seen + 1))
                one_line "$* in $kilobytes kB"
                grep -q memory "$work/stderr" || fail "$*: no word of memory"
                ;;
            *) fail "$* in $kilobytes kB: exit $got" ;;
            esac
            kilobytes=$((kilobytes + step))
        done
        [ $seen -gt 0 ] || fail "$*: memory never ran out"
    }
    memory 8000 14000 100 "$coldgap" find "$engine" --quiet
    memory 10000 60000 2000 "$coldgap" find "$work/large.cfg"
    memory 8000 16000 200 "$coldgap" finish "$engine" --profile "$profile"
    memory 8000 14000 200 "$coldgap" sheet "$engine" --measured "$measured"
    # Threads ask for more, and OpenMP would end with status 1 where they do not
    # get it: fewer are taken.
    for kilobytes in 16000 19000 22000 32000 40000 120000; do
        for threads in 2 4; do
            (ulimit -v $kilobytes && "$coldgap" sweep "$engine" -q \
                --vary charge.boost_kPa=0:100:10 --threads $threads \
                -o "$work/little") >/dev/null 2>"$work/stderr"
            got=$?
            case $got in
            0 | 3) ;;
            *) fail "$threads threads in $kilobytes kB: exit $got" ;;
            esac
        done
    done
fi
finish
