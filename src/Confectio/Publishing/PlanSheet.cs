using System.Globalization;
using Confectio.Cakes;
using Confectio.Formulas;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Publishing;

/// <summary>
/// A plan of a cake as a sheet for the kitchen: its tiers, what each coat and filling takes, how much of each icing, the batches for each bowl
/// with their lines in grams, ounces, cups and spoons, what is left over, allergens and cautions.
/// </summary>
/// <remarks>
/// Figures are those of <see cref="IcingPlan"/>; the lines of a batch are rounded as those of a card (<see cref="CardLine"/>). Of an icing
/// without a formula the allergens are not known, and the sheet says so.
/// </remarks>
public sealed class PlanSheet
{
    private PlanSheet(IcingPlan[] plans, CardOptions options)
    {
        Plans = plans;
        Options = options;
        Title = SafeText.Name(options.Title.Length > 0 ? options.Title : plans[0].Coverage.Cake.Name);
        if (Title.Length == 0)
            Title = "Cake";
        Cards = [.. plans.SelectMany(plan => plan.Needs).SelectMany(need => need.Batches).Select(batch => batch.Formula).OfType<Formula>()
            .Select(formula => FormulaCard.OfBatch(formula, new CardOptions
            {
                MeasuringSystems = options.MeasuringSystems, Tools = options.Tools, Names = options.Names, Culture = options.Culture, AllowedError = options.AllowedError,
                Temperatures = options.Temperatures, Steps = options.Steps,
            }))];
        Cautions =
        [
            .. plans.SelectMany(plan => plan.Coverage.Findings).Select(finding => finding.Text).Distinct(),
            .. plans.SelectMany(plan => plan.Needs).SelectMany(need => need.Cautions).Distinct(),
            .. Cards.SelectMany(card => card.Cautions).Distinct(),
        ];
        string[] unknown = [.. plans[0].Needs.Where(need => need.Icing.Formula is null).Select(need => SafeText.Name(need.Icing.Name))];
        NotKnown =
        [
            .. unknown.Length == 0 ? Array.Empty<string>() : [$"What is in {string.Join(", ", unknown)}: there is no formula, and the allergens are not known. Read the label."],
            .. Cards.SelectMany(card => card.NotKnown).Distinct(),
            .. Cards.Count == 0 ? ["How long it keeps, and how cold: this sheet does not say. Local codes and licensed practice decide."] : Array.Empty<string>(),
        ];
    }

    /// <summary>The title: that of the options, the cake's name, or <c>Cake</c>.</summary>
    public string Title { get; }

    /// <summary>The plans of the cake, one for each bowl.</summary>
    public IReadOnlyList<IcingPlan> Plans { get; }

    /// <summary>What was asked for.</summary>
    public CardOptions Options { get; }

    /// <summary>The cautions of the cake, of its batches and of their formulas.</summary>
    public IReadOnlyList<string> Cautions { get; }

    /// <summary>What is not known, a sentence each.</summary>
    public IReadOnlyList<string> NotKnown { get; }

    private IReadOnlyList<FormulaCard> Cards { get; }

    /// <summary>A sheet of the plans of one cake.</summary>
    /// <param name="plans">The plans: one, or one for each bowl that may be taken.</param>
    /// <param name="options">
    /// Whose measures, names and numbers, the title, temperatures and steps; <see langword="null"/> for weights alone. A sheet of a plan has no
    /// portions, basis or panel.
    /// </param>
    /// <returns>The sheet.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="plans"/> or a plan is null.</exception>
    /// <exception cref="ArgumentException">There are none, they are of different cakes, or the options have what a plan has not.</exception>
    public static PlanSheet Of(IEnumerable<IcingPlan> plans, CardOptions? options = null)
    {
        IcingPlan[] all = [.. Guard.NotNull(plans).Take(100).Select(plan => Guard.NotNull(plan, nameof(plans)))];
        options ??= CardOptions.Default;
        if (all.Length == 0)
            throw new ArgumentException($"{nameof(plans)} is empty; at least one is needed.", nameof(plans));
        if (all.Any(plan => plan.Coverage.Cake != all[0].Coverage.Cake))
            throw new ArgumentException($"{nameof(plans)} are of different cakes; the plans of one cake are expected.", nameof(plans));
        return options is { Portions: null, PortionGrams: null, Basis: null, Rules: null } ? new PlanSheet(all, options)
            : throw new ArgumentException($"{nameof(options)} has portions, a basis or rules of a panel; a sheet of a plan has none.", nameof(options));
    }

    /// <summary>The sheet as plain text.</summary>
    /// <returns>Lines that end in a line feed.</returns>
    public string ToText() => TextSheet.Write(Sheet(isHtml: false));

    /// <summary>The sheet in Markdown (CommonMark, and tables as GitHub has them).</summary>
    /// <returns>Lines that end in a line feed.</returns>
    public string ToMarkdown() => MarkdownSheet.Write(Sheet(isHtml: false));

