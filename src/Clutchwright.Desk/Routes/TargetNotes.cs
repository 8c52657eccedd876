using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Desk.Routes;

/// <summary>What is to be known of a target before one breeds for it.</summary>
internal static class TargetNotes
{
    /// <summary>Whether it can breed true.</summary>
    public static IReadOnlyList<string> Of(OpenCatalogue catalogue, Want want)
    {
        var notes = new List<string>();
        foreach (var condition in want.Alternatives.SelectMany(a => a.Loci).DistinctBy(c => c.Locus))
        {
            var pairs = Pairs(condition).ToArray();
            if (pairs.Length == 0 || pairs.Any(p => p.First == p.Second))
            {
                continue;
            }

            var locus = condition.Locus;
            var (first, second) = pairs[0];
            var name = catalogue.Wording.Pair(locus, Math.Min(first, second), Math.Max(first, second), isOrdered: false);
            notes.Add(pairs.All(p => p.First != 0 && p.Second != 0)
                ? $"{name} is two unlike alleles of one locus: it can never breed true. Two of them give half {name} at most."
                : $"{name} is one copy: two of them give it in half of the young, not in all.");
        }

        return notes;
    }

    /// <summary>Dangers that every animal of some alternative has.</summary>
    public static IEnumerable<Danger> Dangers(OpenCatalogue catalogue, Want want) => catalogue.Species.Dangers.Where(danger =>
        want.Alternatives.Any(alternative => danger.Loci.All(locus =>
            alternative.Loci.FirstOrDefault(c => c.Locus == locus) is { } condition
            && Pairs(condition).ToArray() is { Length: > 0 } pairs
            && pairs.All(p => danger.IsMetAt(locus, p.First, p.Second)))));

    private static IEnumerable<(int First, int Second)> Pairs(WantedPairs condition) =>
        from a in Enumerable.Range(0, condition.Locus.Alleles.Count)
        from b in Enumerable.Range(0, condition.Locus.Alleles.Count)
        where condition.Allows(a, b, ordered: true)
        select (a, b);
}
