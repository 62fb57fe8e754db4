#!/bin/sh
# The manual pages and the completion for bash: that they know every command,
# option and setting, and work.
#
#   run_pages.sh COLDGAP SOURCES BUILD
set -u
coldgap=$1
sources=$2
pages=$3/src/install
. "$(dirname "$0")/lib.sh"

# What the program itself says it knows.
"$coldgap" --help >"$work/help"
commands=$(sed -n '/^Commands/,/^$/s/^  \([a-z]*\) .*/\1/p' "$work/help")
options=$(sed -n '/^Options/,/^$/s/.*\(--[a-z]*\).*/\1/p' "$work/help")
"$coldgap" template | sed -n 's/^ *#\{0,1\}\([a-zA-Z0-9_]*\) = [^{].*/\1/p' |
    sort -u >"$work/keys"
[ "$(echo "$commands" | wc -w)" -gt 4 ] || fail "commands: $commands"
[ "$(echo "$options" | wc -w)" -gt 8 ] || fail "options: $options"
[ "$(wc -l <"$work/keys")" -gt 60 ] || fail "too few settings seen"

# The pages as they are read: without overstrikes and hyphens of the page.
read_page() {
    groff -man -Tascii -P-c -P-b -P-u -rHY=0 -rLL=200n "$1"
}

if command -v groff >/dev/null 2>&1; then
    for page in coldgap.1 coldgap.cfg.5; do
        groff -man -ww -z "$pages/$page" 2>"$work/stderr"
        [ -s "$work/stderr" ] && fail "$page: $(head -n 3 "$work/stderr")"
        read_page "$pages/$page" >"$work/$page"
    done
    for command in $commands; do
        grep -q "^  *$command\( CONFIG\)\{0,1\}\$" "$work/coldgap.1" ||
            fail "coldgap.1 does not tell $command"
    done
    for option in $options; do
        grep -q "^  *\(-[a-z], \)\{0,1\}$option\( \|\$\)" "$work/coldgap.1" ||
            fail "coldgap.1 does not tell $option"
    done
    while read -r key; do
        grep -q "^  *[a-z.]*\.$key\$" "$work/coldgap.cfg.5" ||
            fail "coldgap.cfg.5 does not tell $key"
    done <"$work/keys"
    for text in 'not a warranty' NO_COLOR COLDGAP_CONFIGS 'EXIT STATUS'; do
        says coldgap.1 "$text"
    done
else
    echo "left out: groff not installed"
fi

# bash: a line as bash hands it over, against what must be offered.
command -v bash >/dev/null 2>&1 || skip "bash not installed"
cat >"$work/try.bash" <<'BASH'
source "$1"
shift
COMP_WORDS=("$@")
COMP_CWORD=$(($# - 1))
_coldgap
printf '%s\n' "${COMPREPLY[@]}"
BASH

# offers WHAT WORDS...: the last word is the one being typed.
offers() {
    what=$1
    shift
    (cd "$sources/configs" && bash "$work/try.bash" \
        "$pages/coldgap.bash" "$@") >"$work/offered" 2>"$work/stderr"
    [ -s "$work/stderr" ] && fail "completion: $(cat "$work/stderr")"
    got=$(tr '\n' ' ' <"$work/offered" | sed 's/ *$//')
    [ "$got" = "$what" ] || fail "$*: offered \"$got\", expected \"$what\""
}
bash -n "$pages/coldgap.bash" || fail "bash cannot read the completion"
offers "$(echo $commands) --help --version" coldgap ''
offers sweep coldgap sw
offers --units coldgap find --un
for command in $commands; do
    own=$("$coldgap" "$command" --help |
        sed -n '/^Options/,/^$/s/^ *\(-., \)\{0,1\}\(--[a-z]*\).*/\2/p')
    offers "$(echo $own)" coldgap "$command" --
done
offers "metric inch" coldgap find --units ''
offers inch coldgap find --units=in
offers inch coldgap find --units = in
offers 'charge.boost_time_s= charge.boost_time_min= charge.boost_time_h=' \
    coldgap find --set charge.boost_t
offers 'parent pressed' coldgap find --set bore.seat = p
offers 'parent pressed' coldgap sweep x.cfg --vary bore.seat=p
offers 'true false' coldgap find --set piston.oil_jet = ''
offers example.cfg coldgap find exa
offers engines/iron_six.cfg coldgap find engines/ir
offers materials coldgap find -o mat
offers '' coldgap find --seed ''
offers '' coldgap template ''
bash "$work/try.bash" "$pages/coldgap.bash" coldgap find --set '' |
    sed 's/=$//' >"$work/offered"
while read -r key; do
    grep -q "\.$key\$" "$work/offered" || fail "--set: $key is not offered"
done <"$work/keys"

[ "$failed" -eq 0 ] || finish
command -v groff >/dev/null 2>&1 || skip "groff not installed; bash passed"
finish
