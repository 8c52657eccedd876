using Clutchwright.Catalogue.Entries;
using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Catalogue.Yaml;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Catalogue.Reading;

/// <summary>A locus on its way from file to species.</summary>
internal sealed record LocusDraft(CatalogueFile File, YamlMap Item, string Id, int Line, string Name, Placement Placement, Evidence Evidence)
{
    public List<AlleleDraft> Alleles { get; } = [];

    public List<FormDraft> Forms { get; } = [];

    public (RecombinationFraction Least, RecombinationFraction Most)? Recombination { get; init; }

    public LocusDefinition ToDefinition() =>
        new(Id, Name, Placement, Alleles.Select(a => a.Definition).ToArray()) { Forms = Forms.Select(f => f.Definition).ToArray() };
}

/// <summary>An allele on its way from file to species.</summary>
internal sealed record AlleleDraft(LocusDraft Locus, YamlMap Item, YamlItem At, AlleleDefinition Definition, Evidence Evidence)
{
    public List<string> Also { get; } = [];

    public AlleleFrequency? Frequency { get; init; }
}

/// <summary>A form on its way from file to species.</summary>
internal sealed record FormDraft(LocusDraft Locus, YamlMap Item, FormDefinition Definition, Evidence Evidence)
{
    public List<string> Also { get; } = [];
}

/// <summary>Reads the loci with their alleles and forms.</summary>
/// <remarks>An entry with a problem is kept with a stand-in for what is wrong, so that one slip does not make every mention of it a
/// further problem.</remarks>
internal sealed class LociReader(EvidenceReader evidence, NameRegister names)
{
    private readonly Dictionary<string, LocusDraft> _locusIds = new(StringComparer.Ordinal);
    private readonly Dictionary<string, AlleleDraft> _alleleIds = new(StringComparer.Ordinal);
    private readonly Dictionary<string, LocusDraft> _formIds = new(StringComparer.Ordinal);

    public List<LocusDraft> Loci { get; } = [];

    public IEnumerable<AlleleDraft> Alleles => Loci.SelectMany(l => l.Alleles);

    public void Read(IReadOnlyList<CatalogueFile> files)
    {
        foreach (var file in files)
        {
            foreach (var item in file.Items("loci"))
            {
                ReadLocus(file, item);
            }
        }

        // Forms name alleles, so all alleles come first; then what may clash only shows when all are known.
        foreach (var locus in Loci)
        {
            foreach (var item in locus.Item.Maps("forms"))
            {
                ReadForm(locus, item);
            }
        }

        foreach (var allele in Alleles)
        {
            CheckSuperName(allele);
            CheckIds(allele);
        }
    }

    /// <summary>The allele of a name, other name or id; or <c>null</c>.</summary>
    public AlleleDraft? FindAllele(string name) =>
        names.Find(name)?.Bearer as AlleleDraft ?? _alleleIds.GetValueOrDefault(name.Trim());

    /// <summary>The tail of a message about an unknown allele.</summary>
    public string DidYouMean(string name) =>
        Spelling.DidYouMean(name, Alleles.SelectMany(a => a.Also.Prepend(a.Definition.Name)));

    private void ReadLocus(CatalogueFile file, YamlMap item)
    {
        var name = item.Text("name") ?? item.Text("id") ?? "?";
        var id = item.Text("id") ?? Spelling.Key(name);
        if (_locusIds.TryGetValue(id, out var other))
        {
            file.Report(item["id"] ?? item, $"The locus id '{id}' is used twice; first in {other.File.Name} line {other.Line}.");
            id = StandIn(id, _locusIds.ContainsKey);
        }

        var (placement, interval) = ReadPlacement(file, item);
        var locus = new LocusDraft(file, item, id, item.Line, name, placement, evidence.Of(file, item)) { Recombination = interval };
        _locusIds.Add(id, locus);

        foreach (var allele in item.Maps("alleles"))
        {
            ReadAllele(locus, allele);
        }

        CheckFrequencies(locus);
        if (locus.Alleles.Count > 0)
        {
            Loci.Add(locus);
        }
    }

