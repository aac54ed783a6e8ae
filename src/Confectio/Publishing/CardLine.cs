using Confectio.Conversions;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Publishing;

/// <summary>A line of a card: a weight in grams and ounces, measures in each kitchen, and its share.</summary>
/// <remarks>
/// Grams that are weighed keep their own digits, up to two decimals; of a quotient whole grams from a hundred on, tenths from one, and two digits below. Grams that were measured have no digit that their
/// spread does not leave sense in (GUM 7.2.6), and none behind the whole gram from a hundred on. Grams of an amount in ounces, and ounces of
/// grams, keep digits by <see cref="ConvertedDigits"/>; an ounce that is written whole or as a fraction is taken as meant to the quarter, an
/// estimate. Worked numbers: 250 g is 8.82 oz; 1 1/2 US cups of sifted icing sugar are 146 g, 5.16 oz.
/// </remarks>
public sealed class CardLine
{
    // Half of the quarter of an ounce to which a whole ounce is meant.
    private const double HalfOunce = 0.125;

    private readonly int _gramsPlace;
    private readonly int _ouncesPlace;
    private readonly int _percentPlace;
    private readonly int _basisPlace;

    internal CardLine(FormulaLine line, CardOptions options, double percent, double? basisPercent, bool isQuotient)
    {
        Line = line;
        Name = options.NameOf(line.Ingredient);
        Measures = [.. options.MeasuringSystems.Select(system => CardMeasure.Of(line, options.DrawerOf(system), options.AllowedError))];
        Percent = percent;
        BasisPercent = basisPercent;
        double grams = line.Grams.Likely, half = HalfOf(line);
        bool isMeasured = line.Grams.LastPlace() is not null && line.AsWritten is not { IsMass: true };
        _gramsPlace = isMeasured ? Math.Max(line.Grams.LastPlace()!.Value, SheetNumbers.FinePlace(grams))
            : half > 0 ? ConvertedDigits.Place(grams, Math.Min(1, half)) : isQuotient ? SheetNumbers.FinePlace(grams) : SheetNumbers.OwnPlace(grams);
        double relative = grams > 0 ? Math.Clamp(0.5 * Math.Pow(10, _gramsPlace) / grams, 1e-15, 1) : 1, u = line.Grams.RelativeUncertainty ?? 0;
        int byGrams = ConvertedDigits.Place(Ounces, half > 0 && !isMeasured ? Math.Clamp(half, 1e-15, 1) : relative);
        _ouncesPlace = isMeasured ? Math.Max(byGrams, (line.Grams * (1 / GramsPerOunce)).LastPlace()!.Value) : byGrams;
        _percentPlace = PlaceOfPercent(percent, isMeasured ? u : 0);
        _basisPlace = PlaceOfPercent(basisPercent ?? 0, isMeasured ? u : 0);
    }

    /// <summary>The line of the formula.</summary>
    public FormulaLine Line { get; }

    /// <summary>The name of the ingredient, in the table that the card asks for.</summary>
    public string Name { get; }

    /// <summary>The weight as it is printed, g.</summary>
    public double PrintedGrams => Printed(Line.Grams.Likely, _gramsPlace);

    /// <summary>The weight, oz of 28.349523125 g.</summary>
    public double Ounces => Line.Grams.Likely / GramsPerOunce;

    /// <summary>The measures, one for each kitchen of the card.</summary>
    public IReadOnlyList<CardMeasure> Measures { get; }

    /// <summary>Its share of what is put in, per cent.</summary>
    public double Percent { get; }

    /// <summary>Its mass in per cent of the basis, such as the flour; <see langword="null"/> where there is none.</summary>
    public double? BasisPercent { get; }

    /// <summary>How the measure is filled, where it matters: a packing that is stated, or the usual one of a food that has several.</summary>
    public Packing? Packing => Line.Packing ?? (Line.Ingredient.Densities.Count > 1 && !Line.Ingredient.FindsItsLevel(Line.Ingredient.DefaultPacking)
        && Line.AsWritten is not { IsPiece: true } ? Line.Ingredient.DefaultPacking : null);

    /// <summary>
    /// The line as a recipe has it, which <c>Phrase.Read</c> reads again: <c>146 g (5.16 oz; 1 1/2 US cups) sifted icing sugar</c>. The
    /// same in every culture.
    /// </summary>
    public override string ToString() => Phrase(SheetNumbers.Invariant);

    internal static double GramsPerOunce { get; } = MeasuringSystem.UsCustomary.GramsPer(KitchenUnit.Ounce);

