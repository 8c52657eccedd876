using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Loci;

/// <summary>One form of a locus. Index 0 of every locus is the wild allele, written <c>+</c>.</summary>
public sealed class Allele
{
    internal Allele(Locus locus, int index, AlleleDefinition? definition)
    {
        Locus = locus;
        Index = index;
        Id = definition?.Id ?? WildId;
        Name = definition?.Name ?? WildId;
        Mode = definition?.Mode;
        Penetrance = definition?.Penetrance ?? Probability.Certain;
    }

    /// <summary>How the wild allele is written.</summary>
    public const string WildId = "+";

    /// <summary>Gets the locus.</summary>
    public Locus Locus { get; }

    /// <summary>Gets the place in <see cref="Locus.Alleles"/>, from 0.</summary>
    public int Index { get; }

    /// <summary>Gets the id, unique in the species; <c>+</c> for the wild allele of every locus.</summary>
    public string Id { get; }

    /// <summary>Gets the name as the trade writes it.</summary>
    public string Name { get; }

    /// <summary>Gets how it shows against the wild allele; <c>null</c> for the wild allele itself.</summary>
    public InheritanceMode? Mode { get; }

    /// <summary>Gets the chance that a genotype that should show it does.</summary>
    public Probability Penetrance { get; }

    /// <summary>Gets whether this is the wild allele.</summary>
    public bool IsWild => Index == 0;

    /// <inheritdoc/>
    public override string ToString() => Id;
}
