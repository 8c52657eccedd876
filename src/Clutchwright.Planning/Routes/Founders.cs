using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>Sorts the animals of a problem into types that are alike in all that counts.</summary>
internal static class Founders
{
    /// <summary>The most ways one doubtful animal is taken: beyond, its least probable ones are left out.</summary>
    private const int MostReadings = 16;

    /// <summary>An animal is not taken for what it is less often than this.</summary>
    private const double LeastTrust = 0.05;

    public static IReadOnlyList<FounderType> Of(RouteWorld world)
    {
        var types = new Dictionary<(Sex Sex, int Class, double Trust, int Ready, double? Price), List<int>>();
        var animals = world.Problem.Animals;
        for (var i = 0; i < animals.Count; i++)
        {
            foreach (var (of, trust) in Readings(world, animals[i]))
            {
                var key = (animals[i].Sex, of, Math.Round(trust, 12), Math.Max(1, animals[i].ReadySeason), animals[i].Price);
                (types.TryGetValue(key, out var known) ? known : types[key] = []).Add(i);
            }
        }

        var all = types.Select((t, i) => new FounderType(i, t.Key.Sex, t.Key.Class, t.Key.Trust, t.Key.Ready, t.Key.Price, t.Value)).ToArray();
        return [.. all.Select(t => t.Sex == Sex.Female ? t with { Kinds = KindsOf(t, all) } : t)];
    }

    /// <summary>How many females there are of each kind.</summary>
    public static Dictionary<int, int> Kinds(IReadOnlyList<FounderType> types)
    {
        var counts = new Dictionary<int, int>();
        foreach (var type in types.Where(t => t.Kinds.Count > 0))
        {
            counts[type.Number] = type.Animals.Count;
            foreach (var kind in type.Kinds.Where(k => k >= types.Count))
            {
                counts[kind] = Together(type, types).SelectMany(t => t.Animals).Distinct().Count();
            }
        }

        return counts;
    }

    // A type is a kind, and types that share an animal, one with the next, are one more.
    private static IReadOnlyList<int> KindsOf(FounderType type, FounderType[] all)
    {
        var together = Together(type, all);
        return together.Count == 1 ? [type.Number] : [type.Number, all.Length + together.Min(t => t.Number)];
    }

    private static List<FounderType> Together(FounderType type, IReadOnlyList<FounderType> all)
    {
        List<FounderType> together = [type];
        for (var i = 0; i < together.Count; i++)
        {
            together.AddRange(all.Where(t => !together.Exists(k => k.Number == t.Number) && t.Animals.Intersect(together[i].Animals).Any()).ToArray());
        }

        return together;
    }

    // An animal in doubt is taken for each state it may have or better: the doubt is then the founder's own.
    private static IEnumerable<(int Class, double Trust)> Readings(RouteWorld world, RouteAnimal animal)
    {
        IEnumerable<(int Class, double Trust)> readings = [(0, 1.0)];
        for (var g = 0; g < world.Groups.Count; g++)
        {
            var group = world.Groups[g];
            var weights = new double[group.Count(animal.Sex)];
            foreach (var (diplotype, weight) in animal.Belief[group.Group])
            {
                weights[group.StateOf(animal.Sex, diplotype)] += weight.Value;
            }

            var options = new List<(int State, double Trust)>();
            for (var s = 0; s < weights.Length; s++)
            {
                if (weights[s] <= 0.0 && (s != 0 || group.StaysWild))
                {
                    continue;
                }

                var trust = group.StaysWild
                    ? weights[s]
                    : Enumerable.Range(0, weights.Length).Where(x => group.Accepts(group.AtLeast(animal.Sex, s), animal.Sex, x)).Sum(x => weights[x]);
                options.Add((s, Math.Min(trust, 1.0)));
            }

            // A state that a better one is at least as sure as adds nothing.
            options.RemoveAll(o => !group.StaysWild && options.Any(b => b.State != o.State && b.Trust >= o.Trust - 1e-12
                && group.Accepts(group.AtLeast(animal.Sex, o.State), animal.Sex, b.State)
                && !group.Accepts(group.AtLeast(animal.Sex, b.State), animal.Sex, o.State)));
            var stride = world.Stride(animal.Sex, g);
            readings = [.. readings
                .SelectMany(r => options.Select(o => (r.Class + (o.State * stride), r.Trust * o.Trust)))
                .Where(r => r.Item2 >= LeastTrust)
                .OrderByDescending(r => r.Item2)
                .Take(MostReadings)];
        }

        return readings;
    }
}
