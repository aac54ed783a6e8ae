using System.Globalization;
using Confectio.Text;

namespace Confectio.Formulas.Solving;

internal sealed partial class ProblemReader
{
    // A property by its word, at a condition of its own; the ends are in its unit.
    private JsonFields ReadProperty(JsonFields fields, bool isTarget)
    {
        string? word = fields.NeededText("property");
        FormulaPropertyKind? kind = properties.FirstOrDefault(known => known.Word.Equals(word?.Trim(), StringComparison.OrdinalIgnoreCase));
        double? value = fields.Number("value"), low = fields.Number("low"), high = fields.Number("high"), tolerance = fields.Number("tolerance");
        int? priority = fields.Whole("priority");
        Dictionary<string, double?> conditions = [];
        foreach (string member in properties.Select(known => known.Condition).Where(known => known.Length > 0).Distinct())
            conditions[member] = fields.Number(member);
        if (word is not null && kind is null)
            fields.Wrong("property", properties.Count == 0 ? $"{Excerpt.Of(word)} was read, and no properties are known here; read the problem "
                + "with those that may be asked" : $"{Excerpt.Of(word)} was read; {string.Join(", ", properties.SkipLast(1).Select(known => known.Word))} or "
                + $"{properties[^1].Word} is expected", ProblemCodes.UnknownName);
        bool isKept = !isTarget && fields.Flag("asInBase"), hasEnds = fields.Has("low") || fields.Has("high");
        if (isKept ? fields.Has("value") || hasEnds : fields.Has("value") == hasEnds)
            fields.Wrong(null, "either value or low and high is expected" + (isTarget ? "" : ", or asInBase alone"));
        if (!isTarget && (tolerance is not null || priority is not null))
            fields.Wrong(null, "a limit has no tolerance and no priority; it must be kept");
        if (kind is null || !fields.IsGood)
            return fields;
        foreach ((string member, double? given) in conditions)
        {
            if (given is not null && member != kind.Condition)
                fields.Wrong(member, $"{kind.Word} is asked at {(kind.Condition.Length > 0 ? kind.Condition : "nothing")}");
        }
        double? condition = (kind.Condition.Length > 0 ? conditions[kind.Condition] : null) ?? kind.Usual;
        if (condition is null)
            fields.Missing(kind.Condition);
        FormulaProperty? property = condition is double at && fields.IsGood ? fields.Make(() => kind.At(at), _ => kind.Condition) : null;
        if (property is null)
            return fields;
        foreach ((string member, double? end) in new[] { ("value", value), ("low", low), ("high", high) })
        {
            if (end is double asked && !(asked >= property.Minimum && asked <= property.Maximum))
                fields.Wrong(member, string.Create(CultureInfo.InvariantCulture, $"{member} was {asked}; from {property.Minimum} to {property.Maximum}"
                    + $"{(property.Unit.Length > 0 ? " " : "")}{property.Unit} is expected"));
        }
        if (!fields.IsGood)
            return fields;
        if (isKept)
        {
            _demands.Add((fields, "asInBase", problem => problem.WithKeptProperty(property)));
            return fields;
        }
        double least = value ?? low ?? double.NegativeInfinity, most = value ?? high ?? double.PositiveInfinity;
        _demands.Add((fields, null, problem => isTarget ? problem.WithPropertyTargetRange(property, least, most, priority ?? 1, tolerance)
            : problem.WithPropertyLimit(property, least, most)));
        return fields;
    }
}
