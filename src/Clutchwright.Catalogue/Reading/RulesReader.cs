using Clutchwright.Catalogue.Entries;
using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Catalogue.Yaml;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Catalogue.Reading;

/// <summary>Reads dangers and masks.</summary>
internal sealed class RulesReader(EvidenceReader evidence, LociReader loci)
{
    public List<DangerDefinition> Dangers { get; } = [];

    public List<MaskEntry> Masks { get; } = [];

    public void ReadDangers(CatalogueFile file)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        var conditions = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var item in file.Items("dangers"))
        {
            var grounds = evidence.Of(file, item);
            var when = ReadConditions(file, item);
            var severity = item.Text("severity") switch
            {
                "lethal" => Severity.Lethal,
                "suffering" => Severity.Suffering,
                _ => Severity.Watch,
            };
            Sex? sex = item.Text("sex") switch { "female" => Sex.Female, "male" => Sex.Male, _ => null };
            var survival = new Viability(Share(item, "egg"), Share(item, "hatch"), Share(item, "months"));
            if (item.Scalar("id") is not { } id || when.Count == 0 || when.Count < item.Scalars("when").Count)
            {
                continue;
            }

            if (!ids.Add(id.Text))
            {
                file.Report(id, $"The danger id '{id.Text}' is used twice.");
                continue;
            }

            var key = string.Join(" & ", when.Select(w => w.ToString()).Order(StringComparer.Ordinal)) + sex;
            if (!conditions.TryAdd(key, id.Text))
            {
                file.Report(id, $"The danger '{id.Text}' has the same conditions as '{conditions[key]}'; put them together.");
                continue;
            }

            Dangers.Add(new(id.Text, when, severity, item.Text("text") ?? "", grounds) { Sex = sex, Viability = survival });
        }
    }

    /// <summary>Reads the masks.</summary>
    /// <param name="file">The file.</param>
    /// <param name="species">The species without dangers and masks, for its forms.</param>
    public void ReadMasks(CatalogueFile file, Species species)
    {
        var masked = new Dictionary<string, int>(StringComparer.Ordinal);
        var formIds = species.Loci.SelectMany(l => l.Expressions).Where(e => e.IsVisible).Select(e => e.Id).ToArray();
        foreach (var item in file.Items("masks"))
        {
            var grounds = evidence.Of(file, item);
            var by = new List<Expression>();
            foreach (var id in item.Scalars("by"))
            {
                if (species.FindExpression(id.Text) is not { IsVisible: true } form)
                {
                    file.Report(id, $"'{id.Text}' is no form's id{Spelling.DidYouMean(id.Text, formIds)}.");
                }
                else if (!masked.TryAdd(id.Text, id.Line))
                {
                    file.Report(id, $"The form '{id.Text}' has a mask already, in line {masked[id.Text]}; put them together.");
                }
                else
                {
                    by.Add(form);
                }
            }

            var hides = item["hides"] is YamlList ? ReadIds(file, item, "hides", species, takesLoci: true) : null;
            var through = ReadIds(file, item, "through", species, takesLoci: false);
            var faintly = ReadIds(file, item, "faintly", species, takesLoci: false);
            foreach (var id in item.Scalars("through").Where(t => faintly.Contains(t.Text, StringComparer.Ordinal)))
            {
                file.Report(id, $"'{id.Text}' stands under through and under faintly; it shows clearly or weakly.");
            }

            if (by.Count > 0)
            {
                Masks.Add(new(new(by.Select(b => b.Id).ToArray(), hides) { Through = through, Faintly = faintly }, grounds));
            }
        }
    }

    private static string[] ReadIds(CatalogueFile file, YamlMap item, string key, Species species, bool takesLoci)
    {
        var ids = new List<string>();
        foreach (var id in item.Scalars(key))
        {
            if (species.FindAllele(id.Text) is null && (!takesLoci || species.FindLocus(id.Text) is null))
            {
                var known = species.Loci.SelectMany(l => l.Alleles.Skip(1).Select(a => a.Id).Concat(takesLoci ? [l.Id] : []));
                file.Report(id, $"'{id.Text}' is no allele's{(takesLoci ? " or locus'" : "")} id{Spelling.DidYouMean(id.Text, known)}.");
            }
            else if (ids.Contains(id.Text, StringComparer.Ordinal))
            {
                file.Report(id, $"'{id.Text}' stands twice under {key}.");
            }
            else
            {
                ids.Add(id.Text);
            }
        }

        return [.. ids];
    }

    private List<GenotypeCondition> ReadConditions(CatalogueFile file, YamlMap item)
    {
        var conditions = new List<GenotypeCondition>();
        var seen = new HashSet<LocusDraft>();
        foreach (var text in item.Scalars("when"))
        {
            if (ReadCondition(file, text) is not { } read)
            {
                continue;
            }

            if (!seen.Add(read.Locus))
            {
                file.Report(text, $"The locus {read.Locus.Id} has a condition already; a danger names each locus once.");
                continue;
            }

            conditions.Add(read.Condition);
        }

        return conditions;
    }

    private (LocusDraft Locus, GenotypeCondition Condition)? ReadCondition(CatalogueFile file, YamlScalar text)
    {
        var words = text.Text.Trim();
        if (words.StartsWith("any ", StringComparison.OrdinalIgnoreCase))
        {
            return Find(words[4..]) is { } allele ? (allele.Locus, new GenotypeCondition.Carries(allele.Definition.Id)) : null;
        }

        var sides = words.Split('/');
        if (sides.Length != 2)
        {
            file.Report(text, $"'{words}' is no condition; write 'any NAME' for at least one copy, or 'A/B' for a pair of alleles.");
            return null;
        }

        var drafts = new AlleleDraft?[2];
        for (var i = 0; i < 2; i++)
        {
            if (sides[i].Trim() != Allele.WildId && (drafts[i] = Find(sides[i])) is null)
            {
                return null;
            }
        }

        if ((drafts[0] ?? drafts[1]) is not { } one)
        {
            file.Report(text, "The pair +/+ is the wild type, which is no danger.");
            return null;
        }

        if (drafts[0] is { } a && drafts[1] is { } b && a.Locus != b.Locus)
        {
            file.Report(text, $"{a.Definition.Name} and {b.Definition.Name} are not alleles of one locus; for both together write two conditions.");
            return null;
        }

        return (one.Locus, new GenotypeCondition.IsPair(drafts[0]?.Definition.Id ?? Allele.WildId, drafts[1]?.Definition.Id ?? Allele.WildId));

        AlleleDraft? Find(string name)
        {
            if (loci.FindAllele(name) is { } allele)
            {
                return allele;
            }

            file.Report(text, $"'{name.Trim()}' is no allele{loci.DidYouMean(name)}.");
            return null;
        }
    }

    private static Probability Share(YamlMap item, string stage) =>
        item.Map("survival").Number(stage) is { } share and >= 0.0 and <= 1.0 ? LociReader.ToProbability(share) : Probability.Certain;
}
