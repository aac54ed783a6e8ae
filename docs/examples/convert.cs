// Says an amount of an ingredient in grams, or a mass in kitchen measures, with its spread and source.
//
//   dotnet run docs/examples/convert.cs "1 1/2 cups" "icing sugar" [--packing sifted] [--system us-customary] [--tools household] [--decimal comma] [--json]
//   dotnet run docs/examples/convert.cs "340 g" "icing sugar" --packing sifted
//
// The cautions of the conversion and of the food, and its allergens, follow the answer, in text and in JSON.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Text.Json.Nodes;
using Confectio.Conversions;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;

Cli cli = new("convert.cs", "Says an amount in grams, or a mass in kitchen measures. Exit status: 0 done; 1 the ingredient, its packing or its piece is not known; "
    + "2 bad usage, an amount that cannot be read or an answer that cannot be written.");
Argument<string> amountWord = cli.Word("AMOUNT"), ingredientWord = cli.Word("INGREDIENT");
Option<Packing?> packing = cli.Choice("--packing", null, Enum.GetValues<Packing>().Select(known => (known.ToWord(), (Packing?)known)));
Option<MeasuringSystem> systemOption = cli.System();
Option<ConversionOptions> tools = cli.Choice("--tools", ConversionOptions.Default, ("exact", ConversionOptions.Default), ("household", ConversionOptions.HouseholdTools));
Option<AmountReading> reading = cli.Reading();
Option<bool> json = cli.Flag("--json");
return cli.Run(args, options =>
{
    MeasuringSystem system = options.GetRequiredValue(systemOption);
    ConversionOptions how = options.GetRequiredValue(tools);
    // Both words are one phrase, so that "a pinch" and "powdered sugar, sifted" are understood as they are in a recipe.
    string amountText = options.GetRequiredValue(amountWord), name = options.GetRequiredValue(ingredientWord);
    Phrase phrase = Phrase.Read($"{amountText} {name}", IngredientTable.BuiltIn, new PhraseOptions { MeasuringSystem = system, Reading = options.GetValue(reading) });
    if (phrase.Amount is not WrittenAmount written)
        return Shell.Fail(phrase.Ingredient is null && Amount.TryParse(amountText, options.GetValue(reading), out _) ? Why(phrase) : $"{amountText}: {Why(phrase)}", 2);
    if (phrase.Ingredient is not Ingredient ingredient || phrase.Unread.Count > 0 || phrase.Also is not null)
        return Shell.Fail(Why(phrase), 1);
    try
    {
        Amount amount = written.Amount;
        system = written.MeasuringSystem ?? system;
        Packing? filled = options.GetValue(packing) ?? phrase.Packing;
        // What is weighed is asked for in cups, so it needs a density as a volume does; what is counted does not.
        Conversion? conversion = amount.IsPiece ? null
            : filled is Packing stated ? Conversion.Of(ingredient, stated, system, how) : Conversion.Of(ingredient, system, how);
        // A piece has its own weight, and its conversion only finds it.
        ConvertedMass? mass = amount.IsMass ? null : filled != phrase.Packing ? conversion!.ToMass(amount)
            : phrase.TryToMass(system, out ConvertedMass weighed, out string? reason, how) ? weighed : throw new ArgumentException(reason);
        return Shell.Answer(options.GetValue(json) ? Document(amount, ingredient, conversion, mass, phrase.Assumed) : Text(amount, ingredient, conversion, mass, phrase.Assumed), 0);
    }
    catch (ArgumentException e)
    {
        return Shell.Fail(Shell.Reason(e), 1);
    }
});

static string Why(Phrase phrase) => phrase.Problems.Count > 0 ? phrase.Problems[0].Message + "."
    : phrase.Unread.Count > 0 ? $"{phrase.Unread[0].Text}: not understood." : "an amount and an ingredient were expected.";

