#!/bin/sh
# The completion script for zsh: that zsh can read it, and its tables.
#
#   run_zsh.sh COLDGAP SOURCES BUILD
set -u
coldgap=$1
script=$3/src/install/_coldgap
. "$(dirname "$0")/lib.sh"
command -v zsh >/dev/null 2>&1 || skip "zsh not installed"

zsh -n "$script" || fail "zsh cannot read the completion"
# All but the last line, which would complete at once.
sed '/^_coldgap "\$@"$/d' "$script" >"$work/tables.zsh"
for command in $("$coldgap" --help |
    sed -n '/^Commands/,/^$/s/^  \([a-z]*\) .*/\1/p'); do
    "$coldgap" "$command" --help |
        sed -n '/^Options/,/^$/s/^ *\(-., \)\{0,1\}\(--[a-z]*\).*/\2/p' >"$work/want"
    zsh -f -c '. "$1"; _coldgap_options $2' - "$work/tables.zsh" "$command" |
        sed -n 's/^\(--[a-z]*\):.*/\1/p' >"$work/got"
    diff "$work/want" "$work/got" || fail "options of $command"
done
finish
