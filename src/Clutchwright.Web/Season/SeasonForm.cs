using System.Globalization;
using Clutchwright.Desk.Words;
using Microsoft.AspNetCore.Http;

namespace Clutchwright.Web.Season;

/// <summary>A season that is planned, as the address holds it.</summary>
public sealed record SeasonForm
{
    private const int MostRows = 40;

    /// <summary>The limits, as the goals file and as the address name them.</summary>
    private static readonly (string Key, string Field)[] LimitFields =
    [
        ("matingsPerMale", "matings"), ("clutches", "clutches"), ("eggs", "eggs"), ("hatchlings", "hatchlings"), ("inbreeding", "inbreeding"),
        ("meanInbreeding", "mean-inbreeding"), ("restMonths", "rest"),
    ];

    /// <summary>Gets the year by which the season is called; <c>null</c>: the one at hand.</summary>
    public string? Year { get; init; }

    /// <summary>Gets which state of the kept season it began from.</summary>
    public string? From { get; init; }

    /// <summary>Gets the day it begins.</summary>
    public string? On { get; init; }

    public IReadOnlyList<SeasonGoalRow> Goals { get; init; } = [];

    /// <summary>Gets what is asked of the limits, by the names of the address; shares in percent.</summary>
    public IReadOnlyDictionary<string, string> Limits { get; init; } = new Dictionary<string, string>();

    public IReadOnlyList<SeasonAnimalRow> Animals { get; init; } = [];

    /// <summary>Gets the pairs that must be.</summary>
    public IReadOnlyList<SeasonCouple> Pinned { get; init; } = [];

    /// <summary>Gets the pairs that must not be.</summary>
    public IReadOnlyList<SeasonCouple> Banned { get; init; } = [];

    /// <summary>Gets the pairs that may be although their young can die or suffer.</summary>
    public IReadOnlyList<SeasonCouple> Lifted { get; init; } = [];

    /// <summary>Gets the rows of two goals of which it is asked what one costs of the other, as <c>1|2</c>.</summary>
    public string? TradeOff { get; init; }

    /// <summary>Gets the keeper's note.</summary>
    public string? Note { get; init; }

    /// <summary>Gets whether the address holds a season itself; else it is read from the book.</summary>
    public bool IsDraft { get; init; }

    /// <summary>Gets whether anything is asked.</summary>
    public bool IsAsked => Goals.Count > 0;

    /// <summary>Gets the address that asks this.</summary>
    public string Link => Links.With(
        "/season",
        [
            ("draft", "yes"), ("year", Year), ("from", From), ("on", On),
            .. Goals.Select(g => ("goal", (string?)g.ToString())),
            .. LimitFields.Select(l => (l.Field, Limits.GetValueOrDefault(l.Field))),
            .. Animals.Select(a => ("animal", (string?)a.ToString())),
            .. Pinned.Select(p => ("pin", (string?)p.ToString())), .. Banned.Select(b => ("ban", (string?)b.ToString())), .. Lifted.Select(l => ("lift", (string?)l.ToString())),
            ("trade", TradeOff), ("note", Note),
        ]);

    public static SeasonForm Read(IQueryCollection query)
    {
        var rows = Rows(i => SeasonGoalRow.Read(query, i));
        var lifted = Text(query, "lift-sire") is { } sire && Text(query, "lift-dam") is { } dam ? new SeasonCouple(sire, dam, Text(query, "lift-why")) : null;
        return new()
        {
            IsDraft = query.Keys.Any(k => k is not ("year" or "deed" or "saved" or "wait" or "stop")),
            Year = Text(query, "year"),
            From = Text(query, "from"),
            On = Text(query, "on"),
            Goals = [.. Texts(query, "goal").Select(SeasonGoalRow.Read).Where(g => g.Want.Length > 0).Concat(rows).Take(MostRows)],
            Limits = LimitFields.Select(l => (l.Field, Value: Text(query, l.Field))).Where(l => l.Value is not null).ToDictionary(l => l.Field, l => l.Value!),
            Animals = [.. Texts(query, "animal").Select(SeasonAnimalRow.Read).OfType<SeasonAnimalRow>().Concat(Rows(i => SeasonAnimalRow.Read(query, i)))],
            Pinned = Couples(query, "pin"),
            Banned = Couples(query, "ban"),
            Lifted = [.. Couples(query, "lift"), .. lifted is null ? [] : new[] { lifted }],
            TradeOff = Text(query, "trade") ?? (Text(query, "trade-of") is { } one && Text(query, "trade-for") is { } other && one != other ? $"{one}|{other}" : null),
            Note = Text(query, "note"),
        };
    }

