# The dossier's parts, for dossier.sh; `part` says which.
#
# left:   a suite's raw rows -> how many count, or what went wrong
# rows:   the suites' raw rows -> subject, check, what, kind, source, expected,
#         got, allowed (or_less, or_more: a limit of one side), verdict, points
# counts: those -> a table for the README, a line a subject
# text:   those -> the table for a screen

BEGIN {
    FS = OFS = "\t"
    kinds = split("published derived memory practice solver", kind_name, " ")
}

# The kind, by the source's own words: the weakest mark counts.
function kind_of(source) {
    if (source ~ /no source|common practice/) return "practice"
    if (source ~ /from memory/) return "memory"
    if (source ~ /GNU Scientific Library|CVODE|CalculiX|ngspice/)
        return "solver"
    if (source ~ /derived|by hand|definition|evaluated|integrated|[Ll]aw$/)
        return "derived"
    if (names_a_work(source)) return "published"
    return "derived"
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

# Whether a row is of something from outside.
function counts(file, source) {
    return is_foreign(file) || names_a_work(source) ||
        kind_of(source) ~ /memory|practice/
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

part == "rows" {
    if ($1 == "end" || !counts($1, $5)) next
    foreign = is_foreign($1)
    kind = kind_of($5)
    # a work named beside the program's own logic lends a formula
    if (!foreign && kind == "published" && $5 !~ /measured/) kind = "derived"
    test = $2
    sub(/_fn$/, "", test)
    gsub(/_/, " ", test)
    loop = $1 OFS test OFS $4 OFS $5
    shown[loop] = foreign || kind != "derived" ? 100 : 1
    allowed = $3 == "most" ? "or_less" : $3 == "least" ? "or_more" : $8
    point = loop OFS $6 OFS allowed
    # NaN is never within; MISSED outweighs all
    far = $9 == "MISSED" ? 1e300 : how_far($3, $6, $7, $8)
    if (!(point in worst)) {
        of_loop[point] = loop
        points[loop]++
    }
    if (!(point in worst) || far > worst[point]) {
        worst[point] = far
        row[point] = subject_of($1) OFS test OFS $4 OFS kind OFS $5 OFS $6 \
            OFS $7 OFS allowed OFS $9
    }
    if (!(loop in worst_of_loop) || far > worst_of_loop[loop]) {
        worst_of_loop[loop] = far
        row_of_loop[loop] = row[point]
    }
}

part == "counts" {
    if (!($1 in total)) subject[++subjects] = $1
    total[$1]++
    count[$1, $4]++
    all[$4]++
    everything++
    if ($9 == "MISSED") missed++
}

part == "text" {
    if ($1 != last_subject) printf "\n%s\n", toupper($1)
    if ($1 != last_subject || $5 != last_source)
        printf "  %s: %s\n", $4, $5
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
    if (part == "rows") {
        for (point in row)
            if (points[of_loop[point]] <= shown[of_loop[point]])
                print row[point], 1
        for (loop in points)
            if (points[loop] > shown[loop])
                print row_of_loop[loop], points[loop]
    }
    if (part == "counts") {
        print "| subject | published | derived | from memory | common practice | other solver | all |"
        print "|---|---|---|---|---|---|---|"
        for (i = 1; i <= subjects; i++) {
            printf "| %s |", subject[i]
            for (k = 1; k <= kinds; k++)
                printf " %s |", count[subject[i], kind_name[k]] + 0
            printf " %d |\n", total[subject[i]]
        }
        printf "| **all** |"
        for (k = 1; k <= kinds; k++) printf " %d |", all[kind_name[k]]
        printf " %d |\n\n%d hold, %d missed.\n", everything,
            everything - missed, missed
    }
}
