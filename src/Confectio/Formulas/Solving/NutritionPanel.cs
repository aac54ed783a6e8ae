using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Confectio.Text;

namespace Confectio.Formulas.Solving;

/// <summary>A nutrition panel as it is printed on a pack: by whose rules, for which mass, and its figures.</summary>
/// <remarks>
/// Worked example: <c>NutritionPanel.Parse("per 100 g\nenergy 2278 kJ\nfat 31.6 g\ncarbohydrate 57 g\nof which sugars 56 g\nprotein 6.0
/// g\nsalt 0.11 g", LabelRules.EuropeanUnion)</c>. What a panel does not say is not 0: it has no figure.
/// </remarks>
public sealed class NutritionPanel
{
    private const int MostLines = 200;

    // Names as panels print them, without "total", "of which" and marks.
    private static readonly Dictionary<string, LabelNutrient> s_names = new(StringComparer.OrdinalIgnoreCase)
    {
        ["fat"] = LabelNutrient.Fat, ["fats"] = LabelNutrient.Fat,
        ["saturates"] = LabelNutrient.Saturates, ["saturated fat"] = LabelNutrient.Saturates, ["saturated"] = LabelNutrient.Saturates,
        ["saturated fatty acids"] = LabelNutrient.Saturates, ["sat fat"] = LabelNutrient.Saturates,
        ["carbohydrate"] = LabelNutrient.Carbohydrate, ["carbohydrates"] = LabelNutrient.Carbohydrate,
        ["carb"] = LabelNutrient.Carbohydrate, ["carbs"] = LabelNutrient.Carbohydrate,
        ["sugars"] = LabelNutrient.Sugars, ["sugar"] = LabelNutrient.Sugars,
        ["polyols"] = LabelNutrient.Polyols, ["sugar alcohol"] = LabelNutrient.Polyols, ["sugar alcohols"] = LabelNutrient.Polyols,
        ["starch"] = LabelNutrient.Starch,
        ["fibre"] = LabelNutrient.Fibre, ["fiber"] = LabelNutrient.Fibre, ["dietary fibre"] = LabelNutrient.Fibre,
        ["dietary fiber"] = LabelNutrient.Fibre,
        ["protein"] = LabelNutrient.Protein, ["proteins"] = LabelNutrient.Protein,
        ["salt"] = LabelNutrient.Salt, ["sodium"] = LabelNutrient.Sodium,
        ["energy"] = LabelNutrient.Kilojoules, ["energy value"] = LabelNutrient.Kilojoules, ["calories"] = LabelNutrient.Kilocalories,
        ["water"] = LabelNutrient.Water, ["moisture"] = LabelNutrient.Water,
    };

    // Lines that are understood and tell nothing of a composition.
    private static readonly string[] s_unused =
    [
        "trans", "mono", "poly", "cholesterol", "added sugars", "includes", "incl", "potassium", "calcium", "iron", "vitamin", "magnesium",
        "phosphorus", "zinc", "folate", "niacin", "thiamin", "riboflavin", "iodine", "omega", "caffeine", "cal from fat",
        "calories from fat", "nutrition", "amount per", "% daily", "daily value", "typical values", "average values", "servings per",
        "serving per", "reference intake", "*",
    ];

    private readonly PanelFigure[] _figures;

    private NutritionPanel(LabelRules rules, double lowGrams, double grams, double highGrams, PanelFigure[] figures,
        IReadOnlyList<string> unused)
    {
        Rules = rules;
        LowGrams = lowGrams;
        Grams = grams;
        HighGrams = highGrams;
        _figures = figures;
        Unused = unused;
    }

    /// <summary>By whose rules it was printed.</summary>
    public LabelRules Rules { get; }

    /// <summary>The mass that the figures are for, g: 100, or a serving.</summary>
    public double Grams { get; }

    /// <summary>The figures, in the order of <see cref="LabelNutrient"/>.</summary>
    public IReadOnlyList<PanelFigure> Figures => _figures;

    /// <summary>Lines that were understood and say nothing of a composition, such as vitamins.</summary>
    public IReadOnlyList<string> Unused { get; }

