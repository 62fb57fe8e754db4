#!/bin/sh
# Tables as other programs read them: every table of every command, for one
# engine, with numpy, octave and, where it is installed, pandas.
#
#   run_tables.sh COLDGAP SOURCES
set -u
coldgap=$1
sources=$2
. "$(dirname "$0")/lib.sh"
engine=$sources/configs/engines/iron_six.cfg
export LC_ALL=C.UTF-8

{
    cat "$engine"
    echo 'evidence = ( { what = "groove_top"; temperature_C = 230.0;'
    echo '    how = "hardness"; } );'
} >"$work/taught.cfg"
expect 0 "$coldgap" find "$work/taught.cfg" --set rings.film_law=reynolds \
    --set duty.name=settled \
    --samples 16 -q -o "$work/find"
expect 0 "$coldgap" find "$sources/configs/logs/logged_four.cfg" -q \
    -o "$work/logged"
for command in rings ladder seal lesson network; do
    expect 0 "$coldgap" $command "$engine" -q -o "$work/$command"
done
expect 0 "$coldgap" card "$engine" -q -o "$work/card" \
    --from "$sources/configs/engines/shop_four.cfg"
expect 0 "$coldgap" finish "$engine" --simulate plateau -q -o "$work/finish"
expect 1 "$coldgap" sheet "$engine" -q -o "$work/sheet" \
    --measured "$sources/configs/measured/iron_six.csv"
# numbers, names, points without an answer; and a sweep of parts, joined
expect 0 "$coldgap" sweep "$engine" -q -o "$work/sweep" \
    --vary engine.compression_ratio=8.8,99 \
    --vary rings.top.material=plain_steel,nitrided_stainless
for part in 1 2; do
    expect 0 "$coldgap" sweep "$engine" -q -o "$work/parts" --part $part/2 \
        --vary charge.boost_kPa=0,100
