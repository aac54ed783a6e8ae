using System.Globalization;
using System.Text;
using Confectio.Text;

namespace Confectio.Cakes;

/// <summary>A cake of tiers that stand on one another, and cupcakes beside it. It never changes.</summary>
public sealed class Cake
{
    /// <summary>The most tiers.</summary>
    public const int MaximumTiers = 50;

    /// <summary>The most kinds of cupcakes.</summary>
    public const int MaximumCupcakeKinds = 100;

    /// <summary>The most corners, or arcs, of the plans of all tiers together.</summary>
    public const int MaximumCorners = 20_000;

    /// <summary>
    /// The most steps that a cake may take: a step compares two edges of an outline, or an edge with a point. A coat on a plan without
    /// notches takes none, on a heart 17 thousand, on a traced outline of a thousand corners some 2 million, and on one of ten thousand
    /// some 70 million.
    /// </summary>
    public const long MaximumSteps = 150_000_000;

    private readonly CakeCoverage _coverage;

    // What it takes is worked out once, when the cake is made: a cake that would take too much work is none.
    private Cake(string name, CakeTier[] tiers, Cupcakes[] cupcakes, HiddenTop hidden, OutlineWork work)
    {
        Name = name;
        Tiers = tiers;
        Cupcakes = cupcakes;
        HiddenTops = hidden;
        _coverage = new CakeCoverage(this, work);
    }

    /// <summary>The name; may be empty.</summary>
    public string Name { get; }

    /// <summary>The tiers from the bottom up.</summary>
    public IReadOnlyList<CakeTier> Tiers { get; }

    /// <summary>The cupcakes.</summary>
    public IReadOnlyList<Cupcakes> Cupcakes { get; }

    /// <summary>What is done where the next tier stands.</summary>
    public HiddenTop HiddenTops { get; }

    /// <summary>
    /// Reads the cake of an order in JSON, or all that is wrong with it; its icings, bowls and what is lost are not looked at.
    /// </summary>
    /// <param name="json">
    /// The text, at most 4 MiB of UTF-8, of the form of docs/schema/order.json: <c>{"confectioOrder": 1, "tiers": [...]}</c> is enough.
    /// </param>
    /// <returns>The cake, or every mistake with its line, column and path.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    public static Reading<Cake> ReadJson(string json) => ReadJson(Encoding.UTF8.GetBytes(Guard.NotNull(json)));

    /// <summary>Reads the cake of an order in UTF-8.</summary>
    /// <inheritdoc cref="ReadJson(string)"/>
    public static Reading<Cake> ReadJson(ReadOnlySpan<byte> json) =>
        JsonGuard.Read(json, CakeReader.MostDepth, CakeReader.MaximumBytes, "a cake", CakeReader.ReadAlone);

