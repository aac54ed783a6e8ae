namespace Confectio.Cakes;

/// <summary>Something about a cake that is worth a second look; the answer stands all the same.</summary>
public sealed class CakeFinding
{
    internal CakeFinding(CakeFindingKind kind, string text)
    {
        Kind = kind;
        Text = text;
    }

    /// <summary>What it is.</summary>
    public CakeFindingKind Kind { get; }

    /// <summary>A sentence.</summary>
    public string Text { get; }

    /// <summary>The sentence.</summary>
    public override string ToString() => Text;
}
