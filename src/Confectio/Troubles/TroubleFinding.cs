namespace Confectio.Troubles;

/// <summary>A cause with what speaks for it and against it in one icing.</summary>
public sealed class TroubleFinding
{
    internal TroubleFinding(TroubleCause cause, TroubleParts parts)
    {
        Cause = cause;
        List<string> speaksFor = [], against = [], measure = [];
        foreach (TroubleSign sign in cause.Signs)
        {
            if (sign.Figure?.IsOf(parts) != true)
                continue;
            if (sign.Figure.Of(parts) is not (Spread value, string told))
            {
                measure.Add(sign.Measure.Length > 0 ? sign.Measure : $"what its {sign.Figure.Name} is");
                continue;
            }
            Spread past = sign.Past(value);
            string because = $"{told}; {sign.Rule}";
            (past.High >= 0 ? speaksFor : against).Add(because);
            if (Decides is null)
            {
                Decides = sign;
                Figure = value;
                Past = past;
            }
        }
        For = speaksFor;
        Against = against;
        ToMeasure = [.. measure.Distinct()];
        Standing = Past is not Spread far ? TroubleStanding.CannotBeTold : far.Low >= 0 ? TroubleStanding.SpeaksFor : far.High >= 0 ? TroubleStanding.InDoubt
            : TroubleStanding.SpeaksAgainst;
        Remedy = TroubleRemedy.Of(cause, Decides, parts);
    }

    /// <summary>The cause.</summary>
    public TroubleCause Cause { get; }

    /// <summary>What the figures say of it.</summary>
    public TroubleStanding Standing { get; }

    /// <summary>The sign that decides: the best grounded one that has a figure; <see langword="null"/> where none has.</summary>
    public TroubleSign? Decides { get; }

    /// <summary>The figure of it; <see langword="null"/> where there is none.</summary>
    public Spread? Figure { get; }

    /// <summary>How far that is past where the rule begins: 0 there, 1 where the case is clear, below 0 where it speaks against.</summary>
    public Spread? Past { get; }

    /// <summary>What speaks for it, with the figure and the rule.</summary>
    public IReadOnlyList<string> For { get; }

    /// <summary>What speaks against it.</summary>
    public IReadOnlyList<string> Against { get; }

    /// <summary>What to measure or to tell, to know more of it.</summary>
    public IReadOnlyList<string> ToMeasure { get; }

    /// <summary>What helps if it is the cause.</summary>
    public TroubleRemedy Remedy { get; }

    /// <summary>The cause and what the figures say of it.</summary>
    public override string ToString() => $"{Cause.Says} ({Standing switch
    {
        TroubleStanding.SpeaksFor => "its figure speaks for it",
        TroubleStanding.InDoubt => "in doubt",
        TroubleStanding.SpeaksAgainst => "its figure speaks against it",
        _ => "cannot be told yet",
    }})";
}
