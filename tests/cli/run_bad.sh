#!/bin/sh
# Runs coldgap on every bad input of a folder and compares what it says.
#
#   run_bad.sh COLDGAP FOLDER [--write]
#
# NAME.expect: the exit status in its first line ("exit 2"), then the exact
# text of stderr.  NAME.args: the words of the command line; without it they
# are "find NAME.cfg".  stdout must stay empty.  --write stores what coldgap
# says now, to be read before it is kept.
set -u
coldgap=$1
folder=$2
write=${3:-}
unset COLDGAP_CONFIGS
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
cd "$folder" || exit 1

count=0
failed=0
for name in $(ls | sed -n 's/\.cfg$//p; s/\.args$//p' | sort -u); do
    words="find $name.cfg"
    [ -f "$name.args" ] && words=$(cat "$name.args")
    # shellcheck disable=SC2086
    timeout 60 "$coldgap" $words >"$work/stdout" 2>"$work/stderr"
    echo "exit $?" >"$work/got"
    cat "$work/stderr" >>"$work/got"
    count=$((count + 1))
    if [ -s "$work/stdout" ]; then
        echo "$name: stdout is not empty"
        failed=$((failed + 1))
    fi
    if [ "$write" = --write ]; then
        cp "$work/got" "$name.expect"
    elif ! diff -u "$name.expect" "$work/got"; then
        echo "$name: not as expected"
        failed=$((failed + 1))
    fi
done
echo "$count bad inputs, $failed failed"
[ "$count" -ge 30 ] && [ "$failed" -eq 0 ]
