namespace Clutchwright.Testing.Pedigrees;

/// <summary>Counted random numbers that any language can repeat: SplitMix64 (Steele, Lea, Flood 2014).</summary>
/// <param name="seed">Where it begins.</param>
public sealed class SplitMix64(ulong seed)
{
    private ulong _state = seed;

    /// <summary>The next 64 bits.</summary>
    public ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15;
            var z = _state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }

    /// <summary>A whole number from 0 to <paramref name="limit"/> less 1: the next 64 bits modulo the limit.</summary>
    public int Below(int limit) => (int)(Next() % (ulong)limit);

    /// <summary>A number from 0, included, to 1, not included: the upper 53 of the next 64 bits.</summary>
    public double NextShare() => (Next() >> 11) * (1.0 / (1UL << 53));
}
