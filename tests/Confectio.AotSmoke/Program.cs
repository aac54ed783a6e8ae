// Every public room of the library, in a program that is compiled ahead of time: known values are printed with their sources
// and checked. Exit status: 0 all as known, 1 something is off.
using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
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
using Confectio.Pictures;
using Confectio.Publishing;
using Confectio.Safety;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Text;
using Confectio.Textures;
using Confectio.Troubles;
using Confectio.Uncertainty;
using Confectio.Units;
using Confectio.Vetting;

int off = 0;

// Sources: the definition of the US gallon has its source, and an evidence word reads back.
Source handbook = MeasuringSystem.UsCustomary.SourceOf(KitchenUnit.Gallon);
Check("sources", handbook.ShortName, handbook.Citation.Contains("Handbook 44", StringComparison.Ordinal));
Check("evidence", Evidence.CommonPractice.ToWord(), EvidenceText.TryRead("common-practice", out Evidence evidence) && evidence == Evidence.CommonPractice);

// Measures: 231 cubic inches of 2.54 cm to the gallon, 16 cups to the gallon, so 1.5 x 231 x 16.387064 / 16 mL.
Amount cups = Amount.Parse("1 1/2 cups", AmountReading.DecimalPoint);
double millilitres = cups.Millilitres(MeasuringSystem.UsCustomary);
Check("measures", Invariant($"{cups} = {millilitres:R} mL, {MeasuringSystem.UsCustomary.SourceOf(KitchenUnit.Cup)}"), millilitres == 354.88235475);
Check("units package", Invariant($"{cups.ToVolume(MeasuringSystem.UsCustomary).Milliliters:0.####} mL"),
    Math.Abs(cups.ToVolume(MeasuringSystem.UsCustomary).Milliliters - 354.88235475) < 1e-9);
PracticalMeasure? spoons = PracticalMeasure.Find(45, MeasuringTools.Usual(MeasuringSystem.Metric));
Check("practical", Invariant($"45 mL = {spoons?.Amount}"), spoons?.Amount == Amount.Of(3, KitchenUnit.Tablespoon));

// Ingredients: USDA SR weighs a stick of butter at 113 g.
Ingredient butter = IngredientTable.BuiltIn.Get("unsalted butter");
PieceWeight stick = butter.Piece("stick");
Check("ingredients", stick.Fact.ToString(), stick.Grams.Likely == 113);
Check("composition", Invariant($"butter is {butter.Composition[Constituent.Water] * 100:0.##} % water, {butter.CompositionProvenance}"),
    butter.Composition[Constituent.Water] is > 0.15 and < 0.20 && butter.Allergens.Contains(Allergen.Milk));
const string Own = "ingredient,amount,system,packing,grams,kind,source\nsugar-icing,1 cup,metric,sifted,101,measured,Fennmarsh Hall scales\nno-such-thing,1 cup,metric,sifted,1,measured,x\n";
Reading<IngredientTable> layers = IngredientTable.BuiltIn.LayerWeights(new StringReader(Own));
Check("own weights", layers.Problems.Count == 1 ? layers.Problems[0].ToString() : Invariant($"{layers.Problems.Count} problems"),
    layers.Problems is [{ Line: 3, Column: "ingredient" }] && layers.TryGet(out IngredientTable? layered) && layered.Get("icing sugar").Density(Packing.Sifted).ContributingFigures.Count == 1);

// Conversions: USDA SR prints 100 g a cup of sifted icing sugar and HERR 41 prints 95.
Conversion sifted = Conversion.Of(IngredientTable.BuiltIn.Get("icing sugar"), Packing.Sifted, MeasuringSystem.UsCustomary);
ConvertedMass cup = sifted.ToMass(Amount.Parse("1 cup", AmountReading.DecimalPoint));
Check("conversions", Invariant($"1 cup {sifted} = {cup}; {string.Join("; ", sifted.Density.ContributingFigures)}"), cup.Grams.Likely is >= 95 and <= 100);
double[] column = new double[5];
sifted.ToGrams([10, 20, 30, 40, 50], column);
Check("column", Invariant($"50 mL = {column[4]:0.###} g"), Math.Abs(column[4] - 5 * column[0]) < 1e-12 && Math.Abs(sifted.ToVolume(column[4]).Millilitres.Likely - 50) < 1e-12);
Check("total", MassTotal.Of([cup, cup]).ToString(), Math.Abs(MassTotal.Of([cup, cup]).Likely - 2 * cup.Grams.Likely) < 1e-9);

