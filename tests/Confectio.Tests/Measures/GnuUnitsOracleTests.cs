using System.Globalization;
using Confectio.Measures;
using Xunit;

namespace Confectio.Tests.Measures;

/// <summary>Our constants against GNU Units; <c>Oracles/gnu-units/make.sh</c> writes the file that is read here.</summary>
public sealed class GnuUnitsOracleTests
{
    // Where GNU Units means something else by the word: (system, expression) -> our value. Its own comment beside brtablespoon
    // says "also 5|8 brfloz, approx 17.7 ml", which is ours; and a label's ounce is 28 g by 21 CFR 101.9(b)(5)(viii), not the avoirdupois one.
    private static readonly Dictionary<(string System, string Expression), (double Theirs, double Ours)> s_disagreements = new()
    {
        [("imperial", "brtablespoon")] = (15, 17.7581640625),
        [("imperial", "brteaspoon")] = (5, 17.7581640625 / 3),
        [("imperial", "brdessertspoon")] = (10, 17.7581640625 * 2 / 3),
        [("us-labelling", "ounce")] = (28.349523125, 28),
    };

    private static readonly Lazy<string[]> s_lines = new(() =>
        File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Oracles", "gnu-units", "kitchen-volumes.csv")));

    public static TheoryData<string, KitchenUnit, string, double> Rows()
    {
        TheoryData<string, KitchenUnit, string, double> rows = [];
        foreach (string line in s_lines.Value.Skip(2))
        {
            string[] fields = line.Split(',');
            rows.Add(fields[0], Enum.Parse<KitchenUnit>(fields[1]), fields[2], double.Parse(fields[4], CultureInfo.InvariantCulture));
        }
        return rows;
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void AgreesOrTheDisagreementIsKnown(string key, KitchenUnit unit, string expression, double theirs)
    {
        Assert.True(MeasuringSystem.TryGet(key, out MeasuringSystem? system));
        double ours = unit.IsMass() ? system.GramsPer(unit) : system.MillilitresPer(unit);
        if (s_disagreements.TryGetValue((key, expression), out (double Theirs, double Ours) known))
        {
            Assert.Equal(known.Theirs, theirs, 1e-12 * known.Theirs);
            Assert.Equal(known.Ours, ours, 1e-12 * known.Ours);
            Assert.True(Math.Abs(theirs / ours - 1) > 0.01, "the two agree now: the known disagreement is out of date");
            return;
        }
        Assert.Equal(theirs, ours, 1e-12 * theirs);
    }

    [Fact]
    public void TheFileIsWhole()
    {
        Assert.Matches(@"^# GNU Units \d+\.\d+", s_lines.Value[0]);
        Assert.Equal("system,unit,expression,per,value", s_lines.Value[1]);
        Assert.Equal(29, Rows().Count);
        HashSet<(string, string)> present = [.. Rows().Select(row => (row.Data.Item1, row.Data.Item3))];
        Assert.All(s_disagreements.Keys, pair => Assert.Contains(pair, present));
    }
}
