using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Keeping;

/// <summary>One printed advice: how long a food, or an ingredient by itself, keeps in a place. A lookup with its source, no model.</summary>
public sealed class KeepingTime
{
    private static readonly KeepingTime[] s_all = ReadBuiltIn();

    private KeepingTime(string food, string[] ingredients, KeepingPlace place, double? lowDays, double? highDays, bool isSuitable, string asPrinted,
        string presumes, Provenance provenance)
    {
        Food = food;
        Ingredients = ingredients;
        Place = place;
        LowDays = lowDays;
        HighDays = highDays;
        IsSuitable = isSuitable;
        AsPrinted = asPrinted;
        Presumes = presumes;
        Provenance = provenance;
    }

    /// <summary>Every advice there is.</summary>
    public static IReadOnlyList<KeepingTime> All => s_all;

    /// <summary>The place.</summary>
    public KeepingPlace Place { get; }

    /// <summary>The shorter of the times that are printed, in days; <see langword="null"/> where one time or none is printed.</summary>
    public double? LowDays { get; }

    /// <summary>The longest that is printed, in days, a month as 30; <see langword="null"/> where no time is printed.</summary>
    public double? HighDays { get; }

    /// <summary>Whether the place suits the food at all by this advice.</summary>
    public bool IsSuitable { get; }

    /// <summary>The words of the source.</summary>
    public string AsPrinted { get; }

    /// <summary>What the advice presumes; empty where the source does not say.</summary>
    public string Presumes { get; }

    /// <summary>Where it is from, and what kind of knowledge it is.</summary>
    public Provenance Provenance { get; }

    /// <summary>The key of the food that it is about; empty where it is about ingredients.</summary>
    internal string Food { get; }

    /// <summary>The ids of the ingredients that it is about.</summary>
    internal IReadOnlyList<string> Ingredients { get; }

    /// <summary>The time that decides where several are given: the shortest that is printed; none where no time is.</summary>
    internal double? StrictestDays => LowDays ?? HighDays;

    /// <summary>A line of text: <c>refrigerator: 3-4 days (of cream pies; for quality); USDA food storage data</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{EnumWords.Of(Place, ' ')}: {AsPrinted}{(Presumes.Length > 0 ? $" ({Presumes})" : "")}; {(Provenance.Evidence == Evidence.CommonPractice ? "common practice, from memory" : Provenance.Source.ShortName)}");

    private static KeepingTime[] ReadBuiltIn()
    {
        List<KeepingTime> times = [];
        EmbeddedTable.Read("keeping_times.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            string suits = fields.Required("suitable");
            if (suits is not ("yes" or "no"))
                fields.Problem("suitable", "yes or no is expected");
            times.Add(new KeepingTime(fields.Word("food"), fields.Word("ingredients").Split('|', StringSplitOptions.RemoveEmptyEntries),
                fields.Enum<KeepingPlace>("place"), fields.Number("low_days", 0, 3650), fields.Number("high_days", 0, 3650), suits == "yes",
                fields.Required("as_printed"), fields.Word("presumes"), fields.Provenance("source", "kind", "", fields.Word("note"))));
        });
        return [.. times];
    }
}
