using System.Globalization;
using System.Xml.Linq;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Pictures;
using Xunit;

namespace Confectio.Tests.Pictures;

/// <summary>The chart of solid fat: well formed, the same everywhere, and every word within it.</summary>
public sealed class SolidFatPictureTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    [Theory]
    [InlineData("unsalted butter", "white shortening", 31.0)]
    [InlineData("couverture-dark-64", "heavy cream", 24.0)]
    [InlineData("white shortening", "lard", null)]
    [InlineData("egg yolk", "egg yolk", 40.0)]
    public void IsWellFormedAndStaysInItsFrame(string first, string second, double? room)
    {
        Formula formula = Formula.Of("Fennmarsh <b>& \"July\"</b> cream with a very long name that has to be cut somewhere", [Line(first), Line(second)]);
        XElement svg = XElement.Parse(SolidFatPicture.Svg(formula, room));
        double[] box = [.. svg.Attribute("viewBox")!.Value.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture))];
        Assert.Empty(svg.Descendants(s_svg + "b"));
        Assert.Empty(svg.Descendants(s_svg + "script"));
        foreach (XElement text in svg.Descendants(s_svg + "text"))
        {
            double x = Number(text, "x"), y = Number(text, "y"), size = Number(text, "font-size");
            // The usual sans serif is 0.55 of its size a letter on the average of a line.
            double width = text.Value.Length * size * 0.56;
            double left = text.Attribute("text-anchor")?.Value switch { "end" => x - width, "middle" => x - width / 2, _ => x };
            Assert.InRange(left, -4, box[2]);
            Assert.InRange(left + width, 0, box[2] + 6);
            Assert.InRange(y, size, box[3]);
            // 400 pixels of 420: never below 11.
            Assert.True(size * 400 / box[2] >= 11);
        }
        bool isJudged = first is not ("couverture-dark-64" or "egg yolk");
        Assert.Equal(isJudged, svg.Descendants(s_svg + "text").Any(text => text.Value == "stands"));
        Assert.NotEqual(isJudged, Words(svg).Contains("No window is judged", StringComparison.Ordinal));
        Assert.Equal(isJudged ? 2 : 0, svg.Descendants(s_svg + "text").Count(text => text.Value.EndsWith("margarine", StringComparison.Ordinal) && text.Value.StartsWith('r')
            || text.Value.EndsWith("shortening", StringComparison.Ordinal) && text.Value.StartsWith('r')));
        Assert.NotEqual(room is null, svg.Value.Contains("room", StringComparison.Ordinal));
        Assert.Contains("no promise", Words(svg), StringComparison.Ordinal);
        Assert.NotNull(svg.Element(s_svg + "title"));
        Assert.Contains("at 31 °C", svg.Element(s_svg + "desc")!.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatIsNotKnownIsNotDrawn()
    {
        string svg = SolidFatPicture.Svg(Formula.Of("", [Line("egg yolk")]));
        Assert.Contains("not known: no melting curve", svg, StringComparison.Ordinal);
        Assert.Contains("No window is judged", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("stands from", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("fill-opacity", svg, StringComparison.Ordinal);
    }

    // The likely line, read back from the picture, is the curve.
    [Fact]
    public void TheLineIsTheCurve()
    {
        Formula formula = Formula.Of("", [Line("unsalted butter")]);
        XElement svg = XElement.Parse(SolidFatPicture.Svg(formula));
        string line = svg.Descendants(s_svg + "path").Single(path => path.Attribute("stroke-width")?.Value == "2.2").Attribute("d")!.Value;
        (double X, double Y)[] points = [.. line.Split(['M', 'L'], StringSplitOptions.RemoveEmptyEntries).Select(point => point.Trim().Split(' '))
            .Select(pair => (double.Parse(pair[0], CultureInfo.InvariantCulture), double.Parse(pair[1], CultureInfo.InvariantCulture)))];
        (double y0, double y60) = (Tick(svg, "0"), Tick(svg, "60"));
        for (int i = 0; i < points.Length; i++)
        {
            double celsius = 10 + 0.5 * i, percent = (y0 - points[i].Y) / (y0 - y60) * 60;
            Assert.Equal(formula.SolidFat(celsius).PercentOfFat!.Value.Likely, percent, 0.05);
        }
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    public void IsTheSameInEveryCulture(string culture)
    {
        Formula formula = Formula.Of("Fennmarsh", [Line("unsalted butter")]);
        string here = SolidFatPicture.Svg(formula, 30.5);
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            Assert.Equal(here, SolidFatPicture.Svg(formula, 30.5));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    // Made by: dotnet run docs/examples/warm-room.cs docs/examples/data/fennmarsh-july-buttercream.txt --room 31C --svg docs/guide/july-buttercream.svg
    [Fact]
    public void ThePictureOfTheGuideIsTheOneOfItsFormula() => Assert.Equal(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", "july-buttercream.svg")),
        SolidFatPicture.Svg(Formula.ParseText("fennmarsh-july-buttercream", "250 g unsalted butter\n500 g icing sugar\n30 g whole milk\n1 tsp vanilla extract", IngredientTable.BuiltIn,
            Confectio.Measures.MeasuringSystem.UsCustomary), 31));

    [Theory]
    [InlineData(9.9)]
    [InlineData(88)]
    [InlineData(double.NaN)]
    public void ARoomOfAnotherScaleIsRefused(double roomCelsius) =>
        Assert.Throws<ArgumentOutOfRangeException>(nameof(roomCelsius), () => SolidFatPicture.Svg(Formula.Of("", [Line("unsalted butter")]), roomCelsius));

    private static double Tick(XElement svg, string label) => Number(svg.Descendants(s_svg + "text").First(text => text.Value == label && text.Attribute("text-anchor")?.Value == "end"), "y") - 4;

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    private static string Words(XElement svg) => string.Join(' ', svg.Descendants(s_svg + "text").Select(text => text.Value));

    private static FormulaLine Line(string name) => FormulaLine.Of(IngredientTable.BuiltIn.Get(name), 100);
}
