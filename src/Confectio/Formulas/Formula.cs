using System.Globalization;
using System.Text;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Formulas;

/// <summary>
/// A formula: lines of ingredients in grams, and the water that boils off on the way. It never changes; scaling, merging and
/// combining make new ones.
/// </summary>
/// <remarks>
/// What is put in, less what boils off, is the total. Scaling by a factor multiplies every line and the loss, so that every mass and
/// every constituent is multiplied and every percentage stays.
/// A line written in cups, spoons or pieces keeps its amount where the factor is a fraction with a denominator up to 16, so that
/// 1 1/2 cups doubled is 3 cups. By any other factor the amount is dropped and the line becomes one that is weighed.
/// An ingredient is its id: lines of one id are one ingredient, and are made of the same. Lines of two tables that disagree about what
/// an id is made of make no formula; give one of them an id of its own.
/// </remarks>
public sealed class Formula
{
    /// <summary>The most lines a formula may have.</summary>
    public const int MaximumLines = 1000;

    private const double MostGrams = 1e12;

    private Formula(string name, FormulaLine[] lines, double boiledOffGrams)
    {
        Name = name;
        Lines = lines;
        BoiledOffGrams = boiledOffGrams;
        PutInGrams = lines.Sum(line => line.Grams.Likely);
    }

    /// <summary>The name; may be empty.</summary>
    public string Name { get; }

    /// <summary>The lines, in the order they were given.</summary>
    public IReadOnlyList<FormulaLine> Lines { get; }

    /// <summary>The water that boils off, in grams.</summary>
    public double BoiledOffGrams { get; }

    /// <summary>What is put in: the sum of the lines, in grams.</summary>
    public double PutInGrams { get; }

    /// <summary>What comes out: <see cref="PutInGrams"/> less <see cref="BoiledOffGrams"/>, in grams.</summary>
    public double TotalGrams => PutInGrams - BoiledOffGrams;

    /// <summary>
    /// Allergens to declare: those of every line that has a mass, in the order of <see cref="Allergen"/>. A caution, not a clearance:
    /// <see cref="Caution.ReadTheLabel"/>.
    /// </summary>
    public IReadOnlyList<Allergen> Allergens => [.. Lines.Where(line => line.Grams.Likely > 0).SelectMany(line =>
        line.Ingredient.Allergens).Distinct().Order()];

    /// <summary>
    /// Allergens that many makes of an ingredient have; none of them is in <see cref="Allergens"/>. Only the label of the pack says.
    /// </summary>
    public IReadOnlyList<Allergen> OftenContains =>
        [.. Lines.Where(line => line.Grams.Likely > 0).SelectMany(line => line.Ingredient.OftenContains).Except(Allergens).Order()];

    /// <summary>
    /// The cautions that the ingredients deserve, the gravest first; none for a plain syrup, and that does not call it safe.
    /// </summary>
    public IReadOnlyList<Caution> Cautions => Caution.Of(this);

    /// <summary>The water that lines bring with them, g: no more than that can boil off.</summary>
    internal static double WaterOf(IEnumerable<FormulaLine> lines) =>
        lines.Sum(line => FormulaPart.Water.FractionIn(line.Ingredient) * line.Grams.Likely);

