namespace Clutchwright.Genetics.Loci;

/// <summary>How one mutant allele shows against the wild allele.</summary>
public enum InheritanceMode
{
    /// <summary>One copy looks normal; two copies show.</summary>
    Recessive = 1,

    /// <summary>One copy shows, and two copies show something else.</summary>
    IncompleteDominant = 2,

    /// <summary>One copy shows, and two copies look the same.</summary>
    Dominant = 3,
}
