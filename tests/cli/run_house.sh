#!/bin/sh
# The house rules that a compiler does not know.
#
#   run_house.sh MODELS_LIBRARY PROGRAM_LIBRARY SOURCES
set -u
models=$(realpath "$1")
program=$(realpath "$2")
sources=$3
. "$(dirname "$0")/lib.sh"
for needed in "$models" "$program"; do
    [ -f "$needed" ] || { fail "no library $needed"; finish; }
done
cd "$sources" || exit 1

# Levels of models/, low to high: a module includes its own level or lower.
# A pattern stands for a module with its private files.
level() {
    case $1 in
    status | constants | unit) echo 0 ;;
    material | gas | fuel | heat_transfer | crank | wiebe) echo 1 ;;
    viscosity | boiling | cylinder | ring_gap | sample) echo 1 ;;
    oil | asperity | reynolds) echo 1 ;;
    profile | regression_line | mean_line | material_ratio) echo 1 ;;
    material_probability | grit) echo 1 ;;
    surface | honing) echo 2 ;;
    face | relaxation) echo 1 ;;
    orifice | flank) echo 1 ;;
    network | chain | envelope | heat_matrix | stepper | stepper_*) echo 2 ;;
    held | rosenbrock | stretch | stretch_* | film) echo 2 ;;
    zone | cycle | cycle_* | sweep_share | gas_side) echo 2 ;;
    case | geometry | setting | setting_*) echo 3 ;;
    thermal | thermal_* | growth | joint) echo 4 ;;
    operating | case_check | uncertain) echo 4 ;;
    ring_film) echo 5 ;;
    regime | regime_* | duty_run | duty_march | follow) echo 5 ;;
    bore_finish) echo 5 ;;
    input_law) echo 4 ;;
    clearance) echo 4 ;;
    ring_pack | pack_*) echo 2 ;;
    seal | seal_pack | seal_friction | second_gap) echo 5 ;;
    answer | ceiling | confidence | confidence_* | extremes | spread) echo 6 ;;
    fitting) echo 6 ;;
    case_ready) echo 4 ;;
    coldgap) echo 6 ;;
    posterior | posterior_*) echo 2 ;;
    evidence | evidence_*) echo 6 ;;
    ring_choice | alloy_choice) echo 6 ;;
    ring_trial) echo 6 ;;
    seal_study | seal_trade) echo 7 ;;
    gap_price) echo 7 ;;
    lesson | lesson_*) echo 7 ;;
    esac
}
for file in models/*.[ch]; do
    name=$(basename "${file%.[ch]}")
    own=$(level "$name")
    if [ -z "$own" ]; then
        fail "$file stands at no level"
        continue
    fi
    for other in $(sed -n 's/^#include "\(.*\)\.h"/\1/p' "$file"); do
        if [ ! -f "models/$other.h" ]; then
            fail "$file includes $other.h, which is not in models/"
        elif [ "$(level "$other")" -gt "$own" ]; then
            fail "$file, level $own, includes $other.h, level $(level "$other")"
        fi
    done
    grep '^#include <' "$file" | sed 's/.*<\(.*\)>.*/\1/' | while read -r h; do
        case $h in
        assert.h | float.h | limits.h | math.h | stdarg.h | stdbool.h) ;;
        stddef.h | stdint.h | stdlib.h | string.h | gsl/*) ;;
        stdio.h)
            grep -q 'snprintf' "$file" || echo "$file: stdio.h for nothing" ;;
        *) echo "$file includes <$h>" ;;
        esac
    done >"$work/includes"
    [ -s "$work/includes" ] && fail "$(cat "$work/includes")"
done

# Levels of src/: what runs a command stands above all else.  Below it three
# kinds of file keep to themselves; the rest only keeps off the top.
top_of_src() {
    case $1 in
    command_* | option_table | options | help | main) return 0 ;;
    sampling | outputs) return 0 ;;
    esac
    return 1
}
# may FILE HEADER: both without their folder and ending, both of src/.
may() {
    top_of_src "$1" && return 0
    top_of_src "$2" && return 1
    case $1 in
    config | config_*) # readers of configs
        case $2 in
        config | config_* | setting_* | nearest | trade_word | problems | metals) ;;
        data_folder | text_file | shelf | plain_text) ;;
        *) return 1 ;;
        esac ;;
    report_*) # writers of screens
        case $2 in
        config | config_* | table | *_table | *_tables | history | grid | \
            problems | text_file | progress | threads) return 1 ;;
        esac ;;
    table | *_table | *_tables | summary | history | grid) # of tables
        case $2 in
        config | config_* | report_* | show | progress | threads) return 1 ;;
        esac ;;
    esac
    return 0
}
for file in src/*.[ch] src/install/*.[ch]; do
    name=$(basename "${file%.[ch]}")
    for other in $(sed -n 's/^#include "\(.*\)\.h"/\1/p' "$file"); do
        if [ "${file%/*}" = src/install ]; then
            [ -f "src/install/$other.h" ] && continue
            case $other in config | config_* | report_* | command_*)
                fail "$file includes $other.h" ;;
            esac
        elif [ -f "src/install/$other.h" ]; then
            fail "$file includes $other.h of the build's own tool"
        elif [ -f "src/$other.h" ]; then
            may "$name" "$other" || fail "$file may not include $other.h"
        elif [ ! -f "models/$other.h" ]; then
            fail "$file includes $other.h, which is nowhere"
        fi
    done
done

# models/ prints nothing, opens nothing, ends nothing, asks nothing outside.
if command -v nm >/dev/null 2>&1; then
    outside=$(nm -u "$models" | awk '{print $NF}' | sed 's/^_*//; s/_chk$//' |
        sort -u | grep -x -E '[vfd]?printf|f?puts?|f?putc|putchar|puts|perror|fwrite|f?write|fopen|freopen|fdopen|open|creat|fclose|exit|_Exit|quick_exit|abort|getenv|setenv|system|time|clock|s?rand|std(in|out|err)')
    [ -z "$outside" ] || fail "models/ uses" $outside
    # no globals that can change: data is read-only or not there at all
    # (.data.rel.ro: constant tables that hold addresses)
    changing=$(nm -f sysv "$models" | awk -F'|' '$4 ~ /OBJECT|TLS/ &&
        $7 !~ /\.rodata|\.data\.rel\.ro/ && $1 !~ /asan|gcov/ {print $1}')
    [ -z "$changing" ] || fail "models/ has changing globals:" $changing
    for library in "$models" "$program"; do
        names=$(nm -g --defined-only "$library" | awk 'NF == 3 {print $3}' |
            grep -v '^cg_\|asan\|ubsan\|^\.gomp_' | sort -u)
        [ -z "$names" ] || fail "$(basename "$library") exports" $names
    done
    # every source is built: an object of its name is in a library
    for file in models/*.c src/*.c; do
        name=$(basename "$file")
        library=$models
        [ "${file%%/*}" = src ] && library=$program
        [ "$name" = main.c ] && continue
        ar t "$library" | grep -q -x "$name.o" ||
            fail "$file is in no library"
    done
else
    echo "left out: nm not installed"
fi

# One reader of configs, one writer of tables.
for file in $(grep -l 'libconfig\.h' models/*.[ch] src/*.[ch]); do
    case $file in
    src/config*) ;;
    *) fail "$file includes libconfig.h" ;;
    esac
done
opens='(^|[^a-z_])(fopen|freopen|fdopen|open|creat|rename|mkstemp|tmpfile|popen|system) ?\('
for file in $(grep -l -E "$opens" src/*.c src/install/*.c); do
    case $file in
    src/aside.c | src/table.c | src/text_file.c) ;;
    src/hold.c) ;; # the folder itself
    src/child.c) ;; # what gnuplot prints, into its own folder
    *) fail "$file opens files" ;;
    esac
done
grep -n -E "$opens" src/text_file.c | grep -v '"rb\{0,1\}"\|O_RDONLY |' &&
    fail "src/text_file.c does more than read"
for file in $(grep -l -E '(^|[^a-z_])(exit|abort) ?\(' src/*.c src/install/*.c); do
    fail "$file ends the program"
done

# Every table is among those that its command looks for before the work.
grep -h -o -E 'cg_table_(open|drop)\(dir, "[^"]*"' src/*.c | sed 's/.*, //' |
    sort -u >"$work/tables"
[ "$(wc -l <"$work/tables")" -gt 15 ] || fail "few tables: $(cat "$work/tables")"
sed -n '/^#define TABLES/,/[^\\]$/p' src/command_*.c | tr -c 'a-z_.' '\n' \
    >"$work/looked_for"
while read -r table; do
    grep -q -x "$(echo "$table" | tr -d '"')" "$work/looked_for" ||
        fail "no command's TABLES has $table"
done <"$work/tables"

# Every header guarded by its own name.
for file in models/*.h src/*.h src/install/*.h tests/*.h tests/*/*.h; do
    name=$(basename "${file%.h}" | tr '[:lower:]' '[:upper:]')
    grep -q "^#ifndef CG_${name}_H\$" "$file" &&
        grep -q "^#define CG_${name}_H\$" "$file" ||
        fail "$file: include guard is not CG_${name}_H"
done

# Every suite is found by a target, every driver is registered.
for file in tests/*/run_*.sh; do
    driver=$(basename "$file" .sh)
    grep -q -w "${driver}.sh\|${driver#run_}" "$(dirname "$file")/CMakeLists.txt" ||
        fail "$file is not registered"
done
for file in tests/models/*.c tests/outside/*.c tests/program/*.c; do
    case $(basename "$file") in
    test_*.c | outside_*.c) ;;
    *) fail "$file matches no suite" ;;
    esac
done

# No place of one machine in what we ship.
found=$(grep -rnE '(^|[^A-Za-z0-9_.$}"])/(home|work|root|Users|mnt)/' models src \
    configs plots tests CMakeLists.txt --include='*' | head -n 5)
[ -z "$found" ] || fail "a machine's path: $found"

# The lists above must have had something to look at.
count=$(ls models/*.c src/*.c | wc -l)
[ "$count" -gt 40 ] || fail "only $count sources seen"
finish
