using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Clutchwright.Desk.Words;

namespace Clutchwright.Web.Season;

/// <summary>Turns the form of a season into a goals file and back.</summary>
internal static class SeasonGoals
{
    private const string FileName = "season";

    /// <summary>The goals file. What cannot be read goes through as it stands, so that the reader says what is wrong with it.</summary>
    public static NamedFile Write(SeasonForm form) => new(FileName, JsonSerializer.SerializeToUtf8Bytes<JsonNode>(Json(form)));

    /// <summary>Whether two forms ask and choose the same.</summary>
    public static bool IsSame(SeasonForm one, SeasonForm other) => JsonNode.DeepEquals(Json(one), Json(other));

    /// <summary>The form that a goals file fills.</summary>
    /// <param name="goals">A file that could be read.</param>
    public static SeasonForm Read(string goals)
    {
        var file = JsonNode.Parse(goals)!.AsObject();
        var rows = Objects(file["goals"]).Select(Goal).ToArray();
        var limits = new Dictionary<string, string>();
        foreach (var (key, field) in SeasonForm.LimitNames)
        {
            if (file["limits"]?[key] is { } value)
            {
                limits[field] = IsShare(field) ? Written(value.GetValue<double>() * 100.0) : value.ToString();
            }
        }

        return new()
        {
            On = (string?)file["on"],
            Goals = rows,
            Limits = limits,
            Animals = [.. (file["animals"] as JsonObject ?? []).SelectMany(a => SeasonAnimalRow.Whats
                .Where(w => a.Value?[w.What] is { } said && said.ToString() != "false")
                .Select(w => new SeasonAnimalRow(a.Key, w.What, SeasonAnimalRow.IsBare(w.What) ? null : a.Value![w.What]!.ToString())))],
            Pinned = Couples(file["pin"]),
            Banned = Couples(file["ban"]),
            Lifted = Couples(file["lift"]),
            TradeOff = file["tradeOff"] is JsonArray { Count: 2 } trade
                && Array.ConvertAll(trade.ToArray(), t => Array.FindIndex(rows, r => r.Called.Equals(t?.ToString(), StringComparison.OrdinalIgnoreCase)) + 1) is [> 0 and var one, > 0 and var other]
                    ? $"{SeasonForm.Number(one)}|{SeasonForm.Number(other)}"
                    : null,
            Note = (string?)file["note"],
        };
    }

