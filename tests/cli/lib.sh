# Shared by the drivers here: a scratch folder, counting failures, skipping.
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
failed=0
unset COLDGAP_CONFIGS

fail() {
    echo "FAILED: $*"
    failed=$((failed + 1))
}

# skip WHY: status 77 tells CTest that the test was left out.
skip() {
    echo "skipped: $*"
    exit 77
}

finish() {
    echo "$failed failed"
    [ "$failed" -eq 0 ]
    exit
}

# expect STATUS WORDS...: runs the words, keeps stdout and stderr.
expect() {
    want=$1
    shift
    "$@" >"$work/stdout" 2>"$work/stderr"
    got=$?
    if [ "$got" -ne "$want" ]; then
        fail "$*: exit $got, expected $want"
        cat "$work/stderr"
    fi
}

# says FILE TEXT
says() {
    grep -q -e "$2" "$work/$1" || fail "$1 does not say: $2"
}

# same WHAT GOT WANT: the same words, and not none at all.
same() {
    [ -n "$2" ] && [ "$2" = "$3" ] || fail "$1: '$2', expected '$3'"
}

# of FILE KEY: a value of a table of keys; of builds.dat, that of then.
of() {
    awk -v key="$2" '$1 == key {print $2}' "$1"
}

# shown FILE LABEL: the figure in mm behind a label that begins a line.
shown() {
    sed -n "s/^$2,* file to  *\([0-9.]*\) mm.*/\1/p" "$1" | head -n 1
}

# flat: the words of stdin, whatever the lines.
flat() {
    tr -s ' \n' ' '
}

# block FILE NAME: the rows of one block of a table.
block() {
    awk -v want="$2" '/^# block: /{on = ($0 == "# block: " want); next}
                      on && NF && !/^#/' "$1"
}

# near A B MICROMETRES: whether two lengths in mm are so near.
near() {
    awk -v a="$1" -v b="$2" -v most="$3" \
        'BEGIN { d = 1000 * (a - b); exit !(d <= most && d >= -most) }'
}

# duties_for CONFIGS ENGINE: the shipped duties that the engine allows: none with
# a coolant where air cools, none with a share of the air where coolant does, none
# with nitrous on where it has none, none that knocks for a diesel.
duties_for() {
    other=air_pct
    grep -q 'medium = "air"' "$2" && other=coolant_
    grep -q '^nitrous' "$2" || other="$other\|nitrous ="
    grep -q 'ignition = "compression"' "$2" && other="$other\|knock_heat"
    for file in "$1"/duties/*.cfg; do
        grep -q "$other" "$file" || basename -s .cfg "$file"
    done
}
