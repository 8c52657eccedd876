namespace Clutchwright.Reference.Tests.Cases;

/// <summary>How a locus shows.</summary>
public enum LocusKind
{
    /// <summary>Two copies show.</summary>
    Recessive = 1,

    /// <summary>One copy shows as two do.</summary>
    Dominant = 2,

    /// <summary>One copy and two are told apart.</summary>
    Incomplete = 3,

    /// <summary>Three or four alleles, each hidden by those before it.</summary>
    RankedSeries = 4,

    /// <summary>Three or four alleles; any pairs may look alike.</summary>
    AnySeries = 5,
}
