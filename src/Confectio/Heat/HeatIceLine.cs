namespace Confectio.Heat;

/// <summary>Ice: below 0 °C by itself, water in the mix.</summary>
internal sealed class HeatIceLine(double grams, double celsius) : HeatLine("ice", grams, celsius, (ThermalMatter.MinimumCelsius, 0))
{
    private static readonly HeatPolynomial s_ice = ThermalMatter.OfIce();

    internal override bool IsIce => true;

    internal override double WaterKilograms => Grams / 1000;

    internal override double Capacity => Grams / 1000 * ThermalMatter.OfWater(WaterHeat.ChoiOkos).At(20);

    public override HeatLine At(double celsius) => new HeatIceLine(Grams, celsius);

    internal override double Content(in HeatChoices choices) =>
        Grams / 1000 * (s_ice.FromZero(Celsius) - HeatFigure.MeltingOfIce.Value.Likely);

    internal override double ContentMixed(double celsius, in HeatChoices choices) =>
        Grams / 1000 * ThermalMatter.OfWater(choices.Water).FromZero(celsius);

    private protected override double Sensible(double celsius, in HeatChoices choices) => Grams / 1000 * s_ice.FromZero(celsius);
}
