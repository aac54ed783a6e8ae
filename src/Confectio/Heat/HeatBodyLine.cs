namespace Confectio.Heat;

/// <summary>A bowl, a pot, a can: a body with one specific heat at all temperatures.</summary>
internal sealed class HeatBodyLine(string name, VesselMaterial material, double grams, double celsius)
    : HeatLine(name, grams, celsius, (ThermalMatter.MinimumCelsius, ThermalMatter.MaximumCelsius))
{
    internal override bool HasSpreadOfVessel => material.SpecificHeat.High > material.SpecificHeat.Low;

    internal override double Capacity => Grams / 1000 * material.SpecificHeat.Likely;

    public override HeatLine At(double celsius) => new HeatBodyLine(Name, material, Grams, celsius);

    private protected override double Sensible(double celsius, in HeatChoices choices) =>
        Grams / 1000 * (Side(material.SpecificHeat, choices.VesselSide) * celsius);
}
