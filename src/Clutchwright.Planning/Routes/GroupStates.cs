using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Planning.Routes;

/// <summary>One linkage group reduced to the alleles that matter for a route: every other allele counts as wild.</summary>
/// <remarks>
/// States are diplotypes, one list for each sex, since on the sex chromosomes the order counts in one of them. A requirement is a set of
/// states that will do: "at least" a state, the accepted states of the target, or wild alone. Cost: one cross for each pair of states.
/// </remarks>
internal sealed class GroupStates
{
    private readonly bool[][] _relevant;
    private readonly Diplotype[][] _states = new Diplotype[2][];
    private readonly Dictionary<Diplotype, int>[] _indexOf = new Dictionary<Diplotype, int>[2];
    private readonly List<bool[][]> _accepted = [];
    private readonly List<StepChances> _chances = [];
    private double[][][] _children = [];

    /// <param name="species">The species.</param>
    /// <param name="group">The group.</param>
    /// <param name="relevant">For each locus of the group the alleles that are kept apart; wild is always kept.</param>
    /// <param name="staysWild">Whether young with any of these alleles are of no use: the group is there for a danger alone.</param>
    /// <param name="isExact">Whether a copy too many can do harm, so that young are asked for with just the copies wanted.</param>
    public GroupStates(Species species, LinkageGroup group, IReadOnlyList<IReadOnlySet<int>> relevant, bool staysWild, bool isExact)
    {
        IsExact = isExact;
        Species = species;
        Group = group;
        StaysWild = staysWild;
        _relevant = [.. group.Loci.Select((l, i) => Enumerable.Range(0, l.Alleles.Count).Select(a => a == 0 || relevant[i].Contains(a)).ToArray())];
        var haplotypes = Haplotypes();
        foreach (var sex in (Sex[])[Sex.Female, Sex.Male])
        {
            var ordered = group.IsSex && sex == species.SexSystem.Heterogametic();
            Diplotype[] states =
            [
                .. from a in haplotypes
                   from b in haplotypes
                   where ordered || a <= b
                   select new Diplotype(a, b),
            ];
            _states[Index(sex)] = [.. states.OrderBy(d => d.IsWild ? 0 : 1)];
            _indexOf[Index(sex)] = _states[Index(sex)].Select((d, i) => (d, i)).ToDictionary(p => p.d, p => p.i);
        }

        Breed();
        AddRequirements();
    }

    public Species Species { get; }

    public LinkageGroup Group { get; }

    public bool StaysWild { get; }

    /// <summary>Whether "at least a state" means that state alone.</summary>
    public bool IsExact { get; }

    /// <summary>Whether the sex of the young is told by this group's table.</summary>
    public bool TellsSex => Group.IsSex;

    public static int Index(Sex sex) => sex == Sex.Male ? 1 : 0;

    public int Count(Sex sex) => _states[Index(sex)].Length;

    public Diplotype State(Sex sex, int state) => _states[Index(sex)][state];

    /// <summary>The state of a whole diplotype, alleles that do not matter taken as wild.</summary>
    public int StateOf(Sex sex, Diplotype diplotype)
    {
        var (a, b) = (Reduce(diplotype.First), Reduce(diplotype.Second));
        var ordered = Group.IsSex && sex == Species.SexSystem.Heterogametic();
        return _indexOf[Index(sex)][ordered ? new(a, b) : Diplotype.Unordered(a, b)];
    }

    /// <summary>Adds a requirement by the states that will do, and gives its index. The first are "at least state i", i in order.</summary>
    public int Require(Func<Sex, Diplotype, bool> accepts)
    {
        _accepted.Add([.. ((Sex[])[Sex.Female, Sex.Male]).Select(sex => _states[Index(sex)].Select(d => accepts(sex, d)).ToArray())]);
        _chances.Add(new StepChances(this, _accepted[^1]));
        return _accepted.Count - 1;
    }

    public bool Accepts(int requirement, Sex sex, int state) => _accepted[requirement][Index(sex)][state];

