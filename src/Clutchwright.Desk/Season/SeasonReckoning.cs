using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Planning.Seasons;
using Clutchwright.Proofs.TestPairings;

namespace Clutchwright.Desk.Season;

/// <summary>What each pair of a season would give towards each goal.</summary>
internal sealed class SeasonReckoning(StockState stock, SeasonCandidates candidates, GoodEggs clutch, CancellationToken cancel)
{
    /// <summary>The most cases of what one male may be that are kept apart.</summary>
    public const int MostCases = 64;

    private static readonly Want Anything = new([new WantedGenotype(null, [])]);

    private readonly GenotypeBelief[] _sires = Array.ConvertAll(candidates.Sires, a => a.As(Sex.Male));
    private readonly GenotypeBelief[] _dams = Array.ConvertAll(candidates.Dams, a => a.As(Sex.Female));
    private readonly Dictionary<Probability, double[]> _numbers = [];
    private PairTable? _any;

    /// <summary>Males whose doubts were too many to keep apart.</summary>
    public HashSet<string> Blurred { get; } = [];

    private PairTable Any => _any ??= new(_sires, _dams, Anything);

    /// <summary>The dangers of a pair, gravest first.</summary>
    public Danger[] Dangers(int sire, int dam) => [.. Any.DangersOf(sire, dam).OrderByDescending(d => d.Severity)];

    /// <summary>The expected number of live hatchlings of each pair.</summary>
    public double[] Hatchlings() => Expected(Anything);

    /// <summary>The expected number of a want in the clutch of each pair.</summary>
    public double[] Expected(Want want)
    {
        var table = ReferenceEquals(want, Anything) ? Any : new PairTable(_sires, _dams, want);
        var groups = GroupsOf(want);
        return Array.ConvertAll(candidates.Pairs, pair =>
        {
            cancel.ThrowIfCancellationRequested();
            var (sire, dam) = (candidates.Sires[pair.Sire], candidates.Dams[pair.Dam]);
            var chance = table.ChanceOf(pair.Sire, pair.Dam).PerEgg;
            if (!chance.IsImpossible && stock.Beliefs.AreTied(sire.Key, dam.Key, groups))
            {
                chance = Cross.Of(StockMating.Of(stock, sire, dam, cancel)).ChanceOf(want);
            }

            return chance.Value * clutch.Mean;
        });
    }

    /// <summary>What every clutch gives of a want, by what the male may be.</summary>
    public SeasonGoal.AtLeast AtLeast(SeasonWish.AtLeast wish)
    {
        var groups = GroupsOf(wish.Want);
        var cases = Array.ConvertAll(candidates.Sires, s => CasesOf(s, groups));
        var rows = cases.SelectMany((c, s) => c.Select(k => k.Diplotypes.Aggregate(_sires[s], (b, d) => b.With(d.Key, [new(d.Value, Probability.Certain)])))).ToArray();
        var first = new int[cases.Length];
        for (var s = 1; s < cases.Length; s++)
        {
            first[s] = first[s - 1] + cases[s - 1].Count;
        }

        var table = new PairTable(rows, _dams, wish.Want);
        var numbers = Array.ConvertAll(candidates.Pairs, pair =>
        {
            cancel.ThrowIfCancellationRequested();
            return cases[pair.Sire].Select((c, k) => Number(ChanceOf(pair, c, first[pair.Sire] + k))).ToArray();
        });
        return Merged(wish, cases, numbers);

        SharedChance ChanceOf((int Sire, int Dam) pair, SireCase its, int row)
        {
            var chance = table.ChanceOf(row, pair.Dam);
            var (sire, dam) = (candidates.Sires[pair.Sire], candidates.Dams[pair.Dam]);
            if (chance.Ceiling.IsImpossible || !stock.Beliefs.AreTied(sire.Key, dam.Key, groups))
            {
                return chance;
            }

            // Kin share their doubts: she is what she may be if he is thus.
            var her = its.Diplotypes.Aggregate(_dams[pair.Dam], (b, d) => b.With(d.Key, Given(d.Key, sire, dam, x => x == d.Value, b[d.Key])));
            return Cross.Of(Mating.Of(rows[row], her)).SharedChanceOf(wish.Want);
        }
    }

    /// <summary>What every clutch tells of the doubt whether an animal is het.</summary>
    public SeasonGoal.Doubt Doubt(SeasonWish.Prove wish, List<string> notes)
    {
        var animal = stock.Find(wish.Tag)!;
        var (two, one) = Copies(animal.Belief.Genotype.PairsAt(wish.Allele.Locus), wish.Allele);
        if (!two.IsImpossible || one.IsImpossible || one.IsCertain)
        {
            notes.Add($"{wish.Tag}: there is no doubt whether it is het {wish.Allele.Name}, so no clutch can tell anything about it.");
        }

        var group = wish.Allele.Locus.Group;
        return new(wish.Name, wish.Weight, two.IsImpossible ? one.Value : 0.0, Array.ConvertAll(candidates.Pairs, pair =>
        {
            var (sire, dam) = (candidates.Sires[pair.Sire], candidates.Dams[pair.Dam]);
            if (sire != animal && dam != animal)
            {
                return null;
            }

            var mate = sire == animal ? dam : sire;
            var belief = mate.As(sire == animal ? Sex.Female : Sex.Male);
            if (stock.Beliefs.AreTied(animal.Key, mate.Key, [group]))
            {
                belief = belief.With(group, Given(group, animal, mate, IsHet, belief[group]));
            }

            var (visual, het) = Copies(belief.PairsAt(wish.Allele.Locus), wish.Allele);
            var cases = TestPairing.OfHet(mate.Animal.Tag, visual, het).IfSo;
            return visual.IsImpossible && het.IsImpossible ? null : new SeasonSilence(
                [.. clutch.Chances.Select(c => c.Value)],
                [.. Enumerable.Range(0, clutch.Chances.Count).Select(n => Math.Clamp(cases.Sum(c => c.Weight * Math.Pow(c.Classes[1], n)), 0.0, 1.0))]);
        })) { Least = wish.Least };

        bool IsHet(Diplotype diplotype)
        {
            var (a, b) = wish.Allele.Locus.PairOf(diplotype);
            return (a == wish.Allele.Index) != (b == wish.Allele.Index);
        }
    }

