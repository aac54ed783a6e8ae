using System.Globalization;
using Confectio.Vetting;

namespace Confectio.Tests.Vetting;

/// <summary>
/// The faults that the sources of the real tables contain, by our own reckoning from densities and from the other rows. Most were written
/// down before the model was asked; the salt of us-historic and the oddities of usda-sr28 were added after it had flagged them, and are
/// listed because the reckoning beside each bears them out. Each with what would be right and the reasons that would be a right name for it.
/// </summary>
public sealed record RealFault(string Table, string Ingredient, string Measure, string Printed, string Why, params Reason[] Reasons)
{
    public static IReadOnlyList<RealFault> All { get; } =
    [
        new("fineli20", "cocoa powder, unsweetened", "1 tsp", "3", "half of its own tablespoon of 6 g, not a third; 2 g", Reason.Unexplained),
        new("fineli20", "raspberries", "1 tbsp", "10", "0.67 g/mL beside 0.50 in its own decilitre; 7.5 g", Reason.Unexplained),
        new("fineli20", "strawberries", "1 tbsp", "10", "0.67 g/mL beside 0.50 in its own decilitre; 7.5 g", Reason.Unexplained),
        new("au-manual", "sugar", "1 cup", "250", "8 oz a cup, or a gram a millilitre; 210 to 220 g (0.85 g/mL)", Reason.CupCountedAsEightOunces),
        new("au-manual", "icing sugar", "1 cup", "185", "the figure of the row above, brown sugar; 125 to 160 g", Reason.CopiedRow),
        new("us-historic", "granulated sugar", "2 cups", "16", "a pound a pint; 14 oz (200 g a cup)", Reason.CupCountedAsEightOunces),
        new("us-historic", "powdered sugar", "2 1/2 cups", "16", "181 g a cup: crushed sugar, fine as caster sugar, was called powdered; icing sugar 100 to 120", Reason.Unexplained),
        new("us-historic", "powdered sugar", "2 2/3 cups", "16", "170 g a cup: the same", Reason.Unexplained),
        new("us-historic", "milk", "1 pint", "16", "a pint is a pound of no milk: 17.2 oz", Reason.FluidOunceAsOunce, Reason.CupCountedAsEightOunces),
        new("us-historic", "cocoa", "3 1/2 Tbsp", "1", "8.1 g a tablespoon; 5.4 g", Reason.Unexplained),
        new("us-historic", "lard", "1 cup", "8", "8 oz a cup; 205 g (7.2 oz)", Reason.CupCountedAsEightOunces),
        new("us-historic", "salt", "2 Tbsp", "1", "14 g a tablespoon; 18 g, so 1 1/2 Tbsp", Reason.FluidOunceAsOunce),
        new("usda-teamnutrition", "granulated sugar", "2 cups", "16", "8 oz a cup; 200 g (7 oz)", Reason.CupCountedAsEightOunces),
        new("usda-teamnutrition", "cocoa", "4 cups", "16", "113 g a cup; 86 g, so 5 1/3 cups a pound", Reason.Unexplained),
        new("usda-teamnutrition", "confectioners' sugar", "3 cups", "16", "151 g a cup, sifted; 100 g sifted, 120 not", Reason.Unexplained),
        new("usda-sr28", "turbinado sugar", "1 tsp", "4.6", "0.93 g/mL beside 0.76 in its own cup of 180 g; 3.8 g", Reason.Unexplained),
        new("usda-sr28", "agave syrup", "1/4 cup", "55", "0.93 g/mL for a syrup; its own teaspoon of 6.9 g makes 1.40, so 83 g", Reason.Unexplained),
        new("usda-sr28", "agave syrup", ".25 cup", "55", "0.93 g/mL for a syrup; its own teaspoon of 6.9 g makes 1.40, so 83 g", Reason.Unexplained),
        new("usda-sr28", "maple syrup", "1 serving 1/4 cup", "83", "1.40 g/mL beside 1.33 in its own cup of 315 g; 79 g. A quarter of a 250 mL cup would be 83", Reason.OtherCup, Reason.Unexplained),
        new("usda-sr28", "maple syrup", "serving 1/4 cup", "83", "1.40 g/mL beside 1.33 in its own cup of 315 g; 79 g. A quarter of a 250 mL cup would be 83", Reason.OtherCup, Reason.Unexplained),
        new("usda-sr28", "maple syrup", "1/4 cup", "83", "1.40 g/mL beside 1.33 in its own cup of 315 g; 79 g. A quarter of a 250 mL cup would be 83", Reason.OtherCup, Reason.Unexplained),
        new("usda-sr28", "sour cream", "1 tbsp", "12", "0.81 g/mL beside 0.97 in its own cup of 230 g; 14.4 g", Reason.Unexplained),
        new("usda-sr28", "dried sweet whey", "1 tbsp", "7.5", "0.51 g/mL beside 0.61 in its own cup of 145 g; 9.1 g", Reason.Unexplained),
        new("usda-sr28", "alcohol-free imitation vanilla", "1 tsp", "4.2", "the figure of the kind with alcohol, which is lighter; 5.2 g by composition", Reason.Unexplained),
        new("usda-sr28", "alcohol-free imitation vanilla", "1 tbsp", "13", "the figure of the kind with alcohol, which is lighter; 15.6 g by composition", Reason.Unexplained),
        new("usda-sr28", "canned coconut milk", "1 cup", "226", "0.955 g/mL, nearly eight ounces; the composition makes 0.997, 236 g", Reason.CupCountedAsEightOunces),
        new("usda-sr28", "water", "1 cup 8 fl oz", "237", "one cup named twice; read as a cup and eight fluid ounces", Reason.HalvedOrDoubled),
    ];

    public static RealFault? In(string table, RealRow row) => All.FirstOrDefault(fault => fault.Table == table
        && fault.Ingredient == row.Ingredient && string.Equals(fault.Measure, row.Measure, StringComparison.OrdinalIgnoreCase)
        && double.Parse(fault.Printed, CultureInfo.InvariantCulture) == double.Parse(row.Printed, CultureInfo.InvariantCulture));
}