// Formulas: USDA SR gives unsalted butter 81.11 % fat, so 100 g of it in 200 g is 40.555 %.
Formula half = Formula.ParseText("half", "100 g unsalted butter\n100 g granulated sugar", IngredientTable.BuiltIn, MeasuringSystem.UsCustomary);
Balance balance = Balance.Of(half);
Check("balance", Invariant($"{balance[FormulaPart.Fat].Fraction.Likely * 100:0.###} % fat"), Math.Abs(balance[FormulaPart.Fat].Fraction.Likely - 0.40555) < 1e-12);
Check("formula json", Formula.ParseJson(half.ToJson(), IngredientTable.BuiltIn).ToString(), Formula.ParseJson(half.ToJson(), IngredientTable.BuiltIn).TotalGrams == 200);

// Solving: fat comes from the butter alone, so 30 % of 200 g are 60 / 0.8111 g of it.
SolvedFormula solved = FormulaProblem.ParseJson(
    "{\"confectioProblem\":1,\"ingredients\":[{\"ingredient\":\"unsalted butter\",\"baseGrams\":100},{\"ingredient\":\"granulated sugar\",\"baseGrams\":100}],\"targets\":[{\"part\":\"fat\",\"percent\":30}]}",
    IngredientTable.BuiltIn).Solve();
Check("solving", Invariant($"{solved.Grams[0]:0.###} g of butter, {solved.DegreesOfFreedom}"), Math.Abs(solved.Grams[0] - 60 / 0.8111) < 1e-9 && solved.Certificate!.Holds);
Check("rounding", Invariant($"{solved.Round(RoundingGrid.Grams(5)).Grams[0]} g"), solved.Round(RoundingGrid.Grams(5)).Grams[0] == 75);
using (JsonDocument json = Json(writer => solved.WriteTo(writer)))
    Check("answer json", json.RootElement.GetProperty("status").GetString() ?? "", json.RootElement.GetProperty("certificate").GetProperty("holds").GetBoolean());

// Sugars: IF97 prints 372.755919 K for 0.1 MPa; 60 % sucrose boils 2.94 K above water (Starzak and Peacock 1997); 600 g of it make 750 g of 80 %; Vavrinecz has
// 66.72 % at 20 °C; Norrish's half sucrose is 0.9348; 100 g of sucrose give 105.26 g of invert sugar.
Check("boiling water", Invariant($"{AirPressure.FromKilopascals(100).WaterBoilsCelsius:0.000000} °C"), Math.Abs(AirPressure.FromKilopascals(100).WaterBoilsCelsius + 273.15 - 372.755919) < 1e-6);
SyrupPot pot = SyrupPot.Of(SugarSolution.OfSucrose(0.6), 1000);
Check("boiling syrup", Invariant($"{pot.Solution.BoilingPointElevation(AirPressure.SeaLevel):0.00} K above water"), Math.Abs(pot.Solution.BoilingPointElevation(AirPressure.SeaLevel) - 2.94) < 0.1);
Check("pot", pot.CookTo(CookingStage.Get("soft-ball"), AirPressure.FromAltitudeMetres(1600)).ToString(), pot.CookToSolids(0.8).WaterToBoilOffGrams is > 249.999 and < 250.001);
Check("crystals", Crystallisation.Of(SugarSolution.OfSucrose(0.6672), 20).ToString(), Math.Abs(Crystallisation.Of(SugarSolution.OfSucrose(0.6672), 20).Supersaturation - 1) < 1e-3);
Check("activity", Invariant($"{SugarSolution.OfSucrose(0.5).WaterActivityAllDissolved(25, WaterActivityModel.Norrish):0.0000}"), Math.Abs(SugarSolution.OfSucrose(0.5).WaterActivityAllDissolved(25, WaterActivityModel.Norrish) - 0.9348) < 5e-4);
Check("inversion", Invariant($"{SugarSolution.OfSucrose(0.5).Inverted(1)}"), Math.Abs(SugarSolution.OfSucrose(0.5).Inverted(1).Solids - 0.5263) < 1e-4);
Check("sweetness", SweetnessTable.Get("biester-1925").Of(SugarSolution.OfSucrose(0.5).Inverted(1)).ToString(), Math.Abs(SweetnessTable.Get("biester-1925").Of(SugarSolution.OfSucrose(0.5).Inverted(1)).Value.Likely - 0.5263 * 1.235) < 1e-3);

