namespace Confectio.Numerics;

/// <summary>
/// The five checks that prove an answer optimal, made from the problem as stated and from nothing of the solver: are the
/// conditions met, is the gradient balanced by the multipliers, has each multiplier the sign of its end, is it zero where the
/// condition is slack, and what gap is left between the answer and the best that any answer could do.
/// </summary>
internal readonly struct OptimalityCheck
{
    private OptimalityCheck(double primal, double stationarity, double sign, double complementarity, double gap, double objective)
    {
        PrimalViolation = primal;
        Stationarity = stationarity;
        WrongSign = sign;
        Complementarity = complementarity;
        Gap = gap;
        Objective = objective;
    }

    /// <summary>The largest violation of a condition, relative to the terms its value is summed from.</summary>
    public double PrimalViolation { get; }

    /// <summary>
    /// The largest entry of ∇f − C'v − w, relative to the largest sum of its terms; both in units of the entry's own column.
    /// </summary>
    public double Stationarity { get; }

    /// <summary>The largest multiplier that points at an end the condition does not have, relative to the largest of all.</summary>
    public double WrongSign { get; }

    /// <summary>Σ |multiplier x slack|, relative to the terms of the objective and of the conditions that pull.</summary>
    public double Complementarity { get; }

    /// <summary>An upper bound of ½‖x − x*‖² in the metric of the curvature, in units of the objective; infinite without a prior.</summary>
    public double Gap { get; }

    /// <summary>½‖Ax − b‖² + ½‖D(x − x₀)‖² + c·x.</summary>
    public double Objective { get; }

    /// <summary>The worst of the first four.</summary>
    public double Worst => Math.Max(Math.Max(PrimalViolation, Stationarity), Math.Max(WrongSign, Complementarity));

    /// <summary>
    /// How far an unknown held by the prior d can be from the optimum: ½ d² (x − x*)² is at most the gap.
    /// </summary>
    public double CertainTo(double prior) => prior > 0 ? Math.Sqrt(2 * Gap) / prior : double.PositiveInfinity;

    /// <summary>This check and an earlier one: the worse of the first four figures, the gap and the objective of this one.</summary>
    public OptimalityCheck After(OptimalityCheck earlier) => new(
        Math.Max(PrimalViolation, earlier.PrimalViolation), Math.Max(Stationarity, earlier.Stationarity),
            Math.Max(WrongSign, earlier.WrongSign),
        Math.Max(Complementarity, earlier.Complementarity), Gap, Objective);

    /// <summary>Checks an answer.</summary>
    /// <param name="problem">The problem as stated.</param>
    /// <param name="x">The answer.</param>
    /// <param name="rowMultipliers">Of the rows: above 0 for the low end, below 0 for the high one.</param>
    /// <param name="boundMultipliers">Of the bounds, likewise.</param>
    /// <param name="leastTerms">
    /// What a target is summed from at least, in its own unit: below it a pull is rounding, whatever it is compared with. 0 in general.
    /// </param>
    /// <param name="withPrior">False for a linear programme: the prior only chose among equals and does not count.</param>
    public static OptimalityCheck Of(
        LeastSquaresProblem problem, ReadOnlySpan<double> x, ReadOnlySpan<double> rowMultipliers, ReadOnlySpan<double> boundMultipliers,
            bool withPrior = true, double leastTerms = 0)
    {
        double objective = 0, size = 0;
        Span<double> residuals = problem.Targets <= 64 ? stackalloc double[problem.Targets] : new double[problem.Targets];
        Span<double> sizes = problem.Targets <= 64 ? stackalloc double[problem.Targets] : new double[problem.Targets];
        double length = 0, largestEntry = 0;
        for (int j = 0; j < problem.Variables; j++)
            largestEntry = Math.Max(largestEntry, Math.Abs(x[j]));
        for (int t = 0; t < problem.Targets; t++)
        {
            double coefficients = 0, residual = -problem.TargetValues[t], terms = Math.Max(Math.Abs(residual), leastTerms);
            ReadOnlySpan<double> row = problem.TargetRow(t);
            for (int j = 0; j < problem.Variables; j++)
            {
                residual += row[j] * x[j];
                terms += Math.Abs(row[j] * x[j]);
                coefficients += Math.Abs(row[j]);
            }
            residuals[t] = residual;
            // Unknowns that came out at zero still carry the rounding of the others.
            sizes[t] = Math.Max(terms, 1e-13 * coefficients * largestEntry);
            length = Math.Max(length, terms);
            objective += residual * residual / 2;
            size += terms * terms;
        }
        double primal = 0, worstRest = 0, largestTerms = 0, sign = 0, slackness = 0, gap = 0, largest = 0;
        for (int k = 0; k < problem.Rows; k++)
            largest = Math.Max(largest, Math.Abs(rowMultipliers[k]));
        for (int j = 0; j < problem.Variables; j++)
            largest = Math.Max(largest, Math.Abs(boundMultipliers[j]));

        Span<double> units = problem.Variables <= 256 ? stackalloc double[problem.Variables] : new double[problem.Variables];
        for (int j = 0; j < problem.Variables; j++)
        {
            double column = problem.Prior[j] * problem.Prior[j];
            for (int t = 0; t < problem.Targets; t++)
                column += problem.TargetRow(t)[j] * problem.TargetRow(t)[j];
            units[j] = Math.Sqrt(column);
            length = Math.Max(length, Math.Max(units[j] * Math.Abs(x[j]), problem.Prior[j] * Math.Abs(problem.Centre[j])));
        }
        double pulled = 0;
        for (int k = 0; k < problem.Rows; k++)
        {
            double value = 0, terms = 0, rounding = 0;
            ReadOnlySpan<double> row = problem.Row(k);
            for (int j = 0; j < problem.Variables; j++)
            {
                value += row[j] * x[j];
                terms += Math.Abs(row[j] * x[j]);
                // The same, each in its own unit.
                rounding = Math.Max(rounding, Math.Abs(row[j]) * (units[j] > 0 ? length / units[j] : largestEntry));
            }
            Condition(value, Math.Max(terms, rounding), problem.RowLow[k], problem.RowHigh[k], rowMultipliers[k]);
        }
        for (int j = 0; j < problem.Variables; j++)
        {
            Condition(x[j], Math.Abs(x[j]), problem.Lower[j], problem.Upper[j], boundMultipliers[j]);
            double prior = withPrior ? problem.Prior[j] : 0, held = prior * (x[j] - problem.Centre[j]);
            objective += held * held / 2 + problem.Cost[j] * x[j];
            size += held * held + Math.Abs(problem.Cost[j] * x[j]);
            double rest = prior * held + problem.Cost[j] - boundMultipliers[j];
            double terms = prior * prior * (Math.Abs(x[j]) + Math.Abs(problem.Centre[j])) + Math.Abs(problem.Cost[j])
                + Math.Abs(boundMultipliers[j]);
            for (int t = 0; t < problem.Targets; t++)
            {
                double a = problem.TargetRow(t)[j];
                rest += a * residuals[t];
                terms += Math.Abs(a) * sizes[t];
            }
            double coefficients = 0;
            for (int k = 0; k < problem.Rows; k++)
            {
                double c = problem.Row(k)[j], term = rowMultipliers[k] * c;
                rest -= term;
                terms += Math.Abs(term);
                coefficients = Math.Max(coefficients, Math.Abs(c));
            }
            if (terms == 0)
                continue;
            // The unit of an entry: an unknown in milligrams has a gradient a million times that of one in kilograms.
            double unit = units[j] > 0 ? units[j] : Math.Max(coefficients, Math.Abs(problem.Cost[j]));
            worstRest = Math.Max(worstRest, Math.Abs(rest) / (unit > 0 ? unit : 1));
            largestTerms = Math.Max(largestTerms, terms / (unit > 0 ? unit : 1));
            // min over x of the Lagrangian lies at most ½ rest² / D² below its value here, coordinate by coordinate.
            if (withPrior && rest != 0)
                gap += rest * rest / (2 * prior * prior);
        }
        double stationarity = largestTerms > 0 ? worstRest / largestTerms : 0;
        return new OptimalityCheck(primal, stationarity, sign, slackness > 0 ? slackness / (size + pulled) : 0, gap + slackness, objective);

        void Condition(double value, double terms, double low, double high, double multiplier)
        {
            double violation = Math.Max(low - value, value - high);
            if (violation > 0)
                primal = Math.Max(primal, violation / Math.Max(terms, violation));
            if (multiplier == 0)
                return;
            double end = multiplier > 0 ? low : high;
            if (!double.IsFinite(end))
                sign = Math.Max(sign, Math.Abs(multiplier) / largest);
            else
            {
                slackness += Math.Abs(multiplier * (value - end));
                pulled += Math.Abs(multiplier) * Math.Max(terms, Math.Abs(end));
            }
        }
    }
}
