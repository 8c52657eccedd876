namespace Clutchwright.Pedigrees.Charts;

/// <summary>Which animals are drawn.</summary>
internal sealed class ChartCut
{
    private readonly ChartKin _kin;
    private readonly ChartScope _scope;
    private readonly Dictionary<string, int> _leaves = new(StringComparer.Ordinal);
    private readonly HashSet<int> _inScope = [];

    private ChartCut(ChartKin kin, ChartScope scope)
    {
        _kin = kin;
        _scope = scope;
        Drawn = new bool[kin.Count];
    }

    public bool[] Drawn { get; }

    public int Count { get; private set; }

    /// <summary>How many in the scope are not drawn.</summary>
    public int NotDrawn => _inScope.Count(a => !Drawn[a]);

    public IEnumerable<int> Animals => Enumerable.Range(0, Drawn.Length).Where(a => Drawn[a]);

    public static ChartCut Of(ChartKin kin, ChartScope scope)
    {
        var cut = new ChartCut(kin, scope);
        if (scope.AskedAbout is { } key)
        {
            var asked = kin.Pedigree.PositionOf(key);
            if (scope.IsWhole)
            {
                cut.TakeAllKin(asked);
            }
            else
            {
                cut.TakeAround(asked);
            }
        }
        else
        {
            foreach (var animal in Enumerable.Range(0, kin.Count).Where(a => kin.ParentsOf(a).Any() || kin.YoungOf(a).Count > 0).OrderBy(kin.RankOf))
            {
                cut.TakeAllKin(animal);
            }
        }

        cut.TakeOtherParents();
        return cut;
    }

    private void TakeAllKin(int start)
    {
        if (_inScope.Contains(start))
        {
            return;
        }

        Take(start);
        var open = new Queue<int>([start]);
        while (open.TryDequeue(out var next))
        {
            foreach (var near in _kin.ParentsOf(next).OrderBy(_kin.RankOf).Concat(BreedersFirst(next)))
            {
                if (!_inScope.Contains(near))
                {
                    Take(near);
                    open.Enqueue(near);
                }
            }
        }
    }

    private void TakeAround(int asked)
    {
        Take(asked);
        int[] up = [asked];
        int[] down = [asked];
        for (var distance = 1; distance <= Math.Max(_scope.GenerationsUp, _scope.GenerationsDown); distance++)
        {
            up = distance > _scope.GenerationsUp ? [] : [.. up.SelectMany(_kin.ParentsOf).Distinct().OrderBy(_kin.RankOf)];
            down = distance > _scope.GenerationsDown ? [] : [.. down.SelectMany(BreedersFirst).Distinct()];
            if (up.Length == 0 && down.Length == 0)
            {
                return;
            }

            Array.ForEach(up, a => Take(a, mayBeCounted: false));
            foreach (var animal in distance == 1 ? down.Concat(SiblingsOf(asked)) : down)
            {
                Take(animal);
            }
        }
    }

    private IEnumerable<int> SiblingsOf(int animal)
    {
        var pair = ChartFamily.KeyOf(_kin, animal);
        return pair.Length == 0
            ? []
            : _kin.YoungOf(_kin.ParentsOf(animal).First()).Where(s => s != animal && ChartFamily.KeyOf(_kin, s) == pair);
    }

    private IEnumerable<int> BreedersFirst(int animal) => _kin.YoungOf(animal).OrderBy(y => _kin.YoungOf(y).Count == 0);

    private void Take(int animal, bool mayBeCounted = true)
    {
        if (!_inScope.Add(animal) || Count >= _scope.Most)
        {
            return;
        }

        if (mayBeCounted && Count > 0 && _kin.YoungOf(animal).Count == 0 && ChartFamily.KeyOf(_kin, animal) is { Length: > 0 } pair)
        {
            var leaves = _leaves.GetValueOrDefault(pair);
            if (leaves >= _scope.MostYoung)
            {
                return;
            }

            _leaves[pair] = leaves + 1;
        }

        Drawn[animal] = true;
        Count++;
    }

    // An animal stands under all its parents or under none.
    private void TakeOtherParents()
    {
        var open = new Queue<int>(Animals);
        while (open.TryDequeue(out var animal))
        {
            var parents = _kin.ParentsOf(animal).ToArray();
            if (!Array.Exists(parents, p => Drawn[p]))
            {
                continue;
            }

            foreach (var parent in parents.Where(p => !Drawn[p]))
            {
                Drawn[parent] = true;
                Count++;
                open.Enqueue(parent);
                foreach (var young in _kin.YoungOf(parent).Where(y => Drawn[y]))
                {
                    open.Enqueue(young);
                }
            }
        }
    }
}
