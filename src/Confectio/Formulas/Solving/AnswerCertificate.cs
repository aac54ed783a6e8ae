using System.Globalization;

namespace Confectio.Formulas.Solving;

/// <summary>
/// The proof that comes with an answer: five figures worked out from the problem as stated, without the solver. An answer for
/// which the first four are zero is the best there is (Karush, Kuhn and Tucker); rounding leaves some 1e-15.
/// </summary>
public sealed class AnswerCertificate
{
    internal AnswerCertificate(double primal, double stationarity, double sign, double complementarity, double gap, double shortfall,
        double? certainToGrams)
    {
        Violation = primal;
        Stationarity = stationarity;
        WrongSign = sign;
        Complementarity = complementarity;
        Gap = gap;
        Shortfall = shortfall;
        CertainToGrams = certainToGrams;
    }

    /// <summary>The largest violation of anything that must be kept, relative to what it is summed from.</summary>
    public double Violation { get; }

    /// <summary>The largest pull that nothing balances, relative to the largest pull.</summary>
    public double Stationarity { get; }

    /// <summary>The largest demand that pulls the wrong way, relative to the largest pull.</summary>
    public double WrongSign { get; }

    /// <summary>Pull times room, over all demands that have both, relative to the objective.</summary>
    public double Complementarity { get; }

    /// <summary>How much better the best answer can be at most, in squares of tolerances.</summary>
    public double Gap { get; }

    /// <summary>
    /// How much less the targets could be missed at most, in squares of tolerances, where they are shares of something that moves: what
    /// is known of every formula that is allowed, and not only of those nearby. 0 where no formula misses them by less than a ten-millionth
    /// of that.
    /// </summary>
    public double Shortfall { get; }

    /// <summary>
    /// Whether the targets are proved to be met as well as any formula can meet them. Never where a property is asked that is no share,
    /// such as the water activity.
    /// </summary>
    public bool IsBest => Shortfall <= 1e-9 && Starts is null;

    /// <summary>
    /// From how many formulas the search set out, where a property is asked that is no share: then only what is nearby is proved.
    /// <see langword="null"/> elsewhere.
    /// </summary>
    public int? Starts { get; internal init; }

    /// <summary>How many of the starts came to this answer; the others to none that is better.</summary>
    public int? AgreeingStarts { get; internal init; }

    /// <summary>
    /// No mass can be farther than this from the one best answer, g; null for least cost, where the gap is one of cost. A bound
    /// from the square root of the gap: the masses themselves are usually good to a billionth of a gram.
    /// </summary>
    public double? CertainToGrams { get; }

    /// <summary>
    /// Whether the first four are at most 1e-9: no small change does better. Where <see cref="IsBest"/> holds too, nothing does.
    /// </summary>
    public bool Holds => Math.Max(Math.Max(Violation, Stationarity), Math.Max(WrongSign, Complementarity)) <= 1e-9;

    /// <summary>What no formula does better, in words: <c>meets the targets better</c>.</summary>
    internal string Better { get; init; } = "meets the targets better";

    /// <summary>
    /// What is proved, in a sentence about the question that was asked, such as <c>Proved: no formula of these ingredients that keeps what
    /// must be kept meets the targets better, and of those that meet them as well none is nearer to the formula it started from.</c>
    /// </summary>
    public string Sentence => (Holds, IsBest) switch
    {
        (true, _) when Starts is int starts => string.Create(CultureInfo.InvariantCulture,
            $"No small change does better; of {starts} starts {AgreeingStarts} came to this formula and none to a better one. That no other "
                + $"formula does better is not proved."),
        (true, true) => $"Proved: no formula of these ingredients that keeps what must be kept {Better}.",
        (true, false) => string.Create(CultureInfo.InvariantCulture,
            $"Proved: no small change does better; some other formula might miss the targets by less, by {(Shortfall >= 0.01 ? Math.Round(Shortfall, 2) : Shortfall):G4} squared tolerances "
                + $"at most."),
        _ => "Not proved: the check of this answer fails, and it is not to be relied on.",
    };

    /// <summary>How far the conditions of the best are met, and to how many grams the masses are certain.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"violation {Violation:0.#e+0}, gap {Gap:0.#e+0}");
}
