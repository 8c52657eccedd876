using System.Globalization;
using System.Text.Json.Nodes;
using Xunit;

namespace Clutchwright.Cli.Tests.Season;

/// <summary>Checks a plan from the outside: reads the stock file, the goals file and the answer, and holds each pairing to the rules as they
/// are written in docs/how-to/season.md. Shares no code with the program.</summary>
/// <remarks>Of the made-up species one rule of harm is known: an animal that shows Thorn suffers, so no parent may show it.</remarks>
internal sealed class SeasonChecker
{
    private readonly Dictionary<string, string[]> _rows;
    private readonly JsonObject _goals;

    public SeasonChecker(string csv, string goals)
    {
        _rows = csv.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Skip(1)
            .Select(l => l.Split(',')).ToDictionary(c => c[0], StringComparer.Ordinal);
        _goals = JsonNode.Parse(goals)!.AsObject();
    }

    public void Check(JsonObject answer)
    {
        var pairings = answer["pairings"]!.AsArray().Select(p => (Sire: Text(p!, "sire"), Dam: Text(p!, "dam"))).ToArray();
        var limits = _goals["limits"]?.AsObject() ?? [];
        Assert.Equal(pairings.Length, pairings.Select(p => p.Dam).Distinct().Count());
        foreach (var (sire, dam) in pairings)
        {
            Assert.Equal(("m", "f"), (_rows[sire][1], _rows[dam][1]));
            Assert.DoesNotContain(Couples("ban"), c => c == (sire, dam));
            Assert.True(Couples("lift").Contains((sire, dam)) || !(ShowsThorn(sire) || ShowsThorn(dam)), $"{sire} with {dam} can suffer");
            Assert.True(Kinship(sire, dam) <= (Number(limits, "inbreeding") ?? 1.0) + 1e-12, $"{sire} with {dam}: {Kinship(sire, dam)}");
            foreach (var animal in new[] { sire, dam })
            {
                var told = _goals["animals"]?[animal];
                Assert.Null(told?["hold"]);
                Assert.NotEqual(true, told?["leaveOut"]?.GetValue<bool>());
            }

            if (Number(limits, "restMonths") is { } rest && _goals["animals"]?[dam]?["lastClutch"] is { } last)
            {
                Assert.True(Day(last.GetValue<string>()).AddMonths((int)rest) <= Day(_goals["on"]!.GetValue<string>()), $"{dam} rests");
            }
        }

        foreach (var sire in pairings.GroupBy(p => p.Sire))
        {
            var most = _goals["animals"]?[sire.Key]?["matings"]?.GetValue<double>() ?? Number(limits, "matingsPerMale") ?? 4.0;
            Assert.True(sire.Count() <= most, $"{sire.Key} has {sire.Count()} of {most}");
        }

        Assert.True(pairings.Length <= (Number(limits, "clutches") ?? double.PositiveInfinity));
        Assert.True(pairings.Length == 0 || pairings.Average(p => Kinship(p.Sire, p.Dam)) <= (Number(limits, "meanInbreeding") ?? 1.0) + 1e-9);

        // The made-up species lays 4 eggs with a chance of 1/2, and all of them hatch.
        Assert.True(pairings.Length * 2.0 <= (Number(limits, "eggs") ?? double.PositiveInfinity) + 1e-9);
        if (Text(answer, "status") != "infeasible")
        {
            Assert.All(Couples("pin"), c => Assert.Contains(c, pairings));
            Assert.True(answer["bound"]!.GetValue<double>() >= answer["objective"]!.GetValue<double>());
        }
    }

    private static string Text(JsonNode node, string key) => node[key]!.GetValue<string>();

    private static double? Number(JsonObject limits, string key) => limits[key]?.GetValue<double>();

    private static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private HashSet<(string, string)> Couples(string key) => [.. (_goals[key]?.AsArray() ?? []).Select(c => (Text(c!, "sire"), Text(c!, "dam")))];

    private bool ShowsThorn(string id) => _rows[id][4].Contains("Thorn", StringComparison.Ordinal);

    // Wright's coefficient by the recursion over parents: rows are in the order of birth.
    private double Kinship(string a, string b)
    {
        if (a.Length == 0 || b.Length == 0)
        {
            return 0.0;
        }

        if (a == b)
        {
            return 0.5 * (1.0 + Kinship(_rows[a][2], _rows[a][3]));
        }

        var order = _rows.Keys.ToList();
        return order.IndexOf(a) > order.IndexOf(b)
            ? 0.5 * (Kinship(_rows[a][2], b) + Kinship(_rows[a][3], b))
            : 0.5 * (Kinship(a, _rows[b][2]) + Kinship(a, _rows[b][3]));
    }
}
