using Clutchwright.Catalogue.Looks;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Looks;

/// <summary>Which tones occur in the looks of the catalogue?</summary>
public sealed class ListTones
{
    private readonly Lazy<IReadOnlyList<ToneRow>> _rows;

    internal ListTones(OpenCatalogue open) => _rows = new(() =>
    [
        .. open.Catalogue.Looks
            .SelectMany(l => Enum.GetValues<AgeStage>().Select(l.TonesAt))
            .SelectMany(t => new[] { t.Ground, t.Pattern, t.Eye })
            .Distinct()
            .GroupBy(t => Row(t), StringComparer.Ordinal)
            .OrderBy(g => Array.IndexOf(Rows, g.Key))
            .Select(g => new ToneRow(g.Key, [.. g.OrderByDescending(t => t.Lab.L).Select(t => new ToneWords(t.Name, t.Srgb))])),
    ]);

    private static readonly string[] Rows = ["yellows", "oranges", "browns", "olives and greens", "reds and pinks", "purples and blues", "whites, grays and blacks"];

    /// <summary>Lists the tones by kind of hue, light ones first.</summary>
    public IReadOnlyList<ToneRow> Run() => _rows.Value;

    // By the last word of the hue, that of the kind.
    private static string Row(Tone tone) => ToneReader.HueOf(tone).Split(' ')[^1] switch
    {
        "yellow" => "yellows",
        "orange" => "oranges",
        "brown" => "browns",
        "olive" or "green" => "olives and greens",
        "red" or "pink" => "reds and pinks",
        "purple" or "violet" or "blue" => "purples and blues",
        _ => "whites, grays and blacks",
    };
}

/// <summary>Tones of one kind of hue.</summary>
/// <param name="Kind">In the plural.</param>
/// <param name="Tones">Light ones first.</param>
public sealed record ToneRow(string Kind, IReadOnlyList<ToneWords> Tones);
