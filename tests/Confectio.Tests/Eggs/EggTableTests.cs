using Confectio.Eggs;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Tests.Data;
using Xunit;

namespace Confectio.Tests.Eggs;

/// <summary>The tables of the room: every source resolves, and nothing recalled is presented as published.</summary>
public sealed class EggTableTests
{
    private static readonly string[] s_tables = ["egg_sizes", "egg_fractions", "egg_forms", "reconstitution_rules", "meringues"];

    // Pins: a figure that turns from remembered to published must be seen.
    [Theory]
    [InlineData("egg_sizes", "kind", "compiled 16")]
    [InlineData("egg_sizes", "parts_kind", "compiled 1, computed 4, estimated 5, measured 6")]
    [InlineData("egg_fractions", "kind", "common-practice 3, compiled 9, computed 3")]
    [InlineData("egg_forms", "kind", "common-practice 10, compiled 2, measured 1")]
    [InlineData("reconstitution_rules", "kind", "common-practice 1, compiled 1, from-memory 1")]
    [InlineData("meringues", "kind", "common-practice 11, compiled 5, from-memory 2")]
    public void TheKindsOfEvidenceArePinned(string table, string column, string counts) => Assert.Equal(counts, string.Join(", ",
        Tables.Of(table).GroupBy(row => row[column]).OrderBy(kind => kind.Key, StringComparer.Ordinal).Select(kind => FormattableString.Invariant($"{kind.Key} {kind.Count()}"))));

    [Fact]
    public void EverySourceResolvesAndOnlyMemoryIsFromMemory() => Assert.All(
        s_tables.SelectMany(table => Tables.Of(table).SelectMany(row => table == "egg_sizes"
            ? new[] { (row["source"], row["kind"]), (row["parts_source"], row["parts_kind"]) } : [(row["source"], row["kind"])])),
        figure =>
        {
            Assert.Equal(figure.Item1, Bibliography.Get(figure.Item1).Key);
            Assert.True(EvidenceText.TryRead(figure.Item2, out Evidence evidence));
            Assert.Equal(figure.Item1 == "memory", evidence == Evidence.FromMemory);
        });

    // What is read is what is written.
    [Fact]
    public void EveryRowIsRead()
    {
        Assert.Equal(Tables.Of("egg_sizes").Count, EggSizeSystem.All.Sum(system => system.Sizes.Count));
        Assert.Equal(Tables.Of("egg_fractions").Count, EggFraction.All.Count);
        Assert.Equal(Tables.Of("egg_forms").Select(row => row["form"]), Forms.All.Select(form => form.Key));
        Assert.Equal(Tables.Of("reconstitution_rules").Select(row => row["rule"]), ReconstitutionRule.All.Select(rule => rule.Key));
        Assert.Equal(Tables.Of("meringues").Count, Meringue.All.Sum(kind => kind.Figures.Count));
    }

    [Fact]
    public void EveryFormIsAnEggAndIsAnAllergen() => Assert.All(Forms.All, form =>
    {
        Assert.Contains(Allergen.Egg, form.Ingredient.Allergens);
        Assert.NotNull(form.Provenance);
        Assert.NotEmpty(form.Ingredient.Densities);
        Assert.Equal(form.WaterFraction <= EggForm.MaximumMoisture, form.IsDry);
        Assert.Equal(form.IsDry, form.Preparation.Contains("water", StringComparison.Ordinal));
    });

    [Fact]
    public void EveryFigureSaysItselfInALine()
    {
        Assert.All(EggFraction.All, fraction => Assert.Contains(" %: ", fraction.ToString(), StringComparison.Ordinal));
        Assert.Equal("shell 8.1 to 12.4 %: Japan Poultry Association (compiled)", EggFraction.All.First(fraction => fraction.Percent is null).ToString());
        Assert.All(Meringue.All.SelectMany(kind => kind.Figures), figure => Assert.Contains(figure.Quantity.ToString(), figure.ToString(), StringComparison.Ordinal));
    }
}
