using System.Globalization;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>
/// Judges a printed temperature table: columns <c>what</c>, <c>fahrenheit</c> and <c>celsius</c>; one of the two may be absent or empty.
/// </summary>
/// <remarks>
/// A pair agrees where |F - (1.8 C + 32)| is within half a rounding step of each: 0.9 u_C + 0.5 u_F. Printed temperatures are
/// rounded by custom, so the step u is the largest of 1, 5, 10 and 25 (25 for Fahrenheit only) that divides the figure:
/// 350 °F and 180 °C agree (176.7 °C exactly). Half as much again is doubtful, more is wrong. A lone figure is held against
/// what the named process can have; where both units would do (an oven at 200), the row is doubtful and says so.
/// A row whose <c>what</c> speaks of a difference, a rise or a drop is a difference: F = 1.8 C, without the 32.
/// Syrup temperatures are for sea level; altitude is not judged here.
/// </remarks>
public static class TemperatureTableVetter
{
    // What is longer is no name, and would be printed whole beside its row.
    private const int LongestName = 200;

    private const double MinimumCelsius = -60, MaximumCelsius = 500;

    private static readonly NumberFormatInfo s_comma = new() { NumberDecimalSeparator = ",", NumberGroupSeparator = "." };

    /// <summary>Judges a table.</summary>
    /// <param name="table">The text of the table. It is read once, from start to end.</param>
    /// <param name="ingredients">
    /// The ingredients whose names tell a row of egg from another; dishes that are usually made with egg are known besides.
    /// </param>
    /// <param name="reading">Whether decimals have a point or a comma.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="table"/> or <paramref name="ingredients"/> is null.</exception>
    public static TemperatureVerdict Vet(TextReader table, IngredientTable ingredients, AmountReading reading = AmountReading.DecimalPoint)
    {
        Guard.NotNull(table);
        EggNames egg = new(Guard.NotNull(ingredients));
        ProblemList problems = [];
        List<PrintedTemperature> rows = [];
        bool namesEgg = false;
        DelimitedTable.Read(table, problems, header =>
        {
            int what = header.Find("what"), fahrenheit = header.Find("fahrenheit"), celsius = header.Find("celsius");
            header.RequireColumns(["what"], problems, "; a header line with what, fahrenheit and celsius was expected");
            header.RequireEither("fahrenheit", "celsius", problems);
            if (problems.Count > 0)
                return null;
            return row =>
            {
                long before = problems.Total;
                // Of a row that cannot be read, too: whose temperature is not known has not become safe by it.
                namesEgg = namesEgg || egg.AreIn(row[what]);
                double? f = Number(row, fahrenheit, "fahrenheit", MinimumCelsius * 1.8 + 32, MaximumCelsius * 1.8 + 32, reading, problems);
                double? c = Number(row, celsius, "celsius", MinimumCelsius, MaximumCelsius * 1.8 + 32, reading, problems);
                if (problems.Total == before && f is null && c is null)
                    problems.Add(new Problem(row.Line, null, "the row has no temperature"));
                if (problems.Total == before)
                    rows.Add(new PrintedTemperature(row.Line,
                        (row[what].Length <= LongestName ? row[what] : row[what][..LongestName]).ToString(), f, c));
            };
        });
        TemperatureFinding[] findings = [.. Enumerable.Range(0, rows.Count).Select(i => Judge(rows, i))];
        problems.SortByLine();
        return new TemperatureVerdict(findings, problems, findings.Length > 0, namesEgg);
    }

    private static double? Number(DelimitedRow row, int column, string name, double low, double high, AmountReading reading,
        ProblemList problems)
    {
        ReadOnlySpan<char> field = row[column];
        if (field.IsEmpty)
            return null;
        ReadOnlySpan<char> number = field.TrimEnd("FfCc°º ").Trim();
        NumberFormatInfo format = reading == AmountReading.DecimalComma ? s_comma : NumberFormatInfo.InvariantInfo;
        if (double.TryParse(number, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, format, out double value)
            && value >= low && value <= high)
            return value;
        problems.Add(new Problem(row.Line, name, string.Create(CultureInfo.InvariantCulture,
            $"{Excerpt.Of(field)} is not a temperature from {low:0} to {high:0}")));
        return null;
    }

    private static TemperatureFinding Judge(List<PrintedTemperature> rows, int index)
    {
        PrintedTemperature row = rows[index];
        if (row.Fahrenheit is not double f || row.Celsius is not double c)
            return JudgeLone(row);
        double miss = Math.Abs(f - (1.8 * c + row.Offset)), allowed = Allowed(f, c);
        if (miss <= allowed)
            return new TemperatureFinding(row, Verdict.Agrees, null, "agrees");
        TemperatureReason reason = PairReason(rows, index, f, c);
        Verdict verdict = miss <= 1.5 * allowed && reason == TemperatureReason.Unexplained ? Verdict.Doubtful : Verdict.Wrong;
        return new TemperatureFinding(row, verdict, reason, string.Create(CultureInfo.InvariantCulture,
            $"{f:0.#} °F {(row.IsDifference ? "of difference " : "")}is {row.ExpectedCelsius:0.#} °C, not {c:0.#} °C; {Cause(reason)}"));
    }

