using Clutchwright.Catalogue.Entries;
using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Catalogue.Yaml;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Catalogue.Reading;

/// <summary>Reads the sources, and the evidence that stands beside every claim.</summary>
internal sealed class EvidenceReader
{
    private readonly Dictionary<string, Source> _sources = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<string, Source> Sources => _sources;

    public void ReadSources(CatalogueFile file)
    {
        foreach (var item in file.Items("sources"))
        {
            if (item.Scalar("id") is not { } id)
            {
                continue;
            }

            var seen = item.Text("seen") switch
            {
                "full-text" => SourceReading.FullText,
                "abstract" => SourceReading.Abstract,
                "reference" => SourceReading.Reference,
                _ => SourceReading.Recalled,
            };
            if (!_sources.TryAdd(id.Text, new(id.Text, item.Text("citation") ?? "", item.Text("doi"), seen)))
            {
                file.Report(id, $"The source id '{id.Text}' is used twice; give one of them another id.");
            }
        }
    }

    /// <summary>Reads the evidence of an entry; a missing or malformed one counts as common practice, since it has been told.</summary>
    public Evidence Of(CatalogueFile file, YamlMap entry)
    {
        if (entry.Map("evidence") is not { } map)
        {
            return Evidence.CommonPractice;
        }

        var grade = map.Text("grade") switch
        {
            "published" => EvidenceGrade.Published,
            "reported" => EvidenceGrade.Reported,
            "disputed" => EvidenceGrade.Disputed,
            _ => EvidenceGrade.CommonPractice,
        };
        var sources = new List<string>();
        foreach (var source in map.Scalars("source"))
        {
            if (!_sources.ContainsKey(source.Text))
            {
                file.Report(source, $"The source '{source.Text}' is not in sources.yaml{Spelling.DidYouMean(source.Text, _sources.Keys)}.");
            }
            else if (sources.Contains(source.Text, StringComparer.Ordinal))
            {
                file.Report(source, $"The source '{source.Text}' is named twice.");
            }
            else
            {
                sources.Add(source.Text);
            }
        }

        if (grade == EvidenceGrade.Published && map["source"] is null)
        {
            file.Report(map, "The grade 'published' needs at least one source; without one it is common-practice or reported.");
        }

        return new(grade, sources, map.Text("note"));
    }
}
