namespace Clutchwright.Proofs.Modes;

/// <summary>What an animal shows of a new trait.</summary>
public enum TraitLook
{
    /// <summary>Nothing.</summary>
    Normal = 0,

    /// <summary>The trait.</summary>
    Shows = 1,

    /// <summary>A stronger form of it, told apart by eye: what two copies of an incompletely dominant allele make.</summary>
    Super = 2,
}
