using System.Globalization;
using Confectio.Cakes;
using Confectio.Formulas;
using Confectio.Text;

namespace Confectio.Icings;

/// <summary>Reads the members of one object of an order, and notes what is wrong with them; what was noted gets a harmless value.</summary>
internal readonly struct DocumentFields(string at, List<(string Path, string Message)> mistakes)
{
    private readonly string _at = at;
    private readonly List<(string Path, string Message)> _mistakes = mistakes;

    /// <summary>The path of the object, such as <c>$.tiers[1]</c>.</summary>
    public string At => _at;

    public List<(string Path, string Message)> All => _mistakes;

    public int Mistakes => _mistakes.Count;

    public DocumentFields In(string member) => new($"{_at}.{member}", _mistakes);

    public DocumentFields In(string member, int index) =>
        new(string.Create(CultureInfo.InvariantCulture, $"{_at}.{member}[{index}]"), _mistakes);

    public void Wrong(string message) => _mistakes.Add((_at, message));

    public void Wrong(string member, string message) => _mistakes.Add(($"{_at}.{member}", message));

    /// <summary>A length with its unit; 1 cm and a mistake where it is missing or cannot be read.</summary>
    public CakeLength Length(string? text, string member)
    {
        if (text is null)
            Wrong($"{member} is missing");
        return Length(text, member, CakeLength.FromCentimetres(1));
    }

    /// <summary>A length with its unit; so much where it is missing.</summary>
    public CakeLength Length(string? text, string member, CakeLength missing)
    {
        if (text is null)
            return missing;
        if (CakeLength.TryParse(text, out CakeLength length))
            return length;
        Wrong(member, $"{Excerpt.Of(text)} is no length; a number with its unit is expected, such as 8 in, 8 1/2 in, 20.5 cm or 6 mm");
        return CakeLength.FromCentimetres(1);
    }

    /// <summary>A length that may lie on the other side: a minus before it.</summary>
    public double SignedCentimetres(string? text, string member) => text is not null && text.TrimStart() is ['-', .. string rest]
        ? -Length(rest, member, default).Centimetres : Length(text, member, default).Centimetres;

    public string Text(string? text, string member)
    {
        if (text is null)
            Wrong($"{member} is missing");
        return text ?? "missing";
    }

    public T Number<T>(T? number, string member, T instead) where T : struct
    {
        if (number is null)
            Wrong($"{member} is missing");
        return number ?? instead;
    }

    /// <summary>A value of an enum by its word, such as <c>top-edge</c>.</summary>
    public T Word<T>(string? text, string member, T missing) where T : struct, Enum
    {
        if (text is null)
            return missing;
        foreach (T value in Enum.GetValues<T>())
        {
            if (EnumWords.Of(value, '-') == text)
                return value;
        }
        Wrong(member,
            $"{Excerpt.Of(text)} is not one of: {string.Join(", ", Enum.GetValues<T>().Select(value => EnumWords.Of(value, '-')))}");
        return missing;
    }

    /// <summary>
    /// What can be made of members that were read without a mistake; <see langword="null"/> with a mistake where it is refused.
    /// </summary>
    public T? Make<T>(int before, Func<T> make) where T : class
    {
        if (Mistakes > before)
            return null;
        try
        {
            return make();
        }
        catch (ArgumentException e)
        {
            Wrong(FormulaLineReader.Reason(e));
            return null;
        }
    }

    /// <summary>
    /// The members of a list; those with mistakes are left out, and of a list that is too long all are, so that nobody is told of a million
    /// mistakes.
    /// </summary>
    public List<TMade> List<TDocument,
        TMade>(List<TDocument?>? documents, string member, Func<TDocument, DocumentFields, TMade?> read, int most =
        CakeTier.MostOfEach) where TDocument : class where TMade : class
    {
        List<TMade> all = [];
        if (documents?.Count > most)
        {
            Wrong(member, string.Create(CultureInfo.InvariantCulture, $"there are {documents.Count}; at most {most} are expected"));
            return all;
        }
        for (int i = 0; i < documents?.Count; i++)
        {
            DocumentFields fields = In(member, i);
            if (documents[i] is not TDocument document)
                fields.Wrong("null was read and an object is expected");
            else if (read(document, fields) is TMade made)
                all.Add(made);
        }
        return all;
    }
}
