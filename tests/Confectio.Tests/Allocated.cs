namespace Confectio.Tests;

/// <summary>What a call allocates by itself.</summary>
internal static class Allocated
{
    /// <summary>
    /// The fewest bytes of five calls. The runtime allocates on the thread that it finds when it compiles again what runs often; what a call
    /// allocates by itself it allocates every time.
    /// </summary>
    /// <param name="call">The call.</param>
    /// <param name="enough">As few bytes as this end the counting.</param>
    public static long Least(Action call, long enough = 0)
    {
        long least = long.MaxValue;
        for (int i = 0; i < 5 && least > enough; i++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            call();
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }
        return least;
    }
}
