using System.Globalization;
using Confectio.Sources;

namespace Confectio.Heat;

/// <summary>What a heat balance was asked for, or why there is no such number.</summary>
public sealed class HeatAnswer
{
    internal HeatAnswer(Spread? value, string unit, string reason)
    {
        Value = value;
        Unit = unit;
        Reason = reason;
    }

    /// <summary>
    /// The answer; <see langword="null"/> where there is none. Its ends are the likely value with the two constants of water, the solid
    /// fat, the heats of melting, the dissolving and the vessels each at their ends, added up as squares.
    /// </summary>
    public Spread? Value { get; }

    /// <summary>The unit, such as <c>°C</c> or <c>g</c>.</summary>
    public string Unit { get; }

    /// <summary>Why there is no answer, or what is odd about it; may be empty.</summary>
    public string Reason { get; }

    /// <summary>One line, such as <c>18.4 °C (17.9 to 19.1)</c>, or the reason.</summary>
    public override string ToString() => Value is Spread value
        ? string.Create(CultureInfo.InvariantCulture, $"{value.Likely:0.0} {Unit} ({value.Low:0.0} to "
            + $"{value.High:0.0})") + (Reason.Length > 0 ? "; " + Reason : "")
        : Reason;
}
