using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Planning.Routes;
using Clutchwright.Planning.Simulation;
using Clutchwright.Testing;

namespace Clutchwright.Planning.Tests.Routes;

/// <summary>Invented rooms of many animals for the routes, by counted numbers: most animals show a gene or two, some are het, some in doubt.</summary>
internal static class RouteRooms
{
    /// <summary>A room and a target of so many free loci: every second one recessive and wanted twice, the others incompletely dominant and wanted once or twice.</summary>
    public static RouteProblem Of(int loci, int animals, ulong seed, int doubtful = 0)
    {
        var species = Describe.Species(
            SexSystem.XY, [.. Enumerable.Range(0, loci).Select(i => Describe.Free($"L{i}", i % 2 == 0 ? Describe.Recessive($"m{i}") : Describe.Incomplete($"m{i}")))]);
        var random = new CountedRandom(seed);
        var kept = new List<RouteAnimal>();
        for (var a = 0; a < animals; a++)
        {
            var sex = a % 3 == 0 ? Sex.Male : Sex.Female;
            var genotype = Genotype.Wild(species, sex);
            foreach (var locus in species.Loci)
            {
                genotype = random.Below(100) switch
                {
                    < 8 => genotype.With(locus, 1, locus.Index % 2 == 0 ? 1 : 0),
                    < 20 => genotype.With(locus, 0, 1),
                    _ => genotype,
                };
            }

            var belief = GenotypeBelief.Certain(genotype);
            if (a < doubtful)
            {
                var locus = species.Loci[2 * random.Below(loci / 2)];
                belief = belief.With(locus.Group, [new(new(0, 1), Probability.Ratio(2, 3)), new(new(0, 0), Probability.Ratio(1, 3))]);
            }

            kept.Add(new(sex, belief) { ReadySeason = random.Below(5) == 0 ? 2 : 1 });
        }

        return new(
            species,
            new Want([new WantedGenotype(null, [.. species.Loci.Select(l => WantedPairs.Of(l, l.Index % 2 == 0 ? [(1, 1)] : [(0, 1), (1, 1)]))])]),
            kept,
            new()
            {
                Seasons = 8,
                Clutch = GoodEggs.Of([0, 0, 0, 0.1, 0.2, 0.2, 0.2, 0.2, 0.1], Probability.From(0.8), ClutchRate.Of(0.9, 0.1), ClutchRate.Of(0.9, 0.1)),
                Laying = 0.8,
                Rearing = 0.95,
            });
    }
}
