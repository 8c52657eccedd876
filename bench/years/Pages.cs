using System.Reflection;

namespace Clutchwright.Years;

/// <summary>Every page of the web app, by the routes that the app itself states, filled with what a book holds; and the forms of pages that cost most.</summary>
internal static class Pages
{
    private const string Route = "Microsoft.AspNetCore.Components.RouteAttribute";

    // A file, or a page in a state that costs more than the bare one.
    private static readonly string[] Others =
    [
        "/stock?page=2", "/stock?find=clown", "/stock?order=hatched&status=any", "/stock/export.csv", "/stock/bin?page=2", "/stock/history?before={deed}", "/log?animal={Tag}",
        "/stock/{young}", "/stock/{young}/carry", "/photos/{digest}.jpg", "/photos/{digest}/small.jpg", "/calendar.ics", "/calendar?from=2020-01-01", "/watch?show=all", "/feeding?show=all",
        "/kin?animal={young}", "/kin/chart.svg?animal={young}", "/kin?show=all&most=300", "/pairs?want=Clown", "/complete?text=clo&caret=3", "/cross?sire=Clown&dam=het%20Clown",
        "/looks?q=clown", "/stock/contradictions?suspects=1",
        "/sheets?sheet=label&tag={young}", "/sheets?sheet=record&tag={Tag}", "/sheets?sheet=lineage&tag={young}", "/sheets?sheet=sale&tag={young}", "/sheets?sheet=clutch&kept={clutch}",
        "/sheets?sheet=season", "/sheets/print.pdf?sheet=label&tag={young}", "/sheets/print.pdf?sheet=record&tag={Tag}", "/sheets/print.pdf?sheet=season",
    ];

    /// <summary>The addresses.</summary>
    /// <param name="sample">What stands for each part of a route.</param>
    /// <exception cref="InvalidOperationException">A page has a part that nothing stands for.</exception>
    public static IReadOnlyList<string> All(Sample sample)
    {
        var routes = Assembly.Load("Clutchwright.Web").GetTypes()
            .SelectMany(page => page.GetCustomAttributesData().Where(a => a.AttributeType.FullName == Route))
            .Select(a => (string)a.ConstructorArguments[0].Value!)
            .Where(r => r is not ("/not-found" or "/status/{Code}") && !r.StartsWith("/stock/animal/", StringComparison.Ordinal) && !r.StartsWith("/clutches/clutch/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Concat(Others);
        return [.. routes.Select(r => Fill(r, sample))];
    }

    private static string Fill(string route, Sample sample)
    {
        var isClutch = route.StartsWith("/clutches/", StringComparison.Ordinal);
        var filled = route
            .Replace("{Tag}", isClutch ? sample.Clutch : sample.Animal, StringComparison.Ordinal)
            .Replace("{young}", sample.Young, StringComparison.Ordinal)
            .Replace("{clutch}", sample.Clutch, StringComparison.Ordinal)
            .Replace("{digest}", sample.Digest, StringComparison.Ordinal)
            .Replace("{deed}", sample.Deed, StringComparison.Ordinal)
            .Replace("{Id:guid}", sample.Incubator, StringComparison.Ordinal)
            .Replace("{Id}", "clown", StringComparison.Ordinal);
        return filled.Contains('{', StringComparison.Ordinal) ? throw new InvalidOperationException($"Nothing stands for a part of {route}.") : filled;
    }
}
