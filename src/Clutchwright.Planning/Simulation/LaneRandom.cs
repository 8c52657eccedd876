using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Clutchwright.Planning.Simulation;

/// <summary>256 random bits at a time, for one block of replicates: four generators side by side, begun from counted numbers.</summary>
/// <remarks>xoshiro256++ (docs/references.md [BlackmanVigna2021]). What it gives depends on the seed and the block's number alone. Four fields, so that
/// the compiler keeps it in registers.</remarks>
internal struct LaneRandom
{
    private Vector256<ulong> _a;
    private Vector256<ulong> _b;
    private Vector256<ulong> _c;
    private Vector256<ulong> _d;

    public LaneRandom(ulong seed, ulong block)
    {
        var start = new CountedRandom(seed, block);
        _a = Four(start);
        _b = Four(start);
        _c = Four(start);
        _d = Four(start);

        static Vector256<ulong> Four(CountedRandom random) => Vector256.Create(random.Next(), random.Next(), random.Next(), random.Next());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<ulong> Next()
    {
        var sum = _a + _d;
        var result = (Vector256.ShiftLeft(sum, 23) | Vector256.ShiftRightLogical(sum, 41)) + _a;
        var shifted = Vector256.ShiftLeft(_b, 17);
        _c ^= _a;
        _d ^= _b;
        _b ^= _c;
        _a ^= _d;
        _c ^= shifted;
        _d = Vector256.ShiftLeft(_d, 45) | Vector256.ShiftRightLogical(_d, 19);
        return result;
    }

    /// <summary>Bits of which each is 1 with a chance of so many 2^64ths; drawn digit by digit until every bit is decided.</summary>
    public Vector256<ulong> Bits(ulong chance)
    {
        var ones = Vector256<ulong>.Zero;
        var open = Vector256<ulong>.AllBitsSet;
        while (chance != 0 && open != Vector256<ulong>.Zero)
        {
            var digits = Next();
            if (chance >> 63 != 0)
            {
                ones |= Vector256.AndNot(open, digits);
                open &= digits;
            }
            else
            {
                open = Vector256.AndNot(open, digits);
            }

            chance <<= 1;
        }

        return ones;
    }
}