static string Text(Amount amount, Ingredient ingredient, Conversion? conversion, ConvertedMass? mass, IReadOnlyList<string> assumed)
{
    Page page = new();
    string taken = conversion?.Density.TakenFrom is Packing known ? $" (taken as {known.ToWord()})" : "";
    page.Line($"{amount:V} {ingredient.Name}{(conversion is null ? "" : $", {conversion.Density.Packing.ToWord()}{taken}, {conversion.MeasuringSystem.Name}")}");
    if (mass is ConvertedMass grams)
    {
        page.Line($"  {grams.Grams.Likely:0.#} g, from {grams.Grams.Low:0.#} to {grams.Grams.High:0.#} g");
    }
    else
    {
        ConvertedVolume volume = conversion!.ToVolume(amount.Grams(conversion.MeasuringSystem));
        page.Line($"  {volume.Millilitres.Likely:0.#} mL, from {volume.Millilitres.Low:0.#} to {volume.Millilitres.High:0.#} mL");
        foreach ((double allowed, PracticalMeasure? measure, bool settled) in Measures(volume, conversion))
        {
            page.Line(measure is null ? (FormattableString)$"  within {allowed * 100:0.#} %: {(settled ? "no filling of the usual cups and spoons" : "none found")}"
                : $"  within {allowed * 100:0.#} %: {measure.Amount:V}, {measure.Fills} fills, {measure.RelativeError * 100:+0.0;-0.0;0.0} %{(settled ? "" : ", perhaps not the fewest")}");
        }
    }
    foreach (WeightFact fact in Facts(amount, ingredient, conversion))
        page.Line($"  source: {fact}");
    foreach (string caution in Cautions(ingredient, conversion).Concat(assumed))
        page.Line($"  caution: {caution}");
    const string Own = "read the label of your own";
    if (ingredient.Allergens.Count + ingredient.OftenContains.Count == 0)
        page.Line($"  allergens: none is listed, and that is not to say absent; {Own}");
    if (ingredient.Allergens.Count > 0)
        page.Line($"  allergens: contains {string.Join(", ", ingredient.Allergens.Select(Food.Word))}; {Own}");
    if (ingredient.OftenContains.Count > 0)
        page.Line($"  allergens: often contains {string.Join(", ", ingredient.OftenContains.Select(Food.Word))}; {Own}");
    return page.ToString();
}

static string Document(Amount amount, Ingredient ingredient, Conversion? conversion, ConvertedMass? mass, IReadOnlyList<string> assumed)
{
    JsonObject document = new() { ["amount"] = amount.ToString(), ["ingredient"] = ingredient.Name };
    if (conversion is not null)
    {
        document["packing"] = conversion.Density.Packing.ToWord();
        if (conversion.Density.TakenFrom is Packing known)
            document["packingTakenFrom"] = known.ToWord();
        document["packingAssumed"] = conversion.PackingWasAssumed;
        document["system"] = conversion.MeasuringSystem.Key;
    }
    if (mass is ConvertedMass grams)
    {
        document["grams"] = new JsonObject { ["low"] = grams.Grams.Low, ["likely"] = grams.Grams.Likely, ["high"] = grams.Grams.High };
    }
    else
    {
        ConvertedVolume volume = conversion!.ToVolume(amount.Grams(conversion.MeasuringSystem));
        document["millilitres"] = new JsonObject { ["low"] = volume.Millilitres.Low, ["likely"] = volume.Millilitres.Likely, ["high"] = volume.Millilitres.High };
        document["measures"] = Json.Array(Measures(volume, conversion), one =>
            new JsonObject { ["allowedError"] = one.Allowed, ["amount"] = one.Measure?.Amount.ToString(), ["searchEnded"] = one.Settled });
    }
    document["sources"] = Json.Array(Facts(amount, ingredient, conversion), fact => fact.ToString());
    document["cautions"] = Json.Array(Cautions(ingredient, conversion).Concat(assumed), caution => caution);
    document["contains"] = Food.Keys(ingredient.Allergens);
    document["oftenContains"] = Food.Keys(ingredient.OftenContains);
    document["allergenCaution"] = "Read the label of your own; an allergen that is not listed is not said to be absent.";
    return Json.Text(document, isIndented: true);
}

static IEnumerable<(double Allowed, PracticalMeasure? Measure, bool Settled)> Measures(ConvertedVolume volume, Conversion conversion)
{
    // Beyond what cups and spoons can measure there is nothing to list.
    if (volume.Millilitres.Likely is < 0.01 or > 1e6)
        yield break;
    foreach (double allowed in (double[])[0.05, 0.02, 0.005])
        yield return (allowed, PracticalMeasure.Search(volume.Millilitres.Likely, MeasuringTools.Usual(conversion.MeasuringSystem), allowed, out bool settled), settled);
}

static IEnumerable<WeightFact> Facts(Amount amount, Ingredient ingredient, Conversion? conversion) =>
    conversion?.Density.ContributingFigures ?? [ingredient.Piece(amount.Part(0).Piece!).Fact];

// Of the figure, then of the food.
static IEnumerable<string> Cautions(Ingredient ingredient, Conversion? conversion) =>
    [.. conversion?.Cautions ?? [], .. Formula.Of("", [FormulaLine.Of(ingredient, 1)]).Cautions.Select(caution => caution.Text)];
