using Clutchwright.Genetics.Loci;

namespace Clutchwright.Testing;

/// <summary>One question to an engine of crosses: a species, two parents, a want and a stage of life.</summary>
/// <param name="Sample">The species.</param>
/// <param name="Parents">The parents.</param>
/// <param name="Want">What is wanted.</param>
/// <param name="Stage">The stage at which the young are looked at.</param>
/// <param name="IsExact">Whether every number of species and parents is an exact ratio.</param>
public sealed record Scenario(SampleSpecies Sample, SampleParents Parents, SampleWant Want, AgeStage Stage, bool IsExact)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Environment.NewLine}{Sample}{Parents}{Want}{Environment.NewLine}  as {Stage}";
}
