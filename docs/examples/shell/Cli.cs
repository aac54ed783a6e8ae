using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using System.Globalization;
using Confectio.Measures;

namespace Confectio.Examples;

/// <summary>The options of an example, its help and its failures: whatever is wrong is one line with the word that is wrong and those that are allowed, and status 2.</summary>
public sealed class Cli(string program, string what)
{
    private static readonly ParserConfiguration s_plain = new() { EnablePosixBundling = false, ResponseFileTokenReplacer = null };
    private readonly Command _command = new(program, what) { new HelpOption("--help", "-h") };
    private readonly Dictionary<string, string> _defaults = []; // as help prints a value, and as it is typed
    private readonly HashSet<Option> _repeated = [];
    private bool _takesInput;

    /// <summary>A word without an option, such as a file.</summary>
    public Argument<string> Word(string name)
    {
        Argument<string> word = new(name);
        _command.Add(word);
        return word;
    }

    /// <summary>One word or more without an option; <c>-</c> is the standard input.</summary>
    public Argument<string[]> Words(string name)
    {
        Argument<string[]> words = new(name) { Arity = ArgumentArity.OneOrMore };
        _command.Add(words);
        _takesInput = true;
        return words;
    }

    /// <summary>A switch.</summary>
    public Option<bool> Flag(string name) => Add(new Option<bool>(name) { Arity = ArgumentArity.Zero });

    /// <summary>An option with a text.</summary>
    public Option<string> Text(string name, string form, bool isNeeded = false) => Value(name, form, text => text, "", isNeeded);

    /// <summary>An option with a text that may be given more than once.</summary>
    public Option<string[]> Texts(string name, string form)
    {
        Option<string[]> texts = new(name) { HelpName = form, Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false, DefaultValueFactory = _ => [] };
        _repeated.Add(texts);
        return Add(texts);
    }

    /// <summary>An option whose value is read; a reader throws what it does not understand.</summary>
    public Option<T> Value<T>(string name, string form, Func<string, T> read, T usual, bool isNeeded = false) => Add(new Option<T>(name)
    {
        HelpName = form,
        Required = isNeeded,
        DefaultValueFactory = isNeeded ? null : _ => usual,
        Arity = ArgumentArity.ExactlyOne,
        CustomParser = result =>
        {
            string text = result.Tokens[0].Value;
            try
            {
                return string.IsNullOrWhiteSpace(text) ? throw new FormatException("its value is blank.") : read(text);
            }
            catch (Exception e) when (Shell.Expected(e))
            {
                result.AddError(string.IsNullOrWhiteSpace(text) ? $"{name}: its value is blank." : $"{name} {text}: {Shell.Reason(e)}");
                return usual;
            }
        },
    });

    /// <summary>An option that takes one of some words.</summary>
    public Option<T> Choice<T>(string name, T usual, params IEnumerable<(string Word, T Means)> words)
    {
        foreach ((string word, T means) in words.Where(one => Equals(one.Means, usual)))
            _defaults.TryAdd($"[default: {means}]", $"[default: {word}]");
        return Value(name, string.Join('|', words.Select(one => one.Word)), text => words.Any(one => Is(one.Word, text)) ? words.First(one => Is(one.Word, text)).Means
            : throw new FormatException(Expected(text, words.Select(one => one.Word))), usual);
    }

    /// <summary>An option that takes a measuring system; US customary unless stated.</summary>
    public Option<MeasuringSystem> System(string name = "--system")
    {
        _defaults.TryAdd($"[default: {MeasuringSystem.UsCustomary}]", $"[default: {MeasuringSystem.UsCustomary.Key}]");
        return Value(name, "KEY", text => MeasuringSystem.TryGet(text, out MeasuringSystem? system) ? system
        : throw new FormatException(Expected(text, MeasuringSystem.All.Select(known => known.Key))), MeasuringSystem.UsCustomary);
    }

    /// <summary>An option that takes a measuring system; none unless stated.</summary>
    public Option<MeasuringSystem?> SystemOrNone(string name = "--system") => Value<MeasuringSystem?>(name, "KEY", text => MeasuringSystem.TryGet(text, out MeasuringSystem? system) ? system
        : throw new FormatException(Expected(text, MeasuringSystem.All.Select(known => known.Key))), null);

    /// <summary>How a decimal is written; found out from the numbers unless stated.</summary>
    public Option<AmountReading?> ReadingOrAuto() => Choice<AmountReading?>("--decimal", null, ("auto", null), ("point", AmountReading.DecimalPoint), ("comma", AmountReading.DecimalComma));

    /// <summary>How a decimal is written.</summary>
    public Option<AmountReading> Reading() => Choice("--decimal", AmountReading.DecimalPoint, ("point", AmountReading.DecimalPoint), ("comma", AmountReading.DecimalComma));

