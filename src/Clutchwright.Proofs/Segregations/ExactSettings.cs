namespace Clutchwright.Proofs.Segregations;

/// <summary>How far an exact p value is pursued before outcomes are drawn instead.</summary>
/// <remarks>The same settings give the same answer everywhere.</remarks>
public sealed record ExactSettings
{
    /// <summary>Gets the settings used where none are named.</summary>
    public static ExactSettings Default { get; } = new();

    /// <summary>Gets the most branches looked at; past them outcomes are drawn. About a second for the default.</summary>
    public long MostBranches { get; init; } = 4_000_000;

    /// <summary>Gets how many outcomes are drawn then; at least 1.</summary>
    public int Draws { get; init; } = 200_000;

    /// <summary>Gets the seed of the draws.</summary>
    public ulong Seed { get; init; } = 1866;
}
