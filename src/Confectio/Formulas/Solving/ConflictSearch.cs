using Confectio.Numerics;

namespace Confectio.Formulas.Solving;

/// <summary>
/// From a proof that conditions contradict each other to the demands that are in conflict. The support of the proof is irreducible by
/// theory (its normals are independent but for one relation); that is not trusted: every member is left out once, and stays out
/// where the rest is still in conflict.
/// </summary>
internal static class ConflictSearch
{
    private const double LeastTotal = 1e-6; // in units of the total

    public static ConflictingDemands Of(Assembly assembly, ReadOnlySpan<double> rowProof, ReadOnlySpan<double> boundProof)
    {
        LeastSquaresProblem conditions = assembly.Ranked.Conditions;
        List<Member> members = [];
        for (int k = 0; k < conditions.Rows; k++)
        {
            if (rowProof[k] != 0)
                members.Add(new Member(k, Math.Sign(rowProof[k]), IsRow: true));
        }
        for (int j = 0; j < conditions.Variables; j++)
        {
            // That no mass is below 0 goes without saying: it is kept throughout and never blamed.
            if (boundProof[j] != 0 && assembly.BoundEnd(j, Math.Sign(boundProof[j])) is not null)
                members.Add(new Member(j, Math.Sign(boundProof[j]), IsRow: false));
        }
        DualActiveSet kernel = new();
        for (int i = members.Count - 1; i >= 0 && members.Count > 1; i--)
        {
            Member left = members[i];
            members.RemoveAt(i);
            if (kernel.Solve(Only(assembly, members)) != SolveStatus.Infeasible)
                members.Insert(i, left);
        }
        List<Demand> demands = [];
        List<string> ends = [];
        foreach (Member member in members)
        {
            (Demand demand, int side) = member.IsRow ? (assembly.Rows[member.Index], member.Side)
                : assembly.BoundEnd(member.Index, member.Side)!.Value;
            string words = demand.SayEnd(side);
            if (!ends.Contains(words))
                ends.Add(words);
            if (!demands.Contains(demand))
                demands.Add(demand);
        }
        return new ConflictingDemands(demands, ends);
    }

    // The conditions that are left, with the prior as the only objective. That there is a formula at all goes without saying too: a total
    // that is left out leaves room for more and for less, but not for nothing.
    private static LeastSquaresProblem Only(Assembly assembly, List<Member> members)
    {
        LeastSquaresProblem conditions = assembly.Ranked.Conditions;
        LeastSquaresProblem problem = new(conditions.Variables);
        conditions.Prior.CopyTo(problem.Prior);
        conditions.Centre.CopyTo(problem.Centre);
        for (int j = 0; j < conditions.Variables; j++)
        {
            if (assembly.IsBoilOff(j))
                problem.Upper[j] = 0;
            else
                problem.Lower[j] = 0;
        }
        double[] all = new double[conditions.Variables];
        Array.Fill(all, 1);
        problem.AddRow(all, LeastTotal, double.PositiveInfinity);
        double[] row = new double[conditions.Variables];
        // No more water boils off than there is: that too.
        if (assembly.WaterRow is int water)
            problem.AddRow(conditions.Row(water)[..row.Length], 0, double.PositiveInfinity);
        foreach (Member member in members)
        {
            if (member.IsRow)
            {
                double end = member.Side > 0 ? conditions.RowLow[member.Index] : conditions.RowHigh[member.Index];
                // One value is one value, whichever of its ends the proof leans on.
                bool isOne = conditions.RowLow[member.Index] == conditions.RowHigh[member.Index];
                conditions.Row(member.Index)[..row.Length].CopyTo(row);
                // A share of everything stands as grams of the given total: where that is left out it still is a share.
                if (assembly.Rows[member.Index] is Demand.Share { Of: FormulaPart of } && of.Equals(FormulaPart.Everything))
                {
                    for (int j = 0; j < row.Length; j++)
                        row[j] -= end;
                    end = 0;
                }
                problem.AddRow(row, member.Side > 0 || isOne ? end : double.NegativeInfinity,
                    member.Side < 0 || isOne ? end : double.PositiveInfinity);
            }
            else if (member.Side > 0)
            {
                problem.Lower[member.Index] = conditions.Lower[member.Index];
            }
            else
            {
                problem.Upper[member.Index] = conditions.Upper[member.Index];
            }
        }
        return problem;
    }

    private readonly record struct Member(int Index, int Side, bool IsRow);
}
