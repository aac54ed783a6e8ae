using System.Text;
using Confectio.Cakes;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Icings;

/// <summary>A cake with its icings, the waste and the bowls at hand: what <see cref="ReadJson(string, IngredientTable)"/> reads.</summary>
public sealed class IcingOrder
{
    internal IcingOrder(Cake cake, Icing[] icings, double wasteFraction, MixerBowl[] bowls)
    {
        Cake = cake;
        Icings = icings;
        WasteFraction = wasteFraction;
        Bowls = bowls;
    }

    /// <summary>The cake.</summary>
    public Cake Cake { get; }

    /// <summary>The icings; every one that the cake asks for.</summary>
    public IReadOnlyList<Icing> Icings { get; }

    /// <summary>The share of what is taken that is lost.</summary>
    public double WasteFraction { get; }

    /// <summary>The bowls at hand; may be none.</summary>
    public IReadOnlyList<MixerBowl> Bowls { get; }

    /// <summary>The plan for one bowl, or for none.</summary>
    /// <param name="bowl">The bowl; without one each icing is one batch.</param>
    /// <returns>The plan.</returns>
    /// <exception cref="ArgumentException">The bowl is too small: see <see cref="IcingPlan.Of"/>.</exception>
    public IcingPlan Plan(MixerBowl? bowl = null) => IcingPlan.Of(Cake, Icings, WasteFraction, bowl);

    /// <summary>The cake, such as <c>garden wedding, 3 tiers</c>.</summary>
    public override string ToString() => Cake.ToString();

    /// <summary>Reads a cake with its icings in JSON, a form of our own, version 1; the schema stands in docs/schema/order.json.</summary>
    /// <param name="json">The text, at most 4 MiB of UTF-8.</param>
    /// <param name="ingredients">The table in which its ingredients are looked up.</param>
    /// <returns>
    /// The order; or why it is none: it is not JSON, or not of this form or version, or names ingredients that are not in the table, or no
    /// cake can be made of it, or an icing that the cake asks for is missing. Every mistake that can be told from the others has its line,
    /// column and path.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Reading<IcingOrder> ReadJson(string json, IngredientTable ingredients) =>
        ReadJson(Encoding.UTF8.GetBytes(Guard.NotNull(json)), ingredients);

    /// <summary>Reads a cake with its icings in JSON from UTF-8.</summary>
    /// <inheritdoc cref="ReadJson(string, IngredientTable)"/>
    public static Reading<IcingOrder> ReadJson(ReadOnlySpan<byte> json, IngredientTable ingredients) =>
        IcingOrderJson.Read(json, ingredients);

    /// <summary>Reads a cake with its icings in JSON from UTF-8, to the end of a stream.</summary>
    /// <inheritdoc cref="ReadJson(string, IngredientTable)"/>
    public static Reading<IcingOrder> ReadJson(Stream json, IngredientTable ingredients) =>
        ReadJson(JsonGuard.Bytes(json, IcingOrderJson.MaximumBytes), ingredients);

    /// <summary>An order from JSON that must be right; see <see cref="ReadJson(string, IngredientTable)"/>.</summary>
    /// <param name="json">The text, at most 4 MiB of UTF-8.</param>
    /// <param name="ingredients">The table in which its ingredients are looked up.</param>
    /// <returns>The order.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="FormatException">There are mistakes; the message names the first 20 with their places.</exception>
    public static IcingOrder ParseJson(string json, IngredientTable ingredients) => ReadJson(json, ingredients).OrThrow();
}
