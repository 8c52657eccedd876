using Clutchwright.Genetics.Loci;

namespace Clutchwright.Proofs.Modes;

/// <summary>Where a new trait's locus would lie.</summary>
public enum TraitPlacement
{
    /// <summary>On an autosome: sons and daughters alike.</summary>
    Autosomal = 1,

    /// <summary>On the sex chromosomes, never parted from sex.</summary>
    FullySexLinked = 2,

    /// <summary>On the sex chromosomes, at an unknown recombination fraction: every value from 0 to 0.5 equally likely before.</summary>
    PartlySexLinked = 3,

    /// <summary>Nowhere: every egg shows it with one unknown chance, whoever its parents are.</summary>
    NotInherited = 4,
}

/// <summary>One way in which a new trait may be inherited.</summary>
/// <param name="Placement">Where its locus lies.</param>
/// <param name="Mode">How its genotypes show; <c>null</c> where it is not inherited.</param>
public sealed record TraitHypothesis(TraitPlacement Placement, InheritanceMode? Mode)
{
    /// <summary>Gets all hypotheses, in the order in which they are listed.</summary>
    public static IReadOnlyList<TraitHypothesis> All { get; } =
    [
        .. from placement in new[] { TraitPlacement.Autosomal, TraitPlacement.FullySexLinked, TraitPlacement.PartlySexLinked }
           from mode in new[] { InheritanceMode.Recessive, InheritanceMode.IncompleteDominant, InheritanceMode.Dominant }
           select new TraitHypothesis(placement, mode),
        new(TraitPlacement.NotInherited, null),
    ];

    /// <summary>What an animal with so many copies shows.</summary>
    internal TraitLook Look(int copies) => Mode switch
    {
        InheritanceMode.Recessive => copies == 2 ? TraitLook.Shows : TraitLook.Normal,
        InheritanceMode.IncompleteDominant => (TraitLook)copies,
        _ => copies > 0 ? TraitLook.Shows : TraitLook.Normal,
    };
}
