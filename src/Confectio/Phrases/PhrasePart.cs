using System.Diagnostics.CodeAnalysis;

namespace Confectio.Phrases;

/// <summary>What a part of a phrase says.</summary>
public enum PhrasePartKind
{
    /// <summary>The amount.</summary>
    Amount,

    /// <summary>The same amount once more, in another measure.</summary>
    SecondAmount,

    /// <summary>The name of the ingredient.</summary>
    Name,

    /// <summary>How the measure is filled.</summary>
    Packing,

    /// <summary>What is done to the ingredient that changes no figure.</summary>
    Preparation,

    /// <summary>A remark: optional, to taste, for dusting, divided.</summary>
    Remark,

    /// <summary>Another ingredient that may stand in its place; it was not taken.</summary>
    Alternative,

    /// <summary>What was not understood.</summary>
    Unread,
}

/// <summary>A part of a phrase, and where it stands in it. <see langword="default"/> is an empty amount.</summary>
public readonly struct PhrasePart : IEquatable<PhrasePart>
{
    private readonly string? _phrase;

    internal PhrasePart(PhrasePartKind kind, int start, int length, string phrase) =>
        (Kind, Start, Length, _phrase) = (kind, start, length, phrase);

    /// <summary>What it says.</summary>
    public PhrasePartKind Kind { get; }

    /// <summary>Where it begins in the text, counted from 0.</summary>
    public int Start { get; }

    /// <summary>How many characters it takes.</summary>
    public int Length { get; }

    /// <summary>The part as it stands in the text.</summary>
    public string Text => Span.ToString();

    private ReadOnlySpan<char> Span => _phrase.AsSpan(Start, Length);

    internal int End => Start + Length;

    /// <inheritdoc/>
    public bool Equals(PhrasePart other) => Kind == other.Kind && Start == other.Start && Span.SequenceEqual(other.Span);

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is PhrasePart other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Kind, Start, string.GetHashCode(Span));

    /// <summary>Whether two parts are the same, at the same place.</summary>
    public static bool operator ==(PhrasePart left, PhrasePart right) => left.Equals(right);

    /// <summary>Whether two parts differ.</summary>
    public static bool operator !=(PhrasePart left, PhrasePart right) => !left.Equals(right);

    /// <summary>What it says and how it stands in the text, such as <c>name: unsalted butter</c>.</summary>
    public override string ToString() => (Kind == PhrasePartKind.SecondAmount ? "second amount"
        : Kind.ToString().ToLowerInvariant()) + ": " + Text;
}