// Heat: Doyle and Mazzotta have D = 10^(11.7 - 0.188 T) min; Earle's pea soup; a closed form of cooling; two steps of the Food Code.
Spread killTime = KineticSet.Get("doyle-mazzotta").DecimalReductionMinutes(60)!.Value;
Check("kinetics", Invariant($"D60 {killTime.Likely:0.000} min"), Math.Abs(killTime.Likely - Math.Pow(10, 11.7 - 0.188 * 60)) < 1e-5);
ProbeLog probe = ProbeLog.Read(new StringReader("minutes,celsius\n0,58\n1,58\n2,58\n"), new ProbeLogOptions { ConfirmedScale = TemperatureScale.Celsius }).OrThrow();
Check("judgement", LethalityJudgement.Of(probe, FoodMatrix.EggWhite, new Spread(0.83, 0.84, 0.85)).Findings[0].ToString(), probe.LogReduction(KineticSet.Of("plain", 58, TimeSpan.FromMinutes(1), 5)).Likely is > 1.999999 and < 2.000001);
Check("holding times", HoldTimeTable.Get("food-code-3-401-11").Rows[0].ToString(), HoldTimeTable.Get("food-code-3-401-11").Rows[0].Seconds == 15);
HeatBalance water = HeatBalance.Of([HeatLine.Of(IngredientTable.BuiltIn.Get("water"), 100).At(20), HeatLine.Of(IngredientTable.BuiltIn.Get("water"), 100).At(40)]);
Check("heat balance", water.FinalTemperature.ToString(), Math.Abs(water.FinalTemperature.Value!.Value.Likely - 30) < 0.05);
Check("cooling", Invariant($"{LumpedBody.FromReadings([new ThermometerReading { Celsius = 60 }, new ThermometerReading { Minutes = 10, Celsius = 40 }], 20).MinutesTo(30):0.00} min"), Math.Abs(LumpedBody.FromReadings([new ThermometerReading { Celsius = 60 }, new ThermometerReading { Minutes = 10, Celsius = 40 }], 20).MinutesTo(30)!.Value - 20) < 1e-9);

// Properties: butter has 21 % of its fat solid at 20 °C and oil none, so that 15 % is 15/21 of the fat; sugar and water by way of the solver have the activity that was asked.
SolvedFormula firm = FormulaProblem.StartingFrom(Formula.ParseText("", "100 g unsalted butter\n100 g vegetable oil", IngredientTable.BuiltIn, MeasuringSystem.UsCustomary))
    .WithPropertyTarget(HeatProperties.SolidFat(20), 15).Solve();
