#!/usr/bin/python3
"""Prints the constants of Sugars that were fitted for this library, from the tables beside this script; Debian's python3-numpy.

The rows of coefficients.csv that are computed. Beside each fit stands how far from its table it lies at most, and
where. What is left is the error of the fit, not the error of the tables, and no test of the model: the same rows went in.
"""
import csv
import pathlib

import numpy as np

HERE = pathlib.Path(__file__).parent

# Published, not fitted: the density of sucrose in water, kg/m3, ICUMSA SPS-4 (1998), with water by the PTB.
SUCROSE = [[385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890], [-46.2720, -7.1720, 1.1597, 5.1126, 17.5254],
           [59.7712, 7.2491, 12.3630, -35.4791], [-47.2207, -21.6977, 27.6301], [18.3184, 12.3081]]
AIR = 1.2  # kg/m3, weighing-in-air
INDEX_OF_WATER = 1.33299  # the first row of either table of indices

# Name in Solutes, solute of the table, power of the volume, strengths that both fits are made from and held within. The rows of
# maltose below 16 % drift (README.md), and its last, 60 %, breaks the series. Polyols are sorbitol in the model; of the alcohols
# of six carbons the table has mannitol, to 12 %. Acids are citric acid. Refraction is a straight line where the volume is curved.
SOLUTES = [("Glucose", "D-glucose", 2, 0, 0.60), ("Fructose", "D-fructose", 2, 0, 0.48), ("Maltose", "maltose", 2, 0.16, 0.56),
           ("Glycerol", "glycerol", 3, 0, 1), ("Lactose", "lactose", 0, 0, 1), ("Polyols", "D-mannitol", 0, 0, 1),
           ("Acids", "citric acid", 0, 0, 1)]

# A 42 DE syrup of acid conversion, from memory: solids of the syrup of 43 commercial degrees Baume, and what the solids are.
SYRUP_SOLIDS, SHARES, HIGHER_SHARE = 0.803, {"Glucose": 0.19, "Maltose": 0.14}, 0.67
HIGHER_VOLUME, HIGHER_REFRACTION = -0.01440, 0.00219  # as coefficients.csv has them; the first is no fit


