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

# The rooms and what each may use, by the table in DEVELOPERS.md: rooms stand in
# it from the ground up, and a room uses itself and rooms above it in the table.
sed -n 's/^| `\([a-z_]*\/[a-z_]*\)` | [^|]* | \([^|]*\) |$/\1 \2/p' DEVELOPERS.md \
    >"$work/rooms"
[ "$(wc -l <"$work/rooms")" -gt 15 ] || fail "few rooms: $(cat "$work/rooms")"
awk '{
        top = $1
        sub(/[^\/]*$/, "", top)
        print $1, $1
        for (i = 2; i <= NF; i++) {
            if ($i == "none")
                continue
            room = $i ~ /\// ? $i : top $i
            if (!(room in seen) && room !~ /\/all$/)
                print "UP", $1, room
            if (room ~ /\/all$/) {
                for (other in seen)
                    if (index(other, substr(room, 1, length(room) - 3)) == 1)
                        print $1, other
            } else
                print $1, room
        }
        seen[$1]
    }' "$work/rooms" >"$work/may"
grep '^UP' "$work/may" && fail "a room uses one that stands below it"
for folder in models/*/ src/*/; do
    folder=${folder%/}
    [ "$folder" = src/install ] && continue
    grep -q "^$folder " "$work/rooms" || fail "$folder is no room of DEVELOPERS.md"
done

# Headers by their room, then who may use whom, then every include.
ls models/*.h models/*/*.h src/*/*.h | sed 's/^\(.*\)\/\([^\/]*\)$/\2 \1/' >"$work/headers"
[ "$(wc -l <"$work/headers")" -gt 150 ] || fail "few headers"
awk -v headers="$work/headers" -v may="$work/may" '
    FILENAME == headers { room_of[$1] = $2; next }
    FILENAME == may { allowed[$1, $2]; next }
    /^#include "/ {
        room = FILENAME
        sub(/\/[^\/]*$/, "", room)
        header = $2
        gsub(/"/, "", header)
        if (room != "src/install" && !((room, room_of[header]) in allowed))
            print FILENAME " may not include " header
    }' "$work/headers" "$work/may" models/*/*.[ch] src/*/*.[ch] >"$work/wrong"
[ -s "$work/wrong" ] && fail "$(cat "$work/wrong")"
for file in models/*/*.[ch]; do
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
    # every source is built: an object of its name is in a library; the page's
    # are of a build of their own
    { ar t "$models"; ar t "$program"; } | sort >"$work/built"
    ls models/*/*.c src/*/*.c | grep -v '^src/install/\|^src/page/' |
        sed 's/.*\///; s/$/.o/' | sort >"$work/sources"
    comm -23 "$work/sources" "$work/built" >"$work/unbuilt"
    [ -s "$work/unbuilt" ] && fail "in no library: $(cat "$work/unbuilt")"
else
    echo "left out: nm not installed"
fi

# One reader of configs, one writer of tables.
for file in $(grep -l 'libconfig\.h' models/*/*.[ch] src/*.[ch] src/*/*.[ch]); do
    case $file in
    src/config/*) ;;
    *) fail "$file includes libconfig.h" ;;
    esac
done
opens='(^|[^a-z_])(fopen|freopen|fdopen|open|creat|rename|mkstemp|tmpfile|popen|system) ?\('
for file in $(grep -l -E "$opens" src/*.c src/*/*.c); do
    case $file in
    src/text/part_file.c | src/text/table.c | src/text/text_file.c) ;;
    src/text/hold.c) ;; # the folder itself
    src/text/child.c) ;; # what gnuplot prints, into its own folder
    *) fail "$file opens files" ;;
    esac
done
grep -n -E "$opens" src/text/text_file.c | grep -v '"rb\{0,1\}"\|O_RDONLY |' &&
    fail "src/text/text_file.c does more than read"
for file in $(grep -l -E '(^|[^a-z_])(exit|abort) ?\(' src/*.c src/*/*.c); do
    fail "$file ends the program"
done

# Every table is among those that its command looks for before the work.
grep -h -o -E 'cg_table_(open|drop)\(dir, "[^"]*"' src/*/*.c | sed 's/.*, //' |
    sort -u >"$work/tables"
[ "$(wc -l <"$work/tables")" -gt 15 ] || fail "few tables: $(cat "$work/tables")"
sed -n '/^#define TABLES/,/[^\\]$/p' src/commands/command_*.c | tr -c 'a-z_.' '\n' \
    >"$work/looked_for"
while read -r table; do
    grep -q -x "$(echo "$table" | tr -d '"')" "$work/looked_for" ||
        fail "no command's TABLES has $table"
done <"$work/tables"

# Every header guarded by its own name.
for file in models/*.h models/*/*.h src/*/*.h tests/*.h tests/*/*.h; do
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
for file in tests/models/*/*.c tests/outside/*.c tests/program/*/*.c; do
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
count=$(ls models/*/*.c src/*/*.c | wc -l)
[ "$count" -gt 40 ] || fail "only $count sources seen"
finish