    private static JsonObject Json(SeasonForm form)
    {
        // Each goal has a name of its own, also where two rows want the same.
        var names = form.Goals.Select((g, i) => form.Goals.Take(i).Any(o => o.Called.Equals(g.Called, StringComparison.OrdinalIgnoreCase)) ? $"{g.Called} (row {SeasonForm.Number(i + 1)})" : g.Called).ToArray();
        var limits = new JsonObject();
        foreach (var (key, field) in SeasonForm.LimitNames.Where(l => form.Limit(l.Field) is not null))
        {
            limits[key] = IsShare(field) ? Share(form.Limit(field)!) : Figure(form.Limit(field));
        }

        var file = new JsonObject
        {
            ["goals"] = new JsonArray([.. form.Goals.Select((g, i) => (JsonNode?)Goal(g, names[i]))]),
            ["limits"] = limits,
            ["animals"] = Animals(form.Animals),
            ["pin"] = Couples(form.Pinned),
            ["ban"] = Couples(form.Banned),
            ["lift"] = Couples(form.Lifted),
        };
        Put(file, "on", form.On);
        Put(file, "note", form.Note);
        if (form.TradeOff?.Split('|') is [var one, var other])
        {
            file["tradeOff"] = new JsonArray(Name(one), Name(other));
        }

        return file;

        JsonValue Name(string row) => JsonValue.Create(int.TryParse(row, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= names.Length ? names[number - 1] : row);
    }

    private static JsonObject Goal(SeasonGoalRow row, string name)
    {
        var goal = new JsonObject { ["name"] = name };
        if (row.Kind == "prove")
        {
            var colon = row.Want.LastIndexOf(':');
            goal["prove"] = colon < 0 ? row.Want : row.Want[..colon].Trim();
            Put(goal, "gene", colon < 0 ? null : row.Want[(colon + 1)..].Trim());
        }
        else if (row.Kind == "value")
        {
            var worths = new JsonObject();
            foreach (var part in row.Want.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            {
                var equals = part.LastIndexOf('=');
                worths[equals < 0 ? part : part[..equals].Trim()] = equals < 0 ? null : Figure(part[(equals + 1)..].Trim());
            }

            goal["value"] = worths;
        }
        else
        {
            goal[row.Kind] = row.Want;
        }

        if (row.Kind is "want" or "holdback")
        {
            Put(goal, "atLeast", Figure(row.Count));
        }

        Put(goal, "weight", Figure(row.Weight));
        Put(goal, "least", row.Kind is "expect" or "value" or "prove" ? Figure(row.Floor) : row.Floor is null ? null : Share(row.Floor));
        Put(goal, "route", row.Route);
        return goal;
    }

    private static SeasonGoalRow Goal(JsonObject goal)
    {
        var kind = SeasonGoalRow.Kinds.First(k => goal[k.Kind] is not null).Kind;
        var want = kind switch
        {
            "prove" => $"{goal["prove"]}: {goal["gene"]}",
            "value" => string.Join("; ", goal["value"]!.AsObject().Select(w => $"{w.Key}={w.Value}")),
            _ => goal[kind]!.ToString(),
        };
        var row = new SeasonGoalRow(want, goal["atLeast"]?.ToString(), goal["weight"]?.ToString())
        {
            Kind = kind,
            Floor = goal["least"] is not { } least ? null : kind is "expect" or "value" or "prove" ? least.ToString() : Written(least.GetValue<double>() * 100.0),
            Route = (string?)goal["route"],
        };
        var name = (string?)goal["name"];
        return name is null || name == row.Called ? row : row with { Name = name };
    }

    private static JsonObject Animals(IEnumerable<SeasonAnimalRow> rows)
    {
        var animals = new JsonObject();
        foreach (var rowsOfOne in rows.GroupBy(r => r.Tag, StringComparer.OrdinalIgnoreCase))
        {
            var said = new JsonObject();
            foreach (var row in rowsOfOne)
            {
                said[row.What] = SeasonAnimalRow.IsBare(row.What) ? true : row.What is "hold" or "lastClutch" ? row.Value ?? "not said why" : Figure(row.Value);
            }

            animals[rowsOfOne.Key] = said;
        }

        return animals;
    }

    private static JsonArray Couples(IEnumerable<SeasonCouple> couples) => new([.. couples.Select(c =>
    {
        var couple = new JsonObject { ["sire"] = c.Sire, ["dam"] = c.Dam };
        Put(couple, "because", c.Because);
        return (JsonNode?)couple;
    })]);

    private static SeasonCouple[] Couples(JsonNode? list) =>
        [.. Objects(list).Select(c => new SeasonCouple((string?)c["sire"] ?? string.Empty, (string?)c["dam"] ?? string.Empty, (string?)c["because"]))];

    private static IEnumerable<JsonObject> Objects(JsonNode? list) => (list as JsonArray ?? []).OfType<JsonObject>();

    private static void Put(JsonObject into, string key, JsonNode? value)
    {
        if (value is not null)
        {
            into[key] = value;
        }
    }

    private static bool IsShare(string field) => field is "inbreeding" or "mean-inbreeding";

    private static JsonValue? Figure(string? text) => text is null ? null
        : int.TryParse(text, NumberStyles.Integer, CultureInfo.InvariantCulture, out var whole) ? JsonValue.Create(whole)
        : Parsed(text) is { } number ? JsonValue.Create(number)
        : JsonValue.Create(text);

    private static JsonValue Share(string text) => Parsed(text.TrimEnd('%', ' ')) is { } number ? JsonValue.Create(number / 100.0) : JsonValue.Create(text);

    private static string Written(double number) => Math.Round(number, 9).ToString("0.#########", CultureInfo.InvariantCulture);

    private static double? Parsed(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : null;
}
