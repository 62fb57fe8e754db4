# Works every line of a lesson out as a pocket calculator does, from the printed
# text alone:
#
#     NAME = formula             growth = arc x expansion x rise / 1000000
#          = numbers = result           = 271.75 mm x 12.20 x 159 C / ...
#     NAME = numbers = result
#
# - numbers from left to right are the result to its last digit;
# - so they are on a calculator of eight digits that cuts off the rest, within
#   one of the last digit;
# - formula and numbers have the same operators, plain numbers of the formula
#   stand in the numbers too, and a name worked out before stands there with the
#   result it had;
# - in the duty's lines ring less bore is the closure.
#
# Prints what does not hold, then the count of lines worked out.

function wrong(text) { print "line " NR ": " text ": " $0; bad++ }
function abs(x) { return x < 0 ? -x : x }

# A pocket calculator's display: eight digits, the rest cut off.
function cut(x,    whole, scale, value) {
    value = abs(x)
    if (value >= 100000000) { wrong("more than eight digits"); return x }
    whole = length(sprintf("%d", value))
    scale = 10 ^ (8 - whole)
    value = int(value * scale + 1e-6) / scale
    return x < 0 ? -value : value
}

function apply(left, operator, right) {
    if (operator == "x") return left * right
    if (operator == "/") {
        if (right == 0) { wrong("divided by nothing"); return 0 }
        return left / right
    }
    return operator == "+" ? left + right : left - right
}

function is_number(word) { return word ~ /^-?[0-9]+(\.[0-9]+)?$/ }

# One unit of the last digit shown.
function last_digit(word,    dot) {
    dot = index(word, ".")
    return dot == 0 ? 1 : 10 ^ (dot - length(word))
}

# Splits "a x b / c" into parts[] and operators[]; returns how many parts.
function split_formula(text, parts, operators,    word, words, i, n) {
    words = split(text, word, " ")
    n = 1
    parts[1] = ""
    for (i = 1; i <= words; i++)
        if (word[i] ~ /^[x\/+-]$/) { operators[n++] = word[i]; parts[n] = "" }
        else parts[n] = parts[n] (parts[n] == "" ? "" : " ") word[i]
    return n
}

# The number that a part begins with, and no second one.
function number_of(part,    word, words, i) {
    words = split(part, word, " ")
    if (!is_number(word[1])) { wrong("no number: " part); return 0 }
    for (i = 2; i <= words; i++)
        if (is_number(word[i])) wrong("two numbers: " part)
    if (length(word[1]) - (word[1] ~ /\./) - (word[1] ~ /^-/) > 8)
        wrong("a number of more than eight digits")
    number[++numbers] = word[1]
    return word[1] + 0
}

function work_out(text, shown,    n, i, exact, pocket, kind, value, root) {
    root = sub(/^sqrt /, "", text)
    numbers = 0
    n = split_formula(text, parts, operators)
    exact = pocket = number_of(parts[1])
    kind = ""
    for (i = 1; i < n; i++) {
        value = number_of(parts[i + 1])
        kind = kind (operators[i] ~ /[x\/]/ ? "p" : "s")
        exact = apply(exact, operators[i], value)
        pocket = cut(apply(pocket, operators[i], value))
    }
    if (kind ~ /p/ && kind ~ /s/) wrong("x and + in one line")
    if (root) { exact = sqrt(exact); pocket = cut(sqrt(pocket)) }
    if (n == 1 && !root) wrong("nothing to work out")
    if (abs(exact - shown) > last_digit(shown) * (0.5 + 1e-6))
        wrong("is " exact)
    if (abs(pocket - shown) > last_digit(shown) * (1 + 1e-6))
        wrong("on eight digits is " pocket)
    worked++
    return n
}

# The formula of the line before against the numbers of this one.
function compare(formula, n,    m, i, root) {
    root = sub(/^sqrt /, "", formula)
    m = split_formula(formula, names, symbols)
    if (m != n) { wrong("formula of " m ", numbers of " n); return }
    for (i = 1; i <= n; i++) {
        if (i < n && symbols[i] != operators[i]) wrong("another operator")
        if (is_number(names[i]) && names[i] != number[i])
            wrong("formula has " names[i])
        if (names[i] in result && result[names[i]] != number[i])
            wrong(names[i] " was " result[names[i]])
    }
}

/ = / {
    fields = split($0, field, / = /)
    numeric = field[fields]
    sub(/ .*/, "", numeric)
    if (fields == 2) { formula = field[2]; name = field[1]; sub(/^ +/, "", name)
                       formula_line = NR; next }
    if (fields != 3 || !is_number(numeric)) { wrong("cannot be read"); next }
    n = work_out(field[2], numeric)
    if (field[1] ~ /^ *$/) {
        if (formula_line != NR - 1) wrong("no formula above")
        compare(formula, n)
        result[name] = numeric
    }
    next
}
/^ +Time,? .*Speed/ { rows = 1; next }
rows && NF == 8 && !is_number($1) { next } # the units
rows && NF == 8 {
    if (abs($6 - $7 - $8) > last_digit($8) * 1e-6) wrong("ring less bore")
    duty++
    next
}
{ rows = 0 }
/nan|inf / { wrong("no number") }
END {
    if (duty != 5 && !quiet) { print duty + 0 " lines of the duty"; bad++ }
    print worked + 0 " lines worked out"
    exit bad > 0
}
