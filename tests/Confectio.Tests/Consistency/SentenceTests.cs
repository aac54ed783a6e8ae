using System.Reflection;
using System.Text.RegularExpressions;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Keeping;
using Confectio.Safety;
using Confectio.Sources;
using Confectio.Tests.Safety;
using Confectio.Troubles;
using Xunit;

namespace Confectio.Tests.Consistency;

/// <summary>
/// Every public sentence on keeping, eggs and safety names its source, and every answer as a whole its caution: local codes and licensed practice. The sentences are those of the
/// types of these rooms, over a spread of formulas and places; a type that is new fails until somebody has said what it claims.
/// </summary>
public sealed partial class SentenceTests
{
    // What writes itself without a claim on what may be eaten or how long it keeps, and why.
    private static readonly Dictionary<Type, string> s_noClaim = new()
    {
        [typeof(ActivityMover)] = "what a tenth more of an ingredient does to a figure that has its models beside it",
        [typeof(KeptFood)] = "a name; its note is looked at below",
        [typeof(FoamFormerReplacement)] = "grams; the ratio and what changes are of FoamFormer",
        [typeof(RoomAir)] = "the air as it was told and its dew point",
        [typeof(HeatedMix)] = "a number", [typeof(TimeTemperatureControl)] = "a value of an enum, said in a sentence by KeepingAnswer",
        [typeof(ProbeLog)] = "what was read", [typeof(ProbeLogOptions)] = "what was asked for",
        [typeof(EggCount)] = "a mass", [typeof(EggForm)] = "its composition; note and preparation are looked at below", [typeof(EggForms)] = "a count",
        [typeof(EggFormulaReplacement)] = "masses", [typeof(EggMeasures)] = "spoons", [typeof(EggReplacement)] = "masses; its caution is EggCaution", [typeof(EggScale)] = "a count", [typeof(EggSize)] = "a name and its masses",
        [typeof(EggSizeSystem)] = "a name", [typeof(Meringue)] = "a name; its figures are looked at below", [typeof(MeringueBase)] = "masses; its caution is EggCaution",
        [typeof(ReconstitutionResult)] = "masses by a rule that has its source", [typeof(ReconstitutionRule)] = "a name; its source is looked at below",
        [typeof(Trouble)] = "a name", [typeof(TroubleFacts)] = "what was told", [typeof(TroubleCause)] = "what may be the matter, by signs that are looked at below",
        [typeof(TroubleFinding)] = "a cause and its standing; what speaks for it is looked at below", [typeof(TroubleRemedy)] = "what to do; the cautions of the diagnosis belong to it",
    };

    private static readonly HashSet<Type> s_looksAt =
    [
        typeof(ColdRule), typeof(ColdRuleAnswer), typeof(GrowthLimit), typeof(KeepingAnswer), typeof(KeepingTime), typeof(OutOfTheCold), typeof(PlaceVerdict),
        typeof(CoolingCheck), typeof(HeatCaution), typeof(HoldTime), typeof(HoldTimeTable), typeof(KineticSet), typeof(LethalityFinding), typeof(LethalityJudgement),
        typeof(EggCaution), typeof(Diagnosis), typeof(FoamFormer), typeof(TroubleSign),
    ];

    // What says who says it. The short names of the bibliography come on top.
    [GeneratedRegex("Food Code|common practice|an estimate|household guidance|from memory|recalled|9 CFR|commercial laboratory")]
    private static partial Regex Source();

    [GeneratedRegex("[Ll]ocal codes? (and licensed practice )?decides?")]
    private static partial Regex Caution();

    private static readonly Formula[] s_formulas =
    [
        Of("butter", ("unsalted butter", 250), ("icing sugar", 500), ("whole milk", 30)), Of("shortening", ("white shortening", 250), ("icing sugar", 500), ("water", 30)),
        Of("meringue buttercream", ("egg white", 150), ("granulated sugar", 300), ("unsalted butter", 400)), Of("royal", ("icing sugar", 454), ("egg white", 80)),
        Of("royal of powder", ("icing sugar", 454), ("dried egg white", 12), ("water", 75)), Of("ganache", ("heavy cream", 200), ("semisweet chocolate chips", 200)),
        Of("cheese", ("cream cheese", 200), ("icing sugar", 400)), Of("cream", ("heavy cream", 500), ("icing sugar", 50)), Of("curd", ("lemon juice", 100), ("egg", 150), ("granulated sugar", 150)),
        Of("pastry cream", ("whole milk", 500), ("egg yolk", 100), ("granulated sugar", 100), ("cornflour", 40)), Of("fondant", ("rolled fondant", 500)), Of("marzipan", ("marzipan", 200)),
        Of("cake", ("plain flour", 200), ("egg", 200), ("granulated sugar", 200), ("unsalted butter", 200)), Of("jam", ("jam", 200)), Of("fat", ("white shortening", 100)),
        Formula.Of("caramel", Of("", ("granulated sugar", 300), ("heavy cream", 300)).Lines, 150),
    ];

