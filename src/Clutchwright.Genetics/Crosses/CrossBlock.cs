using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Crosses;

/// <summary>One factor of a cross: what an egg may be at linkage groups that are not independent of each other, by each case of the
/// parents and in all, with what it does to survival.</summary>
internal sealed class CrossBlock
{
    private readonly List<Entry> _entries;

    private CrossBlock(
        IReadOnlyList<LinkageGroup> groups,
        IReadOnlyList<ChildState> states,
        IReadOnlyList<Probability> caseWeights,
        Probability[][] byCase,
        Viability[] viability,
        bool heterogameticIsMale)
    {
        Groups = groups;
        States = states;
        CaseWeights = caseWeights;
        ByCase = byCase;
        Viability = viability;
        Heterogametic = heterogameticIsMale ? Genetics.Loci.Sex.Male : Genetics.Loci.Sex.Female;
        Laid = new Probability[states.Count];
        for (var s = 0; s < states.Count; s++)
        {
            var total = Probability.Impossible;
            for (var c = 0; c < caseWeights.Count; c++)
            {
                total += caseWeights[c] * byCase[c][s];
            }

            Laid[s] = total;
        }

        Hatched = Laid.Select((p, s) => p * viability[s].ToHatchling).ToArray();
        Lives = Array.TrueForAll(viability, v => v.ToHatchling.IsCertain);
        HasSex = states[0].Sex is not null;
        Loci = groups
            .SelectMany(g => g.Loci)
            .Where(l => states.Any(s => PairAt(s, l) != (0, 0)))
            .ToArray();
        _entries = Express();
    }

    public IReadOnlyList<LinkageGroup> Groups { get; }

    /// <summary>Gets the loci of the groups at which an egg can have a mutant allele.</summary>
    public IReadOnlyList<Locus> Loci { get; }

    public IReadOnlyList<ChildState> States { get; }

    public IReadOnlyList<Probability> CaseWeights { get; }

    /// <summary>Gets for each case of the parents the chance of each state, of eggs laid.</summary>
    public Probability[][] ByCase { get; }

    public Viability[] Viability { get; }

    /// <summary>Gets the chance of each state over all cases, of eggs laid.</summary>
    public Probability[] Laid { get; }

    /// <summary>Gets the chance of each state that lives to be a hatchling, of eggs laid.</summary>
    public Probability[] Hatched { get; }

    /// <summary>Gets whether every state lives.</summary>
    public bool Lives { get; }

    public bool HasSex { get; }

    /// <summary>Gets what each state may show: once a state where penetrance is complete.</summary>
    public IReadOnlyList<Entry> Entries => _entries;

    private Sex Heterogametic { get; }

    public static CrossBlock Of(Mating mating, IReadOnlyList<MatingBlock> parts, IReadOnlyList<Danger> viabilityRules)
    {
        var groups = parts.SelectMany(p => p.Groups).ToArray();
        var cases = parts[0].Cases;
        for (var i = 1; i < parts.Count; i++)
        {
            var more = parts[i].Cases;
            cases = cases
                .SelectMany(_ => more, (a, b) => new MatingCase([.. a.Sire, .. b.Sire], [.. a.Dam, .. b.Dam], a.Weight * b.Weight))
                .ToArray();
        }

        var index = new Dictionary<ChildKey, int>();
        var states = new List<ChildState>();
        var young = new List<(int State, Probability Chance)>[cases.Count];
        for (var c = 0; c < cases.Count; c++)
        {
            young[c] = [];
            foreach (var (state, chance) in ChildStates.Of(mating, groups, cases[c]))
            {
                var key = new ChildKey(state);
                if (!index.TryGetValue(key, out var at))
                {
                    at = states.Count;
                    index.Add(key, at);
                    states.Add(state);
                }

                young[c].Add((at, chance));
            }
        }

        var byCase = new Probability[cases.Count][];
        for (var c = 0; c < cases.Count; c++)
        {
            byCase[c] = new Probability[states.Count];
            foreach (var (at, chance) in young[c])
            {
                byCase[c][at] = chance;
            }
        }

        var block = new CrossBlockSites(groups);
        return new(
            groups,
            states,
            cases.Select(c => c.Weight).ToArray(),
            byCase,
            states.Select(s => block.ViabilityOf(s, viabilityRules)).ToArray(),
            mating.Species.SexSystem.Heterogametic() == Genetics.Loci.Sex.Male);
    }

    /// <summary>The allele indices of a state at a locus of the block, ordered by chromosome where the state's sex has two different ones.</summary>
    public (int First, int Second) PairAt(ChildState state, Locus locus) => locus.PairOf(state.Diplotypes[IndexOf(locus.Group)]);

    public bool IsOrdered(ChildState state, Locus locus) => locus.Group.IsSex && state.Sex == Heterogametic;

    public bool Covers(LinkageGroup group) => IndexOf(group) >= 0;

    private int IndexOf(LinkageGroup group)
    {
        for (var i = 0; i < Groups.Count; i++)
        {
            if (Groups[i] == group)
            {
                return i;
            }
        }

        return -1;
    }

    private List<Entry> Express()
    {
        var entries = new List<Entry>(States.Count);
        for (var s = 0; s < States.Count; s++)
        {
            var partial = new List<Entry> { new(s, [], Probability.Certain) };
            foreach (var locus in Loci)
            {
                var (a, b) = PairAt(States[s], locus);
                var shown = locus.ExpressionsOf(a, b);
                partial = partial
                    .SelectMany(_ => shown, (e, x) => new Entry(s, [.. e.Shown, x.Value], e.Share * x.Weight))
                    .ToList();
            }

            entries.AddRange(partial);
        }

        return entries;
    }

    /// <summary>A state and one way in which it may show.</summary>
    /// <param name="State">The index of the state.</param>
    /// <param name="Shown">By the loci of the block, what each shows when nothing hides it.</param>
    /// <param name="Share">The share of the state that shows so.</param>
    internal sealed record Entry(int State, Expression[] Shown, Probability Share);

    private readonly struct ChildKey(ChildState state) : IEquatable<ChildKey>
    {
        private readonly ChildState _state = state;

        public bool Equals(ChildKey other) =>
            _state.Sex == other._state.Sex && _state.Diplotypes.AsSpan().SequenceEqual(other._state.Diplotypes);

        public override bool Equals(object? obj) => obj is ChildKey other && Equals(other);

        public override int GetHashCode()
        {
            var hash = new HashCode();
            hash.Add(_state.Sex);
            foreach (var diplotype in _state.Diplotypes)
            {
                hash.Add(diplotype);
            }

            return hash.ToHashCode();
        }
    }
}
