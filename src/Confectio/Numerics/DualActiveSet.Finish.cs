namespace Confectio.Numerics;

// How a solve ends: one refinement on the problem as stated, further passes where the curvature is singular, or the proof.
internal sealed partial class DualActiveSet
{
    /// <summary>The proof of a contradiction, over the rows of C: multiplied and added, the conditions say that 0 is more than 0.</summary>
    public ReadOnlySpan<double> RowProof => _proof.AsSpan(0, _rowCount);

    /// <summary>The same over the bounds.</summary>
    public ReadOnlySpan<double> BoundProof => _proof.AsSpan(_rowCount, _n);

    /// <summary>
    /// Moves x and the multipliers by what the stationarity and the active conditions, evaluated from the problem as stated, are
    /// still off: dx = J₁Rq⁻ᵀr₂ + J₂J₂'r₁, du = Rq⁻¹(Rq⁻ᵀr₂ − J₁'r₁).
    /// </summary>
    private void Refine()
    {
        Span<double> rest = Shift, e = D, f = R, x = X;
        WriteStationarity(rest);
        for (int j = 0; j < _n; j++)
            e[j] = Vectors.Dot(Column(j), rest);
        f.Clear();
        for (int k = 0; k < _active; k++)
            f[k] = -Slack(_activeCondition[k], _side[_activeCondition[k]]);
        SolveTransposedTriangle(f);
        Span<double> weights = Work;
        e.CopyTo(weights);
        f[.._active].CopyTo(weights);
        Span<double> step = Z;
        Vectors.Combine(step, weights[.._n], _basis, _ld);
        Vectors.AddScaled(x, 1, step);
        for (int k = 0; k < _active; k++)
            f[k] -= e[k];
        SolveTriangle(f);
        for (int k = 0; k < _active; k++)
        {
            _multipliers[k] += f[k];
            int j = _activeCondition[k] - _rowCount;
            if (j >= 0)
                x[j] = _side[_activeCondition[k]] > 0 ? _problem.Lower[j] : _problem.Upper[j];
        }
        // x was summed anew from nearby values: the large ones on the way here no longer count.
        Scale.Clear();
        Vectors.RaiseToMagnitude(Scale, x);
        Vectors.RaiseToMagnitude(Scale, step);
    }

    /// <summary>
    /// Whether the active normals alone carry the cost, c = Σ uₖnₖ with uₖ of the right sign: then the answer has the least cost
    /// there is. The multipliers become those of the cost.
    /// </summary>
    public bool CarriesCost()
    {
        Span<double> e = D, u = R;
        double length = 0, outside = 0;
        for (int j = 0; j < _n; j++)
        {
            e[j] = Vectors.Dot(Column(j), _problem.Cost);
            length += e[j] * e[j];
            if (j >= _active)
                outside += e[j] * e[j];
        }
        if (outside > 1e-20 * length)
            return false;
        ExpressByActive(e);
        for (int k = 0; k < _active; k++)
        {
            if (u[k] * _normalLength[_activeCondition[k]] < -Agreeing * Math.Sqrt(length) && !_equality[_activeCondition[k]])
                return false;
        }
        for (int k = 0; k < _active; k++)
            _multipliers[k] = _equality[_activeCondition[k]] ? u[k] : Math.Max(u[k], 0);
        return true;
    }

    // −∇(objective) + Σ multiplier x normal
    private void WriteStationarity(Span<double> rest)
    {
        Span<double> x = X;
        ReadOnlySpan<double> prior = _problem.Prior, centre = _problem.Centre, cost = _problem.Cost, pull = Pull, pullCentre = PullCentre;
        for (int j = 0; j < rest.Length; j++)
            rest[j] = -(prior[j] * prior[j] * (x[j] - centre[j])) - cost[j] - pull[j] * pull[j] * (x[j] - pullCentre[j]);
        for (int t = 0; t < _problem.Targets; t++)
        {
            ReadOnlySpan<double> row = _problem.TargetRow(t);
            Vectors.AddScaled(rest, _problem.TargetValues[t] - Vectors.Dot(row, x), row);
        }
        for (int k = 0; k < _active; k++)
        {
            int condition = _activeCondition[k];
            Add(rest, condition, _side[condition] * _multipliers[k]);
        }
    }

    // A condition that was passed over as redundant rested on others, and those may have left since. Twice such a condition is taken
    // up again; after that it is rounding that it rests on.
    private bool Reopen(int times)
    {
        bool any = false;
        for (int k = 0; k < _rowCount + _n && times < 2; k++)
        {
            if (_side[k] == 2 && !_equality[k] && Missing(k) > Feasible * Magnitude(k))
            {
                _side[k] = 0;
                any = true;
            }
        }
        return any;
    }

