using System.Numerics;

namespace Clutchwright.Planning.Expectations;

/// <summary>Sums over days, several days at once.</summary>
internal static class DaySums
{
    /// <summary>Adds the same multiple of some numbers to as many others.</summary>
    public static void Add(Span<double> to, ReadOnlySpan<double> from, double times)
    {
        var (i, width) = (0, Vector<double>.Count);
        var many = new Vector<double>(times);
        for (; i <= from.Length - width; i += width)
        {
            (new Vector<double>(to[i..]) + (many * new Vector<double>(from[i..]))).CopyTo(to[i..]);
        }

        for (; i < from.Length; i++)
        {
            to[i] += times * from[i];
        }
    }
}
