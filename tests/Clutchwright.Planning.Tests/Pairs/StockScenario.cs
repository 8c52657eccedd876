using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Testing;
using CsCheck;

namespace Clutchwright.Planning.Tests.Pairs;

/// <summary>A made-up species, some animals of it, and a want.</summary>
/// <param name="Sample">The species.</param>
/// <param name="Sires">Males, at least one.</param>
/// <param name="Dams">Females, at least one.</param>
/// <param name="Want">What is wanted.</param>
public sealed record StockScenario(
    SampleSpecies Sample, IReadOnlyList<GenotypeBelief> Sires, IReadOnlyList<GenotypeBelief> Dams, SampleWant Want)
{
    /// <summary>Gets stocks of up to a dozen animals; some beliefs stand more than once, as littermates' do.</summary>
    public static Gen<StockScenario> Any { get; } = SpeciesGen.Any.SelectMany(sample => Gen
        .Select(ScenarioGen.Beliefs(sample.Species).Array[3, 8], ScenarioGen.Wants(sample.Species), Gen.Int[0, 3])
        .Select((animals, want, twins) => Of(sample, [.. animals, .. animals.Take(twins)], want)));

    public Species Species => Sample.Species;

    /// <inheritdoc/>
    public override string ToString() =>
        $"{Environment.NewLine}{Sample}{string.Join(Environment.NewLine, Sires.Concat(Dams).Select(Say))}{Environment.NewLine}{Want}";

    private static StockScenario Of(SampleSpecies sample, GenotypeBelief[] animals, SampleWant want) => new(
        sample,
        [.. animals.Where(a => a.Sex == Sex.Male), GenotypeBelief.Wild(sample.Species, Sex.Male)],
        [.. animals.Where(a => a.Sex == Sex.Female), GenotypeBelief.Wild(sample.Species, Sex.Female)],
        want);

    private static string Say(GenotypeBelief animal) => $"  {animal.Sex}: " + string.Join(
        "  ", animal.Species.Groups.Select(g => $"{g.Id} {string.Join(" or ", animal[g].Select(w => $"{w.Value.First}|{w.Value.Second} ({w.Weight})"))}"));
}
