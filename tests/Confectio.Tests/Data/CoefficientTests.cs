using System.Globalization;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Data;

/// <summary>
/// The coefficients of the equations as data: those that were published are as published, each stands within what its table says of it, and
/// a table
/// that is broken is refused with file, line and reason.
/// </summary>
public sealed class CoefficientTests
{
    private static readonly List<Dictionary<string, string>> s_rows = Tables.Of("coefficients");

    private static readonly string s_text = Embedded("coefficients.csv"), s_substances = Embedded("substances.csv"),
        s_equations = Embedded("equations.csv");

    // As they are printed, or as they were read in what prints them; the place stands beside each. What is fitted here is in another test.
    public static TheoryData<string, string, string, double[]> Published => new()
    {
        // ICUMSA SPS-4 (1998), read in two programs; the rows are kept in Sugars/SucrosePolynomial too.
        { "density-sucrose", "sucrose", "a1 a2 a3 a4 a5 a6", [385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890] },
        { "density-sucrose", "sucrose", "b1 b2 b3 b4 b5", [-46.2720, -7.1720, 1.1597, 5.1126, 17.5254] },
        { "density-sucrose", "sucrose", "c1 c2 c3 c4", [59.7712, 7.2491, 12.3630, -35.4791] },
        { "density-sucrose", "sucrose", "d1 d2 d3 e1 e2", [-47.2207, -21.6977, 27.6301, 18.3184, 12.3081] },
        { "density-water", "water", "n0 n1 n2 n3 n4 n5 d1", [999.83952, 16.952577, -7.9905127e-3, -46.241757e-6, 105.84601e-9,
            -281.03006e-12, 16.887236e-3] },
        // IAPWS-IF97, Table 34, recalled; BoilingWaterTests holds it against the release's verification values.
        { "saturation-line", "water", "n1 n2 n3 n4 n5", [0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5,
            -0.32325550322333e7] },
        { "saturation-line", "water", "n6 n7 n8 n9 n10", [0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849,
            0.65017534844798e3] },
        // Starzak and Peacock (1997): Q = -17638 J/mol, a, b.
        { "activity-starzak-peacock", "sucrose", "q a b", [-17638, -1.0038, -0.24653] },
        // Starzak and Mathlouthi (2006): from memory.
        { "activity-starzak-mathlouthi", "sucrose", "a0 a1 a2 a3 a4 b1 b2", [-268.59, -861.42, -1102.3, 1399.9, -277.88, -1.9831,
            0.92730] },
        // Zobrist and others (2011), read in a program of aerosol chemistry.
        { "activity-zobrist", "sucrose", "d1 d2 t1 t2 t3 t4", [-0.99721, 0.13599, 0.001688, -0.005151, 0.009607, -0.006142] },
        // International Journal of Dentistry (2010), article 981072, Table 3.
        { "activity-norrish", "glycerol", "k", [1.16] },
        { "activity-norrish", "polyols", "k", [1.65] },
        // Chirife and others (1982): from memory.
        { "activity-norrish", "sucrose", "k", [6.47] },
        { "activity-norrish", "glucose", "k", [2.25] },
        { "activity-norrish", "fructose", "k", [2.25] },
        { "activity-norrish", "maltose", "k", [4.54] },
        { "activity-norrish", "lactose", "k", [10.2] },
        { "activity-norrish", "acids", "k", [6.17] },
        // Grover (1947) and Money and Born (1951): from memory.
        { "activity-grover", "water", "a0 a1 a2", [1.04, -0.10, 0.0045] },
        { "activity-money-born", "sucrose", "a", [0.27] },
        // Vavrinecz, read in two programs.
        { "solubility-sucrose", "sucrose", "s0 s1 s2 s3 s4", [64.447, 0.08222, 1.6169e-3, -1.558e-6, -4.63e-8] },
        // Vukov (1965), read in a program: log k = 16.91 + log c - 5670/T - pH.
        { "inversion", "sucrose", "rate temperature", [8.12831e16, 13055.7] },
        // Génotelle, read in two programs.
        { "viscosity", "sucrose", "x1 x0 f0 f1 power b0 b1 t1 t2", [22.46, -0.114, 1.1, 43.1, 1.25, 1900, 18, 30, 91] },
        { "viscosity", "sucrose", "a0 a1 p0 p1", [0.85, 0.15, 0.962, 0.038] },
        // Mohos (2010), Appendix 2.
        { "specific-heat-crystal", "sucrose", "c0 c1", [0.2712, 0.00103] },
        // Bubník and others (1995): the first two from memory.
        { "specific-heat", "sucrose", "c0 c1 c2 c3", [4.1868, -0.0297, 4.6e-5, 7.5e-5] },
        // ICUMSA 1974, first row.
        { "refraction-sucrose", "sucrose", "n0", [1.33299] },
        // ISO 2533:1975: from memory.
        { "standard-atmosphere", "air", "pressure temperature lapse radius gravity gas-constant", [101.325, 288.15, 0.0065, 6356766,
            9.80665, 287.05287] },
        // Roos (1993) and Johari and others (1987): from memory.
        { "glass-transition", "sucrose", "celsius k", [62, 4.7] },
        { "glass-transition", "glucose", "celsius k", [31, 4.5] },
        { "glass-transition", "fructose", "celsius k", [5, 3.8] },
        { "glass-transition", "lactose", "celsius k", [101, 6.7] },
        { "glass-transition", "maltose", "celsius k", [87, 6.0] },
        { "glass-transition", "water", "celsius", [-135] },
        // Regulation (EU) No 1169/2011, Annex XIV: recalled.
        { "energy-kilojoules", "fat", "factor", [37] },
        { "energy-kilojoules", "alcohol", "factor", [29] },
        { "energy-kilojoules", "carbohydrate", "factor", [17] },
        { "energy-kilojoules", "protein", "factor", [17] },
        { "energy-kilojoules", "acids", "factor", [13] },
        { "energy-kilojoules", "polyols", "factor", [10] },
        { "energy-kilojoules", "fibre", "factor", [8] },
        { "energy-kilocalories", "fat", "factor", [9] },
        { "energy-kilocalories", "alcohol", "factor", [7] },
        { "energy-kilocalories", "carbohydrate", "factor", [4] },
        { "energy-kilocalories", "protein", "factor", [4] },
        { "energy-kilocalories", "acids", "factor", [3] },
        { "energy-kilocalories", "polyols", "factor", [2.4] },
        { "energy-kilocalories", "fibre", "factor", [2] },
        // GNU Units: the moduli of 145, 146.78 and 144; 144.3 from memory.
        { "baume", "sucrose", "modulus celsius", [145, 20] },
        { "baume-gerlach", "sucrose", "modulus celsius", [146.78, 17.5] },
        { "baume-old-dutch", "sucrose", "modulus celsius", [144, 15] },
        { "baume-rational", "sucrose", "modulus celsius", [144.3, 15] },
        // Wikipedia, Brix.
        { "printed-brix", "sucrose", "s3 s2 s1 s0", [182.4601, -775.6821, 1262.7794, -669.5622] },
        { "printed-plato", "sucrose", "s3 s2 s1 s0", [135.997, -630.272, 1111.14, -616.868] },
        { "printed-refraction", "sucrose", "n5 n4 n3 n2 n1 n0", [11758.74, -88885.21, 270177.93, -413145.80, 318417.95, -99127.4536] },
        // Siebel (1892); Earle and Earle, Appendix 7. The thermal equations are held against print in Heat/ThermalPropertiesTests.
        { "siebel", "water", "water fat solids", [4.1868, 1.67472, 0.83736] },
        { "earle-specific-heat", "water", "water solids", [4.19, 0.84] },
        { "earle-frozen-specific-heat", "ice", "water solids", [2.1, 0.84] },
        { "earle-freezing", "water", "water", [335] },
        { "earle-conductivity", "water", "water solids", [0.55, 0.26] },
        { "earle-frozen-conductivity", "ice", "water solids", [2.4, 0.26] },
    };

