using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Keeping;

/// <summary>A printed rule on which icings and fillings are kept cold. Rules of states and countries disagree; each speaks for itself.</summary>
public sealed class ColdRule
{
    private static readonly ColdRule[] s_all = ReadBuiltIn();

    private ColdRule(string key, string text, Provenance provenance)
    {
        Key = key;
        Text = text;
        Provenance = provenance;
    }

    /// <summary>The rules.</summary>
    public static IReadOnlyList<ColdRule> All => s_all;

    /// <summary>The key.</summary>
    public string Key { get; }

    /// <summary>The rule in a sentence without its stop.</summary>
    public string Text { get; }

    /// <summary>Who issued it, and how it was read.</summary>
    public Provenance Provenance { get; }

    /// <summary>The rule.</summary>
    public override string ToString() => $"{Provenance.Source.ShortName}: {Text}";

    /// <summary>What the rule says of a formula: cold, or that it may stand out, or nothing.</summary>
    internal ColdRuleVerdict Of(FormulaContents has, Spread? waterActivity, double brix)
    {
        // What is mostly flour is a cake; these are rules on frostings and fillings, but for those on cakes.
        if (has.Flour > 0.12 && !Key.StartsWith("uk-fsa", StringComparison.Ordinal))
            return ColdRuleVerdict.DoesNotSay;
        bool hasCream = has.Cream > 0, hasCheese = has.CreamCheese > 0, hasEgg = has.Egg > 0, hasMoistEgg = has.MoistEgg > 0;
        return Key switch
        {
            "ksu-65" => has.Sugars > 0.65 ? ColdRuleVerdict.MayStandOut : ColdRuleVerdict.KeepCold,
            // A model is no measurement: where it cannot tell on which side of 0.85 the food is, the rule asks for one.
            "umn-brix" => has.Dairy == 0 ? ColdRuleVerdict.DoesNotSay
                : !(brix > 65) || !(waterActivity?.Low <= 0.85) ? ColdRuleVerdict.KeepCold
                : waterActivity?.High <= 0.85 ? ColdRuleVerdict.MayStandOut : ColdRuleVerdict.TestFirst,
            "california-list" => has is { IcingSugar: > 0, FatOfSpreads: > 0 } ? hasEgg || hasCream || hasCheese ? ColdRuleVerdict.KeepCold : ColdRuleVerdict.MayStandOut
                : ColdRuleVerdict.DoesNotSay,
            "connecticut" => has is { FatOfSpreads: > 0, Sugars: > 0 } ? has.Butter > 0 || hasCream || hasCheese || hasMoistEgg ? ColdRuleVerdict.TestFirst : ColdRuleVerdict.MayStandOut
                : ColdRuleVerdict.DoesNotSay,
            "iowa" => hasCheese || has.Cream > 0.3 || hasMoistEgg ? ColdRuleVerdict.KeepCold : ColdRuleVerdict.DoesNotSay,
            "ksu-column" => hasCheese || hasCream || hasMoistEgg ? ColdRuleVerdict.KeepCold : ColdRuleVerdict.DoesNotSay,
            "uk-fsa" => hasCream ? ColdRuleVerdict.KeepCold : ColdRuleVerdict.DoesNotSay,
            "uk-fsa-older" => hasCream || has is { Butter: > 0, IcingSugar: > 0 } ? ColdRuleVerdict.KeepCold : ColdRuleVerdict.DoesNotSay,
            _ => throw new InvalidOperationException($"Nothing says how the rule {Key} is read."),
        };
    }

    private static ColdRule[] ReadBuiltIn()
    {
        List<ColdRule> rules = [];
        EmbeddedTable.Read("cold_rules.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            rules.Add(new ColdRule(fields.Required("key"), fields.Required("rule"), fields.Provenance("source", "kind", "", fields.Word("note"))));
        });
        return [.. rules];
    }
}
