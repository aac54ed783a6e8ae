using Confectio.Ingredients;

namespace Confectio.Tests;

/// <summary>The types that a program can name. Extension members also have types that only compilers read, named with a bracket.</summary>
internal static class PublicTypes
{
    public static Type[] All { get; } = [.. typeof(Ingredient).Assembly.GetExportedTypes().Where(type => !type.FullName!.Contains('<'))];
}
