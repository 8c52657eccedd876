using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Meiosis;
using Clutchwright.Pedigrees.Beliefs;

namespace Clutchwright.Pedigrees.Tests.Beliefs.Twin;

/// <summary>What an animal can be at one linkage group, and what the records say of it, straight from docs/model/beliefs.md.</summary>
internal sealed class TwinGroup
{
    private readonly Species _species;
    private readonly BeliefSettings _settings;
    private readonly Sex _two;
    private readonly List<int>[] _alleles;
    private readonly Dictionary<Observation, double[]> _weights = new(ReferenceEqualityComparer.Instance);
    private readonly List<(int Child, double Chance)>?[,] _young;
    private readonly Dictionary<(int State, Sex? Sex), double> _lives = [];

    private TwinGroup(Species species, LinkageGroup group, List<int>[] alleles, BeliefSettings settings)
    {
        _species = species;
        _settings = settings;
        _alleles = alleles;
        _two = species.SexSystem.Heterogametic();
        Group = group;
        var haplotypes = Enumerable.Range(0, group.HaplotypeCount)
            .Where(h => group.Loci.All(l => alleles[l.IndexInGroup].Contains(group.AlleleAt(h, l.IndexInGroup))))
            .ToArray();
        foreach (var first in haplotypes)
        {
            foreach (var second in haplotypes)
            {
                if (first <= second)
                {
                    States.Add((new(first, second), group.IsSex ? _two.Opposite() : null));
                }

                if (group.IsSex)
                {
                    States.Add((new(first, second), _two));
                }
            }
        }

        _young = new List<(int, double)>?[States.Count, States.Count];
    }

    public LinkageGroup Group { get; }

    public List<(Diplotype Diplotype, Sex? Sex)> States { get; } = [];

    /// <summary>The group, if an allele is in play there: one that a record of any animal names or that has a frequency.</summary>
    public static TwinGroup? Of(Species species, LinkageGroup group, IReadOnlyList<RecordedAnimal> animals, BeliefSettings settings)
    {
        var readings = animals.SelectMany(a => a.Observations).Select(ReadingOf).OfType<GenotypeBelief>().ToArray();
        var tested = animals.SelectMany(a => a.Observations).OfType<Observation.DnaTest>().Select(t => t.Allele).ToHashSet();
        var alleles = group.Loci.Select(locus => locus.Alleles.Select(a => a.Index).Where(a => a == 0
            || settings.Frequencies.GetValueOrDefault(locus.Alleles[a]) > 0.0
            || tested.Contains(locus.Alleles[a])
            || Array.Exists(readings, r => Names(r, locus, a))).ToList()).ToArray();
        return Array.TrueForAll(alleles, a => a.Count == 1) ? null : new(species, group, alleles, settings);
    }

    public static GenotypeBelief? ReadingOf(Observation observation) => observation switch
    {
        Observation.Seen seen => seen.Reading,
        Observation.Said said => said.Reading,
        _ => null,
    };

    public static bool Names(GenotypeBelief reading, Locus locus, int allele) =>
        reading[locus.Group].Any(w => locus.PairOf(w.Value) is var (a, b) && (a == allele || b == allele));

    /// <summary>Whether a record says something here: words that leave the group wild do not.</summary>
    public bool Speaks(Observation observation) => observation switch
    {
        Observation.Said said => said.Reading[Group].Any(w => w.Value != default),
        Observation.RuledOut ruledOut => ruledOut.Alleles.Any(a => a.Locus.Group == Group),
        Observation.DnaTest test => test.Allele.Locus.Group == Group,
        _ => true,
    };

    /// <summary>Whether it is a possible het that someone told.</summary>
    public bool IsChanceTold(Observation observation) =>
        observation is Observation.Said { Basis: StatementBasis.Told } said && Speaks(said) && said.Reading[Group].Any(w => w.Value == default);

