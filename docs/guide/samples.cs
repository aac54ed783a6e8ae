// The samples of the guide, compiled and run. A page marks a sample with <!-- sample: NAME --> before its code and shows what
// it prints in the text block after it; both must be what stands here.
//
//   dotnet run docs/guide/samples.cs            checks the pages beside this file
//   dotnet run docs/guide/samples.cs --write    puts code and output into the pages
//
// Exit status: 0 the pages are right, 1 they are not, 2 bad usage.
#:property PublishAot=false
#:project ../../src/Confectio/Confectio.csproj

using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Confectio;
using Confectio.Baking;
using Confectio.Cakes;
using Confectio.Comparisons;
using Confectio.Conversions;
using Confectio.Costs;
using Confectio.Cooking;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Heat;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Keeping;
using Confectio.Labels;
using Confectio.Measures;
using Confectio.Phrases;
using Confectio.Publishing;
using Confectio.Safety;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Text;
using Confectio.Textures;
using Confectio.Troubles;
using Confectio.Uncertainty;
using Confectio.Units;
using UnitsNet;

if (args is not ([] or ["--write"]))
{
    Console.Error.WriteLine("usage: samples.cs [--write]");
    return 2;
}
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
Dictionary<string, Action> samples = new()
{
    ["kitchen"] = () =>
    {
        Kitchen kitchen = Kitchen.UsCustomary.At("5200 ft");
        Console.WriteLine(kitchen.Convert("1 1/2 cups sifted powdered sugar"));
        Console.WriteLine(kitchen.Measure("340 g", "unsalted butter"));
        Console.WriteLine(kitchen.ReplaceEggs("8 large", "dried white", moisturePercent: 8));
        Console.WriteLine(kitchen.CookSyrup(kitchen.ParseFormula("syrup", "3 cups granulated sugar\n200 g water"), "soft ball"));
        Console.WriteLine(kitchen.Vet("ingredient,measure,grams\nhoney,1 cup,340\nbutter,1 cup,227\npowdered sugar,1 Tbsp,24").Wrong[0]);
    },
    ["card"] = () =>
    {
        Formula cream = Formula.ParseText("Fennmarsh Hall buttercream", "250 g unsalted butter\n4 cups sifted icing sugar\n30 g whole milk\n0.5 g table salt", IngredientTable.BuiltIn, MeasuringSystem.UsCustomary);
        FormulaCard card = FormulaCard.Of(cream, new CardOptions
        {
            MeasuringSystems = [MeasuringSystem.UsCustomary, MeasuringSystem.Metric], Portions = 12, Temperatures = [CardTemperature.Of("butter", 19)],
        });
        foreach (CardLine line in card.Lines)
            Console.WriteLine(line);
        Console.WriteLine(card.Lines[3].Measures[0]);
        Console.WriteLine(card.Options.Temperatures[0]);
        Console.WriteLine(card.Rounding);
    },
    ["chart"] = () =>
    {
        ConversionChart chart = ConversionChart.Of([ChartFood.Of(IngredientTable.BuiltIn.Get("icing sugar"), Packing.Sifted), ChartFood.Of(IngredientTable.BuiltIn.Get("honey"))],
            [Amount.Parse("1 cup"), Amount.Parse("1 Tbsp")], MeasuringSystem.UsCustomary, new ChartOptions { Rounding = ChartRounding.FiveGrams });
        Console.Write(chart.ToCsv());
    },
    ["digits"] = () =>
    {
        Console.WriteLine(ConvertedDigits.Text(36 * 0.3048, 0.5 / 36));
        Console.WriteLine(ConvertedDigits.Text(250 / 28.349523125, 0.5 / 250));
    },
    ["cost"] = () =>
    {
        Formula cream = Formula.ParseText("Fennmarsh Hall buttercream", "250 g unsalted butter\n500 g icing sugar\n30 g whole milk\n1 tsp vanilla extract", IngredientTable.BuiltIn, MeasuringSystem.Metric);
        PriceList prices = PriceList.Read(new StringReader("ingredient;pack;price;date;waste\nunsalted butter;2.5 kg;19.75;2026-11-02;1%\nicing sugar;10 kg;13.90;2026-11-02;2%\nwhole milk;1 L;1.05;2026-06-20;"),
            IngredientTable.BuiltIn, MeasuringSystem.Metric, Currency.Get("EUR")).OrThrow();
        BatchCost cost = BatchCost.Of(cream, prices, new() { Portions = 12, LossFraction = 0.05, AsOf = new DateOnly(2026, 11, 29) });
        Console.WriteLine(cost);
        foreach (CostLine line in cost.Lines)
            Console.WriteLine(line);
        foreach (string remark in cost.Remarks)
            Console.WriteLine(remark);
        Console.WriteLine(cost.Purchases[0]);
    },
    ["scale"] = () =>
    {
        Kitchen kitchen = Kitchen.UsCustomary;
        Formula icing = kitchen.ParseFormula("icing", "1 1/2 cups sifted powdered sugar\n5 tsp vanilla extract\n250 g unsalted butter\n3 large egg whites");
        foreach (ScaledLine line in kitchen.Scale(icing, 12).Lines)
            Console.WriteLine(line);
        Console.WriteLine(kitchen.ScaleToEggs(icing, "5 large"));
    },
    ["declaration"] = () =>
    {
        Formula cake = Formula.ParseText("Fennmarsh Hall almond cake", "200 g granulated sugar\n150 g whole egg\n120 g unsalted butter\n100 g almond flour\n80 g plain flour", IngredientTable.BuiltIn, MeasuringSystem.Metric);
        Formula ganache = Formula.ParseText("ganache", "120 g dark couverture 55 %\n100 g heavy cream", IngredientTable.BuiltIn, MeasuringSystem.Metric);
        Ingredient couverture = IngredientTable.BuiltIn.Get("dark couverture 55 %");
        DeclarationOptions options = new()
        {
            Compounds = [CompoundIngredient.Of("chocolate ganache", ganache, 220), CompoundIngredient.Of(couverture, "cocoa mass", "sugar", "cocoa butter", "emulsifier: soya lecithin")],
            Quantified = [IngredientTable.BuiltIn.Get("almond flour")],
        };
        IngredientDeclaration european = IngredientDeclaration.Of(cake, LabelRules.EuropeanUnion, options);
        Console.Write(european.ToMarkdown());
        Console.Write(IngredientDeclaration.Of(cake, LabelRules.UnitedStates, options).ToText());
        foreach (string remark in european.Remarks)
            Console.WriteLine(remark);
        Console.WriteLine(ReferenceAmount.OfCake(0.45));
        Console.WriteLine(HouseholdServing.Of(85));
    },
    ["compare"] = () =>
    {
        Formula july = Formula.ParseText("July", "250 g unsalted butter\n500 g icing sugar\n30 g whole milk", IngredientTable.BuiltIn, MeasuringSystem.Metric);
        Formula winter = Formula.ParseText("winter", "300 g unsalted butter\n450 g icing sugar\n60 g heavy cream", IngredientTable.BuiltIn, MeasuringSystem.Metric);
        FormulaComparison comparison = FormulaComparison.Of(july, winter, new() { Celsius = [18, 24] });
        Console.WriteLine(comparison.Sweeter);
        foreach (ComparisonVerdict verdict in comparison.Softer.Concat(comparison.KeepsLonger))
            Console.WriteLine(verdict);
        Console.WriteLine(comparison.Lines[0]);
        Console.WriteLine(comparison.Parts.Single(part => part.Name == "fat"));
        Console.WriteLine(FormulaComparison.Of(july, july.Scale(3)).AreTheSame);
    },
    ["firmness"] = () =>
    {
        (string Name, string Text)[] six =
        [
            ("all butter", "250 g unsalted butter\n500 g icing sugar"), ("all shortening", "200 g white shortening\n500 g icing sugar"),
            ("half and half", "125 g unsalted butter\n100 g white shortening\n500 g icing sugar"),
            ("butter and cocoa butter", "150 g unsalted butter\n80 g cocoa butter\n500 g icing sugar"),
            ("ganache 1:1", "200 g couverture-dark-64\n200 g heavy cream"), ("ganache 2:1", "200 g couverture-dark-64\n100 g heavy cream"),
        ];
        foreach ((string name, string text) in six)
        {
            Formula formula = Formula.ParseText(name, text, IngredientTable.BuiltIn, MeasuringSystem.Metric);
            Console.WriteLine(name);
            foreach (double celsius in (double[])[10, 18, 24, 31, 35])
            {
                SolidFat fat = formula.SolidFat(celsius);
                Spread percent = fat.PercentOfFat!.Value;
                // Below 20 °C no window was compared with these curves.
                string verdict = celsius < 20 ? "no window is judged here" : formula.InWarmRoom(celsius).Stands switch
                {
                    WindowAnswer.Yes => "stands",
                    WindowAnswer.No => "does not stand",
                    WindowAnswer.NotJudged => "the windows do not speak of cocoa butter",
                    _ => "doubtful",
                };
                Console.WriteLine($"  {celsius} °C {percent.Likely,4:0} % of its fat is solid ({percent.Low:0} to {percent.High:0}, {fat.Evidence!.Value.ToWord()}), {fat.PercentOfFormula!.Value.Likely:0} % of the whole: {verdict}");
            }
        }
    },
    ["july"] = () =>
    {
        Formula cream = Formula.ParseText("Fennmarsh Hall, July wedding", "250 g unsalted butter\n500 g icing sugar\n30 g whole milk", IngredientTable.BuiltIn, MeasuringSystem.Metric);
        Console.WriteLine(cream.InWarmRoom(31));
        Console.WriteLine(cream.Until(FatWindow.All[0]));
        ThermometerReading[] marquee = [new() { Minutes = 9 * 60, Celsius = 21 }, new() { Minutes = 12 * 60, Celsius = 27 }, new() { Minutes = 15 * 60, Celsius = 31 }];
        WarmAfternoon day = cream.InWarmAfternoon(marquee, startCelsius: 18, WarmAfternoon.RateOfCake(20, 10, 5));
        Console.WriteLine(day);
        Console.WriteLine($"may go soft from {day.EarliestMinutes / 60:0.0} h on, likely from {day.LikelyMinutes / 60:0.0} h; margin {day.MarginKelvins:0.0} K");
        Ingredient butter = IngredientTable.BuiltIn.Get("unsalted butter"), shortening = IngredientTable.BuiltIn.Get("white shortening"), water = IngredientTable.BuiltIn.Get("water");
        Console.WriteLine(cream.MostThatHolds(butter, shortening, water, 31));
        Console.WriteLine(cream.MostThatHolds(butter, shortening, water, 31, surely: true));
    },
    ["baking"] = () =>
    {
        Formula cake = Formula.ParseText("Fennmarsh Hall butter cake", "375 g all-purpose flour\n12 g baking powder\n400 g granulated sugar\n240 g whole milk\n227 g unsalted butter\n4 large eggs",
            IngredientTable.BuiltIn, MeasuringSystem.Metric);
        // The sister kitchen stands at 1600 m.
        BatterAtAltitude there = BatterAtAltitude.Of(cake, 1600);
        foreach (AltitudeChange change in there.Changes)
            Console.WriteLine(change);
        foreach (string caution in there.Cautions)
            Console.WriteLine(caution);
        CakePan eight = CakePan.Of(CakeBody.Prism(PlanShape.Round(CakeLength.FromInches(8)), CakeLength.FromInches(2)), "8 in round"),
            nine = CakePan.Of(CakeBody.Prism(PlanShape.Round(CakeLength.FromInches(9)), CakeLength.FromInches(2)), "9 in round");
        Console.WriteLine(TinSwap.Of(eight, nine, 0.5));
    },
    ["nutrition"] = () =>
    {
        Formula cream = Formula.ParseText("Fennmarsh Hall buttercream", "250 g unsalted butter\n500 g icing sugar\n30 g whole milk", IngredientTable.BuiltIn, MeasuringSystem.Metric);
        NutritionEstimate panel = NutritionEstimate.Of(cream, LabelRules.EuropeanUnion, portionGrams: 35);
        foreach (NutritionLine line in panel.Lines)
            Console.WriteLine(line);
        foreach (TrafficLight light in panel.TrafficLights)
            Console.WriteLine(light);
        NutritionEstimate american = NutritionEstimate.Of(cream, LabelRules.UnitedStates, portionGrams: 35);
        Console.WriteLine(american[LabelNutrient.Kilocalories]!.PerPortion);
        foreach (NutrientNotKnown missing in american.NotKnown)
            Console.WriteLine($"not known: {missing}");
        Console.WriteLine(NutritionEstimate.Caution);
    },
    ["out-of-the-cold"] = () =>
    {
        Formula cream = Formula.ParseText("Fennmarsh Hall cream cheese frosting", "200 g cream cheese\n400 g icing sugar\n100 g unsalted butter", IngredientTable.BuiltIn,
            MeasuringSystem.Metric);
        OutOfTheCold cold = OutOfTheCold.Of(KeepingAnswer.Of(cream), KeepingPlace.Refrigerator, RoomAir.Of(24, 0.70));
        Console.WriteLine(cold.CondensationSentence);
        Console.WriteLine(cold.ThawingSentence);
    },
    ["trouble"] = () =>
    {
        Formula buttercream = Formula.ParseText("Fennmarsh Hall meringue buttercream", "150 g egg white\n300 g granulated sugar\n400 g unsalted butter", IngredientTable.BuiltIn,
            MeasuringSystem.Metric);
        Diagnosis found = Diagnosis.Of(buttercream, Trouble.Named("it curdled"), TroubleFacts.None.At("butter", 8).At("meringue", 20));
        Console.WriteLine(found.Ranked[0].Cause);
        Console.WriteLine(found.Ranked[0].For[0]);
        Console.WriteLine(found.Ranked[0].Remedy);
    },
    ["yield"] = () =>
    {
        Formula cream = Formula.ParseText("Fennmarsh Hall buttercream", "1 kg icing sugar\n500 g unsalted butter", IngredientTable.BuiltIn, MeasuringSystem.UsCustomary);
        Console.WriteLine(IcingYield.Of(cream, IcingAir.Get("buttercream")).Cups(MeasuringSystem.UsCustomary).ToString("0.0"));
        Console.WriteLine(IcingYield.OfWeighed(cream, 212, Amount.Parse("1 cup"), MeasuringSystem.UsCustomary).Cups(MeasuringSystem.UsCustomary).ToString("0.0"));
        Console.WriteLine(IcingAir.Get("buttercream").Judge(212 / 236.6));
        Console.WriteLine(Foam.Of(cream).ToDensity(0.90));
    },
    ["crust"] = () =>
    {
        Formula cream = Formula.ParseText("icing", "113 g unsalted butter\n95 g high-ratio shortening\n454 g icing sugar\n31 g whole milk\n21 g light corn syrup", IngredientTable.BuiltIn, MeasuringSystem.UsCustomary);
        IcingCrust crust = IcingCrust.Of(cream);
        Console.WriteLine(crust);
        foreach (string reason in crust.Reasons)
            Console.WriteLine($"- {reason}");
    },
    ["ganache"] = () =>
    {
        Formula formula = Formula.ParseText("filling", "300 g dark chocolate 45-59 % cocoa\n300 g heavy cream", IngredientTable.BuiltIn, MeasuringSystem.Metric);
        Ganache ganache = Ganache.Of(formula);
        Console.WriteLine(ganache);
        Console.WriteLine(ganache.At(20, isTempered: true));
        Console.WriteLine(ganache.At(31));
        Console.WriteLine(ganache.RiskStirredAt(26));
        Console.WriteLine(string.Join("\n", GanacheRatio.All.Where(ratio => ratio is { Use: "coat", Season: "hot" })));
    },
    ["foam-formers"] = () =>
    {
        IngredientTable table = IngredientTable.BuiltIn;
        foreach (FoamFormer former in FoamFormer.All)
        {
            Console.WriteLine(former.Replace(100, table));
            Console.WriteLine("- " + string.Join("\n- ", former.Changes));
        }
    },
    ["layers"] = () =>
    {
        IngredientTable table = IngredientTable.BuiltIn;
        Formula icing = Formula.ParseText("icing", "200 g icing sugar\n100 g unsalted butter", table, MeasuringSystem.Metric), fruit = Formula.ParseText("fruit", "100 g raspberries", table, MeasuringSystem.Metric);
        Console.WriteLine(LayerWater.Between(icing, fruit));
        Console.WriteLine(LayerWater.Between(icing, Formula.ParseText("jam", "100 g jam", table, MeasuringSystem.Metric)));
    },
    ["properties"] = () =>
    {
        IngredientTable table = IngredientTable.BuiltIn;
        Formula cream = Formula.ParseText("Fennmarsh Hall summer buttercream", """
            300 g unsalted butter
            100 g white shortening
            480 g icing sugar
            70 g glucose syrup
            50 g water
            """, table, MeasuringSystem.UsCustomary);
        SolvedFormula answer = FormulaProblem.StartingFrom(cream)
            .WithKept(FormulaPart.Fat)
            .WithPropertyTarget(HeatProperties.SolidFat(28), 12)
            .WithPropertyLimit(SugarProperties.WaterActivity(25), double.NegativeInfinity, 0.80)
            .Solve();
        foreach (FormulaLine line in answer.ToFormula().Lines)
            Console.WriteLine($"{line.Ingredient.Name,-20}{line.Grams.Likely,7:0.0} g");
        foreach (DemandResult result in answer.Results)
            Console.WriteLine(result.Spread is Spread known ? $"{result}, known from {known.Low:0.##} to {known.High:0.##}" : result);
        Console.WriteLine(answer.Certificate!.Sentence);
    },
    ["solid-fat"] = () =>
    {
        Formula ganache = Formula.ParseText("Fennmarsh Hall ganache", "200 g couverture-dark-55\n100 g heavy cream", IngredientTable.BuiltIn,
            MeasuringSystem.Metric);
        SolidFat warm = ganache.SolidFat(28);
        Console.WriteLine(warm);
        foreach (FatOfFormula fat in warm.Fats)
            Console.WriteLine($"  {fat}");
        foreach (string caution in warm.Cautions)
            Console.WriteLine($"  {caution}");
    },
    ["own-weighings"] = () =>
    {
        Amount cup = Amount.Parse("1 cup");
        IngredientTable ours = IngredientTable.BuiltIn.With("icing sugar",
            Weighings.Of(cup, MeasuringSystem.UsCustomary, Packing.Sifted, [92, 95, 94], resolutionGrams: 1));
        BulkDensity density = ours.Get("icing sugar").Density(Packing.Sifted);
        Console.WriteLine(density.Weighings);
        Console.WriteLine($"the published figures still weigh {100 * density.PublishedShare:0} %");
        Console.WriteLine(Kitchen.UsCustomary.With(ours).Convert("1 cup sifted icing sugar"));
        IngredientTable odd = IngredientTable.BuiltIn.With("icing sugar",
            Weighings.Of(cup, MeasuringSystem.UsCustomary, Packing.Sifted, [150, 151, 149], resolutionGrams: 1));
        Console.WriteLine(odd.Get("icing sugar").Density(Packing.Sifted).Disagreement);
    },
    ["disagreement"] = () =>
    {
        var widest = IngredientTable.BuiltIn.All.SelectMany(food => food.Densities, (food, density) => (food, density))
            .Select(pair => (pair.food, pair.density, cups: pair.density.ContributingFigures.Select(figure => 236.588 * figure.Grams.Likely
                / figure.Amount.Millilitres(figure.MeasuringSystem ?? MeasuringSystem.Metric)).ToArray()))
            .Where(row => row.cups.Length > 1).OrderByDescending(row => row.cups.Max() / row.cups.Min()).Take(10);
        foreach ((Ingredient food, BulkDensity density, double[] cups) in widest)
        {
            string figures = string.Join(", ", density.ContributingFigures.Zip(cups, (figure, grams) => $"{grams:0} g {figure.Provenance.Source}"));
            Console.WriteLine($"{food}, {density.Packing.ToWord()}: {figures}; u {100 * density.LogUncertainty:0.0} %");
        }
    },
    ["from-label"] = () =>
    {
        NutritionPanel panel = NutritionPanel.Parse("""
            per 100 g
            energy 2252 kJ / 539 kcal
            fat 31.0 g
            of which saturates 10.4 g
            carbohydrate 57 g
            of which sugars 56 g
            protein 6.2 g
            salt 0.11 g
            """, LabelRules.EuropeanUnion);
        FoodLabel label = FoodLabel.Of("hall hazelnut spread", panel,
            "Sugar, sunflower oil, hazelnuts (16 %), cocoa powder, dried skimmed milk, emulsifier: lecithins (soya). May contain peanuts.",
            IngredientTable.BuiltIn, new LabelOptions { Spread = LabelSpread.Rounding });
        Ingredient spread = label.Ingredient;
        Console.WriteLine($"fat {CompositionSpread.Of(spread, Constituent.Fat)}, water {CompositionSpread.Of(spread, Constituent.Water)}");
        Console.WriteLine(string.Join("; ", label.Shares));
        Console.WriteLine($"{string.Join(", ", spread.Allergens)}; may: {string.Join(", ", spread.OftenContains)}");
        foreach (string remark in label.Remarks)
            Console.WriteLine(remark);
    },
    ["first-formula"] = () =>
    {
        Kitchen kitchen = Kitchen.UsCustomary;
        Formula buttercream = kitchen.ParseFormula("meringue buttercream", """
            4 large egg whites
            1 1/4 cups granulated sugar
            1 lb unsalted butter, softened
            2 tsp vanilla extract
            """);
        Console.WriteLine(string.Join("; ", buttercream.ScaleToMass(500).Lines));
        Balance balance = Balance.Of(buttercream);
        Console.WriteLine($"{balance[FormulaPart.Fat]}; {balance[FormulaPart.Water]}");
        Console.WriteLine($"contains {string.Join(", ", buttercream.Allergens)}");
        foreach (Caution caution in buttercream.Cautions)
            Console.WriteLine($"Caution: {caution}");
    },
    ["first-cake"] = () =>
    {
        CakeBody round = CakeBody.Prism(PlanShape.Round(CakeLength.Parse("8 in")), CakeLength.Parse("10 cm"));
        CakeTier tier = CakeTier.Of(round).Coated(CakeCoat.Of("buttercream", CakeLength.Parse("6 mm")));
        Formula formula = Kitchen.Metric.ParseFormula("buttercream", "210 g egg white\n385 g granulated sugar\n470 g unsalted butter");
        Icing buttercream = Icing.Of("buttercream", new Spread(0.80, 0.85, 0.95), formula).InWholeEggs(Kitchen.Metric.EggSizes.Size("medium"));
        IcingPlan plan = IcingPlan.Of(Cake.Of("Thursday class", [tier]), [buttercream], wasteFraction: 0.08, MixerBowl.OfQuarts(5, usableFraction: 0.7));
        Console.WriteLine(plan.Need("buttercream"));
        foreach (IcingBatch batch in plan.Need("buttercream").Batches)
            Console.WriteLine(batch);
    },
    ["amounts"] = () =>
    {
        Amount cream = Amount.Parse("1 1/2 cups");
        Console.WriteLine($"{cream} is {cream.Millilitres(MeasuringSystem.UsCustomary)} mL of a US cup");
        Console.WriteLine($"{cream} is {cream.Millilitres(MeasuringSystem.Australian)} mL of an Australian one");
    },
    ["drawer"] = () =>
    {
        MeasuringTools drawer = MeasuringTools.Usual(MeasuringSystem.UsCustomary);
        Console.WriteLine(PracticalMeasure.Find(400, drawer, allowedError: 0.02));
        Console.WriteLine(PracticalMeasure.Find(400, drawer, allowedError: 0.002));
    },
    ["phrase"] = () =>
    {
        Phrase butter = Phrase.Read("1 cup (2 sticks; 227 g) butter, cold and cubed, plus extra for the tin", IngredientTable.BuiltIn);
        Console.WriteLine($"{butter.Amount} of {butter.Ingredient}, also {string.Join(" and ", butter.SecondAmounts)}");
        foreach (PhrasePart part in butter.Parts)
            Console.WriteLine($"  at {part.Start}: {part}");
        Phrase pinch = Phrase.Read("a pinch of salt", IngredientTable.BuiltIn);
        Console.WriteLine(pinch.Assumed[0]);
        if (pinch.TryToMass(MeasuringSystem.UsCustomary, out ConvertedMass mass, out _))
            Console.WriteLine(mass);
        Console.WriteLine(Phrase.Read("1 cup (7 oz, 340 g) honey", IngredientTable.BuiltIn).Problems[0].Message);
        Console.WriteLine(Phrase.Read("1,5 dl double cream", IngredientTable.BuiltIn).Unread[0]);
    },
    ["lookup"] = () =>
    {
        Ingredient sugar = IngredientTable.BuiltIn.Get("powdered sugar");
        Console.WriteLine($"{sugar.Name}: {sugar.Composition[Constituent.Sucrose] * 100:0.##} % sucrose, {sugar.CompositionProvenance}");
        foreach (BulkDensity density in sugar.Densities)
            Console.WriteLine(density);
    },
    ["own-figures"] = () =>
    {
        string scales = """
            ingredient,amount,system,packing,grams,kind,source
            sugar-icing,1 cup,metric,sifted,109,measured,Fennmarsh Hall scales
            sugar-icing,1 cup,metric,shaken,120,measured,Fennmarsh Hall scales
            """;
        Reading<IngredientTable> reading = IngredientTable.BuiltIn.LayerWeights(new StringReader(scales));
        foreach (Problem problem in reading.Problems)
            Console.WriteLine(problem);
        if (reading.TryGet(out IngredientTable? ours))
            Console.WriteLine(ours.Get("icing sugar").Density(Packing.Sifted));
    },
    ["stage"] = () =>
    {
        AirPressure sisterKitchen = AirPressure.FromAltitudeMetres(1600);
        Console.WriteLine($"{sisterKitchen}; water boils at {sisterKitchen.WaterBoilsCelsius:0.0} °C");
        foreach (string stage in (string[])["soft-ball", "hard-crack"])
        {
            StageTarget target = CookingStage.Get(stage).At(sisterKitchen);
            Console.WriteLine($"{target}; rule of thumb {target.Low.RuleOfThumbCelsius:0.0} to {target.High.RuleOfThumbCelsius:0.0} °C");
        }
        Console.WriteLine($"108 °C there: {string.Join(", ", CookingStage.StagesAt(108, sisterKitchen))}");
        Console.WriteLine($"at 95 % and sea level: {SugarSolution.OfSucrose(0.95).BoilingCelsius(AirPressure.SeaLevel):0.0} °C");
    },
    ["pot"] = () =>
    {
        Formula meringueSyrup = Formula.ParseText("Fennmarsh Hall meringue syrup", """
            600 g granulated sugar
            60 g glucose syrup 42 DE
            200 g water
            """, IngredientTable.BuiltIn, MeasuringSystem.Metric);
        SyrupPot pot = SyrupPot.Of(meringueSyrup);
        PotTarget target = pot.CookTo(CookingStage.Get("soft ball"), AirPressure.FromBoilingWater(95));
        Console.WriteLine($"{pot}; the sugar is dissolved at {pot.DissolvedAtCelsius:0} °C");
        Console.WriteLine($"{target}; {target.High!.Millilitres():0} mL when cold");
        Console.WriteLine($"at 800 g {target.High.Progress(800):P0} of the way is done");
        PotEnd overcooked = pot.CookTo(118, AirPressure.FromBoilingWater(95));
        Console.WriteLine($"back from 118 °C: {overcooked.Pot.CookTo(110, AirPressure.FromBoilingWater(95))}");
    },
    ["strength"] = () =>
    {
        Brix syrup = Brix.FromPercent(66.7);
        Console.WriteLine($"{syrup}: {syrup.Baume:0.0} °Bé, {syrup.GramsPerMillilitre(20):0.000} g/mL, n {syrup.RefractiveIndex:0.0000}");
        Console.WriteLine($"in it at 80 °C a hydrometer shows {Hydrometer.MadeFor(20).Reading(syrup, 80)}");
        SugarSolution glucose = SugarSolution.Of(IngredientTable.BuiltIn.Get("glucose syrup 42 DE")).WithSolids(0.6);
        Console.WriteLine($"glucose syrup of 60 % solids reads {glucose.RefractometerReading()}");
    },
    ["crystals"] = () =>
    {
        SugarSolution plain = SugarSolution.OfSucrose(0.75);
        SugarSolution mixed = SugarSolution.Mix(plain, 60, SugarSolution.Of(IngredientTable.BuiltIn.Get("glucose syrup 42 DE")).WithSolids(0.75), 40);
        Console.WriteLine(Crystallisation.Of(plain, 20));
        Console.WriteLine(Crystallisation.Of(mixed, 20));
    },
    ["inversion"] = () =>
    {
        // A reading a minute, and none from minute 9 to 12: somebody was at the door.
        double[] celsius = [20, 34, 48, 61, 74, 86, 96, 104, 106, 107, 110, 111, 112, 113, 113, 114, 115, 115, 116];
        double[] minutes = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 12, 13, 14, 15, 16, 17, 18, 19, 20];
        CookingLog log = CookingLog.Of(SugarSolution.OfSucrose(0.75), AirPressure.SeaLevel, minutes.Zip(celsius, (at, shown) => new ThermometerReading { Minutes = at, Celsius = shown }));
        Console.WriteLine($"with cream of tartar {log.Inverted(Inversion.CreamOfTartarPh):P0} of the sugar is inverted");
        foreach (LogGap gap in log.Gaps)
            Console.WriteLine($"a gap: {gap}");
        Console.WriteLine(log.End(Inversion.CreamOfTartarPh));
    },
    ["replacing"] = () =>
    {
        IngredientTable table = IngredientTable.BuiltIn;
        Formula filling = Formula.ParseText("Fennmarsh Hall fondant filling", "800 g granulated sugar\n200 g water", table, MeasuringSystem.Metric);
        Ingredient sugar = table.Get("granulated sugar"), invert = table.Get("invert sugar syrup"), water = table.Get("water");
        SugarReplacement solids = SugarReplacement.AtEqualSolids(filling, sugar, 100, invert, water);
        SugarReplacement sweet = SugarReplacement.AtEqualSweetness(filling, sugar, 100, invert, water, SweetnessTable.Get("biester-1925"));
        SugarReplacement keeps = SugarReplacement.AtEqualWaterActivity(filling, sugar, 100, invert, water);
        Console.WriteLine($"100 g of sugar at equal solids: {solids}");
        Console.WriteLine($"at equal sweetness: {sweet}");
        Console.WriteLine($"at equal water activity {SugarSolution.Of(filling).WaterActivity():0.00}: {keeps}");
    },
    ["whites"] = () =>
    {
        EggCount eggs = EggCount.Of(8, EggSizeSystem.Get("us").Size("large"));
        EggForms forms = EggForms.Of(IngredientTable.BuiltIn);
        EggForm powder = forms.DriedWhite.WithMoisture(0.08);
        EggReplacement replacement = EggReplacement.Of(eggs, powder);
        Console.WriteLine($"{eggs}: {eggs.Grams(EggPart.White):0} g of white");
        Console.WriteLine(replacement);
        Console.WriteLine(replacement.InMeasures(MeasuringSystem.UsCustomary));
        Console.WriteLine(replacement.ByRule(ReconstitutionRule.Get("twelve-eighty-eight"), MeasuringSystem.UsCustomary));
    },
    ["whites-in-formula"] = () =>
    {
        Formula royal = Formula.ParseText("Fennmarsh Hall royal icing", "180 g egg white\n1000 g icing sugar", IngredientTable.BuiltIn, MeasuringSystem.Metric);
        EggForms forms = EggForms.Of(IngredientTable.BuiltIn);
        EggFormulaReplacement dried = EggReplacement.InFormula(royal, forms.FreshWhite, 180, forms.DriedWhite);
        foreach (FormulaLine line in dried.After.Lines)
            Console.WriteLine($"{line.Ingredient.Name,-20}{line.Grams.Likely,8:0.0} g");
        EggFormulaReplacement frozen = EggReplacement.InFormula(royal, forms.FreshWhite, 180, forms.Get("frozen-white"));
        Console.WriteLine($"frozen white: {frozen.IncomingGrams:0.0} g, {frozen.MissingWaterGrams:0.0} g of water too much");
    },
    ["meringue"] = () =>
    {
        MeringueBase swiss = MeringueBase.Of(EggForms.Of(IngredientTable.BuiltIn).FreshWhite, 300).WithSugar(540).WithAcid(1.5);
        Console.WriteLine(swiss);
        Console.WriteLine($"at 20 °C {swiss.UndissolvedGrams(20):0} g of sugar stay undissolved; at {swiss.DissolvedAtCelsius:0} °C none does");
        Console.WriteLine($"the white alone whips to {swiss.FoamMillilitres:0} mL");
        PotTarget syrup = swiss.ItalianSyrup(180, AirPressure.FromAltitudeMetres(1600));
        Console.WriteLine($"as an Italian meringue at 1600 m: {syrup.Stage}; {syrup}");
    },
    ["landing"] = () =>
    {
        IngredientTable table = IngredientTable.BuiltIn;
        Formula meringue = Formula.ParseText("warm meringue", "300 g egg white\n540 g granulated sugar", table, MeasuringSystem.Metric);
        HeatBalance mix = HeatBalance.Of(
        [
            HeatLine.Of(meringue, SugarState.Dissolved).At(38),
            HeatLine.Of(table.Get("unsalted butter"), 680).At(12),
            HeatLine.Bowl(VesselMaterial.StainlessSteel, 1200).At(30),
        ]);
        Console.WriteLine($"it lands at {mix.FinalTemperature}");
        Console.WriteLine($"to land at 22 °C the butter must be at {mix.NeededCelsius(1, 22)}");
    },
    ["reaching"] = () =>
    {
        Ingredient white = IngredientTable.BuiltIn.Get("egg white");
        SyrupPot pot = SyrupPot.Of(Formula.ParseText("syrup", "540 g granulated sugar\n180 g water", IngredientTable.BuiltIn, MeasuringSystem.Metric));
        PotEnd syrup = pot.CookTo(118, AirPressure.SeaLevel);
        Formula cooked = Formula.ParseText("syrup at 118 °C", "540 g granulated sugar\n180 g water", IngredientTable.BuiltIn, MeasuringSystem.Metric);
        cooked = Formula.Of(cooked.Name, cooked.Lines, syrup.WaterToBoilOffGrams);
        HeatBalance italian = HeatBalance.Of(
            [HeatLine.Of(cooked, SugarState.Dissolved).At(118), HeatLine.Of(white, 300).At(20), HeatLine.Bowl(VesselMaterial.StainlessSteel, 1200).At(20)], lossKilojoules: 15);
        Console.WriteLine($"syrup into whites lands at {italian.FinalTemperature}");
        HeatBalance swiss = HeatBalance.Of([HeatLine.Of(white, 300).At(8), HeatLine.Of(IngredientTable.BuiltIn.Get("granulated sugar"), 540).At(22)]);
        Console.WriteLine($"whites and sugar to 71 °C take {swiss.KilojoulesTo(71)}");
        LumpedBody bath = LumpedBody.FromReadings(
            [new ThermometerReading { Minutes = 0, Celsius = 22 }, new ThermometerReading { Minutes = 3, Celsius = 47 }], surroundingsCelsius: 90);
        Console.WriteLine($"on this bath 71 °C comes after {bath.MinutesTo(71):0.0} minutes");
    },
    ["cooling"] = () =>
    {
        LumpedBody bowl = LumpedBody.FromReadings(
            [new ThermometerReading { Minutes = 0, Celsius = 55 }, new ThermometerReading { Minutes = 10, Celsius = 46 }], surroundingsCelsius: 21);
        Console.WriteLine($"at 30 °C after {bowl.MinutesTo(30):0} minutes, at 20 °C {(bowl.MinutesTo(20) is null ? "never" : "some day")}");
    },
    ["log"] = () =>
    {
        string csv = """
            time,celsius
            0:00:00,21
            0:01:00,36
            0:02:00,49
            0:03:00,59
            0:04:00,66
            0:05:00,70
            0:06:00,72
            0:07:00,72
            """;
        ProbeLog log = ProbeLog.Read(new StringReader(csv)).OrThrow();
        Formula swiss = Formula.ParseText("Swiss", "300 g egg white\n540 g granulated sugar", IngredientTable.BuiltIn, MeasuringSystem.Metric);
        LethalityJudgement judgement = LethalityJudgement.Of(log, FoodMatrix.EggWhite, HeatedMix.WaterActivity(swiss, log.MaximumCelsius));
        Console.WriteLine($"water activity {judgement.WaterActivity:0.000}");
        Console.WriteLine(judgement.Headline);
        Console.WriteLine(judgement.Findings[1]);
    },
    ["solving"] = () =>
    {
        IngredientTable table = IngredientTable.BuiltIn;
        Formula ganache = Formula.ParseText("Fennmarsh Hall ganache", """
            480 g semisweet chocolate chips
            400 g heavy cream
            40 g unsalted butter
            80 g glucose syrup
            """, table, MeasuringSystem.UsCustomary);
        SolvedFormula answer = FormulaProblem.StartingFrom(ganache)
            .WithTarget(FormulaPart.Fat, 0.33)
            .WithTarget(FormulaPart.Sugars, 0.34)
            .WithRequirement(FormulaPart.Water, 0.20, 0.25)
            .WithLimit(table.Get("unsalted butter"), 20, 60)
            .Solve();
        foreach (FormulaLine line in answer.ToFormula().Lines)
            Console.WriteLine($"{line.Ingredient.Name,-26}{line.Grams.Likely,7:0.0} g");
        foreach (DemandResult result in answer.Results)
            Console.WriteLine(result);
        foreach (BindingDemand binding in answer.Binding)
            Console.WriteLine($"binds: {binding}");
        foreach (Trade trade in answer.DegreesOfFreedom.Trades)
            Console.WriteLine($"open: {trade}");
        Console.WriteLine(answer.Certificate!.Sentence);
    },
    ["conversion"] = () =>
    {
        Ingredient sugar = IngredientTable.BuiltIn.Get("icing sugar");
        Conversion sifted = Conversion.Of(sugar, Packing.Sifted, MeasuringSystem.UsCustomary);
        Console.WriteLine(sifted.ToMass(Amount.Parse("1 1/2 cups")));
        foreach (WeightFact voice in sifted.Density.ContributingFigures)
            Console.WriteLine(voice);
    },
    ["back"] = () =>
    {
        Conversion spooned = Conversion.Of(IngredientTable.BuiltIn.Get("icing sugar"), Packing.Spooned, MeasuringSystem.UsCustomary);
        Console.WriteLine(spooned.ToVolume(340));
        Console.WriteLine(spooned.ToMeasures(340, MeasuringTools.Usual(MeasuringSystem.UsCustomary), allowedError: 0.02));
    },
    ["total"] = () =>
    {
        Conversion flour = Conversion.Of(IngredientTable.BuiltIn.Get("plain flour"), Packing.Spooned, MeasuringSystem.Metric);
        Conversion cocoa = Conversion.Of(IngredientTable.BuiltIn.Get("cocoa"), Packing.Spooned, MeasuringSystem.Metric);
        ConvertedMass cup = flour.ToMass(Amount.Parse("1 cup"));
        Console.WriteLine($"the same flour twice: {MassTotal.Of([cup, cup])} g");
        Console.WriteLine($"flour and cocoa: {MassTotal.Of([cup, cocoa.ToMass(Amount.Parse("1 cup"))])} g");
    },
    ["formula"] = () =>
    {
        Formula icing = Formula.ParseText("Fennmarsh Hall icing", """
            # for the top of one cake
            340 g butter, softened
            4 1/2 cups sifted icing sugar
            1/4 cup heavy cream
            2 tsp vanilla extract
            """, IngredientTable.BuiltIn, MeasuringSystem.UsCustomary);
        foreach (FormulaLine line in icing.Lines)
            Console.WriteLine($"{line.Grams.Likely,6:0.0} g  ({line.Grams.Low:0.0} to {line.Grams.High:0.0})  {line.AsWritten} {line.Ingredient}");
        Console.WriteLine(icing);
    },
    ["scaling"] = () =>
    {
        Ingredient butter = IngredientTable.BuiltIn.Get("butter");
        Formula icing = Formula.ParseText("icing", "340 g butter\n4 1/2 cups sifted icing sugar", IngredientTable.BuiltIn, MeasuringSystem.UsCustomary);
        Console.WriteLine(string.Join("; ", icing.Scale(1.5).Lines));
        Console.WriteLine(string.Join("; ", icing.ScaleToMass(1000).Lines));
        Console.WriteLine(string.Join("; ", icing.ScaleToPieces(pieces: 24, gramsPerPiece: 35).Lines));
        Console.WriteLine(string.Join("; ", icing.ScaleToIngredient(butter, gramsAtHand: 255).Lines));
    },
    ["percentages"] = () =>
    {
        IngredientTable table = IngredientTable.BuiltIn;
        Formula dough = Formula.Of("brioche",
        [
            FormulaLine.Of(table.Get("bread flour"), 500), FormulaLine.Of(table.Get("whole egg"), 275),
            FormulaLine.Of(table.Get("unsalted butter"), 250), FormulaLine.Of(table.Get("caster sugar"), 60), FormulaLine.Of(table.Get("salt"), 10),
        ]);
        IReadOnlyList<double> onFlour = dough.PercentOf(FormulaPart.OfIngredient(table.Get("bread flour")));
        IReadOnlyList<double> ofFat = dough.PercentWithin(FormulaPart.FatPhase);
        for (int i = 0; i < dough.Lines.Count; i++)
            Console.WriteLine($"{dough.Lines[i].Ingredient,-16}{onFlour[i],6:0.0} % on flour {ofFat[i],6:0.0} % of the fat");
    },
    ["balance"] = () =>
    {
        IngredientTable table = IngredientTable.BuiltIn;
        Formula caramel = Formula.Of("Fennmarsh Hall caramel",
        [
            FormulaLine.Of(table.Get("granulated sugar"), 300), FormulaLine.Of(table.Get("heavy cream"), 350),
            FormulaLine.Of(table.Get("butter"), 80), FormulaLine.Of(table.Get("salt"), 4),
        ], boiledOffGrams: 150);
        Balance balance = Balance.Of(caramel);
        foreach (BalanceItem item in balance.Items)
            Console.WriteLine(item);
        Console.WriteLine(balance[FormulaPart.WaterPhase]);
        Console.WriteLine($"{balance.KilojoulesPer100Grams:0} kJ, {balance.KilocaloriesPer100Grams:0} kcal in 100 g");
    },
    ["cake-shapes"] = () =>
    {
        CakeBody heart = CakeBody.Prism(PlanShape.Heart(CakeLength.Parse("10 in")), CakeLength.Parse("8 cm"));
        Console.WriteLine($"{heart}: top {heart.TopAreaSquareCentimetres:0.0} cm², side {heart.SideAreaSquareCentimetres:0.0} cm², {heart.VolumeMillilitres:0} mL");
        Console.WriteLine($"area times 6 mm {heart.ThinCoatMillilitres(0.6):0.0} mL, rounded {heart.CoatMillilitres(0.6):0.0} mL, sharp {heart.CoatMillilitres(0.6, CoatEdge.Sharp):0.0} mL");
        foreach (CakeBody body in (CakeBody[])
        [
            CakeBody.Prism(PlanShape.RegularPolygonAcrossFlats(6, CakeLength.Parse("20 cm")), CakeLength.Parse("8 cm")),
            CakeBody.Prism(PlanShape.RegularPolygonAcrossCorners(6, CakeLength.Parse("20 cm")), CakeLength.Parse("8 cm")),
            CakeBody.Ball(CakeLength.Parse("20 cm"), CakeLength.Parse("8 cm")),
        ])
            Console.WriteLine($"{body}: {body.VolumeMillilitres:0} mL, coat {body.CoatMillilitres(0.6):0} mL");
    },
    ["cake-tiers"] = () =>
    {
        CakeFilling jam = CakeFilling.Of("jam", CakeLength.Parse("4 mm")).InDam("buttercream", CakeLength.Parse("1 cm"));
        CakeTier Tier(string across) => CakeTier.Of(CakeBody.Prism(PlanShape.Round(CakeLength.Parse(across)), CakeLength.Parse("10 cm")))
            .Filled(jam, 3)
            .Coated(CakeCoat.Of("buttercream", CakeLength.Parse("2 mm"), name: "crumb coat"), CakeCoat.Of("buttercream", CakeLength.Parse("5 mm"), CoatEdge.Sharp));
        Swirl swirl = Swirl.Rosette(CakeLength.Parse("6 cm"), 3, CakeLength.Parse("1.2 cm")).Raised(CakeLength.Parse("3.5 cm"));
        Cake cake = Cake.Of("Fennmarsh Hall garden party", [Tier("10 in"), Tier("6 in").Placed(new PlanPoint(-2, 0))],
            [Cupcakes.Swirled("buttercream", 12, swirl)]);
        CakeCoverage coverage = cake.Cover();
        foreach (CoveragePart part in coverage.Parts.Where(part => part.Tier != 1))
            Console.WriteLine(part);
        Console.WriteLine(coverage);
        Console.WriteLine($"seen {coverage.ExposedSquareCentimetres:0} cm²; {coverage.HiddenMillilitres:0} mL under the upper tier; {cake.Portions(Portion.OneByTwoInches)} portions of 1 by 2 in");
        CakeBody small = CakeBody.Prism(PlanShape.Round(CakeLength.Parse("8 cm")), CakeLength.Parse("4 cm"));
        Console.WriteLine(Cake.Of("in which measure?", [CakeTier.Of(small)]).Cover().Findings[0]);
    },
    ["icing-plan"] = () =>
    {
        IngredientTable table = IngredientTable.BuiltIn;
        Formula formula = Formula.ParseText("Fennmarsh Hall meringue buttercream", "210 g egg white\n385 g granulated sugar\n470 g unsalted butter", table, MeasuringSystem.Metric);
        Icing buttercream = Icing.Of("buttercream", new Spread(0.80, 0.85, 0.95), formula)
            .Whipping(new Spread(6, 7, 8), table.Get("egg white")).InWholeEggs(EggSizeSystem.Get("us").Size("large"));
        CakeBody flat = CakeBody.Prism(PlanShape.Rectangle(CakeLength.Parse("18 in"), CakeLength.Parse("26 in")), CakeLength.Parse("5 cm"));
        Cake sheet = Cake.Of("sheet", [CakeTier.Of(flat).Coated(CakeCoat.Of("buttercream", CakeLength.Parse("6 mm"), CoatEdge.Sharp))]);
        IcingNeed need = IcingPlan.Of(sheet, [buttercream], wasteFraction: 0.08, MixerBowl.OfQuarts(5, usableFraction: 0.7)).Need("buttercream");
        Console.WriteLine($"{need.Millilitres:0} mL on the cake, {need.PlannedGrams:0} g; {need.TakenGrams:0} g with the waste");
        foreach (IcingBatch batch in need.Batches)
            Console.WriteLine(batch);
        Console.WriteLine($"{need.MadeGrams:0.0} g made = {need.PlannedGrams.Likely:0.0} on the cake + {need.WasteGrams:0.0} lost + {need.LeftOverGrams:0.0} left over");
    },
    ["icing-reach"] = () =>
    {
        IcingCover reach = Icing.Of("buttercream", 0.85).CoverFrom(1400, wasteFraction: 0.08);
        Console.WriteLine($"1.4 kg put {reach.Millilitres:0} mL on a cake");
        CakeBody square = CakeBody.Prism(PlanShape.Square(CakeLength.Parse("25 cm")), CakeLength.Parse("10 cm"));
        Console.WriteLine($"that is {10 * reach.CoatThicknessCentimetres(square):0.0} mm on a square of 25 cm, 10 cm high");
        Console.WriteLine($"or 6 mm on a round of {reach.MaximumRoundCentimetres(CakeLength.Parse("10 cm"), CakeLength.Parse("6 mm")):0.0} cm, 10 cm high");
        Swirl swirl = Swirl.Rosette(CakeLength.Parse("6 cm"), 3, CakeLength.Parse("1.2 cm")).Raised(CakeLength.Parse("3.5 cm"));
        Console.WriteLine($"or {reach.Pieces(swirl)} swirls for cupcakes");
    },
    ["tins"] = () =>
    {
        CakePan eight = CakePan.Of(CakeBody.Prism(PlanShape.Round(CakeLength.Parse("8 in")), CakeLength.Parse("2 in")), "8 in round");
        CakeBody deep = CakeBody.Prism(PlanShape.Rectangle(CakeLength.Parse("9 in"), CakeLength.Parse("13 in")), CakeLength.Parse("2 in"));
        CakePan sheet = CakePan.Of(deep, "9 by 13 in");
        Console.WriteLine($"{eight}; half full {eight.BatterMillilitres(0.5):0} mL, two thirds {eight.BatterMillilitres(2.0 / 3):0} mL");
        Console.WriteLine($"to {sheet}: times {eight.FactorTo(sheet):0.00}");
        CakePan own = CakePan.Measured(1500, CakeLength.Parse("5 cm"), "ours, by water");
        Console.WriteLine($"{own}: 900 mL of batter fill {own.FillOf(900):P0} of its depth");
    },
    ["units"] = () =>
    {
        Kitchen high = Kitchen.UsCustomary.AtAltitude(Length.FromFeet(5200));
        Console.WriteLine($"water boils at {high.Pressure.ToBoilingPointOfWater().DegreesFahrenheit:0.0} °F");
        Conversion sugar = Conversion.Of(high.Ingredients.Get("granulated sugar"), high.MeasuringSystem);
        Mass cup = sugar.ToMass(Volume.FromUsCustomaryCups(1)).ToMass();
        Console.WriteLine($"a cup of sugar weighs {cup.Ounces:0.0} oz");
        Console.WriteLine($"a tin of 9 in is {CakeLength.From(Length.FromInches(9)).Centimetres} cm across");
    },
    ["formula-json"] = () =>
    {
        FormulaLine sugar = FormulaLine.Of(IngredientTable.BuiltIn.Get("icing sugar"), Amount.Parse("2 cups"), MeasuringSystem.Metric, Packing.Sifted);
        FormulaLine juice = FormulaLine.Of(IngredientTable.BuiltIn.Get("lemon juice"), 30);
        string json = Formula.Of("Fennmarsh Hall lemon glaze", [sugar, juice]).ToJson();
        Console.WriteLine(json);
        Formula again = Formula.ParseJson(json, IngredientTable.BuiltIn);
    },
};

