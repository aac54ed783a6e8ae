using System.Globalization;
using System.Numerics;
using Confectio.Costs;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Tests.Consistency;
using Confectio.Uncertainty;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Costs;

/// <summary>Costs against whole numbers of thousandths of a coin, worked out in the test, and what must hold of every cost.</summary>
public sealed class BatchCostTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;
    private static readonly Currency s_euro = Currency.Get("EUR");
    private static readonly string[] s_foods = ["unsalted butter", "icing sugar", "granulated sugar", "egg white", "honey", "plain flour", "white shortening", "cocoa butter"];

    // By hand: 250 g at 6.95 the kilogram are 1.7375, 500 g at 1.20 are 0.60; together 2.3375, half to even at two digits 2.34.
    [Fact]
    public void AButtercreamByHand()
    {
        BatchCost cost = BatchCost.Of(Read("250 g unsalted butter\n500 g icing sugar"), List(("unsalted butter", 6.95m, "1 kg"), ("icing sugar", 1.20m, "1 kg")), new() { Portions = 12, Cakes = 2 });
        Assert.Equal(2.3375m, cost.Total);
        Assert.Equal("EUR 2.34", s_euro.Write(cost.Total!.Value));
        Assert.Equal(2.3375m / 12, cost.PerPortion);
        Assert.Equal(2.3375m / 7.5m, cost.Per100Grams);
        Assert.Equal(2.3375m / 2, cost.PerCake);
        Assert.Equal([1.74m, 0.60m], cost.Lines.Select(line => line.Printed!.Value));
        Assert.Equal([74.3m, 25.7m], cost.Lines.Select(line => line.PrintedPercent!.Value)); // 1.7375/2.3375 = 74.33 %
        Assert.Equal("unsalted butter", cost.Driver!.Name);
        Assert.Equal(0.17375m, cost.TenthOfDriver);
        Assert.Equal(Spread.Exactly(2.3375), cost.Spread);
        Assert.True(cost.IsWhole);
    }

    // Two lines of butter at 0.60 each cost more than one of sugar at 1.00.
    [Fact]
    public void WhatDrivesItIsAnIngredientAndNoLine()
    {
        BatchCost cost = BatchCost.Of(Read("100 g unsalted butter\n100 g icing sugar\n100 g unsalted butter"), List(("unsalted butter", 6m, "1 kg"), ("icing sugar", 10m, "1 kg")));
        Assert.Equal(("unsalted butter", 0.12m), (cost.Driver!.Name, cost.TenthOfDriver));
        Assert.Equal(1.2 / 2.2, cost.DriverShare!.Value, 9);
    }

    // What is lost on the way costs what the rest does: 5 % of 750 g leave 712.5 g, ten portions of which cost a tenth each.
    [Fact]
    public void WhatIsLostRaisesWhatIsServed()
    {
        PriceList prices = List(("unsalted butter", 6.95m, "1 kg"), ("icing sugar", 1.20m, "1 kg"));
        BatchCost cost = BatchCost.Of(Read("250 g unsalted butter\n500 g icing sugar"), prices, new() { LossFraction = 0.05, PortionGrams = 71.25 });
        Assert.Equal(712.5, cost.ServedGrams, 9);
        Assert.Equal(10, cost.Portions!.Value, 9);
        Assert.Equal(0.23375m, cost.PerPortion!.Value, 9);
        Assert.Equal(2.3375m / 7.125m, cost.Per100Grams!.Value, 9);
        // Boiled off water has gone as well: 200 g of sugar and 100 g of water, 60 g of it boiled off, are 240 g.
        Formula syrup = Formula.Of("", [FormulaLine.Of(s_table.Get("granulated sugar"), 200), FormulaLine.Of(s_table.Get("water"), 100)], 60);
        Assert.Equal(0.20m / 2.4m, BatchCost.Of(syrup, List(("granulated sugar", 1m, "1 kg"), ("water", 0m, "1 L"))).Per100Grams!.Value, 12);
    }

    // Waste of a pack: 2.40 a kilogram with 4 % waste are 2.50 for a kilogram that is used.
    [Fact]
    public void WasteOfAPack()
    {
        Price price = Price.Of(s_table.Get("strawberries"), 2.40m, s_euro, Amount.Parse("1 kg"), MeasuringSystem.Metric, null, 0.04);
        Assert.Equal(2.50m, price.PerKilogram);
        Assert.Equal(960, price.UsableGrams.Likely, 9);
        BatchCost cost = BatchCost.Of(Read("1000 g strawberries"), PriceList.Of(price));
        Assert.Equal(2.50m, cost.Total);
        Assert.Equal(2, Assert.Single(cost.Purchases).Packs);
        Assert.Equal(920, cost.Purchases[0].LeftOverGrams, 6);
        Assert.Equal(4.80m, cost.Purchases[0].Cost);
    }

    // The pound is 453.59237 g and the ounce its sixteenth (international agreement of 1959): 4 oz of a 1 lb pack are a quarter of its price, exactly.
    [Fact]
    public void PoundsAndOuncesAreExact() =>
        Assert.Equal(0.87m, BatchCost.Of(Read("4 oz unsalted butter"), List(("unsalted butter", 3.48m, "1 lb"))).Total);

    // A line in cups that is bought by the litre: the density cancels, whatever it is. One US cup is 236.5882365 mL.
    [Fact]
    public void TheDensityOfACupBoughtByTheLitreCancels()
    {
        Formula milk = Formula.ParseText("", "1 cup whole milk", s_table, MeasuringSystem.UsCustomary);
        BatchCost cost = BatchCost.Of(milk, List(("whole milk", 1.00m, "1 L")));
        Assert.Equal(0.2365882365m, cost.Total!.Value, 12);
        Assert.Equal(0, cost.Spread!.Value.High - cost.Spread.Value.Low, 12);
        Assert.Equal(1, cost.Purchases[0].PacksToBeSure);
        // Bought by the kilogram it is as sure as its density.
        BatchCost byMass = BatchCost.Of(milk, List(("whole milk", 1.00m, "1 kg")));
        Assert.Equal(milk.Lines[0].Grams.High / milk.Lines[0].Grams.Likely, byMass.Spread!.Value.High / byMass.Spread.Value.Likely, 9);
    }

    // Weighed, and bought by the litre: the pack is as sure as the density, and both lines are off together.
    [Fact]
    public void TwoLinesOfOnePackShareItsError()
    {
        Formula cream = Read("300 g heavy cream\n200 g heavy cream");
        PriceList prices = List(("heavy cream", 5m, "1 L"));
        Spread pack = prices.Prices[0].PackGrams, cost = BatchCost.Of(cream, prices).Spread!.Value;
        Assert.Equal(500 * 5 / pack.High, cost.Low, 9);
        Assert.Equal(500 * 5 / pack.Low, cost.High, 9);
    }

    // Three whites of a dozen eggs are a quarter of the dozen, whatever a white weighs.
    [Fact]
    public void EggsOfADozen()
    {
        BatchCost cost = BatchCost.Of(Formula.ParseText("", "3 large egg whites", s_table, MeasuringSystem.Metric), List(("egg white", 3.60m, "12 large")));
        Assert.Equal(0.90m, cost.Total!.Value, 12);
        Assert.Equal(0, cost.Spread!.Value.High - cost.Spread.Value.Low, 12);
        // 100 g of whites are 3.03 of 33 g (USDA SR 01124), and as sure as a white.
        BatchCost weighed = BatchCost.Of(Read("100 g egg white"), List(("egg white", 3.60m, "12 large")));
        Assert.Equal(3.60 / 12 * 100 / 33, (double)weighed.Total!.Value, 6);
        Assert.True(weighed.Spread!.Value.Low < weighed.Spread.Value.Likely);
    }

    [Fact]
    public void WhatHasNoPriceIsNoNought()
    {
        BatchCost cost = BatchCost.Of(Read("250 g unsalted butter\n500 g icing sugar\n30 g egg white"), List(("unsalted butter", 6.95m, "1 kg"), ("whole egg", 3.60m, "12 large")), new() { Portions = 10 });
        Assert.False(cost.IsWhole);
        Assert.Null(cost.Total);
        Assert.Equal(1.7375m, cost.AtLeast);
        Assert.Equal(["icing sugar", "egg white"], cost.WithoutPrice.Select(food => food.Name));
        Assert.Contains("at least EUR 1.74; a portion at least EUR 0.17", cost.ToString(), StringComparison.Ordinal);
        Assert.Contains(cost.Remarks, remark => remark.StartsWith("No price is known for icing sugar, egg white", StringComparison.Ordinal));
        Assert.Contains(cost.Remarks, remark => remark.Contains("12 large", StringComparison.Ordinal)); // where the whites of the eggs come from
        Assert.Null(cost.Lines[1].Cost);
        Assert.Null(cost.Lines[1].Printed);
        BatchCost none = BatchCost.Of(Read("500 g icing sugar"), List(("unsalted butter", 6.95m, "1 kg")));
        Assert.Equal((null, null, null, false), (none.Total, none.AtLeast, none.Currency, none.HasPrices));
        Assert.Null(none.Driver);
        // A line of no grams needs no price, and a price of 0 is one.
        Formula nothing = Formula.Of("", [FormulaLine.Of(s_table.Get("unsalted butter"), 100), FormulaLine.Of(s_table.Get("honey"), 0)]);
        Assert.Equal(0m, BatchCost.Of(nothing, List(("unsalted butter", 0m, "1 kg"))).Total);
    }

    [Fact]
    public void CurrenciesAreNotAddedUp()
    {
        PriceList prices = PriceList.Of(Price.Of(s_table.Get("unsalted butter"), 6m, s_euro, Amount.Parse("1 kg"), MeasuringSystem.Metric),
            Price.Of(s_table.Get("icing sugar"), 1m, Currency.Get("GBP"), Amount.Parse("1 kg"), MeasuringSystem.Metric));
        Formula cream = Read("1000 g unsalted butter\n1000 g icing sugar");
        Assert.Contains("EUR and GBP", Assert.Throws<ArgumentException>("options", () => BatchCost.Of(cream, prices)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>("options", () => BatchCost.Of(cream, prices, new() { Currency = s_euro }));
        // A rate the other way round is not turned over.
        Assert.Throws<ArgumentException>("options", () => BatchCost.Of(cream, prices, new() { Currency = s_euro, Rates = [ExchangeRate.Of(s_euro, Currency.Get("GBP"), 0.85m)] }));
        BatchCost cost = BatchCost.Of(cream, prices, new() { Currency = s_euro, Rates = [ExchangeRate.Of(Currency.Get("GBP"), s_euro, 1.17m)] });
        Assert.Equal(7.17m, cost.Total);
        Assert.Contains(cost.Remarks, remark => remark.Contains("1 GBP = 1.17 EUR", StringComparison.Ordinal));
        // One of another currency that the formula does not need stops nothing.
        Assert.Equal(6m, BatchCost.Of(Read("1000 g unsalted butter"), prices).Total);
        Assert.Throws<ArgumentException>("problem", () => prices.AppliedTo(FormulaProblem.StartingFrom(cream)));
    }

    [Fact]
    public void OldPricesAreTold()
    {
        Price butter = Price.Of(s_table.Get("unsalted butter"), 6m, s_euro, Amount.Parse("1 kg"), MeasuringSystem.Metric, new DateOnly(2026, 1, 10));
        Formula formula = Read("1000 g unsalted butter");
        string Said(DateOnly? day) => string.Join(" ", BatchCost.Of(formula, PriceList.Of(butter), new() { AsOf = day }).Remarks);
        Assert.Equal("", Said(null));
        Assert.Equal("", Said(new DateOnly(2026, 4, 10))); // 90 days after
        Assert.Equal("The price of unsalted butter is 91 days old.", Said(new DateOnly(2026, 4, 11)));
        Assert.Equal("The price of unsalted butter is of 1 day after the day of the cost.", Said(new DateOnly(2026, 1, 9)));
        Assert.Contains("Nobody says of when", string.Join(" ", BatchCost.Of(formula, List(("unsalted butter", 6m, "1 kg"))).Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void TheNewestPriceCounts()
    {
        Price Of(decimal amount, DateOnly? date) => Price.Of(s_table.Get("unsalted butter"), amount, s_euro, Amount.Parse("1 kg"), MeasuringSystem.Metric, date);
        PriceList prices = PriceList.Of(Of(7m, new DateOnly(2026, 3, 1)), Of(6m, new DateOnly(2026, 1, 1)), Of(8m, new DateOnly(2026, 5, 1)));
        Assert.Equal(8m, Assert.Single(prices.Prices).Amount);
        Assert.Throws<ArgumentException>("prices", () => PriceList.Of(Of(7m, new DateOnly(2026, 3, 1)), Of(6m, null)));
        Assert.Throws<ArgumentException>("prices", () => PriceList.Of(Of(7m, new DateOnly(2026, 3, 1)), Of(6m, new DateOnly(2026, 3, 1))));
    }

    // Thousandths in whole numbers: grams in tenths, prices in cents, packs in grams, waste in per cent. The printed sum is the exact one, half to even, and the printed
    // lines and shares add up.
    [Property(MaxTest = 500)]
    public Property CostsAreExact() => Prop.ForAll(Cases(), lines =>
    {
        Formula formula = Formula.Of("", lines.Select((line, i) => FormulaLine.Of(s_table.Get(s_foods[i]), line.Tenths / 10.0)));
        BatchCost cost = BatchCost.Of(formula, PriceList.Of(lines.Select((line, i) => Price.Of(s_table.Get(s_foods[i]), line.Cents / 100m, s_euro, Amount.Of(line.PackGrams, KitchenUnit.Gram),
            MeasuringSystem.Metric, null, line.WastePercent / 100.0))));
        // Σ cents·tenths/10·100/(pack·(100 − waste)), as one fraction of cents.
        BigInteger over = 1, under = 1;
        foreach (Line line in lines)
        {
            BigInteger a = (BigInteger)line.Cents * line.Tenths * 10, b = (BigInteger)line.PackGrams * (100 - line.WastePercent);
            (over, under) = (over * b + a * under, under * b);
        }
        over -= under; // it began at one
        BigInteger whole = BigInteger.DivRem(over * 2 + under, under * 2, out BigInteger rest);
        if (rest == 0 && !whole.IsEven)
            whole--; // half to even
        decimal printed = (decimal)whole / 100;
        decimal exact = (decimal)(double)(over * 1_000_000_000 / under) / 100_000_000_000;
        return (Math.Abs(cost.Total!.Value - exact) <= 1e-9m * (1 + exact)
            && s_euro.Round(cost.Total.Value) == printed
            && cost.Lines.Sum(line => line.Printed) == printed
            && (cost.Total == 0 || cost.Lines.Sum(line => line.PrintedPercent) == 100m)
            && cost.Lines.All(line => Math.Abs(line.Printed!.Value - line.Cost!.Value) < 0.01m)).Label($"{cost.Total} {printed}");
    });

    [Property(MaxTest = 200)]
    public Property CostsScaleAddUpAndMindNoOrder() => Prop.ForAll(Cases(), lines =>
    {
        PriceList prices = PriceList.Of(lines.Select((line, i) => Price.Of(s_table.Get(s_foods[i]), line.Cents / 100m, s_euro, Amount.Of(line.PackGrams, KitchenUnit.Gram), MeasuringSystem.Metric)));
        FormulaLine[] all = [.. lines.Select((line, i) => FormulaLine.Of(s_table.Get(s_foods[i]), line.Tenths / 10.0))];
        Formula formula = Formula.Of("", all);
        decimal cost = BatchCost.Of(formula, prices).Total!.Value;
        bool Near(decimal other, decimal wanted) => Math.Abs(other - wanted) <= 1e-12m * (1 + wanted);
        return Near(BatchCost.Of(formula.Scale(3), prices).Total!.Value, 3 * cost)
            && Near(BatchCost.Of(Formula.Of("", all.Reverse()), prices).Total!.Value, cost)
            && Near(BatchCost.Of(Formula.Merge("", formula, formula.Scale(0.5)), prices).Total!.Value, 1.5m * cost)
            && Near(BatchCost.Of(formula, prices, new() { Portions = 7 }).PerPortion!.Value * 7, cost);
    });

    // 1 000 draws of the masses that the spreads are about: two lines of one density are off together, another by itself, and a pack by the litre for all it sells.
    [Fact]
    public void TheSpreadIsThatOfDraws()
    {
        Formula formula = Formula.ParseText("", "2 cups plain flour\n1 cup plain flour\n1 cup icing sugar\n200 g heavy cream", s_table, MeasuringSystem.UsCustomary);
        PriceList prices = List(("plain flour", 1.10m, "1 kg"), ("icing sugar", 2.40m, "1 kg"), ("heavy cream", 6m, "1 L"));
        Spread told = BatchCost.Of(formula, prices).Spread!.Value;
        Random random = new(5);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        double U(int line) => formula.Lines[line].Grams.StandardUncertainty / formula.Lines[line].Grams.Likely;
        double pack = prices[formula.Lines[3].Ingredient]!.PackGrams is var litre ? litre.StandardUncertainty / litre.Likely : 0;
        double[] draws = new double[20_000];
        for (int i = 0; i < draws.Length; i++)
        {
            double flour = Math.Exp(U(0) * Normal()), sugar = Math.Exp(U(2) * Normal()), cream = Math.Exp(-pack * Normal());
            draws[i] = flour * 1.10 * (formula.Lines[0].Grams.Likely + formula.Lines[1].Grams.Likely) / 1000 + sugar * 2.40 * formula.Lines[2].Grams.Likely / 1000
                + cream * 6 * 200 / litre.Likely;
        }
        Array.Sort(draws);
        // 95 % of the draws, to a tenth of the width: the ends of 20 000 draws are off by some per cent of it.
        double width = told.High - told.Low;
        Assert.InRange(draws[(int)(0.025 * draws.Length)], told.Low - 0.1 * width, told.Low + 0.1 * width);
        Assert.InRange(draws[(int)(0.975 * draws.Length)], told.High - 0.1 * width, told.High + 0.1 * width);
    }

    // A mix of two fats with the fat fixed at 90 %: butter has 81.11 % (USDA SR 01145), shortening 99.97 % (04615). By hand x·0.8111 + (1 − x)·0.9997 = 0.9
    // has x = 0.0997/0.1886.
    [Fact]
    public void ALeastCostProblemTakesItsPricesFromTheList()
    {
        PriceList prices = List(("unsalted butter", 3.48m, "500 g"), ("white shortening", 2.50m, "1 kg"));
        FormulaProblem problem = prices.AppliedTo(FormulaProblem.Of("", 1000, [s_table.Get("unsalted butter"), s_table.Get("white shortening")]).WithTarget(FormulaPart.Fat, 0.9)).Preferring(Preference.LeastCost);
        double butter = 1000 * 0.0997 / 0.1886;
        Assert.Equal(butter * 0.00696 + (1000 - butter) * 0.0025, problem.Solve().FullCost!.Total, 3);
        Assert.Throws<ArgumentException>("problem", () => List(("honey", 1m, "1 kg")).AppliedTo(problem));
    }

    [Fact]
    public void ThePlanOfACakeIsCosted()
    {
        IcingOrder order = IcingOrder.ParseJson("""
            {"confectioOrder":1,"name":"Fennmarsh","tiers":[{"shape":"round","diameter":"20 cm","height":"10 cm","coats":[{"icing":"a","thickness":"5 mm"},{"icing":"jam","thickness":"1 mm"}]}],
             "icings":[{"name":"a","gramsPerMillilitre":1,"formula":{"confectioFormula":1,"lines":[{"ingredient":"icing sugar","grams":100},{"ingredient":"unsalted butter","grams":100}]}},{"name":"jam","gramsPerMillilitre":1.3}]}
            """, s_table);
        IcingPlan plan = order.Plan();
        double made = plan.Need("a").MadeGrams;
        BatchCost cost = BatchCost.Of(plan, List(("icing sugar", 1m, "1 kg"), ("unsalted butter", 7m, "1 kg")));
        Assert.Equal(made * 0.004, (double)cost.AtLeast!.Value, 9);
        Assert.Equal(cost.AtLeast, cost.PerCake);
        Assert.Null(cost.Total); // nobody says what the jam costs
        Assert.Equal(["jam"], cost.IcingsWithoutFormula);
    }

    [Fact]
    public void BadInputIsRefused()
    {
        Ingredient butter = s_table.Get("unsalted butter");
        Amount kilogram = Amount.Parse("1 kg");
        Assert.Throws<ArgumentOutOfRangeException>("amount", () => Price.Of(butter, -0.01m, s_euro, kilogram, MeasuringSystem.Metric));
        Assert.Throws<ArgumentOutOfRangeException>("amount", () => Price.Of(butter, 1_000_000_000.01m, s_euro, kilogram, MeasuringSystem.Metric));
        Assert.Throws<ArgumentOutOfRangeException>("wasteFraction", () => Price.Of(butter, 1, s_euro, kilogram, MeasuringSystem.Metric, null, 1));
        Assert.Throws<ArgumentOutOfRangeException>("wasteFraction", () => Price.Of(butter, 1, s_euro, kilogram, MeasuringSystem.Metric, null, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>("pack", () => Price.Of(butter, 1, s_euro, default, MeasuringSystem.Metric));
        Assert.Throws<ArgumentException>("pack", () => Price.Of(butter, 1, s_euro, Amount.Parse("1-2 kg"), MeasuringSystem.Metric));
        Assert.Throws<ArgumentException>("pack", () => Price.Of(butter, 1, s_euro, Amount.Parse("1 large"), MeasuringSystem.Metric)); // butter is laid by nobody
        Assert.Throws<ArgumentOutOfRangeException>("rate", () => ExchangeRate.Of(s_euro, Currency.Get("GBP"), 0));
        Assert.Throws<ArgumentException>("to", () => ExchangeRate.Of(s_euro, s_euro, 1));
        Assert.Throws<ArgumentException>("code", () => Currency.Get("€"));
        Assert.Throws<ArgumentException>("options", () => BatchCost.Of(Read("1 g honey"), List(("honey", 1m, "1 kg")), new() { Portions = 2, PortionGrams = 30 }));
        Assert.Throws<ArgumentOutOfRangeException>("Portions", () => new BatchCostOptions { Portions = 0 });
        Assert.Throws<ArgumentOutOfRangeException>("LossFraction", () => new BatchCostOptions { LossFraction = 1 });
        Assert.Throws<ArgumentOutOfRangeException>("Cakes", () => new BatchCostOptions { Cakes = 0 });
        Formula huge = Formula.Of("", [FormulaLine.Of(butter, 1e12)]);
        Assert.Throws<ArgumentException>("prices", () => BatchCost.Of(huge, List(("unsalted butter", 1_000_000_000m, "1 g"))));
    }

    // ISO 4217, by the data of Unicode that .NET has: every code that a country pays with, and the digits of those on which Unicode and ISO agree. Unicode leaves the small coins
    // of poor currencies out, which ISO keeps; those are named here.
    [Fact]
    public void CodesAndDigitsAreThoseOfUnicodeToo()
    {
        string[] differ = ["AFN", "ALL", "BIF", "DJF", "GNF", "IDR", "IQD", "IRR", "KMF", "KPW", "LAK", "LBP", "MGA", "MMK", "RSD", "SLE", "SOS", "SYP", "TZS", "UZS", "YER", "PKR", "COP", "CRC", "HUF", "TWD", "MUR", "GYD", "MNT", "KES", "CZK", "NOK", "SEK"];
        int counted = 0;
        foreach (CultureInfo culture in CultureInfo.GetCultures(CultureTypes.SpecificCultures))
        {
            RegionInfo region = new(culture.Name);
            if (!Currency.TryGet(region.ISOCurrencySymbol, out Currency? currency))
                continue;
            counted++;
            if (!differ.Contains(currency.Code))
                Assert.Equal((currency.Code, culture.NumberFormat.CurrencyDecimalDigits), (currency.Code, currency.MinorDigits));
        }
        Assert.True(counted > 300, $"{counted} cultures");
        Assert.Equal((0, 2, 3), (Currency.Get("jpy").MinorDigits, s_euro.MinorDigits, Currency.Get("KWD").MinorDigits));
    }

    [Theory] // half to even, by hand
    [InlineData("EUR", "2.345", "EUR 2.34")]
    [InlineData("EUR", "2.355", "EUR 2.36")]
    [InlineData("EUR", "0.0050000001", "EUR 0.01")]
    [InlineData("JPY", "2.5", "JPY 2")]
    [InlineData("JPY", "3.5", "JPY 4")]
    [InlineData("KWD", "1.2345", "KWD 1.234")]
    public void MoneyIsRoundedHalfToEven(string code, string amount, string printed)
    {
        foreach (string culture in (string[])["", "de-DE", "tr-TR"])
            Cultures.In(culture, () => Assert.Equal(printed, Currency.Get(code).Write(decimal.Parse(amount, CultureInfo.InvariantCulture))));
    }

    private static Formula Read(string text) => Formula.ParseText("", text, s_table, MeasuringSystem.Metric);

    private static PriceList List(params (string Food, decimal Amount, string Pack)[] prices) =>
        PriceList.Of(prices.Select(price => Price.Of(s_table.Get(price.Food), price.Amount, s_euro, Amount.Parse(price.Pack), MeasuringSystem.Metric)));

    private static Arbitrary<Line[]> Cases() => (from tenths in Gen.Choose(1, 99_999)
                                                 from cents in Gen.Choose(0, 5000)
                                                 from pack in Gen.Choose(1, 25_000)
                                                 from waste in Gen.Choose(0, 95)
                                                 select new Line(tenths, cents, pack, waste)).ArrayOf().Where(lines => lines.Length is > 0 and <= 8).ToArbitrary();

    private sealed record Line(int Tenths, int Cents, int PackGrams, int WastePercent);
}
