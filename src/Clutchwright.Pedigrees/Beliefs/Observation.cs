using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>Something recorded of an animal, in the terms of genetics.</summary>
public abstract record Observation
{
    private Observation()
    {
    }

    /// <summary>Gets how sure the person is, above 0: the chance that what is recorded is so where it could as well not be.</summary>
    public Probability Confidence { get; init; } = Probability.Certain;

    /// <summary>The animal was looked at, and shows exactly these forms.</summary>
    /// <param name="Forms">The forms seen; empty: it looks normal.</param>
    /// <param name="Reading">What the words say of the genotype, for loci about which nothing better is known.</param>
    public sealed record Seen(IReadOnlyList<Expression> Forms, GenotypeBelief Reading) : Observation;

    /// <summary>Someone said what it is.</summary>
    /// <param name="Reading">What the words say of the genotype; groups left wild there are not spoken of.</param>
    /// <param name="Basis">On what the person goes.</param>
    public sealed record Said(GenotypeBelief Reading, StatementBasis Basis) : Observation;

    /// <summary>It does not carry these alleles.</summary>
    /// <param name="Alleles">The alleles.</param>
    public sealed record RuledOut(IReadOnlyList<Allele> Alleles) : Observation;

    /// <summary>A test of DNA for one allele.</summary>
    /// <param name="Allele">The allele tested for.</param>
    /// <param name="Copies">The copies found, 0 to 2.</param>
    /// <param name="Sensitivity">The chance that the test says what a carrier truly has.</param>
    /// <param name="Specificity">The chance that it says "none" of an animal without.</param>
    public sealed record DnaTest(Allele Allele, int Copies, Probability Sensitivity, Probability Specificity) : Observation;
}

/// <summary>On what a statement about a genotype rests.</summary>
public enum StatementBasis
{
    /// <summary>A breeder or seller said so.</summary>
    Told = 1,

    /// <summary>Its young have shown it.</summary>
    ProvenByBreeding = 2,
}
