using Confectio.Ingredients;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Vetting;

/// <summary>One planted mistake of each kind among rows that are right by USDA SR.</summary>
public sealed class ReasonTests
{
    [Theory]
    [InlineData("icing sugar|1 cup|sifted|227", Reason.CupCountedAsEightOunces)] // 8 oz = 226.8 g
    [InlineData("cocoa|1/2 cup|113", Reason.CupCountedAsEightOunces)]
    [InlineData("granulated sugar|1 Tbsp|4.2", Reason.SpoonSwap)] // a teaspoon by USDA SR
    [InlineData("granulated sugar|1 tsp|12.5", Reason.SpoonSwap)]
    [InlineData("granulated sugar|1 Tbsp|37.5", Reason.SpoonSwap)] // turned the wrong way
    [InlineData("caster sugar|1 cup|100", Reason.HalvedOrDoubled)]
    [InlineData("shortening|1 cup|packed|400", Reason.HalvedOrDoubled)]
    [InlineData("vegetable oil|1 cup|21.8", Reason.DecimalShift)]
    [InlineData("salt|1 tsp|60", Reason.DecimalShift)]
    [InlineData("honey|1/2 cup|6.0", Reason.OuncesAsGrams)] // 170 g = 6.0 oz
    [InlineData("honey|1 Tbsp|595", Reason.GramsAsOunces)] // 21 g taken for 21 oz
    [InlineData("vegetable oil|1 fl oz|28.3", Reason.FluidOunceAsOunce)]
    [InlineData("honey|1 pint|454", Reason.FluidOunceAsOunce)]
    [InlineData("heavy cream|1 cup|levelled|283", Reason.DigitsSwapped)]
    [InlineData("egg white|1 cup|423", Reason.DigitsSwapped)]
    [InlineData("brown sugar|1 cup|packed|145", Reason.OtherPacking)] // unpacked by USDA SR
    [InlineData("whole milk|1 cup|293", Reason.OtherCup)] // 284 mL
    [InlineData("butter|8 oz|240", Reason.ThirtyGramOunce)]
    [InlineData("butter|1 lb|480", Reason.ThirtyGramOunce)]
    [InlineData("vegetable oil|1 cup|1234", Reason.Unexplained)]
    public void IsFoundAndNamed(string row, Reason reason)
    {
        TableVerdict verdict = Tables.Vet([.. Tables.RightByStandardReference, row]);
        RowFinding planted = verdict.Rows[^1];
        Assert.True(planted.Verdict is Verdict.Wrong or Verdict.Impossible, $"{planted.Verdict} {planted.ProbabilityRight}: {planted.Explanation}");
        Assert.Equal(reason, planted.Reason);
        Assert.All(verdict.Rows.SkipLast(1), right => Assert.Equal(Verdict.Agrees, right.Verdict));
    }

    [Fact]
    public void ACopyOfTheRowAboveIsNamed()
    {
        TableVerdict verdict = Tables.Vet([.. Tables.RightByStandardReference, "honey|3/4 cup|254", "cocoa|3/4 cup|254", "milk|3/4 cup|183"]);
        Assert.Equal(Reason.CopiedRow, verdict.Rows[^2].Reason);
        Assert.Equal(Verdict.Agrees, verdict.Rows[^3].Verdict);
    }

    [Fact]
    public void MilkAndButtermilkMayWeighTheSame()
    {
        TableVerdict verdict = Tables.Vet([.. Tables.RightByStandardReference, "skimmed milk|1 cup|245", "buttermilk|1 cup|245"]);
        Assert.All(verdict.Rows, row => Assert.Equal(Verdict.Agrees, row.Verdict));
    }

    [Fact]
    public void AnUnstatedPackingMayBeAnyKnownOne()
    {
        TableVerdict verdict = Tables.Vet([.. Tables.RightByStandardReference, "icing sugar|1 cup|100", "heavy cream|1 cup|120"]);
        Assert.Equal(Verdict.Agrees, verdict.Rows[^2].Verdict);
        Assert.Equal(Packing.Sifted, verdict.Rows[^2].ExpectedPacking);
        Assert.Equal(Packing.Whipped, verdict.Rows[^1].ExpectedPacking);
        Assert.Null(verdict.Rows[^1].Packing);
    }

    [Fact]
    public void AStatedPackingIsHeldTo()
    {
        TableVerdict verdict = Tables.Vet([.. Tables.RightByStandardReference, "cream cheese|1 cup|packed|160"]); // whipped; USDA SR: 10 g a tablespoon
        // Whipped heavy cream, 120 g, is half of the 238 g it was as well: a foam is known to a quarter only, so the half is the better fit.
        Assert.Equal(Reason.OtherPacking, verdict.Rows[^1].Reason);
    }

    [Theory]
    [InlineData("sifted icing sugar", Packing.Sifted)]
    [InlineData("icing sugar, sifted", Packing.Sifted)]
    [InlineData("Icing Sugar (sifted)", Packing.Sifted)]
    [InlineData("icing sugar sifted", Packing.Sifted)]
    [InlineData("brown sugar, firmly packed", Packing.Packed)]
    public void APackingInTheNameIsRead(string name, Packing packing)
    {
        RowFinding row = Tables.Vet([$"{name}|1 cup|100"]).Rows[0];
        Assert.Equal(packing, row.Packing);
        Assert.NotNull(row.Matched);
    }

    [Fact]
    public void EveryReasonHasItsCode()
    {
        string[] codes =
        [
            "cup-counted-as-eight-ounces", "spoon-swap", "halved-or-doubled", "decimal-shift", "ounces-as-grams", "grams-as-ounces", "thirty-gram-ounce",
            "fluid-ounce-as-ounce", "digits-swapped", "other-packing", "other-cup", "copied-row",
            "row-slip", "other-measure", "volume-as-mass", "piece-as-measure", "digit-lost", "digit-doubled", "unexplained",
        ];
        Assert.Equal(codes, Enum.GetValues<Reason>().Select(reason => reason.ToCode()));
        Assert.Equal(["agrees", "doubtful", "wrong", "impossible", "unknown"], Enum.GetValues<Verdict>().Select(verdict => verdict.ToCode()));
    }
}
