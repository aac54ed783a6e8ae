#!/usr/bin/python3
"""Writes if97-saturation.csv beside this script with the Debian package python3-iapws.

IAPWS-IF97, region 4 (saturation): pressure of a temperature by equation 30, temperature of a pressure by equation 31. Every given
number is a short decimal, so that a reader has the very double that went in. Python writes the fewest digits that give the
same double back: 15 to 17.
"""
import pathlib
import subprocess

import iapws
from iapws.iapws97 import _PSat_T, _TSat_P

# The check points of Tables 35 and 36 of the release, with its values where the package's own examples quote them.
RELEASE_KELVIN = [(300, ""), (500, "2.63889776"), (600, "")]
RELEASE_MEGAPASCALS = [("0.1", ""), ("1", ""), ("10", "584.149488")]

LOWEST_KILOPASCALS = 0.6113  # The package begins at 0.611212677 kPa, the pressure at 273.15 K.
HIGHEST_KILOPASCALS = 200
PRESSURES = 200


def main():
    package = subprocess.run(
        ["dpkg-query", "--show", "--showformat=${Version}", "python3-iapws"], check=True, capture_output=True, text=True).stdout
    lines = [
        f"# python3-iapws {package} (the module calls itself {iapws.__version__}), run by make-iapws.py",
        "# IAPWS, Revised Release on the IAPWS Industrial Formulation 1997 for the Thermodynamic Properties of Water and Steam (2007),",
        "# region 4: equation 30 where kelvin is given, equation 31 where megapascals is given.",
        "# given: the column that went in; the other came out. The first six rows are the check points of the release (Tables 35 and 36).",
        "# published: what the release prints for the column that came out, nine digits, as the package's examples quote it. Only those",
        "# two were read; the rest is blank.",
        "given,kelvin,megapascals,published",
    ]
    for kelvin, published in RELEASE_KELVIN:
        lines.append(f"kelvin,{kelvin},{_PSat_T(kelvin)!r},{published}")
    for megapascals, published in RELEASE_MEGAPASCALS:
        lines.append(f"megapascals,{_TSat_P(float(megapascals))!r},{megapascals},{published}")
    for hundredths in [1, *range(500, 37001, 500)]:  # 0.01 C, then 5 to 370 C
        kelvin = (27315 + hundredths) / 100
        lines.append(f"kelvin,{kelvin!r},{_PSat_T(kelvin)!r},")
    step = (HIGHEST_KILOPASCALS / LOWEST_KILOPASCALS) ** (1 / (PRESSURES - 1))
    for i in range(PRESSURES):
        text = f"{LOWEST_KILOPASCALS * step ** i / 1000:.6g}"
        megapascals = f"{float(text):.9f}".rstrip("0")
        lines.append(f"megapascals,{_TSat_P(float(megapascals))!r},{megapascals},")
    target = pathlib.Path(__file__).with_name("if97-saturation.csv")
    target.write_text("\n".join(lines) + "\n", encoding="utf-8", newline="\n")


main()
