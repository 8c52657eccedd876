using CsCheck;

namespace Clutchwright.Testing;

/// <summary>Checks generated values of counted seeds, so that a run repeats exactly.</summary>
public static class CountedSeeds
{
    /// <summary>Checks one value for each seed from 1 on.</summary>
    /// <param name="gen">What makes the values.</param>
    /// <param name="count">How many.</param>
    /// <param name="check">Throws on a value that fails.</param>
    /// <exception cref="CsCheckException">A value failed; the message has its seed and the value.</exception>
    public static void SampleCounted<T>(this Gen<T> gen, int count, Action<T> check) => Parallel.For(1, count + 1, seed =>
    {
        var value = gen.Generate(new PCG(1, (ulong)seed), null, out _);
        try
        {
            check(value);
        }
        catch (Exception problem)
        {
            throw new CsCheckException($"Seed {seed}: {value}{Environment.NewLine}{problem.Message}", problem);
        }
    });
}