    public string? Limit(string field) => Limits.GetValueOrDefault(field);

    public bool IsPinned(string sire, string dam) => Pinned.Any(c => c.IsOf(sire, dam));

    public bool IsBanned(string sire, string dam) => Banned.Any(c => c.IsOf(sire, dam));

    /// <summary>The same with a pair that must be.</summary>
    public SeasonForm Pin(string sire, string dam) => Free(sire, dam) is var free ? free with { Pinned = [.. free.Pinned, new(sire, dam)] } : this;

    /// <summary>The same with a pair that must not be.</summary>
    public SeasonForm Ban(string sire, string dam) => Free(sire, dam) is var free ? free with { Banned = [.. free.Banned, new(sire, dam)] } : this;

    /// <summary>The same with a pair neither pinned nor banned.</summary>
    public SeasonForm Free(string sire, string dam) => this with
    {
        Pinned = [.. Pinned.Where(c => !c.IsOf(sire, dam))],
        Banned = [.. Banned.Where(c => !c.IsOf(sire, dam))],
    };

    /// <summary>The field a problem belongs to; <c>null</c>: none.</summary>
    public string? FieldOf(AskedWrongly problem)
    {
        for (var i = 1; i <= Goals.Count; i++)
        {
            if (problem.Where.Contains($"goals[{Number(i)}]", StringComparison.Ordinal))
            {
                return new[] { ("atLeast", "count"), ("weight", "weight"), ("least", "floor") }
                    .Where(f => problem.Where.EndsWith(f.Item1, StringComparison.Ordinal)).Select(f => f.Item2).FirstOrDefault("want") + Number(i);
            }
        }

        if (Animals.Select((a, i) => (a, i)).Where(a => problem.Where.Contains($"animals.{a.a.Tag}", StringComparison.Ordinal)
            || (problem.Where.EndsWith("animals", StringComparison.Ordinal) && problem.Text.Contains($"'{a.a.Tag}'", StringComparison.Ordinal)))
            .Select(a => (int?)a.i).FirstOrDefault() is { } row)
        {
            return $"animal{Number(row + 1)}";
        }

        return LimitFields.Where(f => problem.Where.EndsWith($"limits.{f.Key}", StringComparison.Ordinal)).Select(f => f.Field).FirstOrDefault()
            ?? (problem.Where.EndsWith(", on", StringComparison.Ordinal) ? "on" : null);
    }

    internal static IEnumerable<(string Key, string Field)> LimitNames => LimitFields;

    internal static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    internal static string? Text(IQueryCollection query, string name)
    {
        var text = query[name].ToString().Trim();
        return text.Length == 0 ? null : text;
    }

    private static IEnumerable<T> Rows<T>(Func<string, T?> read)
        where T : class => Enumerable.Range(1, MostRows).Select(i => read(Number(i))).OfType<T>();

    private static SeasonCouple[] Couples(IQueryCollection query, string name) => Array.ConvertAll(Texts(query, name), SeasonCouple.Read);

    private static string[] Texts(IQueryCollection query, string name) =>
        [.. query[name].OfType<string>().Select(t => t.Trim()).Where(t => t.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase)];
}
