namespace Confectio.Vetting;

/// <summary>What most likely happened to a row that is not right. The codes in machine output are the same words with hyphens.</summary>
public enum Reason
{
    /// <summary>A cup was taken for eight ounces of weight, whatever is in it: <c>cup-counted-as-eight-ounces</c>.</summary>
    CupCountedAsEightOunces,

    /// <summary>A teaspoon was taken for a tablespoon, or the other way round: <c>spoon-swap</c>.</summary>
    SpoonSwap,

    /// <summary>The figure is half or double what it should be: <c>halved-or-doubled</c>.</summary>
    HalvedOrDoubled,

    /// <summary>The decimal mark is one place off: <c>decimal-shift</c>.</summary>
    DecimalShift,

    /// <summary>The figure is in ounces, not in grams: <c>ounces-as-grams</c>.</summary>
    OuncesAsGrams,

    /// <summary>A figure in grams was taken for ounces: <c>grams-as-ounces</c>.</summary>
    GramsAsOunces,

    /// <summary>Ounces were turned into grams at 30 g each: <c>thirty-gram-ounce</c>.</summary>
    ThirtyGramOunce,

    /// <summary>A fluid ounce was taken for an ounce of weight: <c>fluid-ounce-as-ounce</c>.</summary>
    FluidOunceAsOunce,

    /// <summary>Two neighbouring digits changed places: <c>digits-swapped</c>.</summary>
    DigitsSwapped,

    /// <summary>The figure fits another packing of the same ingredient: <c>other-packing</c>.</summary>
    OtherPacking,

    /// <summary>This row was measured with another cup or spoon than the rest: <c>other-cup</c>.</summary>
    OtherCup,

    /// <summary>The figure is that of the row above or below: <c>copied-row</c>.</summary>
    CopiedRow,

    /// <summary>The figure fits the row above or below, as if the figures had slipped by a row: <c>row-slip</c>.</summary>
    RowSlip,

    /// <summary>
    /// The figure is that of another measure of the same ingredient, such as the cup's for a quarter of a cup: <c>other-measure</c>.
    /// </summary>
    OtherMeasure,

    /// <summary>The millilitres were printed as grams, whatever is in them: <c>volume-as-mass</c>.</summary>
    VolumeAsMass,

    /// <summary>The weight of one piece, such as a stick, was printed for the measure: <c>piece-as-measure</c>.</summary>
    PieceAsMeasure,

    /// <summary>A digit was lost in print, such as 27 for 227: <c>digit-lost</c>.</summary>
    DigitLost,

    /// <summary>A digit was printed twice, such as 2227 for 227: <c>digit-doubled</c>.</summary>
    DigitDoubled,

    /// <summary>None of these explains it: <c>unexplained</c>.</summary>
    Unexplained,
}
