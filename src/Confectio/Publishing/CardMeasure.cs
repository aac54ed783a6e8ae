using System.Globalization;
using Confectio.Conversions;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Publishing;

/// <summary>A line of a card in one kitchen's cups and spoons; or why there is no measure near enough.</summary>
public sealed class CardMeasure
{
    // Who fills a cup twenty times has lost count.
    private const int MostFills = 20;

    private const double MostOfALevelOne = 0.02;

    private CardMeasure(MeasuringSystem system, Amount? amount, double relativeError, string reason, Conversion? by)
    {
        MeasuringSystem = system;
        Amount = amount;
        RelativeError = relativeError;
        Reason = reason;
        By = by;
    }

    /// <summary>Whose cups and spoons.</summary>
    public MeasuringSystem MeasuringSystem { get; }

    /// <summary>The measures, such as <c>1 cup + 3 Tbsp</c>; <see langword="null"/> where the line is to be weighed.</summary>
    public Amount? Amount { get; }

    /// <summary>How much more than the line they hold, as a fraction of it; below 0 where they hold less. 0 where there are none.</summary>
    public double RelativeError { get; }

    /// <summary>Why there is no measure; empty where there is one.</summary>
    public string Reason { get; }

    /// <summary>By what weight of a measure; <see langword="null"/> where none was needed.</summary>
    public Conversion? By { get; }

    /// <summary>The measures and whose they are, such as <c>1 metric cup + 3 Tbsp</c>; or that it is to be weighed, and why.</summary>
    public override string ToString() => Amount is Amount amount ? WithSystem(amount, MeasuringSystem) : $"weigh it: {Reason}";

    internal static CardMeasure Of(FormulaLine line, MeasuringTools tools, double allowedError)
    {
        MeasuringSystem system = tools.MeasuringSystem;
        if (line.Grams.Likely == 0)
            return None("there is none in it", null);
        if (line is { AsWritten: Amount { IsVolume: true } written, MeasuringSystem: MeasuringSystem own } && IsLevel(line, written, own))
        {
            // A measure that the formula states for this kitchen stands, unless a cook would fill a larger tool for it.
            if (own == system)
                return new CardMeasure(system, Sensible(written, tools), 0, "", line.Measured?.By);
            return Find(written.Millilitres(own), line.Measured?.By);
        }
        Packing packing = line.Packing ?? line.Ingredient.DefaultPacking;
        if (!line.Ingredient.TryGetNearestDensity(packing, out _))
            return None("nobody weighed a measure of it", null);
        Conversion conversion = line.Packing is Packing stated ? Conversion.Of(line.Ingredient, stated, system) : Conversion.Of(line.Ingredient, system);
        return Find(line.Grams.Likely / conversion.Density.GramsPerMillilitre.Likely, conversion);

        CardMeasure Find(double millilitres, Conversion? by)
        {
            double largest = Millilitres(tools.Tools[0]), smallest = Millilitres(tools.Tools[^1]);
            if (millilitres < smallest * (1 - allowedError) || millilitres < 0.01)
                return None($"it is less than {tools.Tools[^1]}", by);
            if (millilitres > MostFills * largest || millilitres > 1e6)
                return None(string.Create(CultureInfo.InvariantCulture, $"it is more than {MostFills} times {tools.Tools[0]}"), by);
            return PracticalMeasure.Find(millilitres, tools, allowedError) is { Fills: <= MostFills } found
                ? new CardMeasure(system, Joined(found.Amount, tools), found.RelativeError, "", by)
                : None(string.Create(CultureInfo.InvariantCulture, $"no filling comes within {100 * allowedError:0.#} %"), by);
        }

        double Millilitres(AmountPart tool) => tool.Low.ToDouble() * system.MillilitresPer(tool.Unit);

        CardMeasure None(string reason, Conversion? by) => new(system, null, 0, reason, by);
    }

    /// <summary>The measures with whose they are before the first unit, as the reader of phrases reads it: <c>1 metric cup + 3 Tbsp</c>.</summary>
    internal static string WithSystem(Amount amount, MeasuringSystem system)
    {
        string text = amount.ToString(), word = system.Key switch
        {
            "us-customary" or "us-labelling" => "US",
            "metric" => "metric",
            "australian" => "Australian",
            "imperial" => "imperial",
            "japanese" => "Japanese",
            _ => "",
        };
        AmountPart first = amount.Part(0);
        // Millilitres are everybody's.
        if (word.Length == 0 || first.Unit.IsMetric() || first.Unit == KitchenUnit.Piece)
            return text;
        int at = text.IndexOf(" " + first.Unit.ToWord(), StringComparison.Ordinal);
        return $"{text[..at]} {word}{text[at..]}";
    }

    // A heaped spoon weighs more than a level one, and its line has no word for that: it is measured anew, level.
    private static bool IsLevel(FormulaLine line, Amount written, MeasuringSystem own) => line.Measured is not { By: Conversion by, Assumed.Count: > 0 }
        || Math.Abs(line.Grams.Likely / by.Density.GramsPerMillilitre.Likely / written.Millilitres(own) - 1) < MostOfALevelOne;

    // Twelve teaspoons are four tablespoons, and these a quarter of a cup: the same to the last drop, in fewer fills.
    private static Amount Sensible(Amount written, MeasuringTools tools)
    {
        if (written.IsRange || !IsMuch(written))
            return written;
        double millilitres = written.Millilitres(tools.MeasuringSystem);
        return millilitres is >= 0.01 and <= 1e6 && PracticalMeasure.Find(millilitres, tools, 1e-9) is { Fills: <= MostFills } found ? Joined(found.Amount, tools) : written;
    }

    private static bool IsMuch(Amount written)
    {
        for (int i = 0; i < written.PartCount; i++)
        {
            AmountPart part = written.Part(i);
            if (part.Unit switch
            {
                KitchenUnit.Teaspoon or KitchenUnit.Dessertspoon => part.Low >= 3,
                KitchenUnit.Tablespoon => part.Low >= 4,
                _ => false,
            })
                return true;
        }
        return false;
    }

    // Half a cup and a quarter are three quarters to every cook, and 200 mL and 50 mL are 250.
    private static Amount Joined(Amount amount, MeasuringTools tools)
    {
        List<AmountPart> parts = [];
        for (int i = 0; i < amount.PartCount; i++)
        {
            AmountPart part = amount.Part(i);
            int last = parts.Count - 1;
            if (last >= 0 && parts[last].Unit == part.Unit && IsOneMeasure(parts[last].Low + part.Low, part.Unit))
                parts[last] = new AmountPart(parts[last].Low + part.Low, parts[last].Low + part.Low, part.Unit, null);
            else
                parts.Add(part);
        }
        // Within a unit the larger first: 2/3 cup + 1/2 cup.
        parts = [.. parts.OrderByDescending(part => tools.MeasuringSystem.MillilitresPer(part.Unit)).ThenByDescending(part => part.Low.ToDouble())];
        return new Amount(parts[0], parts.Count == 1 ? null : [.. parts.Skip(1)]);
    }

    private static bool IsOneMeasure(Fraction sum, KitchenUnit unit) => unit.IsMetric() || sum.Denominator is 1 or 2 or 4 || (sum.Denominator == 3 && unit == KitchenUnit.Cup);
}