    private static Formula Of(string name, params (string Food, double Grams)[] lines) =>
        Formula.Of(name, lines.Select(line => FormulaLine.Of(IngredientTable.BuiltIn.Get(line.Food), line.Grams)));

    private static IEnumerable<KeepingAnswer> Answers() => from formula in s_formulas
                                                          from ph in new Spread?[] { null, Spread.Exactly(4.0), new Spread(4.4, 5, 7.83) }
                                                          from packaged in new[] { false, true }
                                                          from room in new double[] { 4, 25 }
                                                          select KeepingAnswer.Of(formula, ph, null, packaged, room);

    private static IEnumerable<OutOfTheCold> Cold() => from formula in s_formulas
                                                      from place in new[] { KeepingPlace.Refrigerator, KeepingPlace.Freezer }
                                                      from air in new[] { RoomAir.Of(22, 0.6), RoomAir.Of(34, 0.8), RoomAir.Of(20, 0.2) }
                                                      select OutOfTheCold.Of(KeepingAnswer.Of(formula), place, air);

    private static IEnumerable<LethalityJudgement> Judgements() => from matter in Enum.GetValues<FoodMatrix>()
                                                                   from activity in new[] { 0.5, 0.83, 0.98 }
                                                                   select LethalityJudgement.Of(Readings.Log((0, 20), (5, 60), (10, 60), (12, 72), (13, 72)), matter, Spread.Exactly(activity));

    private static IEnumerable<Diagnosis> Diagnoses() => from formula in s_formulas
                                                         from trouble in Trouble.All
                                                         select Diagnosis.Of(formula, [trouble], TroubleFacts.None.At("mix", 14).InRoom(RoomAir.Of(24, 0.7)).CookedTo(118).Beaten(12));

    [Fact]
    public void EverySentenceNamesItsSource()
    {
        foreach ((string where, string sentence) in Sentences().Distinct())
            Assert.True(NamesASource(sentence), $"{where}: {sentence}");
        Assert.InRange(Sentences().Distinct().Count(), 300, 100_000);
    }

    [Fact]
    public void EveryAnswerAsAWholeHasItsCaution()
    {
        Assert.All(Answers(), answer => Assert.True(Caution().IsMatch(answer.ToString()) && Caution().IsMatch(answer.ControlSentence), answer.ToString()));
        Assert.All(Cold(), cold => Assert.Matches(Caution(), cold.ThawingSentence));
        Assert.All(Judgements(), judgement => Assert.Matches(Caution(), judgement.ToString()));
        Assert.All(Diagnoses(), found => Assert.Contains(found.Cautions, caution => Caution().IsMatch(caution)));
        Assert.Matches(Caution(), CoolingCheck.Of(Readings.FahrenheitLog((0, 135), (120, 70), (360, 41))).ToString());
        Assert.Matches(Caution(), EggCaution.Text);
        Assert.Matches(Caution(), HeatCaution.Text);
        Assert.Matches(Caution(), KeepingAnswer.Caution);
        // Raw egg is named where there is some, whatever the table says of growth.
        Assert.All(Answers().Where(answer => answer.Control == ControlNeed.NotByTheTable && answer.Formula.Cautions.Any(caution => caution.Code == "raw-egg")),
            answer => Assert.Contains("Salmonella", answer.ControlSentence, StringComparison.Ordinal));
    }

