namespace Confectio.Heat;

/// <summary>A specific heat A + B·t + C·t², kJ/(kg·K), and its integral.</summary>
internal readonly struct HeatPolynomial(double a, double b, double c)
{
    private readonly double _a = a, _b = b, _c = c;

    public static HeatPolynomial Of(ThermalEquation equation) => new(equation.A, equation.B, equation.C);

    public double At(double celsius) => _a + celsius * (_b + celsius * _c);

    /// <summary>The heat from 0 °C to a temperature, kJ/kg.</summary>
    public double FromZero(double celsius) => celsius * (_a + celsius * (_b / 2 + celsius * _c / 3));
}
