using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Confectio.Numerics;

/// <summary>
/// The loops in which the solver spends its time. Lengths are whole blocks of <see cref="Block"/> numbers: what a vector lacks to
/// a block is filled with zeros, so that no loop has a tail. For a dozen ingredients the tails were half of the time. "Columns"
/// are vectors of one length, one after the other.
/// </summary>
internal static class Vectors
{
    /// <summary>How many numbers a block has.</summary>
    public const int Block = 4;

    /// <summary>The length that holds this many numbers in whole blocks.</summary>
    public static int Padded(int count) => (count + Block - 1) & -Block;

    /// <summary>Σ aᵢbᵢ over the length of <paramref name="a"/>.</summary>
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        Check(a.Length, b.Length, 1);
        ref double left = ref MemoryMarshal.GetReference(a), right = ref MemoryMarshal.GetReference(b);
        Vector256<double> even = Vector256<double>.Zero, odd = even;
        nuint i = 0, end = (nuint)a.Length;
        for (; i + 2 * Block <= end; i += 2 * Block)
        {
            even += Vector256.LoadUnsafe(ref left, i) * Vector256.LoadUnsafe(ref right, i);
            odd += Vector256.LoadUnsafe(ref left, i + Block) * Vector256.LoadUnsafe(ref right, i + Block);
        }
        if (i < end)
            even += Vector256.LoadUnsafe(ref left, i) * Vector256.LoadUnsafe(ref right, i);
        return Vector256.Sum(even + odd);
    }

    /// <summary>y ← y + t x over the length of <paramref name="y"/>.</summary>
    public static void AddScaled(Span<double> y, double t, ReadOnlySpan<double> x)
    {
        Check(y.Length, x.Length, 1);
        ref double to = ref MemoryMarshal.GetReference(y), from = ref MemoryMarshal.GetReference(x);
        Vector256<double> factor = Vector256.Create(t);
        for (nuint i = 0, end = (nuint)y.Length; i < end; i += Block)
            (Vector256.LoadUnsafe(ref to, i) + factor * Vector256.LoadUnsafe(ref from, i)).StoreUnsafe(ref to, i);
    }

    /// <summary>y ← Σ weightⱼ columnⱼ over the length of <paramref name="y"/>, the columns <paramref name="stride"/> apart.</summary>
    public static void Combine(Span<double> y, ReadOnlySpan<double> weights, ReadOnlySpan<double> columns, int stride)
    {
        Check(y.Length, stride, 1);
        Check(stride, columns.Length, weights.Length);
        ref double to = ref MemoryMarshal.GetReference(y), first = ref MemoryMarshal.GetReference(columns),
            weight = ref MemoryMarshal.GetReference(weights);
        nuint step = (nuint)stride, count = (nuint)weights.Length, i = 0, end = (nuint)y.Length;
        // Four blocks at a time stay in registers while all columns pass by: y is written once and never read.
        for (; i + 4 * Block <= end; i += 4 * Block)
        {
            Vector256<double> a = Vector256<double>.Zero, b = a, c = a, d = a;
            nuint at = i;
            for (nuint j = 0; j < count; j++, at += step)
            {
                Vector256<double> w = Vector256.Create(Unsafe.Add(ref weight, j));
                a += w * Vector256.LoadUnsafe(ref first, at);
                b += w * Vector256.LoadUnsafe(ref first, at + Block);
                c += w * Vector256.LoadUnsafe(ref first, at + 2 * Block);
                d += w * Vector256.LoadUnsafe(ref first, at + 3 * Block);
            }
            a.StoreUnsafe(ref to, i);
            b.StoreUnsafe(ref to, i + Block);
            c.StoreUnsafe(ref to, i + 2 * Block);
            d.StoreUnsafe(ref to, i + 3 * Block);
        }
        if (i + 2 * Block <= end)
        {
            Vector256<double> a = Vector256<double>.Zero, b = a;
            nuint at = i;
            for (nuint j = 0; j < count; j++, at += step)
            {
                Vector256<double> w = Vector256.Create(Unsafe.Add(ref weight, j));
                a += w * Vector256.LoadUnsafe(ref first, at);
                b += w * Vector256.LoadUnsafe(ref first, at + Block);
            }
            a.StoreUnsafe(ref to, i);
            b.StoreUnsafe(ref to, i + Block);
            i += 2 * Block;
        }
        if (i < end)
        {
            Vector256<double> a = Vector256<double>.Zero;
            nuint at = i;
            for (nuint j = 0; j < count; j++, at += step)
                a += Vector256.Create(Unsafe.Add(ref weight, j)) * Vector256.LoadUnsafe(ref first, at);
            a.StoreUnsafe(ref to, i);
        }
    }

    /// <summary>
    /// tⱼ ← β x·columnⱼ and columnⱼ ← columnⱼ − tⱼ x for every column, as many as there are places for t.
    /// </summary>
    public static void Reflect(Span<double> columns, ReadOnlySpan<double> x, double beta, Span<double> t)
    {
        Check(x.Length, columns.Length, t.Length);
        ref double first = ref MemoryMarshal.GetReference(columns), from = ref MemoryMarshal.GetReference(x);
        nuint end = (nuint)x.Length;
        for (int j = 0; j < t.Length; j++, first = ref Unsafe.Add(ref first, end))
        {
            Vector256<double> even = Vector256<double>.Zero, odd = even;
            nuint i = 0;
            for (; i + 2 * Block <= end; i += 2 * Block)
            {
                even += Vector256.LoadUnsafe(ref first, i) * Vector256.LoadUnsafe(ref from, i);
                odd += Vector256.LoadUnsafe(ref first, i + Block) * Vector256.LoadUnsafe(ref from, i + Block);
            }
            if (i < end)
                even += Vector256.LoadUnsafe(ref first, i) * Vector256.LoadUnsafe(ref from, i);
            double value = t[j] = beta * Vector256.Sum(even + odd);
            Vector256<double> factor = Vector256.Create(value);
            for (i = 0; i < end; i += Block)
                (Vector256.LoadUnsafe(ref first, i) - factor * Vector256.LoadUnsafe(ref from, i)).StoreUnsafe(ref first, i);
        }
    }

    /// <summary>y ← t x over the length of <paramref name="y"/>.</summary>
    public static void Scale(Span<double> y, double t, ReadOnlySpan<double> x)
    {
        Check(y.Length, x.Length, 1);
        ref double to = ref MemoryMarshal.GetReference(y), from = ref MemoryMarshal.GetReference(x);
        Vector256<double> factor = Vector256.Create(t);
        for (nuint i = 0, end = (nuint)y.Length; i < end; i += Block)
            (factor * Vector256.LoadUnsafe(ref from, i)).StoreUnsafe(ref to, i);
    }

    /// <summary>columnⱼ ← columnⱼ + t weightⱼ x for every column.</summary>
    public static void AddOuter(Span<double> columns, ReadOnlySpan<double> x, double t, ReadOnlySpan<double> weights)
    {
        Check(x.Length, columns.Length, weights.Length);
        ref double first = ref MemoryMarshal.GetReference(columns), from = ref MemoryMarshal.GetReference(x);
        nuint end = (nuint)x.Length, at = 0;
        foreach (double weight in weights)
        {
            Vector256<double> factor = Vector256.Create(t * weight);
            for (nuint i = 0; i < end; i += Block, at += Block)
                (Vector256.LoadUnsafe(ref first, at) + factor * Vector256.LoadUnsafe(ref from, i)).StoreUnsafe(ref first, at);
        }
    }

    /// <summary>
    /// A chain of plane rotations of columns 0 and 1, 1 and 2, and so on: (a, b) ← (c a + s b, c b − s a). Each column is read and
    /// written once for the whole chain.
    /// </summary>
    public static void RotateChain(Span<double> columns, int stride, ReadOnlySpan<double> cosines, ReadOnlySpan<double> sines)
    {
        Check(stride, columns.Length, cosines.Length + 1);
        ref double first = ref MemoryMarshal.GetReference(columns);
        nuint step = (nuint)stride;
        for (nuint i = 0; i < step; i += Block)
        {
            nuint at = i;
            Vector256<double> carried = Vector256.LoadUnsafe(ref first, at);
            for (int j = 0; j < cosines.Length; j++, at += step)
            {
                Vector256<double> c = Vector256.Create(cosines[j]), s = Vector256.Create(sines[j]),
                    next = Vector256.LoadUnsafe(ref first, at + step);
                (c * carried + s * next).StoreUnsafe(ref first, at);
                carried = c * next - s * carried;
            }
            carried.StoreUnsafe(ref first, at);
        }
    }

    /// <summary>largest ← max(largest, |x|), entry by entry.</summary>
    public static void RaiseToMagnitude(Span<double> largest, ReadOnlySpan<double> x)
    {
        Check(largest.Length, x.Length, 1);
        ref double to = ref MemoryMarshal.GetReference(largest), from = ref MemoryMarshal.GetReference(x);
        for (nuint i = 0, end = (nuint)largest.Length; i < end; i += Block)
            Vector256.Max(Vector256.LoadUnsafe(ref to, i), Vector256.Abs(Vector256.LoadUnsafe(ref from, i))).StoreUnsafe(ref to, i);
    }

    // The loops would run past the end of a span that is too short, so a wrong length must never get in.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Check(int length, int available, int columns)
    {
        if (length % Block != 0 || (long)length * columns > available)
            Refuse();
    }

    private static void Refuse() => throw new ArgumentException("The vectors are not of one whole number of blocks.");
}
