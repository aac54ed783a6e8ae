using System.Globalization;
using Confectio.Cards;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Publishing;
using Confectio.Text;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Cards;

/// <summary>
/// A formula on a card, read again: the same foods in the same order, and masses within the rounding that the card shows; and nothing on it
/// is called wrong. <c>CONFECTIO_ROUND_TRIPS=10000</c> in the environment makes the long run.
/// </summary>
public sealed class RoundTripTests
{
    private static int Cases => int.TryParse(Environment.GetEnvironmentVariable("CONFECTIO_ROUND_TRIPS"), NumberStyles.None, CultureInfo.InvariantCulture, out int cases) ? cases : 120;

    [Fact]
    public void EveryIngredientReadsBackInEveryForm()
    {
        List<string> failures = [];
        int i = 0;
        foreach (Ingredient food in IngredientTable.BuiltIn.All)
        {
            Formula formula = Formula.Of("Fennmarsh Hall", [FormulaLine.Of(food, 250), FormulaLine.Of(food, 7.5)]);
            MeasuringSystem system = MeasuringSystem.All[i++ % MeasuringSystem.All.Count];
            Check(formula, new CardOptions { MeasuringSystems = [system] }, failures, food.Id);
        }
        Assert.True(failures.Count == 0, $"{failures.Count} of {i}:\n" + string.Join('\n', failures.Take(25)));
    }

    [Fact]
    public void RandomFormulasReadBackInEverySystemAndForm()
    {
        List<string> failures = [];
        Random random = new(20261129);
        IReadOnlyList<Ingredient> foods = IngredientTable.BuiltIn.All;
        for (int i = 0; i < Cases && failures.Count < 25; i++)
        {
            MeasuringSystem system = MeasuringSystem.All[random.Next(MeasuringSystem.All.Count)];
            HashSet<string> used = [];
            List<FormulaLine> lines = [];
            int count = random.Next(1, 13);
            while (lines.Count < count)
            {
                Ingredient food = foods[random.Next(foods.Count)];
                if (used.Add(food.Id))
                    lines.Add(Line(food, system, random));
            }
            MeasuringSystem[] shown = [.. MeasuringSystem.All.Where(one => one == system || random.Next(6) == 0)];
            CardOptions options = random.Next(3) switch
            {
                0 => new CardOptions { MeasuringSystems = shown, Portions = random.Next(1, 40) },
                1 => new CardOptions { MeasuringSystems = shown },
                _ => new CardOptions { MeasuringSystems = shown, PortionGrams = random.Next(10, 90), Steps = ["Mix.", "Bake at 350 °F (177 °C) until done."] },
            };
            Check(Formula.Of($"Card {i}", lines), options, failures, $"case {i}");
        }
        Assert.True(failures.Count == 0, string.Join('\n', failures.Take(25)));
    }

    private static FormulaLine Line(Ingredient food, MeasuringSystem system, Random random)
    {
        double grams = Math.Round(Math.Exp(random.NextDouble() * 6) * 2, random.Next(0, 3));
        if (random.Next(2) == 0 || !system.Defines(KitchenUnit.Tablespoon))
            return FormulaLine.Of(food, Math.Max(0.5, grams));
        string[] amounts = ["1 cup", "2 Tbsp", "1/2 tsp", "1 1/2 cups", "3 Tbsp", "1/3 cup"];
        try
        {
            return FormulaLine.Of(food, Amount.Parse(amounts[random.Next(amounts.Length)]), system);
        }
        catch (ArgumentException)
        {
            // It has no density, or the system no such unit.
            return FormulaLine.Of(food, Math.Max(0.5, grams));
        }
    }

    private static void Check(Formula formula, CardOptions options, List<string> failures, string what)
    {
        FormulaCard card = FormulaCard.Of(formula, options);
        foreach ((string form, string text) in (ReadOnlySpan<(string, string)>)[("text", card.ToText()), ("Markdown", card.ToMarkdown()), ("HTML", card.ToHtml()), ("JSON-LD", card.ToJsonLd()), ("JSON", card.ToJson())])
        {
            if (Failure(card, form, text) is string failure)
                failures.Add($"{what}, {form}, {string.Join("+", options.MeasuringSystems.Select(system => system.Key))}: {failure}");
        }
    }

    private static string? Failure(FormulaCard card, string form, string text)
    {
        Reading<PrintedCard> reading = PrintedCard.Read(text, IngredientTable.BuiltIn);
        if (!reading.TryGet(out PrintedCard? read))
            return reading.ToString();
        if (reading.Problems.Count > 0)
            return reading.Problems[0].ToString();
        Reading<Formula> again = read.ToFormula(card.Options.MeasuringSystems.Count > 0 ? card.Options.MeasuringSystems[0] : MeasuringSystem.UsCustomary);
        if (!again.TryGet(out Formula? formula) || again.Problems.Count > 0)
            return again.ToString();
        if (formula.Lines.Count != card.Formula.Lines.Count)
            return $"{formula.Lines.Count} lines for {card.Formula.Lines.Count}: {string.Join("; ", formula.Lines)}";
        for (int i = 0; i < formula.Lines.Count; i++)
        {
            FormulaLine was = card.Formula.Lines[i], now = formula.Lines[i];
            // The JSON carries the formula itself; a paper only what it prints.
            double allowed = form == "JSON" ? 1e-9 * was.Grams.Likely : card.Lines[i].RoundingGrams * 1.0001 + 1e-9 * was.Grams.Likely;
            if (now.Ingredient.Id != was.Ingredient.Id || Math.Abs(now.Grams.Likely - was.Grams.Likely) > allowed)
                return $"{now} for {was}, printed as {card.Lines[i]}";
        }
        CardFinding? finding = CardVetter.Vet(read).Findings.FirstOrDefault(one => one.Severity != FindingSeverity.Note);
        return finding is null ? null : $"{finding} on {card.Lines[0]}";
    }
}
