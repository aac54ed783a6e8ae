using Confectio.Heat;
using Confectio.Ingredients;
using FsCheck;
using FsCheck.Fluent;

namespace Confectio.Tests.Heat;

/// <summary>Lines that a kitchen could mix: food of any kind from 0 to 100 °C, bowls, and now and then sugar that was dissolved before.</summary>
public sealed record KitchenMix(HeatLine[] Lines, double Loss, WaterHeat Water, SugarDissolves Sugar)
{
    public HeatBalance Balance => HeatBalance.Of(Lines, Loss, Water, Sugar);

    public override string ToString() => $"{string.Join("; ", Lines.Select(line => FormattableString.Invariant($"{line}, {line.CrystalGrams} g of crystals")))}; loss {FormattableString.Invariant($"{Loss}")}; {Water}; {Sugar}";
}

/// <summary>Mixes of one to eight lines.</summary>
public static class HeatGenerators
{
    private static Gen<double> Celsius { get; } = Gen.Frequency((1, Gen.Elements(0.0, 5.0, 20.0, 40.0, 100.0)), (6, Gen.Choose(0, 100_000).Select(value => value / 1000.0)));

    private static Gen<double> Mass { get; } = from exponent in Gen.Choose(0, 3) from mantissa in Gen.Choose(1000, 9999) select mantissa / 1000.0 * Math.Pow(10, exponent);

    private static Gen<HeatLine> Food { get; } =
        from ingredient in Gen.Elements(IngredientTable.BuiltIn.All.ToArray())
        from grams in Mass
        from celsius in Celsius
        from sugar in Gen.Frequency((5, Gen.Constant(SugarState.AsItsWaterHolds)), (1, Gen.Constant(SugarState.Dissolved)), (1, Gen.Constant(SugarState.Crystals)))
        select HeatLine.Of(ingredient, grams, sugar).At(celsius);

    private static Gen<HeatLine> Bowl { get; } =
        from material in Gen.Elements(VesselMaterial.All.ToArray()) from grams in Mass from celsius in Celsius select HeatLine.Bowl(material, grams).At(celsius);

    // Sugar and butter are what a mix is made of, and what is hard about it.
    private static Gen<HeatLine> Usual { get; } =
        from name in Gen.Elements("unsalted butter", "granulated sugar", "icing sugar", "water", "heavy cream", "dark chocolate 60-69 % cocoa", "egg whites")
        from grams in Mass
        from celsius in Celsius
        select HeatLine.Of(IngredientTable.BuiltIn.Get(name), grams).At(celsius);

    private static Gen<KitchenMix> Mix { get; } =
        from count in Gen.Choose(1, 8)
        from lines in Gen.Frequency((3, Food), (4, Usual), (1, Bowl)).ArrayOf(count)
        from loss in Gen.Frequency((2, Gen.Constant(0.0)), (1, Gen.Choose(-20_000, 20_000).Select(value => value / 1000.0)))
        from water in Gen.Elements(Enum.GetValues<WaterHeat>())
        from sugar in Gen.Elements(Enum.GetValues<SugarDissolves>())
        select new KitchenMix(lines, loss, water, sugar);

    public static Arbitrary<KitchenMix> Mixes() => Arb.From(Mix);
}
