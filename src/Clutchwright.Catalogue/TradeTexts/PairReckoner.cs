using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>One way two alleles may lie at a locus.</summary>
/// <param name="First">An allele's index; that on X or Z if <paramref name="IsPhased"/>.</param>
/// <param name="Second">The other's; that on Y or W if <paramref name="IsPhased"/>.</param>
/// <param name="Weight">Its probability.</param>
/// <param name="IsPhased">Whether it is told which rides where.</param>
internal readonly record struct PairChance(int First, int Second, Probability Weight, bool IsPhased);

/// <summary>Reckons what the claims on one locus leave possible there.</summary>
internal static class PairReckoner
{
    /// <summary>The ways the two alleles at a locus may lie by the claims on it, in the order of the text.</summary>
    public static TextProblem? PairsOf(Locus locus, IReadOnlyList<Claim> claims, string text, out IReadOnlyList<PairChance> pairs)
    {
        pairs = [];
        var certain = new List<(int Allele, int Copies, Claim Claim)>();
        var shownTogether = claims.Count(c => c is Claim.Shown) > 1;
        foreach (var claim in claims)
        {
            (int Allele, int Copies)[] parts = claim switch
            {
                Claim.Shown { Allele: var a } => [(a.Index, a.Mode == InheritanceMode.Recessive && !shownTogether ? 2 : 1)],
                Claim.Carried { Chance.IsCertain: true, Allele: var a } => [(a.Index, 1)],
                Claim.Pair { Chance.IsCertain: true } p when p.First == p.Second => [(p.First, 2)],
                Claim.Pair { Chance.IsCertain: true } p => [(p.First, 1), (p.Second, 1)],
                _ => [],
            };
            foreach (var (allele, copies) in parts.Where(p => p.Allele != 0))
            {
                if (certain.FindIndex(c => c.Allele == allele) is >= 0 and var twice)
                {
                    return Twice(locus.Alleles[allele], certain[twice].Claim, claim, text);
                }

                if (certain.Sum(c => c.Copies) + copies > 2)
                {
                    return Full(locus, certain, claim, allele, text);
                }

                certain.Add((allele, copies, claim));
            }
        }

        var held = certain.SelectMany(c => Enumerable.Repeat(c.Allele, c.Copies)).Order().ToList();
        held.InsertRange(0, Enumerable.Repeat(0, 2 - held.Count));
        var result = new List<PairChance>();
        var left = Fraction.One;
        foreach (var claim in claims)
        {
            (int First, int Second)? pair = null;
            var chance = Probability.Impossible;
            switch (claim)
            {
                case Claim.Carried { Chance: { IsCertain: false } p, Allele: var allele }:
                    if (held.Contains(allele.Index))
                    {
                        return Twice(allele, certain.Find(c => c.Allele == allele.Index).Claim, claim, text);
                    }

                    if (held[0] != 0)
                    {
                        return Full(locus, certain, claim, allele.Index, text);
                    }

                    (pair, chance) = ((Math.Min(allele.Index, held[1]), Math.Max(allele.Index, held[1])), p);
                    break;
                case Claim.Pair { Chance: { IsCertain: false } p } possible:
                    (pair, chance) = ((Math.Min(possible.First, possible.Second), Math.Max(possible.First, possible.Second)), p);
                    break;
            }

            if (pair is not { } ways)
            {
                continue;
            }

            if (ways == (held[0], held[1]) || result.Exists(r => Unordered(r) == ways))
            {
                return new(
                    TextProblemKind.Contradiction, claim.Span.Start, claim.Span.Length, $"'{Words(text, claim)}' is told a second time.", []);
            }

            left -= chance.Exact!.Value;
            if (left < Fraction.Zero)
            {
                return new(
                    TextProblemKind.Contradiction,
                    claim.Span.Start,
                    claim.Span.Length,
                    $"The chances told at one locus ({locus.Name}) sum to more than 100 %.",
                    []);
            }

            result.AddRange(Lay(ways.First, ways.Second, chance, (claim as Claim.Carried)?.Side, (claim as Claim.Carried)?.Allele.Index ?? 0));
        }

        if (!left.IsZero)
        {
            var sided = certain.Select(c => c.Claim).FirstOrDefault(c => SideOf(c) is not null);
            result.AddRange(Lay(held[0], held[1], Probability.From(left), sided is null ? null : SideOf(sided), AlleleOf(sided)));
        }

        pairs = result;
        return null;
    }

    public static Side? SideOf(Claim claim) => claim switch
    {
        Claim.Shown shown => shown.Side,
        Claim.Carried carried => carried.Side,
        _ => null,
    };

    private static int AlleleOf(Claim? claim) => claim switch
    {
        Claim.Shown shown => shown.Allele.Index,
        Claim.Carried carried => carried.Allele.Index,
        _ => 0,
    };

    public static (int, int) Unordered(PairChance pair) =>
        (Math.Min(pair.First, pair.Second), Math.Max(pair.First, pair.Second));

    // Puts an allele on the strand it is said to ride on.
    private static IEnumerable<PairChance> Lay(int first, int second, Probability weight, Side? side, int allele)
    {
        if (side is null || first == second)
        {
            yield return new(first, second, weight, IsPhased: false);
            yield break;
        }

        var other = first == allele ? second : first;
        var (told, else_) = side.OnUnshared ? ((other, allele), (allele, other)) : ((allele, other), (other, allele));
        yield return new(told.Item1, told.Item2, weight * side.Chance, IsPhased: true);
        if (!side.Chance.IsCertain)
        {
            yield return new(else_.Item1, else_.Item2, weight * side.Chance.Complement, IsPhased: true);
        }
    }

    private static TextProblem Twice(Allele allele, Claim earlier, Claim later, string text)
    {
        if (later.Span.Start < earlier.Span.Start)
        {
            (earlier, later) = (later, earlier);
        }

        var (one, two) = (Words(text, earlier), Words(text, later));
        var hint = allele.Mode == InheritanceMode.Recessive
            ? $"{allele.Name} is either seen, carried or possibly carried"
            : $"two copies are written Super {allele.Name}";
        var what = string.Equals(one, two, StringComparison.OrdinalIgnoreCase) ? $"'{one}' twice" : $"'{one}' and '{two}'";
        return new(TextProblemKind.Contradiction, later.Span.Start, later.Span.Length, $"{allele.Name} is told by {what}; {hint}.", []);
    }

    private static TextProblem Full(Locus locus, List<(int Allele, int Copies, Claim Claim)> certain, Claim claim, int allele, string text)
    {
        var held = certain.Select(c => locus.Alleles[c.Allele].Name).ToArray();
        var name = locus.Alleles[allele].Name;
        if (held.Length == 1)
        {
            // One allele in two copies leaves no room, but nobody counted to three.
            return new(
                certain[0].Claim is Claim.Shown ? TextProblemKind.Contradiction : TextProblemKind.TooManyAlleles,
                claim.Span.Start,
                claim.Span.Length,
                $"'{Words(text, certain[0].Claim)}' is two copies of {held[0]}, which leaves no room for {name} at the same locus ({locus.Name}); one of each is written {held[0]}/{name}.",
                []);
        }

        return new(
            TextProblemKind.TooManyAlleles,
            claim.Span.Start,
            claim.Span.Length,
            $"{string.Join(", ", held)} and {name} are alleles of one locus ({locus.Name}); an animal has only two.",
            []);
    }

    public static string Words(string text, Claim claim) => text.Substring(claim.Span.Start, claim.Span.Length);
}