    [Theory]
    [MemberData(nameof(Published))]
    public void WhatWasPublishedIsInTheTableToTheLastDigit(string equation, string substance, string names, double[] values)
    {
        string[] each = names.Split(' ');
        Assert.Equal(values.Length, each.Length);
        for (int i = 0; i < each.Length; i++)
        {
            Coefficient found = Assert.Single(Equation.Get(equation).Coefficients, row => row.Substance.Key == substance
                && row.Name == each[i]);
            Assert.Equal(values[i], found.Value);
        }
    }

    // Read by another reader: what the library has is what is written, and nothing is left out.
    [Fact]
    public void EveryRowIsReadAsItIsWritten()
    {
        Assert.Equal(s_rows.Count, Coefficient.All.Count);
        Assert.All(s_rows.Zip(Coefficient.All), pair =>
        {
            (Dictionary<string, string> row, Coefficient read) = pair;
            Assert.Equal((row["equation"], row["substance"], row["coefficient"], row["unit"]), (read.EquationKey, read.Substance.Key,
                read.Name, read.Unit));
            Assert.Equal(Number(row["value"]), read.Value);
            Assert.Equal((Number(row["low"]), Number(row["high"]), row["range_unit"]), (read.Lowest, read.Highest, read.RangeUnit));
            Assert.Equal((Number(row["low_celsius"]), Number(row["high_celsius"])), (read.MinimumCelsius, read.MaximumCelsius));
            Assert.Equal((Number(row["fit_error"]), row["fit_error_unit"]), (read.FitError, read.FitErrorUnit));
            Assert.Equal((row["source"], row["kind"], row["locator"], row["note"]),
                (read.Provenance.Source.Key, read.Provenance.Evidence.ToWord(), read.Provenance.Locator, read.Provenance.Note));
        });
        Assert.Equal(s_rows.Count, Equation.All.Sum(equation => equation.Coefficients.Count));
    }

