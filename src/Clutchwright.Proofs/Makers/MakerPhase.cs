namespace Clutchwright.Proofs.Makers;

/// <summary>On which of its two sex chromosomes a carrier of the sex that has two different ones holds an allele.</summary>
public enum MakerPhase
{
    /// <summary>Not known: either, as likely before counting.</summary>
    Unknown = 1,

    /// <summary>On the Y (or W): what came from the parent of the same sex. Such a male is a male maker.</summary>
    OnDiffering = 2,

    /// <summary>On the X (or Z): what came from the parent of the other sex. Such a male is a female maker.</summary>
    OnShared = 3,
}
