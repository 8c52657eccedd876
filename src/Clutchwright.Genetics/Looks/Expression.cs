using Clutchwright.Genetics.Loci;

namespace Clutchwright.Genetics.Looks;

/// <summary>What one locus shows: nothing (the wild expression) or a named visible form.</summary>
public sealed class Expression
{
    internal Expression(Locus locus, int index, string id, string name, AgeStage tellableFrom, bool isNamed)
    {
        Locus = locus;
        Index = index;
        Id = id;
        Name = name;
        TellableFrom = tellableFrom;
        IsNamed = isNamed;
    }

    /// <summary>Gets the locus.</summary>
    public Locus Locus { get; }

    /// <summary>Gets the place in <see cref="Locus.Expressions"/>, from 0; 0 is the wild expression.</summary>
    public int Index { get; }

    /// <summary>Gets the id, unique in the species: a form's id, an allele's id for its single form or a recessive's
    /// visible form, or <c>super-</c> and the allele's id for two copies of an incompletely dominant allele.</summary>
    public string Id { get; }

    /// <summary>Gets the name for people.</summary>
    public string Name { get; }

    /// <summary>Gets the first stage of life at which it can be told by eye.</summary>
    public AgeStage TellableFrom { get; }

    /// <summary>Gets whether it is stated by an allele or a form; false: put together from two unlike alleles without a statement.</summary>
    public bool IsNamed { get; }

    /// <summary>Gets whether there is something to see.</summary>
    public bool IsVisible => Index > 0;

    /// <inheritdoc/>
    public override string ToString() => Id;
}