    // IUPAC, abridged standard atomic weights (2021): H 1.0080, C 12.011, O 15.999, Na 22.990, Cl 35.45. Half a unit of the last printed
    // digit, and 0.001 more
    // for the handbook's older weights: it prints 342.296 and 192.124 where these give 342.297 and 192.123.
    [Fact]
    public void MolarMassesFollowFromTheFormulas()
    {
        Dictionary<string, double> weights = new() { ["H"] = 1.0080, ["C"] = 12.011, ["O"] = 15.999, ["Na"] = 22.990, ["Cl"] = 35.45 };
        Dictionary<string, string>[] known = [.. Tables.Of("substances").Where(row => row["formula"].Length > 0
            && row["molar_mass"].Length > 0)];
        Assert.True(known.Length >= 10);
        Assert.All(known, row =>
        {
            double sum = System.Text.RegularExpressions.Regex.Matches(row["formula"], "([A-Z][a-z]?)([0-9]*)").Sum(
                part => weights[part.Groups[1].Value] * (part.Groups[2].Length > 0 ? int.Parse(part.Groups[2].Value,
                    CultureInfo.InvariantCulture) : 1));
            int digits = row["molar_mass"].Length - row["molar_mass"].IndexOf('.') - 1;
            Assert.Equal(sum, Number(row["molar_mass"])!.Value, 0.5 * Math.Pow(10, -digits) + 0.001);
        });
    }

    // What the public constants promise is what the table has.
    [Fact]
    public void TheConstantsOfTheInterfaceAreThoseOfTheTable()
    {
        Assert.Equal(SucroseSolution.MaximumBoilingFraction, Coefficients("activity-starzak-peacock", "sucrose")[0].Highest);
        Assert.Equal((Solubility.MinimumCelsius, Solubility.MaximumCelsius),
            (Coefficients("solubility-sucrose", "sucrose")[0].MinimumCelsius!.Value, Coefficients("solubility-sucrose",
                "sucrose")[0].MaximumCelsius!.Value));
        Assert.Equal(Substance.Of(Constituent.HigherSaccharides).MolarMass, SugarSolution.PureWater.HigherSaccharidesMolarMass);
        Assert.Equal((AirPressure.MinimumMetres, AirPressure.MaximumMetres),
            (Coefficients("standard-atmosphere", "air")[0].Lowest!.Value, Coefficients("standard-atmosphere", "air")[0].Highest!.Value));
    }

    [Fact]
    public void EveryConstituentIsASubstanceWithAComponent() => Assert.All(Enum.GetValues<Constituent>(), constituent =>
    {
        Substance substance = Substance.Of(constituent);
        Assert.Equal(constituent, substance.Constituent);
        Assert.Contains(Confectio.Heat.ThermalEquation.All, equation => equation.Component == substance.ThermalComponent);
        Assert.True(substance.EnergyClass.Length == 0 || Coefficients("energy-kilojoules", substance.EnergyClass).Count == 1);
    });

    [Fact] // Data/README.md, "Kinds of evidence"
    public void WhatIsRememberedOrJudgedIsNotPresentedAsPublished() => Assert.All(
        Coefficient.All.Select(row => (row.ToString(), row.Provenance))
            .Concat(Equation.All.Select(equation => (equation.Key, equation.Provenance)))
            .Concat(Substance.All.Where(substance => substance.MolarMassProvenance is not null).Select(substance =>
                (substance.Key, substance.MolarMassProvenance!))),
        pair =>
        {
            (string what, Provenance provenance) = pair;
            Assert.True(provenance.Evidence == Evidence.FromMemory == (provenance.Source.Key == "memory"), what);
            if (provenance.Source.Key == "confectio")
                Assert.True(provenance.Evidence is Evidence.Estimated or Evidence.Computed, what);
        });