def table(name, *columns):
    lines = [line for line in (HERE / name).read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    rows = [[row[column] for column in columns] for row in csv.DictReader(lines)]
    return [[float(x) if x.replace(".", "", 1).isdigit() else x for x in row] for row in rows]


def water(celsius):
    t = celsius
    return ((999.83952 + 16.952577 * t - 7.9905127e-3 * t**2 - 46.241757e-6 * t**3 + 105.84601e-9 * t**4 - 281.03006e-12 * t**5)
            / (1 + 16.887236e-3 * t))


def sucrose(w, celsius=20):
    h = (celsius - 20) / 100
    return water(celsius) + sum(sum(c * w**(j + 1) for j, c in enumerate(row)) * h**k for k, row in enumerate(SUCROSE))


def density(w, excess, celsius=20):
    """kg/m3, when a gram of solute takes so many mL more than sucrose in a solution as strong."""
    return 1000 / (1000 / sucrose(w, celsius) + w * excess)


def bending(index):
    return (index**2 - 1) / (index**2 + 2)  # Lorentz and Lorenz


def index(refraction):
    return np.sqrt((1 + 2 * refraction) / (1 - refraction))


def powers(x, count, first=0):
    return np.stack([x**k for k in range(first, first + count)], axis=1)


def least_squares(columns, values, weights=1.0):
    weights = weights * np.ones(len(values))
    return np.linalg.lstsq(columns * weights[:, None], values * weights, rcond=None)[0]


def polynomial(constants, x):
    return sum(c * x**k for k, c in enumerate(constants))


def show(name, constants, *misses):
    print(f"  {name:18}", *(f"{c:.11g}" for c in np.atleast_1d(constants)))
    for miss, at, unit, rows in misses:
        worst = np.argmax(np.abs(miss))
        print(f"  {'':18} {abs(miss[worst]):.2g} at most, at {at[worst]:.6g} {unit}{rows}")


def fit_excess():
    """Volumes, then refractions over them: w times the property is what the table can tell, so that the rows are weighted with w."""
    at_water = bending(INDEX_OF_WATER) / (water(20) / 1000)
    rows_of = table("crc-aqueous-20c.csv", "solute", "mass_percent", "density_grams_per_millilitre", "refractive_index")
    volumes, refractions, shown = {}, {}, {}
    for name, solute, power, low, high in SOLUTES:
        w, rho, n = np.array([row[1:] for row in rows_of if row[0] == solute]).T
        w = w / 100
        inside = (w >= low) & (w <= high)
        held = np.clip(w, low, high)
        extra = (1 / rho - 1000 / sucrose(w)) / w
        v = np.round(least_squares(powers(w[inside], power + 1), extra[inside], w[inside]), 5)
        made = density(w, polynomial(v, held)) / 1000
        # Over the density of the model and not over the table's, so that the errors of the two do not add up.
        extra = (bending(n) / made - (1 - w) * at_water) / w - sucrose_refraction(w)
        r = np.round(least_squares(powers(w[inside], min(power, 1) + 1), extra[inside], w[inside]), 6)
        bent = index(made * ((1 - w) * at_water + w * (sucrose_refraction(w) + polynomial(r, held))))
        volumes[name], refractions[name] = v, r
        shown[name] = []
        for miss in (made - rho, bent - n):
            misses = [(miss[inside], 100 * w[inside], "%", "")]
            if not inside.all():
                misses.append((miss[~inside], 100 * w[~inside], "%", ", of the rows left out"))
            shown[name].append(misses)
    return volumes, refractions, shown


def fit_index():
    """Through water; the rows beyond 85 %, of unknown origin and of four decimals, weigh a tenth."""
    brix, n, official = zip(*table("icumsa-1974-refractive-index.csv", "brix_percent", "refractive_index_20c", "official"))
    w, n, sure = np.array(brix) / 100, np.array(n), np.array(official) == "yes"
    c = least_squares(powers(w, 5, 1), n - INDEX_OF_WATER, np.where(sure, 1, 0.1))
    c = np.array([float(f"{x:.6g}") for x in c])
    miss = INDEX_OF_WATER + powers(w, 5, 1) @ c - n
    return c, [(miss[sure], 100 * w[sure], "%", ", of the official rows"), (miss[~sure], 100 * w[~sure], "%", ", of the others")]


def sucrose_refraction(w):
    """mL/g of dissolved sucrose at 20 C."""
    n = INDEX_OF_WATER + sum(c * w**(k + 1) for k, c in enumerate(INDEX))
    return (bending(n) / (sucrose(w) / 1000) - (1 - w) * bending(INDEX_OF_WATER) / (water(20) / 1000)) / w


def fit_warmth(volumes, refractions):
    """How refraction moves with temperature, and that of the higher saccharides: ISO 1743, its class taken as 42 DE (an assumption)."""
    celsius = np.array([20.0, 30, 45, 60])
    rows = table("iso-1743-glucose-syrup.csv", "dry_substance_percent", *(f"refractive_index_{t:.0f}c" for t in celsius))
    t = celsius - 20
    pure = bending(np.array(rows[0][1:])) / (water(celsius) / 1000)
    slopes = np.array([float(f"{x:.4g}") for x in least_squares(powers(t, 2, 1), pure / pure[0] - 1)])
    pure_model = pure[0] * (1 + powers(t, 2, 1) @ slopes)
    water_miss = index(pure_model * water(celsius) / 1000) - rows[0][1:]
    complete = [row for row in rows[1:] if "" not in row]

    def misses(row, slope, higher):
        w = row[0] / 100
        known = [sum(share * polynomial(of[name], np.clip(w, low, high))
                     for name, _, _, low, high in SOLUTES if (share := SHARES.get(name, 0))) for of in (volumes, refractions)]
        made = density(w, known[0] + HIGHER_SHARE * HIGHER_VOLUME, celsius) / 1000
        solids = (sucrose_refraction(w) + known[1] + HIGHER_SHARE * higher) * (1 + t * slope)
        return index(made * ((1 - w) * pure_model + w * solids)) - [np.nan if x == "" else x for x in row[1:]]

    # Both together: the least of the greatest error over the rows that are complete, on a grid as fine as the digits kept.
    grid = [(s / 1e6, h / 1e5) for s in range(40, 121) for h in range(200, 261)]
    slope, higher = min(grid, key=lambda point: max(np.abs(misses(row, *point)).max() for row in complete))
    # The code's constant was found beside a parabola for water that misses the row of 20 C. Here, as in the code, it goes through it.
    blanks = [row for row in rows[1:] if "" in row]
    shown = [(np.nan_to_num(np.array([misses(row, slope, at) for row in some])).ravel(), np.repeat([row[0] for row in some], 4), "%", text)
             for at, some, text in ((higher, complete, ", 20 to 60 C"), (HIGHER_REFRACTION, complete, f", with {HIGHER_REFRACTION} as in the code"),
                                    (HIGHER_REFRACTION, blanks, ", with that, of the rows with a blank"))]
    return slopes, slope, higher, [(water_miss, celsius, "C", ", of water")], shown


def fit_plato():
    """Circular 440's degrees less ours at the same apparent specific gravity, in powers of ours; through nought."""
    plato, gravity = np.array(table("c440-table-114.csv", "brix_percent", "apparent_specific_gravity_20_20")).T
    low, high = np.zeros(len(plato)), np.ones(len(plato))
    for _ in range(60):
        middle = (low + high) / 2
        light = (sucrose(middle) - AIR) / (water(20) - AIR) < gravity
        low, high = np.where(light, middle, low), np.where(light, high, middle)
    brix = 100 * low
    c = least_squares(powers(brix, 5, 1), plato - brix)
    return c, [(powers(brix, 5, 1) @ c - (plato - brix), plato, "degrees Plato", "")]


INDEX, index_misses = fit_index()
volumes, refractions, shown = fit_excess()
slopes, slope, higher, water_misses, solids_misses = fit_warmth(volumes, refractions)
plato, plato_misses = fit_plato()

print("density-others, mL/g: CRC Handbook; powers of the mass fraction; errors in g/mL")
for name, *_ in SOLUTES:
    show(name, volumes[name], *shown[name][0])
show("HigherSaccharides", HIGHER_VOLUME)
print("    from no table here: the code says 43 degrees Baume and 80.3 % from memory, not the weighing. What that syrup would leave:")
known = sum(share * polynomial(volumes[name], high) for name, _, _, _, high in SOLUTES if (share := SHARES.get(name, 0)))
pounds = 453.59237 / 3785.411784  # g/mL of a pound in a US gallon
for what, celsius, gravity, others in (
        ("43 commercial degrees, 145/103 at 140/60 F", 60, 145 / 103 * water(140 / 9) / 1000, known),
        ("the same, but glucose and maltose as sucrose", 60, 145 / 103 * water(140 / 9) / 1000, 0),
        ("11.83 lb/US gal at 100 F, from memory too", 340 / 9, 11.83 * pounds, known)):
    left = ((1 / gravity - 1000 / sucrose(SYRUP_SOLIDS, celsius)) / SYRUP_SOLIDS - others) / HIGHER_SHARE
    miss = density(SYRUP_SOLIDS, known + HIGHER_SHARE * HIGHER_VOLUME, celsius) / 1000 - gravity
    print(f"    {left:.5f} by {what} ({gravity:.4f} g/mL, from which the model is {miss:+.5f})")

print("refraction-sucrose and refraction-mixtures: ICUMSA 1974, ISO 1743; errors of n")
show("n1 to n5", INDEX, *index_misses)
show("water t1, t2", slopes, *water_misses)
show("sucrose t1", slope, solids_misses[0])
print("refraction-mixtures, mL/g: CRC Handbook, the last ISO 1743; powers of the mass fraction; errors of n")
for name, *_ in SOLUTES:
    show(name, refractions[name], *shown[name][1])
show("HigherSaccharides", higher, *solids_misses)
print("plato: Circular 440, Table 114; powers of degrees Brix, from the first; errors in degrees")
show("Plato", plato, *plato_misses)
