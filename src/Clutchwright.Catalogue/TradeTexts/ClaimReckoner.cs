using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>Reckons the claims of a trade text into what the animal's genotype may be.</summary>
internal sealed class ClaimReckoner
{
    private readonly Species _species;
    private readonly Sex _sex;
    private readonly ParsedText _parsed;
    private readonly string _text;
    private readonly List<TextNote> _notes = [];

    private ClaimReckoner(Species species, Sex sex, ParsedText parsed, string text)
    {
        _species = species;
        _sex = sex;
        _parsed = parsed;
        _text = text;
    }

    private bool IsHeterogametic => _sex == _species.SexSystem.Heterogametic();

    /// <summary>Reckons the claims for an animal of a sex.</summary>
    /// <param name="species">The species.</param>
    /// <param name="sex">The sex to reckon for.</param>
    /// <param name="parsed">The claims.</param>
    /// <param name="text">The text they came from.</param>
    /// <param name="notes">Receives what had to be assumed of the phase.</param>
    public static TextOutcome<GenotypeBelief> Reckon(
        Species species, Sex sex, ParsedText parsed, string text, List<TextNote> notes)
    {
        var reckoner = new ClaimReckoner(species, sex, parsed, text);
        var belief = GenotypeBelief.Wild(species, sex);
        var problem = reckoner.Check() ?? reckoner.AddTo(ref belief);
        notes.AddRange(reckoner._notes);
        return problem is null ? new(belief) : new(problem);
    }

    private TextProblem? Check()
    {
        if (_parsed.Sex is { } told && told != _sex)
        {
            var span = _parsed.SexSpan!.Value;
            return new(
                TextProblemKind.Contradiction, span.Start, span.Length, $"The text tells a {Word(told)}; a {Word(_sex)} is asked for.", []);
        }

        Claim.Normal? normal = null;
        Claim? shown = null;
        foreach (var claim in _parsed.Claims)
        {
            switch (claim)
            {
                case Claim.Form { Expression: var form }:
                    return Several(form, claim);
                case Claim.Strand { BySexChromosome: true } when !IsHeterogametic:
                    return Problem(
                        TextProblemKind.Contradiction,
                        claim,
                        $"A {Word(_sex)} has two {_species.SexSystem.Shared()}; only a {Word(_species.SexSystem.Heterogametic())} has {_species.SexSystem.Shared()} and {_species.SexSystem.Unshared()}.");
                case { } when PairReckoner.SideOf(claim) is not null && !IsHeterogametic:
                    return Problem(
                        TextProblemKind.NotAMaker,
                        claim,
                        $"A {Word(_sex)} gives a sex-linked gene to sons and daughters alike; only a {Word(_species.SexSystem.Heterogametic())} is a maker.");
                case Claim.Normal n:
                    normal ??= n;
                    break;
                case Claim.Shown:
                case Claim.Carried { Chance.IsCertain: true, Allele.Mode: not InheritanceMode.Recessive }:
                case Claim.Pair { Chance.IsCertain: true } p when p.At.ExpressionOf(p.First, p.Second).IsVisible:
                    shown ??= claim;
                    break;
            }
        }

        if (normal is not null && shown is not null)
        {
            var later = normal.Span.Start > shown.Span.Start ? normal : shown;
            return Problem(TextProblemKind.Contradiction, later, $"'{PairReckoner.Words(_text, normal)}' shows nothing, but '{PairReckoner.Words(_text, shown)}' shows.");
        }

        return null;
    }

    private TextProblem? AddTo(ref GenotypeBelief belief)
    {
        foreach (var group in _parsed.Claims
            .Select(c => c is Claim.Strand strand ? strand.Group : c.Locus?.Group)
            .OfType<LinkageGroup>()
            .Distinct()
            .ToArray())
        {
            var loci = new Dictionary<Locus, IReadOnlyList<PairChance>>();
            foreach (var locus in group.Loci)
            {
                var claims = _parsed.Claims.Where(c => c.Locus == locus).ToArray();
                if (claims.Length == 0)
                {
                    continue;
                }

                if (PairReckoner.PairsOf(locus, claims, _text, out var pairs) is { } problem)
                {
                    return problem;
                }

                loci.Add(locus, pairs);
            }

            var strands = _parsed.Claims.OfType<Claim.Strand>().Where(s => s.Group == group).ToArray();
            if (strands.Length > 0)
            {
                if (ByStrand(group, strands, loci, ref belief) is { } problem)
                {
                    return problem;
                }
            }
            else
            {
                belief = belief.With(group, ByLocus(group, loci));
                NotePhase(group, loci);
            }
        }

        return null;
    }

