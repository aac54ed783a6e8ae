using System.Globalization;
using System.Text.Json;
using Confectio.Cards;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>What vetting found on a card. That nothing was found does not say that a card is right, or safe: see what was not judged.</summary>
public sealed class CardVerdict
{
    internal CardVerdict(PrintedCard card, IReadOnlyList<CardFinding> findings, SystemFinding? system, IReadOnlyList<string> notJudged, IReadOnlyList<Problem> problems, int judgedLines)
    {
        Card = card;
        Findings = findings;
        System = system;
        NotJudged = notJudged;
        Problems = problems;
        JudgedLines = judgedLines;
    }

    /// <summary>The card.</summary>
    public PrintedCard Card { get; }

    /// <summary>What is wrong: allergens and safety first, then in the order of the card.</summary>
    public IReadOnlyList<CardFinding> Findings { get; }

    /// <summary>Whose cups all lines together speak for; <see langword="null"/> where no line tells.</summary>
    public SystemFinding? System { get; }

    /// <summary>What could not be judged, a sentence each.</summary>
    public IReadOnlyList<string> NotJudged { get; }

    /// <summary>What could not be read, with its place.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>How many lines had two figures that could be held against each other.</summary>
    public int JudgedLines { get; }

    /// <summary>Whether any finding is more than a note.</summary>
    public bool HasMistakes => Findings.Any(finding => finding.Severity != FindingSeverity.Note);

    /// <summary>How many lines, and what is wrong with them, such as <c>6 lines, 2 findings, 0 not read whole</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Card.Lines.Count} lines, {Findings.Count} findings, {Problems.Count} not read whole");

    /// <summary>Writes the verdict as one JSON object, for other programs. The form is described in docs/guide/vetting-cards.md.</summary>
    /// <param name="writer">Where the object goes.</param>
    /// <exception cref="ArgumentNullException"><paramref name="writer"/> is null.</exception>
    public void WriteTo(Utf8JsonWriter writer)
    {
        Guard.NotNull(writer);
        writer.WriteStartObject();
        writer.WriteString("title", Card.Title);
        writer.WriteString("form", EnumWords.Of(Card.Form, '-'));
        writer.WriteString("layout", Card.Layout);
        writer.WriteNumber("lines", Card.Lines.Count);
        writer.WriteNumber("judgedLines", JudgedLines);
        writer.WriteString("system", System?.Best.Key);
        writer.WriteStartArray("findings");
        foreach (CardFinding finding in Findings)
        {
            writer.WriteStartObject();
            writer.WriteString("code", finding.Issue.ToCode());
            writer.WriteString("severity", EnumWords.Of(finding.Severity, '-'));
            writer.WriteStartObject("place");
            writer.WriteNumber("line", finding.Place.Line);
            writer.WriteNumber("column", finding.Place.Column);
            writer.WriteNumber("length", finding.Place.Length);
            if (finding.Place.Path is not null)
                writer.WriteString("path", finding.Place.Path);
            writer.WriteEndObject();
            writer.WriteString("stands", finding.Stands);
            writer.WriteString("expected", finding.Expected);
            writer.WriteString("explanation", finding.Explanation);
            writer.WriteString("cause", finding.Cause);
            if (finding.ProbabilityRight is double right)
                writer.WriteNumber("probabilityRight", Math.Round(right, 4));
            else
                writer.WriteNull("probabilityRight");
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteStartArray("notJudged");
        foreach (string sentence in NotJudged)
            writer.WriteStringValue(sentence);
        writer.WriteEndArray();
        writer.WriteStartArray("problems");
        foreach (Problem problem in Problems)
        {
            writer.WriteStartObject();
            writer.WriteNumber("line", problem.Line);
            if (problem.Character > 0)
                writer.WriteNumber("column", problem.Character);
            if (problem.Path is not null)
                writer.WriteString("path", problem.Path);
            writer.WriteString("message", problem.Message);
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteString("caution", CardVetter.Caution);
        writer.WriteEndObject();
    }
}
