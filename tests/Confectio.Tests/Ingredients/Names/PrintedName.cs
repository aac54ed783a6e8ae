using Confectio.Ingredients;
using Confectio.Ingredients.Names;

namespace Confectio.Tests.Ingredients.Names;

/// <summary>One row of a list of printed names.</summary>
internal sealed record PrintedName(string Text, string[] Answer, string Packing)
{
    public static PrintedName[] ReadAll(string file) =>
        [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Oracles", "names", file)).Skip(1).Select(Fields)
            .Select(fields => new PrintedName(fields[0], fields[1].Split('|'), fields[2]))];

    public bool IsMetBy(NameMatch match) => Answer switch
    {
        ["none"] => match.Ingredient is null,
        [string id] => match.Ingredient?.Id == id && (match.Packing?.ToWord() ?? "") == Packing,
        _ => match.Ingredient is null && match.Between.Select(food => food.Id).Order(StringComparer.Ordinal).SequenceEqual(Answer.Order(StringComparer.Ordinal)),
    };

    public override string ToString() => $"{Text} = {string.Join('|', Answer)} {Packing}";

    private static string[] Fields(string line)
    {
        List<string> fields = [""];
        bool isQuoted = false;
        foreach (char c in line)
        {
            if (c == '"')
                isQuoted = !isQuoted;
            else if (c == ',' && !isQuoted)
                fields.Add("");
            else
                fields[^1] += c;
        }
        return [.. fields];
    }
}