string[] source = File.ReadAllLines(Here());
Type[] types = [.. typeof(Kitchen).Assembly.GetExportedTypes().Where(type => !type.IsNested)];
ILookup<string, string> spaces = types.ToLookup(type => type.Name.Split('`')[0], type => type.Namespace!);
HashSet<string> shown = [];
int wrong = 0;
string guide = Path.GetDirectoryName(Here())!;
foreach (string page in Directory.GetFiles(guide, "*.md").Order(StringComparer.Ordinal).Append(Path.Combine(guide, "..", "..", "README.md")))
{
    string text = File.ReadAllText(page);
    string fresh = Regex.Replace(text, @"<!-- sample: (?<name>[a-z-]+) -->\n```csharp\n.*?```\n\n```text\n.*?```\n", match =>
    {
        string name = match.Groups["name"].Value;
        if (!samples.ContainsKey(name))
        {
            wrong++;
            Console.WriteLine($"{Path.GetFileName(page)}: there is no sample {name}");
            return match.Value;
        }
        shown.Add(name);
        return $"<!-- sample: {name} -->\n```csharp\n{Code(name)}```\n\n```text\n{Output(name)}```\n";
    }, RegexOptions.Singleline);
    if (fresh == text)
        continue;
    if (args is ["--write"])
    {
        File.WriteAllText(page, fresh);
        Console.WriteLine($"wrote {Path.GetFileName(page)}");
        continue;
    }
    wrong++;
    Console.WriteLine($"{Path.GetFileName(page)} does not show what its samples are and print; run: dotnet run docs/guide/samples.cs --write");
}
// What the table of the front page names is there.
foreach (Match call in Regex.Matches(File.ReadAllText(Path.Combine(guide, "..", "..", "README.md")), @"`(?<type>[A-Z]\w+)(\.(?<member>\w+))?`"))
{
    string member = call.Groups["member"].Value;
    if (types.Any(type => type.Name == call.Groups["type"].Value && (member.Length == 0 || type.GetMember(member).Length > 0)))
        continue;
    wrong++;
    Console.WriteLine($"README.md: there is no {call.Value}");
}
foreach (string name in samples.Keys.Except(shown))
{
    wrong++;
    Console.WriteLine($"no page shows the sample {name}");
}
Console.WriteLine($"{shown.Count} samples, {wrong} wrong");
return wrong == 0 ? 0 : 1;

