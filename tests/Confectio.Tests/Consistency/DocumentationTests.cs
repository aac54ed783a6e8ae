using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Consistency;

/// <summary>Who reads about a public member is sent only where he can go.</summary>
public sealed partial class DocumentationTests
{
    private static readonly Assembly s_library = typeof(Ingredient).Assembly;

    private static readonly HashSet<string> s_types = [.. s_library.GetTypes().Select(NameOf)];

    private static readonly HashSet<string> s_public = [.. s_library.GetExportedTypes().Select(NameOf)];

    // Which overload it is does not matter here.
    private static readonly HashSet<string> s_members = [.. s_library.GetExportedTypes().SelectMany(type =>
        type.GetMembers(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
            .Select(member => $"{NameOf(type)}.{member.Name.Replace(".ctor", "#ctor", StringComparison.Ordinal)}"))];

    [Fact]
    public void APublicMemberPointsAtNoTypeThatIsInternal()
    {
        XElement[] members = [.. XDocument.Load(Path.ChangeExtension(s_library.Location, ".xml")).Descendants("member")];
        string[] astray = [.. members.Select(member => (Name: (string)member.Attribute("name")!, Text: member))
            .Where(member => s_public.Contains(Plain(member.Name)) || s_members.Contains(Plain(member.Name)))
            .SelectMany(member => member.Text.Descendants().Attributes("cref").Where(cref => IsInternal(cref.Value))
                .Select(cref => $"{member.Name} points at {cref.Value}"))];
        Assert.True(members.Length > 2000, "the documentation was not read");
        Assert.Empty(astray);
    }

    private static bool IsInternal(string cref)
    {
        string plain = Plain(cref), type = s_types.Contains(plain) ? plain : plain[..Math.Max(0, plain.LastIndexOf('.'))];
        return s_types.Contains(type) && !s_public.Contains(type);
    }

    private static string NameOf(Type type) => type.FullName!.Replace('+', '.');

    // The name without its kind, its parameters and how many types a method takes.
    private static string Plain(string name) => Tail().Replace(name[2..], "");

    [GeneratedRegex(@"\(.*|``\d+$")]
    private static partial Regex Tail();
}
