using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Planning.Routes;

/// <summary>What of a problem matters for its routes: the alleles wanted, those of dangers in reach, and the linkage groups they are in.</summary>
internal sealed class RouteReduction
{
    private readonly RouteProblem _problem;
    private readonly WantedPairs[] _conditions;
    private readonly HashSet<Allele> _carried;
    private readonly Dictionary<Locus, HashSet<int>> _wanted = [];
    private readonly HashSet<Locus> _watched;

    public RouteReduction(RouteProblem problem)
    {
        _problem = problem;
        _conditions = [.. problem.Want.Alternatives.SelectMany(a => a.Loci)];
        _carried = CarriedAlleles(problem);
                foreach (var condition in _conditions)
        {
            var here = _wanted.TryGetValue(condition.Locus, out var known) ? known : _wanted[condition.Locus] = [];
            here.UnionWith(from a in condition.Locus.Alleles
                           where !a.IsWild && _carried.Contains(a) && condition.Locus.Alleles.Any(b => RouteWorld.Allows(condition, a.Index, b.Index))
                           select a.Index);
        }

        // Where the wild allele is asked for, whatever else the stock carries at the locus must be told apart from it.
        foreach (var (locus, alleles) in _wanted.Where(w => _conditions.Any(c => c.Locus == w.Key && AsksForWild(c))))
        {
            alleles.UnionWith(_carried.Where(a => a.Locus == locus).Select(a => a.Index));
        }

        Dangers = [.. problem.Species.Dangers
            .Where(d => d.Severity >= Severity.Suffering && !problem.Settings.Lifted.Contains(d))
            .Where(d => d.Loci.All(l => IsInReach(d, l)))];
        if (Dangers.Length > 128)
        {
            throw new ArgumentException($"{Dangers.Length} dangers are in reach of the animals; a route tells at most 128 apart.", nameof(problem));
        }

        _watched = Dangers.SelectMany(d => d.Loci).ToHashSet();
    }

    /// <summary>The dangers that may be met and were not lifted.</summary>
    public Danger[] Dangers { get; }

    /// <summary>The groups that count, each reduced to the alleles that matter.</summary>
    /// <param name="exact">Of which groups young are asked for with just the alleles wanted.</param>
    public GroupStates[] Groups(IReadOnlySet<LinkageGroup> exact)
    {
        var groups = new List<GroupStates>();
        foreach (var group in _problem.Species.Groups)
        {
            var isWanted = group.Loci.Any(_wanted.ContainsKey);
            if (!isWanted && !group.Loci.Any(_watched.Contains))
            {
                continue;
            }

            // There for a danger alone, or for alleles that shall be absent: young with any of them are of no use.
            var staysWild = !isWanted || _conditions.Where(c => c.Locus.Group == group).All(AsksForNone);

            IReadOnlySet<int>[] relevant = [.. group.Loci.Select(l =>
            {
                var set = new HashSet<int>(_wanted.GetValueOrDefault(l) ?? []);
                if (_watched.Contains(l))
                {
                    set.UnionWith(from d in Dangers
                                  where d.Loci.Contains(l)
                                  from a in l.Alleles
                                  where !a.IsWild && _carried.Contains(a) && Enumerable.Range(0, l.Alleles.Count).Any(b => d.IsMetAt(l, a.Index, b))
                                  select a.Index);
                }

                return (IReadOnlySet<int>)set;
            })];
            var isExact = exact.Contains(group) || _conditions.Where(c => c.Locus.Group == group).Any(MindsSurplus);
            groups.Add(new GroupStates(_problem.Species, group, relevant, staysWild, isExact));
        }

        return [.. groups];
    }

    // One copy is wanted, and two of it are not.
    private static bool MindsSurplus(WantedPairs condition) => condition.Locus.Alleles.Any(a => !a.IsWild
        && RouteWorld.Allows(condition, 0, a.Index) && !RouteWorld.Allows(condition, a.Index, a.Index));

    private static bool AsksForNone(WantedPairs condition) => !condition.Locus.Alleles.Any(a => !a.IsWild
        && condition.Locus.Alleles.Any(b => RouteWorld.Allows(condition, a.Index, b.Index)));

    private static bool AsksForWild(WantedPairs condition) =>
        Enumerable.Range(0, condition.Locus.Alleles.Count).Any(a => RouteWorld.Allows(condition, 0, a))
        && !Enumerable.Range(0, condition.Locus.Alleles.Count).All(a => RouteWorld.Allows(condition, 0, a));

    private bool IsInReach(Danger danger, Locus locus) => locus.Alleles.Any(a =>
        (a.IsWild || _carried.Contains(a)) && locus.Alleles.Any(b => (b.IsWild || _carried.Contains(b)) && danger.IsMetAt(locus, a.Index, b.Index)));

    private static HashSet<Allele> CarriedAlleles(RouteProblem problem)
    {
        var carried = new HashSet<Allele>();
        foreach (var animal in problem.Animals)
        {
            foreach (var group in problem.Species.Groups)
            {
                foreach (var (diplotype, _) in animal.Belief[group])
                {
                    for (var i = 0; i < group.Loci.Count; i++)
                    {
                        carried.Add(group.Loci[i].Alleles[group.AlleleAt(diplotype.First, i)]);
                        carried.Add(group.Loci[i].Alleles[group.AlleleAt(diplotype.Second, i)]);
                    }
                }
            }
        }

        carried.RemoveWhere(a => a.IsWild);
        return carried;
    }
}