    /// <summary>A formula of its lines.</summary>
    /// <param name="name">The name; may be empty.</param>
    /// <param name="lines">From 1 to 1000 lines. The same ingredient may stand in several.</param>
    /// <param name="boiledOffGrams">The water that boils off, in grams, from 0 to the water in the lines.</param>
    /// <returns>The formula.</returns>
    /// <exception cref="ArgumentNullException">An argument or a line is null.</exception>
    /// <exception cref="ArgumentException">
    /// There are no lines or too many, or nothing is left: the total must be above 0 g; or two lines have one ingredient by its id, and
    /// their tables have it made of different things.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">More water boils off than there is.</exception>
    public static Formula Of(string name, IEnumerable<FormulaLine> lines, double boiledOffGrams = 0)
    {
        Guard.NotNull(name);
        FormulaLine[] all = [.. Guard.NotNull(lines).Take(MaximumLines + 1).Select(line => Guard.NotNull(line, nameof(lines)))];
        if (all.Length is 0 or > MaximumLines)
            throw new ArgumentException(all.Length == 0 ? $"{nameof(lines)} is empty; a formula has at least one line."
                : string.Create(CultureInfo.InvariantCulture,
                    $"{nameof(lines)} has more than {MaximumLines} lines, the most a formula may have."), nameof(lines));
        RefuseTwoMakes(all, nameof(lines));
        double water = WaterOf(all);
        // A loss that was computed may be beyond the water by its last bits.
        if (boiledOffGrams > water && boiledOffGrams <= water * (1 + 1e-9))
            boiledOffGrams = water;
        Formula formula = new(name, all, Guard.InRange(boiledOffGrams, 0, water));
        return formula.TotalGrams > 0 ? formula
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(lines)} has {formula.PutInGrams:R} g, of which {boiledOffGrams:R} g boil off; a formula needs a total above 0 "
                    + $"g."), nameof(lines));
    }

    /// <summary>
    /// A formula from text, an ingredient a line: <c>1 1/2 cups sifted icing sugar</c>, <c>250 g butter</c>, <c>3 large egg whites</c>,
    /// <c>2 tbsp + 1 tsp vanilla extract</c>. Blank lines and lines that begin with <c>#</c> are skipped.
    /// </summary>
    /// <param name="name">The name; may be empty.</param>
    /// <param name="text">The text. A line has at most 1000 characters, and at most 1000 lines with something on them are read.</param>
    /// <param name="ingredients">The table in which the ingredients are looked up.</param>
    /// <param name="system">Whose cups and spoons.</param>
    /// <returns>
    /// The formula of the lines that could be used, and every other line as a problem with its number; no formula where they make none, and
    /// a problem says why.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Reading<Formula> ReadText(string name, TextReader text, IngredientTable ingredients, MeasuringSystem system)
    {
        FormulaTextReader reader = new(Guard.NotNull(ingredients), Guard.NotNull(system));
        return reader.Read(Guard.NotNull(name), Guard.NotNull(text));
    }

    /// <summary>A formula from text that must be right in every line; see <see cref="ReadText"/>.</summary>
    /// <param name="name">The name; may be empty.</param>
    /// <param name="text">The text.</param>
    /// <param name="ingredients">The table in which the ingredients are looked up.</param>
    /// <param name="system">Whose cups and spoons.</param>
    /// <returns>The formula.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="FormatException">A line could not be used; the message has all of them, at most 20.</exception>
    public static Formula ParseText(string name, string text, IngredientTable ingredients, MeasuringSystem system) =>
        ReadText(name, new StringReader(Guard.NotNull(text)), ingredients, system).OrThrow();

    /// <summary>Reads a formula in JSON, a form of our own, version 1; the schema stands in docs/schema/formula.json.</summary>
    /// <param name="json">The text, at most 4 MiB of UTF-8.</param>
    /// <param name="ingredients">The table in which its ingredients are looked up.</param>
    /// <returns>
    /// The formula; or why it is none: it is not JSON, or not of this form or version, or names ingredients that are not in the table, or
    /// is no formula. Every mistake that can be told from the others has its line, column and path.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Reading<Formula> ReadJson(string json, IngredientTable ingredients) =>
        ReadJson(Encoding.UTF8.GetBytes(Guard.NotNull(json)), ingredients);

    /// <summary>Reads a formula in JSON from UTF-8.</summary>
    /// <inheritdoc cref="ReadJson(string, IngredientTable)"/>
    public static Reading<Formula> ReadJson(ReadOnlySpan<byte> json, IngredientTable ingredients) => FormulaJson.Read(json, ingredients);

    /// <summary>Reads a formula in JSON from UTF-8, to the end of a stream.</summary>
    /// <inheritdoc cref="ReadJson(string, IngredientTable)"/>
    public static Reading<Formula> ReadJson(Stream json, IngredientTable ingredients) =>
        ReadJson(JsonGuard.Bytes(json, FormulaJson.MaximumBytes), ingredients);

    /// <summary>A formula from JSON that must be right; see <see cref="ReadJson(string, IngredientTable)"/>.</summary>
    /// <param name="json">The text, at most 4 MiB of UTF-8.</param>
    /// <param name="ingredients">The table in which its ingredients are looked up.</param>
    /// <returns>The formula.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="FormatException">There are mistakes; the message names the first 20 with their places.</exception>
    public static Formula ParseJson(string json, IngredientTable ingredients) => ReadJson(json, ingredients).OrThrow();

    /// <summary>
    /// The formula in JSON, version 1: the lines by ingredient id with grams, an amount as written, or both. Where a line has both, the
    /// grams are what the formula says and the amount is how the line is measured. Ingredients are named, not carried: it reads back as the
    /// same formula with the table it was written with.
    /// </summary>
    /// <returns>The JSON, indented, with line feeds on every machine.</returns>
    public string ToJson() => FormulaJson.Write(this);

    /// <summary>Several formulas as one: their lines one after the other, their losses added up.</summary>
    /// <param name="name">The name; may be empty.</param>
    /// <param name="formulas">The formulas, at least one.</param>
    /// <returns>The formula. <see cref="Combined"/> joins the lines of the same ingredient.</returns>
    /// <exception cref="ArgumentNullException">An argument or a formula is null.</exception>
    /// <exception cref="ArgumentException">There are no formulas, or too many lines.</exception>
    public static Formula Merge(string name, params IEnumerable<Formula> formulas)
    {
        Formula[] all = [.. Guard.NotNull(formulas).Select(formula => Guard.NotNull(formula, nameof(formulas)))];
        return all.Length > 0 ? Of(name, all.SelectMany(formula => formula.Lines), all.Sum(formula => formula.BoiledOffGrams))
            : throw new ArgumentException($"{nameof(formulas)} is empty; at least one is needed.", nameof(formulas));
    }

    /// <summary>The formula with every line and the loss multiplied.</summary>
    /// <param name="factor">The factor, above 0, so that no line is above 1e12 g.</param>
    /// <returns>The formula.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="factor"/> is outside its range.</exception>
    public Formula Scale(double factor) => Scaled(factor, 1, nameof(factor));

    /// <summary>The formula scaled to a total, after what boils off.</summary>
    /// <param name="grams">The total in grams, above 0 to 1e12.</param>
    /// <returns>The formula.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="grams"/> is outside its range, or a line would be above 1e12 g.
    /// </exception>
    public Formula ScaleToMass(double grams) => Scaled(grams, TotalGrams, nameof(grams));

    /// <summary>The formula scaled to so many pieces of a mass: 48 bonbons with 8 g of filling each.</summary>
    /// <param name="pieces">How many pieces, above 0 to 1e12.</param>
    /// <param name="gramsPerPiece">The mass of each in grams, after what boils off, above 0 to 1e12.</param>
    /// <returns>The formula.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range, or a line would be above 1e12 g.</exception>
    public Formula ScaleToPieces(double pieces, double gramsPerPiece) =>
        Scaled(pieces, TotalGrams / Guard.InRange(gramsPerPiece, Guard.Trace, MostGrams), nameof(pieces));

    /// <summary>The formula scaled so that it takes what there is of an ingredient: 410 g of butter are left.</summary>
    /// <param name="ingredient">The ingredient; all its lines together count.</param>
    /// <param name="gramsAtHand">What there is of it, in grams, above 0 to 1e12.</param>
    /// <returns>The formula.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentException">The formula has none of the ingredient.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="gramsAtHand"/> is outside its range, or a line would be above 1e12 g.
    /// </exception>
    public Formula ScaleToIngredient(Ingredient ingredient, double gramsAtHand)
    {
        double grams = GramsOf(ingredient) ?? 0;
        return grams > 0 ? Scaled(gramsAtHand, grams, nameof(gramsAtHand))
            : throw new ArgumentException($"{nameof(ingredient)} '{ingredient.Name}' is not in the formula.", nameof(ingredient));
    }

    /// <summary>The formula with the lines of each ingredient joined, in the order of their first appearance.</summary>
    /// <returns>The formula. Lines that were joined are weighed: half a cup of sifted and half of packed sugar is no amount.</returns>
    public Formula Combined() => new(Name,
    [
        .. Lines.GroupBy(line => line.Ingredient)
            .Select(lines => lines.Count() == 1 ? lines.First()
                : FormulaLine.Of(lines.Key, Math.Min(lines.Sum(line => line.Grams.Likely), MostGrams))),
    ], BoiledOffGrams);

    /// <summary>What is put in of an ingredient, all its lines together.</summary>
    /// <param name="ingredient">The ingredient, of any table: it is found by its id.</param>
    /// <returns>Grams; <see langword="null"/> where no line has it, which is not the same as a line of 0 g.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    public double? GramsOf(Ingredient ingredient)
    {
        Guard.NotNull(ingredient);
        double? grams = null;
        foreach (FormulaLine line in Lines)
        {
            if (line.Ingredient == ingredient)
                grams = (grams ?? 0) + line.Grams.Likely;
        }
        return grams;
    }

    /// <summary>
    /// The formula's own ingredient of this id, with the formula's figures; the one that was asked with where no line has it.
    /// </summary>
    internal Ingredient Own(Ingredient ingredient) => Lines.FirstOrDefault(line => line.Ingredient == ingredient)?.Ingredient ?? ingredient;

    /// <summary>
    /// Each line in per cent of a part of the formula: 100·x/B. Of <see cref="FormulaPart.Everything"/> these are shares; of the flour,
    /// baker's percentages; of the egg white, those of a meringue.
    /// </summary>
    /// <param name="basis">What counts as 100 %. It is counted as it is put in, before anything boils off, as scales are read.</param>
    /// <returns>
    /// A number for each of <see cref="Lines"/>. Worked number: 500 g of flour and 300 g of water, on the flour: 100 and 60.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="basis"/> is null.</exception>
    /// <exception cref="ArgumentException">The formula has none of the basis.</exception>
    public IReadOnlyList<double> PercentOf(FormulaPart basis)
    {
        double whole = PutInOf(basis, nameof(basis));
        return [.. Lines.Select(line => 100 * line.Grams.Likely / whole)];
    }

    /// <summary>What each line brings to a part of the formula, in per cent of that part: 100·x·f/Σ(x·f). They add up to 100.</summary>
    /// <param name="phase">
    /// The part, such as <see cref="FormulaPart.FatPhase"/>. It is counted as it is put in, before anything boils off.
    /// </param>
    /// <returns>
    /// A number for each of <see cref="Lines"/>. Worked number: 100 g of cream (37 % fat) and 100 g of unsalted butter (81.11 %)
    /// bring 31.33 and 68.67 % of the fat.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="phase"/> is null.</exception>
    /// <exception cref="ArgumentException">The formula has none of the part.</exception>
    public IReadOnlyList<double> PercentWithin(FormulaPart phase)
    {
        double whole = PutInOf(phase, nameof(phase));
        return [.. Lines.Select(line => 100 * line.Grams.Likely * phase.FractionIn(line.Ingredient) / whole)];
    }

    /// <summary>The name and the total, such as <c>Fennmarsh ganache, 520 g</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{(Name.Length > 0 ? Name + ", " : "")}{TotalGrams:0.##} g");

    // Added up they would be neither.
    private static void RefuseTwoMakes(FormulaLine[] lines, string name)
    {
        Dictionary<Ingredient, int> first = new(lines.Length);
        for (int i = 0; i < lines.Length; i++)
        {
            Ingredient ingredient = lines[i].Ingredient;
            if (!first.TryAdd(ingredient, i) && !ingredient.IsMadeAs(lines[first[ingredient]].Ingredient))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                    $"{name} has '{ingredient.Id}' in lines {first[ingredient] + 1} and {i + 1}, and what it is made of differs between "
                        + $"them: two tables disagree. Give one an id of its own."), name);
        }
    }

    // Scales by value/unit; the value is somebody's argument, and goes as far as no line outgrows what a line may have.
    private Formula Scaled(double value, double unit, string name)
    {
        double factor = Guard.InRange(value, Guard.Trace, Math.Min(MostGrams, unit * (MostGrams / Lines.Max(line => line.Grams.Likely))),
            name) / unit;
        Fraction? exact = AmountScaling.FractionOf(factor);
        Formula scaled = new(Name, [.. Lines.Select(line => line.Scaled(factor, exact))], BoiledOffGrams * factor);
        return scaled.TotalGrams > 0 ? scaled
            : throw new ArgumentOutOfRangeException(name, value, $"{name} is so small that nothing of the formula would be left.");
    }

    private double PutInOf(FormulaPart part, string name)
    {
        Guard.NotNull(part, name);
        double grams = Lines.Sum(line => part.FractionIn(line.Ingredient) * line.Grams.Likely);
        // Of less than a trace of it no share of the whole is a number that fits.
        return double.IsFinite(100 * PutInGrams / grams) && grams > 0 ? grams
            : throw new ArgumentException($"{name} was {part}; there is none of it in the formula.", name);
    }
}
