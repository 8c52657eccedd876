using System.Globalization;

namespace Clutchwright.Web;

/// <summary>The addresses of pages.</summary>
internal static class Links
{
    private const int MostDeeds = 20;

    private static readonly HashSet<string> Taken =
        new(["new", "import", "history", "bin", "animal", "export.csv", "contradictions", "moved", "seen"], StringComparer.OrdinalIgnoreCase);

    /// <summary>The page of an animal. Tags that name another page of the stock have a longer address.</summary>
    public static string Animal(string tag) => Taken.Contains(tag) ? $"/stock/animal/{Escape(tag)}" : $"/stock/{Escape(tag)}";

    public static string EditAnimal(string tag) => $"{Animal(tag)}/edit";

    public static string Carry(string tag) => $"{Animal(tag)}/carry";

    public static string Gene(string id) => $"/catalogue/{Escape(id)}";

    /// <summary>The kin of an animal.</summary>
    public static string Kin(string tag) => With("/kin", ("animal", tag));

    /// <summary>The kinship of two animals.</summary>
    public static string KinPair(string sire, string dam) => With("/kin/pairs", ("sire", sire), ("dam", dam));

    public static string Pairs(string want) => With("/pairs", ("want", want));

    /// <summary>The route to a want.</summary>
    public static string Route(string want) => With("/route", ("want", want));

    /// <summary>What happened, to one animal or to all.</summary>
    public static string Log(string? tag) => With("/log", ("animal", tag));

    /// <summary>An incubator.</summary>
    public static string Incubator(Guid id) => $"/incubators/{id:N}";

    /// <summary>How an animal eats and keeps its mass, with the deeds of one press.</summary>
    public static string InHand(string tag) => $"/watch/{Escape(tag)}";

    /// <summary>The page of a clutch. Tags that name another page of the clutches have a longer address.</summary>
    public static string Clutch(string tag) => tag is "new" or "bin" or "ids" or "clutch" ? $"/clutches/clutch/{Escape(tag)}" : $"/clutches/{Escape(tag)}";

    /// <summary>Where the young of a clutch are entered.</summary>
    public static string Hatch(string tag) => $"{Clutch(tag)}/hatch";

    /// <summary>The photos of an animal.</summary>
    public static string Photos(string tag) => $"{Animal(tag)}/photos";

    /// <summary>A picture.</summary>
    public static string Photo(string digest, bool small) => small ? $"/photos/{digest}/small.jpg" : $"/photos/{digest}.jpg";

    /// <summary>Labels of animals, to be printed.</summary>
    public static string Labels(IEnumerable<string> tags) => With("/sheets", [("sheet", "label"), .. tags.Select(t => ("tag", (string?)t))]);

    /// <summary>How a route stands that is followed.</summary>
    public static string Followed(Guid id) => With("/route", ("for", id.ToString("N")));

    /// <summary>The season planned for a want.</summary>
    public static string Season(string want) => With("/season", ("goal", want));

    /// <summary>A sheet of an animal to print.</summary>
    public static string Sheet(string kind, string tag) => With("/sheets", ("sheet", kind), ("tag", tag));

    /// <summary>The card of a clutch to print.</summary>
    public static string ClutchCard(string tag) => With("/sheets", ("sheet", "clutch"), ("kept", tag));

    /// <summary>The board with makings on it.</summary>
    public static string Board(IEnumerable<string> makings) => With("/looks/board", makings.Select(m => ("m", (string?)m)));

    /// <summary>A cross of two animals, with what is wanted of it.</summary>
    public static string Cross(string? sire, string? dam, IEnumerable<string>? wants = null) =>
        With("/cross", [("sire", sire), ("dam", dam), .. (wants ?? []).Select(w => ("want", (string?)w))]);

    /// <summary>An address with those of the parameters that have a value.</summary>
    public static string With(string path, params IEnumerable<(string Name, string? Value)> query)
    {
        var parts = query.Where(q => !string.IsNullOrEmpty(q.Value)).Select(q => $"{q.Name}={Escape(q.Value!)}").ToList();
        return parts.Count == 0 ? path : $"{path}?{string.Join('&', parts)}";
    }

    /// <summary>A number as an address or a form holds it.</summary>
    public static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>Deeds that were done at once, as an address or a form holds them.</summary>
    public static string Deeds(IEnumerable<long> deeds) => string.Join(',', deeds.Select(Number));

    /// <summary>The deeds that an address or a form holds; none where it holds anything else.</summary>
    public static IReadOnlyList<long> DeedsOf(string? text)
    {
        var parts = (text ?? string.Empty).Split(',');
        var deeds = parts.Select(p => long.TryParse(p, NumberStyles.None, CultureInfo.InvariantCulture, out var deed) && deed is > 0 and < long.MaxValue ? deed : 0).ToArray();
        return parts.Length <= MostDeeds && Array.TrueForAll(deeds, d => d > 0) ? deeds : [];
    }

    /// <summary>The tag in a route: a slash in it comes through still escaped.</summary>
    public static string TagOf(string routeValue) => routeValue.Replace("%2F", "/", StringComparison.OrdinalIgnoreCase);

    private static string Escape(string text) => Uri.EscapeDataString(text);
}
