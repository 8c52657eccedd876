using Clutchwright.Catalogue.Entries;
using Clutchwright.Catalogue.Looks;
using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Catalogue.Yaml;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Catalogue.Reading;

/// <summary>Reads tones, combinations and looks.</summary>
internal sealed class LooksReader(EvidenceReader evidence, NameRegister names, Lexicon lexicon)
{
    private readonly Dictionary<string, Tone> _tones = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<string, Tone> Tones => _tones;

    public List<Combination> Combinations { get; } = [];

    public List<LookEntry> Looks { get; } = [];

    public void ReadTones(CatalogueFile file)
    {
        var numbers = new Dictionary<double, string>();
        foreach (var item in file.Items("tones"))
        {
            if (item.Scalar("id") is not { } id || item.Number("number") is not { } number
                || item.Text("srgb") is not ['#', _, _, _, _, _, _] srgb || !srgb.Skip(1).All(char.IsAsciiHexDigit))
            {
                continue;
            }

            if (!_tones.TryAdd(id.Text, new(id.Text, item.Text("name") ?? id.Text, (int)number, srgb)))
            {
                file.Report(id, $"The tone id '{id.Text}' is used twice.");
            }
            else if (!numbers.TryAdd(number, id.Text))
            {
                file.Report(item["number"]!, $"The number {number} is that of '{numbers[number]}'.");
            }
        }
    }