    private static TemperatureFinding JudgeLone(PrintedTemperature row)
    {
        if (row.IsDifference || !ProcessWindows.TryGet(row.What, out double low, out double high))
            return new TemperatureFinding(row, Verdict.Unknown, null, "one temperature alone, of nothing we know, cannot be judged");
        double printed = row.Fahrenheit ?? row.Celsius!.Value;
        bool asFahrenheit = Within((printed - 32) / 1.8, low, high), asCelsius = Within(printed, low, high);
        bool asPrinted = row.Fahrenheit is null ? asCelsius : asFahrenheit, asOther = row.Fahrenheit is null ? asFahrenheit : asCelsius;
        string unit = row.Fahrenheit is null ? "°C" : "°F", other = row.Fahrenheit is null ? "°F" : "°C";
        return (asPrinted, asOther) switch
        {
            (true, true) => new TemperatureFinding(row, Verdict.Doubtful, TemperatureReason.OtherUnit,
                string.Create(CultureInfo.InvariantCulture, $"{printed:0.#} would do for this in {unit} and in {other}; print both")),
            (true, false) => new TemperatureFinding(row, Verdict.Agrees, null, "agrees with what the process can have"),
            (false, true) => new TemperatureFinding(row, Verdict.Wrong, TemperatureReason.OtherUnit,
                string.Create(CultureInfo.InvariantCulture, $"{printed:0.#} {unit} is outside what this can have; most likely it is "
                    + $"{other}")),
            _ => new TemperatureFinding(row, Verdict.Wrong, TemperatureReason.OutsideProcess,
                string.Create(CultureInfo.InvariantCulture, $"{printed:0.#} {unit} is outside what this can have, {low:0} to {high:0} °C")),
        };
    }

    /// <summary>What most likely happened to a pair that does not agree; of rows above and below where there are any.</summary>
    internal static TemperatureReason PairReason(List<PrintedTemperature> rows, int index, double f, double c)
    {
        bool difference = rows[index].IsDifference;
        double offset = rows[index].Offset;
        if (Agrees(c, f, offset))
            return TemperatureReason.ColumnsSwapped;
        if (!difference && Math.Abs(f - c) < 0.5)
            return TemperatureReason.OtherUnit;
        if (!difference && Near(f / 1.8, c))
            return TemperatureReason.PointAsDifference;
        if (difference && (Near((f - 32) / 1.8, c) || Near(c * 1.8 + 32, f)))
            return TemperatureReason.DifferenceAsPoint;
        if (Swaps(f).Any(value => Agrees(value, c, offset)) || Swaps(c).Any(value => Agrees(f, value, offset)))
            return TemperatureReason.DigitsSwapped;
        if (Agrees(f, c * 10, offset) || Agrees(f, c / 10, offset) || Agrees(f * 10, c, offset) || Agrees(f / 10, c, offset))
            return TemperatureReason.DecimalShift;
        foreach (int neighbour in (ReadOnlySpan<int>)[index - 1, index + 1])
        {
            if (neighbour >= 0 && neighbour < rows.Count && (rows[neighbour].Celsius == c || rows[neighbour].Fahrenheit == f))
                return TemperatureReason.CopiedRow;
        }
        return TemperatureReason.Unexplained;
    }

    private static IEnumerable<double> Swaps(double value)
    {
        if (value != Math.Floor(value) || value < 10)
            yield break;
        char[] digits = value.ToString("0", CultureInfo.InvariantCulture).ToCharArray();
        for (int i = 0; i + 1 < digits.Length; i++)
        {
            char[] swapped = (char[])digits.Clone();
            (swapped[i], swapped[i + 1]) = (digits[i + 1], digits[i]);
            yield return double.Parse(swapped, CultureInfo.InvariantCulture);
        }
    }

    internal static bool Agrees(double f, double c, double offset) => Math.Abs(f - (1.8 * c + offset)) <= Allowed(f, c);

    // A slip of arithmetic is exact but for the rounding of its result.
    private static bool Near(double expected, double printed) =>
        Math.Abs(expected - printed) <= Math.Max(1, 0.5 * Step(printed, twentyFives: false));

    internal static double Allowed(double f, double c) => 0.9 * Step(c, twentyFives: false) + 0.5 * Step(f, twentyFives: true);

    private static double Step(double printed, bool twentyFives)
    {
        if (printed != Math.Floor(printed))
            return 0.1;
        return twentyFives && printed % 25 == 0 ? 25 : printed % 10 == 0 ? 10 : printed % 5 == 0 ? 5 : 1;
    }

    private static bool Within(double celsius, double low, double high) => celsius >= low && celsius <= high;

    internal static string Cause(TemperatureReason reason) => reason switch
    {
        TemperatureReason.ColumnsSwapped => "the two columns changed places",
        TemperatureReason.OtherUnit => "the same figure stands in both columns",
        TemperatureReason.PointAsDifference => "the 32 was left out",
        TemperatureReason.DifferenceAsPoint => "the 32 does not belong in a difference",
        TemperatureReason.DigitsSwapped => "two digits changed places",
        TemperatureReason.DecimalShift => "the decimal mark is one place off",
        TemperatureReason.CopiedRow => "one figure is that of the row above or below",
        _ => "no usual slip explains it",
    };
}
