using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Genetics.Tests.Twin;

/// <summary>One animal: the alleles on its two strands, three bits a locus; X or Z first where the sex chromosomes differ.</summary>
internal readonly record struct TwinAnimal(Sex Sex, long First, long Second)
{
    public static long Code(IReadOnlyList<int> alleles)
    {
        var code = 0L;
        for (var l = 0; l < alleles.Count; l++)
        {
            code |= (long)alleles[l] << (3 * l);
        }

        return code;
    }

    public (int First, int Second) Pair(int locus) => ((int)(First >> (3 * locus)) & 7, (int)(Second >> (3 * locus)) & 7);
}

/// <summary>A look as the slow twin finds it.</summary>
internal sealed class TwinLook<T>(int cases, int loci)
    where T : struct, ITwinNumber<T>
{
    /// <summary>Gets the chance per egg in each case of the parents.</summary>
    public T[] ByCase { get; } = new T[cases];

    /// <summary>Gets forms that show faintly in some animals.</summary>
    public HashSet<string> Faint { get; } = [];

    /// <summary>Gets by locus the chance of each pair of alleles together with the look.</summary>
    public Dictionary<(int First, int Second, bool IsOrdered), T>[] Pairs { get; } =
        Enumerable.Range(0, loci).Select(_ => new Dictionary<(int, int, bool), T>()).ToArray();

    /// <summary>Gets the form seen at each locus.</summary>
    public required string?[] Seen { get; init; }
}

