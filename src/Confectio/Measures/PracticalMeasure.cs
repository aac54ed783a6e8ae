namespace Confectio.Measures;

/// <summary>
/// The fewest fills of cups and spoons that come near enough to a volume, and the error that is left.
/// </summary>
/// <remarks>
/// Fills are counted: <c>2 cups + 1 Tbsp</c> is three fills. Among equal counts the nearer volume wins. The search is exact, in whole
/// numbers, and counts its own steps: with odd tools and a tiny error it stops after two million, and <see cref="IsFewest"/> says whether
/// it had ended by then. Where it had, no smaller count comes within the allowed error. Worked number: 400 mL with the usual US cups and
/// spoons within 2 % is 1 2/3 cups (one cup, twice a third), three fills, 394.3 mL, 1.4 % short.
/// </remarks>
public sealed class PracticalMeasure
{
    private PracticalMeasure(Amount amount, int fills, double wanted, double got, double allowed, bool isFewest)
    {
        Amount = amount;
        Fills = fills;
        WantedMillilitres = wanted;
        Millilitres = got;
        AllowedError = allowed;
        IsFewest = isFewest;
    }

    /// <summary>The measures as an amount, largest first, such as <c>1 2/3 cups</c>.</summary>
    public Amount Amount { get; }

    /// <summary>How many times a tool is filled.</summary>
    public int Fills { get; }

    /// <summary>The volume asked for, in millilitres.</summary>
    public double WantedMillilitres { get; }

    /// <summary>The volume the measures hold, in millilitres.</summary>
    public double Millilitres { get; }

    /// <summary>The error allowed, as a fraction of the volume asked for.</summary>
    public double AllowedError { get; }

    /// <summary>
    /// Whether the search ended, so that no other filling within the allowed error is of fewer fills, nor nearer of as many.
    /// Where it is false, this is the best of two million steps and there may be a better one.
    /// </summary>
    public bool IsFewest { get; }

    /// <summary>The error left, as a fraction of the volume asked for; negative where the measures hold less.</summary>
    public double RelativeError => Millilitres / WantedMillilitres - 1;

    /// <summary>The measures and the error, such as <c>1 2/3 cups (-1.4 %)</c>.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture,
        $"{Amount} ({RelativeError:+0.0 %;-0.0 %;0.0 %})");

    /// <summary>Finds the fewest fills within an allowed error.</summary>
    /// <param name="millilitres">The volume wanted, from 0.01 to 1 000 000 mL.</param>
    /// <param name="tools">The tools to hand.</param>
    /// <param name="allowedError">The largest error allowed, as a fraction from 0 to 0.5; 0.02 is two per cent.</param>
    /// <returns>
    /// The measures, or <see langword="null"/> where no filling of these tools comes within the allowed error, or none was found in two
    /// million steps.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="tools"/> is null.</exception>
    public static PracticalMeasure? Find(double millilitres, MeasuringTools tools, double allowedError = 0.02) =>
        Search(millilitres, tools, allowedError, out _);

    /// <summary>Finds the fewest fills within an allowed error, and says whether the search ended.</summary>
    /// <param name="millilitres">The volume wanted, from 0.01 to 1 000 000 mL.</param>
    /// <param name="tools">The tools to hand.</param>
    /// <param name="allowedError">The largest error allowed, as a fraction from 0 to 0.5; 0.02 is two per cent.</param>
    /// <param name="settled">
    /// Whether every filling was looked at or ruled out. Where it is false, no measure only means that two million steps found none.
    /// </param>
    /// <returns>The measures, or <see langword="null"/> where none was found.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="tools"/> is null.</exception>
    public static PracticalMeasure? Search(double millilitres, MeasuringTools tools, double allowedError, out bool settled)
    {
        Guard.InRange(millilitres, 0.01, 1_000_000);
        Guard.InRange(allowedError, 0, 0.5);
        Guard.NotNull(tools);
        FewestFills search = new(tools, millilitres, allowedError);
        bool found = search.TryFind(out int[] counts, out long filled);
        settled = search.IsSettled;
        if (!found)
            return null;
        double got = (double)filled * tools.CommonMeasure.Numerator / tools.CommonMeasure.Denominator;
        return new PracticalMeasure(Collect(tools, counts), counts.Sum(), millilitres, got, allowedError, settled);
    }

    // 1 cup and 1/2 cup are written together as 1 1/2 cups, and twice 1/3 cup as 2/3; but nobody can fill 11/12 of a cup, so a
    // second fraction of the same unit stands by itself.
    private static Amount Collect(MeasuringTools tools, int[] counts)
    {
        List<AmountPart> parts = [];
        for (int i = 0; i < counts.Length; i++)
        {
            if (counts[i] == 0)
                continue;
            AmountPart tool = tools.Tools[i];
            Fraction quantity = tool.Low * counts[i];
            int whole = parts.FindIndex(part => part.Unit == tool.Unit && part.Low.IsWhole);
            if (whole >= 0 && quantity < 1)
                parts[whole] = Part(parts[whole].Low + quantity, tool.Unit);
            else
                parts.Add(Part(quantity, tool.Unit));
        }
        return new Amount(parts[0], parts.Count == 1 ? null : parts.GetRange(1, parts.Count - 1).ToArray());
    }

    private static AmountPart Part(Fraction quantity, KitchenUnit unit) => new(quantity, quantity, unit, null);
}
