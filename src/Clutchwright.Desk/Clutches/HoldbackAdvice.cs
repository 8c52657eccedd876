using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Routes;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Clutches;

/// <summary>Says whether a young animal is needed by a route that is followed.</summary>
internal sealed class HoldbackAdvice(OpenCatalogue catalogue, AdoptedRoutes routes)
{
    /// <summary>Below this an animal is too unlikely to be what is needed for it to be named.</summary>
    private const double LeastChance = 0.05;

    /// <summary>What the routes followed say of an animal; empty: none is followed.</summary>
    /// <param name="animal">The young animal.</param>
    /// <param name="dam">Its dam's tag.</param>
    /// <param name="sires">Its possible sires' tags.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<IReadOnlyList<Advice>> OfAsync(StockAnimal animal, string dam, IReadOnlyList<string> sires, CancellationToken cancel)
    {
        var followed = (await routes.ListAsync(cancel)).Where(r => r.Ending is null).ToArray();
        var advice = followed.SelectMany(r => Of(r, animal, dam, sires)).ToArray();
        return advice.Length > 0 || followed.Length == 0 ? advice : [new(false, "No route you follow asks for it.")];
    }

    private IEnumerable<Advice> Of(AdoptedRouteLine route, StockAnimal animal, string dam, IReadOnlyList<string> sires)
    {
        // What the last pairing is for is the wanted itself, whoever its parents are.
        if (ChanceOf(route.Want, animal) is { Value: >= LeastChance } wanted)
        {
            yield return new(true, wanted.IsCertain ? $"It is {route.Want}: what you wanted." : $"It may be {route.Want}, which you want: {OddsText.RatioAndPercent(wanted)}.");
        }

        foreach (var step in route.Steps.Where(s => s.Keep.Count > 0 && Is(s.Dam, dam) && sires.Any(sire => Is(s.Sire, sire))))
        {
            foreach (var keep in step.Keep.Distinct(StringComparer.Ordinal))
            {
                if (ChanceOf(keep, animal) is { Value: >= LeastChance } chance)
                {
                    yield return new(true, chance.IsCertain
                        ? $"Hold it back: the route to {route.Want} needs {keep} of this pair."
                        : $"Hold it back until more is known: the route to {route.Want} needs {keep} of this pair, and it is that by {OddsText.RatioAndPercent(chance)}.");
                }
            }
        }

        static bool Is(AdoptedParent parent, string tag) => string.Equals(parent.Tag, tag, StringComparison.OrdinalIgnoreCase);
    }

    private Probability ChanceOf(string text, StockAnimal animal)
    {
        if (catalogue.Catalogue.Trade.ReadWant(text) is not { IsRead: true } read)
        {
            return Probability.Impossible;
        }

        var want = read.Value;
        return animal.Animal.Sex is not null
            ? WantedChance.Of(want, animal.Belief.Genotype)
            : new[] { Genetics.Loci.Sex.Female, Genetics.Loci.Sex.Male }.Select(sex => WantedChance.Of(want, animal.As(sex))).MaxBy(c => c.Value);
    }
}
