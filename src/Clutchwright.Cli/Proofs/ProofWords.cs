using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Linkages;
using Clutchwright.Proofs.Segregations;

namespace Clutchwright.Cli.Proofs;

/// <summary>How the figures of a proof are set on a page and in JSON.</summary>
internal static class ProofWords
{
    /// <summary>A number for a program; <c>null</c> where it is infinite.</summary>
    public static JsonNode? Number(double? value) => value is { } number && double.IsFinite(number) ? JsonValue.Create(number) : null;

    /// <summary>An interval for a program.</summary>
    public static JsonNode? Interval(ShareInterval? interval) => interval is { } i ? new JsonArray(i.Low, i.High) : null;

    /// <summary>Numbers by percent; <c>null</c> where no number is enough.</summary>
    public static JsonObject ByPercent(IReadOnlyDictionary<int, int?> numbers)
    {
        var json = new JsonObject();
        foreach (var (percent, number) in numbers.OrderBy(n => n.Key))
        {
            json[percent.ToString(CultureInfo.InvariantCulture)] = number;
        }

        return json;
    }

    /// <summary>An exact p value, how it was found.</summary>
    public static JsonObject Exact(ExactChance exact) => new()
    {
        ["method"] = exact.IsExact ? "exact" : "sampled",
        ["standardError"] = exact.StandardError,
        ["draws"] = exact.Draws,
    };

    /// <summary>The keys that every linkage answer has.</summary>
    public static JsonObject Linkage(LodCurve curve, IReadOnlyList<(double R, double Lod)> lodAt, ShareInterval? interval)
    {
        var table = new JsonObject();
        foreach (var (r, lod) in lodAt)
        {
            table[r.ToString(CultureInfo.InvariantCulture)] = Number(lod);
        }

        return new JsonObject
        {
            ["r"] = curve.Best,
            ["interval"] = Interval(interval ?? curve.Support),
            ["support"] = Interval(curve.Support),
            ["lod"] = curve.Most,
            ["lodAt"] = table,
            ["excludedBelow"] = Number(curve.ExcludedBelow),
        };
    }

    /// <summary>The LOD curve on a page.</summary>
    public static void Lod(this Page page, IReadOnlyList<(double R, double Lod)> lodAt) => page.Table(
        ["r", .. lodAt.Select(l => $">{l.R}")],
        [["LOD", .. lodAt.Select(l => double.IsNegativeInfinity(l.Lod) ? "-∞" : l.Lod.ToString("0.000"))]]);

    /// <summary>What a test means, and what to mind.</summary>
    public static void Verdict(this Page page, string verdict, IEnumerable<string> notes)
    {
        page.Line(Page.Seen(verdict));
        page.Points(notes);
    }

    /// <summary>A p value or another small chance.</summary>
    public static string P(double value) => value switch
    {
        0.0 => "0",
        < 0.0001 => value.ToString("0.##E+0"),
        _ => value.ToString("0.####"),
    };

    /// <summary>A p value with its error where it was drawn.</summary>
    public static string P(ExactChance exact) => exact.IsExact ? P(exact.Value) : $"{P(exact.Value)} ± {P(exact.StandardError)} (drawn)";

    /// <summary>An interval.</summary>
    public static string Range(ShareInterval interval) => $"{interval.Low:0.####} to {interval.High:0.####}";

    /// <summary>A number of eggs, or never.</summary>
    public static string Eggs(int? eggs) => eggs is { } n ? n.ToString("N0") : "never";

    /// <summary>What something multiplies odds by.</summary>
    public static string Factor(double? factor) => factor switch
    {
        null => "settles it",
        double.PositiveInfinity => "settles it: yes",
        0.0 => "settles it: no",
        { } f when f is >= 0.01 and < 1000.0 => f.ToString("0.###"),
        { } f => f.ToString("0.##E+0"),
    };

    /// <summary>A chance given as a double.</summary>
    public static string Percent(double chance) => OddsText.Percent(Probability.Rounded(chance));
}
