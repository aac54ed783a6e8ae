using Confectio.Text;

namespace Confectio.Tests;

/// <summary>A reading taken apart, for tests that look at both halves.</summary>
internal static class ToldReading
{
    public static T? Told<T>(this Reading<T> reading, out IReadOnlyList<Problem> problems) where T : class
    {
        problems = reading.Problems;
        return reading.TryGet(out T? value) ? value : null;
    }
}
