using System.Globalization;
using Confectio.Conversions;
using Confectio.Cooking;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sugars;
using Confectio.Tests.Data;
using Confectio.Tests.Uncertainty;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests;

/// <summary>The front door: one call a job, the same answer as one room down, in the English of the kitchen.</summary>
public sealed class KitchenTests
{
    public static TheoryData<string> Kitchens => [.. All.Keys];

    private static Dictionary<string, Kitchen> All { get; } = new()
    {
        ["US"] = Kitchen.UsCustomary, ["metric"] = Kitchen.Metric, ["Australian"] = Kitchen.Australian, ["imperial"] = Kitchen.Imperial, ["Japanese"] = Kitchen.Japanese,
    };

    // By hand in ConversionTests from USDA SR 19336 and HERR 41: 146.2 g (129.6 to 164.9).
    [Theory]
    [InlineData("1 1/2 cups sifted powdered sugar")]
    [InlineData("1½ c. sifted icing sugar")]
    public void ALineIsConverted(string line)
    {
        ConvertedMass mass = Kitchen.UsCustomary.Convert(line);
        Assert.Equal("146.2 g (129.6 to 164.9)", mass.ToString());
        Assert.Equal("powdered sugar, sifted, US customary", mass.By!.ToString());
        Assert.Equal("icing sugar, sifted, metric (250/15/5)", Kitchen.Metric.Convert(line).By!.ToString());
        // A cup of 250 mL holds 250/236.5882365 as much (NIST SP 811, B.8).
        Assert.Equal(mass.Grams.Likely * 250 / 236.5882365, Kitchen.Metric.Convert(line).Grams.Likely, 1e-9);
    }

    [Fact]
    public void AMassIsMeasuredWithWhatIsInTheDrawer()
    {
        // USDA SR 01145: a cup of butter is 227 g, so 340 g are 1 1/2 cups.
        PracticalMeasure butter = Kitchen.UsCustomary.Measure("340 g", "unsalted butter")!;
        Assert.Equal("1 1/2 cups", butter.Amount.ToString());
        Kitchen spoons = Kitchen.UsCustomary.With(MeasuringTools.Of(MeasuringSystem.UsCustomary, Amount.Parse("1 Tbsp")));
        Assert.Equal("24 Tbsp", spoons.Measure("340 g", "unsalted butter")!.Amount.ToString());
        Assert.Throws<ArgumentException>("tools", () => Kitchen.Metric.With(spoons.Tools));
    }

