using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Publishing;

namespace Confectio.Tests.Publishing;

/// <summary>Formulas of Fennmarsh Hall, and a formula of one line.</summary>
internal static class Cards
{
    public static IngredientTable Table => IngredientTable.BuiltIn;

    public static MeasuringSystem[] SixSystems { get; } = [.. MeasuringSystem.All.Where(system => system.Defines(KitchenUnit.Cup))];

    public static Formula Buttercream { get; } = Formula.Of("Fennmarsh Hall meringue buttercream",
    [
        Line("egg white", 210), Line("granulated sugar", 385), Line("unsalted butter", 470), Line("instant coffee powder", 6), Line("table salt", 3),
    ]);

    public static FormulaLine Line(string food, double grams) => FormulaLine.Of(Table.Get(food), grams);

    public static FormulaLine Line(string food, string amount, MeasuringSystem system, Packing? packing = null) => FormulaLine.Of(Table.Get(food), Amount.Parse(amount), system, packing);

    public static CardLine Only(FormulaLine line, params MeasuringSystem[] systems) => Of(line, systems).Lines[0];

    public static FormulaCard Of(FormulaLine line, params MeasuringSystem[] systems) => FormulaCard.Of(Formula.Of("one", [line]), new CardOptions { MeasuringSystems = systems });
}
