using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Pedigrees.Beliefs.Contradictions;

namespace Clutchwright.Desk.Carry;

/// <summary>Of which animals is what was seen the most surprising, given everything else recorded?</summary>
/// <remarks>For finding the one wrong entry behind several contradictions. Takes up to a second for some hundred animals, so it is asked for
/// on its own.</remarks>
public sealed class ListSuspects
{
    /// <summary>From how many times likelier a look is of another animal of the stock it is worth a second look.</summary>
    private const double LeastLog10Factor = 1.0;

    private readonly OpenCatalogue _catalogue;
    private readonly StockBeliefs _beliefs;

    internal ListSuspects(OpenCatalogue catalogue, StockBeliefs beliefs)
    {
        _catalogue = catalogue;
        _beliefs = beliefs;
    }

    /// <summary>Lists them, the most surprising first.</summary>
    /// <param name="most">The most to list.</param>
    /// <param name="cancel">Stops the work.</param>
    public async Task<SuspectsAnswer> RunAsync(int most, CancellationToken cancel)
    {
        var state = await _beliefs.ReadAsync(cancel);
        var byKey = state.Animals.ToDictionary(a => a.Key, StringComparer.Ordinal);
        var suspects = Suspects.Of(state.Beliefs, CauseRates.Default, cancel);
        return new(
            [.. suspects.Animals
                .Where(s => s.Log10Factor >= LeastLog10Factor)
                .Take(most)
                .Select(s => new SuspectLine(AnimalWording.Line(_catalogue, byKey[s.Key]), s.Log10Factor))],
            suspects.IsExact);
    }
}

/// <summary>The animals whose looks surprise.</summary>
/// <param name="Animals">The animals, the most surprising first.</param>
/// <param name="IsExact">Whether all was reckoned; otherwise some of it was sampled, and an order of near equals may be chance.</param>
public sealed record SuspectsAnswer(IReadOnlyList<SuspectLine> Animals, bool IsExact);

/// <summary>An animal whose looks surprise.</summary>
/// <param name="Animal">The animal.</param>
/// <param name="Log10Factor">The base-10 logarithm of how many times likelier its looks would be of another animal of the stock.</param>
public sealed record SuspectLine(AnimalLine Animal, double Log10Factor);
