namespace Confectio.Vetting;

/// <summary>What is wrong with a place of a card. The codes in machine output are the same words with hyphens.</summary>
public enum CardIssue
{
    /// <summary>The card says free from what an ingredient has: <c>allergen-contradicted</c>. The gravest.</summary>
    AllergenContradicted,

    /// <summary>The card lists what it contains, and an ingredient has more: <c>allergen-missing</c>.</summary>
    AllergenMissing,

    /// <summary>Egg is called safe at a temperature at which no published rule makes it so: <c>unsafe-temperature</c>.</summary>
    UnsafeTemperature,

    /// <summary>The measure and the weight of a line do not fit: <c>measures</c>.</summary>
    Measures,

    /// <summary>Two volumes of a line do not fit: <c>volumes</c>.</summary>
    Volumes,

    /// <summary>The two scales of a temperature do not fit: <c>temperature</c>.</summary>
    Temperature,

    /// <summary>A temperature is none that its process can have: <c>process</c>.</summary>
    Process,

    /// <summary>A temperature is not that of the stage it stands beside: <c>stage</c>.</summary>
    Stage,

    /// <summary>A stage has the temperature of sea level, and the kitchen stands higher: <c>stage-altitude</c>.</summary>
    StageAltitude,

    /// <summary>The percentage of a line does not fit its weight: <c>percent</c>.</summary>
    Percent,

    /// <summary>The percentages do not add up to what is printed: <c>percent-sum</c>.</summary>
    PercentSum,

    /// <summary>The lines do not add up to the printed sum: <c>total</c>.</summary>
    Total,

    /// <summary>The card says it makes more than goes in, or far less: <c>yield</c>.</summary>
    Yield,

    /// <summary>Portions times their size are not what the card makes: <c>portions</c>.</summary>
    Portions,

    /// <summary>Dried egg is made up with solids far from those of the egg it stands for: <c>powder-ratio</c>.</summary>
    PowderRatio,

    /// <summary>A nutrient is not what the ingredients have: <c>nutrition</c>.</summary>
    Nutrition,

    /// <summary>The energy does not fit the fat, carbohydrate and protein beside it, or the two units of it: <c>energy</c>.</summary>
    Energy,
}

/// <summary>The codes and help of card issues in machine output.</summary>
public static class CardIssueText
{
    private static readonly (string Code, string Help)[] s_all =
    [
        ("allergen-contradicted", "The card says that it is free from an allergen, and an ingredient of it has that allergen. Somebody may be hurt: correct the claim or the ingredient, and read the label of every pack."),
        ("allergen-missing", "The card lists what it contains, and an ingredient has an allergen that is not in the list. That nothing is found does not say that a card is safe: makers differ, read every label."),
        ("unsafe-temperature", "Egg is called safe at a temperature that no published household rule calls so: 71 °C (160 °F), or pasteurised egg products. Local codes and licensed practice decide."),
        ("measures", "The measure and the weight of a line do not fit by the density of the food, in the cups that all lines of the card together speak for."),
        ("volumes", "Two volumes of one line, such as a tablespoon and millilitres, do not fit in any cups, or in those of the other lines."),
        ("temperature", "Degrees Fahrenheit and Celsius of one temperature do not fit: |F - (1.8 C + 32)| is more than the rounding of both. A difference has no 32."),
        ("process", "A temperature is outside what its process can have; most often it is in the other unit."),
        ("stage", "A temperature is not that of the sugar stage beside it, by all the tables that are known."),
        ("stage-altitude", "A sugar stage has the temperature of sea level, and the card states a height at which syrup of that strength boils cooler."),
        ("percent", "The percentage of a line does not fit its weight, by the basis that most lines of the card have."),
        ("percent-sum", "The percentages of the lines do not add up to the printed sum."),
        ("total", "The weights of the lines do not add up to the printed sum."),
        ("yield", "The card says that it makes more than goes in, or less than boiling off and the bowl explain."),
        ("portions", "The number of portions times the size of one is not what the card makes."),
        ("powder-ratio", "Dried egg made up so has solids far from those of the egg it stands for."),
        ("nutrition", "A nutrient is further from what the ingredients have, by tables of food composition, than rounding and their spread explain. An estimate, not an analysis."),
        ("energy", "The energy does not fit the fat, carbohydrate and protein beside it by 9, 4 and 4 kcal to the gram, or kilojoules do not fit kilocalories."),
    ];

    /// <summary>The code of an issue, such as <c>stage-altitude</c>.</summary>
    /// <param name="issue">The issue.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="issue"/> is not a defined value.</exception>
    public static string ToCode(this CardIssue issue) => s_all[(int)Guard.Defined(issue)].Code;

    /// <summary>What the issue means, in a sentence or two for whoever has to mend it.</summary>
    /// <param name="issue">The issue.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="issue"/> is not a defined value.</exception>
    public static string ToHelp(this CardIssue issue) => s_all[(int)Guard.Defined(issue)].Help;
}
