using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Confectio.Cakes;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Pictures;
using Confectio.Tests.Cakes;
using Confectio.Tests.Consistency;
using FsCheck.Xunit;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Pictures;

/// <summary>The picture is read back as XML and measured: what it shows has the sizes of the cake, nothing leaves the page, and no text lies on another.</summary>
public sealed partial class CakePictureTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    // Two tiers of 20 and 10 cm with 5 mm: all radii of the plan are to one another as those of the cake, and the section has the same scale.
    [Fact]
    public void SectionAndPlanHaveOneScale()
    {
        XElement svg = Picture(Cake.Of("two", [Tier(20, 10), Tier(10, 5)]));
        double[] radii = [.. Paths(svg).SelectMany(path => Arcs().Matches(path)).Select(arc => Read(arc.Groups[1].Value)).Distinct().Order()];
        // The rounding of the coat in the section, and the outlines of the two bodies from above.
        Assert.Equal(3, radii.Length);
        Assert.Equal(2, radii[2] / radii[1], 0.001);
        Assert.Equal(10 / 0.5, radii[1] / radii[0] * 2, 0.03);
        // Seen from above, the coat is a line of twice its thickness.
        double line = svg.Descendants(s_svg + "path").Select(path => (string?)path.Attribute("stroke-width")).OfType<string>().Select(Read).Distinct().Single(width => width > 5 && width % 0.6 > 1e-9 && Math.Abs(width - 2 * radii[0]) < 0.02);
        Assert.Equal(radii[2] / 20, line / 2, 0.01);
        // In section the bare bodies are 20 by 10 and 10 by 5.
        (double Wide, double High)[] boxes = [.. svg.Descendants(s_svg + "path").Where(path => (string?)path.Attribute("fill") == "#f4e2bd" && !((string)path.Attribute("d")!).Contains('A')).Select(path => Box((string)path.Attribute("d")!))];
        Assert.Equal(2, boxes.Length);
        Assert.Equal(2 * radii[2], boxes[0].Wide, 0.05);
        Assert.Equal(radii[2], boxes[0].High, 0.05);
        Assert.Equal(radii[2], boxes[1].Wide, 0.05);
        Assert.Equal(radii[2] / 2, boxes[1].High, 0.05);
    }

    [Fact]
    public void FillingsAndDamsLieWhereTheyAre()
    {
        CakeTier tier = CakeTier.Of(CakeBody.Prism(PlanShape.Square(Cm(20)), Cm(10))).Filled(CakeFilling.Of("jam", Cm(1)).InDam("cream", Cm(2)), 3);
        XElement svg = Picture(Cake.Of("filled", [tier]));
        (double Wide, double High)[] slabs = [.. svg.Descendants(s_svg + "path").Where(path => (string?)path.Attribute("stroke-width") == "0.4").Select(path => Box((string)path.Attribute("d")!))];
        Assert.Equal(6, slabs.Length);
        double pixels = slabs.Max(slab => slab.Wide) / 20;
        Assert.All(slabs, slab => Assert.Equal(pixels, slab.High, 0.03));
        Assert.Equal(4, slabs.Count(slab => Math.Abs(slab.Wide - 2 * pixels) < 0.03));
    }

    [Theory]
    [InlineData(PictureLengths.Both, "20 cm (7.9 in)", "25.4 cm (10 in)", "coat 5 mm")]
    [InlineData(PictureLengths.Centimetres, "20 cm", "25.4 cm", "coat 5 mm")]
    [InlineData(PictureLengths.Inches, "7.9 in", "10 in", "coat 0.2 in")]
    public void LengthsAreWrittenInTheMeasureAskedFor(PictureLengths lengths, string lower, string upper, string coat)
    {
        string[] texts = Texts(Picture(Cake.Of("two", [Tier(25.4, 10), Tier(20, 5)]), new CakePictureOptions { Lengths = lengths }));
        Assert.Contains(lower, texts);
        Assert.Contains(upper, texts);
        Assert.Contains(coat, texts);
    }

    [Fact]
    public void EveryIcingIsNamedWithItsVolume()
    {
        Cake cake = Cake.Of("names", [Tier(20, 10).Filled(CakeFilling.Of("jam", Cm(0.5)), 2)], [Cupcakes.Flat("fondant", 10, Cm(6), Cm(0.5))]);
        string[] texts = Texts(Picture(cake));
        Assert.All(cake.Cover().Icings, icing =>
        {
            Assert.Contains(icing, texts);
            Assert.Contains(FormattableString.Invariant($"{cake.Cover().Millilitres(icing):0} mL"), texts);
        });
        Assert.Contains("10 of these, 14.1 mL each", texts);
    }

    // Made by: dotnet run docs/examples/enough-icing.cs docs/examples/data/fennmarsh-garden-wedding.json --svg docs/guide/garden-wedding.svg
    [Fact]
    public void ThePictureOfTheGuideIsFresh() => Assert.Equal(
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", "garden-wedding.svg")),
        CakePicture.Svg(IcingOrder.ParseJson(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Examples", "fennmarsh-garden-wedding.json")), IngredientTable.BuiltIn).Cake));

    // A name is text and never markup; what XML cannot hold is replaced.
    [Theory]
    [InlineData("Ring & <ball> \"round\"", "Ring & <ball> \"round\"")]
    [InlineData("two\r\nlines\tand", "two  lines and")]
    [InlineData("\uFFFEend", "\uFFFDend")]
    // What turns writing round (Unicode standard annex 9, table 3), and a control of the upper half.
    [InlineData("12\u202E34\u202C", "12\uFFFD34\uFFFD")]
    [InlineData("\u2066a\u2069\u200Fb\u061C", "\uFFFDa\uFFFD\uFFFDb\uFFFD")]
    [InlineData("\u202A\u202B\u202D\u2067\u2068\u200E", "\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD")]
    [InlineData("a\u009Bb\u2028c", "a\uFFFDb\uFFFDc")]
    [InlineData("", "Cake")]
    [InlineData("   ", "Cake")]
    public void NamesAreEscaped(string name, string shown) => Assert.Equal(shown, (string)Picture(Cake.Of(name, [Tier(20, 10)])).Element(s_svg + "title")!);

    // Apart, because a test's data cannot carry half of a surrogate pair.
    [Fact]
    public void WhatNoXmlCanHoldIsReplaced() => Assert.Equal("bell\uFFFD and \uFFFD alone", (string)Picture(Cake.Of("bell\u0007 and \uD800 alone", [Tier(20, 10)])).Element(s_svg + "title")!);

    [Fact]
    public void LongNamesAreCut()
    {
        string endless = new('x', 1_000_000);
        XElement svg = Picture(Cake.Of(endless, [Tier(20, 10, new string('W', 100))]));
        Assert.All(Texts(svg), text => Assert.True(text.Length < 120));
        Assert.Contains(Texts(svg), text => text.EndsWith('…') && text.StartsWith('W'));
        NothingLiesOnAnother(svg);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("fa-IR")]
    public void EveryCultureDrawsTheSame(string culture)
    {
        Cake cake = RandomCakes.Of(7);
        string expected = CakePicture.Svg(cake);
        Cultures.In(culture, () => Assert.Equal(expected, CakePicture.Svg(cake)));
    }

    [Property(MaxTest = 200)]
    public void NothingLiesOnAnotherOrLeavesThePage(ushort seed)
    {
        Random random = new(seed);
        NothingLiesOnAnother(Picture(RandomCakes.Of(seed), new CakePictureOptions { Lengths = (PictureLengths)random.Next(3) }));
    }

    [Fact]
    public void TheHardOnes()
    {
        CakeCoat coat = CakeCoat.Of("icing", Cm(0.5));
        NothingLiesOnAnother(Picture(Cake.Of("fifty", Enumerable.Range(0, 50).Select(i => CakeTier.Of(CakeBody.Prism(PlanShape.Round(Cm(120 - 2 * i)), Cm(8))).Coated(coat)))));
        NothingLiesOnAnother(Picture(Cake.Of("raised", Enumerable.Range(0, 30).Select(_ => CakeTier.Of(CakeBody.HalfBall(Cm(10))).Coated(coat).Raised()))));
        NothingLiesOnAnother(Picture(Cake.Of("flat", [CakeTier.Of(CakeBody.Prism(PlanShape.Rectangle(Cm(300), Cm(2)), Cm(0.5))).Coated(coat)])));
        NothingLiesOnAnother(Picture(Cake.Of("tall", [CakeTier.Of(CakeBody.Prism(PlanShape.Square(Cm(1)), Cm(900))).Coated(coat)])));
        NothingLiesOnAnother(Picture(Cake.Of("cups", [], Enumerable.Range(1, 100).Select(i => i % 2 == 0 ? Cupcakes.Flat($"icing {i}", i, Cm(6), Cm(0.5)).Domed(Cm(1)) : Cupcakes.Swirled($"icing {i}", i, Swirl.UpCone(Cm(6), Cm(4), 3, Cm(1)))))));
        NothingLiesOnAnother(Picture(Cake.Of("kinds", [
            CakeTier.Of(CakeBody.Ring(Cm(24), Cm(8), Cm(9))).Coated(coat).Dripped(CakeDrip.Of("glaze", Cm(0.3), 12, Cm(1), Cm(4))),
            CakeTier.Of(CakeBody.Ball(Cm(18))).Filled(CakeFilling.Of("curd", Cm(0.5)).InDam("icing", Cm(1)), 4).Coated(coat).Raised(),
            CakeTier.Of(CakeBody.Cap(Cm(14), Cm(5))).Coated(coat).Raised(),
            CakeTier.Of(CakeBody.TaperedRound(Cm(14), Cm(0), Cm(20))).Coated(coat).Raised(),
            CakeTier.Of(CakeBody.TaperedSquare(Cm(14), Cm(9), Cm(20))).Coated(coat).Placed(new PlanPoint(0, 0), 30).Raised()])));
    }

    [Fact]
    public void ItIsShownAsWideAsAskedAndIsAPictureToReaders()
    {
        XElement svg = Picture(Cake.Of("wide", [Tier(20, 10)]), new CakePictureOptions { WidthPixels = 300 });
        double[] view = [.. ((string)svg.Attribute("viewBox")!).Split(' ').Select(Read)];
        Assert.Equal(300, Read((string)svg.Attribute("width")!));
        Assert.Equal(view[3] / view[2], Read((string)svg.Attribute("height")!) / 300, 1e-3);
        Assert.Equal("img", (string)svg.Attribute("role")!);
        Assert.Contains("Tier 1: round, 20 × 20 cm, 10 cm high.", (string)svg.Element(s_svg + "desc")!, StringComparison.Ordinal);
        // Pictures on one page would share ids, styles and scripts.
        Assert.DoesNotContain(svg.Descendants(), element => element.Attribute("id") is not null || element.Name.LocalName is "style" or "script" or "image" or "use");
        PlanShapeTests.Refused("WidthPixels", double.NaN, () => new CakePictureOptions { WidthPixels = double.NaN });
        Assert.Throws<ArgumentOutOfRangeException>("Lengths", () => new CakePictureOptions { Lengths = (PictureLengths)9 });
        Assert.Throws<ArgumentNullException>("cake", () => CakePicture.Svg(null!));
    }

    private static CakeTier Tier(double diameter, double height, string icing = "icing") => CakeTier.Of(CakeBody.Prism(PlanShape.Round(Cm(diameter)), Cm(height))).Coated(CakeCoat.Of(icing, Cm(0.5)));

    private static XElement Picture(Cake cake, CakePictureOptions? options = null) => XDocument.Parse(CakePicture.Svg(cake, options)).Root!;

    private static string[] Texts(XElement svg) => [.. svg.Descendants(s_svg + "text").Select(text => text.Value)];

    private static IEnumerable<string> Paths(XElement svg) => svg.Descendants(s_svg + "path").Select(path => (string)path.Attribute("d")!);

    private static double Read(string number) => double.Parse(number, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static (double Wide, double High) Box(string path)
    {
        double[] numbers = [.. Numbers().Matches(path).Select(number => Read(number.Value))];
        double[] x = [.. numbers.Where((_, i) => i % 2 == 0)], y = [.. numbers.Where((_, i) => i % 2 == 1)];
        return (x.Max() - x.Min(), y.Max() - y.Min());
    }

    // A letter of the usual sans-serif fonts is about 0.6 of their size wide, a thin one half of that.
    private static void NothingLiesOnAnother(XElement svg)
    {
        double[] view = [.. ((string)svg.Attribute("viewBox")!).Split(' ').Select(Read)];
        List<(string Text, double Left, double Top, double Right, double Bottom)> boxes = [];
        foreach (XElement text in svg.Descendants(s_svg + "text").Where(text => text.Value.Trim().Length > 0))
        {
            double size = Read((string)text.Attribute("font-size")!), x = Read((string)text.Attribute("x")!), y = Read((string)text.Attribute("y")!), wide = size * text.Value.Sum(letter => " ,.()ijlft1".Contains(letter) ? 0.3 : 0.6);
            double left = (string?)text.Attribute("text-anchor") switch { "middle" => -wide / 2, "end" => -wide, _ => 0 };
            boxes.Add(text.Attribute("transform") is null ? (text.Value, x + left, y - 0.75 * size, x + left + wide, y + 0.2 * size)
                : (text.Value, x - 0.75 * size, y + left, x + 0.2 * size, y + left + wide));
        }
        Assert.All(boxes, box => Assert.True(box.Left >= 0 && box.Top >= 0 && box.Right <= view[2] && box.Bottom <= view[3], $"{box.Text} leaves the page"));
        for (int i = 0; i < boxes.Count; i++)
        {
            for (int j = i + 1; j < boxes.Count; j++)
            {
                Assert.False(boxes[i].Left < boxes[j].Right && boxes[j].Left < boxes[i].Right && boxes[i].Top < boxes[j].Bottom && boxes[j].Top < boxes[i].Bottom,
                    $"{boxes[i].Text} lies on {boxes[j].Text}");
            }
        }
        Assert.All(Paths(svg).Where(path => !path.Contains('A')).SelectMany(path => Numbers().Matches(path).Select(number => Read(number.Value))), number => Assert.InRange(number, 0, Math.Max(view[2], view[3])));
    }

    [GeneratedRegex(@"A ([\d.]+) \1 ")]
    private static partial Regex Arcs();

    [GeneratedRegex(@"-?[\d.]+")]
    private static partial Regex Numbers();
}
