namespace Confectio.Safety;

/// <summary>What a pH may be here: from 0 to 14, which holds every food; a glass electrode goes no further.</summary>
internal static class Acidity
{
    public const double Minimum = 0, Maximum = 14;

    /// <summary>The pH, or an exception that names it.</summary>
    public static double Checked(double ph, string name = "ph") => Guard.InRange(ph, Minimum, Maximum, name);

    /// <summary>The range of a pH, both of whose ends are one, or an exception that names it.</summary>
    public static Spread Checked(Spread ph, string name = "ph")
    {
        Checked(ph.Low, name);
        Checked(ph.High, name);
        return ph;
    }
}
