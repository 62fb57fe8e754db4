# Contrast of letters on their ground (WCAG 2.1, sec. 1.4.3): 4.5 or more, in
# both colour schemes of a page; and of rules against the paper, 3 or more
# (sec. 1.4.11).     awk -f contrast.awk PAGE.html
function hex(digits) { return 16 * index(all, substr(digits, 1, 1)) + index(all, substr(digits, 2, 1)) - 17 }
function linear(value) { value /= 255; return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ^ 2.4 }
function light(colour) {
    return 0.2126 * linear(hex(substr(colour, 2, 2))) + 0.7152 * linear(hex(substr(colour, 4, 2))) + 0.0722 * linear(hex(substr(colour, 6, 2)))
}
function ratio(one, other,    a, b) {
    a = light(one) + 0.05; b = light(other) + 0.05
    return a > b ? a / b : b / a
}
function hold(one, other, least) {
    checked++
    if (!(one in colour) || !(other in colour)) { print "no colour " one " or " other; return }
    if (ratio(colour[one], colour[other]) < least)
        printf "scheme %d: %s on %s has %.2f, less than %g\n", scheme, one, other, ratio(colour[one], colour[other]), least
}
BEGIN { all = "0123456789abcdef" }
/--paper:/ {
    scheme++
    line = $0
    while (match(line, /--[a-z-]*:#[0-9a-f]+/)) {
        split(substr(line, RSTART, RLENGTH), pair, ":")
        colour[pair[1]] = pair[2]
        line = substr(line, RSTART + RLENGTH)
    }
    hold("--ink", "--paper", 4.5); hold("--faint", "--paper", 4.5)
    hold("--ink", "--band", 4.5); hold("--caution-ink", "--caution", 4.5)
    hold("--good-ink", "--good", 4.5); hold("--bad-ink", "--bad", 4.5)
    hold("--rule", "--paper", 3)
}
END { if (checked < 14) print "only " checked + 0 " pairs" }
