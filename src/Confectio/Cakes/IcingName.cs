using System.Globalization;
using System.Runtime.CompilerServices;
using Confectio.Text;

namespace Confectio.Cakes;

/// <summary>Names by which a cake speaks of its icings; what they are made of is known elsewhere.</summary>
internal static class IcingName
{
    public const int MostCharacters = 100;

    public static string Check(string icing, [CallerArgumentExpression(nameof(icing))] string name = "")
    {
        Guard.NotNull(icing, name);
        if (string.IsNullOrWhiteSpace(icing) || icing.Length > MostCharacters)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{name} was {Excerpt.Of(icing)}; a name of 1 to {MostCharacters} characters is expected."), name);
        return icing;
    }
}
