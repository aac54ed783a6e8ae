using System.Globalization;
using Confectio.EggWhites;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Icings;

/// <summary>Makes icings and bowls of what stands in an order.</summary>
internal static class IcingReader
{
    public static Icing? Icing(OrderDocument.IcingDocument document, DocumentFields fields, IngredientTable ingredients)
    {
        int before = fields.Mistakes;
        string name = fields.Text(document.Name, "name");
        Spread? density = Density(document, fields);
        Formula? formula = document.Formula is null ? null : FormulaJson.Build(document.Formula, fields.At + ".formula", ingredients, fields.All);
        Icing? icing = fields.Make(before, () => Confectio.Icings.Icing.Of(name, density!.Value, formula));
        if (document.Whipped is not null)
            icing = Whipped(document.Whipped, icing, fields.In("whipped"), ingredients);
        return document.WholeEggs is null ? icing : WholeEggs(document.WholeEggs, icing, fields.In("wholeEggs"));
    }

    public static MixerBowl? Bowl(OrderDocument.BowlDocument document, DocumentFields fields)
    {
        int before = fields.Mistakes;
        if (document.Quarts is null == document.Litres is null)
            fields.Wrong("one of quarts and litres is expected");
        double usable = fields.Number(document.UsablePercent, "usablePercent", 50) / 100;
        return fields.Make(before, () =>
        {
            MixerBowl bowl = document.Quarts is double quarts ? MixerBowl.OfQuarts(quarts, usable) : MixerBowl.Of(document.Litres!.Value * 1000, usable);
            return document.Name is null ? bowl : MixerBowl.Of(bowl.Millilitres, usable, document.Name);
        });
    }

    private static Spread? Density(OrderDocument.IcingDocument document, DocumentFields fields)
    {
        bool overrun = document.AirFreeGramsPerMillilitre is not null || document.OverrunPercent is not null;
        int ways = (document.GramsPerMillilitre is null ? 0 : 1) + (document.SpecificGravity is null ? 0 : 1) + (overrun ? 1 : 0);
        if (ways != 1 || (overrun && (document.AirFreeGramsPerMillilitre is null || document.OverrunPercent is null)))
            fields.Wrong("the density is expected in one way: gramsPerMillilitre, specificGravity, or airFreeGramsPerMillilitre with overrunPercent");
        if ((document.LowGramsPerMillilitre ?? document.HighGramsPerMillilitre) is not null && document.GramsPerMillilitre is null)
            fields.Wrong("lowGramsPerMillilitre and highGramsPerMillilitre belong to gramsPerMillilitre");
        try
        {
            double likely = document.GramsPerMillilitre ?? (document.SpecificGravity is double gravity ? IcingDensity.FromSpecificGravity(gravity)
                : IcingDensity.FromOverrun(document.AirFreeGramsPerMillilitre ?? 1, document.OverrunPercent ?? 0));
            return new Spread(document.LowGramsPerMillilitre ?? likely, likely, document.HighGramsPerMillilitre ?? likely);
        }
        catch (ArgumentException e)
        {
            fields.Wrong(FormulaLineReader.Reason(e));
            return null;
        }
    }

    private static Icing? Whipped(OrderDocument.WhippedDocument document, Icing? icing, DocumentFields fields, IngredientTable ingredients)
    {
        int before = fields.Mistakes;
        double rise = fields.Number(document.Rise, "rise", 1);
        List<Ingredient> whipped = [];
        if (document.Ingredients?.Count > Formula.MostLines)
            fields.Wrong("ingredients", string.Create(CultureInfo.InvariantCulture, $"there are {document.Ingredients.Count}; at most {Formula.MostLines} are expected"));
        for (int i = 0; i < document.Ingredients?.Count && i < Formula.MostLines; i++)
        {
            string name = document.Ingredients[i] ?? "";
            if (ingredients.TryGet(name, out Ingredient? ingredient))
                whipped.Add(ingredient);
            else
                fields.In("ingredients", i).Wrong(FormulaLineReader.Unknown(name, "not an ingredient of this table", ingredients, fields.Mistakes));
        }
        return icing is null ? null : fields.Make(before, () => icing.Whipping(new Spread(document.LowRise ?? rise, rise, document.HighRise ?? rise), whipped));
    }

    private static Icing? WholeEggs(OrderDocument.WholeEggsDocument document, Icing? icing, DocumentFields fields)
    {
        int before = fields.Mistakes;
        EggSize? size = null;
        if (!EggSizeSystem.TryGet(fields.Text(document.System, "system"), out EggSizeSystem? system))
            fields.Wrong("system", $"{Excerpt.Of(document.System ?? "")} is not one of: {string.Join(", ", EggSizeSystem.All.Select(known => known.Key))}");
        else if (!system.TryGetSize(fields.Text(document.Size, "size"), out size))
            fields.Wrong("size", $"{Excerpt.Of(document.Size ?? "")} is not one of: {string.Join(", ", system.Sizes.Select(known => known.Key))}");
        EggPart part = fields.Word(document.Part, "part", EggPart.White);
        return icing is null ? null : fields.Make(before, () => icing.InWholeEggs(size!, part));
    }
}