    private static (Probability Two, Probability One) Copies(IReadOnlyList<Weighted<(int First, int Second)>> pairs, Allele allele)
    {
        var (two, one) = (Probability.Impossible, Probability.Impossible);
        foreach (var (pair, weight) in pairs)
        {
            var copies = (pair.First == allele.Index ? 1 : 0) + (pair.Second == allele.Index ? 1 : 0);
            (two, one) = copies switch { 2 => (two + weight, one), 1 => (two, one + weight), _ => (two, one) };
        }

        return (two, one);
    }

    // The groups that decide what is wanted, and those that decide who lives.
    private LinkageGroup[] GroupsOf(Want want) => [.. want.Loci.Select(l => l.Group)
        .Concat(_sires[0].Species.Dangers.Where(d => !d.Viability.ToHatchling.IsCertain).SelectMany(d => d.Groups))
        .Distinct()];

    private List<SireCase> CasesOf(StockAnimal sire, LinkageGroup[] groups)
    {
        var belief = sire.As(Sex.Male);
        var cases = new List<SireCase> { new([], 1.0) };
        foreach (var group in groups.Where(g => belief[g].Count > 1))
        {
            if (cases.Count * belief[group].Count > MostCases)
            {
                Blurred.Add(sire.Animal.Tag);
                continue;
            }

            cases = [.. cases.SelectMany(_ => belief[group], (c, w) => new SireCase([.. c.Diplotypes, new(group, w.Value)], c.Weight * w.Weight.Value))];
        }

        return cases;
    }

    private IEnumerable<Weighted<Diplotype>> Given(
        LinkageGroup group, StockAnimal known, StockAnimal other, Func<Diplotype, bool> isSo, IReadOnlyList<Weighted<Diplotype>> otherwise)
    {
        var together = stock.Beliefs.Together(group, known.Key, other.Key, cancel).Where(w => isSo(w.Value.First)).ToArray();
        var total = together.Sum(w => w.Weight.Value);
        return total <= 0.0
            ? otherwise
            : together.GroupBy(w => w.Value.Second).Select(g => new Weighted<Diplotype>(g.Key, Probability.Rounded(g.Sum(w => w.Weight.Value) / total)));
    }

    private double[] Number(SharedChance chance)
    {
        var result = new double[clutch.Most + 1];
        foreach (var (perEgg, weight) in chance.Cases)
        {
            if (!_numbers.TryGetValue(perEgg, out var number))
            {
                _numbers.Add(perEgg, number = [.. clutch.NumberOf(perEgg)]);
            }

            for (var n = 0; n < result.Length; n++)
            {
                result[n] += weight.Value * number[n];
            }
        }

        return result;
    }

    // Cases of a male that give the same in every clutch are one case.
    private SeasonGoal.AtLeast Merged(SeasonWish.AtLeast wish, List<SireCase>[] cases, double[][][] numbers)
    {
        var weights = new IReadOnlyList<double>[cases.Length];
        var yields = new SeasonYield?[numbers.Length];
        var ofSire = Enumerable.Range(0, numbers.Length).ToLookup(p => candidates.Pairs[p].Sire);
        for (var s = 0; s < cases.Length; s++)
        {
            var kept = new List<(int Case, double Weight)>();
            for (var c = 0; c < cases[s].Count; c++)
            {
                var same = kept.FindIndex(k => ofSire[s].All(p => numbers[p][k.Case].AsSpan().SequenceEqual(numbers[p][c])));
                if (same < 0)
                {
                    kept.Add((c, cases[s][c].Weight));
                }
                else
                {
                    kept[same] = (kept[same].Case, kept[same].Weight + cases[s][c].Weight);
                }
            }

            weights[s] = [.. kept.Select(k => k.Weight)];
            foreach (var p in ofSire[s].Where(p => kept.Exists(k => numbers[p][k.Case].Skip(1).Any(n => n > 0.0))))
            {
                yields[p] = new([.. kept.Select(k => numbers[p][k.Case])]);
            }
        }

        return new(wish.Name, wish.Weight, wish.Count, weights, yields) { Least = wish.Least };
    }

    private sealed record SireCase(IReadOnlyList<KeyValuePair<LinkageGroup, Diplotype>> Diplotypes, double Weight);
}
