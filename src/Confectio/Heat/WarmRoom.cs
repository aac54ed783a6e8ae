using System.Globalization;
using Confectio.Formulas;
using Confectio.Sources;

namespace Confectio.Heat;

/// <summary>Whether an icing is within a window of solid fat.</summary>
public enum WindowAnswer
{
    /// <summary>All that its solid fat may be is within, and by more than the scales part.</summary>
    Yes,

    /// <summary>Nothing that its solid fat may be is within.</summary>
    No,

    /// <summary>Some of it is.</summary>
    Doubtful,

    /// <summary>The windows say nothing of it: no melting curve of its fat is known, or too much of it is cocoa butter.</summary>
    NotJudged,
}

/// <summary>
/// What an icing does in a room of one temperature, by the windows that were published: whether it stands, and in which windows it is.
/// </summary>
/// <remarks>
/// The windows are solid fat indices by dilatometry and the curves solid fat contents by NMR. From 21.1 to 40 °C the two were found comparable
/// (List and others 2001, abstract); here a window is judged from 20 °C, 1.1 K further, and gives 2 points for the scales, an estimate. They were found for
/// buttercreams of margarine and shortening, so that nothing is judged where more than a tenth of the fat is cocoa butter, a bound of our own; firmness does not follow the solid fat across different fats, and sugar, water and air do their part. A
/// verdict is a direction and no promise: try a rosette in the room first. Worked example: butter at 34 °C has some 2 % of its fat
/// solid and does not stand; white shortening at 31 °C has 17 % and does; butter at 31 °C is doubtful, for its range ends at 8 %.
/// </remarks>
public sealed class WarmRoom
{
    /// <summary>The coldest that is judged, °C.</summary>
    public const double MinimumCelsius = 20;

    /// <summary>The warmest that is judged, °C.</summary>
    public const double MaximumCelsius = 40;

    // By how much the two scales may part, in points: an estimate.
    internal const double ScalesPart = 2;

    private readonly string? _notJudgedWhy;

    private WarmRoom(SolidFat fat)
    {
        Fat = fat;
        _notJudgedWhy = fat.NotJudgedWhy;
        FatWindow stands = FatWindow.All.First(window => window.Use == "stands");
        Stands = AnswerFor(stands);
        string known = fat.PercentOfFat is Spread percent
            ? string.Create(CultureInfo.InvariantCulture, $"{percent.Likely:0.#} % of its fat is solid at {fat.Celsius:0.#} °C ({percent.Low:0.#} to "
                + $"{percent.High:0.#}, {fat.Evidence!.Value.ToWord()})")
            : "how much of its fat is solid is not known";
        Why = _notJudgedWhy is string why ? $"{(fat.PercentOfFat is null ? "" : known + "; ")}{why}." : $"{known}; the shape of a buttercream was found to last {(Stands == WindowAnswer.Yes ? "" : "only ")}from "
            + string.Create(CultureInfo.InvariantCulture, $"{stands.Low:0.#} % on ({stands.Provenance}), give or take {ScalesPart:0} for the scales.");
    }

    /// <summary>How much of its fat is solid, with what that stands on.</summary>
    public SolidFat Fat { get; }

    /// <summary>Whether it stands.</summary>
    public WindowAnswer Stands { get; }

    /// <summary>Why, in a sentence.</summary>
    public string Why { get; }

    /// <summary>Whether it is within each of the published windows, in the order of <see cref="FatWindow.All"/>.</summary>
    public IReadOnlyList<KeyValuePair<FatWindow, WindowAnswer>> Windows =>
        [.. FatWindow.All.Select(window => KeyValuePair.Create(window, AnswerFor(window)))];

    internal static WarmRoom Of(Formula formula, double celsius, FatCurves? curves)
    {
        Guard.NotNull(formula);
        Guard.InRange(celsius, MinimumCelsius, MaximumCelsius);
        return new WarmRoom(formula.SolidFat(celsius, curves));
    }

    /// <summary>The verdict and why.</summary>
    public override string ToString() => Stands switch
    {
        WindowAnswer.Yes => $"stands: {Why}",
        WindowAnswer.No => $"does not stand: {Why}",
        WindowAnswer.NotJudged => $"not judged: {Why}",
        _ => $"doubtful: {Why}",
    };

    private WindowAnswer AnswerFor(FatWindow window)
    {
        if (_notJudgedWhy is not null || Fat.PercentOfFat is not Spread percent)
            return WindowAnswer.NotJudged;
        bool hasTop = window.High < 100;
        if (percent.High < window.Low - ScalesPart || (hasTop && percent.Low > window.High + ScalesPart))
            return WindowAnswer.No;
        return percent.Low >= window.Low + ScalesPart && (!hasTop || percent.High <= window.High - ScalesPart) ? WindowAnswer.Yes
            : WindowAnswer.Doubtful;
    }
}
