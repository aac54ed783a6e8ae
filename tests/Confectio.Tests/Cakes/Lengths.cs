using Confectio.Cakes;

namespace Confectio.Tests.Cakes;

/// <summary>Lengths as the tests of cakes write them.</summary>
internal static class Lengths
{
    public static CakeLength Cm(double centimetres) => CakeLength.FromCentimetres(centimetres);
}
