using System.Globalization;
using System.Text;
using System.Text.Json;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sugars;
using Confectio.Vetting;

namespace Confectio.Tests.Cards;

/// <summary>A mistake that was planted on a card.</summary>
internal sealed record Planted(CardIssue Issue, string Kind, string[] Causes, string Place, bool IsVisible);

/// <summary>A card that was made, with what was planted on it.</summary>
internal sealed record SeededCard(string Text, string Form, int Lines, IReadOnlyList<Planted> Planted);

/// <summary>
/// Makes cards from a seed: lines of foods of the table measured with the cups of one system, filled as a house fills them, rounded as
/// people round, in every form; with percentages, sums, yields, temperatures, stages, dried egg, nutrition and allergens, right or with a
/// mistake planted. Its arithmetic is its own: nothing of Confectio.Vetting makes a figure.
/// </summary>
internal sealed class SeededCards(int seed, double mistakes)
{
    private static readonly string[] s_cupFoods = ["all-purpose flour", "granulated sugar", "icing sugar", "cocoa powder", "whole milk", "heavy cream", "unsalted butter", "honey", "light corn syrup", "cornstarch",
        "water", "cream cheese", "brown sugar", "caster sugar", "cake flour", "bread flour", "almond flour", "sour cream", "buttermilk", "sunflower oil", "rolled oats", "glucose syrup", "white shortening", "maple syrup"];

    private static readonly string[] s_spoonFoods = ["granulated sugar", "whole milk", "heavy cream", "unsalted butter", "honey", "cornstarch", "water", "cocoa powder", "lemon juice", "vanilla extract", "table salt", "baking powder", "sunflower oil"];

    private static readonly string[] s_systems = ["us-customary", "us-customary", "us-customary", "us-customary", "us-labelling", "metric", "metric", "australian", "imperial", "japanese"];

    private static readonly (string Text, double Value)[] s_cups = [("1/4", 0.25), ("1/3", 1.0 / 3), ("1/2", 0.5), ("2/3", 2.0 / 3), ("3/4", 0.75), ("1", 1), ("1 1/4", 1.25), ("1 1/2", 1.5), ("2", 2), ("2 1/2", 2.5), ("3", 3)];

    private static readonly (string Text, double Value)[] s_spoons = [("1", 1), ("2", 2), ("3", 3), ("1 1/2", 1.5), ("1/2", 0.5)];

    private readonly Random _random = new(seed);
    private readonly List<Planted> _planted = [];
    private readonly IngredientTable _table = IngredientTable.BuiltIn;

    private sealed class Line
    {
        public required Ingredient Food { get; init; }

        public required string Name { get; init; }

        public string Measure { get; set; } = "";

        public double Grams { get; set; }

        public string Mass { get; set; } = "";

        public double PrintedGrams { get; set; }

        public string Percent { get; set; } = "";
    }

