using Confectio.Formulas;
using Confectio.Ingredients;

namespace Confectio.Keeping;

/// <summary>The shares of a formula by which rules of keeping tell foods apart. Identifiers decide, never names.</summary>
internal sealed class FormulaContents
{
    public FormulaContents(Formula formula)
    {
        double total = formula.TotalGrams;
        foreach (FormulaLine line in formula.Lines)
        {
            double share = line.Grams.Likely / total;
            if (!(share > 0))
                continue;
            string id = line.Ingredient.Id;
            Sugars += share * FormulaPart.Sugars.FractionIn(line.Ingredient);
            bool Is(params ReadOnlySpan<string> starts)
            {
                foreach (string start in starts)
                {
                    if (id.StartsWith(start, StringComparison.Ordinal))
                        return true;
                }
                return false;
            }
            if (Is("cream-cheese"))
                CreamCheese += share;
            else if (Is("cream-") && !Is("cream-of-tartar"))
                Cream += share;
            if (Is("chocolate-", "couverture-"))
                Chocolate += share;
            if (Is("egg-white", "meringue-powder"))
                EggWhite += share;
            if (line.Ingredient.Allergens.Contains(Allergen.Egg))
            {
                Egg += share;
                if (!Is("egg-white-dried", "egg-whole-dried", "egg-yolk-dried", "meringue-powder"))
                    MoistEgg += share;
            }
            if (Is("butter-", "shortening-", "margarine-"))
                FatOfSpreads += share;
            if (Is("butter-"))
                Butter += share;
            if (Is("sugar-icing"))
                IcingSugar += share;
            if (Is("fondant-"))
                Fondant += share;
            if (Is("marzipan"))
                Marzipan += share;
            if (Is("flour-"))
                Flour += share;
            if (Is("juice-lemon", "juice-lime"))
                Lemon += share;
            if (Is("milk-") && !Is("milk-dry", "milk-condensed"))
                Milk += share;
            if (line.Ingredient.Allergens.Contains(Allergen.Milk))
                Dairy += share;
        }
    }

    public double CreamCheese { get; }

    public double Cream { get; }

    public double Chocolate { get; }

    public double EggWhite { get; }

    /// <summary>Whatever has egg.</summary>
    public double Egg { get; }

    /// <summary>The same without what is dried.</summary>
    public double MoistEgg { get; }

    public double FatOfSpreads { get; }

    public double Butter { get; }

    public double IcingSugar { get; }

    public double Fondant { get; }

    public double Marzipan { get; }

    public double Flour { get; }

    public double Lemon { get; }

    public double Milk { get; }

    /// <summary>Whatever has milk.</summary>
    public double Dairy { get; }

    /// <summary>Sugars as such, of all ingredients.</summary>
    public double Sugars { get; }
}