Check("solid fat", firm.ToFormula().SolidFat(20).ToString(), firm.Certificate!.IsBest && Math.Abs(firm.ToFormula().SolidFat(20).PercentOfFat!.Value.Likely - 15) < 1e-9);
Formula july = Formula.ParseText("", "250 g unsalted butter\n500 g icing sugar", IngredientTable.BuiltIn, MeasuringSystem.Metric);
HoldingBlend holding = july.MostThatHolds(IngredientTable.BuiltIn.Get("unsalted butter"), IngredientTable.BuiltIn.Get("white shortening"), IngredientTable.BuiltIn.Get("water"), 31);
Check("most butter that holds", holding.Why, Math.Abs(holding.Formula!.SolidFat(31).PercentOfFat!.Value.Likely - 10) < 1e-9);
WarmAfternoon afternoon = july.InWarmAfternoon([new ThermometerReading { Celsius = 20 }, new ThermometerReading { Minutes = 120, Celsius = 32 }], 20, Confectio.Uncertainty.Spread.Exactly(0.02));
Check("afternoon", afternoon.ToString(), Math.Abs(afternoon.CelsiusAt(120).Likely - 27.4536) < 1e-3);
Check("cone", ConePenetration.Of(79.03, 10).ToString(), Math.Abs(ConePenetration.Of(79.03, 10).YieldValue - 291.21) < 0.05);
SolvedFormula active = Kitchen.UsCustomary.Balance("{\"confectioProblem\":1,\"ingredients\":[{\"ingredient\":\"granulated sugar\",\"baseGrams\":300},{\"ingredient\":\"water\",\"baseGrams\":700}],\"propertyLimits\":[{\"property\":\"water-activity\",\"value\":0.9}]}");
Check("activity asked", active.Certificate?.Sentence ?? active.WhyUndecided ?? "", Math.Abs(SugarSolution.Of(active.ToFormula()).WaterActivity(25).Likely - 0.9) < 1e-9);

// Keeping, textures, troubles: two parts of icing sugar to one of butter is saturated; 454 g to 80 g of water is stiff; butter of 8 °C in a mix of 12 °C is too hard, at 25 % solid and more.
Formula twoToOne = Formula.ParseText("2:1", "100 g unsalted butter\n200 g icing sugar", IngredientTable.BuiltIn, MeasuringSystem.UsCustomary);
Check("keeping", KeepingAnswer.Of(twoToOne).ToString(), KeepingAnswer.Of(twoToOne).IsSaturated && OutOfTheCold.Of(KeepingAnswer.Of(twoToOne), KeepingPlace.Refrigerator, RoomAir.Of(22, 0.6)).Sweats);
Check("air", Foam.Of(1.03).ToTimes(7).ToString(), IcingAir.Get("buttercream").Judge(0.88) == IcingLightness.Recommended);
Check("textures", IcingConsistency.Of(Formula.ParseText("royal", "454 g icing sugar\n80 g water", IngredientTable.BuiltIn, MeasuringSystem.UsCustomary), ConsistencySort.Get("royal-icing")).ToString(),
    IcingConsistency.Of(Formula.ParseText("royal", "454 g icing sugar\n80 g water", IngredientTable.BuiltIn, MeasuringSystem.UsCustomary), ConsistencySort.Get("royal-icing")).BandText == "stiff");
Diagnosis curdled = Diagnosis.Of(twoToOne, Trouble.Named("curdled"), TroubleFacts.None.At("mix", 12).At("butter", 8));
Check("troubles", curdled.ToString(), curdled.Ranked[0].Cause.Key == "cold-fat");

// Eggs: AMS 56 has 24 oz to the dozen large eggs; 8.54 % moisture made up to 12.43 % takes 6.358 g of water a gram.
Check("eggs", EggCount.Of(8, EggSizeSystem.Get("us").Size("large")).ToString(), Math.Abs(EggSizeSystem.Get("us").Size("large").LowGrams!.Value - 24 * 28.349523125 / 12) < 1e-9);
EggForms forms = EggForms.Of(IngredientTable.BuiltIn);
EggReplacement dried = EggReplacement.Of(forms.FreshWhite, 100, forms.DriedWhite);
Check("egg white", dried.ToString(), Math.Abs(dried.WaterGrams / dried.IncomingGrams.Likely - 6.358) < 1e-3);
Check("meringue", MeringueBase.Of(forms.FreshWhite, 100).WithSugar(200).ToString(), Math.Abs(MeringueBase.Of(forms.FreshWhite, 100).WithSugar(200).SucrosePercent - 69.55) < 0.02);