    public void ReadCombinations(CatalogueFile file)
    {
        var makings = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var item in file.Items("combinations"))
        {
            var grounds = evidence.Of(file, item);
            var name = item.Scalar("name");
            var bearer = new object();
            var isFree = name is not null && names.Add(file, name, bearer, "a combination");
            var also = item.Scalars("also").Where(a => names.Add(file, a, bearer, $"another name of {name?.Text}")).Select(a => a.Text.Trim()).ToArray();
            if (item.Scalar("of") is not { } of || ReadMakings(file, of) is not { } read || !isFree)
            {
                continue;
            }

            if (read.Expressions.Count < 2)
            {
                file.Report(of, "A combination is of several loci; a name for a pair of alleles of one locus is a form in loci/.");
                continue;
            }

            var key = string.Join(' ', read.Expressions.Select(e => e.Id));
            if (!makings.TryAdd(key, name!.Text))
            {
                file.Report(of, $"'{name.Text}' has the same makings as '{makings[key]}'; put it under also there.");
                continue;
            }

            Combinations.Add(new(name.Text.Trim(), also, of.Text.Trim(), read.Expressions, item.Text("text"), grounds));
            var term = new Term.OfCombination(name.Text.Trim(), of.Text.Trim(), read.Claims);
            foreach (var spelling in also.Prepend(name.Text.Trim()))
            {
                lexicon.TryAdd(spelling, term);
            }
        }
    }

    public void ReadLooks(IReadOnlyList<CatalogueFile> files)
    {
        var byMakings = new Dictionary<string, string>(StringComparer.Ordinal);
        var byForms = new Dictionary<string, LookEntry>(StringComparer.Ordinal);
        foreach (var file in files)
        {
            foreach (var item in file.Items("looks"))
            {
                var grounds = evidence.Of(file, item);
                var tones = ReadStages(file, item);
                if (item.Scalar("of") is not { } of || ReadMakings(file, of) is not { } read)
                {
                    continue;
                }

                if (!byMakings.TryAdd(read.Key, $"{file.Name} line {of.Line}"))
                {
                    file.Report(of, $"The look of '{of.Text}' is stated already, in {byMakings[read.Key]}.");
                    continue;
                }

                if (tones is null)
                {
                    continue;
                }

                var look = ToEntry(of.Text.Trim(), item, read.Expressions, tones, grounds);
                var forms = string.Join(' ', read.Expressions.Select(e => e.Id));
                if (byForms.TryAdd(forms, look))
                {
                    Looks.Add(look);
                    continue;
                }

                var first = byForms[forms];
                if (Enum.GetValues<AgeStage>().Any(s => first.TonesAt(s) != look.TonesAt(s)) || first.White != look.White)
                {
                    file.Report(of, $"'{of.Text}' shows the same form as '{first.Of}' and has other tones or another extent of white; pairs that differ by eye are forms of their own.");
                }

                Looks.Add(look);
            }
        }
    }

    private static LookEntry ToEntry(string of, YamlMap item, IReadOnlyList<Expression> expressions, ToneSet[] tones, Evidence grounds) =>
        new(of, expressions, tones, grounds)
        {
            Ground = item.Text("ground"),
            Form = item.Text("form"),
            Head = item.Text("head"),
            White = item.Text("white") switch
            {
                "none" => WhiteExtent.None,
                "traces" => WhiteExtent.Traces,
                "patches" => WhiteExtent.Patches,
                "most" => WhiteExtent.Most,
                "all" => WhiteExtent.All,
                _ => null,
            },
            Varies = item.Text("varies") switch
            {
                "little" => Variation.Little,
                "some" => Variation.Some,
                "much" => Variation.Much,
                _ => null,
            },
            IsRecorded = item.Truth("recorded") ?? true,
            Note = item.Text("note"),
        };

    private ToneSet[]? ReadStages(CatalogueFile file, YamlMap item)
    {
        var sets = new ToneSet[4];
        ToneSet? last = null;
        var isWhole = true;
        foreach (var stage in Enum.GetValues<AgeStage>())
        {
            if (item.Map("stages").Map(stage.ToString().ToLowerInvariant()) is { } map)
            {
                var (ground, pattern, eye) = (ToneOf(file, map, "ground"), ToneOf(file, map, "pattern"), ToneOf(file, map, "eye"));
                isWhole &= ground is not null && pattern is not null && eye is not null;
                last = isWhole ? new(ground!, pattern!, eye!) : null;
            }

            if (last is not null)
            {
                sets[(int)stage] = last;
            }
        }

        return isWhole && sets[0] is not null ? sets : null;
    }

    private Tone? ToneOf(CatalogueFile file, YamlMap map, string key)
    {
        if (map.Scalar(key) is not { } id)
        {
            return null;
        }

        if (_tones.TryGetValue(id.Text, out var tone))
        {
            return tone;
        }

        file.Report(id, $"The tone '{id.Text}' is not in tones/{Spelling.DidYouMean(id.Text, _tones.Keys)}.");
        return null;
    }

    // The visible forms that a trade text names, without sex, carried genes or percentages.
    private (IReadOnlyList<Expression> Expressions, IReadOnlyList<Claim> Claims, string Key)? ReadMakings(CatalogueFile file, YamlScalar of)
    {
        var parsed = TradeParser.Parse(lexicon, of.Text, TextToken.Split(of.Text));
        if (!parsed.IsRead)
        {
            file.Report(of, parsed.Problem.Position, parsed.Problem.Text);
            return null;
        }

        if (parsed.Value.SexSpan is { } sex)
        {
            file.Report(of, sex.Start, "Makings have no sex.");
            return null;
        }

        var expressions = new List<Expression>();
        var key = new List<string>();
        foreach (var claim in parsed.Value.Claims)
        {
            if (claim is Claim.Strand or Claim.Carried or Claim.Pair { Chance.IsCertain: false } || PairReckoner.SideOf(claim) is not null)
            {
                file.Report(of, claim.Span.Start, $"'{of.Text.Substring(claim.Span.Start, claim.Span.Length)}': makings name what is seen, nothing carried and no maker.");
                return null;
            }
        }

        foreach (var locus in parsed.Value.Claims.Select(c => c.Locus).OfType<Locus>().Distinct().OrderBy(l => l.Index))
        {
            var claims = parsed.Value.Claims.Where(c => c.Locus == locus).ToArray();
            if (Array.Find(claims, c => c is Claim.Form) is Claim.Form form)
            {
                if (claims.Length > 1)
                {
                    file.Report(of, claims[^1].Span.Start, $"{locus.Name} is named twice.");
                    return null;
                }

                expressions.Add(form.Expression);
                key.Add(form.Expression.Id);
                continue;
            }

            if (PairReckoner.PairsOf(locus, claims, of.Text, out var pairs) is { } problem)
            {
                file.Report(of, problem.Position, problem.Text);
                return null;
            }

            expressions.Add(locus.ExpressionOf(pairs[0].First, pairs[0].Second));
            key.Add($"{locus.Id}:{pairs[0].First}/{pairs[0].Second}");
        }

        if (expressions.Count > 0 && parsed.Value.Claims.Find(c => c is Claim.Normal) is { } normal)
        {
            file.Report(of, normal.Span.Start, "The normal animal shows nothing else.");
            return null;
        }

        return (expressions, parsed.Value.Claims, string.Join(' ', key));
    }
}
