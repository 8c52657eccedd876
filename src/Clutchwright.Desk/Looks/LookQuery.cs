using Clutchwright.Catalogue.Looks;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Looks;

/// <summary>A query as it was understood so far; <c>null</c>: the query does not say.</summary>
internal sealed class LookQuery
{
    public List<(ToneWish Wish, string Words)> Tones { get; } = [];

    public List<(WordWish Wish, string Words)> Words { get; } = [];

    public (WhiteExtent Least, WhiteExtent Most)? White { get; set; }

    public LookCourse? Course { get; set; }

    public AgeStage? Stage { get; set; }

    public int? Genes { get; set; }

    public List<(Allele Allele, bool IsIn)> Genotype { get; } = [];

    public bool IsFromStock { get; set; }

    public bool IsWithoutHarm { get; set; }

    /// <summary>Gets whether anything was said of the look itself.</summary>
    public bool SaysALook => Tones.Count > 0 || Words.Count > 0 || White is not null || Course is LookCourse.Holds || Genotype.Any(g => g.IsIn);

    /// <summary>What was understood, in a sentence.</summary>
    public string Sentence(AgeStage stage)
    {
        var parts = new List<string>();
        parts.AddRange(Tones.Select(t => t.Words));
        parts.AddRange(Words.Select(w => w.Words));
        if (White is var (least, most))
        {
            parts.Add(least == most
                ? least switch
                {
                    WhiteExtent.None => "no white",
                    WhiteExtent.Traces => "traces of white",
                    WhiteExtent.Patches => "white patches",
                    WhiteExtent.Most => "mostly white",
                    _ => "all white",
                }
                : most == WhiteExtent.All
                    ? $"white: {least.ToString().ToLowerInvariant()} or more"
                    : $"white: {most.ToString().ToLowerInvariant()} at most");
        }

        parts.AddRange(Genotype.Select(g => $"{(g.IsIn ? "with" : "without")} {g.Allele.Name}"));
        parts.Add(Course switch
        {
            LookCourse.Holds => "at every age from hatchling to adult",
            LookCourse.Comes => "on the adult, not yet on the hatchling",
            LookCourse.Fades => "on the hatchling, no longer on the adult",
            _ => $"as {(stage == AgeStage.Adult ? "an" : "a")} {stage.ToString().ToLowerInvariant()}",
        });
        if (IsFromStock)
        {
            parts.Add("of alleles the stock carries");
        }

        if (IsWithoutHarm)
        {
            parts.Add("without suffering or death");
        }

        var text = string.Join("; ", parts);
        return $"{char.ToUpperInvariant(text[0])}{text[1..]}.";
    }
}
