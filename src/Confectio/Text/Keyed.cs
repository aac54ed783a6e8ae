using System.Runtime.CompilerServices;

namespace Confectio.Text;

/// <summary>Looks a thing up by its key or name: case, blanks around it, and blanks in place of hyphens do not matter.</summary>
internal static class Keyed
{
    /// <summary>The one whose key, or else whose name, is asked for; <see langword="null"/> where there is none.</summary>
    public static T? Find<T>(T[] all, string asked, Func<T, string> key, Func<T, string>? name = null,
        [CallerArgumentExpression(nameof(asked))] string parameter = "")
        where T : class
    {
        string plain = Plain(Guard.NotNull(asked, parameter).Trim());
        // A key is looked for first: it is nobody else's, which a name need not be.
        return Array.Find(all, known => IsAsked(key(known))) ?? (name is null ? null : Array.Find(all, known => IsAsked(name(known))));

        bool IsAsked(string word) => Plain(word).Equals(plain, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>The same, or an exception with the keys there are: there is no stage 'x'; the stages are: thread, soft-ball.</summary>
    public static T Get<T>(T[] all, string asked, string what, string those, Func<T, string> key, Func<T, string>? name = null,
        [CallerArgumentExpression(nameof(asked))] string parameter = "") where T : class =>
        Find(all, asked, key, name, parameter)
            ?? throw new ArgumentException($"There is no {what} {Excerpt.Of(asked)}; the {those} are: "
                + $"{string.Join(", ", all.Select(key))}.", parameter);

    private static string Plain(string word) => word.Replace(' ', '-');
}
