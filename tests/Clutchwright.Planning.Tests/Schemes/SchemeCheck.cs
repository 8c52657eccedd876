using Clutchwright.Planning.Schemes;

namespace Clutchwright.Planning.Tests.Schemes;

/// <summary>Checks a scheme from the definition: gametes by walking along the chromosome strand by strand, offspring by counting up.</summary>
internal static class SchemeCheck
{
    public static void Holds(SchemeProblem problem, double[] neighbours, CrossingScheme scheme, bool isTree)
    {
        var plants = problem.Parents.ToList();
        var generation = problem.Parents.Select(_ => 0).ToList();
        var uses = new Dictionary<int, int>();
        foreach (var crossing in scheme.Crossings)
        {
            Assert.InRange(crossing.First, 0, plants.Count - 1);
            Assert.InRange(crossing.Second, 0, plants.Count - 1);
            foreach (var place in new[] { crossing.First, crossing.Second }.Distinct())
            {
                uses[place] = uses.GetValueOrDefault(place) + 1;
            }

            var chance = ChanceOf(plants[crossing.First], plants[crossing.Second], crossing.Child, neighbours);
            Assert.Equal(chance, crossing.Chance, 1e-11);
            Assert.Equal(OffspringFor(chance, problem.Success), crossing.Offspring);
            Assert.InRange(crossing.Offspring, 1, problem.MostPlants);
            plants.Add(crossing.Child);
            generation.Add(1 + Math.Max(generation[crossing.First], generation[crossing.Second]));
        }

        Assert.Equal(problem.Target, plants[^1]);
        Assert.Equal(scheme.Crossings.Sum(c => c.Offspring), scheme.Plants);
        Assert.Equal(generation[^1], scheme.Generations);
        Assert.Equal(
            scheme.Plants + (problem.PerCrossing * scheme.Crossings.Count) + (problem.PerGeneration * scheme.Generations), scheme.Cost);
        if (isTree)
        {
            Assert.All(uses.Where(u => u.Key >= problem.Parents.Count), use => Assert.Equal(1, use.Value));
        }
    }

    public static double ChanceOf(HaplotypePair first, HaplotypePair second, HaplotypePair child, double[] neighbours) =>
        (from one in GametesOf(first, neighbours)
         from other in GametesOf(second, neighbours)
         where new HaplotypePair(one.Gamete, other.Gamete) == child
         select one.Chance * other.Chance).Sum();

    // Every way to walk along the two strands: at each interval stay or change over.
    private static IEnumerable<(int Gamete, double Chance)> GametesOf(HaplotypePair plant, double[] neighbours)
    {
        for (var way = 0; way < 2 << neighbours.Length; way++)
        {
            var (strand, gamete, chance) = (way & 1, 0, 0.5);
            for (var locus = 0; locus <= neighbours.Length; locus++)
            {
                gamete |= ((strand == 0 ? plant.Low : plant.High) >> locus & 1) << locus;
                if (locus < neighbours.Length)
                {
                    var changes = (way >> (locus + 1)) & 1;
                    chance *= changes == 1 ? neighbours[locus] : 1.0 - neighbours[locus];
                    strand ^= changes;
                }
            }

            yield return (gamete, chance);
        }
    }

    private static int OffspringFor(double chance, double success)
    {
        var (offspring, fails) = (1, 1.0 - chance);
        while (1.0 - fails < success - 1e-12)
        {
            offspring++;
            fails *= 1.0 - chance;
        }

        return offspring;
    }
}
