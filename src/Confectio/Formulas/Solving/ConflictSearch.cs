using Confectio.Numerics;

namespace Confectio.Formulas.Solving;

/// <summary>
/// From proofs that conditions contradict each other to the demands that are in conflict. Where lines may be left out there is a proof for
/// every choice of them, and only what all of them together need is in conflict. The support of a proof is irreducible by theory (its
/// normals are independent but for one relation); that is not trusted: every member is left out once, over all choices, and stays out
/// where the rest is still in conflict.
/// </summary>
internal static class ConflictSearch
{
    private const double LeastTotal = 1e-6; // in units of the total

    /// <summary>The demands in conflict.</summary>
    /// <param name="choices">Every choice of what is left out, none of which can be met.</param>
    public static ConflictingDemands Of(IReadOnlyList<(Assembly Assembly, double[] RowProof, double[] BoundProof)> choices)
    {
        List<Member> members = [];
        foreach ((Assembly assembly, double[] rowProof, double[] boundProof) in choices)
            AddBlamed(members, assembly, rowProof, boundProof);
        // What may be left out is blamed last: a conflict that does not hang on it is the plainer one.
        members.Sort((a, b) => (a.Demand.IsChoice ? 1 : 0) - (b.Demand.IsChoice ? 1 : 0));
        DualActiveSet kernel = new();
        for (int i = members.Count - 1; i >= 0 && members.Count > 1; i--)
        {
            Member left = members[i];
            members.RemoveAt(i);
            if (!AllCollide(choices, members, kernel))
                members.Insert(i, left);
        }
        List<Demand> demands = [];
        List<string> ends = [];
        foreach (Member member in members)
        {
            string words = member.Demand.IsChoice ? member.Demand.Sentence : member.Demand.SayEnd(member.Side);
            if (!ends.Contains(words))
                ends.Add(words);
            if (!demands.Contains(member.Demand))
                demands.Add(member.Demand);
        }
        string[] either = [.. demands.OfType<Demand.IngredientMass>().Where(mass => mass.MayBeLeftOut).Select(mass => mass.Ingredient.Name)];
        return new ConflictingDemands(demands, ends, either);
    }

    private static void AddBlamed(List<Member> members, Assembly assembly, double[] rowProof, double[] boundProof)
    {
        if (assembly.Crossing is (Demand atLeast, Demand atMost))
        {
            Add(atLeast, 1);
            Add(atMost, -1);
            return;
        }
        for (int k = 0; k < rowProof.Length; k++)
        {
            if (rowProof[k] == 0 || k == assembly.WaterRow)
                continue;
            Add(assembly.Rows[k], Math.Sign(rowProof[k]));
            // A share of everything stands as grams of the total: it may lean on that without naming it.
            if (assembly.Rows[k] is Demand.Share { Of: FormulaPart of } && of.Equals(FormulaPart.Everything)
                && assembly.Rows.OfType<Demand.Total>().FirstOrDefault() is { IsOneValue: true } total)
                Add(total, 0);
        }
        for (int j = 0; j < boundProof.Length; j++)
        {
            // That no mass is below 0 goes without saying: it is kept throughout and never blamed.
            if (boundProof[j] != 0 && assembly.BoundEnd(j, Math.Sign(boundProof[j])) is (Demand demand, int side))
                Add(demand, side);
        }

        void Add(Demand demand, int side)
        {
            Member member = new(demand, demand.IsOneValue || demand.IsChoice ? 0 : side);
            if (!members.Contains(member))
                members.Add(member);
        }
    }

    private static bool AllCollide(IReadOnlyList<(Assembly Assembly, double[] RowProof, double[] BoundProof)> choices, List<Member> members,
        DualActiveSet kernel)
    {
        foreach ((Assembly assembly, _, _) in choices)
        {
            LeastSquaresProblem only = Only(assembly, members);
            bool crosses = false;
            for (int j = 0; j < only.Variables; j++)
                crosses |= only.Lower[j] > only.Upper[j];
            if (!crosses && kernel.Solve(only) != SolveStatus.Infeasible)
                return false;
        }
        return true;
    }

    // The conditions that are left, with the prior as the only objective. That there is a formula at all goes without saying, and that no
    // more water boils off than there is: a total that is left out leaves room for more and for less, but not for nothing.
    private static LeastSquaresProblem Only(Assembly assembly, List<Member> members)
    {
        LeastSquaresProblem conditions = assembly.Ranked.Conditions;
        LeastSquaresProblem problem = new(conditions.Variables);
        conditions.Prior.CopyTo(problem.Prior);
        conditions.Centre.CopyTo(problem.Centre);
        double[] row = new double[conditions.Variables];
        Array.Fill(row, 1);
        problem.AddRow(row, LeastTotal, double.PositiveInfinity);
        for (int k = 0; k < conditions.Rows; k++)
        {
            conditions.Row(k)[..row.Length].CopyTo(row);
            if (k == assembly.WaterRow)
            {
                problem.AddRow(row, 0, double.PositiveInfinity);
                continue;
            }
            Demand demand = assembly.Rows[k];
            // A row with one end is that end of its demand; one with both may be blamed for either.
            double low = Has(demand, 1) ? conditions.RowLow[k] : double.NegativeInfinity;
            double high = Has(demand, -1) ? conditions.RowHigh[k] : double.PositiveInfinity;
            if (double.IsNegativeInfinity(low) && double.IsPositiveInfinity(high))
                continue;
            // A share of everything stands as grams of the given total: where that is left out it still is a share.
            if (demand is Demand.Share { Of: FormulaPart of } && of.Equals(FormulaPart.Everything) && assembly.TotalUnits is double total)
            {
                if (double.IsFinite(low))
                    Against(low / total, 0, low == high ? 0 : double.PositiveInfinity);
                if (double.IsFinite(high) && low != high)
                    Against(high / total, double.NegativeInfinity, 0);
                continue;
            }
            problem.AddRow(row, low, high);

            void Against(double share, double least, double most)
            {
                double[] homogeneous = [.. row];
                for (int j = 0; j < row.Length; j++)
                    homogeneous[j] -= share;
                problem.AddRow(homogeneous, least, most);
            }
        }
        for (int j = 0; j < conditions.Variables; j++)
        {
            if (assembly.IsBoilOff(j))
                problem.Upper[j] = 0;
            else
                problem.Lower[j] = 0;
            foreach ((Demand demand, double lower, double upper) in assembly.Bounds(j))
            {
                if (Has(demand, assembly.IsBoilOff(j) ? -1 : 1))
                    problem.Lower[j] = Math.Max(problem.Lower[j], lower);
                if (Has(demand, assembly.IsBoilOff(j) ? 1 : -1))
                    problem.Upper[j] = Math.Min(problem.Upper[j], upper);
            }
        }
        return problem;

        bool Has(Demand demand, int side)
        {
            foreach (Member member in members)
            {
                if (ReferenceEquals(member.Demand, demand) && (member.Side == side || member.Side == 0))
                    return true;
            }
            return false;
        }
    }

    /// <summary>One end of a demand, or both (0).</summary>
    private readonly record struct Member(Demand Demand, int Side);
}