done
cat "$work"/parts/sweep_?_of_2.dat >"$work/parts/sweep.dat"
find "$work" -name '*.dat' | sort >"$work/tables"
for table in $(cat "$sources"/src/commands/*.c | grep '"' |
               grep -o '[a-z_%]*[.]dat' | grep -v '^_\|%' | sort -u); do
    grep -q "/$table\$" "$work/tables" || fail "$table was never written"
done

# The first line is the names, a word each, as many as every row has; no quotes.
while read -r table; do
    problem=$(awk '
        NR == 1 {
            names = NF - 1
            if ($1 != "#" || names < 2) print "no names"
            for (i = 2; i <= NF; i++) {
                if ($i !~ /^[A-Za-z][A-Za-z0-9_]*$/) print "name " $i
                if (seen[$i]++) print "twice " $i
            }
        }
        /^#/ || !NF { next }
        NF != names { print "line " NR ": " NF " of " names }
        /"/ { print "line " NR ": quotes" }' "$table" | head -n 3)
    [ -z "$problem" ] || fail "${table#"$work/"}: $problem"
    grep -q '^# .*not a warranty' "$table" || fail "${table#"$work/"}: no caution"
done <"$work/tables"

# told FILE: rows, names, values that are not a number, the least and the largest
# of all others, of the columns of numbers; what each reader is to find.
cat >"$work/told.awk" <<'AWK'
FNR == 1 { names = NF - 1; next }
/^#/ || !NF { next }
{
    rows++
    for (i = 1; i <= NF; i++) {
        value[rows, i] = $i
        if ($i !~ /^(nan|[-+]?[0-9.]+(e[-+]?[0-9]+)?)$/) word[i] = 1
    }
}
END {
    low = 1e300
    high = -1e300
    for (i = 1; i <= names; i++)
        for (k = 1; k <= rows && !word[i]; k++)
            if (value[k, i] == "nan") nans++
            else {
                x = value[k, i] + 0
                if (x < low) low = x
                if (x > high) high = x
            }
    if (low > high) low = high = 0
    printf "%d %d %d %.9e %.9e\n", rows, names, nans, low, high
}
AWK
while read -r table; do
    printf '%s ' "$table"
    awk -f "$work/told.awk" "$table"
done <"$work/tables" >"$work/wanted"

cat >"$work/read.py" <<'PYTHON'
import sys, warnings
import numpy as np
warnings.filterwarnings("error", category=UserWarning)
by = sys.argv[1]
if by == "pandas":
    import pandas as pd
for f in open(sys.argv[2]).read().split("\n")[:-1]:
    names = open(f).readline().split()[1:]
    if by == "numpy":
        d = np.atleast_1d(np.genfromtxt(f, names=True, dtype=None, encoding=None))
        assert list(d.dtype.names) == names, (f, d.dtype.names)
        columns = [d[n] for n in names]
    else:
        d = pd.read_csv(f, sep=r'\s+', comment='#', names=open(f).readline().split()[1:])
        columns = [d[n].values for n in names]
    x = [c.astype(float) for c in columns if c.dtype.kind in "if"]
    x = np.concatenate(x) if x else np.zeros(0)
    good = x[~np.isnan(x)]
    good = good if len(good) else np.zeros(1)
    print(f, len(d), len(names), np.isnan(x).sum(), "%.9e %.9e" % (good.min(), good.max()))
PYTHON
cat >"$work/read.m" <<'OCTAVE'
tables = strsplit(strtrim(fileread(argv(){1})), "\n");
for i = 1:numel(tables)
  f = fopen(tables{i});
  names = strsplit(strtrim(fgetl(f)(2:end)));
  try % numbers alone
    d = num2cell(load(tables{i}), 1);
    is = true(1, numel(d));
  catch
    words = textscan(f, repmat('%s', 1, numel(names)), 'CommentStyle', '#');
    is = cellfun(@(c) all(! isnan(str2double(c)) | strcmp(c, 'nan')), words);
    form = repmat({'%s'}, 1, numel(names));
    form(is) = '%f';
    frewind(f);
    d = textscan(f, [form{:}], 'CommentStyle', '#');
  end
  fclose(f);
  x = vertcat(d{is});
  y = x(! isnan(x));
  if (isempty(y)) y = 0; end
  printf("%s %d %d %d %.9e %.9e\n", tables{i}, numel(d{1}), numel(names), ...
         sum(isnan(x)), min(y), max(y));
end
OCTAVE
readers=
# reads NAME WORDS...: a reader finds in every table what stands there.
reads() {
    name=$1
    shift
    readers="$readers $name"
    "$@" >"$work/$name.found" 2>"$work/stderr" || {
        fail "$name does not read them"
        cat "$work/stderr"
    }
    diff "$work/wanted" "$work/$name.found" || fail "$name reads something else"
}
for python in python3 /usr/bin/python3; do
    "$python" -c 'import numpy' 2>/dev/null || continue
    reads numpy "$python" "$work/read.py" numpy "$work/tables"
    ! "$python" -c 'import pandas' 2>/dev/null ||
        reads pandas "$python" "$work/read.py" pandas "$work/tables"
    break
done
if command -v octave-cli >/dev/null 2>&1; then
    reads octave octave-cli --no-init-file "$work/read.m" "$work/tables"
fi
# gnuplot, by the names, as plots/README.md shows.
if command -v gnuplot >/dev/null 2>&1; then
    (cd "$work" && mkdir out && cp find/history.dat out &&
        sed -n "s/^    plot /stats /p" "$sources/plots/README.md" |
        grep time_s | sed 's/ with lines/ name "read"/' >by_name.gp &&
        echo 'print int(read_records)' >>by_name.gp && gnuplot by_name.gp) \
        >"$work/stdout" 2>&1
    [ "$(tail -n 1 "$work/stdout")" = "$(grep -vc '^#' "$work/out/history.dat")" ] ||
        fail "gnuplot does not read by name: $(cat "$work/stdout")"
fi
echo "read by:$readers"
[ $failed -gt 0 ] || [ -n "$readers" ] ||
    skip "neither numpy nor octave installed"
finish
