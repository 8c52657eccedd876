using Clutchwright.Desk.Opened;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Pedigrees.Beliefs.Contradictions;

namespace Clutchwright.Desk.Carry;

/// <summary>Which records cannot all be true, and what probably went wrong?</summary>
public sealed class ListContradictions
{
    private const int MostCauses = 8;
    private readonly StockBeliefs _beliefs;

    internal ListContradictions(StockBeliefs beliefs) => _beliefs = beliefs;

    /// <summary>Lists them.</summary>
    public async Task<IReadOnlyList<Contradiction>> RunAsync(CancellationToken cancel)
    {
        var state = await _beliefs.ReadAsync(cancel);
        return [.. state.Beliefs.Clashes.Select(c => state.Contradiction(c, cancel))];
    }

    /// <summary>One of a stock or of a pedigree file.</summary>
    internal static Contradiction Of(OpenCatalogue catalogue, StockRecord record, PedigreeBeliefs beliefs, ClashingRecords clash, CancellationToken cancel)
    {
        var words = new CauseWords(catalogue, record);
        var weighed = ClashCauses.Of(beliefs, clash, CauseRates.Default, cancel);
        return new(
            [.. clash.Groups.SelectMany(g => g.Loci).Select(l => l.Name)],
            [.. clash.Animals.Select(a => record[a].Animal.Tag)],
            [.. clash.Records.Select(r => ClashWords.Record(record, r))],
            [.. weighed.Causes.Take(MostCauses).Select(c => new CauseLine(
                c.Kind.ToString(),
                record[c.Animal].Animal.Tag,
                c.Other is { } other ? record[other].Animal.Tag : null,
                words.Text(c),
                words.Check(c),
                c.Posterior,
                c.Log10Factor,
                c.PriorRate))])
        {
            IsNearOnly = weighed.IsNearOnly,
            IsExact = weighed.IsExact,
            NotWeighed = [.. weighed.NotWeighed.OrderByDescending(c => c.PriorRate).Select(words.Text)],
        };
    }
}