    public SeededCard Next()
    {
        _planted.Clear();
        MeasuringSystem.TryGet(Pick(s_systems), out MeasuringSystem? system);
        int count = _random.Next(4, 10);
        double house = Gauss() * 0.03;
        string rounding = Pick(["1", "1", "1", "5", "oz"]);
        List<Line> lines = [];
        HashSet<string> used = [];
        while (lines.Count < count)
        {
            bool spoon = lines.Count >= 3 && _random.NextDouble() < 0.45;
            string name = Pick(spoon ? s_spoonFoods : s_cupFoods);
            if (!_table.TryGet(name, out Ingredient? food) || !used.Add(food.Id) || food.DefaultPacking is Packing.Whole || !food.TryGetNearestDensity(food.DefaultPacking, out BulkDensity? density))
                continue;
            (string text, double value) = Pick(spoon ? s_spoons : s_cups);
            string unit = spoon ? name is "vanilla extract" or "table salt" or "baking powder" || _random.NextDouble() < 0.3 ? "tsp" : "Tbsp" : value > 1 ? "cups" : "cup";
            KitchenUnit kitchen = unit == "tsp" ? KitchenUnit.Teaspoon : unit == "Tbsp" ? KitchenUnit.Tablespoon : KitchenUnit.Cup;
            if (!system!.Defines(kitchen))
                continue;
            double millilitres = value * system.MillilitresPer(kitchen);
            bool powder = food.Class is IngredientClass.Powder;
            double log = (powder ? house : 0) + Gauss() * 0.5 * density.LogUncertainty;
            Line line = new() { Food = food, Name = name, Measure = $"{text} {unit}", Grams = millilitres * density.GramsPerMillilitre.Likely * Math.Exp(log) };
            Print(line, rounding);
            lines.Add(line);
        }
        foreach (Line line in lines)
        {
            if (Chance(0.55))
                PlantMeasure(line);
        }
        string form = Pick(["text", "mass-first", "markdown", "columns", "json-ld", "html", "tabs"]);
        double total = lines.Sum(line => line.PrintedGrams);
        bool table = form is "markdown" or "columns" or "tabs";
        bool percents = table && _random.NextDouble() < 0.5, sum = table && _random.NextDouble() < 0.6;
        string totalText = "", percentTotal = "";
        if (percents)
        {
            double scale = lines.Exists(line => line.Name.EndsWith("flour", StringComparison.Ordinal)) && _random.NextDouble() < 0.5 ? lines.First(line => line.Name.EndsWith("flour", StringComparison.Ordinal)).PrintedGrams / 100 : total / 100;
            foreach (Line line in lines)
                line.Percent = (line.PrintedGrams / scale).ToString("0.0", CultureInfo.InvariantCulture);
            double all = lines.Sum(line => double.Parse(line.Percent, CultureInfo.InvariantCulture));
            percentTotal = all.ToString("0.0", CultureInfo.InvariantCulture);
            if (Chance(0.5))
            {
                Line line = Pick(lines.ToArray());
                string was = line.Percent, now = Slip(was, out string cause);
                double p = double.Parse(was, CultureInfo.InvariantCulture);
                if (now != was && !_planted.Exists(planted => planted.Place == line.Name))
                {
                    line.Percent = now;
                    _planted.Add(new Planted(CardIssue.Percent, "percent", [cause], line.Name, Math.Abs(double.Parse(now, CultureInfo.InvariantCulture) - p) > 0.15 + p * 0.005 / Math.Max(1, line.PrintedGrams) * 100));
                }
            }
            else if (sum && Chance(0.3))
            {
                string now = Slip(percentTotal, out string cause);
                _planted.Add(new Planted(CardIssue.PercentSum, "percent-sum", [cause], "total", Math.Abs(double.Parse(now, CultureInfo.InvariantCulture) - all) > 0.05 * lines.Count));
                percentTotal = now;
            }
        }
        if (sum)
        {
            totalText = Plain(total) + " g";
            if (!_planted.Exists(planted => planted.Issue == CardIssue.Measures) && Chance(0.5))
            {
                string now = Slip(Plain(total), out string cause);
                totalText = now + " g";
                _planted.Add(new Planted(CardIssue.Total, "total", [cause], "total", Math.Abs(double.Parse(now, CultureInfo.InvariantCulture) - total) > lines.Count * 2));
            }
        }
        List<string> facts = [], steps = [], labels = [];
        double realTotal = lines.Sum(line => line.Grams);
        Yields(realTotal, lines, facts, out double portion);
        bool altitude = Stages(facts, steps);
        Temperatures(steps);
        Powders(steps);
        NutritionLine(lines, portion, labels, out Dictionary<string, string> members);
        Allergens(lines, labels);
        string text2 = Written(form, lines, percents, sum, totalText, percentTotal, facts, steps, labels, members);
        _ = altitude;
        return new SeededCard(text2, form, lines.Count, [.. _planted]);
    }

    // ---- lines ----

