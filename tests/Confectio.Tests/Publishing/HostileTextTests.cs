using System.Text;
using System.Text.Json;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Publishing;
using Confectio.Text;
using Xunit;
using static Confectio.Tests.Publishing.Cards;

namespace Confectio.Tests.Publishing;

/// <summary>Must show 5: whatever is handed in is text in every form.</summary>
public sealed class HostileTextTests
{
    private static readonly string[] s_texts =
    [
        "<script>alert(1)</script>", "</script><script>alert(1)</script>", "\"><img src=x onerror=alert(1)>", "' onmouseover='x", "<!-- --><style>*{display:none}</style>", "&lt;b&gt; &amp;",
        "a\u202Eb\u2066c\u2069d\u200Fe", "x\0y\u001b[2Jz\u0007", "zero\u200Bwidth\uFEFF\u00AD", "tag\U000E0041\U000E0042", "lone\uD800surrogate\uDC00", "\uFFFE\uFFFF\uFDD0",
        "=HYPERLINK(\"http://x\",\"y\")", "+1+1", "-2+3", "@SUM(A1)", "\t=1", "\r=1", "|cmd", "[link](http://evil)", "![i](x)", "**bold** _it_ `code` ~~s~~ $x$", "# heading", "- list", "1. one", "> quote", "a | b",
        "http://evil.example www.evil.example me@evil.example @team #12", "{{x}} ${x} %s", "line\nbreak\r\n# not a heading", "עברית 5", "النص", "😀👩‍🍳", new string('x', 1900),
    ];

    private static IEnumerable<(string Raw, FormulaCard Card)> All()
    {
        foreach (string raw in s_texts)
        {
            Formula formula = Formula.Of(raw, [FormulaLine.Of(Named(raw), 100), Line("egg white", 100)]);
            yield return (raw, FormulaCard.Of(formula, new CardOptions
            {
                MeasuringSystems = [MeasuringSystem.UsCustomary], Title = raw, Steps = [raw], Temperatures = [CardTemperature.Of(raw.Length > 200 || string.IsNullOrWhiteSpace(raw) ? "x" : raw, 20)],
                Basis = FormulaPart.OfIngredients(raw.Length > 100 || string.IsNullOrWhiteSpace(raw) ? "x" : raw, [Table.Get("egg white")]),
            }));
        }
    }

    private static Ingredient Named(string raw)
    {
        Ingredient water = Table.Get("water");
        // Past the readers, which refuse some of these names: what is printed does not depend on them.
        return new Ingredient(new IngredientNames("own-" + raw.GetHashCode(StringComparison.Ordinal).ToString("x8", System.Globalization.CultureInfo.InvariantCulture), raw, [], IngredientClass.Liquid), water.Record, []);
    }

    [Fact]
    public void NoFormHasWhatCannotBeSeenOrTurnsWritingRound()
    {
        foreach ((string raw, FormulaCard card) in All())
        {
            foreach (string form in (string[])[card.ToText(), card.ToMarkdown(), card.ToHtml(), Unescaped(card.ToJsonLd())])
            {
                foreach (Rune rune in form.EnumerateRunes())
                {
                    Assert.False(rune.Value != '\n' && (Rune.IsControl(rune) || Rune.GetUnicodeCategory(rune) is System.Globalization.UnicodeCategory.Format or System.Globalization.UnicodeCategory.PrivateUse
                        or System.Globalization.UnicodeCategory.OtherNotAssigned), $"U+{rune.Value:X4} of {raw}");
                }
                Assert.DoesNotContain('\uD800', form);
            }
        }
    }

    [Fact]
    public void HtmlHasNoElementAndNoAttributeThatWasHandedIn()
    {
        FormulaCard plain = All().Last().Card;
        string[] known = [.. Tags(plain.ToHtml()).Distinct(), "<bdi>", "</bdi>"];
        foreach ((string raw, FormulaCard card) in All())
        {
            string html = card.ToHtml();
            Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
            // What stands in an attribute is a heading of ours or the basis, and no quote ends it.
            Assert.All(Tags(html).Select(tag => System.Text.RegularExpressions.Regex.Replace(tag, " data-h=\"[^\"]*\"", "")),
                tag => Assert.Contains(tag, known.Select(other => System.Text.RegularExpressions.Regex.Replace(other, " data-h=\"[^\"]*\"", ""))));
        }

        static IEnumerable<string> Tags(string html) => System.Text.RegularExpressions.Regex.Matches(html[html.IndexOf("<body>", StringComparison.Ordinal)..], "<[^>]*>").Select(match => match.Value);
    }