    /// <summary>The least that the mass may be: that of a serving is rounded too.</summary>
    internal double LowGrams { get; }

    internal double HighGrams { get; }

    /// <summary>The figure of a nutrient; <see langword="null"/> where the panel has none, which does not mean that there is none.</summary>
    /// <param name="nutrient">The nutrient.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="nutrient"/> is not a defined value.</exception>
    public PanelFigure? this[LabelNutrient nutrient]
    {
        get
        {
            Guard.Defined(nutrient);
            return Array.Find(_figures, figure => figure.Nutrient == nutrient);
        }
    }

    /// <summary>Makes a panel of its figures, each as printed.</summary>
    /// <param name="rules">By whose rules it was printed.</param>
    /// <param name="grams">
    /// The mass that the figures are for, g, from 0.1 to 100 000: 100, or that of a serving, which is taken as rounded to whole grams (from
    /// 2 to 5 g to halves, below to tenths; 21 CFR 101.9(b)(7), from memory). An American panel is always one of a serving, so that 100 is
    /// one of 99.5 to 100.5 g. Of figures for 100 mL, what 100 mL weigh.
    /// </param>
    /// <param name="figures">What is printed, such as <c>31.6 g</c>, <c>0,5 g</c>, <c>&lt; 0.5 g</c> or <c>less than 1 g</c>.</param>
    /// <returns>The panel.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="grams"/> is outside its range, or an enum has no such value.
    /// </exception>
    /// <exception cref="ArgumentException">There is no figure, or a nutrient comes twice.</exception>
    /// <exception cref="FormatException">A figure cannot be read; the message says which, and what was expected.</exception>
    public static NutritionPanel Of(LabelRules rules, double grams, params ReadOnlySpan<(LabelNutrient Nutrient, string Printed)> figures)
    {
        Guard.Defined(rules);
        Guard.InRange(grams, 0.1, 1e5);
        if (figures.IsEmpty)
            throw new ArgumentException($"{nameof(figures)} is empty; a panel has at least one.", nameof(figures));
        List<PanelFigure> read = [];
        foreach ((LabelNutrient nutrient, string printed) in figures)
        {
            Guard.Defined(nutrient, nameof(figures));
            if (read.Exists(known => known.Nutrient == nutrient))
                throw new ArgumentException($"{nameof(figures)} has {EnumWords.Of(nutrient, ' ')} twice.", nameof(figures));
            if (!PanelFigure.TryRead(nutrient, Guard.NotNull(printed, nameof(figures)), rules, out PanelFigure? figure, out string expected))
                throw new FormatException($"{EnumWords.Of(nutrient, ' ')}: {Excerpt.Of(printed)} was read; {expected} was expected.");
            read.Add(figure!);
        }
        return Made(rules, grams, HalfStep(grams, isServing: rules == LabelRules.UnitedStates), read, []);
    }

