#!/bin/sh
# The same question has one answer, however it is asked: a shipped engine, each
# shipped duty, by every command and in every form, digit by digit.
#
#   run_one_answer.sh COLDGAP SOURCES ENGINE
set -u
coldgap=$1
configs=$2/configs
engine=$configs/engines/$3.cfg
. "$(dirname "$0")/lib.sh"

# key NAME: of the summary, as it is written.
key() {
    awk -v key="$1" '$1 == key {print $2}' "$work/out/summary.dat"
}

# column TABLE NAME: the column's place in a table by its head.
column() {
    awk -v want="$2" '/^#/ {
        line = $0
        sub(/^# */, "", line)
        gsub(/\[[^]]*\]/, "", line)
        n = split(line, name, " ")
        for (i = 1; i <= n; i++)
            if (name[i] == want) {print i; exit}
    }' "$1"
}

# same WHAT ONE OTHER
same() {
    [ "$2" = "$3" ] || fail "$duty: $1: $2 here, $3 there"
}

# asks COMMAND WORDS...: of engine and duty alone; 0 and 1 are answers.
asks() {
    command=$1
    shift
    "$coldgap" "$command" "$engine" --set duty.name="$duty" \
        --set margin.duties= "$@" \
        >"$work/stdout" 2>"$work/stderr"
    got=$?
    [ "$got" -le 1 ] || fail "$duty: $command $*: exit $got"
}

# The screen but for what tells how it was called.
screen() {
    grep -v -e '^Computed in' -e '^Next:' -e '^Pictures:' -e '^coldgap ' \
        "$work/stdout"
}

ways_of_find() {
    asks find
    screen >"$work/plain"
    asks find -o "$work/out"
    screen | diff -u "$work/plain" - || fail "$duty: find -o tells another"
    asks find -o "$work/odd" --set solver.table_step_s=0.37
    screen | diff -u "$work/plain" - || fail "$duty: the table's step tells"
    for table in out odd; do
        grep -v '^#' "$work/$table/summary.dat" >"$work/$table.keys"
    done
    diff -u "$work/out.keys" "$work/odd.keys" ||
        fail "$duty: summary.dat follows the table's step"
}

# A sweep of one point that changes nothing.
way_of_sweep() {
    rm -rf "$work/sweep"
    asks sweep --vary margin.risk=0.001 -o "$work/sweep" -q
    for name in $(awk '!/^#/ {print $1}' "$work/out/summary.dat"); do
        named=$(awk -v key="$name" '$1 == key {gsub("/", "_", $3)
            print $1 ($3 == 1 || $3 == "word" ? "" : "_" $3)}' "$work/out/summary.dat")
        place=$(column "$work/sweep/sweep.dat" "$named")
        [ -n "$place" ] || fail "$duty: sweep.dat has no $name"
        same "sweep, $name" "$(awk -v i="$place" '!/^#/ {print $i}' \
            "$work/sweep/sweep.dat")" "$(key "$name")"
    done
}

# Every figure of a gap on the page stands on the screen as well.
way_of_page() {
    asks find --report "$work/page.html"
    sed 's/<[^>]*>/ /g' "$work/page.html" >"$work/page"
    [ "$(grep -c 'ring, file to' "$work/plain")" -eq 2 ] ||
        fail "$duty: not two gaps to file to"
    for gap in $(grep 'file to' "$work/plain" | grep -o '[0-9]\.[0-9]*'); do
        grep -q -e "$gap" "$work/page" || fail "$duty: the page lacks $gap"
    done
    for gap in $(grep 'ring, file to' "$work/page" |
                 grep -o '[0-9]\.[0-9]*'); do
        grep -q -e "$gap" "$work/plain" || fail "$duty: only the page has $gap"
    done
}

ways_of_tables() {
    for command in rings seal lesson; do
        asks "$command" -o "$work/$command" -q
    done
    own=$work/own.dat
    table=$work/rings/rings.dat
    place=$(column "$table" own)
    awk -v i="$place" '!/^#/ && $i == 1' "$table" >"$own"
    same "rings, gap" "$(cut -d' ' -f"$(column "$table" cold_gap_mm)" "$own")" \
        "$(key cold_gap_top)"
    same "rings, ring" "$(cut -d' ' -f"$(column "$table" ring_top_C)" "$own")" \
        "$(key ring_top_max)"
    same "seal, second" "$(awk '$1 == "cold_gap_second" {print $2}' \
        "$work/seal/seal.dat")" "$(key cold_gap_second)"
    same "seal, top" "$(awk '$1 == "cold_gap_top_fitted" {print $2}' \
        "$work/seal/seal.dat")" "$(key file_to_top)"
    # The last instant of the lesson's duty is the tightest.
    block "$work/lesson/lesson.dat" duty | tail -n 1 >"$own"
    same "lesson, gap" "$(cut -d' ' -f6 "$own")" "$(key file_to_top)"
    same "lesson, closure" "$(cut -d' ' -f8 "$own")" "$(key closure_top)"
    if [ "$(key tightest_time)" != 0 ]; then
        same "lesson, instant" "$(cut -d' ' -f9 "$own")" "$(key tightest_time)"
        awk -v want="$(key closure_top)" \
            '{exit !($5 - want < 5e-5 && want - $5 < 5e-5)}' "$own" ||
            fail "$duty: lesson closes by $(cut -d' ' -f5 "$own")"
    fi
}

