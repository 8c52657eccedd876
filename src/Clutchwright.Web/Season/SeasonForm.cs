using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Clutchwright.Desk.Season;
using Clutchwright.Desk.Words;
using Microsoft.AspNetCore.Http;

namespace Clutchwright.Web.Season;

/// <summary>A goal as it is written in a row of the form.</summary>
public sealed record SeasonGoalRow(string Want, string? Least, string? Weight)
{
    /// <summary>Reads <c>WANT</c>, <c>WANT*WEIGHT</c> or <c>WANT*WEIGHT*LEAST</c>.</summary>
    public static SeasonGoalRow Read(string text)
    {
        var parts = text.Split('*', StringSplitOptions.TrimEntries);
        return new(parts[0], parts.Length > 2 && parts[2].Length > 0 ? parts[2] : null, parts.Length > 1 && parts[1].Length > 0 ? parts[1] : null);
    }

    /// <summary>Writes it as <see cref="Read"/> reads it.</summary>
    public override string ToString() => (Least, Weight) switch
    {
        (null or "1", null or "1") => Want,
        (null or "1", _) => $"{Want}*{Weight}",
        _ => $"{Want}*{Weight ?? "1"}*{Least}",
    };
}

/// <summary>A season that is planned, as the address holds it.</summary>
public sealed record SeasonForm
{
    private const int MostGoals = 20;
    private const string FileName = "season";

    public IReadOnlyList<SeasonGoalRow> Goals { get; init; } = [];

    public string? Matings { get; init; }

    public string? Clutches { get; init; }

    public string? Eggs { get; init; }

    /// <summary>Gets the most inbreeding of the young, in percent.</summary>
    public string? Inbreeding { get; init; }

    /// <summary>Gets the pairs that must be, as <c>SIRE|DAM</c>.</summary>
    public IReadOnlyList<string> Pinned { get; init; } = [];

    /// <summary>Gets the pairs that must not be, as <c>SIRE|DAM</c>.</summary>
    public IReadOnlyList<string> Banned { get; init; } = [];

    /// <summary>Gets whether anything is asked.</summary>
    public bool IsAsked => Goals.Count > 0;

    /// <summary>Gets the address that asks this.</summary>
    public string Link => Links.With(
        "/season",
        [
            .. Goals.Select(g => ("goal", (string?)g.ToString())),
            ("matings", Matings), ("clutches", Clutches), ("eggs", Eggs), ("inbreeding", Inbreeding),
            .. Pinned.Select(p => ("pin", (string?)p)), .. Banned.Select(b => ("ban", (string?)b)),
        ]);

    public static SeasonForm Read(IQueryCollection query)
    {
        var rows = Enumerable.Range(1, MostGoals)
            .Select(i => Number(i))
            .Where(i => Text(query, $"want{i}") is not null)
            .Select(i => new SeasonGoalRow(Text(query, $"want{i}")!, Text(query, $"least{i}"), Text(query, $"weight{i}")));
        return new()
        {
            Goals = [.. Texts(query, "goal").Select(SeasonGoalRow.Read).Where(g => g.Want.Length > 0).Concat(rows).Take(MostGoals)],
            Matings = Text(query, "matings"),
            Clutches = Text(query, "clutches"),
            Eggs = Text(query, "eggs"),
            Inbreeding = Text(query, "inbreeding"),
            Pinned = Texts(query, "pin"),
            Banned = Texts(query, "ban"),
        };
    }

    public static string Couple(string sire, string dam) => $"{sire}|{dam}";

    public bool IsPinned(string couple) => Pinned.Contains(couple, StringComparer.OrdinalIgnoreCase);

    public bool IsBanned(string couple) => Banned.Contains(couple, StringComparer.OrdinalIgnoreCase);

    /// <summary>The same with a pair that must be.</summary>
    public SeasonForm Pin(string couple) => Free(couple) is var free ? free with { Pinned = [.. free.Pinned, couple] } : this;

