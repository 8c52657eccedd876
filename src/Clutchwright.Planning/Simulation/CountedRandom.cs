using System.Runtime.CompilerServices;

namespace Clutchwright.Planning.Simulation;

/// <summary>Random numbers that are counted, not carried on: each is worked out from a seed, the number of its stream and its place in it.</summary>
/// <remarks>Give each replicate, clutch or start its own stream, and the numbers are the same on any number of threads. The generator is
/// Philox 4x32 with ten rounds (docs/references.md [Salmon2011]): 2^64 streams of 2^65 numbers for each of 2^64 seeds. Not safe
/// for two threads at once; making one costs next to nothing.</remarks>
public sealed class CountedRandom
{
    private readonly ulong _seed;
    private ulong _stream;
    private ulong _block;
    private ulong _kept;
    private bool _hasKept;

    /// <summary>Starts a stream at its first number.</summary>
    /// <param name="seed">Any number.</param>
    /// <param name="stream">Any number; streams of one seed are independent.</param>
    public CountedRandom(ulong seed, ulong stream = 0)
    {
        _seed = seed;
        _stream = stream;
    }

    /// <summary>Begins another stream of the same seed at its first number.</summary>
    public void Restart(ulong stream)
    {
        (_stream, _block, _hasKept) = (stream, 0, false);
    }

    /// <summary>The next 64 random bits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ulong Next()
    {
        if (_hasKept)
        {
            _hasKept = false;
            return _kept;
        }

        (var next, _kept) = Block(_seed, _stream, unchecked(_block++));
        _hasKept = true;
        return next;
    }

    /// <summary>The next number from 0, included, to 1, not included, in steps of 2^-53.</summary>
    public double NextShare() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>The next whole number from 0, included, to <paramref name="limit"/>, not included, each equally likely.</summary>
    /// <remarks>The upper half of the product with 64 random bits: no chance is off by more than 2^-33 of itself.</remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="limit"/> is not positive.</exception>
    public int Below(int limit)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(limit);
        return (int)Math.BigMul(Next(), (ulong)limit, out _);
    }

    /// <summary>The numbers at one place: four words of 32 bits, two in each result, the first in the lower half.</summary>
    /// <param name="seed">The key: its lower half is the first word.</param>
    /// <param name="stream">The upper half of the counter.</param>
    /// <param name="block">The lower half of the counter.</param>
    public static (ulong First, ulong Second) Block(ulong seed, ulong stream, ulong block)
    {
        unchecked
        {
            var (c0, c1, c2, c3) = ((uint)block, (uint)(block >> 32), (uint)stream, (uint)(stream >> 32));
            var (k0, k1) = ((uint)seed, (uint)(seed >> 32));
            for (var round = 0; round < 10; round++)
            {
                var (p0, p1) = ((ulong)0xD2511F53u * c0, (ulong)0xCD9E8D57u * c2);
                (c0, c1, c2, c3) = ((uint)(p1 >> 32) ^ c1 ^ k0, (uint)p1, (uint)(p0 >> 32) ^ c3 ^ k1, (uint)p0);
                k0 += 0x9E3779B9u;
                k1 += 0xBB67AE85u;
            }

            return (c0 | ((ulong)c1 << 32), c2 | ((ulong)c3 << 32));
        }
    }
}
