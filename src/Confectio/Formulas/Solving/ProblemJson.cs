using System.Text;
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

    /// <summary>Reads a problem, or all that is wrong with it.</summary>
    /// <param name="json">The text, at most 4 MiB of UTF-8.</param>
    /// <param name="ingredients">The table in which its ingredients are looked up.</param>
    /// <returns>
    /// The problem; or why it is none: it is not JSON, or not of this form or version, or names ingredients that are not in the table, or
    /// asks for what cannot be asked. Every mistake that can be told from the others has its line, column and path.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Reading<FormulaProblem> Read(string json, IngredientTable ingredients) =>
        Read(Encoding.UTF8.GetBytes(Guard.NotNull(json)), ingredients);

    /// <summary>Reads a problem in UTF-8.</summary>
    /// <inheritdoc cref="Read(string, IngredientTable)"/>
    public static Reading<FormulaProblem> Read(ReadOnlySpan<byte> json, IngredientTable ingredients)
    {
        Guard.NotNull(ingredients);
        return JsonGuard.Read(json, MostDepth, MaximumBytes, "a problem", fields => new ProblemReader(ingredients).Read(fields));
    }

    /// <summary>Reads a problem in UTF-8 to the end of a stream.</summary>
    /// <inheritdoc cref="Read(string, IngredientTable)"/>
    public static Reading<FormulaProblem> Read(Stream json, IngredientTable ingredients)
    {
        Guard.NotNull(ingredients);
        return JsonGuard.Read(json, MostDepth, MaximumBytes, "a problem", fields => new ProblemReader(ingredients).Read(fields));
    }

    /// <summary>Reads a problem that has to be right.</summary>
    /// <param name="json">The text, at most 4 MiB of UTF-8.</param>
    /// <param name="ingredients">The table in which its ingredients are looked up.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="FormatException">There are mistakes; the message names the first 20 with their places.</exception>
    public static FormulaProblem Parse(string json, IngredientTable ingredients) => Read(json, ingredients).OrThrow();
}