# Gauged at what to file to a ring fits; a filing step less is filed, or too
# small where the model needs more than that.
way_of_sheet() {
    gap=$(key file_to_top)
    bore=$(sed -n 's/.*bore_mm = \([0-9.]*\).*/\1/p' "$engine" | head -n 1)
    less=$(awk -v gap="$gap" 'BEGIN {print gap - 0.01}')
    below=$(awk -v need="$(key cold_gap_top)" -v less="$less" \
        'BEGIN {print (need > less + 1e-9 ? "too_small" : "file")}')
    {
        echo cylinder,bore_mm,top_gap_mm
        echo 1,"$bore,$gap"
        echo 2,"$bore,$less"
    } >"$work/measured.csv"
    asks sheet --measured "$work/measured.csv" -o "$work/sheet" -q
    table=$work/sheet/sheet.dat
    awk -v i="$(column "$table" state)" '!/^#/ && $2 == "top" && $1 < 3 {
        print $i}' "$table" >"$work/states"
    same "sheet at the answer" "$(sed -n 1p "$work/states")" fits
    same "sheet a step below" "$(sed -n 2p "$work/states")" "$below"
    same "sheet, asked" "$(awk -v i="$(column "$table" asked_mm)" \
        '!/^#/ && $1 == 1 && $2 == "top" {print $i}' "$table")" "$gap"
}

# The ceiling of the gap to file to is the boost asked for, or what the rounding
# up to a filing step gives on top: up to it the gap to file to is the same, and
# beyond it is more.
way_of_ceiling() {
    gap=$(key file_to_top)
    asks ceiling --gap "${gap}mm"
    boost=$(tr '\n' ' ' <"$work/stdout" |
        sed -n "s/.*at the config's boost of \([0-9]*\) kPa.*/\1/p")
    [ -n "$boost" ] || fail "$duty: ceiling does not name the config's boost"
    flat=$(tr -s " \n" " " <"$work/stdout")
    case $flat in *" and more"* | *"end of the shop rule"*) return 0 ;; esac
    top=$(echo "$flat" | sed -n 's/.*the gap stands \([0-9]*\) kPa.*/\1/p')
    [ -n "$top" ] ||
        top=$(sed -n 's/^Ceiling, boost  *\([0-9]*\) kPa.*/\1/p' "$work/stdout")
    [ -n "$top" ] || { fail "$duty: no ceiling"; return 0; }
    case $flat in
    *"does not rise all the way with boost"*) ;; # the lowest crossing
    *) [ "$top" -ge "$boost" ] ||
        fail "$duty: the gap answered for $boost kPa stands $top" ;;
    esac
    for at in "$top" "$((top + 2))"; do
        "$coldgap" find "$engine" --set duty.name="$duty" \
            --set margin.duties= --set charge.boost_kPa="$at" \
            -o "$work/at" -q >/dev/null 2>&1
        awk '$1 == "file_to_top" {print $2}' "$work/at/summary.dat"
    done >"$work/gaps"
    awk -v gap="$gap" 'NR == 1 && $1 > gap + 1e-9 {bad = 1}
                       NR == 2 && $1 < gap + 1e-9 {bad = 1}
                       END {exit bad || NR != 2}' "$work/gaps" ||
        fail "$duty: ceiling $top of $gap mm, where find asks" \
            "$(tr '\n' ' ' <"$work/gaps")"
}

own_duty=$(sed -n 's/^duty *= *{ *name *= *"\([a-z_]*\)".*/\1/p' "$engine")
: "${own_duty:=dyno_pull}"
# Evidence is weighed anew in every run, and takes seconds: two duties of it.
only=
[ "$3" = taught_four ] && only="$own_duty cold_start_abuse"
for duty in ${only:-$(duties_for "$configs" "$engine")}; do
    ways_of_find
    way_of_sweep
    way_of_page
    way_of_sheet
    # what takes longest: of the engine's own duty, and of the one that is
    # most often the hardest
    case $duty in
    "$own_duty" | cold_start_abuse | cold_start_air) ;;
    *) continue ;;
    esac
    ways_of_tables
    case $3 in plain_four) ;; *) way_of_ceiling ;; esac
done
finish
