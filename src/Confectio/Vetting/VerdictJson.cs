using System.Text.Json;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>Verdicts as one JSON object, for other programs. The form is described in docs/guide/vetting.md.</summary>
internal static class VerdictJson
{
    /// <summary>Writes a verdict on a conversion table.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="writer">Where the object goes.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(TableVerdict verdict, Utf8JsonWriter writer)
    {
        Guard.NotNull(verdict);
        Guard.NotNull(writer);
        writer.WriteStartObject();
        if (verdict.System is SystemFinding system)
        {
            writer.WriteStartObject("system");
            writer.WriteString("best", system.Best.Key);
            writer.WriteString("family", system.Family);
            writer.WriteStartObject("probabilities");
            foreach (SystemProbability candidate in system.Probabilities)
                writer.WriteNumber(candidate.System.Key, Math.Round(candidate.Probability, 4));
            writer.WriteEndObject();
            writer.WriteBoolean("distinguishable", system.IsDistinguishable);
            writer.WriteEndObject();
        }
        else
        {
            writer.WriteNull("system");
        }
        writer.WriteStartArray("rows");
        foreach (RowFinding row in verdict.Rows)
        {
            writer.WriteStartObject();
            writer.WriteNumber("line", row.Line);
            writer.WriteStartObject("place");
            writer.WriteNumber("line", row.Line);
            writer.WriteNumber("column", row.Column);
            writer.WriteEndObject();
            writer.WriteString("ingredient", row.Ingredient);
            writer.WriteString("matched", row.Matched?.Id);
            writer.WriteString("verdict", row.Verdict.ToCode());
            writer.WriteNumber("probabilityRight", Math.Round(row.ProbabilityRight, 4));
            writer.WriteString("reason", row.Reason?.ToCode());
            writer.WriteNumber("printedGrams", Rounded(row.PrintedGrams));
            WriteSpread(writer, "expectedGrams", row.ExpectedGrams);
            if (row.Assumed is { Count: > 0 } assumed)
            {
                writer.WriteStartArray("assumed");
                foreach (string sentence in assumed)
                    writer.WriteStringValue(sentence);
                writer.WriteEndArray();
            }
            if (row.OtherPrintedGrams is { Count: > 0 } others)
            {
                writer.WriteStartArray("otherPrintedGrams");
                foreach (double grams in others)
                    writer.WriteNumberValue(Rounded(grams));
                writer.WriteEndArray();
                writer.WriteString("suspect", row.Suspect?.ToCode());
            }
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        WriteProblems(writer, verdict.Problems);
        writer.WriteString("layout", verdict.Layout);
        writer.WriteNumber("unread", verdict.Problems.Count);
        writer.WriteEndObject();
    }

    /// <summary>Writes a verdict on a temperature table.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="writer">Where the object goes.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(TemperatureVerdict verdict, Utf8JsonWriter writer)
    {
        Guard.NotNull(verdict);
        Guard.NotNull(writer);
        writer.WriteStartObject();
        writer.WriteStartArray("rows");
        foreach (TemperatureFinding row in verdict.Rows)
        {
            writer.WriteStartObject();
            writer.WriteNumber("line", row.Line);
            writer.WriteString("what", row.What);
            writer.WriteString("verdict", row.Verdict.ToCode());
            writer.WriteString("reason", row.Reason?.ToCode());
            WriteNumber(writer, "printedFahrenheit", row.Fahrenheit);
            WriteNumber(writer, "printedCelsius", row.Celsius);
            WriteNumber(writer, "expectedCelsius", row.ExpectedCelsius);
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        WriteProblems(writer, verdict.Problems);
        writer.WriteEndObject();
    }

    private static void WriteProblems(Utf8JsonWriter writer, IReadOnlyList<Problem> problems)
    {
        writer.WriteStartArray("problems");
        foreach (Problem problem in problems)
        {
            writer.WriteStartObject();
            writer.WriteNumber("line", problem.Line);
            if (problem.Column is not null)
                writer.WriteString("column", problem.Column);
            writer.WriteString("message", problem.Message);
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
    }

    private static void WriteSpread(Utf8JsonWriter writer, string name, Spread? spread)
    {
        if (spread is not Spread value)
        {
            writer.WriteNull(name);
            return;
        }
        writer.WriteStartObject(name);
        writer.WriteNumber("low", Rounded(value.Low));
        writer.WriteNumber("likely", Rounded(value.Likely));
        writer.WriteNumber("high", Rounded(value.High));
        writer.WriteEndObject();
    }

    private static void WriteNumber(Utf8JsonWriter writer, string name, double? value)
    {
        if (value is double number)
            writer.WriteNumber(name, Math.Round(number, 2));
        else
            writer.WriteNull(name);
    }

    // A spread of some per cent does not deserve sixteen digits.
    private static double Rounded(double grams) => Math.Round(grams, grams < 100 ? 2 : 1);
}
