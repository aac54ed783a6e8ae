using System.Text.Json;

namespace Confectio.Formulas.Solving;

/// <summary>Answers as one JSON object, for other programs. The form is described in docs/guide/solving.md.</summary>
internal static class AnswerJson
{
    /// <summary>Writes an answer, and how it was rounded.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="writer">Where the object goes.</param>
    /// <param name="rounded">The same answer rounded; null where it was not.</param>
    /// <exception cref="ArgumentNullException"><paramref name="answer"/> or <paramref name="writer"/> is null.</exception>
    public static void Write(SolvedFormula answer, Utf8JsonWriter writer, RoundedFormula? rounded = null)
    {
        Guard.NotNull(answer);
        Guard.NotNull(writer);
        writer.WriteStartObject();
        writer.WriteString("status", answer.Status switch
        {
            SolutionStatus.Solved => "solved",
            SolutionStatus.Impossible => "impossible",
            _ => "undecided",
        });
        writer.WriteString("name", answer.Problem.Name);
        WriteLines(writer, answer.Problem, answer.Grams);
        writer.WriteNumber("boiledOffGrams", answer.BoiledOffGrams);
        writer.WriteNumber("cost", answer.Cost);
        WriteResults(writer, answer.Results);
        writer.WriteStartArray("binding");
        foreach (BindingDemand binding in answer.Binding)
        {
            writer.WriteStartObject();
            writer.WriteString("demand", binding.ToString());
            writer.WriteBoolean("costsTargets", binding.CostsTargets);
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteNumber("unfixedDirections", answer.DegreesOfFreedom.Count);
        if (answer.Conflict is ConflictingDemands conflict)
        {
            writer.WriteStartObject("collision");
            writer.WriteString("sentence", conflict.Sentence);
            writer.WriteStartArray("demands");
            foreach (Demand demand in conflict.Demands)
                writer.WriteStringValue(demand.Sentence);
            writer.WriteEndArray();
            writer.WriteEndObject();
        }
        writer.WriteStartArray("remarks");
        foreach (string remark in answer.Remarks)
            writer.WriteStringValue(remark);
        writer.WriteEndArray();
        if (answer.WhyUndecided is string why)
            writer.WriteString("whyUndecided", why);
        if (answer.Certificate is AnswerCertificate certificate)
            Write(writer, certificate);
        if (rounded is not null)
            Write(writer, answer.Problem, rounded);
        writer.WriteEndObject();
    }

    private static void WriteLines(Utf8JsonWriter writer, FormulaProblem problem, IReadOnlyList<double> grams)
    {
        writer.WriteStartArray("lines");
        for (int j = 0; j < grams.Count; j++)
        {
            writer.WriteStartObject();
            writer.WriteString("ingredient", problem.Candidates[j].Ingredient.Id);
            writer.WriteNumber("grams", grams[j]);
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
    }

    private static void WriteResults(Utf8JsonWriter writer, IReadOnlyList<DemandResult> results)
    {
        writer.WriteStartArray("demands");
        foreach (DemandResult result in results)
        {
            writer.WriteStartObject();
            writer.WriteString("demand", result.Demand.Sentence);
            // JSON has no word for infinity: a ratio to nothing has no number.
            if (result.Achieved is double achieved)
                writer.WriteNumber("achieved", achieved);
            if (result.MissedBy is double missed)
                writer.WriteNumber("missedBy", missed);
            writer.WriteBoolean("met", result.IsMet);
            if (result.Spread is Spread spread)
            {
                writer.WriteStartObject("spread");
                writer.WriteNumber("low", spread.Low);
                writer.WriteNumber("likely", spread.Likely);
                writer.WriteNumber("high", spread.High);
                writer.WriteEndObject();
            }
            if (result.Cautions.Count > 0)
            {
                writer.WriteStartArray("cautions");
                foreach (string caution in result.Cautions)
                    writer.WriteStringValue(caution);
                writer.WriteEndArray();
            }
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter writer, AnswerCertificate certificate)
    {
        writer.WriteStartObject("certificate");
        writer.WriteBoolean("holds", certificate.Holds);
        writer.WriteBoolean("best", certificate.IsBest);
        writer.WriteNumber("shortfall", certificate.Shortfall);
        if (certificate.Starts is int starts)
        {
            writer.WriteNumber("starts", starts);
            writer.WriteNumber("agreeingStarts", certificate.AgreeingStarts ?? 0);
        }
        writer.WriteNumber("violation", certificate.Violation);
        writer.WriteNumber("stationarity", certificate.Stationarity);
        writer.WriteNumber("wrongSign", certificate.WrongSign);
        writer.WriteNumber("complementarity", certificate.Complementarity);
        writer.WriteNumber("gap", certificate.Gap);
        if (certificate.CertainToGrams is double grams)
            writer.WriteNumber("certainToGrams", grams);
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, FormulaProblem problem, RoundedFormula rounded)
    {
        writer.WriteStartObject("rounded");
        writer.WriteStartArray("lines");
        foreach (FormulaLine line in rounded.Formula?.Lines ?? [])
        {
            writer.WriteStartObject();
            writer.WriteString("ingredient", line.Ingredient.Id);
            writer.WriteNumber("grams", line.Grams.Likely);
            if (line.AsWritten is Measures.Amount amount)
                writer.WriteString("amount", amount.ToString());
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        WriteResults(writer, rounded.Results);
        writer.WriteBoolean("proven", rounded.IsProven);
        writer.WriteNumber("boiledOffGrams", rounded.BoiledOffGrams);
        writer.WriteStartArray("vanished");
        foreach (Ingredients.Ingredient ingredient in rounded.Vanished)
            writer.WriteStringValue(ingredient.Id);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }
}