    private static void Print(Line line, string rounding)
    {
        double ounces = line.Grams / 28.349523125;
        if (rounding == "oz" && ounces > 1)
        {
            // Made from quarter ounces, and printed in grams.
            line.PrintedGrams = Math.Round(Math.Round(ounces * 4) / 4 * 28.349523125);
        }
        else
        {
            double step = rounding == "5" && line.Grams > 40 ? 5 : line.Grams < 5 ? 0.5 : 1;
            line.PrintedGrams = Math.Max(0.5, Math.Round(line.Grams / step) * step);
        }
        line.Mass = Plain(line.PrintedGrams) + " g";
    }

    private void PlantMeasure(Line line)
    {
        double was = line.PrintedGrams, now = was;
        string kind = Pick(["eight-ounces", "spoon", "digits", "decimal", "ounces", "double", "half", "volume"]);
        string[] causes = ["unexplained"];
        Amount measure = Amount.Parse(line.Measure);
        double cups = measure.Part(0).Low.ToDouble();
        switch (kind)
        {
            case "eight-ounces" when line.Measure.Contains("cup", StringComparison.Ordinal):
                now = Math.Round(cups * 226.796);
                causes = ["cup-counted-as-eight-ounces", "fluid-ounce-as-ounce"];
                break;
            case "spoon" when !line.Measure.Contains("cup", StringComparison.Ordinal):
                now = line.Measure.Contains("tsp", StringComparison.Ordinal) ? Math.Round(line.Grams * 3) : Math.Max(1, Math.Round(line.Grams / 3, 1));
                causes = ["spoon-swap"];
                break;
            case "digits" when was >= 10:
                string slipped = Swap(Plain(was));
                now = double.Parse(slipped, CultureInfo.InvariantCulture);
                causes = ["digits-swapped"];
                break;
            case "decimal":
                now = _random.Next(2) == 0 ? was * 10 : Math.Round(was / 10, 1);
                causes = ["decimal-shift"];
                break;
            case "ounces" when line.Grams > 30:
                now = Math.Round(line.Grams / 28.35, 1);
                causes = ["ounces-as-grams"];
                break;
            case "double":
                now = Math.Round(line.Grams * 2);
                causes = ["halved-or-doubled", "other-measure"];
                break;
            case "half":
                now = Math.Round(line.Grams / 2, line.Grams < 20 ? 1 : 0);
                causes = ["halved-or-doubled", "other-measure"];
                break;
            case "volume" when line.Measure.Contains("cup", StringComparison.Ordinal):
                now = Math.Round(cups * 240);
                // 240 g to the cup is also eight ounces of 30 g, and twice or half of some food.
                causes = ["volume-as-mass", "cup-counted-as-eight-ounces", "thirty-gram-ounce"];
                break;
        }
        if (now == was || now <= 0)
            return;
        line.Food.TryGetNearestDensity(line.Food.DefaultPacking, out BulkDensity? density);
        double apart = Math.Abs(Math.Log(now / line.Grams)), sd = density!.LogUncertainty;
        double lowest = line.Food.Densities.Min(d => Math.Log(d.GramsPerMillilitre.Low / density.GramsPerMillilitre.Likely)), highest = line.Food.Densities.Max(d => Math.Log(d.GramsPerMillilitre.High / density.GramsPerMillilitre.Likely));
        double log = Math.Log(now / line.Grams);
        bool visible = apart > 2 * sd + 0.6 / Math.Min(now, was) && (log < lowest - sd || log > highest + sd) && apart > 0.12;
        line.PrintedGrams = now;
        line.Mass = Plain(now) + " g";
        _planted.Add(new Planted(CardIssue.Measures, "measures/" + kind, causes, line.Name, visible));
    }

    // ---- what it makes ----

