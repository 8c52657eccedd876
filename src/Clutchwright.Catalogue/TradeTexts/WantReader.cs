using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>Reads a want: a bare visible word means every pair that looks so, everything else exactly what it says.</summary>
internal sealed class WantReader
{
    private readonly Lexicon _lexicon;
    private readonly string _text;

    private WantReader(Lexicon lexicon, string text)
    {
        _lexicon = lexicon;
        _text = text;
    }

    public static TextOutcome<Want> Read(Lexicon lexicon, string text)
    {
        var reader = new WantReader(lexicon, text);
        var alternatives = new List<WantedGenotype>();
        var part = new List<TextToken>();
        foreach (var token in TextToken.Split(text).Append(new TextToken(TokenKind.Word, new(text.Length, 0), "or")))
        {
            var isOr = (token.Kind == TokenKind.Word && token.Key == "or") || (token.Kind == TokenKind.Break && token.Key == "|");
            if (!isOr)
            {
                part.Add(token);
                continue;
            }

            if (part.Count == 0)
            {
                return new(new TextProblem(
                    TextProblemKind.Empty, token.Span.Start, token.Span.Length, "A want is missing here; write what should hatch, as in Clown or Pastel Clown.", []));
            }

            var outcome = reader.Alternative(part);
            if (!outcome.IsRead)
            {
                return new(outcome.Problem);
            }

            alternatives.Add(outcome.Value);
            part = [];
            if (alternatives.Count > Want.MostAlternatives)
            {
                return new(new TextProblem(
                    TextProblemKind.NotHere, token.Span.Start, token.Span.Length, $"A want has at most {Want.MostAlternatives} alternatives.", []));
            }
        }

        return new(new Want(alternatives));
    }

    private TextOutcome<WantedGenotype> Alternative(List<TextToken> tokens)
    {
        var parsed = TradeParser.Parse(_lexicon, _text, tokens);
        if (!parsed.IsRead)
        {
            return new(parsed.Problem);
        }

        var species = _lexicon.Species;
        var claims = parsed.Value.Claims;
        var sex = parsed.Value.Sex;
        var loci = new Dictionary<Locus, WantedPairs>();
        foreach (var claim in claims.OfType<Claim.Strand>())
        {
            if (!claim.Chance.IsCertain)
            {
                return Percentage(claim);
            }

            if (!claim.BySexChromosome && claim.Group.Loci.Count > 1)
            {
                return Problem(TextProblemKind.NotHere, claim, "A want asks for what an animal has at each locus, not for which alleles lie on one strand; name the genes alone.");
            }

            foreach (var locus in claim.Group.Loci)
            {
                var (first, second) = locus.PairOf(claim.Strands);
                loci[locus] = claim.BySexChromosome ? WantedPairs.ByStrand(locus, first, second) : WantedPairs.Of(locus, [(first, second)]);
                if (claims.Find(c => c.Locus == locus) is { } words)
                {
                    return Problem(TextProblemKind.Contradiction, words, $"{locus.Name} is asked for twice, in words and by strands.");
                }
            }

            if (claim.BySexChromosome && Maker(claim, ref sex, parsed.Value) is { } notMaker)
            {
                return new(notMaker);
            }
        }

        foreach (var locus in claims.Select(c => c.Locus).OfType<Locus>().Distinct())
        {
            var here = claims.Where(c => c.Locus == locus).ToArray();
            if (Array.Find(here, c => c is Claim.Carried { Chance.IsCertain: false } or Claim.Pair { Chance.IsCertain: false }) is { } percentage)
            {
                return Percentage(percentage);
            }

            if (Array.Find(here, c => c is Claim.Form) is Claim.Form form)
            {
                if (here.Length > 1)
                {
                    return Problem(TextProblemKind.Contradiction, here[^1], $"{locus.Name} is asked for twice.");
                }

                loci[locus] = WantedPairs.Showing(form.Expression);
            }
            else if (here is [Claim.Shown { Side: null, Allele: var allele }])
            {
                var first = allele.Mode == InheritanceMode.Recessive ? allele.Index : 0;
                loci[locus] = WantedPairs.Showing(locus.ExpressionOf(first, allele.Index));
            }
            else
            {
                if (PairReckoner.PairsOf(locus, here, _text, out var pairs) is { } problem)
                {
                    return new(problem);
                }

                if (pairs is not [var pair])
                {
                    return Percentage(here[0]);
                }

                loci[locus] = pair.IsPhased
                    ? WantedPairs.ByStrand(locus, pair.First, pair.Second)
                    : WantedPairs.Of(locus, [(pair.First, pair.Second)]);
                if (pair.IsPhased && Maker(Array.Find(here, c => PairReckoner.SideOf(c) is not null)!, ref sex, parsed.Value) is { } notMaker)
                {
                    return new(notMaker);
                }
            }
        }

        if (claims.Find(c => c is Claim.Normal) is { } normal)
        {
            foreach (var locus in species.Loci)
            {
                if (!loci.ContainsKey(locus))
                {
                    loci.Add(locus, WantedPairs.Showing(locus.Expressions[0]));
                }
                else if (claims.Find(c => c.Locus == locus && c is not Claim.Carried { Allele.Mode: InheritanceMode.Recessive }) is { } shown)
                {
                    return Problem(TextProblemKind.Contradiction, shown, $"'{Words(normal)}' shows nothing, but '{Words(shown)}' shows.");
                }
            }
        }

        return new(new WantedGenotype(sex, loci.OrderBy(l => l.Key.Index).Select(l => l.Value).ToArray()));
    }

    private TextProblem? Maker(Claim claim, ref Sex? sex, ParsedText parsed)
    {
        var two = _lexicon.Species.SexSystem.Heterogametic();
        if (parsed.Sex is { } told && told != two)
        {
            return new(
                TextProblemKind.NotAMaker, claim.Span.Start, claim.Span.Length, $"Only a {(two == Sex.Male ? "male" : "female")} is a maker.", []);
        }

        sex = two;
        return null;
    }

    private TextOutcome<WantedGenotype> Percentage(Claim claim) => Problem(
        TextProblemKind.NotHere, claim, $"'{Words(claim)}': a want is a genotype or a look, without a percentage; the chances are what the answer gives.");

    private static TextOutcome<WantedGenotype> Problem(TextProblemKind kind, Claim claim, string text) =>
        new(new TextProblem(kind, claim.Span.Start, claim.Span.Length, text, []));

    private string Words(Claim claim) => _text.Substring(claim.Span.Start, claim.Span.Length);
}
