using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Formulas.Solving;

/// <summary>
/// Problems in JSON, a form of our own, version 1: the ingredients with their base masses and limits, targets and requirements in
/// per cent, ratios, boil-off and what is preferred. The schema stands in docs/schema/problem.json.
/// </summary>
internal static class ProblemJson
{
    /// <summary>The version that is read.</summary>
    public const int Version = 1;

    /// <summary>The largest text that is read, in bytes of UTF-8.</summary>
    public const int MaximumBytes = 4 << 20;

    private const int MostDepth = 16;

    /// <summary>What <see cref="FormulaProblem.ReadJson(ReadOnlySpan{byte}, IngredientTable)"/> says.</summary>
    public static Reading<FormulaProblem> Read(ReadOnlySpan<byte> json, IngredientTable ingredients,
        IReadOnlyList<FormulaPropertyKind> properties)
    {
        Guard.NotNull(ingredients);
        Guard.NotNull(properties);
        return JsonGuard.Read(json, MostDepth, MaximumBytes, "a problem", fields => new ProblemReader(ingredients, properties).Read(fields));
    }
}
