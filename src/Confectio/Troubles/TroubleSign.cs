using System.Globalization;
using Confectio.Sources;

namespace Confectio.Troubles;

/// <summary>One condition of a cause: a figure, from where it speaks for the cause, and from where the case is clear.</summary>
public sealed class TroubleSign
{
    internal TroubleSign(TroubleFigure? figure, double begins, double clear, Provenance provenance)
    {
        Figure = figure;
        Begins = figure is null ? null : begins;
        Clear = figure is null ? null : clear;
        Provenance = provenance;
    }

    /// <summary>What is looked at, such as <c>solid fat of the mix, % of the fat</c>; empty where no figure tells the cause.</summary>
    public string Quantity => Figure is null ? "" : Figure.Unit.Length > 0 ? $"{Figure.Name}, {Figure.Unit}" : Figure.Name;

    /// <summary>From where on it speaks for the cause; <see langword="null"/> where no figure tells.</summary>
    public double? Begins { get; }

    /// <summary>From where on the case is clear: below <see cref="Begins"/> where little of it is the trouble. A judgement where the note says so.</summary>
    public double? Clear { get; }

    /// <summary>What the rule rests on.</summary>
    public Provenance Provenance { get; }

    /// <summary>What to measure or to tell so that it can be judged.</summary>
    public string Measure => Figure?.Measure ?? "";

    internal TroubleFigure? Figure { get; }

    /// <summary>The rule as the end of a sentence: <c>the rule begins at 25 % of the fat and more (McGee 2004, Fat consistency (compiled))</c>.</summary>
    internal string Rule => Figure is null ? $"no figure tells it ({Provenance})" : string.Create(CultureInfo.InvariantCulture,
        $"the rule begins at {Begins:0.##}{(Figure.Unit.Length > 0 ? " " + Figure.Unit : "")} and {(Clear > Begins ? "more" : "less")} ({Basis})");

    // Common practice and an estimate of ours are their own sources.
    private string Basis => Provenance.Evidence switch { Evidence.CommonPractice => "common practice", Evidence.Estimated => "an estimate", _ => Provenance.ToString() };

    /// <summary>A line of text: <c>solid fat of the mix, % of the fat: 25 and more (McGee 2004, Fat consistency (compiled))</c>.</summary>
    public override string ToString() => Figure is null ? $"no figure tells it ({Provenance})" : string.Create(CultureInfo.InvariantCulture,
        $"{Quantity}: {Begins:0.##} and {(Clear > Begins ? "more" : "less")} ({Provenance})");

    /// <summary>How far past the beginning a figure is: 0 there, 1 where the case is clear.</summary>
    internal Spread Past(Spread value)
    {
        double span = Clear!.Value - Begins!.Value, a = (value.Low - Begins.Value) / span, b = (value.High - Begins.Value) / span;
        return new Spread(Math.Min(a, b), (value.Likely - Begins.Value) / span, Math.Max(a, b), value.Basis > SpreadBasis.Judged ? value.Basis : SpreadBasis.Judged);
    }
}
