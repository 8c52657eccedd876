namespace Clutchwright.Proofs.Allelisms;

/// <summary>A cross that tells whether two mutant alleles lie at one locus, and what its telling egg is.</summary>
public enum AllelismPairing
{
    /// <summary>Two recessives, a visual of one to a visual of the other. One locus: every egg shows. Two loci: none does.</summary>
    VisualByVisual = 1,

    /// <summary>A visual of one to a het of the other. One locus: an egg in two shows. Two loci: none does.</summary>
    VisualByHet = 2,

    /// <summary>A het of one to a het of the other. One locus: an egg in four shows. Two loci: none does.</summary>
    HetByHet = 3,

    /// <summary>An animal that has one copy of each of two visible alleles, to one with neither. One locus: every egg gets exactly one of
    /// them. Two free loci: an egg in two gets both or neither.</summary>
    BothByNeither = 4,
}
