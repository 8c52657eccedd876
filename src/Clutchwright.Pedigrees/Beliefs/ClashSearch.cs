using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>Looks for a smallest set of records that cannot all be true.</summary>
/// <remarks>
/// Records near the place where the clash was met are taken first, and wider and wider around it until they clash; then they are halved down to a set of
/// which none can be left out. Tried in both directions, the smaller set kept. Source: docs/references.md [Junker2004].
/// </remarks>
internal sealed class ClashSearch(
    Species species, IReadOnlyList<RecordedAnimal> animals, BeliefSettings settings, IReadOnlyCollection<int> groups, IReadOnlyCollection<(string Key, int Index)> soft)
{
    private readonly HashSet<int> _groups = [.. groups];
    private readonly HashSet<(string Key, int Index)> _soft = [.. soft];
    private readonly BeliefCache _cache = new(species, settings, null);
    private readonly IReadOnlyList<int[]>?[] _alleles = AllelesInPlay.Of(species, animals, settings);
    private readonly HashSet<string> _founders = new(StringComparer.Ordinal);
    private RecordedAnimal[] _region = [];
    private CancellationToken _cancel;

    /// <summary>Finds the set.</summary>
    /// <param name="frame">The animals as nodes.</param>
    /// <param name="near">A node near the clash.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns><c>null</c> if all the records can be true.</returns>
    public ClashingRecords? Find(PedigreeFrame frame, int near, CancellationToken cancel)
    {
        _cancel = cancel;
        _founders.UnionWith(Enumerable.Range(0, frame.RecordedCount).Where(frame.IsFounder).Select(n => frame.Records[n]!.Key));
        var distances = Distances(frame, near);
        var farthest = distances.Where(d => d < int.MaxValue).Max();
        for (var radius = 1; ; radius *= 2)
        {
            _region = Region(frame, distances, radius);
            var isAll = radius > farthest;
            foreach (var mayDoubt in isAll ? new[] { false, true } : [false])
            {
                // What somebody was not sure of clashes only where nothing else does, and is then taken at its word.
                var records = Records(mayDoubt);
                if (!IsPossible(records))
                {
                    var one = Explain([], records, hasMore: false);
                    records.Reverse();
                    var other = Explain([], records, hasMore: false);
                    return Report(Least(frame, distances, isAll, other.Count < one.Count ? other : one));
                }
            }

            if (isAll)
            {
                return null;
            }
        }
    }

    // Where some cannot live, kin farther off can rule out by living what stands in the set, so that the rest clashes without it.
    private List<RecordPlace> Least(PedigreeFrame frame, int[] distances, bool isAll, List<RecordPlace> records)
    {
        if (isAll || records.Count == 1 || !species.Dangers.Any(d => d.Viability.ToHatchling.IsImpossible))
        {
            return records;
        }

        _region = Region(frame, distances, int.MaxValue - 1);
        return Explain([], records, hasMore: false);
    }

    private static int[] Distances(PedigreeFrame frame, int near)
    {
        var kin = new List<int>[frame.Count];
        for (var node = 0; node < frame.Count; node++)
        {
            kin[node] = [];
        }

        for (var node = 0; node < frame.Count; node++)
        {
            foreach (var parent in frame.PossibleSires[node].Append(frame.Sires[node]).Append(frame.Dams[node]).Where(p => p >= 0))
            {
                kin[node].Add(parent);
                kin[parent].Add(node);
            }
        }

        var distances = new int[frame.Count];
        Array.Fill(distances, int.MaxValue);
        distances[near] = 0;
        var queue = new Queue<int>([near]);
        while (queue.TryDequeue(out var node))
        {
            foreach (var other in kin[node].Where(o => distances[o] == int.MaxValue))
            {
                distances[other] = distances[node] + 1;
                queue.Enqueue(other);
            }
        }

        return distances;
    }

    // The animals near; a parent farther off is taken as not recorded, which only makes more possible.
    private static RecordedAnimal[] Region(PedigreeFrame frame, int[] distances, int radius)
    {
        var kept = Enumerable.Range(0, frame.RecordedCount)
            .Where(n => distances[n] <= radius)
            .Select(n => frame.Records[n]!)
            .DistinctBy(r => r.Key)
            .ToArray();
        var keys = kept.Select(r => r.Key).ToHashSet(StringComparer.Ordinal);
        return [.. kept.Select(r => r with
        {
            Sire = r.Sire is not null && keys.Contains(r.Sire) ? r.Sire : null,
            Dam = r.Dam is not null && keys.Contains(r.Dam) ? r.Dam : null,
            PossibleSires = r.PossibleSires.All(keys.Contains) ? r.PossibleSires : [],
            SireWeights = r.PossibleSires.All(keys.Contains) ? r.SireWeights : [],
        })];
    }

    private List<RecordPlace> Records(bool mayDoubt) => [.. _region.SelectMany(r => r.Observations
        .Select((o, i) => (Observation: o, Place: new RecordPlace(r.Key, i)))
        .Where(p => (mayDoubt || p.Observation.Confidence.IsCertain) && !_soft.Contains((p.Place.Key, p.Place.Index)) && Counts(p.Observation, r.Key))
        .Select(p => p.Place))];

    // A possible het of an animal that has parents is never evidence, so it clashes with nothing: not even where its parents lie outside.
    private bool Counts(Observation observation, string key) => observation switch
    {
        Observation.Said said => _groups.Any(g => said.Reading[species.Groups[g]] is not [{ Value.IsWild: true }]
            && (_founders.Contains(key) || said.Basis != StatementBasis.Told || said.Reading[species.Groups[g]].All(w => !w.Value.IsWild))),
        Observation.RuledOut ruledOut => ruledOut.Alleles.Any(a => _groups.Contains(a.Locus.Group.Index)),
        Observation.DnaTest test => _groups.Contains(test.Allele.Locus.Group.Index),
        _ => true,
    };

    // Halving: of what clashes together with what is kept, a set of which none can be left out.
    private List<RecordPlace> Explain(List<RecordPlace> kept, List<RecordPlace> open, bool hasMore)
    {
        if (hasMore && !IsPossible(kept))
        {
            return [];
        }

        if (open.Count == 1)
        {
            return open;
        }

        var half = open.Count / 2;
        var (first, second) = (open[..half], open[half..]);
        var fromSecond = Explain([.. kept, .. first], second, hasMore: first.Count > 0);
        var fromFirst = Explain([.. kept, .. fromSecond], first, hasMore: fromSecond.Count > 0);
        return [.. fromFirst, .. fromSecond];
    }

    private bool IsPossible(IReadOnlyCollection<RecordPlace> kept)
    {
        var wanted = kept.ToHashSet();
        var reduced = _region.Select(r => r with
        {
            Observations = [.. r.Observations.Where((_, i) => wanted.Contains(new(r.Key, i))).Select(o => o with { Confidence = Probability.Certain })],
        }).ToArray();
        return new BeliefRun(species, reduced, _alleles, settings, _cache, _groups, _cancel).IsPossible();
    }

    private ClashingRecords Report(List<RecordPlace> records)
    {
        var place = _region.Select((r, i) => (r.Key, i)).ToDictionary(p => p.Key, p => p.i, StringComparer.Ordinal);
        var ordered = records.OrderBy(r => place[r.Key]).ThenBy(r => r.Index).ToArray();
        return new(
            [.. _groups.Order().Select(g => species.Groups[g])],
            ordered,
            [.. ordered.Select(r => r.Key).Distinct(StringComparer.Ordinal)]);
    }
}
