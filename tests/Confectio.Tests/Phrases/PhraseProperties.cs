using System.Globalization;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;
using Confectio.Tests.Properties;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Phrases;

/// <summary>What must hold of every phrase, whatever stands in it.</summary>
public sealed class PhraseProperties
{
    private static readonly string[] s_lines = [.. TypedRecipe.All.SelectMany(recipe => recipe.Lines).Select(line => line.Text)];

    [Property(Arbitrary = [typeof(MeasureGenerators)], MaxTest = 3000)]
    public void AnyTextIsAPhrase(AnyText text) => Sound(text.Value);

    [Property(Arbitrary = [typeof(MeasureGenerators)], MaxTest = 3000)]
    public void AnEditedAmountIsAPhrase(NearlyAmountText text) => Sound(text.Value + " butter, softened (" + text.Value + ")");

    [Property(MaxTest = 3000)]
    public void AnEditedLineIsAPhrase(int which, int at, int length, char put, bool twice)
    {
        string line = s_lines[(int)((uint)which % s_lines.Length)];
        int start = (int)((uint)at % (line.Length + 1)), end = Math.Min(line.Length, start + (int)((uint)length % 4));
        string edited = line[..start] + put + line[end..];
        Sound(twice ? edited + " " + line : edited);
    }

    [Fact]
    public void EveryLineOfTheRecipesIsSoundInEveryCulture()
    {
        string[] here = [.. s_lines.Select(Told)];
        CultureInfo before = CultureInfo.CurrentCulture, beforeUi = CultureInfo.CurrentUICulture;
        try
        {
            foreach (string culture in (string[])["tr-TR", "de-DE", "fa-IR"])
            {
                CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(culture);
                Assert.Equal(here, s_lines.Select(Told));
            }
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (before, beforeUi);
        }
        Assert.All(s_lines, Sound);
    }

    // What is written reads back in front of a name and behind one. An egg, a white and a yolk are names there.
    [Property(Arbitrary = [typeof(MeasureGenerators)], MaxTest = 2000)]
    public void AWrittenAmountReadsBackBesideAName(Amount amount)
    {
        if (Enumerable.Range(0, amount.PartCount).Any(i => amount.Part(i).Piece is "egg" or "white" or "yolk") || (amount.IsPiece && amount.PartCount > 1))
            return;
        foreach (string format in new[] { "G", "V" })
        {
            string text = amount.ToString(format);
            AmountScanner scanner = new(text, AmountReading.DecimalPoint);
            Assert.True(scanner.TryNext(out WrittenAmount found), text);
            Assert.Equal((amount, 0, text.Length), (found.Amount, found.Start, found.Length));
            Assert.False(scanner.TryNext(out _));
            if (amount.IsPiece)
                continue;
            Assert.Equal(amount, Phrase.Read(text + " granulated sugar", IngredientTable.BuiltIn).Amount!.Value.Amount);
            Assert.Equal(amount, Phrase.Read("granulated sugar, " + text, IngredientTable.BuiltIn).Amount!.Value.Amount);
        }
    }

    [Theory] // neutral rows of descriptors.csv that are meant for every food
    [InlineData("organic ")]
    [InlineData("good quality ")]
    [InlineData("cold ")]
    [InlineData("best ")]
    public void ANeutralWordChangesNothing(string word)
    {
        int compared = 0;
        foreach (string line in s_lines)
        {
            Phrase plain = Phrase.Read(line, IngredientTable.BuiltIn);
            if (!plain.IsRead || plain.Also is not null || plain.Parts.FirstOrDefault(part => part.Kind == PhrasePartKind.Name) is not { Length: > 0 } name || plain.Name.Contains(" of ", StringComparison.Ordinal))
                continue;
            compared++;
            Phrase more = Phrase.Read(line.Insert(name.Start, word), IngredientTable.BuiltIn);
            Assert.True((plain.Ingredient, plain.Amount?.Amount, plain.Packing, plain.IsOptional, plain.SecondAmounts.Count) == (more.Ingredient, more.Amount?.Amount, more.Packing, more.IsOptional, more.SecondAmounts.Count),
                $"{line}: {plain} and with '{word}' {more}");
        }
        Assert.True(compared > 150);
    }

    [Theory] // a text of a million characters ends, with what is in it found; with anything above linear it would not
    [InlineData("1 cup ", 1)]
    [InlineData("about ", 0)]
    [InlineData("1 ", -1)]
    [InlineData("1 x 2 ", -1)]
    [InlineData("1 lb 2 oz and ", -1)]
    [InlineData("1/", -1)]
    [InlineData("9", -1)]
    [InlineData("(", 0)]
    [InlineData("a", 0)]
    [InlineData("½", -1)]
    [InlineData("~ ", 0)]
    [InlineData("≈x", 0)]
    [InlineData("1-", -1)]
    [InlineData("a US ", 0)]
    [InlineData("l0", 0)]
    [InlineData("1 (8 oz) ", -1)]
    [InlineData("1\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t", -1)]
    public void AMillionCharactersAreScanned(string unit, int each)
    {
        string text = string.Concat(Enumerable.Repeat(unit, 1_000_000 / unit.Length));
        AmountScanner scanner = new(text, AmountReading.DecimalPoint);
        long found = 0, end = 0;
        while (scanner.TryNext(out WrittenAmount amount))
        {
            Assert.True(amount.Start >= end && amount.Length > 0 && amount.Start + amount.Length <= text.Length);
            end = amount.Start + amount.Length;
            found++;
        }
        if (each >= 0)
            Assert.Equal((long)each * (1_000_000 / unit.Length), found);
        Phrase phrase = Phrase.Read(string.Concat(Enumerable.Repeat(text, 10)), IngredientTable.BuiltIn);
        Assert.Null(phrase.Amount);
        Assert.Contains("1000", Assert.Single(phrase.Problems).Message, StringComparison.Ordinal);
    }

    private static string Told(string line)
    {
        Phrase phrase = Phrase.Read(line, IngredientTable.BuiltIn);
        return $"{phrase.Kind} {phrase} {string.Join('|', phrase.Parts)} {string.Join('|', phrase.Assumed)} {string.Join('|', phrase.Problems)}";
    }

    /// <summary>Parts stand in the text, in order, and none overlaps another; nothing is thrown; what was not understood is a part.</summary>
    private static void Sound(string text)
    {
        foreach (AmountReading reading in Enum.GetValues<AmountReading>())
        {
            Phrase? phrase = Phrase.Read(text, IngredientTable.BuiltIn, new PhraseOptions { Reading = reading });
            int end = 0;
            Assert.Equal(text, phrase.Text);
            foreach (PhrasePart part in phrase.Parts)
            {
                Assert.True(part.Start >= end && part.Length > 0, $"{text}: {string.Join(" | ", phrase.Parts)}");
                end = part.Start + part.Length;
                Assert.Equal(text[part.Start..end], part.Text);
            }
            Assert.Equal(phrase.Parts.Where(part => part.Kind == PhrasePartKind.Unread), phrase.Unread);
            for (; phrase is not null; phrase = phrase.Also)
            {
                foreach (WrittenAmount amount in phrase.SecondAmounts.Concat(phrase.Amount is WrittenAmount main ? [main] : Array.Empty<WrittenAmount>()))
                    Assert.InRange(amount.Start + amount.Length, 1, text.Length);
                Assert.False(phrase.Kind == PhraseKind.Ingredient && phrase.Ingredient is null && phrase.Unread.Count == 0 && phrase.Amount is null, text);
                _ = phrase.ToString();
            }
        }
    }
}
