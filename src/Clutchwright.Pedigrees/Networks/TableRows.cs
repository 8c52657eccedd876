using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Clutchwright.Pedigrees.Networks;

/// <summary>Arithmetic on tables laid out in rows, a row for each combination of all variables but the last.</summary>
internal static class TableRows
{
    /// <summary>Multiplies one table into another over the same variables.</summary>
    /// <param name="product">The other.</param>
    /// <param name="values">The weights.</param>
    /// <param name="places">Where each entry is found in them; <c>null</c>: in its own place.</param>
    /// <param name="isFirst">Whether what stands there is overwritten.</param>
    public static void Multiply(double[] product, double[] values, int[]? places, bool isFirst)
    {
        if (places is not null)
        {
            for (var at = 0; at < product.Length; at++)
            {
                product[at] = isFirst ? values[places[at]] : product[at] * values[places[at]];
            }
        }
        else if (isFirst)
        {
            values.AsSpan(0, product.Length).CopyTo(product);
        }
        else
        {
            for (var at = 0; at < product.Length; at++)
            {
                product[at] *= values[at];
            }
        }
    }

    /// <summary>Sums each row of a block.</summary>
    /// <returns>The largest sum.</returns>
    public static double SumRows(ReadOnlySpan<double> block, Span<double> sums)
    {
        var own = block.Length / sums.Length;
        var largest = 0.0;
        var i = 0;
        if (own == 2)
        {
            ref var first = ref MemoryMarshal.GetReference(block);
            ref var sum = ref MemoryMarshal.GetReference(sums);
            var most = Vector128<double>.Zero;
            for (; i + 2 <= sums.Length; i += 2)
            {
                unchecked
                {
                    var (a, b) = (Vector128.LoadUnsafe(ref first, (nuint)(2 * i)), Vector128.LoadUnsafe(ref first, (nuint)((2 * i) + 2)));
                    var pair = Vector128.Create(a.GetLower(), b.GetLower()) + Vector128.Create(a.GetUpper(), b.GetUpper());
                    pair.StoreUnsafe(ref sum, (nuint)i);
                    most = Vector128.Max(most, pair);
                }
            }

            largest = Math.Max(most[0], most[1]);
        }

        for (var at = i * own; i < sums.Length; i++)
        {
            var row = block[at++];
            for (var x = 1; x < own; x++)
            {
                row += block[at++];
            }

            sums[i] = row;
            largest = Math.Max(largest, row);
        }

        return largest;
    }

    /// <summary>Multiplies each row of a block by its weight, and adds the rows up.</summary>
    public static void Weigh(Span<double> block, ReadOnlySpan<double> weights, double[] marginal)
    {
        var own = marginal.Length;
        if (own == 2)
        {
            ref var first = ref MemoryMarshal.GetReference(block);
            var sum = Vector128<double>.Zero;
            nuint at = 0;
            foreach (var weight in weights[..(block.Length / 2)])
            {
                var row = Vector128.LoadUnsafe(ref first, at) * weight;
                row.StoreUnsafe(ref first, at);
                sum += row;
                at += 2;
            }

            marginal[0] += sum[0];
            marginal[1] += sum[1];
            return;
        }

        for (int s = 0, at = 0; s < weights.Length; s++)
        {
            for (var x = 0; x < own; x++, at++)
            {
                marginal[x] += block[at] *= weights[s];
            }
        }
    }

    /// <summary>Divides weights by others times a scale; what was 0 stays 0.</summary>
    public static void Divide(double[] weights, double[] by, double scale, double[] result)
    {
        var w = MemoryMarshal.Cast<double, Vector256<double>>(weights.AsSpan());
        var b = MemoryMarshal.Cast<double, Vector256<double>>(by.AsSpan());
        var r = MemoryMarshal.Cast<double, Vector256<double>>(result.AsSpan());
        for (var i = 0; i < r.Length; i++)
        {
            r[i] = Vector256.ConditionalSelect(Vector256.GreaterThan(b[i], Vector256<double>.Zero), w[i] / (b[i] * scale), Vector256<double>.Zero);
        }

        for (var i = r.Length * Vector256<double>.Count; i < result.Length; i++)
        {
            result[i] = by[i] > 0.0 ? weights[i] / (by[i] * scale) : 0.0;
        }
    }
}
