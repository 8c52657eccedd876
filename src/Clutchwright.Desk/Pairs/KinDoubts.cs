using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Loci;
using Clutchwright.Planning.Pairs;

namespace Clutchwright.Desk.Pairs;

/// <summary>The doubts that animals of the stock share as kin, where pairs of them are ranked.</summary>
internal sealed class KinDoubts
{
    /// <summary>The most animals of which the kin are reckoned for each thing that they may be: some milliseconds each in a stock of 2,000.</summary>
    private const int MostHeld = 400;

    private readonly StockState _state;
    private readonly StockAnimal[] _sires;
    private readonly StockAnimal[] _dams;
    private readonly LinkageGroup[] _groups;
    private readonly int[][] _tieOfSire;
    private readonly int[][] _tieOfDam;
    private readonly double[] _carryOfSire;
    private readonly double[] _carryOfDam;
    private readonly HashSet<string> _held = new(StringComparer.Ordinal);
    private readonly CancellationToken _cancel;

    public KinDoubts(StockState state, StockAnimal[] sires, StockAnimal[] dams, LinkageGroup[] groups, CancellationToken cancel)
    {
        (_state, _sires, _dams, _groups, _cancel) = (state, sires, dams, groups, cancel);
        _tieOfSire = [.. groups.Select(g => Array.ConvertAll(sires, a => state.Beliefs.TieOf(g, a.Key) ?? -1))];
        _tieOfDam = [.. groups.Select(g => Array.ConvertAll(dams, a => state.Beliefs.TieOf(g, a.Key) ?? -2))];
        (_carryOfSire, _carryOfDam) = (Array.ConvertAll(sires, Carries), Array.ConvertAll(dams, Carries));
    }

    /// <summary>Gets how the pairs are tied.</summary>
    public PairTies Ties => new(AreTied, Together);

    private bool AreTied(int sire, int dam)
    {
        for (var g = 0; g < _groups.Length; g++)
        {
            if (_tieOfSire[g][sire] == _tieOfDam[g][dam])
            {
                return true;
            }
        }

        return false;
    }

    private Mating? Together(int sire, int dam)
    {
        var (his, her) = (_sires[sire], _dams[dam]);
        // One held already is read off again; else the likelier carrier, which stands in more of the best pairs.
        var holdsDam = !_held.Contains(his.Key) && (_held.Contains(her.Key) || _carryOfDam[dam] > _carryOfSire[sire]);
        var held = (holdsDam ? her : his).Key;
        if (_groups.Any(g => !_state.Beliefs.CanReadTogether(g, held)) || (_held.Count >= MostHeld && !_held.Contains(held)))
        {
            return null;
        }

        _held.Add(held);
        return StockMating.Of(_state, his, her, _cancel, _groups, holdsDam);
    }

    private double Carries(StockAnimal animal) =>
        _groups.Sum(g => animal.Belief.Genotype[g].Where(w => !w.Value.IsWild).Sum(w => w.Weight.Value));
}
