# Whether a report page keeps its promises; a line for each one broken.
#   awk -f page_check.awk PAGE.html
# Own reading of the markup, so that nothing need be installed for it.
function broken(what) { print FILENAME ": " what }
function attribute(tag, name,    at, rest) {
    at = index(tag, " " name "=\"")
    if (!at) return "\001"
    rest = substr(tag, at + length(name) + 3)
    return substr(rest, 1, index(rest, "\"") - 1)
}
{ page = page $0 "\n" }
END {
    if (page !~ /^<!DOCTYPE html>\n<html [^>]*lang="en">/) broken("no doctype, or no language")
    if (page !~ /<meta name="viewport" content="width=device-width, initial-scale=1"\/>/) broken("no viewport")
    if (page !~ /<meta charset="utf-8"\/>/) broken("no charset")
    style = page; sub(/.*<style>/, "", style); sub(/<\/style>.*/, "", style)
    if (style ~ /@import|url\(|[<&]/) broken("style sheet reaches outside, or is no XML")
    body = page; sub(/<style>.*<\/style>/, "", body)

    rest = body; level = 0; depth = 0; figures = drawings = tables = 0
    while (match(rest, /<[^>]*>/)) {
        words = substr(rest, 1, RSTART - 1)
        tag = substr(rest, RSTART, RLENGTH)
        rest = substr(rest, RSTART + RLENGTH)
        if (words ~ /&/ && words !~ /^([^&]*&(amp|lt|gt|quot|#39);)*[^&]*$/) broken("a bare ampersand: " substr(words, 1, 60))
        if (depth && words ~ /[^ \n\t]/) { text[depth] = text[depth] words; if (open[depth] == "li" && section == "cautions") cautions++ }
        if (tag ~ /^<!DOCTYPE/) continue
        name = tag; sub(/^<\/?/, "", name); sub(/[ \/>].*/, "", name); sub(/\n.*/, "", name)
        if (tag ~ /^<\//) {
            if (open[depth] != name) { broken("</" name "> closes <" open[depth] ">"); exit }
            if (name ~ /^(title|desc|figcaption|caption|h1|h2|h3|p|th)$/ && text[depth] !~ /[^ \n]/ && class[depth] != "blank")
                if (name != "caption") broken("an empty " name)
            if (name == "figure" && !captioned) broken("a figure without a caption")
            if (name == "svg" && !(titled && described)) broken("a drawing without title and words")
            if (name == "table" && !captioned) broken("a table without a caption")
            depth--
            continue
        }
        id = attribute(tag, "id")
        if (id != "\001") { if (id in ids) broken("id " id " twice"); ids[id] = 1 }
        n = split(attribute(tag, "aria-labelledby") " " attribute(tag, "aria-describedby"), part, " ")
        for (i = 1; i <= n; i++) if (part[i] != "\001") wanted[part[i]] = 1
        href = attribute(tag, "href")
        if (href ~ /^#/) wanted[substr(href, 2)] = 1
        else if (href != "\001" && href != "data:,") broken("refers to " href)
        while (match(tag, /url\([^)]*\)/)) {
            target = substr(tag, RSTART + 4, RLENGTH - 5)
            if (target ~ /^#/) wanted[substr(target, 2)] = 1; else broken("fetches " target)
            sub(/url\([^)]*\)/, "", tag)
        }
        bare = tag; gsub(/ xmlns="http:\/\/www\.w3\.org\/(1999\/xhtml|2000\/svg)"/, "", bare)
        if (bare ~ /https?:|\/\/|xlink|[ \n]src=|[ \n]on[a-z]+=|font-family="Symbol"/) broken("not by itself: " bare)
        if (name ~ /^(script|img|image|iframe|object|embed|foreignObject|a)$/) broken("a <" name ">")
        if (name ~ /^h[1-6]$/) {
            new = substr(name, 2) + 0
            if (new > level + 1) broken("heading " new " after " level)
            if (new == 1) { ones++; if (level) broken("h1 is not the first heading") }
            level = new
        }
        if (name == "section") { section = attribute(tag, "aria-labelledby"); if (++sections == 1 && section != "cautions") broken("the first section is " section) }
        if (name == "svg") { drawings++; titled = described = 0; if (attribute(tag, "role") != "img") broken("a drawing that is no image") }
        if (name == "title") titled = 1
        if (name == "desc") described = 1
        if (name == "figure" || name == "table") captioned = 0
        if (name == "figure") figures++
        if (name == "table") tables++
        if (name == "figcaption" || name == "caption") captioned = 1
        if (name == "th" && attribute(tag, "scope") !~ /^(row|col)$/) broken("a th without scope")
        if (tag !~ /\/>$/) { depth++; open[depth] = name; text[depth] = ""; class[depth] = attribute(tag, "class") }
    }
    if (depth) broken("<" open[depth] "> is never closed")
    if (ones != 1) broken(ones + 0 " h1")
    if (figures != drawings) broken(figures " figures, " drawings " drawings")
    if (cautions < 5) broken("only " cautions + 0 " cautions")
    for (id in wanted) if (!(id in ids)) broken("nothing has the id " id)
}
