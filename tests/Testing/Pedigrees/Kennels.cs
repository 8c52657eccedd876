using Clutchwright.Genetics.Loci;

namespace Clutchwright.Testing.Pedigrees;

/// <summary>Made-up pedigrees of any size, the same on every run and in every language.</summary>
public static class Kennels
{
    /// <summary>A closed kennel: clutches of 4 to 8, few males, parents from the latest tenth. Deep: 33 to 60 generations.</summary>
    /// <param name="animals">How many animals, at least 20.</param>
    /// <param name="seed">The seed of the published figures is 1.</param>
    public static SamplePedigree Kennel(int animals, ulong seed = 1) => Grow(animals, seed, 50, 10, isRandom: false);

    /// <summary>The same with more founders and parents from the latest third: 14 to 20 generations.</summary>
    /// <param name="animals">How many animals, at least 20.</param>
    /// <param name="seed">The seed of the published figures is 1.</param>
    public static SamplePedigree Shallow(int animals, ulong seed = 1) => Grow(animals, seed, 10, 3, isRandom: false);

    /// <summary>One offspring a mating, any male: no full sibs to gain from.</summary>
    /// <param name="animals">How many animals, at least 20.</param>
    /// <param name="seed">The seed of the published figures is 1.</param>
    public static SamplePedigree RandomMating(int animals, ulong seed = 1) => Grow(animals, seed, 50, 10, isRandom: true);

    /// <summary>A breeder's stock over seasons: every female of the group has one clutch a season, half of them by the oldest male,
    /// one in ten hatchlings joins the breeders, and a female (in even seasons a male too) is bought.</summary>
    /// <param name="seasons">How many seasons.</param>
    /// <param name="females">The females at the start, and the most that breed.</param>
    /// <param name="males">The males at the start, and the most that breed.</param>
    /// <param name="seed">The published widths are of seeds 1 to 3.</param>
    public static SamplePedigree Seasons(int seasons, int females, int males, ulong seed)
    {
        var random = new SplitMix64(seed);
        var pedigree = new SamplePedigree();
        List<(int Position, int Born)> dams = [.. Enumerable.Range(0, females).Select(_ => (pedigree.Add(Sex.Female), 0))];
        List<(int Position, int Born)> sires = [.. Enumerable.Range(0, males).Select(_ => (pedigree.Add(Sex.Male), 0))];
        for (var season = 1; season <= seasons; season++)
        {
            dams.RemoveAll(dam => season - dam.Born > 6);
            sires.RemoveAll(sire => season - sire.Born > 6);
            dams.Add((pedigree.Add(Sex.Female), season));
            if (season % 2 == 0)
            {
                sires.Add((pedigree.Add(Sex.Male), season));
            }

            dams.RemoveRange(0, Math.Max(0, dams.Count - females));
            sires.RemoveRange(0, Math.Max(0, sires.Count - males));
            var activeSires = sires.ToArray();
            foreach (var dam in dams.ToArray())
            {
                var sire = random.Below(2) == 0 ? activeSires[0] : activeSires[random.Below(activeSires.Length)];
                var clutch = 4 + random.Below(5);
                for (var egg = 0; egg < clutch; egg++)
                {
                    var sex = DrawSex(random);
                    var hatchling = pedigree.Add(sex, sire.Position, dam.Position);
                    if (random.Below(10) == 0)
                    {
                        (sex == Sex.Male ? sires : dams).Add((hatchling, season + 2));
                    }
                }
            }
        }

        return pedigree;
    }

    private static SamplePedigree Grow(int animals, ulong seed, int founderShare, int windowShare, bool isRandom)
    {
        var random = new SplitMix64(seed);
        var pedigree = new SamplePedigree();
        var founders = Math.Max(20, animals / founderShare);
        for (var id = 1; id <= founders; id++)
        {
            pedigree.Add(id % 2 == 1 ? Sex.Male : Sex.Female);
        }

        while (pedigree.Count < animals)
        {
            var window = Math.Min(pedigree.Count, Math.Max(60, animals / windowShare));
            var low = pedigree.Count - window;
            int dam;
            do
            {
                dam = low + random.Below(window);
            }
            while (pedigree.Sexes[dam] != Sex.Female);

            int sire;
            do
            {
                sire = low + random.Below(window);
            }
            while (pedigree.Sexes[sire] != Sex.Male || !(isRandom || (sire + 1) % 10 is 1 or 5));

            var clutch = isRandom ? 1 : 4 + random.Below(5);
            for (var egg = 0; egg < clutch && pedigree.Count < animals; egg++)
            {
                pedigree.Add(DrawSex(random), sire, dam);
            }
        }

        return pedigree;
    }

    private static Sex DrawSex(SplitMix64 random) => random.Below(2) == 0 ? Sex.Male : Sex.Female;
}
