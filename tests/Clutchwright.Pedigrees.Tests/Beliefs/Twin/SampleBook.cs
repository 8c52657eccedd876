using System.Globalization;
using System.Text;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Testing;

namespace Clutchwright.Pedigrees.Tests.Beliefs.Twin;

/// <summary>A made-up record: a species, its animals with all that is recorded of them, and what to reckon with.</summary>
public sealed record SampleBook(SampleSpecies Sample, IReadOnlyList<RecordedAnimal> Animals, BeliefSettings Settings)
{
    public Species Species => Sample.Species;

    public PedigreeBeliefs Reckon(PedigreeBeliefs? before = null) => PedigreeBeliefs.Of(Species, Animals, Settings, before);

    /// <inheritdoc/>
    public override string ToString()
    {
        var text = new StringBuilder().AppendLine().Append(Sample);
        text.AppendLine(CultureInfo.InvariantCulture, $"  misreading {Settings.Misreading}, frequencies {string.Join(' ', Settings.Frequencies.Select(f => $"{f.Key.Id} {f.Value}"))}");
        foreach (var animal in Animals)
        {
            var sires = animal.Sire ?? string.Join('|', animal.PossibleSires.Select((s, i) => animal.SireWeights.Count > 0 ? $"{s}:{animal.SireWeights[i]}" : s));
            text.AppendLine(CultureInfo.InvariantCulture, $"  {animal.Key} {animal.Sex?.ToString() ?? "unsexed"} x{animal.Count} of [{sires}] x [{animal.Dam}] clutch {animal.Clutch}");
            foreach (var observation in animal.Observations)
            {
                text.AppendLine(CultureInfo.InvariantCulture, $"    {Say(observation)}{(observation.Confidence.IsCertain ? "" : $", {observation.Confidence} sure")}");
            }
        }

        return text.ToString();
    }

    public static string Say(GenotypeBelief belief) => string.Join(
        "  ",
        belief.Species.Groups
            .Where(g => belief[g].Count > 1 || !belief[g][0].Value.IsWild)
            .Select(g => $"{g.Id} {string.Join(" or ", belief[g].Select(w => $"{w.Value.First}|{w.Value.Second} ({w.Weight})"))}")) + $" [{belief.Sex}]";

    private static string Say(Observation observation) => observation switch
    {
        Observation.Seen seen => $"seen [{string.Join(' ', seen.Forms.Select(f => f.Id))}] read as {Say(seen.Reading)}",
        Observation.Said said => $"said, {said.Basis}: {Say(said.Reading)}",
        Observation.RuledOut ruledOut => $"ruled out {string.Join(' ', ruledOut.Alleles.Select(a => a.Id))}",
        Observation.DnaTest test => $"test {test.Allele.Id} found {test.Copies}, {test.Sensitivity}, {test.Specificity}",
        _ => "?",
    };
}
