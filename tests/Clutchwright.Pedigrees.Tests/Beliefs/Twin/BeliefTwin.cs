using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;

namespace Clutchwright.Pedigrees.Tests.Beliefs.Twin;

/// <summary>Beliefs of a whole book from the definition, kin by kin.</summary>
internal sealed class BeliefTwin
{
    private BeliefTwin(TwinGroup[] groups, List<TwinKin> kins) => (Groups, Kins) = (groups, kins);

    public TwinGroup[] Groups { get; }

    public List<TwinKin> Kins { get; }

    public double LogLikelihood => Kins.Sum(k => k.LogLikelihood);

    /// <summary>Reckons a book.</summary>
    /// <param name="species">The species.</param>
    /// <param name="animals">The animals.</param>
    /// <param name="settings">What to reckon with.</param>
    /// <param name="clashes">The clashes found by another; each is checked, and taken as what gives way.</param>
    public static BeliefTwin Of(Species species, IReadOnlyList<RecordedAnimal> animals, BeliefSettings settings, IReadOnlyList<ClashingRecords> clashes)
    {
        var groups = species.Groups.Select(g => TwinGroup.Of(species, g, animals, settings)).OfType<TwinGroup>().ToArray();
        return new(groups, [.. TwinNode.Kins(animals).Select(kin => new TwinKin(
            kin, groups, new(clashes.Where(c => kin.Any(n => n.Record?.Key == c.Records[0].Key)))))]);
    }

    /// <summary>How many combinations there may be to sum over.</summary>
    public static double Cost(Species species, IReadOnlyList<RecordedAnimal> animals, BeliefSettings settings)
    {
        var groups = species.Groups.Select(g => TwinGroup.Of(species, g, animals, settings)).OfType<TwinGroup>().ToArray();
        return TwinNode.Kins(animals).Sum(kin =>
        {
            var cases = kin.Where(n => n.Choice >= 0).DistinctBy(n => n.Choice).Aggregate(1.0, (c, n) => c * n.Males.Count)
                * Math.Pow(2.0, kin.Select(n => n.Record).OfType<RecordedAnimal>().Sum(r => r.Observations.Count(o => o.Confidence.Value is > 0.5 and < 1.0)));
            return groups.Sum(g => cases * kin.Aggregate(1.0, (c, n) => c * (n.IsFounder ? g.States.Count * (g.Group.IsSex ? 0.5 : 1.0) : Math.Min(3.0, g.States.Count))));
        });
    }
}
