using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Heat;

/// <summary>Within which solid fat index an icing was found to stand, to take up air or to pipe.</summary>
public sealed class FatWindow
{
    private FatWindow(string use, string of, double low, double high, Provenance provenance)
    {
        Use = use;
        Of = of;
        Low = low;
        High = high;
        Provenance = provenance;
    }

    /// <summary>The published ones.</summary>
    public static IReadOnlyList<FatWindow> All { get; } = ReadBuiltIn();

    /// <summary>What for: <c>stands</c>, <c>creams</c>, <c>roses</c> or <c>stars</c>.</summary>
    public string Use { get; }

    /// <summary>The icing it was found for.</summary>
    public string Of { get; }

    /// <summary>The least solid fat index of the fat, per cent, by dilatometry.</summary>
    public double Low { get; }

    /// <summary>The most; 100 where none was found.</summary>
    public double High { get; }

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>One line, such as <c>roses: 14.2 to 17.7 % (buttercream of shortening; J. Home Econ. Japan 1987, abstract (measured))</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Use}: {(High < 100 ? $"{Low:0.#} to {High:0.#}" : $"from {Low:0.#}")} % ({Of}; {Provenance})");

    private static FatWindow[] ReadBuiltIn()
    {
        List<FatWindow> all = [];
        EmbeddedTable.Read("fat_windows.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            double low = fields.RequiredNumber("low", 0, 100);
            all.Add(new FatWindow(fields.Required("use"), fields.Required("of"), low, fields.RequiredNumber("high", low, 100),
                fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"))));
        });
        return [.. all];
    }
}
