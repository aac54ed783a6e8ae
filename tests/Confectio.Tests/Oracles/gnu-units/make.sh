#!/bin/sh
# Writes kitchen-volumes.csv beside this script from the definitions of GNU Units (Debian package "units").
# GNU Units gives at most 15 significant digits, so the file carries 15.
set -eu
cd "$(dirname "$0")"
golden=kitchen-volumes.csv
LC_ALL=C
export LC_ALL

value() {
    units --terse --exponential --digits 15 "$1" "$2"
}

row() {
    printf '%s,%s,%s,%s,%s\n' "$1" "$2" "$3" "$4" "$(value "$3" "$4")"
}

{
    printf '# GNU Units %s, run by make.sh\n' "$(units --version | sed -n '1s/.*version //p')"
    printf 'system,unit,expression,per,value\n'
    row us-customary Gallon usgallon ml
    row us-customary Quart usquart ml
    row us-customary Pint uspint ml
    row us-customary Cup uscup ml
    row us-customary FluidOunce usfloz ml
    row us-customary Tablespoon ustablespoon ml
    row us-customary Teaspoon usteaspoon ml
    row us-labelling Cup legalcup ml
    row us-labelling Tablespoon legaltablespoon ml
    row us-labelling Ounce ounce g
    row metric Cup metriccup ml
    row australian Tablespoon australiatablespoon ml
    row australian Teaspoon australiateaspoon ml
    row imperial Gallon brgallon ml
    row imperial Quart brquart ml
    row imperial Pint brpint ml
    row imperial Cup brcup ml
    row imperial FluidOunce brfloz ml
    row imperial Tablespoon brtablespoon ml
    row imperial Teaspoon brteaspoon ml
    row imperial Dessertspoon brdessertspoon ml
    # The value that the comment beside brtablespoon gives as the other one in use.
    row imperial Tablespoon '5|8 brfloz' ml
    row japanese Cup japancup ml
    row us-customary Pound pound g
    row us-customary Ounce ounce g
    row imperial Pound pound g
    row imperial Ounce ounce g
    row metric Kilogram kg g
    row metric Litre liter ml
} > "$golden"