    /// <summary>Reads a panel as it is printed or copied, a line a nutrient.</summary>
    /// <param name="text">
    /// The lines: <c>per 100 g</c> or <c>serving size 2 tbsp (37 g)</c>, then <c>fat 31.6 g</c>, <c>of which sugars 56 g</c>, <c>Energy
    /// 2278 kJ / 546 kcal</c>, <c>Sodium 160mg 7%</c> and so on. Vitamins and other lines that tell nothing of a composition are kept in
    /// <see cref="Unused"/>; a line that is not understood is a problem.
    /// </param>
    /// <param name="rules">By whose rules it was printed.</param>
    /// <returns>The panel, or none where it has no mass or no figure; and the problems, each with its line.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rules"/> is not a defined value.</exception>
    public static Reading<NutritionPanel> Read(string text, LabelRules rules)
    {
        Guard.NotNull(text);
        Guard.Defined(rules);
        const string lead = "This nutrition panel cannot be used as it is";
        ProblemList problems = [];
        List<PanelFigure> figures = [];
        List<string> unused = [];
        double grams = 0, half = 0;
        int number = 0;
        foreach (ReadOnlySpan<char> line in text.AsSpan().EnumerateLines())
        {
            number++;
            if (number > MostLines)
            {
                problems.Add(new Problem(number, null, $"a panel has at most {MostLines} lines; the rest was not read"));
                break;
            }
            ReadOnlySpan<char> trimmed = line.Trim().TrimStart("-–•· ").TrimStart();
            if (trimmed.IsEmpty)
                continue;
            if (TryMass(trimmed, out double mass, out double digit, out bool isServing))
            {
                if (grams > 0)
                    problems.Add(new Problem(number, "mass", $"{Excerpt.Of(trimmed)} is a second mass; one panel was expected"));
                else if (mass is < 0.1 or > 1e5)
                    problems.Add(new Problem(number, "mass", $"{Excerpt.Of(trimmed)} is no mass from 0.1 to 100000 g"));
                else
                    (grams, half) = (mass, digit < 1 && mass != 100 ? digit / 2 : HalfStep(mass, isServing));
                continue;
            }
            ReadLine(trimmed, number, rules, figures, unused, problems);
        }
        if (grams == 0)
            problems.Add(new Problem(0, null, "there is no line such as 'per 100 g' or 'serving size 37 g', so what the figures are for is not known"));
        if (figures.Count == 0)
            problems.Add(new Problem(0, null, "there is no figure such as 'fat 31.6 g'"));
        return grams > 0 && figures.Count > 0
            ? new Reading<NutritionPanel>(Made(rules, grams, half, figures, unused), lead, problems, problems.Total)
            : Reading<NutritionPanel>.None(lead, problems, problems.Total);
    }

    /// <summary>Reads a panel (<see cref="Read"/>) of which every line must be understood.</summary>
    /// <param name="text">The lines.</param>
    /// <param name="rules">By whose rules it was printed.</param>
    /// <returns>The panel.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rules"/> is not a defined value.</exception>
    /// <exception cref="FormatException">A line cannot be used; the message has all of them, at most 20.</exception>
    public static NutritionPanel Parse(string text, LabelRules rules) => Read(text, rules).OrThrow();

    /// <summary>The mass and the figures, such as <c>per 100 g: fat 31.6 g, sugars 56 g</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"per {Grams:0.###} g: {string.Join(", ", _figures.Select(figure => $"{EnumWords.Of(figure.Nutrient, ' ')} {figure.Printed}"))}");

    private static NutritionPanel Made(LabelRules rules, double grams, double half, List<PanelFigure> figures, IReadOnlyList<string> unused)
        => new(rules, Math.Max(grams - half, grams / 2), grams, grams + half, [.. figures.OrderBy(figure => figure.Nutrient)], unused);

    // What a mass may be off: nothing where the figures are for 100 g by their own words.
    private static double HalfStep(double grams, bool isServing) => grams == 100 && !isServing ? 0 : grams < 2 ? 0.05 : grams < 5 ? 0.25 : 0.5;

    private static void ReadLine(ReadOnlySpan<char> line, int number, LabelRules rules, List<PanelFigure> figures, List<string> unused,
        ProblemList problems)
    {
        string whole = line.ToString();
        if (Array.Exists(s_unused, word => whole.StartsWith(word, StringComparison.OrdinalIgnoreCase))
            || whole.Contains("added sugar", StringComparison.OrdinalIgnoreCase)
            || whole.Contains("servings per", StringComparison.OrdinalIgnoreCase))
        {
            unused.Add(whole);
            return;
        }
        int at = FirstOfFigure(whole);
        string name = NameOf(at < 0 ? whole : whole[..at]);
        if (!s_names.TryGetValue(name, out LabelNutrient nutrient))
        {
            problems.Add(new Problem(number, null, $"{Excerpt.Of(whole)} is not a line of a nutrition panel that is understood"));
            return;
        }
        if (at < 0)
        {
            // "Energy", with its figures in the next line, says nothing by itself; a nutrient without one is a figure that was lost.
            problems.Add(new Problem(number, EnumWords.Of(nutrient, ' '), $"{Excerpt.Of(whole)} has no figure"));
            return;
        }
        bool energy = nutrient is LabelNutrient.Kilojoules or LabelNutrient.Kilocalories;
        foreach (string part in Parts(whole[at..], energy))
        {
            LabelNutrient meant = !energy ? nutrient
                : part.Contains("kJ", StringComparison.OrdinalIgnoreCase) ? LabelNutrient.Kilojoules
                : part.Contains("cal", StringComparison.OrdinalIgnoreCase) ? LabelNutrient.Kilocalories : nutrient;
            if (!PanelFigure.TryRead(meant, part, rules, out PanelFigure? figure, out string expected))
                problems.Add(new Problem(number, EnumWords.Of(meant, ' '), $"{Excerpt.Of(part)} was read; {expected} was expected"));
            else if (figures.Exists(known => known.Nutrient == meant))
                problems.Add(new Problem(number, EnumWords.Of(meant, ' '), $"{Excerpt.Of(whole)} stands twice"));
            else
                figures.Add(figure!);
        }
    }

