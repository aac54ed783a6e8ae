using System.Diagnostics.CodeAnalysis;
using Confectio.Eggs;
using Confectio.Ingredients;

namespace Confectio.Tests.Eggs;

/// <summary>The forms of egg of the built-in table.</summary>
internal static class Forms
{
    private static readonly EggForms s_forms = EggForms.Of(IngredientTable.BuiltIn);

    public static IReadOnlyList<EggForm> All => s_forms.All;

    public static EggForm FreshWhite => s_forms.FreshWhite;

    public static EggForm PasteurisedWhite => s_forms.PasteurisedWhite;

    public static EggForm DriedWhite => s_forms.DriedWhite;

    public static EggForm Get(string name) => s_forms.Get(name);

    public static bool TryGet(string name, [NotNullWhen(true)] out EggForm? form) => s_forms.TryGet(name, out form);
}
