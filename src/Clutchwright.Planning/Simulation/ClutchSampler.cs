using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Planning.Simulation;

/// <summary>One clutch as drawn, before its genotypes.</summary>
/// <param name="Eggs">Eggs laid; 0 where the female did not lay.</param>
/// <param name="Fertile">Eggs fertile.</param>
/// <param name="Good">Fertile eggs that hatch if only their genotype lets them.</param>
public readonly record struct ClutchDraw(int Eggs, int Fertile, int Good);

/// <summary>Draws clutches: whether the female lays, how many eggs, how many of these are fertile and how many hatch. Immutable, and safe to use
/// from many threads.</summary>
public sealed class ClutchSampler
{
    private readonly ClutchDraw[] _draws;
    private readonly AliasTable _table;

    private ClutchSampler(IReadOnlyList<(ClutchDraw Draw, double Chance)> draws)
    {
        _draws = [.. draws.Select(d => d.Draw)];
        _table = AliasTable.Of([.. draws.Select(d => d.Chance)]);
    }

    /// <summary>Clutches with every stage.</summary>
    /// <param name="eggs">The chance of each number of eggs; index n holds the chance of n. Sums to 1.</param>
    /// <param name="laying">The chance that the female lays at all.</param>
    /// <param name="fertility">The share of eggs that are fertile; may vary from clutch to clutch.</param>
    /// <param name="hatchRate">The share of fertile eggs that hatch, genotype aside; may vary from clutch to clutch.</param>
    /// <remarks>The joint distribution of <see cref="GoodEggs.Of"/>, written out: cost O(n³) once for n the most eggs, then one random number a clutch.</remarks>
    /// <exception cref="ArgumentException">The chances do not sum to 1.</exception>
    public static ClutchSampler Of(IReadOnlyList<double> eggs, Probability laying, ClutchRate fertility, ClutchRate hatchRate)
    {
        if (eggs.Any(p => p < 0.0 || double.IsNaN(p)) || Math.Abs(eggs.Sum() - 1.0) > 1e-9)
        {
            throw new ArgumentException("The chances of the egg numbers do not sum to 1.", nameof(eggs));
        }

        var always = ClutchRate.Fixed(1.0);
        var hatching = Enumerable.Range(0, eggs.Count).Select(n => Left(n, always, hatchRate)).ToArray();
        var draws = new List<(ClutchDraw, double)> { (default, 1.0 - laying.Value) };
        for (var laid = 0; laid < eggs.Count; laid++)
        {
            var fertile = Left(laid, fertility, always);
            for (var f = 0; f < fertile.Count; f++)
            {
                for (var good = 0; good < hatching[f].Count; good++)
                {
                    var chance = laying.Value * eggs[laid] * fertile[f].Value * hatching[f][good].Value;
                    if (chance > 0.0)
                    {
                        draws.Add((new(laid, f, good), chance));
                    }
                }
            }
        }

        return new(draws);

        static IReadOnlyList<Probability> Left(int count, ClutchRate fertility, ClutchRate hatchRate) =>
            GoodEggs.Of([.. Enumerable.Range(0, count + 1).Select(n => n == count ? 1.0 : 0.0)], Probability.Certain, fertility, hatchRate).Chances;
    }

    /// <summary>Clutches of which only the good eggs are told apart: all eggs count as fertile and good.</summary>
    public static ClutchSampler Of(GoodEggs clutch) =>
        new([.. clutch.Chances.Select((p, n) => (new ClutchDraw(n, n, n), p.Value))]);

    /// <summary>Clutches of which only the good eggs are told apart, and whether the female laid at all.</summary>
    /// <param name="clutch">The good eggs of a paired female; that she may not lay is part of it.</param>
    /// <param name="laying">The chance that she lays, above 0 and up to 1. A clutch without a good egg counts as one of a single egg.</param>
    internal static ClutchSampler Of(GoodEggs clutch, double laying)
    {
        var none = clutch.Chances[0].Value;
        return new(
        [
            (default, Math.Min(none, 1.0 - laying)),
            (new(1, 0, 0), Math.Max(0.0, none - (1.0 - laying))),
            .. clutch.Chances.Select((p, n) => (new ClutchDraw(n, n, n), p.Value)).Skip(1),
        ]);
    }

    /// <summary>Draws a clutch.</summary>
    public ClutchDraw Draw(CountedRandom random) => _draws[_table.Draw(random)];

    /// <summary>Draws a clutch of a pair and what hatches from it.</summary>
    /// <param name="cross">The pair.</param>
    /// <param name="random">The stream.</param>
    /// <param name="hatched">Gets the class of each live hatchling, by its place in the cross; emptied first.</param>
    public ClutchDraw Draw(CompiledCross cross, CountedRandom random, List<int> hatched)
    {
        var clutch = Draw(random);
        hatched.Clear();
        for (var egg = 0; egg < clutch.Good; egg++)
        {
            if (cross.Draw(random) is var place && place >= 0)
            {
                hatched.Add(place);
            }
        }

        return clutch;
    }

    /// <summary>Draws a clutch of two animals of a simulation and what hatches from it.</summary>
    /// <param name="species">The species, made ready.</param>
    /// <param name="sire">The sire.</param>
    /// <param name="dam">The dam.</param>
    /// <param name="random">The stream.</param>
    /// <param name="hatched">Gets the live hatchlings; emptied first.</param>
    public ClutchDraw Draw(CompiledSpecies species, CompiledAnimal sire, CompiledAnimal dam, CountedRandom random, List<CompiledAnimal> hatched)
    {
        var clutch = Draw(random);
        hatched.Clear();
        for (var egg = 0; egg < clutch.Good; egg++)
        {
            if (species.Hatches(sire, dam, random, out var young))
            {
                hatched.Add(young);
            }
        }

        return clutch;
    }
}