    /// <summary>A cake.</summary>
    /// <param name="name">The name; may be empty.</param>
    /// <param name="tiers">At most 50 tiers from the bottom up, each wholly on the flat top of the one below unless it is raised.</param>
    /// <param name="cupcakes">At most 100 kinds of cupcakes; there must be a tier or cupcakes.</param>
    /// <param name="hiddenTops">Whether the tops are iced where the next tier stands.</param>
    /// <returns>The cake.</returns>
    /// <exception cref="ArgumentNullException">An argument or one of a list is null.</exception>
    /// <exception cref="ArgumentException">
    /// There is nothing, or too much, or a tier does not lie inside the top of the one below, or that has no flat top; or the plans have
    /// more than 20 000 corners, or the coats would take more than 150 000 000 steps of work.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="hiddenTops"/> is not a defined value.</exception>
    public static Cake Of(string name, IEnumerable<CakeTier> tiers, IEnumerable<Cupcakes>? cupcakes = null,
        HiddenTop hiddenTops = HiddenTop.Coated)
    {
        Guard.NotNull(name);
        CakeTier[] stack = [.. Guard.NotNull(tiers).Take(MaximumTiers + 1).Select(tier => Guard.NotNull(tier, nameof(tiers)))];
        Cupcakes[] beside = [.. (cupcakes ?? []).Take(MaximumCupcakeKinds + 1).Select(one => Guard.NotNull(one, nameof(cupcakes)))];
        if (stack.Length > MaximumTiers)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(tiers)} has more than {MaximumTiers}, the most a cake may have."), nameof(tiers));
        if (beside.Length > MaximumCupcakeKinds)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(cupcakes)} has more than {MaximumCupcakeKinds} kinds."), nameof(cupcakes));
        if (stack.Length == 0 && beside.Length == 0)
            throw new ArgumentException($"{nameof(tiers)} is empty and there are no cupcakes; there must be one or the other.",
                nameof(tiers));
        int corners = stack.Sum(tier => tier.Body.Corners);
        if (corners > MaximumCorners)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(tiers)} have plans of {corners} corners together; a cake has at most {MaximumCorners}."), nameof(tiers));
        OutlineWork work = new(nameof(tiers));
        for (int i = 1; i < stack.Length; i++)
        {
            if (!stack[i].IsRaised && WhyNotOn(stack[i - 1], stack[i], work) is string reason)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                    $"{nameof(tiers)}: tier {i + 1} ({stack[i].Body}) cannot stand on tier {i} ({stack[i - 1].Body}): {reason}."),
                    nameof(tiers));
        }
        return new Cake(name, stack, beside, Guard.Defined(hiddenTops), work);
    }

    /// <summary>How much of each icing it takes, and for what.</summary>
    /// <returns>The coverage, the same each time.</returns>
    public CakeCoverage Cover() => _coverage;

    /// <summary>How many whole portions the tiers have by their area, each tier for itself; cupcakes are not counted.</summary>
    /// <param name="portion">The portion.</param>
    /// <returns>The number. Worked number: of 1 by 2 in on rounds of 12, 9 and 6 in: 56 + 31 + 14 = 101.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="portion"/> is null.</exception>
    public long Portions(Portion portion)
    {
        Guard.NotNull(portion);
        return Tiers.Sum(tier => portion.WholeCountOn(tier.Body));
    }

    /// <summary>
    /// The cake with larger or smaller tiers; fillings, coats, borders and pieces keep their size, and cupcakes their number.
    /// </summary>
    /// <param name="factor">What every length of the bodies is multiplied by, from 0.001 to 1000.</param>
    /// <returns>The cake.</returns>
    /// <exception cref="ArgumentException">
    /// The fillings leave no height for the layers, or the coats would take more than 150 000 000 steps of work.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="factor"/> is outside its range, or a length of what comes out is.
    /// </exception>
    public Cake Scaled(double factor) => Scaled(factor, new OutlineWork(nameof(factor)));

    /// <summary>The cake with the coats of one icing thicker or thinner.</summary>
    /// <param name="icing">The name of the icing.</param>
    /// <param name="factor">What their thickness is multiplied by, from 0 to 1000.</param>
    /// <returns>The cake.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="icing"/> is null.</exception>
    /// <exception cref="ArgumentException">The coats would take more than 150 000 000 steps of work.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="factor"/> is outside its range, or a thickness that comes out is.
    /// </exception>
    public Cake WithCoats(string icing, double factor) => WithCoats(Guard.NotNull(icing), factor, new OutlineWork(nameof(factor)));

    /// <summary>The name and the number of tiers, such as <c>garden wedding, 3 tiers</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture,
        $"{(Name.Length > 0 ? Name : "cake")}, {Tiers.Count} {(Tiers.Count == 1 ? "tier" : "tiers")}");

    /// <summary>The tier that stands on one, or <see langword="null"/>.</summary>
    internal CakeTier? StandingOn(int index) => index + 1 < Tiers.Count && !Tiers[index + 1].IsRaised ? Tiers[index + 1] : null;

    /// <summary>The cake in another size, within a budget that other trials share.</summary>
    internal Cake Scaled(double factor, OutlineWork work) =>
        new(Name, [.. Tiers.Select(tier => tier.Scaled(factor))], [.. Cupcakes], HiddenTops, work);

    /// <summary>The cake with other coats, within a budget that other trials share.</summary>
    internal Cake WithCoats(string icing, double factor, OutlineWork work) =>
        new(Name, [.. Tiers.Select(tier => tier.WithCoats(icing, factor))], [.. Cupcakes], HiddenTops, work);

    private static string? WhyNotOn(CakeTier lower, CakeTier upper, OutlineWork work)
    {
        if (lower.Body.Top is not PlanShape top)
            return $"a {lower.Body.Name} has no flat top to stand on";
        if (upper.Body.Footprint is not PlanShape foot)
            return "it has no flat to stand on";
        // The upper one is where it is with the lower one's turn taken off.
        double turned = upper.TurnedDegrees - lower.TurnedDegrees, radians = -lower.TurnedDegrees * Math.PI / 180;
        double cos = Math.Cos(radians), sin = Math.Sin(radians);
        double right = cos * upper.RightCentimetres - sin * upper.BackCentimetres;
        double back = sin * upper.RightCentimetres + cos * upper.BackCentimetres;
        return top.Holds(foot, right, back, Math.IEEERemainder(turned, 360), work) ? null : "it does not lie wholly inside its top";
    }
}