// Cakes: a round of 20 cm is 100π cm², and Steiner's coat of 0.6 cm on 12 cm of height is 672.674 mL.
CakeBody round = CakeBody.Prism(PlanShape.Round(CakeLength.FromCentimetres(20)), CakeLength.FromCentimetres(12));
Check("cakes", Invariant($"{round}: {round.CoatMillilitres(0.6):0.000} mL of coat"), Math.Abs(round.TopAreaSquareCentimetres - 100 * Math.PI) < 1e-9 && Math.Abs(round.CoatMillilitres(0.6) - 672.674) < 1e-3);

// Icings: three rounds of 12, 9 and 6 in, 4 in high, are π·65.25·4 in³; what is planned is made, less what is lost and left over; the picture is XML.
const string Wedding = """
    { "confectioOrder": 1, "wastePercent": 8,
      "tiers": [{ "shape": "round", "diameter": "12 in", "height": "4 in", "coats": [{ "icing": "cream", "thickness": "6 mm" }] },
        { "shape": "round", "diameter": "9 in", "height": "4 in", "coats": [{ "icing": "cream", "thickness": "6 mm" }] },
        { "shape": "round", "diameter": "6 in", "height": "4 in", "coats": [{ "icing": "cream", "thickness": "6 mm" }] }],
      "icings": [{ "name": "cream", "gramsPerMillilitre": 0.85, "formula": { "confectioFormula": 1, "lines": [{ "ingredient": "egg white", "grams": 1 }, { "ingredient": "butter", "grams": 4 }] },
        "wholeEggs": { "system": "us", "size": "large" } }],
      "bowls": [{ "quarts": 5, "usablePercent": 70 }] }
    """;
IcingOrder order = IcingOrder.ParseJson(Wedding, IngredientTable.BuiltIn);
IcingPlan plan = order.Plan(order.Bowls[0]);
IcingNeed need = plan.Needs[0];
Check("icings", need.ToString(), Math.Abs(plan.Coverage.BodyMillilitres - Math.PI * 65.25 * 4 * 16.387064) < 1e-6 && Math.Abs(need.MadeGrams - need.WasteGrams - need.LeftOverGrams - need.PlannedGrams.Likely) < 1e-6);
using (JsonDocument json = Json(writer => plan.WriteTo(writer)))
    Check("icings json", json.RootElement.GetProperty("icings")[0].GetProperty("name").GetString() ?? "", json.RootElement.GetProperty("parts").GetArrayLength() == 3);
Check("portions", Invariant($"{order.Cake.Portions(Portion.OneByTwoInches)}"), order.Cake.Portions(Portion.OneByTwoInches) == 101);
Check("quantities", CakeLength.From(UnitsNet.Length.FromInches(9)).ToString(), CakeLength.From(UnitsNet.Length.FromInches(9)).Centimetres == 22.86);
System.Xml.Linq.XDocument picture = System.Xml.Linq.XDocument.Parse(CakePicture.Svg(order.Cake));
BatterAtAltitude high = BatterAtAltitude.Of(july, 1600);
Check("a cake at a height", high.ToString(), high.Changes.Any(change => change.Part == BatterPart.Oven));
NutritionEstimate label = NutritionEstimate.Of(july, LabelRules.EuropeanUnion);
Check("nutrition panel", label.ToString(), label[LabelNutrient.Saturates] is not null && label.TrafficLights.Count == 4);
IngredientDeclaration list = IngredientDeclaration.Of(july, LabelRules.EuropeanUnion);
Check("list of ingredients", list.ToString(), list.ToMarkdown().Contains("**milk**", StringComparison.Ordinal) && ReferenceAmount.Get("frosting").GramsAt(1) == 30);
FormulaComparison comparison = FormulaComparison.Of(july, july.Scale(2));
Check("comparison", comparison.ToString(), comparison.AreTheSame && comparison.Sweeter.Answer == ComparedAnswer.Same);
BatchCost cost = BatchCost.Of(july, PriceList.Read(new StringReader("ingredient,pack,price\nunsalted butter,2.5 kg,19.75\n"), IngredientTable.BuiltIn, MeasuringSystem.Metric, Currency.Get("EUR")).OrThrow(), new() { Portions = 12 });
Check("cost", cost.ToString(), cost.Total is null && cost.AtLeast > 0);
Check("chart of solid fat", "", System.Xml.Linq.XDocument.Parse(SolidFatPicture.Svg(july, 31)).Root!.Name.LocalName == "svg");
Check("pictures", picture.Root!.Name.LocalName, picture.Descendants().Count(element => element.Name.LocalName == "path") > 6);