/// <summary>A cross worked out from the definitions with nothing left out: every case of the parents, every gamete by every pattern of
/// crossing over, every child, everything it may show. Slow, and as plain as can be.</summary>
internal sealed class SlowTwin<T>
    where T : struct, ITwinNumber<T>
{
    private readonly SpeciesDefinition _species;
    private readonly List<TwinCluster> _clusters;
    private readonly T[] _weights;
    private readonly Dictionary<TwinAnimal, T[]> _children = [];

    public SlowTwin(SpeciesDefinition species, IReadOnlyList<(TwinAnimal Sire, TwinAnimal Dam, T Weight)> cases)
    {
        _species = species;
        _clusters = TwinCluster.Of(species);
        _weights = cases.Select(c => c.Weight).ToArray();
        Forms = new(species);
        for (var k = 0; k < cases.Count; k++)
        {
            var fromDam = Gametes(cases[k].Dam);
            foreach (var (sire, sireChance) in Gametes(cases[k].Sire))
            {
                foreach (var (dam, damChance) in fromDam)
                {
                    var child = Child(sire, dam);
                    if (!_children.TryGetValue(child, out var byCase))
                    {
                        _children.Add(child, byCase = new T[cases.Count]);
                    }

                    byCase[k] += sireChance * damChance;
                }
            }
        }

        foreach (var impossible in _children.Where(c => Array.TrueForAll(c.Value, p => p.IsZero)).Select(c => c.Key).ToArray())
        {
            _children.Remove(impossible);
        }

        IsBySex = _children.Keys.Any(c => Enumerable.Range(0, species.Loci.Count)
                .Any(l => species.Loci[l].Placement is Placement.SexLinked && c.Pair(l) != (0, 0)))
            || species.Dangers.Any(d => d.Sex is not null && !(d.Viability.Egg * d.Viability.Hatch).IsCertain
                && _children.Keys.Any(c => Forms.IsMet(d, c.Sex, c.Pair)));
    }

    public TwinForms Forms { get; }

    /// <summary>Gets whether the sexes are told apart: an allele on the sex chromosomes or a loss in one sex is in play.</summary>
    public bool IsBySex { get; }

    public IReadOnlyList<T> Weights => _weights;

    public IEnumerable<TwinAnimal> Children => _children.Keys;

    /// <summary>Gets the chance of a child of eggs laid.</summary>
    public T Laid(TwinAnimal child) => _children.TryGetValue(child, out var byCase) ? Over(byCase) : T.Zero;

    public T Survival() => Over(Sum(_ => true, living: true));

    /// <summary>The chance by case of living children that meet a condition.</summary>
    public T[] Hatched(Func<TwinAnimal, bool> condition) => Sum(condition, living: true);

    public T ChanceOf(DangerDefinition danger) => Over(Sum(c => Forms.IsMet(danger, c.Sex, c.Pair), living: false));

    /// <summary>The mean over the cases of the parents.</summary>
    public T Over(IReadOnlyList<T> byCase)
    {
        var sum = T.Zero;
        for (var k = 0; k < _weights.Length; k++)
        {
            sum += _weights[k] * byCase[k];
        }

        return sum;
    }

    /// <summary>Every look at a stage, by its text: the forms seen in the order of the loci, and the sex where it is told apart.</summary>
    public Dictionary<string, TwinLook<T>> Looks(AgeStage stage)
    {
        var looks = new Dictionary<string, TwinLook<T>>(StringComparer.Ordinal);
        foreach (var (child, byCase) in _children)
        {
            var lives = T.Of(Forms.Survival(child.Sex, child.Pair));
            foreach (var (shown, share) in Shown(child))
            {
                var alive = lives * share;
                if (alive.IsZero)
                {
                    continue;
                }

                var told = shown.Select((f, l) => f is not null && Forms.TellableFrom(l, f) > stage ? null : f).ToArray();
                var (seen, faint) = Forms.Look(told);
                var key = LookText(seen.OfType<string>(), IsBySex ? child.Sex : null);
                if (!looks.TryGetValue(key, out var look))
                {
                    looks.Add(key, look = new(_weights.Length, seen.Length) { Seen = seen });
                }

                look.Faint.UnionWith(faint);
                for (var k = 0; k < byCase.Length; k++)
                {
                    look.ByCase[k] += byCase[k] * alive;
                }

                AddPairs(look, child, Over(byCase) * alive);
            }
        }

        return looks;
    }

    public static string LookText(IEnumerable<string> forms, Sex? sex) => string.Join(", ", forms) + (sex is { } s ? $" ({s})" : "");

    public bool IsHeterogametic(Sex sex) => sex == (_species.SexSystem == SexSystem.XY ? Sex.Male : Sex.Female);

    /// <summary>The same animal with unordered strands put in one order, chromosome by chromosome.</summary>
    public TwinAnimal Canonical(TwinAnimal animal)
    {
        var (first, second) = (0L, 0L);
        foreach (var cluster in _clusters)
        {
            var mask = cluster.Bits;
            var (a, b) = (animal.First & mask, animal.Second & mask);
            if (a > b && !(cluster.IsSex && IsHeterogametic(animal.Sex)))
            {
                (a, b) = (b, a);
            }

            first |= a;
            second |= b;
        }

        return new(animal.Sex, first, second);
    }

    private TwinAnimal Child((long Alleles, bool Unshared) sire, (long Alleles, bool Unshared) dam)
    {
        var deciding = IsHeterogametic(Sex.Male) ? sire : dam;
        var other = IsHeterogametic(Sex.Male) ? dam : sire;
        var sex = deciding.Unshared == IsHeterogametic(Sex.Male) ? Sex.Male : Sex.Female;
        return Canonical(new(sex, other.Alleles, deciding.Alleles));
    }

    private T[] Sum(Func<TwinAnimal, bool> condition, bool living)
    {
        var sum = new T[_weights.Length];
        foreach (var (child, byCase) in _children.Where(c => condition(c.Key)))
        {
            var share = living ? T.Of(Forms.Survival(child.Sex, child.Pair)) : T.One;
            for (var k = 0; k < sum.Length; k++)
            {
                sum[k] += byCase[k] * share;
            }
        }

        return sum;
    }

    private Dictionary<(long Alleles, bool Unshared), T> Gametes(TwinAnimal parent)
    {
        var gametes = new Dictionary<(long Alleles, bool Unshared), T> { [(0, false)] = T.One };
        foreach (var cluster in _clusters)
        {
            var next = new Dictionary<(long Alleles, bool Unshared), T>();
            foreach (var (strands, chance) in Patterns(cluster, IsHeterogametic(parent.Sex)))
            {
                var (alleles, unshared) = (0L, false);
                for (var i = 0; i < strands.Length; i++)
                {
                    if (cluster.Places[i] < 0)
                    {
                        unshared = IsHeterogametic(parent.Sex) && strands[i] == 1;
                    }
                    else
                    {
                        alleles |= (strands[i] == 0 ? parent.First : parent.Second) & (7L << (3 * cluster.Places[i]));
                    }
                }

                foreach (var (sofar, before) in gametes)
                {
                    var key = (sofar.Alleles | alleles, sofar.Unshared || unshared);
                    next[key] = (next.TryGetValue(key, out var old) ? old : T.Zero) + (before * chance);
                }
            }

            gametes = next;
        }

        return gametes;
    }

    // Either strand first, and a crossing over or none in every interval.
    private static IEnumerable<(int[] Strands, T Chance)> Patterns(TwinCluster cluster, bool heterogametic)
    {
        var fractions = cluster.IsSex && !heterogametic ? cluster.OtherFractions : cluster.Fractions;
        for (var pattern = 0; pattern < 1 << cluster.Places.Length; pattern++)
        {
            var strands = new int[cluster.Places.Length];
            var chance = T.Of(0.5);
            strands[0] = pattern & 1;
            for (var i = 0; i < fractions.Length; i++)
            {
                var crosses = (pattern >> (i + 1)) & 1;
                strands[i + 1] = strands[i] ^ crosses;
                chance *= crosses == 1 ? T.Of(fractions[i]) : T.One - T.Of(fractions[i]);
            }

            if (!chance.IsZero)
            {
                yield return (strands, chance);
            }
        }
    }

    private List<(string?[] Shown, T Share)> Shown(TwinAnimal child)
    {
        var ways = new List<(string?[] Shown, T Share)> { ([], T.One) };
        for (var l = 0; l < _species.Loci.Count; l++)
        {
            var (a, b) = child.Pair(l);
            var form = Forms.Form(l, a, b);
            var shows = form is null ? T.One : T.Of(Forms.Penetrance(l, a, b));
            var next = new List<(string?[] Shown, T Share)>();
            foreach (var (shown, share) in ways)
            {
                next.Add(([.. shown, form], share * shows));
                if (!(T.One - shows).IsZero)
                {
                    next.Add(([.. shown, null], share * (T.One - shows)));
                }
            }

            ways = next;
        }

        return ways;
    }

    private void AddPairs(TwinLook<T> look, TwinAnimal child, T chance)
    {
        for (var l = 0; l < look.Pairs.Length; l++)
        {
            var (a, b) = child.Pair(l);
            var ordered = _species.Loci[l].Placement is Placement.SexLinked && IsHeterogametic(child.Sex) && a != b;
            var key = ordered || a <= b ? (a, b, ordered) : (b, a, false);
            look.Pairs[l][key] = (look.Pairs[l].TryGetValue(key, out var old) ? old : T.Zero) + chance;
        }
    }
}
