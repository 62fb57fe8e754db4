#!/bin/sh
# What coldgap does on good usage: help, version, template; and on a full
# disk, which only the exit status and stderr can tell.
#
#   run_usage.sh COLDGAP
set -u
coldgap=$1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
failed=0

# expect STATUS WORDS...: runs coldgap, keeps stdout and stderr.
expect() {
    want=$1
    shift
    "$coldgap" "$@" >"$work/stdout" 2>"$work/stderr"
    got=$?
    if [ "$got" -ne "$want" ]; then
        echo "coldgap $*: exit $got, expected $want"
        cat "$work/stderr"
        failed=$((failed + 1))
    fi
}

# says FILE TEXT: the text must be in what was kept.
says() {
    if ! grep -q -e "$2" "$work/$1"; then
        echo "$1 does not say: $2"
        failed=$((failed + 1))
    fi
}

quiet() {
    if [ -s "$work/$1" ]; then
        echo "$1 should be empty:"
        cat "$work/$1"
        failed=$((failed + 1))
    fi
}

expect 0 --version
says stdout '^coldgap [0-9]'
quiet stderr

expect 0 --help
commands=$(sed -n '/^Commands/,/^$/s/^  \([a-z]*\) .*/\1/p' "$work/stdout")
for command in --help $commands; do
    if [ "$command" = --help ]; then
        expect 0 --help
    else
        expect 0 "$command" --help
    fi
    says stdout '^Usage'
    says stdout 'an estimate, not a warranty'
    says stdout "maker gives a larger minimum gap"
    says stdout 'Measure the gap in the honed bore'
    says stdout 'eye and dust protection'
    says stdout 'Local codes and qualified practice come first'
    quiet stderr
    longest=$(awk '{ if (length > n) n = length } END { print n }' \
        "$work/stdout")
    if [ "$longest" -gt 80 ]; then
        echo "$command: a line of $longest letters in the help"
        failed=$((failed + 1))
    fi
done
[ -n "$commands" ] || failed=$((failed + 1))

expect 0 template
says stdout '^engine = {'
quiet stderr

if [ -w /dev/full ]; then
    for words in --help --version template "find --help"; do
        # shellcheck disable=SC2086
        "$coldgap" $words >/dev/full 2>"$work/stderr"
        got=$?
        if [ "$got" -ne 4 ]; then
            echo "coldgap $words >/dev/full: exit $got, expected 4"
            failed=$((failed + 1))
        fi
        says stderr '^coldgap: cannot write'
    done
fi

# Shipped configs that are not where the environment says.
cat >"$work/good.cfg" <<'CFG'
engine = { bore_mm = 86.0; stroke_mm = 86.0; speed_rpm = 6500; };
CFG
COLDGAP_CONFIGS="$work/none"
export COLDGAP_CONFIGS
expect 4 find "$work/good.cfg"
says stderr 'cannot open the shipped configs'

echo "$failed failed"
[ "$failed" -eq 0 ]
