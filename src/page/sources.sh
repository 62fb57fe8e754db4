#!/bin/sh
# Fetches the sources of GSL and libconfig, as Debian has them, for the page:
#
#   sources.sh FOLDER      ->  FOLDER/gsl, FOLDER/libconfig, FOLDER/versions
#
# The list of sources is made of the machine's own and kept in FOLDER, with all
# that apt writes; the system's lists are left alone.
set -eu
mkdir -p "$1"
cd "$1"
[ -f versions ] && exit 0
here=$(pwd)
rm -rf apt gsl libconfig
mkdir -p apt/sources.d apt/lists/partial apt/cache/archives/partial apt/get

# Debian's own alone: others need not have sources.
for file in /etc/apt/sources.list /etc/apt/sources.list.d/*; do
    [ -f "$file" ] || continue
    name=$(basename "$file")
    case $file in
    *.sources) awk 'BEGIN {RS = ""; ORS = "\n\n"}
        /(^|\n)URIs:[^\n]*\/debian(-security)?\/?[ \t]*(\n|$)/ {
            gsub(/(^|\n)Types:[^\n]*/, "\nTypes: deb-src")
            sub(/^\n/, "")
            print
        }' "$file" ;;
    *.list) sed -n 's,^ *deb\( .*/debian\(-security\)\{0\,1\}/\{0\,1\} .*\),deb-src\1,p' \
        "$file" ;;
    esac >"apt/sources.d/$name"
    [ -s "apt/sources.d/$name" ] || rm "apt/sources.d/$name"
done

# apt's own: no list of the system, nothing written outside.
own() {
    apt-get -qq -o Dir::Etc::sourcelist=/dev/null \
        -o Dir::Etc::sourceparts="$here/apt/sources.d" \
        -o Dir::State::lists="$here/apt/lists" \
        -o Dir::Cache="$here/apt/cache" -o APT::Sandbox::User=root "$@"
}
own update
cd apt/get
own source --download-only gsl libconfig
for name in gsl libconfig; do
    dpkg-source --no-check -x "$name"_*.dsc "$here/$name" >/dev/null
    version=$(sed -n 's/^Version: //p' "$name"_*.dsc | head -1)
    echo "$name $version"
done >"$here/versions.part"
mv "$here/versions.part" "$here/versions"