    private TextProblem? ByStrand(
        LinkageGroup group, Claim.Strand[] strands, Dictionary<Locus, IReadOnlyList<PairChance>> loci, ref GenotypeBelief belief)
    {
        var left = Fraction.One;
        var possible = new List<Weighted<Diplotype>>();
        foreach (var strand in strands)
        {
            left -= strand.Chance.Exact!.Value;
            if (left < Fraction.Zero)
            {
                return Problem(TextProblemKind.Contradiction, strand, $"The strands of {group.Id} are told twice, or with chances that sum to more than 100 %.");
            }

            var (a, b) = (strand.Strands.First, strand.Strands.Second);
            if (group.IsSex && IsHeterogametic && !strand.BySexChromosome && a != b)
            {
                possible.Add(new(new(a, b), strand.Chance * Probability.Half));
                possible.Add(new(new(b, a), strand.Chance * Probability.Half));
                _notes.Add(new(strand.Span.Start, strand.Span.Length, $"Which strand is on {_species.SexSystem.Unshared()} is not told; both ways are taken as equally likely."));
            }
            else
            {
                possible.Add(new(strand.Strands, strand.Chance));
            }

            foreach (var (locus, pairs) in loci)
            {
                var (x, y) = locus.PairOf(new(a, b));
                if (!pairs.Any(p => p.IsPhased ? (p.First, p.Second) == (x, y) : PairReckoner.Unordered(p) == (Math.Min(x, y), Math.Max(x, y))))
                {
                    return Problem(TextProblemKind.Contradiction, strand, $"'{PairReckoner.Words(_text, strand)}' is not what the words say of {locus.Name}.");
                }
            }
        }

        if (!left.IsZero)
        {
            possible.Add(new(default, Probability.From(left)));
        }

        belief = belief.With(group, possible);
        return null;
    }

    // Loci are independent of each other as far as is told, and every phase that is not told is equally likely.
    private static IEnumerable<Weighted<Diplotype>> ByLocus(LinkageGroup group, Dictionary<Locus, IReadOnlyList<PairChance>> loci)
    {
        var possible = new Dictionary<Diplotype, Probability> { [default] = Probability.Certain };
        foreach (var (locus, pairs) in loci)
        {
            var next = new Dictionary<Diplotype, Probability>();
            foreach (var (diplotype, weight) in possible)
            {
                foreach (var pair in pairs)
                {
                    if (pair.IsPhased || pair.First == pair.Second)
                    {
                        Add(pair.First, pair.Second, pair.Weight);
                    }
                    else
                    {
                        Add(pair.First, pair.Second, pair.Weight * Probability.Half);
                        Add(pair.Second, pair.First, pair.Weight * Probability.Half);
                    }
                }

                void Add(int first, int second, Probability share)
                {
                    var key = new Diplotype(
                        group.With(diplotype.First, locus.IndexInGroup, first), group.With(diplotype.Second, locus.IndexInGroup, second));
                    next[key] = next.TryGetValue(key, out var old) ? old + (weight * share) : weight * share;
                }
            }

            possible = next;
        }

        return possible.Select(p => new Weighted<Diplotype>(p.Key, p.Value));
    }

    private void NotePhase(LinkageGroup group, Dictionary<Locus, IReadOnlyList<PairChance>> loci)
    {
        var open = loci
            .Where(l => l.Value.Any(p => p.First != p.Second && !p.IsPhased))
            .Select(l => l.Key)
            .ToArray();
        if (open.Length == 0)
        {
            return;
        }

        var claim = _parsed.Claims.First(c => c.Locus == open[0]);
        if (group.IsSex && IsHeterogametic)
        {
            var (shared, unshared) = (_species.SexSystem.Shared(), _species.SexSystem.Unshared());
            var sex = _parsed.Sex is null ? $"If it is a {Word(_sex)}: whether" : "Whether";
            _notes.Add(new(
                claim.Span.Start,
                claim.Span.Length,
                $"{sex} {string.Join(" and ", open.Select(l => l.Name))} rides on {shared} or {unshared} is not told; both are taken as equally likely. Write male maker or female maker if you know."));
        }
        else if (open.Length > 1)
        {
            _notes.Add(new(
                claim.Span.Start,
                claim.Span.Length,
                $"{string.Join(" and ", open.Select(l => l.Name))} are linked and it is not told which alleles lie on one strand; every way is taken as equally likely. Write the strands if you know, as in (A B/+ +)."));
        }
    }

    private TextProblem Several(Expression form, Claim claim)
    {
        var pairs = Lexicon.PairsOf(form)
            .Select(p => $"{form.Locus.Alleles[p.First].Name}/{form.Locus.Alleles[p.Second].Name}")
            .ToArray();
        return new(
            TextProblemKind.Ambiguous,
            claim.Span.Start,
            claim.Span.Length,
            $"'{PairReckoner.Words(_text, claim)}' may be any of {pairs.Length} pairs that look alike: {string.Join(", ", pairs)}. Write which.",
            [.. pairs.Take(3)]);
    }

    private static TextProblem Problem(TextProblemKind kind, Claim claim, string text) =>
        new(kind, claim.Span.Start, claim.Span.Length, text, []);

    private static string Word(Sex sex) => sex == Sex.Male ? "male" : "female";
}