    private void ReadAllele(LocusDraft locus, YamlMap item)
    {
        InheritanceMode? mode = item.Text("mode") switch
        {
            "recessive" => InheritanceMode.Recessive,
            "incomplete-dominant" => InheritanceMode.IncompleteDominant,
            "dominant" => InheritanceMode.Dominant,
            _ => null,
        };
        var grounds = evidence.Of(locus.File, item);
        if ((item.Scalar("name") ?? item.Scalar("id")) is not { } name)
        {
            return;
        }

        var at = item.Scalar("id") ?? name;
        var id = at.Text;
        if (_alleleIds.TryGetValue(id, out var other))
        {
            locus.File.Report(at, $"The allele id '{id}' is used twice; first in {other.Locus.File.Name} line {other.At.Line}.");
            id = StandIn(id, _alleleIds.ContainsKey);
        }

        var penetrance = item.Number("penetrance") is { } p and > 0.0 and <= 1.0 ? ToProbability(p) : Probability.Certain;
        var allele = new AlleleDraft(
            locus,
            item,
            at,
            new(id, name.Text.Trim(), mode ?? InheritanceMode.Recessive) { Penetrance = penetrance, TellableFrom = StageOf(item.Text("tellable-from")) },
            grounds) { Frequency = ReadFrequency(locus.File, item) };
        names.Add(locus.File, name, allele, $"an allele of {locus.Id}");
        _alleleIds.Add(id, allele);
        locus.Alleles.Add(allele);
        foreach (var also in item.Scalars("also"))
        {
            if (names.Add(locus.File, also, allele, $"another name of {name.Text}"))
            {
                allele.Also.Add(also.Text.Trim());
            }
        }
    }

    private AlleleFrequency? ReadFrequency(CatalogueFile file, YamlMap item) =>
        item.Map("frequency") is { } map && map.Number("value") is { } value and > 0.0 and <= 1.0
            ? new(value, evidence.Of(file, map))
            : null;

    // Shares of the copies of one locus, with the wild allele's the whole.
    private static void CheckFrequencies(LocusDraft locus)
    {
        if (locus.Alleles.Sum(a => a.Frequency?.Value ?? 0.0) > 1.0)
        {
            locus.File.Report(locus.Item, "The frequencies of the alleles sum to more than 1.");
        }
    }

    private void ReadForm(LocusDraft locus, YamlMap item)
    {
        var grounds = evidence.Of(locus.File, item);
        var pairs = new List<(string First, string Second)>();
        foreach (var text in item.Scalars("pairs"))
        {
            if (ReadPair(locus, text) is not { } pair)
            {
                continue;
            }

            var stated = locus.Forms.Find(f => f.Definition.Pairs.Any(p => Same(p, pair)));
            if (stated is not null || pairs.Exists(p => Same(p, pair)))
            {
                locus.File.Report(text, $"The pair {text.Text} stands under '{stated?.Definition.Name ?? item.Text("name")}' already; a pair has one form.");
            }
            else
            {
                pairs.Add(pair);
            }
        }

        if ((item.Scalar("name") ?? item.Scalar("id")) is not { } name)
        {
            return;
        }

        var id = item.Text("id") ?? Spelling.Key(name.Text);
        if (_formIds.ContainsKey(id))
        {
            locus.File.Report(item["id"] ?? item, $"The form id '{id}' is used twice.");
            id = StandIn(id, _formIds.ContainsKey);
        }

        _formIds.Add(id, locus);
        var form = new FormDraft(
            locus, item, new(id, name.Text.Trim(), pairs) { TellableFrom = StageOf(item.Text("tellable-from")) }, grounds);

        // A form may bear the name of an allele of its own locus: the bare name then means the allele.
        if (names.Find(name.Text)?.Bearer is AlleleDraft own && own.Locus == locus)
        {
            if (!pairs.Exists(p => Same(p, (Allele.WildId, own.Definition.Id)) || Same(p, (own.Definition.Id, own.Definition.Id))))
            {
                locus.File.Report(name, $"The form is named like the allele {own.Definition.Name}, but no pair of it is that allele's own.");
            }
        }
        else
        {
            names.Add(locus.File, name, form, $"a form of {locus.Id}");
        }

        locus.Forms.Add(form);
        foreach (var also in item.Scalars("also"))
        {
            if (names.Add(locus.File, also, form, $"another name of {name.Text}"))
            {
                form.Also.Add(also.Text.Trim());
            }
        }
    }

    private (string First, string Second)? ReadPair(LocusDraft locus, YamlScalar text)
    {
        var sides = text.Text.Split('/');
        if (sides.Length != 2)
        {
            return null; // told by the schema
        }

        var ids = new string[2];
        for (var i = 0; i < 2; i++)
        {
            var side = sides[i].Trim();
            if (side == Allele.WildId)
            {
                ids[i] = side;
                continue;
            }

            if (FindAllele(side) is not { } allele)
            {
                locus.File.Report(text, $"'{side}' is no allele{DidYouMean(side)}.");
                return null;
            }

            if (allele.Locus != locus)
            {
                locus.File.Report(text, $"{allele.Definition.Name} is an allele of {allele.Locus.Id}, not of {locus.Id}.");
                return null;
            }

            ids[i] = allele.Definition.Id;
        }

        if (ids[0] == Allele.WildId && ids[1] == Allele.WildId)
        {
            locus.File.Report(text, "The pair +/+ is the wild type and takes no form.");
            return null;
        }

        return (ids[0], ids[1]);
    }