// Paper: 250 g is 8.82 oz by the ounce of 28.349523125 g; the chart of a food is not flagged by the vetter.
FormulaCard card = FormulaCard.Of(july, new CardOptions { MeasuringSystems = [MeasuringSystem.UsCustomary, MeasuringSystem.Metric], Portions = 12, Rules = LabelRules.EuropeanUnion, Temperatures = [CardTemperature.Of("room", 31)] });
Check("card", card.Lines[0].ToString(), card.ToHtml().EndsWith("</html>\n", StringComparison.Ordinal) && card.ToText().Contains("31 °C (88 °F)", StringComparison.Ordinal) && card.ToMarkdown().StartsWith("# ", StringComparison.Ordinal));
using (JsonDocument json = JsonDocument.Parse(card.ToJsonLd()))
    Check("card as json-ld", json.RootElement.GetProperty("@type").GetString() ?? "", json.RootElement.GetProperty("recipeIngredient").GetArrayLength() == july.Lines.Count);
using (JsonDocument json = JsonDocument.Parse(card.ToJson()))
    Check("card as json", card.ToString(), Formula.ParseJson(json.RootElement.GetProperty("formula").GetRawText(), IngredientTable.BuiltIn).ToJson() == july.ToJson());
ConversionChart chart = ConversionChart.Of([ChartFood.Of(IngredientTable.BuiltIn.Get("icing sugar"), Packing.Sifted)], [Amount.Parse("1 cup")], MeasuringSystem.UsCustomary);
Check("chart of measures", chart.Rows[0].ToString(), chart.ToCsv().Contains("icing sugar,1 cup,sifted,97,", StringComparison.Ordinal) && ConversionTableVetter.Vet(new StringReader(chart.ToCsv()), IngredientTable.BuiltIn).Rows.All(row => row.Verdict == Verdict.Agrees));
Check("sheet of a cake", PlanSheet.Of([plan]).ToString(), PlanSheet.Of([plan]).ToHtml().Contains("<h1>", StringComparison.Ordinal));

// Vetting: the honey row was planted, a cup taken for eight ounces of weight; the other rows are USDA SR's own figures.
const string Table = "ingredient,measure,grams\ngranulated sugar,1 cup,200\nwater,1 cup,237\nwhole milk,1 cup,244\nhoney,1 cup,227\nsalt,1 tsp,6\nvegetable oil,1 cup,218\nunsalted butter,1 stick,113\n";
TableVerdict verdict = ConversionTableVetter.Vet(new StringReader(Table), IngredientTable.BuiltIn);
foreach (RowFinding row in verdict.Rows.Where(row => row.Verdict != Verdict.Agrees))
    Console.WriteLine($"  line {row.Line}: {row.Ingredient}: {row.Explanation}");
Check("vetting", verdict.System?.ToString() ?? "no system", verdict.Rows.Single(row => row.Line == 5) is { Verdict: Verdict.Wrong or Verdict.Impossible, Reason: Reason.CupCountedAsEightOunces }
    && verdict.Rows.Where(row => row.Line != 5).All(row => row.Verdict == Verdict.Agrees) && verdict.HasMistakes);
using (JsonDocument json = Json(verdict.WriteTo))
    Check("vetting json", json.RootElement.GetProperty("rows")[3].GetProperty("reason").GetString() ?? "", json.RootElement.GetProperty("rows").GetArrayLength() == 7);

