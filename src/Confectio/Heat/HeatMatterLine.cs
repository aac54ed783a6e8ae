using Confectio.Formulas;
using Confectio.Ingredients;

namespace Confectio.Heat;

/// <summary>An ingredient, or a formula that was mixed before: matter whose fat melts and whose sugar may be crystals.</summary>
internal sealed class HeatMatterLine : HeatLine
{
    private readonly ThermalMatter _matter;
    private readonly HeatPolynomial[] _heats; // by WaterHeat
    private readonly MeltingFat[] _fats;
    private readonly SugarState _sugar;

    private HeatMatterLine(string name, double grams, double celsius, ThermalMatter matter, MeltingFat[] fats, SugarState sugar)
        : base(name, grams, celsius, matter.Range(sugar))
    {
        _matter = matter;
        _heats = [matter.SpecificHeat(WaterHeat.ChoiOkos), matter.SpecificHeat(WaterHeat.Ashrae)];
        _fats = fats;
        _sugar = sugar;
    }

    public override double CrystalGrams => Grams * _matter.Crystals(_sugar, Celsius);

    public override IReadOnlyList<string> FatsWithoutCurve =>
        [.. _fats.Where(fat => fat.Curve is null).Select(fat => fat.Name).Distinct(StringComparer.Ordinal)];

    internal override bool Melts => Array.Exists(_fats, fat => fat.Curve is not null);

    internal override double WaterKilograms => Grams / 1000 * _matter.WaterPerGram;

    internal override double SucroseKilograms => Grams / 1000 * _matter.Sucrose;

    internal override double Capacity => Grams / 1000 * _heats[0].At(20);

    internal static HeatMatterLine Make(Ingredient ingredient, double grams, double celsius, SugarState sugar)
    {
        List<MeltingFat> fats = [];
        AddFats(fats, ingredient, 1 / ingredient.Composition.Sum);
        return new HeatMatterLine(ingredient.Name, grams, celsius, ThermalMatter.Of(ingredient.Composition), [.. fats], sugar);
    }

    internal static HeatMatterLine Make(Formula formula, double celsius, SugarState sugar)
    {
        List<MeltingFat> fats = [];
        double constituents = formula.Lines.Sum(line => line.Grams.Likely * line.Ingredient.Composition.Sum) - formula.BoiledOffGrams;
        foreach (FormulaLine line in formula.Lines)
            AddFats(fats, line.Ingredient, line.Grams.Likely / constituents);
        string name = formula.Name.Length > 0 ? formula.Name : "formula";
        return new HeatMatterLine(name, formula.TotalGrams, celsius, ThermalMatter.Of(formula), [.. fats], sugar);
    }

    public override HeatLine At(double celsius) => new HeatMatterLine(Name, Grams, celsius, _matter, _fats, _sugar);

    public override HeatLine WithFat(SolidFatCurve curve)
    {
        Guard.NotNull(curve);
        return _matter.FatPerGram > 0
            ? new HeatMatterLine(Name, Grams, Celsius, _matter, [new MeltingFat(Name, curve, _matter.FatPerGram)], _sugar) : this;
    }

    internal override double Content(in HeatChoices choices)
    {
        double crystals = CrystalGrams / 1000, content = base.Content(choices);
        return crystals > 0 ? content + crystals * CrystalContent(Celsius, choices.DissolvingSide) : content;
    }

    private protected override double Sensible(double celsius, in HeatChoices choices) =>
        Grams / 1000 * _heats[(int)choices.Water].FromZero(celsius);

    private protected override double Solid(double celsius, in HeatChoices choices)
    {
        double sum = 0;
        foreach (MeltingFat fat in _fats)
        {
            if (fat.Curve is SolidFatCurve curve)
                sum += fat.PerGram * Side(curve.LatentHeat, choices.LatentSide) * curve.SolidFraction(celsius, choices.SolidSide);
        }
        return Grams / 1000 * sum;
    }

    private static void AddFats(List<MeltingFat> fats, Ingredient ingredient, double share)
    {
        Composition composition = ingredient.Composition;
        double milkFat = composition.MilkFat, other = composition[Constituent.Fat] - milkFat;
        if (milkFat > 0)
            fats.Add(new MeltingFat(ingredient.Name, SolidFatCurve.MilkFat, milkFat * share));
        if (other > 0)
            fats.Add(new MeltingFat(ingredient.Name, IngredientFat.TryGet(ingredient, out IngredientFat? fat) ? fat.Curve : null,
                other * share));
    }

    // A fat in the line, by whose it is; no curve where its melting is not known.
    private readonly record struct MeltingFat(string Name, SolidFatCurve? Curve, double PerGram);
}
