# The floating constants of a C file, outside comments and texts.
#
#   awk -f literals.awk FILE                 a line each: number, line, literal
#   awk -f literals.awk -v scale=K FILE      the file with number K 5 % larger
#
# 0.0, 0.5, 1.0 and 2.0 are no constants but arithmetic.

function digit(c) { return c ~ /[0-9]/ }

{
    line = $0
    out = ""
    while (line != "") {
        if (comment) {
            at = index(line, "*/")
            if (!at) { out = out line; line = ""; break }
            out = out substr(line, 1, at + 1)
            line = substr(line, at + 2)
            comment = 0
        } else if (substr(line, 1, 2) == "/*") {
            out = out "/*"
            line = substr(line, 3)
            comment = 1
        } else if (match(line, /^"([^"\\]|\\.)*"/) ||
                   match(line, /^[A-Za-z_][A-Za-z_0-9]*/)) {
            out = out substr(line, 1, RLENGTH)
            line = substr(line, RLENGTH + 1)
        } else if (match(line, /^([0-9]+\.[0-9]*|\.[0-9]+)([eE][-+]?[0-9]+)?/) ||
                   match(line, /^[0-9]+[eE][-+]?[0-9]+/)) {
            literal = substr(line, 1, RLENGTH)
            line = substr(line, RLENGTH + 1)
            if (literal !~ /^(0\.0|0\.5|1\.0|2\.0)$/) {
                count++
                if (scale == "")
                    print count, FNR, literal
                else if (count == scale)
                    literal = "(1.05 * " literal ")"
            }
            out = out literal
        } else {
            out = out substr(line, 1, 1)
            line = substr(line, 2)
        }
    }
    if (scale != "")
        print out
}
