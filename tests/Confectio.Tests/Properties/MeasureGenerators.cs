using Confectio.Measures;
using FsCheck;
using FsCheck.Fluent;

namespace Confectio.Tests.Properties;

/// <summary>Any text at all, from every corner of UTF-16 and from the alphabet that the reader of amounts knows.</summary>
public sealed record AnyText(string Value);

/// <summary>The text of a valid amount with a few random edits.</summary>
public sealed record NearlyAmountText(string Value);

/// <summary>A fraction of 0 or more.</summary>
public sealed record Quantity(Fraction Value);

/// <summary>A volume, a unit and quantity that every measuring system can fill.</summary>
public sealed record SmallVolume(double Millilitres);

/// <summary>Generators for the types of the Measures room.</summary>
public static class MeasureGenerators
{
    private const string Alphabet = "0123456789 \u00A0\u2009\u202F./\u2044-\u2013,+&½⅓¾⅛aeocupstbTlgfzm";

    private static readonly string[] s_words =
    [
        "cup", "cups", "c.", "Tbsp", "tsp", "T", "t", "g", "oz", "fl", "fl oz", "lb", "dl", "stick", "extra", "large", "half", "quarters",
        "a", "an", "and", "of", "to", "or", "plus", "one", "twelve", "1/2", "½", "⅔", "-", "\u2013", ",", ".", "+", "&", "/", "\u2044", "0", "9",
    ];

    private static readonly KitchenUnit[] s_masses = [.. Enum.GetValues<KitchenUnit>().Where(unit => unit.IsMass())];
    private static readonly KitchenUnit[] s_volumes = [.. Enum.GetValues<KitchenUnit>().Where(unit => unit.IsVolume())];

    private static Gen<long> AnyLong { get; } = Gen.OneOf(
        Gen.Choose(-20, 20).Select(value => (long)value),
        Gen.Choose(int.MinValue, int.MaxValue).Select(value => (long)value),
        Gen.Elements(long.MinValue, long.MinValue + 1, long.MaxValue, long.MaxValue - 1, 1L << 32, 1L << 62, 3037000500),
        from high in Gen.Choose(int.MinValue, int.MaxValue) from low in Gen.Choose(int.MinValue, int.MaxValue) select ((long)high << 32) | (uint)low);

    private static Gen<Fraction> QuantityGen { get; } = Gen.OneOf(
        Gen.Choose(0, 20).Select(value => (Fraction)value),
        from whole in Gen.Choose(0, 4)
        from denominator in Gen.Elements(2, 3, 4, 5, 6, 7, 8, 9, 10, 16, 32, 1000)
        from numerator in Gen.Choose(0, denominator)
        select new Fraction((whole * denominator) + numerator, denominator),
        from numerator in Gen.Choose(0, 1_000_000) from denominator in Gen.Choose(1, 100_000) select new Fraction(numerator, denominator),
        from numerator in AnyLong from denominator in AnyLong select new Fraction(numerator & long.MaxValue, Math.Max(1, denominator & long.MaxValue)));

    private static Gen<AmountPart> PartOf(KitchenUnit[] units) =>
        from quantity in QuantityGen from unit in Gen.Elements(units) select new AmountPart(quantity, quantity, unit, null);

    private static Gen<AmountPart> PiecePart { get; } =
        from quantity in QuantityGen
        from word in Gen.Elements(PieceWords.All.ToArray())
        select new AmountPart(quantity, quantity, KitchenUnit.Piece, word);

    private static Gen<AmountPart> AnyPart { get; } = Gen.OneOf(PartOf(s_masses), PartOf(s_volumes), PiecePart);

    private static Gen<Amount> SumOf(Gen<AmountPart> part) =>
        from first in part
        from more in Gen.Choose(1, 7)
        from rest in Gen.ArrayOf(part, more)
        select new Amount(first, rest);

    private static Gen<Amount> AmountGen { get; } = Gen.OneOf(
        AnyPart.Select(part => new Amount(part, null)),
        from part in AnyPart
        from other in QuantityGen
        select new Amount(new AmountPart(part.Low < other ? part.Low : other, part.Low < other ? other : part.Low, part.Unit, part.Piece), null),
        SumOf(PartOf(s_masses)), SumOf(PartOf(s_volumes)), SumOf(PiecePart));

    private static Gen<char> CharGen { get; } = Gen.Frequency(
        (4, Gen.Elements(Alphabet.ToCharArray())),
        (2, Gen.Choose(0, 127).Select(value => (char)value)),
        (1, Gen.Choose(0, 0xFFFF).Select(value => (char)value)),
        (1, Gen.Elements('\uD800', '\uDC00', '\uFFFF', '\uFEFF', '\0', '\u0660', '\u0967', '\uFF11', '\u212A', '\u017F', '\u0131', '\u215F', '\u2189')));

    private static Gen<string> TextGen { get; } = Gen.OneOf(
        from length in Gen.Choose(0, 40) from chars in Gen.ArrayOf(CharGen, length) select new string(chars),
        from count in Gen.Choose(0, 12)
        from words in Gen.ArrayOf(Gen.Elements(s_words), count)
        from gap in Gen.Elements("", " ", "\u202F")
        select string.Join(gap, words));

    private static Gen<string> EditedGen { get; } =
        from amount in AmountGen
        from format in Gen.Elements("G", "V")
        from count in Gen.Choose(1, 4)
        from edits in Gen.ArrayOf(from place in Gen.Choose(0, 200) from kind in Gen.Choose(0, 3) from c in CharGen select (place, kind, c), count)
        select edits.Aggregate(amount.ToString(format), Edit);

    public static Arbitrary<Fraction> Fractions() => Arb.From(
        from numerator in AnyLong from denominator in AnyLong select new Fraction(numerator, Math.Max(1, denominator & long.MaxValue)));

    public static Arbitrary<Quantity> Quantities() => Arb.From(QuantityGen.Select(value => new Quantity(value)));

    public static Arbitrary<Amount> Amounts() => Arb.From(AmountGen);

    public static Arbitrary<AnyText> Texts() => Arb.From(TextGen.Select(text => new AnyText(text)));

    public static Arbitrary<NearlyAmountText> EditedTexts() => Arb.From(EditedGen.Select(text => new NearlyAmountText(text)));

    public static Arbitrary<SmallVolume> SmallVolumes() => Arb.From(
        from microlitres in Gen.Frequency((1, Gen.Choose(10, 5_000)), (3, Gen.Choose(10, 600_000)))
        from parts in Gen.Elements(1, 3, 7)
        select new SmallVolume(Math.Max(0.01, microlitres / 1000.0 / parts)));

    private static string Edit(string text, (int Place, int Kind, char Character) edit)
    {
        int place = edit.Place % (text.Length + 1);
        return edit.Kind switch
        {
            0 => text.Insert(place, edit.Character.ToString()),
            1 when place < text.Length => text.Remove(place, 1),
            2 when place < text.Length => text.Remove(place, 1).Insert(place, edit.Character.ToString()),
            _ => text[place..] + text[..place],
        };
    }
}
