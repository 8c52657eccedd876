using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using Clutchwright.Genetics.Genotypes;

namespace Clutchwright.Planning.Simulation;

/// <summary>Keeps the crosses written out so far, so that each two genotypes of a programme are crossed once only. Safe to use from many
/// threads; what it answers does not depend on the order of the questions.</summary>
/// <remarks>Equal genotypes are kept as one object: give back those that came out of <see cref="CompiledCross.Classes"/> or of <see cref="Known"/>,
/// which are found fastest. Memory grows with the number of different pairs; make a new table for each programme.</remarks>
public sealed class CrossTable
{
    private readonly ConcurrentDictionary<Genotype, Genotype> _known = new();
    private readonly ConcurrentDictionary<Pair, CompiledCross> _crosses = new();

    /// <summary>The one object that stands for all genotypes equal to this.</summary>
    public Genotype Known(Genotype genotype) => _known.GetOrAdd(genotype, genotype);

    /// <summary>The cross of two parents.</summary>
    /// <param name="sire">The sire's genotype.</param>
    /// <param name="dam">The dam's genotype.</param>
    /// <exception cref="ArgumentException">The sire is not male, the dam not female, or the species differ.</exception>
    /// <exception cref="InvalidOperationException">There are too many classes of children (<see cref="CompiledCross.Of(Genotype, Genotype, int)"/>).</exception>
    public CompiledCross Of(Genotype sire, Genotype dam)
    {
        if (_crosses.TryGetValue(new(sire, dam), out var cross))
        {
            return cross;
        }

        var (known, other) = (Known(sire), Known(dam));
        return _crosses.GetOrAdd(new(known, other), _ => CompiledCross.Of(known, other, 100_000, Known));
    }

    // Compares by object: genotypes are kept once each.
    private readonly struct Pair(Genotype sire, Genotype dam) : IEquatable<Pair>
    {
        private readonly Genotype _sire = sire;
        private readonly Genotype _dam = dam;

        public bool Equals(Pair other) => ReferenceEquals(_sire, other._sire) && ReferenceEquals(_dam, other._dam);

        public override bool Equals(object? obj) => obj is Pair other && Equals(other);

        public override int GetHashCode() => HashCode.Combine(RuntimeHelpers.GetHashCode(_sire), RuntimeHelpers.GetHashCode(_dam));
    }
}
