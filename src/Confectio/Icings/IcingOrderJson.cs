using System.Globalization;
using Confectio.Cakes;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Icings;

/// <summary>
/// A cake with its icings in JSON, a form of our own, version 1; the schema stands in docs/schema/order.json. Every length is text with its
/// unit, such as <c>8 in</c>, <c>20.5 cm</c> or <c>6 mm</c>, so that none is taken for the other.
/// </summary>
internal static class IcingOrderJson
{
    /// <summary>The version that is read.</summary>
    public const int Version = CakeReader.Version;

    /// <summary>The largest text that is read, in bytes of UTF-8.</summary>
    public const int MaximumBytes = CakeReader.MaximumBytes;

    /// <summary>The most icings.</summary>
    public const int MaximumIcings = 100;

    /// <summary>The most bowls.</summary>
    public const int MaximumBowls = 20;

    /// <summary>What <see cref="IcingOrder.ReadJson(ReadOnlySpan{byte}, IngredientTable)"/> says.</summary>
    public static Reading<IcingOrder> Read(ReadOnlySpan<byte> json, IngredientTable ingredients)
    {
        Guard.NotNull(ingredients);
        return JsonGuard.Read(json, CakeReader.MostDepth, MaximumBytes, "a cake with its icings", fields => Read(fields, ingredients));
    }

    internal static IcingOrder? Read(JsonFields fields, IngredientTable ingredients)
    {
        if (!fields.IsVersion("confectioOrder", Version))
            return null;
        List<Icing> icings = fields.List("icings", MaximumIcings, icing => IcingReader.Icing(icing, ingredients));
        List<MixerBowl> bowls = fields.List("bowls", MaximumBowls, IcingReader.Bowl);
        double? percent = fields.Number("wastePercent");
        double waste = (percent ?? 0) / 100;
        if (!(waste is >= 0 and <= 0.9))
            fields.Wrong("wastePercent", string.Create(CultureInfo.InvariantCulture,
                $"{percent} was read and a number from 0 to 90 is expected"));
        if (CakeReader.Read(fields) is not Cake cake)
            return null;
        // One pass without a bowl finds an icing that is missing or stands twice, once for all bowls.
        fields.Make(() => IcingPlan.Of(cake, icings, waste));
        return new IcingOrder(cake, [.. icings], waste, [.. bowls]);
    }
}
