using Confectio.Sources;

namespace Confectio.Cooking;

/// <summary>What one source prints of a cooking stage, at sea level.</summary>
internal sealed class StageFigure
{
    internal StageFigure(string printedAs, double lowFahrenheit, double? highFahrenheit, double? sugarPercent, Provenance provenance)
    {
        PrintedAs = printedAs;
        LowFahrenheit = lowFahrenheit;
        HighFahrenheit = highFahrenheit;
        SugarPercent = sugarPercent;
        Provenance = provenance;
    }

    /// <summary>What the source calls it.</summary>
    public string PrintedAs { get; }

    /// <summary>The low end as printed, °F.</summary>
    public double LowFahrenheit { get; }

    /// <summary>The high end as printed, °F; <see langword="null"/> where it could not be read.</summary>
    public double? HighFahrenheit { get; }

    /// <summary>The sugar content as printed, per cent by mass; <see langword="null"/> where the source gives none.</summary>
    public double? SugarPercent { get; }

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>One line, such as <c>soft ball 234 to 240 °F, 85 %: Common practice (common-practice)</c>.</summary>
    public override string ToString()
    {
        FormattableString range = HighFahrenheit is double high
            ? high > LowFahrenheit ? $"{PrintedAs} {LowFahrenheit:0.#} to {high:0.#} °F"
                : (FormattableString)$"{PrintedAs} {LowFahrenheit:0.#} °F"
            : $"{PrintedAs} from {LowFahrenheit:0.#} °F";
        string sugar = SugarPercent is double percent ? FormattableString.Invariant($", {percent:0.#} %") : "";
        return FormattableString.Invariant(range) + sugar + ": " + Provenance;
    }
}
