using System.Globalization;
using System.Text;
using Confectio.Cakes;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Icings;

/// <summary>
/// A cake with its icings in JSON, a form of our own, version 1; the schema stands in docs/schema/order.json. Every length is text with its unit, such as
/// <c>8 in</c>, <c>20.5 cm</c> or <c>6 mm</c>, so that none is taken for the other.
/// </summary>
public static class IcingOrderJson
{
    /// <summary>The version that is read.</summary>
    public const int Version = 1;

    /// <summary>The largest text that is read, in bytes of UTF-8.</summary>
    public const int MostBytes = 4 << 20;

    /// <summary>The most icings.</summary>
    public const int MostIcings = 100;

    /// <summary>The most bowls.</summary>
    public const int MostBowls = 20;

    private const int MostDepth = 16;
    private const string What = "a cake with its icings";

    /// <summary>Reads an order.</summary>
    /// <param name="json">The text, at most 4 MiB of UTF-8.</param>
    /// <param name="ingredients">The table in which the ingredients of formulas are looked up.</param>
    /// <returns>The order.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="FormatException">
    /// It is not JSON, or not of this form or version, or no cake can be made of it, or an icing that the cake asks for is missing, or the cake would take more than
    /// <see cref="Cake.MostSteps"/> of work. The message names every mistake that can be told from the others, at most 20, with its line, column and path.
    /// </exception>
    public static IcingOrder Read(string json, IngredientTable ingredients) => Read(Encoding.UTF8.GetBytes(Guard.NotNull(json)), ingredients);

    /// <summary>Reads an order in UTF-8.</summary>
    /// <inheritdoc cref="Read(string, IngredientTable)"/>
    public static IcingOrder Read(ReadOnlySpan<byte> json, IngredientTable ingredients)
    {
        Guard.NotNull(ingredients);
        return JsonGuard.Read(json, MostDepth, MostBytes, What, OrderJsonContext.Default.OrderDocument, Expected,
            (OrderDocument document, List<(string Path, string Message)> mistakes) => Build(document, ingredients, mistakes));
    }

    private static IcingOrder? Build(OrderDocument document, IngredientTable ingredients, List<(string Path, string Message)> mistakes)
    {
        DocumentFields fields = new("$", mistakes);
        if (document.ConfectioOrder != Version)
        {
            if (document.ConfectioOrder is int other)
                fields.Wrong("confectioOrder", string.Create(CultureInfo.InvariantCulture, $"version {other} was read and {Version} is expected"));
            else
                fields.Wrong(string.Create(CultureInfo.InvariantCulture, $"confectioOrder is missing; an object that begins with {{\"confectioOrder\": {Version} is expected"));
            return null;
        }
        Limit(document.Tiers, "tiers", Cake.MostTiers);
        Limit(document.Cupcakes, "cupcakes", Cake.MostCupcakeKinds);
        Limit(document.Icings, "icings", MostIcings);
        Limit(document.Bowls, "bowls", MostBowls);
        if (mistakes.Count > 0)
            return null;
        // Before any plan is made of them.
        long corners = document.Tiers?.Sum(tier => tier is null ? 0 : TierReader.Corners(tier)) ?? 0;
        if (corners > Cake.MostCorners)
        {
            fields.Wrong("tiers", string.Create(CultureInfo.InvariantCulture, $"their plans have {corners} corners together; at most {Cake.MostCorners} are expected"));
            return null;
        }
        void Limit<T>(List<T>? list, string member, int most)
        {
            if (list?.Count > most)
                fields.Wrong(member, string.Create(CultureInfo.InvariantCulture, $"there are {list.Count}; at most {most} are expected"));
        }

        List<CakeTier> tiers = fields.List(document.Tiers, "tiers", TierReader.Tier);
        List<Cupcakes> cupcakes = fields.List(document.Cupcakes, "cupcakes", TierReader.Cupcakes);
        List<Icing> icings = fields.List(document.Icings, "icings", (icing, at) => IcingReader.Icing(icing, at, ingredients));
        List<MixerBowl> bowls = fields.List(document.Bowls, "bowls", IcingReader.Bowl);
        double waste = (document.WastePercent ?? 0) / 100;
        if (!(waste is >= 0 and <= 0.9))
            fields.Wrong("wastePercent", string.Create(CultureInfo.InvariantCulture, $"{document.WastePercent} was read and a number from 0 to 90 is expected"));
        HiddenTop hidden = fields.Word(document.HiddenTops, "hiddenTops", HiddenTop.Coated);
        if (fields.Make(0, () => Cake.Of(document.Name ?? "", tiers, cupcakes, hidden)) is not Cake cake)
            return null;
        // One pass without a bowl finds an icing that is missing or stands twice, once for all bowls.
        fields.Make(0, () => IcingPlan.Of(cake, icings, waste));
        return new IcingOrder(cake, [.. icings], waste, [.. bowls]);
    }

    private static string Expected(string path) => path[(path.LastIndexOf('.') + 1)..] switch
    {
        "confectioOrder" => string.Create(CultureInfo.InvariantCulture, $"the version is expected, which is {Version}"),
        "sides" or "lobes" or "layers" or "count" or "drips" => "a whole number is expected",
        "wastePercent" or "turnedDegrees" or "shellsPerWidth" or "turns" or "gramsPerMillilitre" or "lowGramsPerMillilitre" or "highGramsPerMillilitre" or "specificGravity"
            or "airFreeGramsPerMillilitre" or "overrunPercent" or "rise" or "lowRise" or "highRise" or "quarts" or "litres" or "usablePercent" => "a number is expected",
        "raised" => "true or false is expected",
        "tiers" or "cupcakes" or "icings" or "bowls" or "fillings" or "coats" or "borders" or "pieces" or "points" or "ingredients" => "an array is expected",
        "filling" or "drip" or "swirl" or "outline" or "formula" or "whipped" or "wholeEggs" => "an object is expected",
        "shape" or "height" or "diameter" or "side" or "width" or "length" or "cornerRadius" or "acrossFlats" or "acrossCorners" or "lobeWidth" or "bottomDiameter" or "topDiameter"
            or "bottomSide" or "topSide" or "flatDiameter" or "ballRadius" or "outerDiameter" or "innerDiameter" or "right" or "back" or "thickness" or "damWidth" or "beadWidth" or "pool"
            or "dripWidth" or "dripLength" or "dome" => "a text is expected, such as \"8 in\" or \"20 cm\"",
        "icing" or "damIcing" or "edge" or "place" or "kind" or "unit" or "hiddenTops" or "size" or "part" => "a text is expected",
        [.., >= '0' and <= '9', ']'] => "an element of the array is not what it should be",
        _ => Formulas.FormulaJson.Expected(path),
    };
}
