namespace Clutchwright.Proofs.Linkages;

/// <summary>Whether it is known which alleles of the doubly heterozygous parent lie on one strand.</summary>
public enum LinkagePhase
{
    /// <summary>Recombinants can be told from parental types.</summary>
    Known = 1,

    /// <summary>Either kind may be the recombinants, each as likely before counting.</summary>
    Unknown = 2,
}
