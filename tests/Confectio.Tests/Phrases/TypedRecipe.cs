using System.Globalization;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Tests.Phrases;

/// <summary>One of the recipes of Oracles/recipes, with the reading of each line by hand; the README there says how it is written.</summary>
public sealed class TypedRecipe
{
    private static readonly Lazy<IReadOnlyList<TypedRecipe>> s_all = new(() => [.. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Oracles", "recipes"), "*.txt")
        .Order(StringComparer.Ordinal).Select(Read)]);

    public static IReadOnlyList<TypedRecipe> All => s_all.Value;

    public required string Title { get; init; }

    public required MeasuringSystem System { get; init; }

    public required IReadOnlyList<Line> Lines { get; init; }

    /// <summary>The recipe as the cook typed it.</summary>
    public string Text => string.Join('\n', Lines.Select(line => line.Text));

    public sealed record Line(int Number, string Text, string Kind, IReadOnlyList<Expected> Ingredients);

    public sealed class Expected
    {
        public string Id { get; set; } = "";

        public Amount? Amount { get; set; }

        public bool HasNoAmount { get; set; }

        public Amount[] Seconds { get; set; } = [];

        public Packing? Packing { get; set; }

        public string[] Preparation { get; set; } = [];

        public string? Unread { get; set; }

        public (double Low, double High)? Grams { get; set; }

        public HashSet<string> Flags { get; } = [];
    }

    private static TypedRecipe Read(string path)
    {
        string title = Path.GetFileNameWithoutExtension(path);
        MeasuringSystem system = MeasuringSystem.Metric;
        List<Line> lines = [];
        string? text = null;
        foreach (string row in File.ReadAllLines(path))
        {
            if (row.StartsWith("# title", StringComparison.Ordinal))
                continue;
            if (row.StartsWith("# system ", StringComparison.Ordinal))
                system = MeasuringSystem.TryGet(row.AsSpan(9), out MeasuringSystem? named) ? named : throw new FormatException(row);
            else if (!row.StartsWith(">> ", StringComparison.Ordinal))
                text = row;
            else
                lines.Add(LineOf(lines.Count + 1, text ?? throw new FormatException(path), row[3..]));
        }
        return new TypedRecipe { Title = title, System = system, Lines = lines };
    }

    private static Line LineOf(int number, string text, string reading)
    {
        string[] fields = [.. reading.Split(';').Select(field => field.Trim())];
        if (fields is ["heading" or "instruction" or "note"])
            return new Line(number, text, fields[0], []);
        List<Expected> all = [new Expected { Id = fields[0] }];
        for (int i = 1; i < fields.Length; i++)
        {
            string field = fields[i];
            Expected one = all[^1];
            if (field == "+")
                all.Add(new Expected { Id = fields[++i] });
            else if (field == "a=none")
                one.HasNoAmount = true;
            else if (field.StartsWith("a=", StringComparison.Ordinal))
                one.Amount = Amount.Parse(field.AsSpan(2));
            else if (field.StartsWith("s=", StringComparison.Ordinal))
                one.Seconds = [.. field[2..].Split('&').Select(part => Amount.Parse(part.Trim()))];
            else if (field.StartsWith("p=", StringComparison.Ordinal))
                one.Packing = PackingText.TryRead(field.AsSpan(2), out Packing packing) ? packing : throw new FormatException(field);
            else if (field.StartsWith("w=", StringComparison.Ordinal))
                one.Preparation = field[2..].Split(',');
            else if (field.StartsWith("u=", StringComparison.Ordinal))
                one.Unread = field[2..];
            else if (field.StartsWith("g=", StringComparison.Ordinal))
                one.Grams = field[2..].Split("..") is [string low, string high]
                    ? (double.Parse(low, CultureInfo.InvariantCulture), double.Parse(high, CultureInfo.InvariantCulture)) : throw new FormatException(field);
            else
                one.Flags.Add(field is "opt" or "taste" or "extra" or "divided" or "approx" or "assumed" or "problem" ? field : throw new FormatException(field));
        }
        return new Line(number, text, "ingredient", all);
    }
}
