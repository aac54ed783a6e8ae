using System.Globalization;

namespace Confectio.Text;

/// <summary>
/// The problems of one reading, of which the first thousand are kept: nobody reads more, and a hostile table of 600 kB would
/// otherwise hold 158 MB of them. One more then says how many are not listed.
/// </summary>
internal sealed class ProblemList : List<Problem>
{
    /// <summary>How many problems are listed one by one.</summary>
    public const int Most = 1000;

    private int _firstLeftOut;

    /// <summary>How many problems there were, listed or not.</summary>
    public long Total { get; private set; }

    /// <summary>Adds a problem, or counts it where enough are listed.</summary>
    public new void Add(Problem problem)
    {
        Total++;
        if (Total <= Most)
        {
            base.Add(problem);
            return;
        }
        if (Total == Most + 1)
        {
            _firstLeftOut = problem.Line;
            base.Add(problem);
        }
        // Its place is known from the start; how many it stands for is known only at the end, so it is made anew each time.
        this[Most] = new Problem(_firstLeftOut, Total - Most);
    }

    /// <summary>Puts the listed problems in order of line; what stands for the rest stays last.</summary>
    public void SortByLine() => Sort(0, Math.Min(Count, Most), s_byLine);

    private static readonly IComparer<Problem> s_byLine = Comparer<Problem>.Create((left, right) => left.Line.CompareTo(right.Line));

    internal static string WordsFor(long more) => string.Create(CultureInfo.InvariantCulture,
        $"{more} more problems, of this line and others, are not listed; at most {Most} are");
}
