using Clutchwright.Pedigrees.Networks;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>A part of the network that has nothing to do with the rest.</summary>
internal sealed class NetworkPart
{
    private readonly List<int> _counts = [];

    /// <summary>Gets the variables' numbers in the whole network.</summary>
    public List<int> Variables { get; } = [];

    /// <summary>Gets the linkage groups it reaches into.</summary>
    public SortedSet<int> Groups { get; } = [];

    /// <summary>Gets the tables, over variables numbered from 0 inside the part.</summary>
    public List<Factor> Factors { get; } = [];

    /// <summary>Gets the numbers of states.</summary>
    public IReadOnlyList<int> Counts => _counts;

    /// <summary>Adds a variable.</summary>
    /// <returns>Its number inside the part.</returns>
    public int Add(int variable, int count, int group)
    {
        Variables.Add(variable);
        Groups.Add(group);
        _counts.Add(count);
        return _counts.Count - 1;
    }

    /// <summary>A number that tells parts of other content apart.</summary>
    /// <remarks>128 bits: that two parts of other content agree by chance is out of the question.</remarks>
    public UInt128 Digest()
    {
        unchecked
        {
            ulong a = 0xCBF29CE484222325UL, b = 0x9E3779B97F4A7C15UL;
            foreach (var count in _counts)
            {
                Stir((ulong)count);
            }

            foreach (var factor in Factors)
            {
                Stir(0xFAC7_0000_0000_0000UL + (ulong)factor.Variables.Length);
                foreach (var v in factor.Variables)
                {
                    Stir((ulong)v);
                }

                foreach (var value in factor.Values)
                {
                    Stir((ulong)BitConverter.DoubleToInt64Bits(value));
                }
            }

            return new UInt128(a, b);

            void Stir(ulong x)
            {
                a = (a ^ x) * 0x100000001B3UL;
                a ^= a >> 29;
                b = (b + x) * 0xBF58476D1CE4E5B9UL;
                b ^= b >> 31;
            }
        }
    }
}
