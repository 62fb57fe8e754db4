# Read by the scripts here: shows a name as the program does (src/text/plain_text.h).

# shown NAME: a "?" for what would act on a terminal and for what is no UTF-8.
shown() {
    LC_ALL=C awk 'BEGIN {
        rest = substr(ARGV[1], 2)
        letter = "^([ -~]|[\302-\337][\200-\277]|[\340-\357][\200-\277]" \
            "[\200-\277]|[\360-\364][\200-\277][\200-\277][\200-\277])"
        acts = "^(\302[\200-\237]|\342\200[\250-\256]|\342\201[\246-\251])"
        while (rest != "") {
            many = match(rest, letter) ? RLENGTH : 1
            fits = RLENGTH > 0 && rest !~ acts
            name = name (fits ? substr(rest, 1, many) : "?")
            rest = substr(rest, many + 1)
        }
        print name
    }' "=$1"
}