    public bool Carries(int state, Observation.Said said)
    {
        foreach (var locus in Group.Loci)
        {
            var (a, b) = locus.PairOf(States[state].Diplotype);
            if ((a > 0 && Names(said.Reading, locus, a)) || (b > 0 && Names(said.Reading, locus, b)))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Every young of a pair with its chance in an egg, by Mendel.</summary>
    public List<(int Child, double Chance)> Eggs(int sire, int dam)
    {
        if (_young[sire, dam] is { } known)
        {
            return known;
        }

        var eggs = new Dictionary<int, double>();
        foreach (var fromSire in GameteFormation.Of(Group, States[sire].Diplotype, _two == Sex.Male))
        {
            foreach (var fromDam in GameteFormation.Of(Group, States[dam].Diplotype, _two == Sex.Female))
            {
                var child = States.IndexOf(Fertilization.Of(_species, Group, fromSire.Value, fromDam.Value));
                eggs[child] = eggs.GetValueOrDefault(child) + (fromSire.Weight.Value * fromDam.Weight.Value);
            }
        }

        return _young[sire, dam] = [.. eggs.Where(e => e.Value > 0.0).Select(e => (e.Key, e.Value))];
    }

    /// <summary>The chance to live to hatch; of an animal whose sex is not known the mean of both where the group does not tell it.</summary>
    public double Lives(int state, Sex? sex) => (States[state].Sex ?? sex) is { } own
        ? _species.Dangers
            .Where(d => d.Groups.Count == 1 && d.Groups[0] == Group && (d.Sex is null || d.Sex == own) && d.IsMetAt(Group, States[state].Diplotype))
            .Aggregate(1.0, (chance, d) => chance * d.Viability.Egg.Value * d.Viability.Hatch.Value)
        : (Lives(state, Sex.Female) + Lives(state, Sex.Male)) / 2.0;

    /// <summary>The same, kept once worked out.</summary>
    public double LivesKept(int state, Sex? sex)
    {
        if (!_lives.TryGetValue((state, sex), out var lives))
        {
            _lives.Add((state, sex), lives = Lives(state, sex));
        }

        return lives;
    }

    public bool IsOf(int state, Sex? sex) => sex is null || States[state].Sex is null || States[state].Sex == sex;

    /// <summary>The chance of a record by state, the record being right.</summary>
    public double[] Chances(Observation observation)
    {
        if (!_weights.TryGetValue(observation, out var chances))
        {
            chances = [.. Enumerable.Range(0, States.Count).Select(s => observation switch
            {
                Observation.Seen seen => Group.Loci.Aggregate(1.0, (p, l) => p * OfLook(seen, l, s)),
                Observation.Said said => Speaks(said) && !said.Reading[Group].Any(w => Means(said.Reading, w.Value, s)) ? 0.0 : 1.0,
                Observation.RuledOut ruledOut => ruledOut.Alleles.Any(a => a.Locus.Group == Group && Copies(s, a) > 0) ? 0.0 : 1.0,
                Observation.DnaTest test => test.Allele.Locus.Group == Group ? OfTest(test, s) : 1.0,
                _ => throw new InvalidOperationException(),
            })];
            _weights.Add(observation, chances);
        }

        return chances;
    }

    /// <summary>A founder drawn at random from those that live.</summary>
    /// <param name="sex">Its sex.</param>
    /// <param name="let">Which alleles without a frequency are let in.</param>
    public double[] AtRandom(Sex? sex, Func<Locus, int, bool> let) =>
        Scaled(s => Union(s, sex, h => Haplotype(h, let)) * Lives(s, sex));

    /// <summary>A founder where the records cannot be true otherwise: it may carry everything, and be what does not live.</summary>
    public double[] AsNeeded(Sex? sex) =>
        Scaled(s => Union(s, sex, h => Haplotype(h, (_, _) => true)) * Math.Max(Lives(s, sex), Math.Pow(2.0, -50)));

    /// <summary>What words make of a founder.</summary>
    public double[] FromWords(GenotypeBelief reading, Sex? sex)
    {
        var start = new double[States.Count];
        foreach (var own in Group.IsSex ? new Sex?[] { Sex.Female, Sex.Male } : [null])
        {
            foreach (var (diplotype, weight) in reading[Group])
            {
                // Of the sex the words were read for they say which chromosome it is on; of the other either is as likely.
                var meant = Enumerable.Range(0, States.Count).Where(s => States[s].Sex == own && Means(reading, diplotype, s)).ToArray();
                foreach (var s in meant)
                {
                    start[s] += weight.Value * ShareOf(own, sex) / meant.Length;
                }
            }
        }

        return start;
    }

    /// <summary>The fewest copies of what a look speaks of that make it; <c>null</c> where alleles with a frequency make it.</summary>
    public double[]? FromLook(Observation.Seen seen, Sex? sex)
    {
        var match = RightlyRead(seen);
        for (var copies = 0; copies <= 2 * Group.Loci.Count; copies++)
        {
            var start = Scaled(s => CopiesWithoutFrequency(s, seen.Reading) == copies
                ? Union(s, sex, h => Group.Loci.Aggregate(1.0, (p, l) => p * (Frequency(l, At(h, l), (_, _) => false) is > 0.0 and var f ? f : 1.0))) * match[s] * Lives(s, sex)
                : 0.0);
            if (Array.Exists(start, w => w > 0.0))
            {
                return copies == 0 ? null : start;
            }
        }

        return null;
    }

    public double[] RightlyRead(Observation.Seen seen) =>
        [.. Enumerable.Range(0, States.Count).Select(s => Group.Loci.Aggregate(1.0, (p, l) => p * Agreement(seen, l, s)))];

    /// <summary>Having what a test found and having none of it equally likely, other loci at random.</summary>
    public double[]? BeforeTest(Observation.DnaTest test, Sex? sex)
    {
        if (test.Copies == 0 || _settings.Frequencies.GetValueOrDefault(test.Allele) > 0.0)
        {
            return null;
        }

        return [.. Enumerable.Range(0, States.Count).Select(s =>
        {
            var (a, b) = test.Allele.Locus.PairOf(States[s].Diplotype);
            var own = new[] { a, b }.Where(x => x > 0).ToArray();
            if (own.Length > 0 && !own.SequenceEqual(Enumerable.Repeat(test.Allele.Index, test.Copies)))
            {
                return 0.0;
            }

            // Orders of the two chromosomes are told apart here, so a state with its allele on one stands for half of those with one copy.
            var share = own.Length == 1 ? 0.25 : 0.5;
            return share * Union(s, sex, h => Group.Loci
                .Where(l => l != test.Allele.Locus)
                .Aggregate(1.0, (p, l) => p * Frequency(l, At(h, l), (_, _) => false)));
        })];
    }

    // Random union of gametes: both orders of two unlike chromosomes, but for the two sex chromosomes that differ anyhow.
    private double Union(int state, Sex? sex, Func<int, double> haplotype)
    {
        var ((first, second), own) = States[state];
        var orders = first == second || own == _two ? 1.0 : 2.0;
        return haplotype(first) * haplotype(second) * orders * ShareOf(own, sex);
    }

    private static double ShareOf(Sex? own, Sex? sex) => own is null ? 1.0 : sex is null ? 0.5 : own == sex ? 1.0 : 0.0;

    private double Haplotype(int haplotype, Func<Locus, int, bool> let) => Group.Loci.Aggregate(1.0, (p, l) => p * Frequency(l, At(haplotype, l), let));

    private double Frequency(Locus locus, int allele, Func<Locus, int, bool> let)
    {
        if (allele == 0)
        {
            return Math.Max(0.0, 1.0 - _alleles[locus.IndexInGroup].Where(a => a > 0).Sum(a => Frequency(locus, a, let)));
        }

        var known = _settings.Frequencies.GetValueOrDefault(locus.Alleles[allele]);
        return known > 0.0 ? known : let(locus, allele) ? Math.Pow(2.0, -50) : 0.0;
    }

    // null: an allele that neither has a frequency nor is spoken of.
    private int? CopiesWithoutFrequency(int state, GenotypeBelief reading)
    {
        var copies = 0;
        foreach (var locus in Group.Loci)
        {
            var (a, b) = locus.PairOf(States[state].Diplotype);
            foreach (var allele in new[] { a, b }.Where(x => Frequency(locus, x, (_, _) => false) == 0.0))
            {
                if (!Names(reading, locus, allele))
                {
                    return null;
                }

                copies++;
            }
        }

        return copies;
    }

    // Whether words about a diplotype may mean a state. Read for one sex they hold for the other, where the order of the two is not known.
    private bool Means(GenotypeBelief reading, Diplotype diplotype, int state)
    {
        var (own, sex) = States[state];
        var isSame = own == diplotype;
        var isTurned = own == new Diplotype(diplotype.Second, diplotype.First);
        return !Group.IsSex || sex != _two || reading.Sex != _two ? isSame || isTurned : isSame;
    }

    private double OfLook(Observation.Seen seen, Locus locus, int state)
    {
        // What cannot be told apart from anything, since something seen hides it all, is not read at all.
        if (Enumerable.Range(0, States.Count).All(s => Agreement(seen, locus, s) == 1.0))
        {
            return 1.0;
        }

        var readings = (
            from a in _alleles[locus.IndexInGroup]
            from b in _alleles[locus.IndexInGroup]
            from e in locus.ExpressionsOf(a, b)
            select e.Value.IsVisible && e.Value.TellableFrom == AgeStage.Hatchling ? e.Value.Id : "nothing").Distinct().Count();
        var agreement = Agreement(seen, locus, state);
        return readings == 1 ? agreement : ((1.0 - _settings.Misreading) * agreement) + (_settings.Misreading * (1.0 - agreement) / (readings - 1));
    }

    private double Agreement(Observation.Seen seen, Locus locus, int state)
    {
        var (a, b) = locus.PairOf(States[state].Diplotype);
        return locus.ExpressionsOf(a, b).Where(e => Agrees(seen, e.Value)).Sum(e => e.Weight.Value);
    }

    private bool Agrees(Observation.Seen seen, Expression shown)
    {
        var here = seen.Forms.Where(f => f.Locus == shown.Locus).ToArray();
        return here.Length > 0
            ? here[0] == shown
            : !shown.IsVisible || shown.TellableFrom != AgeStage.Hatchling || !_species.SeenOf([.. seen.Forms, shown]).Contains(shown);
    }

    private double OfTest(Observation.DnaTest test, int state)
    {
        var copies = Copies(state, test.Allele);
        var rate = (copies > 0 ? test.Sensitivity : test.Specificity).Value;
        return test.Copies == copies ? rate : 1.0 - rate;
    }

    private int Copies(int state, Allele allele)
    {
        var (a, b) = allele.Locus.PairOf(States[state].Diplotype);
        return new[] { a, b }.Count(x => x == allele.Index);
    }

    private int At(int haplotype, Locus locus) => Group.AlleleAt(haplotype, locus.IndexInGroup);

    private double[] Scaled(Func<int, double> weight)
    {
        var weights = Enumerable.Range(0, States.Count).Select(weight).ToArray();
        var total = weights.Sum();
        return total > 0.0 ? [.. weights.Select(w => w / total)] : weights;
    }
}
