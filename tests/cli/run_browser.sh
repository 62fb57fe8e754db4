#!/bin/sh
# Report pages in a real browser: nothing on its console, no script, nothing
# asked of the network, and a phone's width holds the page.
#
#   run_browser.sh COLDGAP SOURCES
set -u
coldgap=$1
sources=$2
. "$(dirname "$0")/lib.sh"
browser=$(command -v chromium || command -v chromium-browser ||
          command -v google-chrome || command -v chromium-headless-shell) || skip "no Chromium installed"
engine=$sources/configs/engines/iron_six.cfg

# browse NAME WORDS...: what the browser says goes to NAME.log.
browse() {
    name=$1
    shift
    timeout 120 "$browser" --headless --no-sandbox --disable-gpu \
        --disable-quic --no-first-run --disable-background-networking \
        --disable-component-update --disable-sync --disable-extensions \
        --user-data-dir="$work/profile" --enable-logging=stderr \
        "$@" >"$work/$name.out" 2>"$work/$name.log"
}

echo '<p>empty</p><script>console.error("seen")</script>' >"$work/probe.html"
browse probe --dump-dom "file://$work/probe.html" ||
    skip "the browser does not start here"
grep -q 'CONSOLE.*seen' "$work/probe.log" ||
    skip "the browser's console is not heard"

expect 0 "$coldgap" find "$engine" -q --report "$work/find.html"
expect 1 "$coldgap" sheet "$engine" -q --report "$work/sheet.html" \
    --measured "$sources/configs/measured/iron_six.csv"
expect 0 "$coldgap" sweep "$engine" -q -o "$work/out" \
    --vary charge.boost_kPa=0:200:100 --report "$work/sweep.html"
expect 0 "$coldgap" finish "$engine" -q --simulate plateau \
    --report "$work/finish.html"
expect 0 "$coldgap" seal "$engine" -q --report "$work/seal.html"
expect 0 "$coldgap" rings "$engine" -q --report "$work/rings.html"
expect 0 "$coldgap" card "$engine" -q --report "$work/card.html"
expect 0 "$coldgap" ladder "$engine" -q --report "$work/ladder.html" \
    --duty settled --to 180kPa
expect 0 "$coldgap" lesson "$engine" -q --answers \
    --report "$work/lesson.html"
for page in find card sheet sweep finish seal rings ladder lesson; do
    browse $page --dump-dom "file://$work/$page.html" ||
        fail "$page.html: the browser fails"
    grep -q '<h1>' "$work/$page.out" || fail "$page.html is not read"
    if grep CONSOLE "$work/$page.log"; then
        fail "$page.html: a word on the console"
    fi
    # What is wider than a phone must scroll in its own box.
    cat >"$work/frame.html" <<FRAME
<iframe id="f" src="$page.html" width="360" height="700"></iframe>
<script>onload = () => { const d = document.getElementById("f")
  .contentDocument.documentElement; document.title =
  "width " + d.scrollWidth + " of " + d.clientWidth }</script>
FRAME
    browse frame --allow-file-access-from-files --dump-dom \
        "file://$work/frame.html"
    width=$(sed -n 's/.*<title>width \([0-9]*\) of \([0-9]*\).*/\1 \2/p' \
        "$work/frame.out")
    [ -n "$width" ] && [ "${width% *}" -le "${width#* }" ] ||
        fail "$page.html on a phone: $width"
    browse print --print-to-pdf="$work/$page.pdf" --no-pdf-header-footer \
        "file://$work/$page.html"
    head -c 5 "$work/$page.pdf" 2>/dev/null | grep -q '%PDF-' ||
        fail "$page.html does not print"
    # The card goes on a wall: one sheet.
    [ $page = card ] || continue
    if ! command -v pdfinfo >/dev/null 2>&1; then
        echo "pdfinfo not installed: the card's sheets are not counted"
    elif ! pdfinfo "$work/card.pdf" | grep -q '^Pages: *1$'; then
        fail "the card is more than one sheet"
    fi
done
finish
