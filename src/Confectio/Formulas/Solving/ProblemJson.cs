using System.Globalization;
using System.Text;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Formulas.Solving;

/// <summary>
/// Problems in JSON, a form of our own, version 1: the ingredients with their base masses and limits, targets and requirements in
/// per cent, ratios, boil-off and what is preferred. The schema stands in docs/schema/problem.json.
/// </summary>
public static class ProblemJson
{
    /// <summary>The version that is read.</summary>
    public const int Version = 1;

    /// <summary>The largest text that is read, in bytes of UTF-8.</summary>
    public const int MostBytes = 4 << 20;

    private const int MostDepth = 16;
    private const string What = "a problem";

    /// <summary>Reads a problem.</summary>
    /// <param name="json">The text.</param>
    /// <param name="ingredients">The table in which its ingredients are looked up.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="FormatException">
    /// It is not JSON, or not of this form or version, or names ingredients that are not in the table, or asks for what cannot be
    /// asked. The message names every mistake that can be told from the others, at most 20, with its line, column and path.
    /// </exception>
    public static FormulaProblem Read(string json, IngredientTable ingredients) => Read(Encoding.UTF8.GetBytes(Guard.NotNull(json)), ingredients);

    /// <summary>Reads a problem in UTF-8.</summary>
    /// <inheritdoc cref="Read(string, IngredientTable)"/>
    public static FormulaProblem Read(ReadOnlySpan<byte> json, IngredientTable ingredients)
    {
        Guard.NotNull(ingredients);
        return JsonGuard.Read(json, MostDepth, MostBytes, What, ProblemJsonContext.Default.ProblemDocument, Expected,
            (ProblemDocument document, List<(string Path, string Message)> mistakes) => new Reader(document, ingredients, mistakes).Build());
    }

    private static string Expected(string path) => path[(path.LastIndexOf('.') + 1)..] switch
    {
        "$" => "an object is expected",
        "ingredients" or "targets" or "requirements" or "ratios" => "a list is expected",
        "boilOff" => "an object is expected",
        "name" or "ingredient" or "part" or "of" or "to" or "prefer" => "a text is expected",
        "totalIsFree" or "mayBeLeftOut" => "true or false is expected",
        "confectioProblem" or "priority" => "a whole number is expected",
        "totalGrams" or "baseBoiledOffGrams" or "baseGrams" or "lowGrams" or "highGrams" or "fixedGrams" or "costPerKilogram" or "percent" or "lowPercent"
            or "highPercent" or "tolerancePercent" or "ratio" or "lowRatio" or "highRatio" or "nearness" => "a number is expected",
        string last when last.EndsWith(']') => "an object is expected",
        _ => "a problem has no such member",
    };

    // Reads on past a mistake as far as sense can be made of the rest.
    private sealed class Reader(ProblemDocument document, IngredientTable table, List<(string Path, string Message)> mistakes)
    {
        private bool IsGood => mistakes.Count == 0;

        public FormulaProblem? Build()
        {
            if (document.ConfectioProblem != Version)
            {
                if (document.ConfectioProblem is int other)
                    Add("$.confectioProblem", string.Create(CultureInfo.InvariantCulture, $"version {other} was read and {Version} is expected"));
                else
                    Add("$", string.Create(CultureInfo.InvariantCulture, $"confectioProblem is missing; an object that begins with {{\"confectioProblem\": {Version} is expected"));
                return null;
            }
            if (document.Ingredients is not { Count: > 0 and <= FormulaProblem.MostIngredients } lines)
            {
                Add(document.Ingredients is null ? "$" : "$.ingredients",
                    string.Create(CultureInfo.InvariantCulture, $"there are {document.Ingredients?.Count ?? 0} ingredients; from 1 to {FormulaProblem.MostIngredients} are expected"));
                return null;
            }
            Ingredient?[] found = [.. lines.Select((line, i) => line is null ? Missing(At("ingredients", i)) : Find(line.Ingredient, At("ingredients", i), "ingredient"))];
            if (!IsGood || Start(lines, found!) is not FormulaProblem problem)
                return null;
            for (int i = 0; i < lines.Count; i++)
                problem = AddLimits(problem, lines[i], found[i]!, At("ingredients", i));
            AddEach("targets", document.Targets, (share, at) => problem = AddShare(problem, share, at, isTarget: true));
            AddEach("requirements", document.Requirements, (share, at) => problem = AddShare(problem, share, at, isTarget: false));
            AddEach("ratios", document.Ratios, (ratio, at) => problem = AddRatio(problem, ratio, at));
            if (document.BoilOff is { } boilOff)
                Try("$.boilOff", () => problem = problem.WithBoilOff(boilOff.LowGrams ?? 0, boilOff.HighGrams ?? double.NaN));
            problem = Prefer(problem);
            return IsGood ? problem : null;
        }

        private FormulaProblem? Start(List<ProblemDocument.IngredientDocument> lines, Ingredient[] found)
        {
            double boiledOff = document.BaseBoiledOffGrams ?? 0, based = lines.Sum(line => line.BaseGrams ?? 0) - boiledOff;
            if (document.TotalGrams is null && !(based > 0))
            {
                Add("$", "totalGrams is missing, and the base has no mass to take it from");
                return null;
            }
            FormulaProblem problem = null!;
            Try(document.TotalGrams is null ? "$" : "$.totalGrams", () => problem = FormulaProblem.Of(document.Name ?? "", document.TotalGrams ?? based, []));
            if (!IsGood)
                return null;
            for (int i = 0; i < lines.Count; i++)
            {
                int line = i;
                Try(At("ingredients", i), () => problem = problem.WithIngredient(found[line], lines[line].BaseGrams ?? 0));
            }
            Try("$.baseBoiledOffGrams", () => problem = problem.WithBaseBoiledOff(boiledOff));
            return !IsGood ? null : document.TotalIsFree == true ? problem.WithFreeTotal() : problem;
        }