    [Fact]
    public void JsonLdCannotEndItsScriptElement()
    {
        foreach ((_, FormulaCard card) in All())
        {
            foreach (string json in (string[])[card.ToJsonLd(), card.ToJson()])
            {
                Assert.DoesNotContain('<', json);
                Assert.DoesNotContain('>', json);
                Assert.DoesNotContain('&', json);
                Assert.True(System.Text.Ascii.IsValid(json));
                using JsonDocument parsed = JsonDocument.Parse(json);
                Assert.Equal(JsonValueKind.Object, parsed.RootElement.ValueKind);
            }
        }
    }

    // By the rules of CommonMark: a backslash before ASCII punctuation makes it text, and entities stand for themselves.
    [Fact]
    public void MarkdownOfAHostileTextIsText()
    {
        foreach (string raw in s_texts)
        {
            string escaped = MarkdownSheet.Escaped(raw);
            for (int i = 0; i < escaped.Length; i++)
            {
                if (escaped[i] is '`' or '*' or '_' or '[' or ']' or '|' or '~' or '$' or '@' or '#')
                    Assert.Equal('\\', escaped[i - 1]);
            }
            Assert.DoesNotContain('<', escaped);
            Assert.DoesNotContain('\n', escaped);
            Assert.DoesNotContain("http://", escaped, StringComparison.Ordinal);
            Assert.False(escaped.Length > 0 && escaped[0] is '-' or '+' or '=' or '>' or '#');
            Assert.DoesNotMatch(@"^\d+[.)]( |$)", escaped);
        }
    }

    [Fact]
    public void NoCellOfTheCsvIsAFormula()
    {
        foreach (string raw in s_texts)
        {
            string csv = SheetCsv.Write([[raw, "x"]]);
            string cell = csv.StartsWith('"') ? csv[1..] : csv;
            Assert.DoesNotContain(cell[0], "=+-@\t\r|%");
            Assert.Equal(1, csv.Count(c => c == '\n'));
            Assert.Equal(0, csv.Count(c => c == '"') % 2);
        }
    }

    [Fact]
    public void WhatRunsFromRightToLeftIsSetApart() =>
        Assert.Contains("<bdi>עברית 5</bdi>", FormulaCard.Of(Formula.Of("עברית 5", [Line("water", 5)])).ToHtml(), StringComparison.Ordinal);

    [Fact]
    public void AThousandLinesOfLongNamesAreACard()
    {
        Formula formula = Formula.Of(new string('<', 100_000), Enumerable.Range(0, 1000).Select(i => FormulaLine.Of(Named($"{new string('&', 150)}{i}"), 1 + i)));
        FormulaCard card = FormulaCard.Of(formula, new CardOptions { MeasuringSystems = MeasuringSystem.All });
        Assert.InRange(card.ToHtml().Length, 100_000, 5_000_000);
        Assert.InRange(card.Title.Length, 1, 200);
        Assert.Equal(1000, JsonDocument.Parse(card.ToJsonLd()).RootElement.GetProperty("recipeIngredient").GetArrayLength());
    }

    private static string Unescaped(string json)
    {
        StringBuilder text = new();
        Walk(JsonDocument.Parse(json).RootElement);
        return text.ToString();

        void Walk(JsonElement element)
        {
            switch (element.ValueKind)
            {
                case JsonValueKind.Object:
                    foreach (JsonProperty member in element.EnumerateObject())
                        Walk(member.Value);
                    break;
                case JsonValueKind.Array:
                    foreach (JsonElement item in element.EnumerateArray())
                        Walk(item);
                    break;
                default:
                    text.Append(element.ToString()).Append('\n');
                    break;
            }
        }
    }
}
