using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Text;

namespace Confectio.Icings;

/// <summary>Reads icings and bowls from the members of an order.</summary>
internal static class IcingReader
{
    // A shell is a part of an egg, and of no icing.
    private static readonly EggPart[] s_eaten = [EggPart.Whole, EggPart.White, EggPart.Yolk];

    public static Icing? Icing(JsonFields fields, IngredientTable ingredients)
    {
        string? name = fields.NeededText("name");
        Spread? density = Density(fields);
        Formula? formula = fields.Object("formula", document => FormulaJson.Read(document, ingredients));
        Icing? icing = fields.Make(() => Confectio.Icings.Icing.Of(name!, density!.Value, formula));
        // Read though there may be no icing: their own mistakes are told as well.
        if (fields.Has("whipped"))
            icing = fields.Object("whipped", whipped => Whipped(whipped, icing, ingredients));
        if (fields.Has("wholeEggs"))
            icing = fields.Object("wholeEggs", eggs => WholeEggs(eggs, icing));
        return icing;
    }

    public static MixerBowl? Bowl(JsonFields fields)
    {
        string? name = fields.Text("name");
        double? quarts = fields.Number("quarts"), litres = fields.Number("litres"), usable = fields.NeededNumber("usablePercent") / 100;
        if (fields.Has("quarts") == fields.Has("litres"))
            fields.Wrong(null, "one of quarts and litres is expected");
        return fields.Make(() =>
        {
            MixerBowl bowl = quarts is double stated
                ? MixerBowl.OfQuarts(stated, usable!.Value) : MixerBowl.Of(litres!.Value * 1000, usable!.Value);
            return name is null ? bowl : MixerBowl.Of(bowl.Millilitres, usable.Value, name);
        });
    }

    // In one of three ways.
    private static Spread? Density(JsonFields fields)
    {
        double? stated = fields.Number("gramsPerMillilitre"), low = fields.Number("lowGramsPerMillilitre"),
            high = fields.Number("highGramsPerMillilitre"),
            gravity = fields.Number("specificGravity"), airFree = fields.Number("airFreeGramsPerMillilitre"),
                overrun = fields.Number("overrunPercent");
        if (!fields.IsGood)
            return null;
        int ways = (stated is null ? 0 : 1) + (gravity is null ? 0 : 1) + (airFree is null && overrun is null ? 0 : 1);
        if (ways != 1 || airFree is null != overrun is null)
            fields.Wrong(null, "the density is expected in one way: gramsPerMillilitre, specificGravity, or airFreeGramsPerMillilitre with "
                + "overrunPercent");
        if ((low ?? high) is not null && stated is null)
            fields.Wrong(null, "lowGramsPerMillilitre and highGramsPerMillilitre belong to gramsPerMillilitre");
        try
        {
            double likely = stated ?? (gravity is double relative
                ? IcingDensity.FromSpecificGravity(relative) : IcingDensity.FromOverrun(airFree ?? 1, overrun ?? 0));
            return new Spread(low ?? likely, likely, high ?? likely);
        }
        catch (ArgumentException e)
        {
            fields.Refused(e);
            return null;
        }
    }

    // What is whipped before the rest comes in.
    private static Icing? Whipped(JsonFields fields, Icing? icing, IngredientTable ingredients)
    {
        double? rise = fields.NeededNumber("rise"), low = fields.Number("lowRise"), high = fields.Number("highRise");
        List<Ingredient> whipped = [];
        foreach ((string name, JsonFields at) in fields.Texts("ingredients", Formula.MaximumLines))
        {
            NameMatch match = ingredients.MatchName(name);
            if (match.Ingredient is Ingredient ingredient)
                whipped.Add(ingredient);
            else
                at.Wrong(null, FormulaLineReader.Unknown(match, "not an ingredient of this table", ingredients, at.WantsNearNames),
                    ProblemCodes.UnknownName);
        }
        return icing is null ? null : fields.Make(() =>
            icing.Whipping(new Spread(low ?? rise!.Value, rise!.Value, high ?? rise.Value), whipped));
    }

    private static Icing? WholeEggs(JsonFields fields, Icing? icing)
    {
        string? system = fields.NeededText("system"), size = fields.NeededText("size");
        EggPart part = fields.Word("part", EggPart.White, s_eaten);
        EggSize? eggs = null;
        EggSizeSystem? sizes = null;
        if (system is not null && !EggSizeSystem.TryGet(system, out sizes))
            fields.Wrong("system", $"{Excerpt.Of(system)} is not one of: {string.Join(", ", EggSizeSystem.All.Select(known => known.Key))}",
                ProblemCodes.UnknownName);
        else if (sizes is not null && size is not null && !sizes.TryGetSize(size, out eggs))
            fields.Wrong("size", $"{Excerpt.Of(size)} is not one of: {string.Join(", ", sizes.Sizes.Select(known => known.Key))}",
                ProblemCodes.UnknownName);
        return icing is null ? null : fields.Make(() => icing.InWholeEggs(eggs!, part));
    }
}