    private double Missing(int condition) => -Math.Min(Slack(condition, 1), Slack(condition, -1));

    // An answer that breaks a condition is none: what the search passed over is looked at once more, with the magnitudes of now.
    private SolveStatus Finish()
    {
        Span<double> x = X;
        double length = LengthOfAnswer(), from = 0;
        for (int k = 0; k < _rowCount + _n; k++)
        {
            if (_side[k] != 2)
                continue;
            double allowed = Math.Max(100 * Feasible * Math.Max(Magnitude(k), length * _normalLength[k]), 10 * Agreeing * Magnitude(k, x));
            if (Missing(k) > (_problem.IsHandedDown ? 100 : 1) * allowed)
                return SolveStatus.Undecided;
        }
        for (int j = 0; j < _n; j++)
        {
            // Passes near zero for ever; beside where they came from they have reached it.
            if (Math.Abs(x[j]) < 1e-30 * Math.Abs(_problem.Centre[j]))
                x[j] = 0;
            x[j] = Math.Clamp(x[j], _problem.Lower[j], _problem.Upper[j]);
            from = Math.Max(from, Math.Abs(_problem.Centre[j]) / _normalLength[_rowCount + j]);
        }
        // Where nothing pulls, the multipliers are rounding only.
        double noise = Feasible * Math.Max(length, 1e-20 * from);
        for (int k = 0; k < _active; k++)
        {
            if (Math.Abs(_multipliers[k]) * _normalLength[_activeCondition[k]] < noise)
                _multipliers[k] = 0;
        }
        return HangsOnRounding && !IsConfirmed() ? SolveStatus.Undecided : SolveStatus.Optimal;
    }

    private bool HangsOnRounding => _leastOutside < NearlyDependent * NearlyDependent;

    private bool IsConfirmed()
    {
        Span<double> multipliers = _proof.AsSpan(0, _rowCount + _n);
        CopyRowMultipliers(multipliers);
        CopyBoundMultipliers(multipliers[_rowCount..]);
        return OptimalityCheck.Of(_problem, Solution, multipliers, multipliers[_rowCount..]).Worst <= Agreeing;
    }

    // Whether nothing is left to do for this active set: no multiplier of the wrong sign, and the passes have settled.
    private bool Settled()
    {
        bool settled = true;
        if (_proximal)
        {
            settled = HasSettled();
            X.CopyTo(PullCentre);
            Passes++;
            if (!settled)
                Refine();
        }
        while (MostNegative(out int leaving))
        {
            Steps++;
            LetGo(leaving, D);
            Refine();
            settled = false;
        }
        return settled;
    }

    // The passes are over when the answer stands still. In directions that nothing weighs it never quite does: there rounding alone
    // moves it, and it is enough that the pull is nothing beside the gradient and that passes no longer make it smaller.
    private bool HasSettled()
    {
        Span<double> x = X, centre = PullCentre, pull = Pull, terms = Work;
        WriteTerms(terms);
        double moved = 0, size = 0, largest = 0;
        bool unfelt = true;
        // Forces compare in the metric of the problem too: an unknown that no target touches has no terms of its own.
        ReadOnlySpan<double> lengths = _normalLength.AsSpan(_rowCount, _n);
        for (int j = 0; j < _n; j++)
            largest = Math.Max(largest, (terms[j] - pull[j] * pull[j] * (Math.Abs(x[j]) + Math.Abs(centre[j]))) * lengths[j]);
        for (int j = 0; j < _n; j++)
        {
            double step = Math.Abs(x[j] - centre[j]), force = pull[j] * pull[j];
            moved = Math.Max(moved, step);
            // An answer of nothing but zeros is neared for ever; beside where it came from it is reached.
            size = Math.Max(size, Math.Max(Math.Abs(x[j]), 1e-20 * Math.Abs(_problem.Centre[j])));
            unfelt &= force * step * lengths[j] <= 1e-15 * largest;
        }
        bool stalled = moved > _lastMoved / 2;
        _lastMoved = moved;
        return moved <= 1e-14 * size || (unfelt && stalled);
    }

    private bool MostNegative(out int leaving)
    {
        leaving = -1;
        bool any = false;
        for (int k = 0; k < _active; k++)
            any |= _multipliers[k] < 0 && !_equality[_activeCondition[k]];
        if (!any)
            return false;
        Span<double> terms = Work;
        WriteTerms(terms);
        double worst = 0, noise = Feasible / 10 * LengthOfAnswer();
        for (int k = 0; k < _active; k++)
        {
            int condition = _activeCondition[k];
            if (_multipliers[k] >= 0 || _equality[condition])
                continue;
            if (-_multipliers[k] <= Feasible * TermsBehind(condition, terms) || -_multipliers[k] * _normalLength[condition] <= noise)
            {
                _multipliers[k] = 0;
                continue;
            }
            double weighed = _multipliers[k] * _normalLength[condition];
            if (weighed < worst)
            {
                worst = weighed;
                leaving = k;
            }
        }
        return leaving >= 0;
    }