    private static (Placement Placement, (RecombinationFraction Least, RecombinationFraction Most)? Interval) ReadPlacement(CatalogueFile file, YamlMap item)
    {
        if (item.Map("placement") is not { } map)
        {
            return (new Placement.Autosomal(), null);
        }

        var (group, position, sex) = (map.Scalar("linkage-group"), map.Number("position"), map.Map("sex-linked"));
        if (map["sex-linked"] is not null && (map["linkage-group"] is not null || map["position"] is not null))
        {
            file.Report(map, "A locus lies on the sex chromosomes or in a linkage group, not both.");
        }
        else if (map["sex-linked"] is null && (group is null || position is null))
        {
            file.Report(map, "A placement is autosomal, or has linkage-group and position, or has sex-linked.");
        }

        if (group is not null && position is { } centimorgans && sex is null)
        {
            return (new Placement.Linked(group.Text, centimorgans), null);
        }

        if (sex is null)
        {
            return (new Placement.Autosomal(), null);
        }

        var (recombination, least, most) = (Fraction(sex, "recombination"), Fraction(sex, "least"), Fraction(sex, "most"));
        if ((sex["least"] is null) != (sex["most"] is null))
        {
            file.Report(sex, "An interval of the recombination fraction needs both least and most.");
        }
        else if (least is { } l && most is { } m && recombination is { } r && !(l.Value <= r.Value && r.Value <= m.Value))
        {
            file.Report(sex, $"The recombination fraction {r.Value} does not lie between least {l.Value} and most {m.Value}.");
        }

        return (
            new Placement.SexLinked(recombination ?? RecombinationFraction.Free, Fraction(sex, "other-sex"), sex.Number("arm") is 2.0 ? 2 : 1),
            least is { } from && most is { } to ? (from, to) : null);
    }

    private static RecombinationFraction? Fraction(YamlMap map, string key) =>
        map.Number(key) is { } value and >= 0.0 and <= 0.5 ? RecombinationFraction.From(value) : null;

    // "Super X" must mean two copies of X, or else what is written could not be read back.
    private void CheckSuperName(AlleleDraft allele)
    {
        if (allele.Definition.Mode == InheritanceMode.Recessive
            || names.FindKey("super" + Spelling.Key(allele.Definition.Name)) is not { } taken)
        {
            return;
        }

        var id = allele.Definition.Id;
        if (taken.Bearer is not FormDraft { Definition.Pairs: [var only] } || !Same(only, (id, id)))
        {
            taken.File.Report(taken.Name, $"'{taken.Name.Text}' reads as two copies of {allele.Definition.Name}; name it otherwise, or make it the form of {allele.Definition.Name}/{allele.Definition.Name} alone.");
        }
    }

    private void CheckIds(AlleleDraft allele)
    {
        var id = allele.Definition.Id;
        if (_locusIds.TryGetValue(id, out var locus) && locus != allele.Locus)
        {
            allele.Locus.File.Report(allele.At, $"The allele id '{id}' is also the id of another locus, in {locus.File.Name} line {locus.Line}.");
        }

        string[] own = allele.Definition.Mode == InheritanceMode.IncompleteDominant ? [id, "super-" + id] : [id];
        foreach (var form in own)
        {
            if (_formIds.TryGetValue(form, out var other) && other != allele.Locus)
            {
                allele.Locus.File.Report(allele.At, $"The form id '{form}', which this allele has by itself, is also stated in {other.File.Name} for {other.Id}.");
                var stated = other.Forms.FindIndex(f => string.Equals(f.Definition.Id, form, StringComparison.Ordinal));
                if (stated >= 0)
                {
                    other.Forms[stated] = other.Forms[stated] with
                    {
                        Definition = other.Forms[stated].Definition with { Id = StandIn(form, _formIds.ContainsKey) },
                    };
                }
            }

            if (_alleleIds.TryGetValue(form, out var clash) && clash != allele)
            {
                clash.Locus.File.Report(clash.At, $"The allele id '{form}' is also the id of the form of two copies of {allele.Definition.Name}.");
            }
        }
    }

    private static string StandIn(string id, Func<string, bool> isTaken)
    {
        var number = 2;
        while (isTaken($"{id}~{number}"))
        {
            number++;
        }

        return $"{id}~{number}";
    }

    private static bool Same((string First, string Second) a, (string First, string Second) b) =>
        a == b || (a.First == b.Second && a.Second == b.First);

    internal static AgeStage StageOf(string? text) => text switch
    {
        "juvenile" => AgeStage.Juvenile,
        "subadult" => AgeStage.Subadult,
        "adult" => AgeStage.Adult,
        _ => AgeStage.Hatchling,
    };

    /// <summary>A decimal number as the exact ratio it is written as.</summary>
    internal static Probability ToProbability(double value)
    {
        var thousandths = Math.Round(value * 1000.0);
        return Math.Abs((value * 1000.0) - thousandths) < 1e-9 ? Probability.Ratio((long)thousandths, 1000) : Probability.From(value);
    }
}