    // The figures behind a name: one, or kJ and kcal; the per cent of a daily value is left out.
    private static IEnumerable<string> Parts(string text, bool energy)
    {
        int bracket = energy ? -1 : text.IndexOf('(', StringComparison.Ordinal);
        if (bracket > 0)
            text = text[..bracket];
        if (energy)
            text = text.Replace('(', '/').Replace(')', ' ').Replace(';', '/').Replace("kJ,", "kJ/", StringComparison.OrdinalIgnoreCase);
        foreach (string part in energy ? text.Split('/', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries) : [text])
        {
            string kept = part.Trim().TrimEnd('*', '†').Trim();
            int percent = kept.IndexOf('%', StringComparison.Ordinal);
            if (percent > 0)
            {
                int start = percent;
                while (start > 0 && (char.IsAsciiDigit(kept[start - 1]) || kept[start - 1] is '.' or ',' or ' '))
                    start--;
                kept = kept[..start].TrimEnd(' ', '|', '\t');
            }
            yield return kept.TrimEnd(' ', '|', '\t', ',', ';');
        }
    }

    private static int FirstOfFigure(string line)
    {
        int at = line.AsSpan().IndexOfAnyInRange('0', '9');
        foreach (string word in (string[])["<", "less than", "trace", "under"])
        {
            int found = line.IndexOf(word, StringComparison.OrdinalIgnoreCase);
            if (found >= 0 && (at < 0 || found < at))
                at = found;
        }
        return at;
    }

    private static string NameOf(string text)
    {
        string name = string.Join(' ', text.ToLowerInvariant().Replace(':', ' ').Replace('|', ' ').Replace('.', ' ').Replace('\t', ' ')
            .Split(' ', StringSplitOptions.RemoveEmptyEntries));
        int bracket = name.IndexOf('(', StringComparison.Ordinal);
        if (bracket > 0)
            name = name[..bracket].TrimEnd();
        foreach (string lead in (string[])["- ", "of which ", "total ", "- of which "])
        {
            if (name.StartsWith(lead, StringComparison.Ordinal))
                name = name[lead.Length..];
        }
        return name.Trim(' ', '-', ',', ';', '(');
    }

    private static bool TryMass(ReadOnlySpan<char> line, out double grams, out double digit, out bool isServing)
    {
        (grams, digit) = (0, 1);
        isServing = line.StartsWith("serving size", StringComparison.OrdinalIgnoreCase)
            || line.StartsWith("serving", StringComparison.OrdinalIgnoreCase)
                && !line.StartsWith("servings", StringComparison.OrdinalIgnoreCase);
        if (!isServing && !line.StartsWith("per ", StringComparison.OrdinalIgnoreCase))
            return false;
        // The last number with a g behind it: 2 tbsp (37 g).
        bool found = false;
        for (int i = 0; i < line.Length; i++)
        {
            if (!char.IsAsciiDigit(line[i]) || i > 0 && (char.IsAsciiDigit(line[i - 1]) || line[i - 1] is '.' or ','))
                continue;
            if (PanelFigure.TryNumber(line[i..], inThousands: false, out double value, out double last, out ReadOnlySpan<char> rest))
            {
                rest = rest.TrimStart();
                if (rest.Length > 0 && rest[0] is 'g' or 'G' && (rest.Length == 1 || !char.IsLetter(rest[1])))
                    (grams, digit, found) = (value, last, true);
            }
        }
        return found;
    }
}
