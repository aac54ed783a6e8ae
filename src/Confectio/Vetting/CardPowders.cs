using System.Globalization;
using Confectio.Cards;
using Confectio.Conversions;
using Confectio.Eggs;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Vetting;

/// <summary>Holds dried egg and water against the solids of the egg they stand for.</summary>
internal static class CardPowders
{
    /// <summary>How far the solids may be from those of egg: kitchen rules and makers differ by as much. A judgement.</summary>
    private const double Reach = 0.22;

    public static void Judge(CardJudgement judgement)
    {
        if (judgement.Card.PowderRatios.Count == 0)
            return;
        if (EggForms.MissingFrom(judgement.Card.Ingredients) is not null)
        {
            judgement.NotJudged.Add("how dried egg is made up: the table has no forms of egg");
            return;
        }
        EggForms forms = EggForms.Of(judgement.Card.Ingredients);
        foreach (PowderRatio ratio in judgement.Card.PowderRatios)
        {
            if (ratio.Of.Contains("meringue", StringComparison.Ordinal))
            {
                judgement.NotJudged.Add("how meringue powder is made up: makers put sugar and starch in it, and each has a rule of its own");
                continue;
            }
            EggPart part = ratio.Of.Contains("yolk", StringComparison.Ordinal) ? EggPart.Yolk
                : ratio.Of.Contains("whole", StringComparison.Ordinal) || ratio.Of is "egg powder" or "dried egg" or "dried eggs" or "powdered egg" or "powdered eggs" ? EggPart.Whole : EggPart.White;
            EggForm? dry = forms.All.FirstOrDefault(form => form.IsDry && form.Part == part), fresh = forms.All.FirstOrDefault(form => !form.IsDry && form.Part == part);
            if (dry is not null && fresh is not null)
                Judge(judgement, ratio, part == EggPart.White ? forms.DriedWhite : dry, fresh, forms);
        }
    }

    private static void Judge(CardJudgement judgement, PowderRatio ratio, EggForm dry, EggForm fresh, EggForms forms)
    {
        double powder, water, spread = 0;
        if (ratio.Powder is Amount dryAmount)
        {
            try
            {
                ConvertedMass dryMass = Conversion.Of(dry.Ingredient, judgement.System).ToMass(dryAmount), wetMass = Conversion.Of(forms.Needed("water"), judgement.System).ToMass(ratio.Water!.Value);
                (powder, water) = (dryMass.Grams.Likely, wetMass.Grams.Likely);
                spread = powder > 0 ? (dryMass.Grams.High - dryMass.Grams.Low) / 2 / powder : 0;
            }
            catch (ArgumentException)
            {
                judgement.NotJudged.Add($"how dried egg is made up, {ratio}: it cannot be weighed");
                return;
            }
        }
        else
        {
            (powder, water) = (ratio.PowderParts!.Value, ratio.WaterParts!.Value);
        }
        double solids = powder * dry.SolidsFraction.Likely / (powder + water), low = fresh.SolidsFraction.Likely, high = low;
        foreach (EggForm form in forms.All.Where(form => !form.IsDry && form.Part == fresh.Part))
        {
            low = Math.Min(low, form.EggSolidsFraction);
            high = Math.Max(high, form.EggSolidsFraction);
        }
        bool thin = solids < low * (1 - Reach) * (1 - spread), thick = solids > high * (1 + Reach) * (1 + spread);
        double whole = powder + water;
        // A large white is some 30 g; a rule of spoons for one makes about as much.
        bool amountOff = ratio.IsForOneWhite && whole is < 18 or > 50;
        if (!thin && !thick && !amountOff)
            return;
        double swapped = water * dry.SolidsFraction.Likely / (powder + water), tripled = powder * dry.SolidsFraction.Likely * 3 / (powder * 3 + water), third = powder * dry.SolidsFraction.Likely / (powder + 3 * water);
        bool Good(double share) => share >= low * (1 - Reach) && share <= high * (1 + Reach);
        string cause = thin || thick ? Good(swapped) ? "columns-swapped" : ratio.Powder is not null && (Good(tripled) || Good(third) || Good(powder / 3 * dry.SolidsFraction.Likely / (powder / 3 + water))
            || Good(powder * dry.SolidsFraction.Likely / (powder + water / 3))) ? "spoon-swap" : "unexplained" : "unexplained";
        string words = cause == "columns-swapped" ? "powder and water changed places" : CardSlips.Words(cause);
        judgement.Findings.Add(new CardFinding(CardIssue.PowderRatio, FindingSeverity.Error, ratio.Place, ratio.ToString(),
            string.Create(CultureInfo.InvariantCulture, $"{100 * low:0.#} to {100 * high:0.#} % solids"),
            thin || thick ? string.Create(CultureInfo.InvariantCulture, $"{ratio} of {dry.Ingredient.Name} and water has {100 * solids:0.#} % solids, and {fresh.Ingredient.Name} has {100 * fresh.SolidsFraction.Likely:0.#} %; {words}")
                : string.Create(CultureInfo.InvariantCulture, $"{ratio} makes {whole:0} g, and the white of a large egg is about 30 g"), cause));
    }
}
