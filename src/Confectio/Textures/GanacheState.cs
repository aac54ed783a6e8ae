using System.Globalization;
using Confectio.Text;

namespace Confectio.Textures;

/// <summary>What a ganache or a coating is like at a temperature.</summary>
public sealed class GanacheState
{
    // Grams of solid fat in 100 g of the whole: estimates drawn through what every pastry cook knows (see Ganache).
    private const double PipeableFrom = 3, FirmFrom = 17;

    internal GanacheState(double celsius, bool? isTempered, Spread solidPercent, IReadOnlyList<string> cautions)
    {
        Celsius = celsius;
        IsTempered = isTempered;
        SolidFatPercent = solidPercent;
        Cautions = cautions;
    }

    /// <summary>The temperature, °C.</summary>
    public double Celsius { get; }

    /// <summary>Whether its cocoa butter was told to have set tempered; <see langword="null"/> where it was not told, and then the range covers both.</summary>
    public bool? IsTempered { get; }

    /// <summary>Grams of solid fat in 100 g of the whole.</summary>
    public Spread SolidFatPercent { get; }

    /// <summary>What it is most likely.</summary>
    public GanacheBody Likely => BodyAt(SolidFatPercent.Likely);

    /// <summary>All that it may be, the softest first.</summary>
    public IReadOnlyList<GanacheBody> MayBe => [.. Enum.GetValues<GanacheBody>().Where(body => body >= BodyAt(SolidFatPercent.Low) && body <= BodyAt(SolidFatPercent.High))];

    /// <summary>What the answer takes for granted, in sentences.</summary>
    public IReadOnlyList<string> Cautions { get; }

    /// <summary>One line, such as <c>at 20 °C pipeable, perhaps firm (estimated): 15.8 % of it is solid fat (8.7 to 18.4)</c>.</summary>
    public override string ToString()
    {
        string[] others = [.. MayBe.Where(body => body != Likely).Select(body => EnumWords.Of(body, ' '))];
        return string.Create(CultureInfo.InvariantCulture, $"at {Celsius:0.#} °C {EnumWords.Of(Likely, ' ')}{(others.Length > 0 ? $", perhaps {string.Join(" or ", others)}" : "")} (estimated): {SolidFatPercent.Likely:0.0} % of it is solid fat ({SolidFatPercent.Low:0.0} to {SolidFatPercent.High:0.0})");
    }

    private static GanacheBody BodyAt(double percent) => percent < PipeableFrom ? GanacheBody.Pourable : percent < FirmFrom ? GanacheBody.Pipeable : GanacheBody.Firm;
}