        private FormulaProblem AddLimits(FormulaProblem problem, ProblemDocument.IngredientDocument line, Ingredient ingredient, string at)
        {
            if (line.FixedGrams is double given)
                Try(at + ".fixedGrams", () => problem = problem.WithFixed(ingredient, given));
            if (line.MayBeLeftOut == true)
                Try(at, () => problem = problem.WithOptional(ingredient, line.LowGrams ?? double.NaN, line.HighGrams ?? 1e12));
            else if (line.LowGrams is not null || line.HighGrams is not null)
                Try(at, () => problem = problem.WithLimit(ingredient, line.LowGrams ?? 0, line.HighGrams ?? 1e12));
            if (line.CostPerKilogram is double cost)
                Try(at + ".costPerKilogram", () => problem = problem.WithCost(ingredient, cost));
            return problem;
        }

        private FormulaProblem AddShare(FormulaProblem problem, ProblemDocument.ShareDocument share, string at, bool isTarget)
        {
            FormulaPart? part = FindPart(share.Part, at, "part"), of = share.Of is null ? FormulaPart.Everything : FindPart(share.Of, at, "of");
            bool isPoint = share.Percent is not null, isRange = share.LowPercent is not null || share.HighPercent is not null;
            if (isPoint == isRange)
                Add(at, "either percent or lowPercent and highPercent is expected");
            if (!isTarget && (share.TolerancePercent is not null || share.Priority is not null))
                Add(at, "a requirement has no tolerance and no priority; it must be kept");
            if (part is null || of is null || isPoint == isRange)
                return problem;
            double low = (share.Percent ?? share.LowPercent ?? 0) / 100, high = (share.Percent ?? share.HighPercent ?? 100) / 100;
            Try(at, () => problem = isTarget
                ? problem.WithTargetRange(part, low, high, of, (share.TolerancePercent ?? 1) / 100, share.Priority ?? 1)
                : problem.WithRequirement(part, low, high, of));
            return problem;
        }

        private FormulaProblem AddRatio(FormulaProblem problem, ProblemDocument.RatioDocument ratio, string at)
        {
            Ingredient? first = Find(ratio.Ingredient, at, "ingredient"), second = Find(ratio.To, at, "to");
            bool isPoint = ratio.Ratio is not null, isRange = ratio.LowRatio is not null || ratio.HighRatio is not null;
            if (isPoint == isRange)
                Add(at, "either ratio or lowRatio and highRatio is expected");
            else if (first is not null && second is not null)
                Try(at, () => problem = problem.WithRatioRange(first, second, ratio.Ratio ?? ratio.LowRatio ?? 0, ratio.Ratio ?? ratio.HighRatio ?? 1e6));
            return problem;
        }

        private FormulaProblem Prefer(FormulaProblem problem)
        {
            switch (document.Prefer)
            {
                case null or "targets-first":
                    if (document.Nearness is not null)
                        Add("$.nearness", "it is only weighed where prefer is nearness-traded");
                    return problem;
                case "nearness-traded":
                    Try(document.Nearness is null ? "$" : "$.nearness", () => problem = problem.TradingNearness(document.Nearness ?? 0.01));
                    return problem;
                case "least-cost":
                    return problem.Preferring(Preference.LeastCost);
                default:
                    Add("$.prefer", $"{Excerpt.Of(document.Prefer)} was read; targets-first, nearness-traded or least-cost is expected");
                    return problem;
            }
        }

        private void AddEach<T>(string list, List<T>? items, Action<T, string> add)
        {
            for (int i = 0; i < (items?.Count ?? 0); i++)
            {
                if (items![i] is null)
                    Missing(At(list, i));
                else
                    add(items[i], At(list, i));
            }
        }

        private FormulaPart? FindPart(string? word, string at, string member)
        {
            if (word is null)
            {
                Add(at, $"{member} is missing");
                return null;
            }
            // An ingredient is a part too: its whole mass.
            if (FormulaPart.TryRead(word, out FormulaPart? part))
                return part;
            if (table.TryGet(word, out Ingredient? ingredient))
                return FormulaPart.OfIngredient(ingredient);
            Add($"{at}.{member}", FormulaLineReader.Unknown(word, "neither a part nor an ingredient", table, mistakes.Count));
            return null;
        }

        private Ingredient? Find(string? name, string at, string member)
        {
            if (name is null)
                Add(at, $"{member} is missing");
            else if (table.TryGet(name, out Ingredient? ingredient))
                return ingredient;
            else
                Add($"{at}.{member}", FormulaLineReader.Unknown(name, "not an ingredient of this table", table, mistakes.Count));
            return null;
        }

        private Ingredient? Missing(string at)
        {
            Add(at, "null was read");
            return null;
        }

        // What the builder refuses is a mistake of the text.
        private void Try(string at, Action add)
        {
            try
            {
                add();
            }
            catch (ArgumentException e)
            {
                Add(at, FormulaLineReader.Reason(e));
            }
        }

        private void Add(string at, string message) => mistakes.Add((at, message));

        private static string At(string list, int index) => string.Create(CultureInfo.InvariantCulture, $"$.{list}[{index}]");
    }
}
