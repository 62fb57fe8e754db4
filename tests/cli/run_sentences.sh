#!/bin/sh
# A sentence stands once: no string of six words or more in two files of src/.
#
#   run_sentences.sh COLDGAP SOURCES
set -u
sources=$2
. "$(dirname "$0")/lib.sh"
command -v python3 >/dev/null 2>&1 || skip "python3 not installed"

cat >"$work/twice.py" <<'PYTHON'
import collections
import glob
import re

LITERAL = r'"(?:[^"\\\n]|\\.)*"'
# comments and characters pass, so that their quotes do not count
TOKEN = re.compile(r"(?s)/\*.*?\*/|//[^\n]*|'(?:[^'\\]|\\.)+'|"
                   r"#include[^\n]*|((?:%s\s*)+)" % LITERAL)
places = collections.defaultdict(set)
count = 0
for path in sorted(glob.glob("src/*.[ch]") + glob.glob("src/*/*.[ch]")):
    for found in TOKEN.finditer(open(path, encoding="utf-8").read()):
        if found.group(1) is None:
            continue
        text = "".join(part[1:-1]
                       for part in re.findall(LITERAL, found.group(1)))
        words = text.replace("\\n", " ").split()
        if sum(bool(re.match(r"\W*[A-Za-z]", w)) for w in words
               if "%" not in w) >= 6:
            count += 1
            places[" ".join(words)].add(path)
for text, files in places.items():
    if len(files) > 1:
        print("%s: %s" % (" ".join(sorted(files)), text))
if count < 300:
    print("only %d sentences seen" % count)
PYTHON
cd "$sources" || exit 1
python3 "$work/twice.py" >"$work/twice" 2>&1
[ -s "$work/twice" ] && fail "$(cat "$work/twice")"
finish
