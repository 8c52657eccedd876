using Clutchwright.Planning.Simulation;

namespace Clutchwright.Planning.Schemes;

/// <summary>Simulated annealing over the lists of genotypes to make. Source: docs/references.md [KirkpatrickGelattVecchi1983].</summary>
internal sealed class SchemeAnnealing(SchemeProblem problem, ulong seed, ulong start)
{
    private const double Hot = 100.0;
    private const double Cold = 8.0;

    private readonly CountedRandom _random = new(seed, start);
    private readonly SchemeList _list = new(problem);
    private readonly int _parents = problem.Parents.Count;
    private readonly int _loci = problem.Loci.Count;

    public CrossingScheme Run(CrossingScheme from, int steps, CancellationToken cancel)
    {
        var genotypes = from.Crossings.Select(c => c.Child).Distinct().ToArray();
        if (genotypes.Length > SchemeList.Most)
        {
            return from;
        }

        foreach (var genotype in genotypes)
        {
            _list.Insert(_list.Places, genotype);
        }

        var kept = new SchemeList(problem);
        var cost = _list.Cost(0, double.MaxValue);
        kept.CopyFrom(_list, 0);
        var (best, bestCost) = (from, Math.Min(cost, from.Cost));
        var heat = Hot;
        for (var step = 0; step < steps; step++)
        {
            if (step % 1024 == 0)
            {
                cancel.ThrowIfCancellationRequested();
                heat = Hot * Math.Pow(Cold / Hot, (double)step / steps);
            }

            var changes = 1 + Math.Max(0, _random.Below(6) - 3);
            var changed = int.MaxValue;
            for (var i = 0; i < changes; i++)
            {
                changed = Math.Min(changed, Change());
            }

            if (changed == int.MaxValue)
            {
                continue;
            }

            var limit = cost - (heat * Math.Log(1.0 - _random.NextShare()));
            var next = _list.Cost(changed, limit);
            if (next > limit)
            {
                _list.CopyFrom(kept, changed);
                continue;
            }

            kept.CopyFrom(_list, changed);
            cost = next;
            if (cost < bestCost)
            {
                (best, bestCost) = (_list.ToScheme(), cost);
            }
        }

        return best;
    }

    // Makes one change and gives the first place that is not as before.
    private int Change()
    {
        var (places, made) = (_list.Places, _list.Count);
        switch (_random.Below(20))
        {
            case < 8 when made > 1:
            {
                var place = _parents + _random.Below(made - 1);
                _list.Replace(place, _random.Below(3) == 0 ? Child(place) : new(_random.Below(2) == 0 ? _list[place].Low : _list[place].High, Mixed()));
                return place;
            }

            case >= 8 and < 12 when made < SchemeList.Most:
            {
                var place = _parents + _random.Below(made);
                _list.Insert(place, _random.Below(3) > 0 ? Child(place) : new(Mixed(), Mixed()));
                return place;
            }

            case >= 12 and < 17 when made > 1:
            {
                var place = _parents + _random.Below(made - 1);
                _list.RemoveAt(place);
                return place;
            }

            case >= 17 when made > 2:
            {
                var (place, to) = (_parents + _random.Below(made - 1), _parents + _random.Below(made - 1));
                _list.Move(place, to);
                return place == to ? int.MaxValue : Math.Min(place, to);
            }

            default:
                return int.MaxValue;
        }

        // One in four is a plant fixed by selfing: a line of such plants is often worth its cost, and by chance alone it would be rare.
        HaplotypePair Child(int before)
        {
            var gamete = Gamete(_random.Below(before));
            return new(gamete, _random.Below(4) == 0 ? gamete : Gamete(_random.Below(before)));
        }

        int Mixed() => _random.Below(2) == 0 ? Known() : Joined(Known(), Known());

        int Known()
        {
            var pair = _random.Below(places + 1) is var i && i < places ? _list[Math.Min(i, _list.Places - 1)] : problem.Target;
            return _random.Below(2) == 0 ? pair.Low : pair.High;
        }
    }

    // A gamete with no, one or two crossings-over, wherever they fall.
    private int Gamete(int place)
    {
        var pair = _list[place];
        var (one, other) = _random.Below(2) == 0 ? (pair.Low, pair.High) : (pair.High, pair.Low);
        return _random.Below(3) == 0 ? one : Joined(one, other);
    }

    private int Joined(int one, int other)
    {
        var (from, to) = (_random.Below(_loci + 1), _random.Below(_loci + 1));
        var inner = ((1 << Math.Max(from, to)) - 1) & ~((1 << Math.Min(from, to)) - 1);
        return (one & ~inner) | (other & inner);
    }
}