    /// <summary>How far the printed grams may be off by their rounding; 0 where they were not rounded.</summary>
    internal double RoundingGrams => Math.Abs(PrintedGrams - Line.Grams.Likely) <= 1e-12 * Line.Grams.Likely ? 0 : 0.5 * Math.Pow(10, _gramsPlace);

    internal string Grams(SheetNumbers numbers) => numbers.At(Line.Grams.Likely, _gramsPlace) + " g";

    /// <summary>What the grams may be; empty where they are weighed.</summary>
    internal string GramsRange(SheetNumbers numbers) => Line.Grams.LastPlace() is null ? ""
        : $"{numbers.At(Line.Grams.Low, _gramsPlace)} to {numbers.At(Line.Grams.High, _gramsPlace)} g";

    internal string OuncesText(SheetNumbers numbers) => Line.AsWritten is { IsMass: true } written && !written.Part(0).Unit.IsMetric() ? written.ToString().Replace(" lb + ", " lb ", StringComparison.Ordinal)
        : InPounds(Ounces, _ouncesPlace, numbers);

    internal string PercentText(SheetNumbers numbers) => numbers.Some(Percent, _percentPlace);

    internal string BasisText(SheetNumbers numbers) => BasisPercent is double percent ? numbers.Some(percent, _basisPlace) : "";

    /// <summary>
    /// The name with the packing, which stands before it where it is done before the food is measured, and is not said twice of a food that is
    /// called so.
    /// </summary>
    internal string PackedName => Packing is not Packing packing || Name.Contains(packing.ToWord(), StringComparison.OrdinalIgnoreCase) ? Name
        : packing == Ingredients.Packing.Sifted ? $"{packing.ToWord()} {Name}" : $"{Name}, {packing.ToWord()}";

    internal string Phrase(SheetNumbers numbers)
    {
        IEnumerable<string> measures = Measures.Where(measure => measure.Amount is not null).Select(measure => CardMeasure.WithSystem(measure.Amount!.Value, measure.MeasuringSystem));
        // What the formula itself states in pieces.
        // The reader takes "2 eggs" of a duck egg for another food.
        if (Line.AsWritten is { IsPiece: true } pieces && !Name.Contains(pieces.Part(0).Piece!, StringComparison.OrdinalIgnoreCase))
            measures = measures.Prepend(pieces.ToString());
        return $"{Grams(numbers)} ({string.Join("; ", measures.Prepend(OuncesText(numbers)))}) {PackedName}";
    }

    /// <summary>Ounces; from sixteen on, pounds and ounces.</summary>
    internal static string InPounds(double ounces, int place, SheetNumbers numbers)
    {
        double rounded = Printed(ounces, place);
        if (rounded < 16)
            return numbers.At(ounces, place) + " oz";
        double pounds = Math.Floor(rounded / 16 + 1e-12), rest = rounded - 16 * pounds;
        if (place > 0)
            return numbers.At(ounces / 16, place - 1) + " lb";
        string text = numbers.At(Math.Max(0, rest), place);
        return text.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? numbers.At(pounds, 0) + " lb" : $"{numbers.At(pounds, 0)} lb {text} oz";
    }

    private static double Printed(double value, int place) =>
        double.Parse(SheetNumbers.Invariant.At(value, place), System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture);

    private static int PlaceOfPercent(double percent, double relativeUncertainty)
    {
        int place = percent >= 1 ? -1 : Math.Max(-6, SheetNumbers.FinePlace(percent));
        double u = percent * relativeUncertainty;
        // The place of the last digit that makes sense, as of a mass.
        return u > 0 && Spread.Exactly(percent).WithUncertainty(u).LastPlace() is int sensible ? Math.Max(place, sensible) : place;
    }

    // How far an amount in ounces or pounds may be off by its rounding, in proportion; 0 of grams.
    private static double HalfOf(FormulaLine line)
    {
        if (line.AsWritten is not { IsMass: true, IsRange: false } written || written.Part(0).Unit.IsMetric() || line.Grams.Likely == 0)
            return 0;
        AmountPart last = written.Part(written.PartCount - 1);
        // A decimal is as fine as its last digit; a pound is meant to the ounce.
        double inUnit = last.Low.Denominator switch
        {
            1 or 2 or 3 or 4 or 8 or 16 => last.Unit == KitchenUnit.Pound ? 0.5 / 16 : HalfOunce,
            long parts => 10 % parts == 0 ? 0.05 : 100 % parts == 0 ? 0.005 : 0.5 / parts,
        };
        double half = inUnit * (last.Unit == KitchenUnit.Pound ? 16 : 1);
        return half * GramsPerOunce / line.Grams.Likely;
    }
}