    private void Yields(double total, List<Line> lines, List<string> facts, out double portion)
    {
        portion = 0;
        bool measured = _planted.Exists(planted => planted.Issue == CardIssue.Measures);
        double kept = total * (0.9 + 0.09 * _random.NextDouble());
        int portions = Pick([4, 6, 8, 10, 12, 16, 20, 24, 30, 36]);
        if (_random.NextDouble() < 0.45)
        {
            double made = kept < 1000 ? Math.Round(kept / 10) * 10 : Math.Round(kept / 50) * 50;
            string text = made >= 1000 && _random.Next(2) == 0 ? (made / 1000).ToString("0.00", CultureInfo.InvariantCulture) + " kg" : Plain(made) + " g";
            if (!measured && Chance(0.5))
            {
                double factor = Pick([2.0, 0.5, 10, 0.1]);
                double wrong = made * factor;
                text = Plain(wrong) + " g";
                _planted.Add(new Planted(CardIssue.Yield, "yield", factor is 2 or 0.5 ? ["halved-or-doubled"] : ["decimal-shift"], "yield", true));
            }
            facts.Add(Pick(["Yield: ", "Makes about ", "Total yield: ", "Batch: "]) + text);
        }
        else if (_random.NextDouble() < 0.6)
        {
            double each = Math.Floor(kept / portions);
            if (each < 2)
                return;
            portion = each;
            int told = portions;
            if (!measured && Chance(0.4))
            {
                told = Pick([portions * 2, portions * 3, Math.Max(1, portions / 2), portions * 10]);
                if (told != portions)
                    _planted.Add(new Planted(CardIssue.Portions, "portions", told == portions * 3 ? ["unexplained", "digits-swapped"] : told == portions * 10 ? ["decimal-shift"] : ["halved-or-doubled"], "portions", true));
            }
            facts.Add(Pick([$"Makes {told} portions of {Plain(each)} g", $"Serves {told}; each serving {Plain(each)} g", $"{told} pieces of {Plain(each)} g each", $"Portions: {told} x {Plain(each)} g"]));
        }
        else
        {
            facts.Add($"Serves {portions}");
        }
    }

    // ---- temperatures ----

