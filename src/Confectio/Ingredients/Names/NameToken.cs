namespace Confectio.Ingredients.Names;

/// <summary>What a token of a name is.</summary>
internal enum NameTokenKind : byte
{
    Word,
    Comma,
    Open,
    Close,

    /// <summary>A slash, or the word "or".</summary>
    Slash,
}

/// <summary>A word or a mark of a name, with its place in the text.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Id">The number of the word; 0 where no name and no descriptor has it.</param>
/// <param name="Start">Where it begins.</param>
/// <param name="Length">How many characters it has.</param>
internal readonly record struct NameToken(NameTokenKind Kind, ushort Id, short Start, short Length)
{
    public int End => Start + Length;
}