    [Fact]
    public void ASyrupIsCookedWhereTheKitchenStands()
    {
        // ISO 2533: 83.52 kPa at 1600 m; IAPWS: there water boils at 94.65 °C (BoilingWaterTests hold both).
        Kitchen high = Kitchen.Metric.At("1600 m");
        Assert.Equal(94.65, high.Pressure.WaterBoilsCelsius, 0.01);
        Assert.Equal(high.Pressure, Kitchen.Metric.At("5249.343832 ft").Pressure, (one, other) => Math.Abs(one.Kilopascals - other.Kilopascals) < 1e-6);
        Assert.Equal(84, Kitchen.Metric.At("84 kPa").Pressure.Kilopascals);
        Assert.Equal(AirPressure.FromAltitudeMetres(1584.96), Kitchen.Metric.At("5,200 ft").Pressure);
        Assert.Equal(AirPressure.FromAltitudeMetres(1600.5), Kitchen.Metric.At("1600,5 m").Pressure);
        Formula syrup = high.ParseFormula("", "600 g caster sugar\n200 g water");
        Assert.Equal(SyrupPot.Of(syrup).CookTo(CookingStage.Get("soft-ball"), high.Pressure).Low!.FinalGrams.Likely, high.CookSyrup(syrup, "soft ball").Low!.FinalGrams.Likely);
        Assert.Throws<ArgumentException>(() => high.CookSyrup(syrup, "warm"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("high")]
    [InlineData("1600")]
    [InlineData("99999 m")]
    [InlineData("NaN m")]
    [InlineData("1.600 m")] // which may be meant as 1600 m
    [InlineData("84 psi")]
    public void NoPlaceIsRefused(string place) => Assert.Throws<FormatException>(() => Kitchen.Metric.At(place));

    [Fact]
    public void EggsAreReplacedBySizesOfTheKitchen()
    {
        EggForms forms = EggForms.Of(Kitchen.UsCustomary.Ingredients);
        EggReplacement counted = Kitchen.UsCustomary.ReplaceEggs("8 large", "dried white", 8);
        Assert.Equal(EggReplacement.Of(EggCount.Of(8, EggSizeSystem.Get("us").Size("large")), forms.DriedWhite.WithMoisture(0.08)).IncomingGrams.Likely, counted.IncomingGrams.Likely);
        Assert.Equal(8 * 33, counted.ReplacedGrams.Likely, 1e-9); // USDA SR 01124: the white of a large egg, 33 g
        Assert.NotEqual(counted.ReplacedGrams.Likely, Kitchen.Metric.ReplaceEggs("8 large", "dried white").ReplacedGrams.Likely);
        Assert.Equal(250, Kitchen.Metric.ReplaceEggs("250 g", "pasteurised white").ReplacedGrams.Likely);
        Assert.Equal(EggPart.Yolk, Kitchen.Metric.ReplaceEggs("100 g", "dried yolk").Outgoing.Part);
        foreach (string eggs in (string[])["8 huge", "large", "-3 large", "a few", "3 eggs"])
            Assert.Throws<FormatException>(() => Kitchen.Metric.ReplaceEggs(eggs, "dried white"));
        Assert.Throws<ArgumentOutOfRangeException>("moisturePercent", () => Kitchen.Metric.ReplaceEggs("8 large", "dried white", 21));
    }

    [Fact]
    public void ATableIsVettedAndNotByTheCupOfTheKitchen()
    {
        const string sheet = "ingredient,measure,grams\nwater,1 cup,237\nhoney,1 cup,340\ngranulated sugar,1 cup,200\nbutter,1 cup,227\nmilk,1 cup,244\npowdered sugar,1 cup,1200\n";
        TableVerdict verdict = Kitchen.Metric.Vet(sheet);
        Assert.Equal(MeasuringSystem.UsCustomary, verdict.System!.Best);
        Assert.Equal([7], verdict.Rows.Where(row => row.Verdict == Verdict.Impossible).Select(row => row.Line));
    }

    [Fact]
    public void TemperaturesAreThoseOfTheKitchen()
    {
        Assert.Equal("241 °F (116 °C)", Kitchen.UsCustomary.Temperature(116));
        Assert.Equal("116 °C (241 °F)", Kitchen.Australian.Temperature(116));
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => Kitchen.Metric.Temperature(double.NaN));
    }

    [Theory]
    [InlineData("1 1/2 cups of nothing known")]
    [InlineData("")]
    [InlineData("sugar")]
    [InlineData("1 cup honey\n1 cup water")]
    [InlineData("1 cup sifted butter")]
    public void WhatCannotBeReadIsSaid(string line)
    {
        foreach (Kitchen kitchen in All.Values)
            Assert.Contains("cannot be converted", Assert.Throws<FormatException>(() => kitchen.Convert(line)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Kitchens))]
    public void EveryNameMeansTheSameInEveryKitchen(string name)
    {
        IngredientTable table = All[name].Ingredients, builtIn = IngredientTable.BuiltIn;
        Assert.Equal(builtIn.All, table.All); // by their ids, in their order
        foreach (Ingredient ingredient in builtIn.All)
        {
            foreach (string known in ingredient.Aliases.Select(alias => alias.Text).Append(ingredient.Name).Append(ingredient.Id))
                Assert.Equal(builtIn.Get(known), table.Get(known));
            Assert.Equal(ingredient, table.Get(table.Get(ingredient.Id).Name));
            Assert.Equal(ingredient.Weights, table.Get(ingredient.Id).Weights);
        }
    }

    [Fact]
    public void AmericanNamesAreNamesThatTheTableHasAlready()
    {
        Assert.NotEmpty(Tables.Of("american_names"));
        Assert.All(Tables.Of("american_names"), row =>
        {
            Ingredient ingredient = IngredientTable.BuiltIn.Get(row["ingredient"]);
            Assert.Equal(row["ingredient"], ingredient.Id);
            Assert.Contains(ingredient.Aliases, alias => alias.Text == row["name"]);
            Assert.Equal(row["name"], Kitchen.UsCustomary.Ingredients.Get(row["ingredient"]).Name);
        });
        // No British spelling and no British word of this list is left in an American kitchen's names.
        string[] british = ["icing sugar", "caster", "cornflour", "plain flour", "strong flour", "wholemeal", "bicarbonate", "colouring", "gelatine", "pasteurised", "yoghurt", "desiccated", "alkalised"];
        Assert.DoesNotContain(Kitchen.UsCustomary.Ingredients.All,
            ingredient => british.Any(word => ingredient.Name.Contains(word, StringComparison.OrdinalIgnoreCase)));
    }

    [Fact]
    public void ALayerOfYourOwnIsUsedByEveryJob()
    {
        IngredientTable own = Kitchen.Metric.Ingredients.LayerWeights(new StringReader(
            "ingredient,amount,system,packing,grams,low_grams,high_grams,samples,sd_grams,kind,source,locator,note\nsugar-icing,1 cup,metric,sifted,111,,,,,measured,Fennmarsh Hall,,\n")).OrThrow();
        Assert.Equal(111, Kitchen.Metric.With(own).Convert("1 cup sifted icing sugar").Grams.Likely, 1e-9);
    }

    [Fact]
    public void NothingDependsOnTheCulture()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            foreach (string culture in (string[])["tr-TR", "de-DE", "fa-IR"])
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                Assert.Equal("146.2 g (129.6 to 164.9)", Kitchen.UsCustomary.Convert("1 1/2 CUPS SIFTED POWDERED SUGAR").ToString());
                Assert.Equal("metric (250/15/5) kitchen, 84.00 kPa", Kitchen.Metric.At("84.0 kPa").ToString());
                Assert.Equal("241 °F (116 °C)", Kitchen.UsCustomary.Temperature(116));
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void ACardHasThisKitchensMeasuresAndNamesAndOthersBesideThem()
    {
        Confectio.Publishing.FormulaCard card = Kitchen.UsCustomary.Card(Kitchen.UsCustomary.ParseFormula("frosting", "1 1/2 cups sifted powdered sugar"), MeasuringSystem.Metric, MeasuringSystem.UsCustomary);
        Assert.Equal([MeasuringSystem.UsCustomary, MeasuringSystem.Metric], card.Options.MeasuringSystems);
        Assert.StartsWith("146 g (5.16 oz; 1 1/2 US cups; ", card.Lines[0].ToString(), StringComparison.Ordinal);
        Assert.EndsWith(" sifted powdered sugar", card.Lines[0].ToString(), StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>("formula", () => Kitchen.Metric.Card(null!));
        Assert.Throws<ArgumentNullException>("also", () => Kitchen.Metric.Card(card.Formula, null!));
    }
}
