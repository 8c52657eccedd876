using System.Globalization;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Pairs;
using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Planning.Pairs;

namespace Clutchwright.Desk.Looks;

/// <summary>How near one state of a stock is to makings.</summary>
/// <remarks>
/// Of breeders that are alike in all that a want and the dangers ask, and not in doubt of it, one stands for all, so that a large stock
/// is ranked as fast as a small one. The chances are those of <see cref="BestPairs"/> over every pair.
/// </remarks>
internal sealed class StockReach
{
    // Below this an animal is not said to carry an allele: founders may carry anything that is common enough.
    private const double LeastToCarry = 0.1;

    private readonly StockState _state;
    private readonly StockAnimal[] _sires;
    private readonly StockAnimal[] _dams;
    private readonly GoodEggs _eggs;
    private readonly LinkageGroup[] _endangered;
    private readonly Dictionary<(StockAnimal Animal, LinkageGroup Group), string> _written = [];

    public StockReach(StockState state, StockAnimal[] here, (StockAnimal[] Sires, StockAnimal[] Dams) breeders, GoodEggs eggs)
    {
        _state = state;
        (_sires, _dams) = breeders;
        _eggs = eggs;
        var species = state.Record.Catalogue.Species;
        _endangered = [.. species.Dangers.SelectMany(d => d.Groups).Distinct()];
        Carried = species.Loci.SelectMany(l => l.Alleles.Skip(1))
            .Where(a => Array.Exists(here, h => h.Belief.Genotype.ChanceOfCarrying(a).Value >= LeastToCarry))
            .ToHashSet();
    }

    /// <summary>Gets the alleles that some animal kept carries, surely or with a chance of 1 in 10 at least.</summary>
    public IReadOnlySet<Allele> Carried { get; }

    /// <summary>The best chance of at least one this season; <c>null</c>: no pair gives it, or only such as are left out.</summary>
    public (Probability? Chance, (string Sire, string Dam)? Pair, bool IsOnlyByLeftOut) Best(IEnumerable<Expression> forms, CancellationToken cancel)
    {
        var want = new Want([new WantedGenotype(null, [.. forms.Select(WantedPairs.Showing)])]);
        var wanted = want.Loci.Select(l => l.Group).Distinct().ToArray();
        var (sires, dams) = (Unlike(_sires, wanted), Unlike(_dams, wanted));
        var ranking = BestPairs.Of(
            sires.Select(a => a.As(Sex.Male)).ToArray(),
            dams.Select(a => a.As(Sex.Female)).ToArray(),
            want,
            _eggs,
            most: 1,
            new KinDoubts(_state, sires, dams, wanted, cancel).Ties,
            cancel);
        return ranking.Pairs is [var best, ..]
            ? (best.AtLeastOne, (sires[best.Sire].Animal.Tag, dams[best.Dam].Animal.Tag), false)
            : (null, null, ranking.LeftOutCount > 0);
    }

    private StockAnimal[] Unlike(StockAnimal[] animals, LinkageGroup[] wanted)
    {
        var groups = wanted.Union(_endangered).ToArray();
        return [.. animals.DistinctBy(a => wanted.Any(g => a.Belief.Genotype[g].Count > 1)
            ? a.Key
            : string.Join('|', groups.Select(g => Written(a, g))))];
    }

    private string Written(StockAnimal animal, LinkageGroup group)
    {
        lock (_written)
        {
            if (!_written.TryGetValue((animal, group), out var text))
            {
                text = string.Join(' ', animal.Belief.Genotype[group].Select(w =>
                    string.Create(CultureInfo.InvariantCulture, $"{w.Value.First}/{w.Value.Second}={w.Weight.Value:R}")));
                _written.Add((animal, group), text);
            }

            return text;
        }
    }
}