    /// <summary>A plain number.</summary>
    public Option<double?> Number(string name, string form) => Value<double?>(name, form, text =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) ? number : throw new FormatException($"a number such as {form} is expected."), null);

    /// <summary>A share in per cent, above 0 and up to 100, as a number from 0 to 1.</summary>
    public Option<double?> Percent(string name, string form) => Value<double?>(name, form, text => text.EndsWith('%')
        && double.TryParse(text.AsSpan(0, text.Length - 1), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double percent) && percent is > 0 and <= 100 ? percent / 100
        : throw new FormatException($"a share above 0 and up to 100 % such as {form} is expected."), null);

    /// <summary>Reads the options, and answers or says in one line why not.</summary>
    public int Run(string[] args, Func<ParseResult, int> answer)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        ParseResult parsed = _command.Parse(args, s_plain);
        if (parsed.Action is HelpAction)
        {
            StringWriter help = new() { NewLine = "\n" };
            parsed.Invoke(new InvocationConfiguration { Output = help });
            return Shell.Answer(_defaults.Aggregate(help.ToString(), (text, word) => text.Replace(word.Key, word.Value, StringComparison.Ordinal)), 0);
        }
        try
        {
            return Mistake(args, parsed) is string mistake ? Shell.Fail($"{mistake} {Usage}") : answer(parsed);
        }
        catch (Exception e) when (Shell.Expected(e))
        {
            return Shell.Fail(Shell.Reason(e));
        }
    }

    /// <summary>What is allowed in place of a word, the nearest first where one is near.</summary>
    public static string Expected(string text, IEnumerable<string> words) =>
        $"{(words.MinBy(word => Distance(text, word)) is string near && Distance(text, near) <= 1 + near.Length / 4 ? $"perhaps {near}; " : "")}one of: {string.Join(", ", words)}.";

    private string Usage => $"usage: {_command.Name} {string.Join(' ', _command.Arguments.Select(word => word.Arity.MaximumNumberOfValues > 1 ? word.Name + "..." : word.Name).Concat(
        _command.Options.Where(option => option is not HelpOption).Select(option => (option.Required, $"{option.Name} {option.HelpName}".TrimEnd()) is (true, string needed) ? needed : $"[{option.Name} {option.HelpName}".TrimEnd() + "]")))}";

    private static bool Is(string word, string text) => word.Equals(text, StringComparison.OrdinalIgnoreCase);

    private Option<T> Add<T>(Option<T> option)
    {
        _command.Add(option);
        return option;
    }

    // The first of what is wrong, in our words where the parser's do not say what is allowed.
    private string? Mistake(string[] args, ParseResult parsed)
    {
        IEnumerable<string> words = _command.Arguments.SelectMany(word => parsed.GetResult(word)?.Tokens ?? []).Select(token => token.Value).Concat(parsed.UnmatchedTokens);
        // An amount may be negative, and is refused as one.
        string? odd = words.FirstOrDefault(word => word is ['-', not (>= '0' and <= '9'), ..] || (word == "-" && !_takesInput)) ?? (args.Contains("--") ? "--" : parsed.UnmatchedTokens is [string first, ..] ? first : null);
        if (odd is not null)
            return $"{odd}: not understood; {Expected(odd, _command.Options.Select(option => option.Name))}";
        foreach (Option option in _command.Options)
        {
            if (option.Required && parsed.GetResult(option) is not OptionResult { IdentifierTokenCount: > 0 })
                return $"{option.Name}: missing.";
            if (parsed.GetResult(option) is OptionResult { IdentifierTokenCount: > 0 } given)
            {
                if (given.IdentifierTokenCount > 1 && !_repeated.Contains(option))
                    return $"{option.Name}: given twice.";
                if (given.Tokens.Count < given.IdentifierTokenCount && option.Arity.MinimumNumberOfValues > 0)
                    return $"{option.Name}: its value is missing.";
                if (_repeated.Contains(option) && given.Tokens.Any(token => string.IsNullOrWhiteSpace(token.Value)))
                    return $"{option.Name}: its value is blank.";
            }
        }
        if (_command.Arguments.FirstOrDefault(word => parsed.GetResult(word)?.Tokens is not [_, ..] tokens || tokens.Any(token => string.IsNullOrWhiteSpace(token.Value))) is Argument blank)
            return $"{blank.Name}: missing or blank.";
        return parsed.Errors.Count == 0 ? null : parsed.Errors[0].Message;
    }

    // How many letters are put in, taken out or changed. What is far longer than any word is not near.
    private static int Distance(string from, string to)
    {
        if (from.Length > 40)
            return int.MaxValue;
        int[] row = [.. Enumerable.Range(0, to.Length + 1)];
        for (int i = 1; i <= from.Length; i++)
        {
            int corner = row[0]++;
            for (int j = 1; j <= to.Length; j++)
                (corner, row[j]) = (row[j], Math.Min(Math.Min(row[j], row[j - 1]) + 1, corner + (from[i - 1] == to[j - 1] ? 0 : 1)));
        }
        return row[^1];
    }
}
