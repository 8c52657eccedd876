namespace Clutchwright.Genetics.Loci;

/// <summary>How well a claim is known.</summary>
public enum EvidenceGrade
{
    /// <summary>Stated in a published paper or official text.</summary>
    Published = 1,

    /// <summary>Held by the trade in general, without a source.</summary>
    CommonPractice = 2,

    /// <summary>Said by some, not confirmed.</summary>
    Reported = 3,

    /// <summary>Said by some and denied by others.</summary>
    Disputed = 4,
}

/// <summary>A claim's grade, the ids of its sources, and a remark.</summary>
/// <param name="Grade">How well the claim is known.</param>
/// <param name="Sources">Ids of the sources, in the catalogue's list; empty where the trade itself is the source.</param>
/// <param name="Note">A remark, or <c>null</c>.</param>
public sealed record Evidence(EvidenceGrade Grade, IReadOnlyList<string> Sources, string? Note = null)
{
    /// <summary>A claim of the trade without a source or remark.</summary>
    public static Evidence CommonPractice { get; } = new(EvidenceGrade.CommonPractice, []);
}
