using System.Globalization;
using Confectio.Measures;

namespace Confectio.Cards;

/// <summary>How a card says dried egg is made up with water: parts, or an amount of each.</summary>
public sealed class PowderRatio
{
    internal PowderRatio(double? powderParts, double? waterParts, Amount? powder, Amount? water, bool isForOneWhite, string of, CardPlace place, string text)
    {
        PowderParts = powderParts;
        WaterParts = waterParts;
        Powder = powder;
        Water = water;
        IsForOneWhite = isForOneWhite;
        Of = of;
        Place = place;
        Text = text;
    }

    /// <summary>Parts of powder; <see langword="null"/> where amounts are given.</summary>
    public double? PowderParts { get; }

    /// <summary>Parts of water; <see langword="null"/> where amounts are given.</summary>
    public double? WaterParts { get; }

    /// <summary>The powder; <see langword="null"/> where parts are given.</summary>
    public Amount? Powder { get; }

    /// <summary>The water; <see langword="null"/> where parts are given.</summary>
    public Amount? Water { get; }

    /// <summary>Whether it is said to make one egg white.</summary>
    public bool IsForOneWhite { get; }

    /// <summary>What the powder is called, such as <c>egg white powder</c>; only <c>powder</c> where the card says no more.</summary>
    public string Of { get; }

    /// <summary>Where it stands.</summary>
    public CardPlace Place { get; }

    /// <summary>Its words.</summary>
    public string Text { get; }

    /// <summary>Powder and water, such as <c>1 : 7 parts</c> or <c>2 tsp + 2 Tbsp</c>.</summary>
    public override string ToString() => Powder is Amount powder ? $"{powder} + {Water}"
        : string.Create(CultureInfo.InvariantCulture, $"{PowderParts:0.##} : {WaterParts:0.##} parts");
}
