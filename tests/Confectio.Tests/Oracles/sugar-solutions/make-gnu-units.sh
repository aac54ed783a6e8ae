#!/bin/sh
# Writes c440-table-114.csv, gnu-units-boiling.csv and textbook-boiling.csv beside this script from the definitions of GNU Units
# (Debian package "units"). Another file of definitions may be named as the argument. The figures are copied as they stand there.
set -eu
cd "$(dirname "$0")"
definitions=${1:-/usr/share/units/definitions.units}
LC_ALL=C
export LC_ALL

program=$(units --version | sed -n '1s/.*version //p')
edition=$(sed -n 's/^# *\([A-Z][a-z]* [0-9][0-9]* Version [0-9.]*\) *$/\1/p' "$definitions" | sed -n 1p)
made="GNU Units $program, definitions of $edition, run by make-gnu-units.sh"

# The pairs of a nonlinear unit: "name[...]" and the lines that a backslash joins to it.
pairs() {
    awk -v start="$1[" '
        index($0, start) == 1 { inside = 1; sub(/^[^]]*\]/, "") }
        inside {
            more = sub(/\\[ \t]*$/, "")
            for (i = 1; i <= NF; i++) fields[++n] = $i
            if (!more) exit
        }
        END {
            if (n == 0 || n % 2) { print "no table of pairs: " start > "/dev/stderr"; exit 1 }
            for (i = 1; i < n; i += 2) print fields[i] "," fields[i + 1]
        }' "$definitions"
}

# The table of two columns in the comment above it: from its heading to the first line that is not two numbers.
comment() {
    awk '
        inside && ($1 != "#" || NF != 3) { exit }
        inside { print $2 "," $3; n++ }
        /^# *temp\(C\) +conc \(%\)/ { inside = 1 }
        END { if (n == 0) { print "no table in the comment" > "/dev/stderr"; exit 1 } }' "$definitions"
}

{
    printf '# %s\n' "$made"
    cat <<'TEXT'
# F. J. Bates and associates, Polarimetry, Saccharimetry and the Sugars, National Bureau of Standards Circular 440 (1942), Table 114.
# Read in the definitions of GNU Units, which carry the table as the unit "brix"; not in the circular.
# brix_percent: g of sucrose per 100 g of solution. apparent_specific_gravity_20_20: weighed in air with brass weights, solution and
# water at 20 C, water = 1. GNU Units makes a density of it with 0.99717 g/cm3 for water; that factor is not in the figures here.
TEXT
    printf 'brix_percent,apparent_specific_gravity_20_20\n'
    pairs brix
} > c440-table-114.csv

{
    printf '# %s\n' "$made"
    cat <<'TEXT'
# The table "sugar_conc_bpe" of GNU Units. Its comment says that it is equation (3) of M. Saska, International Sugar Journal 104 (2002)
# 500-507, credited there to M. Starzak and S. D. Peacock, Zuckerindustrie 122 (1997) 380-387, with water boiling at 100 C:
#   elevation = ((1 + 0.48851085 x^2 (1 - 1.0038 x - 0.24653 x^2)) / (1 + 0.08592964 ln(1 - x)) - 1) 326.28 K
#   x = (w / 342.3) / (w / 342.3 + (100 - w) / 18.02), w = sucrose_percent
# So another program's arithmetic on a published fit, not a measurement. Its authors call the range uncertain; the rows beyond 98 %
# are past the data of the fit and climb without meaning.
# sucrose_percent: g of sucrose per 100 g of solution. boiling_point_elevation_kelvin: above water at the same pressure.
TEXT
    printf 'sucrose_percent,boiling_point_elevation_kelvin\n'
    pairs sugar_conc_bpe
} > gnu-units-boiling.csv

{
    printf '# %s\n' "$made"
    cat <<'TEXT'
# The table in the comment above "sugar_conc_bpe". GNU Units says that it "appeared in one text" and does not name the text.
# Rounded to whole degrees. The row of 112 C, 80 % stands apart from the rest, by about 2.6 K against the fit of gnu-units-boiling.csv.
# celsius: boiling point, the pressure not stated. sucrose_percent: concentration as printed, taken as g per 100 g of solution.
TEXT
    printf 'celsius,sucrose_percent\n'
    comment
} > textbook-boiling.csv
