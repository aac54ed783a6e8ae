using System.Globalization;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Heat;

/// <summary>
/// The most of a soft fat that still holds in a warm room, at equal fat and equal water: so much of it gives way to a firmer one, with water for what it
/// brought, and nothing else changes.
/// </summary>
/// <remarks>
/// The solver changes the soft fat, the firm fat and water; fat and water stay as they were, the solids of the milk that go with butter are lost, and the
/// total with them by a few grams. It holds where the solid fat is at least that of the window in which a buttercream stands (<see cref="FatWindow"/>): by
/// the likely curves from 10 % on, or surely, by the low ends and 2 points more for the scales. What the solver gives is weighed again by
/// <see cref="FormulaHeat.InWarmRoom"/>, and no answer stands that this does not confirm. The low end of a mixture whose fats soften each other is lowered
/// by a judged factor.
/// </remarks>
public sealed class HoldingBlend
{
    private const double LeastWater = 0.99;

    private HoldingBlend(Formula from, Ingredient soft, Ingredient firm, double celsius, bool surely, Formula? formula, string why)
    {
        From = from;
        Soft = soft;
        Firm = firm;
        Celsius = celsius;
        IsSure = surely;
        Formula = formula;
        Why = why;
    }

    /// <summary>The formula it began with.</summary>
    public Formula From { get; }

    /// <summary>The fat that gives way.</summary>
    public Ingredient Soft { get; }

    /// <summary>The fat that takes its place.</summary>
    public Ingredient Firm { get; }

    /// <summary>The temperature, °C.</summary>
    public double Celsius { get; }

    /// <summary>Whether it was asked to hold by all of the range, and not by the likely curves alone.</summary>
    public bool IsSure { get; }

    /// <summary>The formula that holds; <see langword="null"/> where there is none, and <see cref="Why"/> says why.</summary>
    public Formula? Formula { get; }

    /// <summary>Grams of the soft fat in it.</summary>
    /// <exception cref="InvalidOperationException">There is no such formula.</exception>
    public double SoftGrams => Holds.GramsOf(Soft) ?? 0;

    /// <summary>Grams of the firm fat in it.</summary>
    /// <exception cref="InvalidOperationException">There is no such formula.</exception>
    public double FirmGrams => Holds.GramsOf(Firm) ?? 0;

    /// <summary>What it says of itself, in a sentence.</summary>
    public string Why { get; }

    private Formula Holds => Formula ?? throw new InvalidOperationException($"There is no such formula: {Why}");

    /// <summary>The sentence.</summary>
    public override string ToString() => Why;

    internal static HoldingBlend Of(Formula formula, Ingredient soft, Ingredient firm, Ingredient water, double celsius, bool surely,
        FatCurves? curves)
    {
        Guard.NotNull(formula);
        Guard.NotNull(soft);
        Guard.NotNull(firm);
        if (!(Guard.NotNull(water).Composition[Constituent.Water] > LeastWater))
            throw new ArgumentException($"{nameof(water)} is {water.Name}; water is expected.", nameof(water));
        Guard.InRange(celsius, WarmRoom.MinimumCelsius, WarmRoom.MaximumCelsius);
        if (soft == firm)
            throw new ArgumentException($"{nameof(firm)} is {firm.Name}, which is {nameof(soft)} too; two fats are expected.", nameof(firm));
        if (!((formula.GramsOf(soft) ?? 0) > 0))
            throw new ArgumentException($"{nameof(soft)} '{soft.Name}' is not in the formula.", nameof(soft));
        curves ??= FatCurves.BuiltIn;
        HoldingBlend None(string why) => new(formula, soft, firm, celsius, surely, null, why);
        double least = FatWindow.All.First(window => window.Use == "stands").Low;
        // Firm cocoa butter in a bowl says nothing of a window found without it.
        if (Formula.Of("", [.. formula.Lines, FormulaLine.Of(firm, formula.GramsOf(soft)!.Value)]).SolidFat(celsius, curves).NotJudgedWhy is string why)
            return None($"nothing can be said of {soft.Name} and {firm.Name}: {why}");
        FormulaProperty property = surely ? HeatProperties.LowSolidFat(celsius, curves) : HeatProperties.SolidFat(celsius, curves);
        // A fat that softens another lowers the low end by a factor; it is asked for until the answer holds as it is weighed.
        double asked = surely ? least + WarmRoom.ScalesPart : least;
        for (int i = 0; i < 20 && asked <= 100; i++)
        {
            SolvedFormula answer = Problem(formula, soft, firm, water).WithPropertyLimit(property, asked, double.PositiveInfinity).Solve();
            if (answer.Status != SolutionStatus.Solved)
                break;
            Formula made = answer.ToFormula();
            SolidFat solid = made.SolidFat(celsius, curves);
            Spread percent = solid.PercentOfFat!.Value;
            double short1 = surely ? least + WarmRoom.ScalesPart - percent.Low : least - percent.Likely;
            if (short1 <= 1e-9)
                return solid.NotJudgedWhy is string no ? None(no) : new HoldingBlend(formula, soft, firm, celsius, surely, made, Sentence(made, formula, soft, firm, celsius, surely, percent));
            asked += short1 * 1.02 + 1e-9;
        }
        return None(string.Create(CultureInfo.InvariantCulture, $"no blend of {soft.Name} and {firm.Name} {(surely ? "surely " : "")}holds at {celsius:0.#} °C, not even with no {soft.Name}"));
    }

    private static FormulaProblem Problem(Formula formula, Ingredient soft, Ingredient firm, Ingredient water)
    {
        FormulaProblem problem = FormulaProblem.StartingFrom(formula);
        foreach (Ingredient food in (Ingredient[])[firm, water])
        {
            if (!problem.Ingredients.Contains(food))
                problem = problem.WithIngredient(food);
        }
        foreach (Ingredient food in problem.Ingredients.Where(food => food != soft && food != firm && food != water))
            problem = problem.WithFixed(food, problem.BaseGramsOf(food));
        return problem.WithFreeTotal()
            .WithMass(FormulaPart.Fat, Grams(FormulaPart.Fat), Grams(FormulaPart.Fat)).WithMass(FormulaPart.Water, Grams(FormulaPart.Water), Grams(FormulaPart.Water))
            .WithLimit(soft, 0, problem.BaseGramsOf(soft)).WithLimit(firm, problem.BaseGramsOf(firm));

        double Grams(FormulaPart part) => Balance.Of(formula)[part].Grams.Likely;
    }

    private static string Sentence(Formula made, Formula from, Ingredient soft, Ingredient firm, double celsius, bool surely, Spread percent)
    {
        double was = from.GramsOf(soft) ?? 0, left = made.GramsOf(soft) ?? 0;
        string solid = string.Create(CultureInfo.InvariantCulture, $"{percent.Likely:0.#} % of its fat is solid ({percent.Low:0.#} to {percent.High:0.#})");
        string how = surely ? "by all of the range" : "by the likely curves, and no more than that";
        return was - left < 0.05
            ? string.Create(CultureInfo.InvariantCulture, $"it holds at {celsius:0.#} °C as it is, {how}: {solid}")
            : string.Create(CultureInfo.InvariantCulture, $"the most {soft.Name} that holds at {celsius:0.#} °C is {left:0.#} g of {was:0.#} g, {how}, with {made.GramsOf(firm) ?? 0:0.#} g of {firm.Name}: {solid}");
    }
}