    // What the entries of the gradient are summed from: the rounding of a multiplier is relative to it.
    private void WriteTerms(Span<double> terms)
    {
        Span<double> x = X;
        ReadOnlySpan<double> prior = _problem.Prior, centre = _problem.Centre, cost = _problem.Cost, pull = Pull, pullCentre = PullCentre;
        for (int j = 0; j < terms.Length; j++)
        {
            terms[j] = prior[j] * prior[j] * (Math.Abs(x[j]) + Math.Abs(centre[j])) + Math.Abs(cost[j])
                + pull[j] * pull[j] * (Math.Abs(x[j]) + Math.Abs(pullCentre[j]));
        }
        for (int t = 0; t < _problem.Targets; t++)
        {
            ReadOnlySpan<double> row = _problem.TargetRow(t);
            double size = Math.Abs(_problem.TargetValues[t]);
            for (int j = 0; j < _n; j++)
                size += Math.Abs(row[j] * x[j]);
            for (int j = 0; j < _n; j++)
                terms[j] += Math.Abs(row[j]) * size;
        }
        for (int k = 0; k < _active; k++)
        {
            int condition = _activeCondition[k];
            double size = Math.Abs(_multipliers[k]);
            if (condition >= _rowCount)
            {
                terms[condition - _rowCount] += size;
                continue;
            }
            ReadOnlySpan<double> row = _problem.Row(condition);
            for (int j = 0; j < _n; j++)
                terms[j] += Math.Abs(row[j]) * size;
        }
    }

    private double TermsBehind(int condition, ReadOnlySpan<double> terms)
    {
        if (condition >= _rowCount)
            return terms[condition - _rowCount];
        double sum = 0, squares = 0;
        ReadOnlySpan<double> row = _problem.Row(condition);
        for (int j = 0; j < _n; j++)
        {
            sum += terms[j] * Math.Abs(row[j]);
            squares += row[j] * row[j];
        }
        return squares > 0 ? sum / squares : 0;
    }

    private void WriteProof(int condition, int side)
    {
        PolishExpression(condition, side);
        Span<double> proof = _proof.AsSpan(0, _rowCount + _n);
        proof.Clear();
        proof[condition] = side;
        for (int k = 0; k < _active; k++)
            proof[_activeCondition[k]] = -R[k] * _side[_activeCondition[k]];
    }

    // What the sum of the active normals is still off the normal, from the problem as stated, goes through the factors once more:
    // behind a weak pull they are good to some 1e-11 only, and a proof must cancel.
    private void PolishExpression(int condition, int side)
    {
        Span<double> rest = Shift, more = Z, r = R;
        rest.Clear();
        Add(rest, condition, side);
        for (int k = 0; k < _active; k++)
            Add(rest, _activeCondition[k], -r[k] * _side[_activeCondition[k]]);
        more.Clear();
        for (int j = 0; j < _active; j++)
            more[j] = Vectors.Dot(Column(j), rest);
        SolveTriangle(more);
        for (int k = 0; k < _active; k++)
            r[k] += more[k];
    }

    private void Add(Span<double> to, int condition, double factor)
    {
        if (condition < _rowCount)
            Vectors.AddScaled(to, factor, _problem.Row(condition));
        else
            to[condition - _rowCount] += factor;
    }

    // A share of 1e-17 would point at a bound that has nothing to do with it, perhaps an infinite one, and behind badly conditioned
    // active conditions a larger one may be rounding still; the check says whether the proof does without.
    private SolveStatus Contradiction()
    {
        Span<double> proof = _proof.AsSpan(0, _rowCount + _n);
        double most = 0;
        for (int k = 0; k < proof.Length; k++)
            most = Math.Max(most, Math.Abs(proof[k]) * _normalLength[k]);
        for (double share = Dependent; share < 1e-5; share *= 100)
        {
            for (int k = 0; k < proof.Length; k++)
            {
                if (Math.Abs(proof[k]) * _normalLength[k] < share * most)
                    proof[k] = 0;
            }
            if (InfeasibilityProof.Holds(_problem, RowProof, BoundProof))
                return SolveStatus.Infeasible;
        }
        return SolveStatus.Undecided;
    }
}