    /// <summary>Whether a state meets a requirement, and one with more alleles does not.</summary>
    public bool CanSpoil(int requirement) => !IsExact && !StaysWild && ((Sex[])[Sex.Female, Sex.Male]).Any(sex => Enumerable.Range(0, Count(sex)).Any(s =>
        Accepts(requirement, sex, s) && Enumerable.Range(0, Count(sex)).Any(more => Accepts(AtLeast(sex, s), sex, more) && !Accepts(requirement, sex, more))));

    public StepChances ChancesOf(int requirement) => _chances[requirement];

    /// <summary>The chances of the young's states in a pair, live hatchlings an egg; on the sex chromosomes the sex is counted in.</summary>
    public ReadOnlySpan<double> Children(int sire, int dam, Sex sex) => _children[(sire * Count(Sex.Female)) + dam][Index(sex)];

    /// <summary>The index of the "at least this state" requirement: states of the two sexes have requirements of their own.</summary>
    public int AtLeast(Sex sex, int state) => StaysWild ? 0 : sex == Sex.Female ? state : (Group.IsSex ? Count(Sex.Female) : 0) + state;

    /// <summary>How many states of a sex may be asked of young.</summary>
    public int AskableCount(Sex sex) => StaysWild ? 1 : Count(sex);

    /// <summary>Whether a danger may be met in this group by young of a pair.</summary>
    public bool CanMeet(Danger danger, int sire, int dam)
    {
        foreach (var sex in (Sex[])[Sex.Female, Sex.Male])
        {
            if (danger.Sex is { } only && only != sex)
            {
                continue;
            }

            var laid = Laid(sire, dam, sex);
            for (var s = 0; s < laid.Length; s++)
            {
                if (laid[s] && danger.IsMetAt(Group, State(sex, s)))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>What can be seen at the group's loci of a hatchling in a state, with its chance.</summary>
    public IEnumerable<(string Seen, double Chance)> LooksOf(Sex sex, int state)
    {
        IEnumerable<(string Seen, double Chance)> looks = [(string.Empty, 1.0)];
        foreach (var locus in Group.Loci.Where((_, i) => _relevant[i].Count(r => r) > 1))
        {
            var (first, second) = locus.PairOf(State(sex, state));
            var here = locus.ExpressionsOf(first, second).Select(w => (Seen: Told(w.Value), Chance: w.Weight.Value)).ToArray();
            looks = [.. looks.SelectMany(l => here.Select(h => ($"{l.Seen}|{h.Seen}", l.Chance * h.Chance)))];
        }

        return looks.GroupBy(l => l.Seen, StringComparer.Ordinal).Select(g => (g.Key, g.Sum(l => l.Chance)));
    }

    /// <summary>The visible expressions of a state.</summary>
    public IEnumerable<Expression> Shown(Sex sex, int state) => Group.Loci
        .Select(l => l.PairOf(State(sex, state)) is var (a, b) ? l.ExpressionOf(a, b) : null!)
        .Where(e => e.IsVisible);

    /// <summary>The visible expressions that any state can show.</summary>
    public IEnumerable<Expression> Showable() => Enumerable.Range(0, Count(Sex.Female)).SelectMany(s => Shown(Sex.Female, s)).Distinct();

    // An expression that is first told months later does not help to choose whom to hold back.
    private static string Told(Expression expression) => expression.TellableFrom <= AgeStage.Juvenile ? expression.Id : string.Empty;

    private readonly List<bool[][]> _laid = [];

    private bool[] Laid(int sire, int dam, Sex sex) => _laid[(sire * Count(Sex.Female)) + dam][Index(sex)];

    private int Reduce(int haplotype)
    {
        var result = 0;
        for (var i = 0; i < Group.Loci.Count; i++)
        {
            var allele = Group.AlleleAt(haplotype, i);
            if (_relevant[i][allele])
            {
                result = Group.With(result, i, allele);
            }
        }

        return result;
    }

    private List<int> Haplotypes()
    {
        List<int> all = [0];
        for (var i = 0; i < Group.Loci.Count; i++)
        {
            var locus = i;
            var alleles = Enumerable.Range(0, Group.Loci[i].Alleles.Count).Where(a => _relevant[locus][a]).ToArray();
            all = [.. all.SelectMany(h => alleles.Select(a => Group.With(h, locus, a)))];
        }

        return all;
    }

    private void Breed()
    {
        var children = new List<double[][]>();
        foreach (var sire in _states[1])
        {
            foreach (var dam in _states[0])
            {
                var mating = Mating.Of(
                    Genotype.Wild(Species, Sex.Male).With(Group, sire), Genotype.Wild(Species, Sex.Female).With(Group, dam));
                double[][] live = [new double[_states[0].Length], new double[_states[1].Length]];
                bool[][] laid = [new bool[_states[0].Length], new bool[_states[1].Length]];
                foreach (var outcome in Cross.Of(mating).Genotypes())
                {
                    // Only the sex chromosomes carry the chance of the sex; elsewhere chances are within a sex.
                    var scale = outcome.Sex is not null && !Group.IsSex ? 2.0 : 1.0;
                    foreach (var sex in (Sex[])[Sex.Female, Sex.Male])
                    {
                        if (outcome.Sex is { } only && only != sex)
                        {
                            continue;
                        }

                        var half = outcome.Sex is null && Group.IsSex ? 0.5 : 1.0;
                        var state = StateOf(sex, outcome.Genotype[Group]);
                        live[Index(sex)][state] += outcome.Chance.Value * outcome.Survival.Value * scale * half;
                        laid[Index(sex)][state] |= !outcome.Chance.IsImpossible;
                    }
                }

                children.Add(live);
                _laid.Add(laid);
            }
        }

        _children = [.. children];
    }

    private void AddRequirements()
    {
        if (StaysWild)
        {
            Require((_, d) => d.IsWild);
            return;
        }

        var gives = ((Sex[])[Sex.Female, Sex.Male]).Select(sex => Enumerable.Range(0, Count(sex)).Select(s => Gives(sex, s)).ToArray()).ToArray();
        foreach (var sex in Group.IsSex ? (Sex[])[Sex.Female, Sex.Male] : [Sex.Female])
        {
            for (var s = 0; s < Count(sex); s++)
            {
                var least = gives[Index(sex)][s];
                var of = sex;
                var state = s;
                Require((other, d) => (!Group.IsSex || other == of) && (IsExact
                    ? _indexOf[Index(other)][d] == state
                    : gives[Index(other)][_indexOf[Index(other)][d]].Zip(least).All(p => p.First >= p.Second - 1e-12)));
            }
        }
    }

    // What young of this parent and a wild mate get: the chance of each set of alleles or more, daughters and sons apart.
    private double[] Gives(Sex sex, int state)
    {
        var result = new List<double>();
        var (sire, dam) = sex == Sex.Male ? (state, 0) : (0, state);
        foreach (var child in (Sex[])[Sex.Female, Sex.Male])
        {
            // Laid, not hatched: a set that kills is still given.
            var young = Transmitted(sire, dam, child);
            foreach (var wanted in Haplotypes().Where(h => h != 0))
            {
                result.Add(young.Where(y => Has(y.Diplotype.First, wanted) || Has(y.Diplotype.Second, wanted)).Sum(y => y.Chance));
            }
        }

        return [.. result];
    }

    private IEnumerable<(Diplotype Diplotype, double Chance)> Transmitted(int sire, int dam, Sex child)
    {
        var mating = Mating.Of(
            Genotype.Wild(Species, Sex.Male).With(Group, _states[1][sire]), Genotype.Wild(Species, Sex.Female).With(Group, _states[0][dam]));
        return Cross.Of(mating).Genotypes().Where(o => o.Sex is null || o.Sex == child).Select(o => (o.Genotype[Group], o.Chance.Value));
    }

    private bool Has(int haplotype, int wanted)
    {
        for (var i = 0; i < Group.Loci.Count; i++)
        {
            var allele = Group.AlleleAt(wanted, i);
            if (allele != 0 && Group.AlleleAt(haplotype, i) != allele)
            {
                return false;
            }
        }

        return true;
    }
}