// Temperatures: 350 °F is 176.7 °C, so 180 agrees by rounding; 100 °C is 212 °F by definition; 340 °F is 171.1 °C, and 340/1.8 without the 32 is 188.9.
TemperatureVerdict oven = TemperatureTableVetter.Vet(new StringReader("what,fahrenheit,celsius\nsponge oven,350,180\nwater boils,212,100\ncaramel,340,189\n"), IngredientTable.BuiltIn);
Check("temperatures", oven.Rows[2].Explanation, oven.Rows.Select(row => row.Verdict).SequenceEqual([Verdict.Agrees, Verdict.Agrees, Verdict.Wrong])
    && oven.Rows[2].Reason == TemperatureReason.PointAsDifference);
using (JsonDocument json = Json(oven.WriteTo))
    Check("temperatures json", json.RootElement.GetProperty("rows")[2].GetProperty("verdict").GetString() ?? "", json.RootElement.GetProperty("rows").GetArrayLength() == 3);

// A cup of honey is 12 oz in every table that prints one, and 8 oz are 227 g; 177 and 350 are each other's scale.
CardVerdict honeyCake = Kitchen.UsCustomary.VetCard("<html><script type=\"application/ld+json\">{\"@type\":\"Recipe\",\"name\":\"Honey cake\",\"recipeIngredient\":[\"1 cup (227 g) honey\",\"1 cup (200 g) sugar\",\"1 cup (125 g) all-purpose flour\",\"1 cup (237 g) water\"],"
    + "\"recipeInstructions\":[{\"@type\":\"HowToStep\",\"text\":\"Bake at 177&deg;F (350&deg;C).\"}],\"description\":\"Gluten-free\"}</script></html>");
Check("vetted card", honeyCake.ToString(), honeyCake.Findings.Select(finding => finding.Issue).SequenceEqual([CardIssue.AllergenContradicted, CardIssue.Measures, CardIssue.Temperature]));
using (JsonDocument json = JsonDocument.Parse(VettingReport.Of([VettedFile.Of("cards/honey.html", honeyCake)]).ToSarif()))
    Check("sarif", json.RootElement.GetProperty("version").GetString() ?? "", json.RootElement.GetProperty("runs")[0].GetProperty("results").GetArrayLength() == 3);

Check("kitchen", $"{Kitchen.UsCustomary.Convert("1 1/2 cups sifted powdered sugar"):U}", $"{Kitchen.UsCustomary.Convert("1 1/2 cups sifted powdered sugar"):U}" == "146 g (130 to 165)");
string written = JsonSerializer.Serialize(new Kept(Spread.Exactly(146.2).WithUncertainty(8.8), AirPressure.FromKilopascals(84), Amount.Parse("1 1/2 cups")), KeptJson.Default.Kept);
Check("values as json", written, JsonSerializer.Deserialize(written, KeptJson.Default.Kept) == new Kept(Spread.Exactly(146.2).WithUncertainty(8.8), AirPressure.FromKilopascals(84), Amount.Parse("1 1/2 cups")));

Console.WriteLine(System.Runtime.InteropServices.RuntimeInformation.FrameworkDescription);
Console.WriteLine(off == 0 ? "all as known" : Invariant($"{off} off"));
return off == 0 ? 0 : 1;

void Check(string what, string shown, bool holds)
{
    if (!holds)
        off++;
    Console.WriteLine($"{(holds ? "as known" : "OFF     ")} {what}: {shown}");
}

static JsonDocument Json(Action<Utf8JsonWriter> write)
{
    ArrayBufferWriter<byte> buffer = new();
    using (Utf8JsonWriter writer = new(buffer))
        write(writer);
    return JsonDocument.Parse(Encoding.UTF8.GetString(buffer.WrittenSpan));
}

static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

/// <summary>What somebody else keeps of ours, by code that the serialiser generated in their assembly.</summary>
internal sealed record Kept(Spread Mass, AirPressure Pressure, Amount Amount);

[System.Text.Json.Serialization.JsonSerializable(typeof(Kept))]
internal sealed partial class KeptJson : System.Text.Json.Serialization.JsonSerializerContext;
