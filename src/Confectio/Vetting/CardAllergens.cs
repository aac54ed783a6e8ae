using Confectio.Cards;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>Holds what a card says of allergens against its ingredients. Nothing here ever calls a card safe.</summary>
internal static class CardAllergens
{
    public static void Judge(CardJudgement judgement)
    {
        List<(Allergen Allergen, PrintedLine Line)> has = [], often = [];
        foreach (PrintedLine line in judgement.Card.Lines)
        {
            if (line.Phrase.Ingredient is not Ingredient food)
                continue;
            has.AddRange(food.Allergens.Select(allergen => (allergen, line)));
            often.AddRange(food.OftenContains.Select(allergen => (allergen, line)));
        }
        AllergenClaim[] contains = [.. judgement.Card.AllergenClaims.Where(claim => !claim.IsFreeFrom)];
        foreach (AllergenClaim claim in judgement.Card.AllergenClaims.Where(claim => claim.IsFreeFrom))
            Contradicted(judgement, claim, has, often);
        if (contains.Length > 0)
        {
            Allergen[] said = [.. contains.SelectMany(claim => claim.Allergens)];
            bool nuts = contains.Any(claim => claim.NamesNuts);
            foreach (IGrouping<Allergen, (Allergen, PrintedLine Line)> missing in has.Where(one => !IsSaid(one.Allergen, said, nuts)).GroupBy(one => one.Allergen))
            {
                // Wheat is told by gluten, and gluten by wheat: one of the two is missing only once.
                if (missing.Key == Allergen.Gluten && has.Any(one => one.Allergen == Allergen.Wheat))
                    continue;
                string foods = string.Join(", ", missing.Select(one => one.Line.Phrase.Ingredient!.Name).Distinct());
                judgement.Findings.Add(new CardFinding(CardIssue.AllergenMissing, FindingSeverity.Error, contains[0].Place, contains[0].Text, Word(missing.Key),
                    $"the card says {Excerpt.Of(contains[0].Text)}, and {foods} {(foods.Contains(',') ? "have" : "has")} {Word(missing.Key)}, which is not in the list", Word(missing.Key)));
            }
            string[] perhaps = [.. often.Where(one => !IsSaid(one.Allergen, said, nuts) && !has.Any(known => known.Allergen == one.Allergen)).Select(one => $"{Word(one.Allergen)} of {one.Line.Phrase.Ingredient!.Name}").Distinct()];
            if (perhaps.Length > 0)
                judgement.NotJudged.Add($"what many makes have and others not: {string.Join(", ", perhaps)}; read the label of the pack");
        }
        else if (has.Count > 0 && !judgement.Card.AllergenClaims.Any(claim => claim.IsFreeFrom))
        {
            judgement.NotJudged.Add($"the card lists no allergens; its ingredients have {string.Join(", ", has.Select(one => Word(one.Allergen)).Distinct())}, and makers may have more: read the labels");
        }
        if (judgement.Card.AllergenClaims.Count > 0 && judgement.Card.Lines.Any(line => line.Phrase.Ingredient is null || !line.Phrase.Ingredient.AllergensAreStated))
            judgement.NotJudged.Add("the allergens of lines whose ingredient is not known, or whose allergens nobody stated");
    }

    private static void Contradicted(CardJudgement judgement, AllergenClaim claim, List<(Allergen Allergen, PrintedLine Line)> has, List<(Allergen Allergen, PrintedLine Line)> often)
    {
        foreach (Allergen allergen in claim.Allergens)
        {
            string[] foods = [.. has.Where(one => one.Allergen == allergen).Select(one => one.Line.Phrase.Ingredient!.Name).Distinct()];
            // "Gluten-free" over wheat is told once.
            if (foods.Length > 0 && !(allergen == Allergen.Wheat && claim.Allergens.Contains(Allergen.Gluten) && has.Any(one => one.Allergen == Allergen.Gluten)))
            {
                judgement.Findings.Add(new CardFinding(CardIssue.AllergenContradicted, FindingSeverity.Error, claim.Place, claim.Text, "",
                    $"the card says {Excerpt.Of(claim.Text)}, and {string.Join(", ", foods)} {(foods.Length > 1 ? "have" : "has")} {Word(allergen)}", Word(allergen)));
            }
            string[] perhaps = [.. often.Where(one => one.Allergen == allergen && !foods.Contains(one.Line.Phrase.Ingredient!.Name)).Select(one => one.Line.Phrase.Ingredient!.Name).Distinct()];
            if (perhaps.Length > 0 && foods.Length == 0)
            {
                judgement.Findings.Add(new CardFinding(CardIssue.AllergenContradicted, FindingSeverity.Note, claim.Place, claim.Text, "",
                    $"the card says {Excerpt.Of(claim.Text)}, and many makes of {string.Join(", ", perhaps)} have {Word(allergen)}: only the label of the pack says", Word(allergen)));
            }
        }
    }

    private static bool IsSaid(Allergen allergen, Allergen[] said, bool nuts) => said.Contains(allergen) || (nuts && AllergenWord.IsTreeNut(allergen))
        || (allergen == Allergen.Gluten && said.Contains(Allergen.Wheat)) || (allergen == Allergen.Wheat && said.Contains(Allergen.Gluten));

    private static string Word(Allergen allergen) => EnumWords.Of(allergen, ' ');
}