    /// <summary>The sheet as a whole HTML document: no script, nothing from elsewhere; for a screen of any width, the dark, and paper.</summary>
    /// <returns>The document.</returns>
    public string ToHtml() => HtmlSheet.Write(Sheet(isHtml: true));

    /// <summary>The title and the number of plans.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Title}: {Plans.Count} {(Plans.Count == 1 ? "plan" : "plans")}");

    private Sheet Sheet(bool isHtml)
    {
        SheetNumbers numbers = SheetNumbers.Of(Options.Culture, groups: isHtml);
        CakeCoverage coverage = Plans[0].Coverage;
        Cake cake = coverage.Cake;
        List<SheetSection> sections = [];
        List<SheetBlock> about = [];
        if (cake.Tiers.Count > 0)
            about.Add(Tiers(cake, numbers));
        List<(string, string)> facts = [];
        if (cake.Tiers.Count > 0)
            facts.Add(("Portions", $"{numbers.At(cake.Portions(Portion.OneByTwoInches), 0)} of 1 × 2 in (2.5 × 5 cm), {numbers.At(cake.Portions(Portion.OneAndAHalfByTwoInches), 0)} of 1½ × 2 in (3.8 × 5 cm); common practice"));
        foreach (Cupcakes cupcakes in cake.Cupcakes)
            facts.Add(("Cupcakes", $"{numbers.At(cupcakes.Count, 0)} with {cupcakes.Icing}"));
        about.Add(new SheetBlock.Facts(facts));
        sections.Add(new("The cake", false, [.. about]));
        sections.Add(new("How much to make", false, Needs(numbers)));
        if (Plans.Any(plan => plan.Bowl is not null) || Plans.Any(plan => plan.Needs.Any(need => need.Icing.Formula is not null)))
        {
            for (int i = 0; i < Plans.Count; i++)
                sections.Add(Batches(Plans[i], numbers, isAlternative: i > 0));
        }
        if (CardSheet.Temperatures(Options, numbers) is { Length: > 0 } temperatures)
            sections.Add(new("Temperatures", false, new SheetBlock.Facts(temperatures)));
        if (Options.Steps.Count > 0)
            sections.Add(new("Method", false, new SheetBlock.Items(Options.Steps, isOrdered: true)));
        foreach (Icing icing in Plans[0].Needs.Select(need => need.Icing).Where(icing => icing.Formula is not null))
            sections.Add(CardSheet.Allergens(icing.Formula!, icing.Formula!.Lines.Where(line => line.Grams.Likely > 0 && !line.Ingredient.AllergensAreStated)
                .Select(line => Options.NameOf(line.Ingredient)).Distinct(), $"Allergens of {icing.Name}"));
        if (Cautions.Count > 0)
            sections.Add(new("Cautions", true, new SheetBlock.Items(Cautions)));
        sections.Add(new("What each part takes", false, Parts(coverage, numbers)));
        string[] assumed = [.. Cards.SelectMany(card => card.Assumptions).Distinct()];
        List<SheetBlock> measures = [];
        if (Options.MeasuringSystems.Count > 0)
            measures.Add(new SheetBlock.Facts([.. Options.MeasuringSystems.Select(system => (FormulaCard.Capital(system.Name), CardSheet.MeasuresOf(system, numbers)))]));
        if (assumed.Length > 0)
            measures.Add(new SheetBlock.Items(assumed));
        if (measures.Count > 0)
            sections.Add(new("About the measures", false, [.. measures]));
        sections.Add(new("Not known", false, new SheetBlock.Items(NotKnown)));
        return new Sheet(Title, cake.Tiers.Count == 0 ? "" : $"{numbers.At(cake.Tiers.Count, 0)} {(cake.Tiers.Count == 1 ? "tier" : "tiers")}, from the bottom up; {numbers.At(coverage.ExposedSquareCentimetres, 0)} cm² of sides and tops are seen.", sections);
    }

    private static SheetBlock.Table Tiers(Cake cake, SheetNumbers numbers) => new("",
        [new("Tier"), new("Shape"), new("Across", true), new("High", true), new("Layers", true)],
        [.. cake.Tiers.Select((tier, i) => (SheetCell[])
        [
            $"Tier {numbers.At(i + 1, 0)}", tier.Body.Name, tier.Body.Footprint is PlanShape foot ? Length(foot.WidthCentimetres, numbers) : "on a point",
            Length(tier.Body.HeightCentimetres, numbers), numbers.At(tier.Layers, 0),
        ])]);

    // As tins are labelled: both ways.
    private static SheetCell Length(double centimetres, SheetNumbers numbers) =>
        new($"{numbers.Short(centimetres, 1)} cm", $"{numbers.Short(centimetres / CakeLength.CentimetresPerInch, 2)} in");

