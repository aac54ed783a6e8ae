using System.Text.Json;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Formulas.Solving;

/// <summary>Answers as one JSON object, for other programs; docs/schema/answer.json says the form. What is not known has no member.</summary>
internal static class AnswerJson
{
    /// <summary>Writes an answer, and how it was rounded.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="writer">Where the object goes.</param>
    /// <param name="rounded">The same answer rounded; null where it was not.</param>
    /// <param name="system">Whose cups and spoons; null for none.</param>
    /// <param name="basis">What the lines are counted on besides the whole; null for nothing.</param>
    /// <exception cref="ArgumentNullException"><paramref name="answer"/> or <paramref name="writer"/> is null.</exception>
    public static void Write(SolvedFormula answer, Utf8JsonWriter writer, RoundedFormula? rounded, MeasuringSystem? system, FormulaPart? basis)
    {
        Guard.NotNull(answer);
        Guard.NotNull(writer);
        FormulaProblem problem = answer.Problem;
        writer.WriteStartObject();
        writer.WriteString("status", answer.Status switch
        {
            SolutionStatus.Solved => "solved",
            SolutionStatus.Impossible => "impossible",
            _ => "undecided",
        });
        writer.WriteString("name", problem.Name);
        if (system is not null)
            writer.WriteString("system", system.Key);
        if (basis is not null)
            writer.WriteString("basis", basis.Word);
        double[] based = [.. problem.Candidates.Select(candidate => candidate.BaseGrams)];
        double[] shares = Shares(answer.Grams, answer.BoiledOffGrams), baseShares = Shares(based, problem.BaseBoiledOffGrams);
        double onBasis = Of(problem, basis, answer.Grams), baseOnBasis = Of(problem, basis, based);
        writer.WriteStartArray("lines");
        for (int j = 0; j < based.Length; j++)
        {
            Ingredient ingredient = problem.Candidates[j].Ingredient;
            writer.WriteStartObject();
            writer.WriteString("ingredient", ingredient.Id);
            writer.WriteNumber("baseGrams", based[j]);
            writer.WriteNumber("grams", answer.Grams[j]);
            Write(writer, "baseShare", baseShares[j]);
            Write(writer, "share", shares[j]);
            if (basis is not null)
            {
                Write(writer, "baseShareOfBasis", based[j] / baseOnBasis);
                Write(writer, "shareOfBasis", answer.Grams[j] / onBasis);
            }
            if (problem.Candidates[j].PricePerKilogram is double price)
                writer.WriteNumber("costPerKilogram", price);
            Write(writer, system is null ? null : LineMeasure.Of(ingredient, answer.Grams[j], system));
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteNumber("totalGrams", answer.Grams.Sum() - answer.BoiledOffGrams);
        writer.WriteNumber("baseTotalGrams", problem.BaseTotalGrams);
        writer.WriteNumber("boiledOffGrams", answer.BoiledOffGrams);
        writer.WriteNumber("baseBoiledOffGrams", problem.BaseBoiledOffGrams);
        Write(writer, "baseCost", answer.BaseCost);
        Write(writer, "cost", answer.FullCost);
        WriteResults(writer, answer.Results, answer.BaseResults);
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
        WriteTrades(writer, answer.DegreesOfFreedom.Trades);
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
            Write(writer, problem, rounded, system, basis);
        writer.WriteEndObject();
    }

    // Of what is made, after boiling off.
    private static double[] Shares(IReadOnlyList<double> grams, double boiledOffGrams)
    {
        double makes = grams.Sum() - boiledOffGrams;
        return [.. grams.Select(mass => mass / makes)];
    }

    private static double Of(FormulaProblem problem, FormulaPart? basis, IReadOnlyList<double> grams) =>
        basis is null ? 0 : problem.GramsOf(basis, [.. grams], 0);

    // JSON has no word for infinity or for what is no number: of nothing there is no share.
    private static void Write(Utf8JsonWriter writer, string name, double number)
    {
        if (double.IsFinite(number))
            writer.WriteNumber(name, number);
    }

    private static void Write(Utf8JsonWriter writer, LineMeasure? measure)
    {
        if (measure is null)
            return;
        writer.WriteStartObject("measure");
        writer.WriteString("amount", measure.Amount.ToString());
        writer.WriteString("packing", measure.Packing.ToWord());
        writer.WriteNumber("grams", measure.Grams);
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, string name, FormulaCost? cost)
    {
        if (cost is null)
            return;
        writer.WriteStartObject(name);
        writer.WriteNumber("total", cost.Total);
        writer.WriteNumber("perKilogram", cost.PerKilogram);
        writer.WriteStartArray("withoutPrice");
        foreach (Ingredient ingredient in cost.WithoutPrice)
            writer.WriteStringValue(ingredient.Id);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void WriteResults(Utf8JsonWriter writer, IReadOnlyList<DemandResult> results, IReadOnlyList<DemandResult> based)
    {
        writer.WriteStartArray("demands");
        for (int i = 0; i < results.Count; i++)
        {
            DemandResult result = results[i];
            writer.WriteStartObject();
            writer.WriteString("demand", result.Demand.Sentence);
            // A ratio to nothing has no number.
            if (based.Count > 0 && based[i].Achieved is double had)
                writer.WriteNumber("baseAchieved", had);
            if (result.Achieved is double achieved)
                writer.WriteNumber("achieved", achieved);
            if (result.MissedBy is double missed)
                writer.WriteNumber("missedBy", missed);
            writer.WriteBoolean("met", result.IsMet);
            if (result.IsAsNearAsSteps)
                writer.WriteBoolean("asNearAsSteps", true);
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

    private static void WriteTrades(Utf8JsonWriter writer, IReadOnlyList<Trade> trades)
    {
        writer.WriteStartArray("trades");
        foreach (Trade trade in trades)
        {
            writer.WriteStartObject();
            writer.WriteString("sentence", trade.Sentence);
            writer.WriteStartArray("changes");
            for (int k = 0; k < trade.Ingredients.Count; k++)
            {
                writer.WriteStartObject();
                writer.WriteString("ingredient", trade.Ingredients[k].Id);
                writer.WriteNumber("grams", trade.Grams[k]);
                writer.WriteEndObject();
            }
            writer.WriteEndArray();
            writer.WriteNumber("boiledOffGrams", trade.BoiledOffGrams);
            writer.WriteNumber("timesOn", trade.TimesOn);
            writer.WriteNumber("timesBack", trade.TimesBack);
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter writer, AnswerCertificate certificate)
    {
        writer.WriteStartObject("certificate");
        writer.WriteString("sentence", certificate.Sentence);
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

    private static void Write(Utf8JsonWriter writer, FormulaProblem problem, RoundedFormula rounded, MeasuringSystem? system, FormulaPart? basis)
    {
        writer.WriteStartObject("rounded");
        double makes = rounded.Grams.Sum() - rounded.BoiledOffGrams, onBasis = Of(problem, basis, rounded.Grams);
        writer.WriteStartArray("lines");
        foreach (FormulaLine line in rounded.Formula?.Lines ?? [])
        {
            double grams = line.Grams.Likely;
            writer.WriteStartObject();
            writer.WriteString("ingredient", line.Ingredient.Id);
            writer.WriteNumber("grams", grams);
            Write(writer, "share", grams / makes);
            if (basis is not null)
                Write(writer, "shareOfBasis", grams / onBasis);
            if (line.AsWritten is Amount amount)
                writer.WriteString("amount", amount.ToString());
            Write(writer, system is null ? null : LineMeasure.Of(line.Ingredient, grams, system));
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteNumber("totalGrams", makes);
        WriteResults(writer, rounded.Results, []);
        writer.WriteBoolean("proven", rounded.IsProven);
        writer.WriteNumber("boiledOffGrams", rounded.BoiledOffGrams);
        Write(writer, "cost", rounded.FullCost);
        writer.WriteStartArray("vanished");
        foreach (Ingredient ingredient in rounded.Vanished)
            writer.WriteStringValue(ingredient.Id);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }
}