    /// <summary>The same with a pair that must not be.</summary>
    public SeasonForm Ban(string couple) => Free(couple) is var free ? free with { Banned = [.. free.Banned, couple] } : this;

    /// <summary>The same with a pair neither pinned nor banned.</summary>
    public SeasonForm Free(string couple) => this with { Pinned = Without(Pinned, couple), Banned = Without(Banned, couple) };

    /// <summary>What is asked, as a goals file.</summary>
    public SeasonQuestion ToQuestion()
    {
        // Each goal has a name of its own, also where two rows want the same.
        var goals = Goals.Select((g, i) => (JsonNode?)new JsonObject
        {
            ["name"] = Goals.Take(i).Any(o => Named(o) == Named(g)) ? $"{Named(g)} (row {Number(i + 1)})" : Named(g),
            ["want"] = g.Want,
            ["atLeast"] = Figure(g.Least),
            ["weight"] = Figure(g.Weight),
        });
        var file = new JsonObject
        {
            ["goals"] = new JsonArray([.. goals]),
            ["limits"] = new JsonObject
            {
                ["matingsPerMale"] = Figure(Matings),
                ["clutches"] = Figure(Clutches),
                ["eggs"] = Figure(Eggs),
                ["inbreeding"] = Share(Inbreeding),
            },
            ["pin"] = Couples(Pinned),
            ["ban"] = Couples(Banned),
        };
        return new(new NamedFile(FileName, JsonSerializer.SerializeToUtf8Bytes<JsonNode>(file)));
    }

    /// <summary>The field a problem belongs to; <c>null</c>: none.</summary>
    public string? FieldOf(AskedWrongly problem)
    {
        for (var i = 1; i <= Goals.Count; i++)
        {
            var place = $"goals[{Number(i)}]";
            if (problem.Where.Contains(place, StringComparison.Ordinal))
            {
                return (problem.Where.Contains("atLeast", StringComparison.Ordinal) ? "least" : problem.Where.Contains("weight", StringComparison.Ordinal) ? "weight" : "want") + Number(i);
            }
        }

        return new[] { ("matingsPerMale", "matings"), ("clutches", "clutches"), ("eggs", "eggs"), ("inbreeding", "inbreeding") }
            .Where(f => problem.Where.EndsWith(f.Item1, StringComparison.Ordinal)).Select(f => f.Item2).FirstOrDefault();
    }

    private static string Named(SeasonGoalRow goal) => goal.Least is null or "1" ? goal.Want : $"{goal.Least} {goal.Want}";

    private static JsonArray Couples(IEnumerable<string> couples) => new([.. couples.Select(c => c.Split('|', 2)).Select(p => (JsonNode?)new JsonObject
    {
        ["sire"] = p[0].Trim(),
        ["dam"] = p.Length > 1 ? p[1].Trim() : null,
    })]);

    // What is no number goes through as it stands, so that the reader says what is wrong with it.
    private static JsonValue? Figure(string? text) => text is null ? null
        : int.TryParse(text, NumberStyles.Integer, CultureInfo.InvariantCulture, out var whole) ? JsonValue.Create(whole)
        : Parsed(text) is { } number ? JsonValue.Create(number)
        : JsonValue.Create(text);

    private static JsonValue? Share(string? text) => text is null ? null
        : Parsed(text.TrimEnd('%', ' ')) is { } number ? JsonValue.Create(number / 100.0)
        : JsonValue.Create(text);

    private static double? Parsed(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : null;

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string[] Without(IEnumerable<string> couples, string couple) => [.. couples.Where(c => !c.Equals(couple, StringComparison.OrdinalIgnoreCase))];

    private static string[] Texts(IQueryCollection query, string name) =>
        [.. query[name].OfType<string>().Select(t => t.Trim()).Where(t => t.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase)];

    private static string? Text(IQueryCollection query, string name)
    {
        var text = query[name].ToString().Trim();
        return text.Length == 0 ? null : text;
    }
}