    private SheetBlock.Table Needs(SheetNumbers numbers)
    {
        List<SheetColumn> columns = [new("Icing"), new("On the cake", true), new("With waste", true), new("Volume on the cake", true)];
        MeasuringSystem[] cups = [.. Options.MeasuringSystems.Where(system => system.Defines(KitchenUnit.Cup))];
        columns.AddRange(cups.Select(system => new SheetColumn($"Cups, {system.Name}", true)));
        double waste = Plans[0].Needs.Count > 0 ? Plans[0].Needs[0].WasteFraction : 0;
        return new SheetBlock.Table($"{numbers.Short(100 * waste, 1)} % of what is taken is lost in bowls and bags.", columns,
            [.. Plans[0].Needs.Select(need => (SheetCell[])
            [
                need.Icing.Name, new(numbers.At(need.PlannedGrams.Likely, 0) + " g", Range(need.PlannedGrams, numbers)), numbers.At(need.TakenGrams, 0) + " g", numbers.At(need.Millilitres, 0) + " mL",
                .. cups.Select(system => new SheetCell(numbers.At(need.Millilitres / system.MillilitresPer(KitchenUnit.Cup), -1))),
            ])]);
    }

    private static string Range(Spread grams, SheetNumbers numbers) => grams.Low == grams.High ? "" : $"{numbers.At(grams.Low, 0)} to {numbers.At(grams.High, 0)} g";

    private SheetSection Batches(IcingPlan plan, SheetNumbers numbers, bool isAlternative)
    {
        List<SheetBlock> blocks = [];
        foreach (IcingNeed need in plan.Needs.Where(need => need.Icing.Formula is not null))
        {
            foreach (IcingBatch batch in need.Batches)
                blocks.Add(Lines(need, batch, numbers));
            List<string> more = [];
            if (need.LeftOverCover is IcingCover cover)
            {
                if (plan.Coverage.Cake.Cupcakes.FirstOrDefault(one => one.Icing == need.Icing.Name) is Cupcakes cupcakes)
                    more.Add($"{numbers.At(cover.CupcakesLike(cupcakes), 0)} more cupcakes");
                if (plan.Coverage.Cake.Tiers.SelectMany(tier => tier.Pieces).FirstOrDefault(one => one.Icing == need.Icing.Name) is PipedPieces pieces)
                    more.Add($"{numbers.At(cover.Pieces(pieces.Piece), 0)} more piped pieces");
            }
            blocks.Add(new SheetBlock.Words($"{need.Icing.Name}: {numbers.At(need.MadeGrams, 0)} g made, of which {numbers.At(need.PlannedGrams.Likely, 0)} g go on the cake, {numbers.At(need.WasteGrams, 0)} g are lost and "
                + $"{numbers.At(need.LeftOverGrams, 0)} g are left over{(more.Count == 0 ? "" : $" ({string.Join(" or ", more)})")}."));
        }
        // Nobody makes it twice.
        string title = (isAlternative, plan.Bowl) switch
        {
            (false, null) => "Made at once",
            (true, null) => "Or made at once",
            (false, MixerBowl own) => $"In a {own.Name}",
            (true, MixerBowl own) => $"Or in a {own.Name}",
        };
        if (plan.Bowl is MixerBowl bowl)
            blocks.Insert(0, new SheetBlock.Words($"Filled to {numbers.At(bowl.UsableMillilitres, 0)} mL of {numbers.At(bowl.Millilitres, 0)} mL at the highest."));
        return new SheetSection(title, false, [.. blocks]);
    }

    private SheetBlock.Table Lines(IcingNeed need, IcingBatch batch, SheetNumbers numbers)
    {
        FormulaCard card = Cards.First(card => card.Formula == batch.Formula);
        string caption = $"{need.Icing.Name}: {numbers.At(batch.Count, 0)} {(batch.Count == 1 ? "batch" : "batches")} of {numbers.At(batch.Grams, 0)} g"
            + (batch.Eggs is long eggs ? $" with {numbers.At(eggs, 0)} {(eggs == 1 ? "egg" : "eggs")}" : "") + $"; rises to {numbers.At(batch.PeakMillilitres, 0)} mL.";
        return new SheetBlock.Table(caption,
            [new("Ingredient"), new("Grams", true), new("Ounces", true), .. Options.MeasuringSystems.Select(system => new SheetColumn(FormulaCard.Capital(system.Name)))],
            [.. card.Lines.Select(line => (SheetCell[])
            [
                new(line.Name, line.Packing is Packing packing && line.Measures.Any(measure => measure.Amount is not null) ? packing.ToWord() : ""),
                line.Grams(numbers), line.OuncesText(numbers), .. line.Measures.Select(CardSheet.Measured),
            ])]);
    }

    private static SheetBlock.Table Parts(CakeCoverage coverage, SheetNumbers numbers) => new("",
        [new("Part"), new("Icing"), new("Volume", true)],
        [.. coverage.Parts.Select(part => (SheetCell[])
        [
            part.Tier is int tier ? $"Tier {numbers.At(tier, 0)}, {part.Name}" : FormulaCard.Capital(part.Name), part.Icing, numbers.At(part.Millilitres, 0) + " mL",
        ])]);
}