    // An equation of one substance is no surer than any number in it, and no equation is surer than all of them.
    [Fact]
    public void AnEquationIsNoSurerThanItsNumbers() => Assert.All(Equation.All.Where(equation => equation.Coefficients.Count > 0),
        equation =>
    {
        int[] ranks = [.. equation.Coefficients.Select(row => Rank(row.Provenance.Evidence))];
        bool single = equation.Coefficients.Select(row => row.Substance).Distinct().Count() == 1;
        Assert.True(Rank(equation.Provenance.Evidence) >= (single ? ranks.Max() : ranks.Min()), equation.Key);
    });

    [Fact]
    public void AnEstimateSaysHowFarItMayBeOff() => Assert.All(Coefficient.All.Where(row => row.Provenance.Evidence == Evidence.Estimated),
        row => Assert.True(row.FitError > 0, row.ToString()));

    // ----- Broken tables -----

    [Fact]
    public void TheTableAsItIsPasses() => Assert.Equal(s_rows.Count, Read(s_text).All.Count);

    // One row gone, whichever: the equation says how many it has.
    [Fact]
    public void ARowThatIsLostIsMissed()
    {
        string[] lines = s_text.TrimEnd('\n').Split('\n');
        for (int i = 1; i < lines.Length; i++)
        {
            string equation = lines[i].Split(',')[0], message = Refused(string.Join('\n', lines.Where((_, at) => at != i)));
            Assert.Contains($"{equation} has ", message, StringComparison.Ordinal);
            Assert.Contains("are expected by equations.csv", message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void ARowThatStandsTwiceIsSeen()
    {
        string[] lines = s_text.TrimEnd('\n').Split('\n');
        int first = LineOf("activity-norrish,sucrose,k,");
        Assert.Equal(
            $"coefficients.csv: line {lines.Length + 1}, column coefficient: 'k' of activity-norrish for sucrose stands already on line {first}",
            Refused(s_text.TrimEnd('\n') + "\n" + lines[first - 1]));
    }

    [Theory]
    [InlineData("activity-norrish,sucrose,k,6.47", "activity-norrish,sucrose,k,6.47e0", "column value: '6.47e0' is not a number")]
    [InlineData("activity-norrish,sucrose,k,6.47", "activity-norrish,sucrose,k,NaN", "column value: 'NaN' is not a number")]
    [InlineData("activity-norrish,sucrose,k,6.47", "activity-norrish,sucrose,k,\"6,47\"", "column value: '6,47' is not a number")]
    [InlineData("activity-norrish,sucrose,k,6.47", "activity-norrish,sucrose,k,", "column value: the field is empty")]
    [InlineData("activity-norrish,sucrose,k,6.47", "activity-norrish,phlogiston,k,6.47",
        "column substance: 'phlogiston' is no substance of substances.csv")]
    [InlineData("activity-norrish,sucrose,k,6.47", "activity-norish,sucrose,k,6.47",
        "column equation: 'activity-norish' is no equation of equations.csv")]
    [InlineData("activity-norrish,sucrose,k,6.47,1,g/g,0,0.65", "activity-norrish,sucrose,k,6.47,1,g/g,0.65,0",
        "column low: a range has a low, a high")]
    [InlineData("activity-norrish,sucrose,k,6.47,1,g/g,0,0.65", "activity-norrish,sucrose,k,6.47,1,g/g,0,",
        "column low: a range has a low, a high")]
    [InlineData("activity-norrish,sucrose,k,6.47,1,g/g,0,0.65", "activity-norrish,sucrose,k,6.47,1,,0,0.65",
        "column low: a range has a low, a high")]
    [InlineData("density-sucrose,sucrose,a2,135.3705,kg/m³,g/g,0,0.85", "density-sucrose,sucrose,a2,135.3705,kg/m³,g/g,0,0.9",
        "column low: the range is another than on line ")]
    [InlineData("hydrometer,glass,expansion,0.000025,1/K,,,,,,,,memory", "hydrometer,glass,expansion,0.000025,1/K,,,,,,1,,memory",
        "column fit_error: an error has a unit")]
    [InlineData("hydrometer,glass,expansion,0.000025,1/K,,,,,,,,memory", "hydrometer,glass,expansion,0.000025,1/K,,,,,,,,hearsay",
        "column source: 'hearsay' is no key of sources.csv")]
    [InlineData("memory,from-memory,,,Of the volume.", "memory,guessed,,,Of the volume.",
        "column kind: 'guessed' is not a kind of evidence")]
    [InlineData("memory,from-memory,,,Of the volume.", "confectio,estimated,,,Of the volume.",
        "column fit_error: an estimate says how far it may be off")]
    public void ARowThatCannotBeUsedIsRefusedWithItsLine(string written, string broken, string reason)
    {
        Assert.Contains(written, s_text, StringComparison.Ordinal);
        string message = Refused(s_text.Replace(written, broken, StringComparison.Ordinal));
        Assert.StartsWith($"coefficients.csv: line {LineOf(written)}, {reason}", message, StringComparison.Ordinal);
    }

    [Fact]
    public void AColumnThatIsMissingIsRefused() => Assert.Equal("coefficients.csv: line 1, column unit: the column is missing",
        Refused(s_text.Replace("value,unit,", "value,units,", StringComparison.Ordinal)));

    [Fact]
    public void AnEmptyTableIsRefused() => Assert.StartsWith("coefficients.csv: line 1", Refused(""), StringComparison.Ordinal);

    // The order of the rows is nobody's business.
    [Fact]
    public void RowsInAnotherOrderAreTheSameTable()
    {
        string[] lines = s_text.TrimEnd('\n').Split('\n');
        CoefficientTable turned = Read(string.Join('\n', lines.Skip(1).Reverse().Prepend(lines[0])));
        Assert.All(Coefficient.All, row => Assert.Equal(row.Value, turned.Get(row.EquationKey, row.Substance.Key)[row.Name]));
    }

    [Fact]
    public void WhatAModelAsksForAndIsNotThereIsNamed()
    {
        CoefficientTable table = CoefficientTable.BuiltIn;
        Assert.Equal("coefficients.csv: there is no row of activity-norrish for starch.",
            Assert.Throws<InvalidOperationException>(() => table.Get("activity-norrish", Constituent.Starch)).Message);
        Assert.Equal("coefficients.csv: activity-norrish of sucrose has no kk.",
            Assert.Throws<InvalidOperationException>(() => table.Get("activity-norrish", Constituent.Sucrose)["kk"]).Message);
        Assert.Equal("coefficients.csv: plato of sucrose has no v0.",
            Assert.Throws<InvalidOperationException>(() => table.Get("plato", Constituent.Sucrose).Terms("v0", "v1", "v2", "v3",
                "v4")).Message);
        Assert.Equal("coefficients.csv: plato of sucrose has 5 coefficients; at most 4 are used.",
            Assert.Throws<InvalidOperationException>(() => table.Get("plato", Constituent.Sucrose).Held("p")).Message);
        Assert.Equal("coefficients.csv: hydrometer of glass has no high.",
            Assert.Throws<InvalidOperationException>(() => table.Get("hydrometer", "glass").Highest).Message);
    }

    [Theory]
    [InlineData("\nsucrose,", "\nglucose,", "line 6, column key: the substance 'glucose' stands twice")]
    [InlineData("\nsucrose,", "\nsaccharose,", "line 1, column key: there is no row of sucrose; every constituent has one")]
    [InlineData("\nprotein,protein,,,,,protein,", "\nprotein,protein,,,,,,", "line 4, column thermal_component: the field is empty")]
    [InlineData(",772,504,20000,", ",772,800,20000,", "line 11, column low_molar_mass: an estimate has a low and a high")]
    [InlineData("342.30,,,carbohydrate", "heavy,,,carbohydrate", "line 5, column molar_mass: 'heavy' is not a number")]
    public void ABrokenTableOfSubstancesIsRefused(string written, string broken, string reason)
    {
        Assert.Contains(written, s_substances, StringComparison.Ordinal);
        int at = s_substances.IndexOf(written, StringComparison.Ordinal);
        string text = s_substances[..at] + broken + s_substances[(at + written.Length)..];
        string message = Assert.Throws<InvalidOperationException>(() => Substance.Read(new StringReader(text))).Message;
        Assert.StartsWith("substances.csv: " + reason, message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\ndensity-sucrose,", "\ndensity-water,", "line 3, column key: the equation 'density-water' stands twice")]
    [InlineData(",7,0 to 100 °C,", ",seven,0 to 100 °C,", "line 2, column coefficients: 'seven' is not a number")]
    public void ABrokenTableOfEquationsIsRefused(string written, string broken, string reason)
    {
        Assert.Contains(written, s_equations, StringComparison.Ordinal);
        string message = Assert.Throws<InvalidOperationException>(() => Equation.Read(new StringReader(s_equations.Replace(written, broken,
            StringComparison.Ordinal)))).Message;
        Assert.StartsWith("equations.csv: " + reason, message, StringComparison.Ordinal);
    }

    [Theory] // a class or a kind without its row once read as no spread at all
    [InlineData("class,packing,log_standard_uncertainty\nliquid,,0.006\n",
        "spreads.csv: line 1, column class: there is no row of syrup for every packing")]
    [InlineData("class,packing,log_standard_uncertainty\nliquid,,0.006\nliquid,,0.007\n",
        "spreads.csv: line 3, column class: 'liquid' stands twice")]
    [InlineData("class,packing,log_standard_uncertainty\nliquid,heaped,0.006\n",
        "spreads.csv: line 2, column packing: 'heaped' is not a packing")]
    [InlineData("class,packing,log_standard_uncertainty\ngas,,0.006\n", "spreads.csv: line 2, column class: 'gas' is not one of")]
    [InlineData("class,packing,log_standard_uncertainty\nliquid,,\n",
        "spreads.csv: line 2, column log_standard_uncertainty: the field is empty")]
    public void ABrokenTableOfSpreadsIsRefused(string text, string reason) => Assert.StartsWith(reason,
        Assert.Throws<InvalidOperationException>(() => TechniqueSpreads.Read(new StringReader(text))).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("evidence,relative_standard_uncertainty\nmeasured,0.05\n",
        "composition_spreads.csv: line 1, column evidence: there is no row of compiled")]
    [InlineData("evidence,relative_standard_uncertainty\nmeasured,0.05\nmeasured,0.05\n",
        "composition_spreads.csv: line 3, column evidence: 'measured' stands twice")]
    [InlineData("evidence,relative_standard_uncertainty\nhearsay,0.05\n",
        "composition_spreads.csv: line 2, column evidence: 'hearsay' is not one of")]
    public void ABrokenTableOfCompositionSpreadsIsRefused(string text, string reason) => Assert.StartsWith(reason,
        Assert.Throws<InvalidOperationException>(() => CompositionSpread.Read(new StringReader(text))).Message, StringComparison.Ordinal);

    [Fact]
    public void SubstancesAreFoundByKey()
    {
        Assert.Same(Substance.Of(Constituent.OtherSugars), Substance.Get(" OTHER sugars "));
        Assert.Null(Substance.Get("ice").Constituent);
        Assert.False(Substance.TryGet("phlogiston", out Substance? none));
        Assert.Null(none);
        Assert.Contains("sucrose", Assert.Throws<ArgumentException>("key", () => Substance.Get("phlogiston")).Message,
            StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>("key", () => Substance.Get(null!));
        Assert.Throws<ArgumentNullException>("key", () => Substance.TryGet(null!, out _));
        Assert.Throws<ArgumentOutOfRangeException>("constituent", () => Substance.Of((Constituent)99));
        Assert.Equal("polyols, as sorbitol", Substance.Of(Constituent.Polyols).ToString());
        Assert.Equal("activity-norrish of sucrose: k = 6.47", Coefficients("activity-norrish", "sucrose")[0].ToString());
        Assert.Equal("standard-atmosphere of air: lapse = 0.0065 K/m", Coefficients("standard-atmosphere", "air")[2].ToString());
    }

    private static List<Coefficient> Coefficients(string equation, string substance) =>
        [.. Equation.Get(equation).Coefficients.Where(row => row.Substance.Key == substance)];

    private static CoefficientTable Read(string text) => CoefficientTable.Read(new StringReader(text), Equation.All);

    private static string Refused(string text) => Assert.Throws<InvalidOperationException>(() => Read(text)).Message;

    private static int LineOf(string text) => s_text[..s_text.IndexOf(text, StringComparison.Ordinal)].Count(c => c == '\n') + 1;

    private static int Rank(Evidence evidence) => evidence switch { Evidence.CommonPractice => 1, Evidence.Estimated
        or Evidence.FromMemory => 2, _ => 0 };

    private static double? Number(string text) => text.Length == 0 ? null : double.Parse(text, CultureInfo.InvariantCulture);

    private static string Embedded(string file)
    {
        using StreamReader text = new(typeof(Ingredient).Assembly.GetManifestResourceStream("Confectio.Data." + file)!);
        return text.ReadToEnd();
    }
}
