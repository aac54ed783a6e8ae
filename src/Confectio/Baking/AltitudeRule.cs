using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Baking;

/// <summary>What a rule counts in.</summary>
internal enum AltitudeUnit
{
    /// <summary>A share of what is there.</summary>
    Share,

    TeaspoonsPerTeaspoon,

    TablespoonsPerCup,

    TeaspoonsPerTwoCupsOfFlour,

    Fahrenheit,
}

/// <summary>One published adjustment of a cake at a height, as its publication has it.</summary>
public sealed class AltitudeRule
{
    private AltitudeRule(int feet, BatterPart part, AltitudeUnit unit, double low, double high, string asPrinted, Provenance provenance)
    {
        Feet = feet;
        Part = part;
        Unit = unit;
        Low = low;
        High = high;
        AsPrinted = asPrinted;
        Provenance = provenance;
    }

    /// <summary>All of them, a publication after the other, the lowest height first.</summary>
    public static IReadOnlyList<AltitudeRule> All { get; } = ReadBuiltIn();

    /// <summary>The height it is printed for, feet: 3000 is 914 m.</summary>
    public int Feet { get; }

    /// <summary>What it is about.</summary>
    public BatterPart Part { get; }

    /// <summary>What it says, such as <c>take 1/8 to 1/4 tsp of each tsp</c>.</summary>
    public string AsPrinted { get; }

    /// <summary>Who printed it.</summary>
    public Provenance Provenance { get; }

    internal AltitudeUnit Unit { get; }

    /// <summary>The lower end in its unit; less is negative.</summary>
    internal double Low { get; }

    internal double High { get; }

    /// <summary>One line, such as <c>leavening at 5000 ft: take 1/8 to 1/4 tsp of each tsp (Univ. of Wyoming Extension)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{EnumWords.Of(Part, ' ')} at {Feet} ft: {AsPrinted} ({Provenance.Source.ShortName})");

    private static AltitudeRule[] ReadBuiltIn()
    {
        List<AltitudeRule> all = [];
        EmbeddedTable.Read("altitude_rules.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            double low = fields.RequiredNumber("low", -3, 100);
            all.Add(new AltitudeRule((int)fields.RequiredNumber("feet", 1000, 20_000), fields.Enum<BatterPart>("part"), fields.Enum<AltitudeUnit>("of"), low,
                fields.RequiredNumber("high", low, 100), fields.Required("as_printed"), fields.Provenance("source", "kind", "", fields.Word("note"))));
        });
        return [.. all];
    }
}