    private bool Stages(List<string> facts, List<string> steps)
    {
        if (_random.NextDouble() > 0.45)
            return false;
        (string name, double low, double high) = Pick([("soft ball", 234.0, 240.0), ("firm ball", 245, 250), ("hard ball", 250, 265), ("soft crack", 270, 290), ("hard crack", 300, 310)]);
        double f = Math.Round(low + (high - low) * _random.NextDouble());
        // Extension services: 2 °F lower for each 1000 ft.
        double feet = _random.NextDouble() < 0.4 ? Pick([3500.0, 5280, 6000, 7000]) : 0;
        double fall = 2 * feet / 1000;
        string issue = "";
        if (feet > 0)
            facts.Add(_random.Next(2) == 0 ? $"Our kitchen: elevation {feet.ToString("#,0", CultureInfo.InvariantCulture)} ft" : $"Altitude: {Math.Round(feet * 0.3048 / 10) * 10:0} m");
        double printed = Math.Round(f - fall);
        if (feet > 0 && Chance(0.6))
        {
            printed = f;
            bool visible = fall > high - low + 4 || f - 2.2 > high - fall;
            _planted.Add(new Planted(CardIssue.StageAltitude, "stage-altitude", [], "stage", visible));
            issue = "altitude";
        }
        else if (Chance(0.4))
        {
            double was = printed;
            string other = Pick(["soft ball", "hard ball", "hard crack"]);
            double target = other == "soft ball" ? 237 : other == "hard ball" ? 258 : 305;
            if (Math.Abs(target - fall - was) > 20)
            {
                printed = Math.Round(target - fall);
                _planted.Add(new Planted(CardIssue.Stage, "stage", ["unexplained", "digits-swapped"], "stage", true));
                issue = "stage";
            }
        }
        double c = Math.Round((printed - 32) / 1.8);
        string pair = Pick([$"{printed:0}°F ({c:0}°C)", $"{c:0} °C ({printed:0} °F)", $"{printed:0} F/{c:0} C", $"{printed:0} °F"]);
        steps.Add(Pick([$"Cook the syrup to {name}, {pair}.", $"Boil to {pair}, the {name} stage.", $"Cook to {pair} ({name})."]));
        _ = issue;
        return feet > 0;
    }

    private void Temperatures(List<string> steps)
    {
        int count = _random.Next(0, 4);
        List<int> kinds = [0, 1, 2, 3, 4];
        for (int i = 0; i < count; i++)
        {
            int kind = kinds[_random.Next(kinds.Count)];
            kinds.Remove(kind);
            (string lead, double f, double step, string tail) = kind switch
            {
                0 => ("Bake at ", Pick([325.0, 350, 375, 400]), 5, Pick([" for 25 minutes.", ", 30 min.", " until golden."])),
                1 => (Pick(["Keep in the refrigerator at ", "Refrigerate at "]), Pick([38.0, 40]), 1, "."),
                2 => ("Heat the whites and sugar over simmering water to ", Pick([150.0, 160, 165]), 1, ", stirring."),
                3 => ("Temper the chocolate at ", Pick([88.0, 89, 90]), 1, "."),
                _ => ("Whip until it has cooled to ", Pick([75.0, 80, 90]), 1, ", then add the butter."),
            };
            double c = Math.Round((f - 32) / 1.8 / step) * step;
            if (kind == 0 && _random.Next(2) == 0)
                c = Math.Round((f - 32) / 1.8);
            double pf = f, pc = c;
            string style = Pick(["f-c", "c-f", "slash", "lone-f", "lone-c"]);
            if (Chance(0.5))
            {
                if (style.StartsWith("lone", StringComparison.Ordinal))
                {
                    // The figure of one scale with the letter of the other.
                    (pf, pc) = (c, f);
                    double wrongC = style == "lone-f" ? (c - 32) / 1.8 : f;
                    bool seen = kind switch { 0 => wrongC is < 60 or > 300, 1 => wrongC is < -3 or > 12, 2 => wrongC is < 40 or > 95, 3 => wrongC is < 24 or > 58, _ => false };
                    _planted.Add(new Planted(CardIssue.Process, "process", ["other-unit"], lead, seen));
                }
                else
                {
                    string slip = Pick(["columns", "no-32", "digits", "same"]);
                    string[] causes;
                    (pf, pc, causes) = slip switch
                    {
                        "columns" => (c, f, (string[])["columns-swapped"]),
                        "no-32" => (f, Math.Round(f / 1.8), ["point-as-difference"]),
                        "same" => (f, f, ["other-unit"]),
                        _ => (f, double.Parse(Swap(Plain(c)), CultureInfo.InvariantCulture), ["digits-swapped"]),
                    };
                    double miss = Math.Abs(pf - (1.8 * pc + 32)), allowed = 0.9 * Step(pc, false) + 0.5 * Step(pf, true);
                    if (pc != c || pf != f)
                        _planted.Add(new Planted(CardIssue.Temperature, "temperature/" + slip, causes, lead, miss > allowed));
                }
            }
            string pair = style switch { "f-c" => $"{pf:0}°F ({pc:0}°C)", "c-f" => $"{pc:0} °C ({pf:0} °F)", "slash" => $"{pf:0}F/{pc:0}C", "lone-f" => $"{pf:0}°F", _ => $"{pc:0}°C" };
            steps.Add(lead + pair + tail);
        }
        if (_random.NextDouble() < 0.15)
        {
            double f = Pick([5.0, 10, 25]), c = Math.Round(f / 1.8);
            string lead = Pick(["It may fall by ", "Keep it within "]);
            if (Chance(0.5))
            {
                c = Math.Round((f - 32) / 1.8);
                _planted.Add(new Planted(CardIssue.Temperature, "temperature/difference", ["difference-as-point"], lead, true));
            }
            steps.Add($"{lead}{f:0}°F ({c:0} °C).");
        }
    }

    private static double Step(double printed, bool twentyFives) => printed != Math.Floor(printed) ? 0.1 : twentyFives && printed % 25 == 0 ? 25 : printed % 10 == 0 ? 10 : printed % 5 == 0 ? 5 : 1;

    private void Powders(List<string> steps)
    {
        if (_random.NextDouble() > 0.15)
            return;
        (string text, string wrong, string[] causes) = Pick<(string, string, string[])>(
        [
            ("Make up 1 part egg white powder with 7 parts water by weight.", "Make up 7 parts egg white powder with 1 part water by weight.", ["columns-swapped"]),
            ("For dried whites: 2 tsp egg white powder + 2 Tbsp water for each white.", "For dried whites: 2 Tbsp egg white powder + 2 Tbsp water for each white.", ["spoon-swap"]),
            ("Dissolve 12 g dried egg white in 88 g water.", "Dissolve 12 g dried egg white in 18 g water.", ["unexplained"]),
            ("Use 1 part dried egg white to 7 parts water.", "Use 1 part dried egg white to 3 parts water.", ["unexplained"]),
        ]);
        if (Chance(0.5))
        {
            steps.Add(wrong);
            _planted.Add(new Planted(CardIssue.PowderRatio, "powder-ratio", causes, "powder", true));
        }
        else
        {
            steps.Add(text);
        }
    }

    // ---- labels ----

    private void NutritionLine(List<Line> lines, double portion, List<string> labels, out Dictionary<string, string> members)
    {
        members = [];
        if (portion <= 15 || _random.NextDouble() > 0.5 || _planted.Exists(planted => planted.Issue is CardIssue.Measures or CardIssue.Portions or CardIssue.Yield))
            return;
        double total = lines.Sum(line => line.PrintedGrams);
        double Of(params Constituent[] parts) => lines.Sum(line => line.PrintedGrams * parts.Sum(part => line.Food.Composition[part])) / total * portion;
        double fat = Of(Constituent.Fat), protein = Of(Constituent.Protein);
        double water = Of(Constituent.Water), ash = Of(Constituent.Salt, Constituent.OtherAsh), alcohol = Of(Constituent.Alcohol);
        double carbohydrate = portion - water - fat - protein - ash - alcohol;
        int pf = (int)Math.Round(fat), pp = (int)Math.Round(protein), pc = (int)Math.Round(carbohydrate);
        double energy = 9 * pf + 4 * pp + 4 * pc;
        int kcal = (int)(Math.Round(energy / 5) * 5), kj = (int)Math.Round(kcal * 4.184);
        if (Chance(0.6))
        {
            switch (_random.Next(3))
            {
                case 0:
                    kcal = Pick([kcal * 2, kcal * 10, kcal / 2]);
                    kj = (int)Math.Round(kcal * 4.184);
                    _planted.Add(new Planted(CardIssue.Energy, "energy", ["halved-or-doubled", "decimal-shift"], "nutrition", kcal > 40));
                    break;
                case 1:
                    int wrong = pf > 4 ? pf * 3 : pf + 20;
                    pf = wrong;
                    _planted.Add(new Planted(CardIssue.Nutrition, "nutrition", ["unexplained", "halved-or-doubled", "digits-swapped", "decimal-shift"], "nutrition", true));
                    break;
                default:
                    kj = Pick([kcal * 2, (int)(kcal * 41.84)]);
                    _planted.Add(new Planted(CardIssue.Energy, "kilojoules", ["halved-or-doubled", "decimal-shift"], "nutrition", kcal > 30));
                    break;
            }
        }
        labels.Add($"Nutrition per serving: Energy {kcal} kcal / {kj} kJ; Fat {pf} g; Carbohydrate {pc} g; Protein {pp} g");
    }

    private void Allergens(List<Line> lines, List<string> labels)
    {
        Allergen[] has = [.. lines.SelectMany(line => line.Food.Allergens).Distinct()], often = [.. lines.SelectMany(line => line.Food.OftenContains).Distinct()];
        if (has.Length > 0 && _random.NextDouble() < 0.5)
        {
            List<string> words = [.. has.Where(allergen => allergen != Allergen.Gluten || !has.Contains(Allergen.Wheat)).Select(allergen => allergen.ToString().ToLowerInvariant())];
            if (Chance(0.4) && words.Count > 1)
            {
                string gone = Pick(words.ToArray());
                words.Remove(gone);
                _planted.Add(new Planted(CardIssue.AllergenMissing, "allergen-missing", [gone], "contains", true));
            }
            labels.Add(Pick(["Contains: ", "Allergens: ", "CONTAINS "]) + string.Join(", ", words) + ".");
        }
        if (_random.NextDouble() < 0.3)
        {
            (string word, Allergen[] means)[] claims = [("Egg-free.", [Allergen.Egg]), ("Dairy-free.", [Allergen.Milk]), ("Free from nuts.", [Allergen.Almond]), ("Contains no egg.", [Allergen.Egg]), ("Gluten-free.", [Allergen.Gluten, Allergen.Wheat]), ("Free from milk and egg.", [Allergen.Milk, Allergen.Egg])];
            (string word, Allergen[] means) = Pick(claims);
            bool contradicted = means.Any(has.Contains);
            if (contradicted && Chance(1))
            {
                labels.Add(word);
                _planted.Add(new Planted(CardIssue.AllergenContradicted, "allergen-contradicted", [.. means.Where(has.Contains).Select(allergen => allergen.ToString().ToLowerInvariant())], "claim", true));
            }
            else if (!contradicted && !means.Any(often.Contains))
            {
                labels.Add(word);
            }
        }
    }

    // ---- forms ----

    private string Written(string form, List<Line> lines, bool percents, bool sum, string total, string percentTotal, List<string> facts, List<string> steps, List<string> labels, Dictionary<string, string> members)
    {
        StringBuilder text = new();
        string title = Pick(["Fennmarsh icing", "Thursday class cake", "House filling", "Terrace biscuit"]);
        string Typed(Line line) => form == "mass-first" ? $"{line.Mass} ({line.Measure}) {line.Name}" : $"{line.Measure} ({line.Mass}) {line.Name}";
        switch (form)
        {
            case "json-ld" or "html":
                if (form == "json-ld")
                {
                    text.Append("<html><head><script type=\"application/ld+json\">");
                    text.Append(JsonSerializer.Serialize(new Dictionary<string, object>
                    {
                        ["@context"] = "https://schema.org", ["@type"] = "Recipe", ["name"] = title, ["recipeYield"] = facts.FirstOrDefault(fact => !fact.Contains("ltitude", StringComparison.Ordinal) && !fact.Contains("levation", StringComparison.Ordinal)) ?? "1",
                        ["recipeIngredient"] = lines.Select(Typed).ToArray(), ["recipeInstructions"] = steps.Concat(facts.Where(fact => fact.Contains("ltitude", StringComparison.Ordinal) || fact.Contains("levation", StringComparison.Ordinal))).Select(step => new Dictionary<string, string> { ["@type"] = "HowToStep", ["text"] = step }).ToArray(),
                        ["description"] = string.Join("\n", labels.Where(label => !label.StartsWith("Nutrition", StringComparison.Ordinal))),
                        ["nutrition"] = Nutrients(labels),
                    }));
                    text.Append("</script></head><body><p>x</p></body></html>");
                    break;
                }
                text.Append($"<html><body><h1>{title}</h1>\n");
                facts.ForEach(fact => text.Append($"<p>{fact}</p>\n"));
                text.Append("<h2>Ingredients</h2><ul>\n");
                lines.ForEach(line => text.Append($"<li>{Typed(line)}</li>\n"));
                text.Append("</ul><h2>Method</h2><ol>\n");
                steps.ForEach(step => text.Append($"<li>{step.Replace("°", "&deg;", StringComparison.Ordinal)}</li>\n"));
                text.Append("</ol>\n");
                labels.ForEach(label => text.Append($"<p>{label}</p>\n"));
                text.Append("</body></html>");
                break;
            default:
                text.Append(form == "markdown" ? $"# {title}\n\n" : title + "\n");
                facts.ForEach(fact => text.Append(fact).Append('\n'));
                text.Append('\n');
                if (form is "text" or "mass-first")
                    lines.ForEach(line => text.Append(form == "text" && _random.Next(3) == 0 ? "- " : "").Append(Typed(line)).Append('\n'));
                else
                    Table(form, lines, percents, sum, total, percentTotal, text);
                text.Append('\n').Append(form == "markdown" ? "## Method\n" : "Method\n");
                for (int i = 0; i < steps.Count; i++)
                    text.Append(i + 1).Append(". ").Append(steps[i]).Append('\n');
                text.Append('\n');
                labels.ForEach(label => text.Append(label).Append('\n'));
                break;
        }
        return text.ToString();
    }

    private static Dictionary<string, string> Nutrients(List<string> labels)
    {
        Dictionary<string, string> members = new() { ["@type"] = "NutritionInformation" };
        if (labels.Find(label => label.StartsWith("Nutrition", StringComparison.Ordinal)) is not string line)
            return members;
        string[] parts = line.Split([';', ':', '/']);
        // Energy in kcal only; the kilojoules have no member of their own.
        members["calories"] = parts[1].Replace("Energy", "", StringComparison.Ordinal).Trim().Replace("kcal", "calories", StringComparison.Ordinal);
        members["fatContent"] = parts[3].Replace("Fat", "", StringComparison.Ordinal).Trim();
        members["carbohydrateContent"] = parts[4].Replace("Carbohydrate", "", StringComparison.Ordinal).Trim();
        members["proteinContent"] = parts[5].Replace("Protein", "", StringComparison.Ordinal).Trim();
        return members;
    }

    private static void Table(string form, List<Line> lines, bool percents, bool sum, string total, string percentTotal, StringBuilder text)
    {
        List<string[]> rows = [percents ? ["Ingredient", "Measure", "Weight", "%"] : ["Ingredient", "Measure", "Weight"]];
        rows.AddRange(lines.Select(line => percents ? (string[])[line.Name, line.Measure, line.Mass, line.Percent] : [line.Name, line.Measure, line.Mass]));
        if (sum)
            rows.Add(percents ? ["Total", form == "columns" ? "-" : "", total, percentTotal] : ["Total", form == "columns" ? "-" : "", total]);
        int[] widths = [.. Enumerable.Range(0, rows[0].Length).Select(i => rows.Max(row => row[i].Length) + 3)];
        for (int i = 0; i < rows.Count; i++)
        {
            text.Append(form switch
            {
                "markdown" => "| " + string.Join(" | ", rows[i]) + " |",
                "tabs" => string.Join('\t', rows[i].Select(cell => cell.Length == 0 ? "-" : cell)),
                _ => string.Concat(rows[i].Select((cell, c) => cell.PadRight(widths[c]))).TrimEnd(),
            }).Append('\n');
            if (i == 0 && form == "markdown")
                text.Append('|').Append(string.Join('|', rows[0].Select(_ => "---"))).Append("|\n");
        }
    }

    // ---- chance ----

    private bool Chance(double share) => _random.NextDouble() < share * mistakes;

    private T Pick<T>(T[] all) => all[_random.Next(all.Length)];

    private double Gauss() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    private static string Plain(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    private string Slip(string number, out string cause)
    {
        double value = double.Parse(number, CultureInfo.InvariantCulture);
        string swapped = Swap(number);
        if (swapped != number && _random.Next(2) == 0)
        {
            cause = "digits-swapped";
            return swapped;
        }
        if (_random.Next(2) == 0)
        {
            cause = "halved-or-doubled";
            return (value * 2).ToString(number.Contains('.', StringComparison.Ordinal) ? "0.0" : "0", CultureInfo.InvariantCulture);
        }
        cause = "decimal-shift";
        return (value * 10).ToString(number.Contains('.', StringComparison.Ordinal) ? "0.0" : "0", CultureInfo.InvariantCulture);
    }

    private static string Swap(string number)
    {
        char[] digits = number.ToCharArray();
        for (int i = 0; i + 1 < digits.Length; i++)
        {
            if (char.IsAsciiDigit(digits[i]) && char.IsAsciiDigit(digits[i + 1]) && digits[i] != digits[i + 1] && !(i == 0 && digits[1] == '0'))
            {
                (digits[i], digits[i + 1]) = (digits[i + 1], digits[i]);
                return new string(digits);
            }
        }
        return number;
    }
}
