using System.Globalization;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Phrases;

/// <summary>
/// Holds the figures of one phrase against each other, two by two: masses by their units, volumes by theirs, a mass against a volume by the
/// densities of the ingredient, a mass against pieces by their weight.
/// </summary>
/// <remarks>
/// Each figure is an interval of grams: half a unit of its last digit to either side, half an ounce where ounces are whole; a volume by the
/// lightest to the heaviest packing that is known, or by the stated one, and 7 % for the tool (household measures hold 5 % more or less).
/// Two figures agree where their intervals meet. Only what cannot be right under any measuring system is said, unless the system is known.
/// </remarks>
internal static class FigureCheck
{
    private const double Tool = 0.07;
    private const double Scale = 0.03;
    private const double Pieces = 0.12;

    /// <summary>A contradiction: where to point, what to say, and the place of the figure that is most likely wrong, or -1.</summary>
    public sealed record Contradiction(int At, string Message, int Suspect);

    /// <summary>The contradiction, and the place of the figure that is most likely wrong; null where all agree.</summary>
    public static Contradiction? Of(Ingredient ingredient, Packing? packing, WrittenAmount main, List<WrittenAmount> seconds,
        MeasuringSystem? system)
    {
        int count = 1 + seconds.Count;
        Span<(double Low, double High)> grams = stackalloc (double, double)[Math.Min(count, 8)];
        Contradiction? worst = null;
        IReadOnlyList<MeasuringSystem> systems = system is null ? MeasuringSystem.All : [system];
        foreach (MeasuringSystem candidate in systems)
        {
            // A system that lacks a unit of the line is not the line's.
            if (system is null && !Knows(candidate, main))
                continue;
            bool all = true;
            foreach (WrittenAmount second in seconds)
                all &= Knows(candidate, second);
            if (system is null && !all)
                continue;
            for (int i = 0; i < grams.Length; i++)
                grams[i] = Interval(ingredient, packing, i == 0 ? main : seconds[i - 1], candidate);
            Contradiction? found = Judge(ingredient, main, seconds, grams);
            if (found is null)
                return null;
            worst ??= found;
        }
        return worst;
    }

    private static bool Knows(MeasuringSystem system, WrittenAmount figure)
    {
        for (int i = 0; i < figure.Amount.PartCount && !figure.Amount.IsPiece; i++)
        {
            if (!(figure.MeasuringSystem ?? system).Defines(figure.Amount.Part(i).Unit))
                return false;
        }
        return true;
    }

    private static Contradiction? Judge(Ingredient ingredient, WrittenAmount main, List<WrittenAmount> seconds,
        ReadOnlySpan<(double Low, double High)> grams)
    {
        if (!FigureVote.Contradict(grams, (double.NaN, double.NaN), out int suspect, out bool isAlone))
            return null;
        int checkedFigures = 0;
        foreach ((double low, _) in grams)
            checkedFigures += double.IsNaN(low) ? 0 : 1;
        WrittenAmount wrong = suspect == 0 ? main : seconds[suspect - 1];
        System.Text.StringBuilder text = new("the figures contradict each other: ");
        for (int i = 0; i < grams.Length; i++)
        {
            if (double.IsNaN(grams[i].Low))
                continue;
            WrittenAmount figure = i == 0 ? main : seconds[i - 1];
            text.Append(i > 0 ? ", " : "").Append(CultureInfo.InvariantCulture,
                $"{figure.Amount} of {ingredient.Name} {(figure.Amount.IsMass ? "is" : "weighs")} {Round(grams[i].Low)} to "
                    + $"{Round(grams[i].High)} g");
        }
        bool named = checkedFigures > 2 && isAlone;
        if (named)
            text.Append(CultureInfo.InvariantCulture, $"; most likely {wrong.Amount} is wrong, which agrees with none of the others");
        else
            text.Append("; which of them is wrong the line does not tell");
        return new Contradiction(wrong.Start, text.ToString(), named ? wrong.Start : -1);
    }

    private static string Round(double grams) => grams.ToString(grams < 10 ? "0.#" : "0", CultureInfo.InvariantCulture);

    private static (double Low, double High) Interval(Ingredient ingredient, Packing? packing, WrittenAmount figure, MeasuringSystem system)
    {
        Amount amount = figure.Amount;
        MeasuringSystem own = figure.MeasuringSystem ?? system;
        double below = 1, above = 1;
        if (RoughMeasure.Of(figure.Fill, figure.Amount) is RoughMeasure fill)
            (below, above) = (fill.Low, fill.High);
        if (figure.IsApproximate)
            (below, above) = (below * 0.8, above * 1.25);
        if (amount.IsMass)
        {
            double half = 0;
            for (int i = 0; i < amount.PartCount; i++)
                half = HalfUnit(amount.Part(i)) * own.GramsPer(amount.Part(i).Unit);
            return ((amount.LowGrams(own) * (1 - Scale) - half) * below, (amount.HighGrams(own) * (1 + Scale) + half) * above);
        }
        if (amount.IsPiece)
        {
            double low = 0, high = 0;
            for (int i = 0; i < amount.PartCount; i++)
            {
                if (!ingredient.TryGetPiece(amount.Part(i).Piece!, out PieceWeight? weight))
                    return (double.NaN, double.NaN);
                low += amount.Part(i).Low.ToDouble() * weight.Grams.Low;
                high += amount.Part(i).High.ToDouble() * weight.Grams.High;
            }
            return (low * (1 - Pieces) * below, high * (1 + Pieces) * above);
        }
        double least = double.PositiveInfinity, greatest = 0;
        foreach (BulkDensity density in ingredient.Densities)
        {
            if (packing is not null && density.Packing != packing && ingredient.TryGetNearestDensity(packing.Value, out _))
                continue;
            double spread = 2 * density.LogUncertainty;
            least = Math.Min(least, Math.Min(density.GramsPerMillilitre.Low, density.GramsPerMillilitre.Likely * Math.Exp(-spread)));
            greatest = Math.Max(greatest, Math.Max(density.GramsPerMillilitre.High, density.GramsPerMillilitre.Likely * Math.Exp(spread)));
        }
        if (greatest == 0)
            return (double.NaN, double.NaN);
        double halfMillilitres = 0;
        for (int i = 0; i < amount.PartCount; i++)
        {
            AmountPart part = amount.Part(i);
            if (!own.Defines(part.Unit))
                return (double.NaN, double.NaN);
            if (part.Unit is KitchenUnit.Millilitre or KitchenUnit.Litre)
                halfMillilitres = HalfUnit(part) * own.MillilitresPer(part.Unit);
        }
        return ((amount.LowMillilitres(own) * (1 - Tool) - halfMillilitres) * least * below,
            (amount.HighMillilitres(own) * (1 + Tool) + halfMillilitres) * greatest * above);
    }

    /// <summary>Half of the last digit that was written: 0.5 for a whole number, a quarter for halves.</summary>
    private static double HalfUnit(AmountPart part) => part.Low.Denominator switch
    {
        1 => 0.5,
        2 => 0.25,
        _ => 0.5 / part.Low.Denominator,
    };
}