    [Fact]
    public void EveryRowBehindThemHasASourceThatIsListed()
    {
        IEnumerable<Provenance> rows = [.. KeepingTime.All.Select(row => row.Provenance), .. ColdRule.All.Select(row => row.Provenance), .. GrowthLimit.All.Select(row => row.Provenance),
            .. HoldTimeTable.All.SelectMany(table => table.Rows).Select(row => row.Provenance), .. KineticSet.All.Select(set => set.Provenance!), .. EggFraction.All.Select(row => row.Provenance),
            .. Meringue.All.SelectMany(meringue => meringue.Figures).Select(figure => figure.Provenance), .. ReconstitutionRule.All.Select(rule => rule.Provenance),
            .. TroubleCause.All.SelectMany(cause => cause.Signs).Select(sign => sign.Provenance)];
        Assert.All(rows, row => Assert.True(Bibliography.TryGet(row.Source.Key, out _), row.ToString()));
        Assert.InRange(rows.Count(), 200, 2000);
        foreach (EggForm form in EggForms.Of(IngredientTable.BuiltIn).All)
            Assert.True(form.Note.Length + form.Preparation.Length == 0 || form.Provenance is not null, form.Key);
        Assert.All(KeptFood.All.Where(food => food.Note.Length > 0), food => Assert.True(NamesASource(food.Note) || food.Note.StartsWith("What a maker adds", StringComparison.Ordinal), food.Note));
    }

    [Fact]
    public void EveryTypeOfTheseRoomsIsLookedAtOrSaidToClaimNothing()
    {
        IEnumerable<Type> types = PublicTypes.All.Where(type => type.Namespace is "Confectio.Keeping" or "Confectio.Safety" or "Confectio.Eggs" or "Confectio.Troubles" && !type.IsEnum
            && (type.IsAbstract || type.GetMethod(nameof(ToString), BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly, []) is not null));
        Assert.Empty(types.Where(type => !s_looksAt.Contains(type) && !s_noClaim.ContainsKey(type)).Select(type => type.Name));
        Assert.Empty(s_looksAt.Concat(s_noClaim.Keys).Where(type => !types.Contains(type)).Select(type => type.Name));
    }

    private static bool NamesASource(string sentence) => Source().IsMatch(sentence) || Bibliography.All.Any(source => sentence.Contains(source.ShortName, StringComparison.Ordinal));

    private static IEnumerable<(string, string)> Sentences()
    {
        foreach (KeepingAnswer answer in Answers())
        {
            yield return ("control", answer.ControlSentence);
            yield return ("keeping", answer.ToString());
            // That nobody prints a time is a claim of nothing.
            foreach (PlaceVerdict place in answer.Places.Where(place => !place.Sentence.StartsWith("no time is printed", StringComparison.Ordinal)))
            {
                yield return ("place", place.Sentence);
                yield return ("place", place.ToString());
            }
            foreach (ColdRuleAnswer rule in answer.Rules)
                yield return ("rule", rule.ToString());
        }
        foreach (OutOfTheCold cold in Cold())
        {
            yield return ("condensation", cold.CondensationSentence);
            yield return ("thawing", cold.ThawingSentence);
            yield return ("out of the cold", cold.ToString());
        }
        foreach (object row in (IEnumerable<object>)[.. KeepingTime.All, .. ColdRule.All, .. GrowthLimit.All, .. HoldTimeTable.All.SelectMany(table => table.Rows), .. KineticSet.All, .. EggFraction.All,
            .. Meringue.All.SelectMany(meringue => meringue.Figures)])
            yield return (row.GetType().Name, row.ToString()!);
        foreach (TroubleSign sign in TroubleCause.All.SelectMany(cause => cause.Signs))
            yield return ("sign", sign.ToString().Replace("common-practice", "common practice", StringComparison.Ordinal));
        foreach (LethalityJudgement judgement in Judgements())
        {
            if (judgement.HasAnswer)
                yield return ("judgement", judgement.ToString());
            if (judgement.HasAnswer)
                yield return ("headline", judgement.Headline);
            // A finding begins with the key of its study, which has its source.
            foreach (LethalityFinding finding in judgement.Findings)
                yield return ("finding", finding.ToString().Replace(finding.Set.Key + ":", finding.Set.Provenance!.Source.ShortName + ":", StringComparison.Ordinal));
        }
        yield return ("cooling", CoolingCheck.Of(Readings.FahrenheitLog((0, 135), (120, 70), (360, 41))).ToString());
        foreach (FoamFormer former in FoamFormer.All)
        {
            yield return ("foam former", former.ToString());
            foreach (string change in former.Changes)
                yield return ("foam former", change);
        }
        yield return ("caution of eggs", EggCaution.Text);
        yield return ("caution of heat", HeatCaution.Text);
        foreach (Diagnosis found in Diagnoses())
        {
            foreach (string why in found.Ranked.Concat(found.SpokenAgainst).SelectMany(finding => finding.For.Concat(finding.Against)))
                yield return ("why", why);
            foreach (string caution in found.Cautions.Where(caution => !caution.StartsWith("The rules tell", StringComparison.Ordinal)))
                yield return ("caution of troubles", caution);
        }
    }
}
