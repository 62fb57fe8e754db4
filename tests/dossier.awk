# The dossier's parts, for dossier.sh; `part` says which.
#
# left:   a suite's raw rows -> how many count, or what went wrong
# rows:   the suites' raw rows -> subject, check, what, kind, source, expected,
#         got, allowed (or_less, or_more: a limit of one side), verdict, points,
#         use (checked, or calibrated: the program was set by it)
# counts: those -> the tables for tests/README.md: by kind, by subject
# line:   those -> the sentence for README.md
# text:   those -> the table for a screen

BEGIN {
    FS = OFS = "\t"
    kinds = split("measured printed mathematics solver memory practice",
                  kind_name, " ")
    title["measured"] = "measured by others"
    title["printed"] = "printed data and worked examples"
    title["mathematics"] = "mathematics"
    title["solver"] = "other solvers"
    title["memory"] = "from memory"
    title["practice"] = "common practice"
}

# The kind, by the source's own words: the weakest mark counts.
function kind_of(source) {
    if (source ~ /no source|common practice/) return "practice"
    if (source ~ /from memory/) return "memory"
    if (source ~ /GNU Scientific Library|CVODE|CalculiX|ngspice/)
        return "solver"
    if (source ~ /by the formula|derived|by hand|definition|evaluated|integrated|[Ll]aw$/)
        return "mathematics"
    if (source ~ /^(calibrated on: )?measured /) return "measured"
    if (names_a_work(source)) return "printed"
    return "mathematics"
}

function use_of(source) {
    return source ~ /^calibrated on: / ? "calibrated" : "checked"
}

function names_a_work(source) {
    return source ~ /(^|[^0-9])(1[89]|20)[0-9][0-9]([^0-9]|$)/ ||
        source ~ /[a-z]\.(com|jp)([^a-z_]|$)|course notes|teaching notes|data sheet/ ||
        source ~ /Incropera|Timoshenko|Basshuysen|EN 10088|ASTM/ ||
        source ~ /GNU Scientific|CVODE|CalculiX|ngspice/
}

function subject_of(file) {
    sub(/^(outside|test|peer|run)_/, "", file)
    sub(/\.[a-z]+$/, "", file)
    gsub(/_/, " ", file)
    return file
}

function is_foreign(file) {
    return file ~ /^(outside|peer)_/
}

# Whether a row is of something from outside: a suite of the program itself
# lends only what names someone else's work.
function counts(file, source) {
    return is_foreign(file) || names_a_work(source)
}

# How far a row is off, by what is allowed; a limit of one side: how near.
function how_far(form, expected, got, allowed) {
    miss = form == "least" ? expected - got : got - expected
    if (form == "least" || form == "most")
        return expected == 0 ? 0 : 2 + miss / (expected < 0 ? -expected : expected)
    if (miss < 0) miss = -miss
    return allowed > 0 ? miss / allowed : 0
}

part == "left" {
    ended = $1 == "end"
    if (ended) failed = $2
    else if (counts($1, $5)) left++
}

# Of a loop over one thing the worst point stands for all.
part == "rows" {
    if ($1 == "end" || !counts($1, $5)) next
    kind = kind_of($5)
    # a work named beside the program's own logic lends a formula
    if (!is_foreign($1) && kind == "printed") kind = "mathematics"
    test = $2
    sub(/_fn$/, "", test)
    gsub(/_/, " ", test)
    loop = $1 OFS test OFS $4 OFS $5
    points[loop]++
    # NaN is never within; MISSED outweighs all
    far = $9 == "MISSED" ? 1e300 : how_far($3, $6, $7, $8)
    if (!(loop in worst) || far > worst[loop]) {
        worst[loop] = far
        allowed = $3 == "most" ? "or_less" : $3 == "least" ? "or_more" : $8
        row[loop] = subject_of($1) OFS test OFS $4 OFS kind OFS $5 OFS $6 \
            OFS $7 OFS allowed OFS $9
        use[loop] = use_of($5)
    }
}

part == "counts" || part == "line" {
    everything++
    if ($9 == "MISSED") missed++
    if ($11 == "calibrated") {
        calibrated[$4]++
        used++
        next
    }
    if (!($1 in total)) subject[++subjects] = $1
    total[$1]++
    count[$1, $4]++
    all[$4]++
    checked++
}

part == "text" {
    if ($1 != last_subject) printf "\n%s\n", toupper($1)
    if ($1 != last_subject || $5 != last_source)
        printf "  %s: %s\n", title[$4], $5
    last_subject = $1
    last_source = $5
    what = $2 ": " $3
    if (length(what) > 64) what = substr(what, 1, 61) "..."
    printf "    %-64s %11s %11s %10.3g %10s %s%s\n", what, $6, $7, $7 - $6,
        ($8 ~ /^or_/ ? $8 : sprintf("%.3g", $8)), $9,
        ($10 > 1 ? " worst of " $10 : "")
}

END {
    if (part == "left" && !ended) print "did not come to its end"
    else if (part == "left" && failed) print failed " of its tests failed"
    else if (part == "left") print left + 0
    if (part == "rows")
        for (loop in row) print row[loop], points[loop], use[loop]
    if (part == "counts") {
        print "| kind | checked against | calibrated on |"
        print "|---|---|---|"
        for (k = 1; k <= kinds; k++)
            printf "| %s | %d | %d |\n", title[kind_name[k]],
                all[kind_name[k]], calibrated[kind_name[k]]
        printf "| **all** | %d | %d |\n\n", checked, used
        printf "%d hold, %d missed.  What is checked against, by subject:\n\n",
            everything - missed, missed
        print "| subject | measured | printed | mathematics | solver | memory | practice |"
        print "|---|---|---|---|---|---|---|"
        for (i = 1; i <= subjects; i++) {
            printf "| %s |", subject[i]
            for (k = 1; k <= kinds; k++)
                printf " %d |", count[subject[i], kind_name[k]]
            printf "\n"
        }
    }
    if (part == "line")
        printf "Of its [checks](tests/README.md) %d %s against what others measured, %d against " \
            "printed data and worked examples, %d against mathematics, %d " \
            "against other solvers, %d are from memory and %d of common " \
            "practice; %d more are what it is calibrated on.\n",
            all["measured"], (all["measured"] == 1 ? "is" : "are"),
            all["printed"], all["mathematics"], all["solver"], all["memory"],
            all["practice"], used
}
