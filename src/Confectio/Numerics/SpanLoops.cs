using System.Numerics;

namespace Confectio.Numerics;

/// <summary>
/// Loops over spans of any length, in vectors, with a tail for what is left. Those of the solver, which are padded to whole blocks and have
/// none, are <see cref="Vectors"/>.
/// </summary>
internal static class SpanLoops
{
    /// <summary>The highest of some values that are not below 0.</summary>
    public static double Max(ReadOnlySpan<double> values)
    {
        int i = 0;
        Vector<double> highest = Vector<double>.Zero;
        for (; i <= values.Length - Vector<double>.Count; i += Vector<double>.Count)
            highest = Vector.Max(highest, new Vector<double>(values[i..]));
        double most = 0;
        for (int lane = 0; lane < Vector<double>.Count; lane++)
            most = Math.Max(most, highest[lane]);
        for (; i < values.Length; i++)
            most = Math.Max(most, values[i]);
        return most;
    }

    /// <summary>target /= divisor.</summary>
    public static void Divide(Span<double> target, double divisor)
    {
        int i = 0;
        Vector<double> divisors = new(divisor);
        for (; i <= target.Length - Vector<double>.Count; i += Vector<double>.Count)
            (new Vector<double>(target[i..]) / divisors).CopyTo(target[i..]);
        for (; i < target.Length; i++)
            target[i] /= divisor;
    }

    /// <summary>target *= values; the sum of what comes of it.</summary>
    public static double Multiply(Span<double> target, ReadOnlySpan<double> values)
    {
        int i = 0;
        Vector<double> sums = Vector<double>.Zero;
        for (; i <= target.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            Vector<double> product = new Vector<double>(target[i..]) * new Vector<double>(values[i..]);
            product.CopyTo(target[i..]);
            sums += product;
        }
        double sum = Vector.Sum(sums);
        for (; i < target.Length; i++)
            sum += target[i] *= values[i];
        return sum;
    }

    /// <summary>target += factor values.</summary>
    public static void AddScaled(Span<double> target, double factor, ReadOnlySpan<double> values)
    {
        int i = 0;
        Vector<double> factors = new(factor);
        for (; i <= target.Length - Vector<double>.Count; i += Vector<double>.Count)
            (new Vector<double>(target[i..]) + factors * new Vector<double>(values[i..])).CopyTo(target[i..]);
        for (; i < target.Length; i++)
            target[i] += factor * values[i];
    }

    /// <summary>The sum of the products.</summary>
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        int i = 0;
        Vector<double> sums = Vector<double>.Zero;
        for (; i <= a.Length - Vector<double>.Count; i += Vector<double>.Count)
            sums += new Vector<double>(a[i..]) * new Vector<double>(b[i..]);
        double sum = Vector.Sum(sums);
        for (; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }
}