// The lines of a sample, under a using for each of our namespaces of which it names a type.
string Code(string name)
{
    int first = Array.IndexOf(source, $"    [\"{name}\"] = () =>") + 2, last = Array.IndexOf(source, "    },", first);
    string code = string.Concat(source[first..last].Select(line => (line.Length > 8 ? line[8..] : "") + "\n"));
    IEnumerable<string> used = Regex.Matches(code, @"(?<![.\w""])[A-Z]\w*").SelectMany(word => spaces[word.Value]).Distinct().Order(StringComparer.Ordinal);
    // Extension members are named by no type: what is made of a quantity needs their room, and the package.
    if (Regex.IsMatch(code, @"(?<![.\w])(Density|Duration|Length|Mass|Pressure|Temperature|Volume)\.From"))
        used = used.Append("Confectio.Units").Order(StringComparer.Ordinal).Append("UnitsNet");
    return string.Concat(used.Select(space => $"using {space};\n")) + "\n" + code;
}

string Output(string name)
{
    using StringWriter written = new() { NewLine = "\n" };
    TextWriter console = Console.Out;
    Console.SetOut(written);
    try
    {
        samples[name]();
    }
    finally
    {
        Console.SetOut(console);
    }
    return written.ToString();
}

static string Here([CallerFilePath] string path = "") => path;
