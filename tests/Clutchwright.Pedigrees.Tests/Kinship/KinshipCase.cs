using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Kinship;
using Clutchwright.Testing;
using CsCheck;

namespace Clutchwright.Pedigrees.Tests.Kinship;

/// <summary>A random pedigree: animals in birth order, parents by number, some unknown, some sires in doubt.</summary>
public sealed class KinshipCase
{
    /// <summary>By animal, the number of its sire; -1: not known or in doubt.</summary>
    public required int[] Sires { get; init; }

    public required int[] Dams { get; init; }

    /// <summary>By animal, the possible sires with the weights they have of a common whole.</summary>
    public required (int Sire, int Weight)[][] Possible { get; init; }

    /// <summary>By animal, the clutch of which the sire is in doubt; -1: the animal alone.</summary>
    public required int[] Clutches { get; init; }

    public int Count => Sires.Length;

    public static Gen<KinshipCase> Any(int most, bool doubt) => Draw.Gen(draw =>
    {
        var n = 2 + draw.Below(most - 1);
        var founders = 1 + draw.Below(Math.Min(n, 5));
        var (sires, dams, possible, clutches) = (new int[n], new int[n], new (int, int)[n][], new int[n]);
        var doubts = 0;
        for (var i = 0; i < n; i++)
        {
            draw.Count();
            (sires[i], dams[i], possible[i], clutches[i]) = (-1, -1, [], -1);
            if (i < founders)
            {
                continue;
            }

            sires[i] = draw.Chance(1, 8) ? -1 : draw.Below(i);
            dams[i] = draw.Chance(1, 8) ? -1 : draw.Below(i);
            if (doubt && i >= 2 && draw.Chance(1, 4) && doubts < 4)
            {
                doubts++;
                sires[i] = -1;
                var count = 2 + draw.Below(Math.Min(2, i - 1));
                possible[i] = [.. Enumerable.Range(0, i).OrderBy(_ => draw.Below(1000)).Take(count).Select(s => (s, 1 + draw.Below(3)))];
                clutches[i] = draw.Chance(1, 2) ? -1 : i;
            }
            else if (doubt && i > 0 && possible[i - 1].Length > 0 && draw.Chance(1, 2))
            {
                (sires[i], possible[i], clutches[i]) = (-1, possible[i - 1], clutches[i - 1]);
                doubts += clutches[i] < 0 ? 1 : 0;
            }
        }

        return new KinshipCase { Sires = sires, Dams = dams, Possible = possible, Clutches = clutches };
    });

    public static string Key(int animal) => $"a{animal}";

    public Pedigree ToPedigree() => Pedigree.Of(Animals());

    public IEnumerable<PedigreeAnimal> Animals() => Enumerable.Range(0, Count).Select(i => new PedigreeAnimal(
        Key(i), Name(Sires[i]), Name(Dams[i]), [.. Possible[i].Select(p => Key(p.Sire))]));

    public KinshipSettings Settings() => new()
    {
        SireWeights = Enumerable.Range(0, Count).Where(i => Possible[i].Length > 0).ToDictionary(
            Key,
            i => (IReadOnlyList<Probability>)[.. Possible[i].Select(p => Probability.Ratio(p.Weight, Possible[i].Sum(q => q.Weight)))]),
        Clutches = Enumerable.Range(0, Count).Where(i => Clutches[i] >= 0).ToDictionary(Key, i => Key(Clutches[i])),
    };

    public override string ToString() => string.Join('\n', Animals().Select((a, i) =>
        $"{a} {string.Join('|', Possible[i].Select(p => p.Weight))}{(Clutches[i] < 0 ? "" : $" clutch {Clutches[i]}")}"));

    private static string? Name(int animal) => animal < 0 ? null : Key(animal);
}
