using System.Globalization;
using System.Runtime.CompilerServices;

namespace Confectio.Cakes;

/// <summary>Refuses lengths by name, value and range, in centimetres; what is let pass is had in centimetres.</summary>
internal static class LengthGuard
{
    /// <summary>A length that a shape may have.</summary>
    public static double Checked(this CakeLength length, [CallerArgumentExpression(nameof(length))] string name = "") =>
        length.Within(PlanShape.MinimumCentimetres, PlanShape.MaximumCentimetres, name);

    public static double Within(
        this CakeLength length, double leastCentimetres, double mostCentimetres,
            [CallerArgumentExpression(nameof(length))] string name = "")
    {
        double centimetres = length.Centimetres;
        return centimetres >= leastCentimetres && centimetres <= mostCentimetres ? centimetres
            : throw new ArgumentOutOfRangeException(name, length, string.Create(CultureInfo.InvariantCulture,
                $"{name} was {length}; it must be from {leastCentimetres:R} to {mostCentimetres:R} cm."));
    }
}
