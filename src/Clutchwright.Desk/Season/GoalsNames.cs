using System.Text.Json.Nodes;

namespace Clutchwright.Desk.Season;

/// <summary>Finds the animals that a goals file names.</summary>
internal static class GoalsNames
{
    /// <summary>Every name of an animal in the file, each once.</summary>
    public static IReadOnlyList<string> Of(JsonObject goals)
    {
        var names = new List<string>();
        Rename((JsonObject)goals.DeepClone(), name =>
        {
            names.Add(name);
            return name;
        });
        return [.. names.Distinct(StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>What a goal is called where it has no name, or the name it has; <c>null</c>: that of a worth, or of what cannot be read.</summary>
    public static string? Called(JsonNode? goal) => goal is not JsonObject entry ? null
        : (string?)entry["name"]
        ?? ((entry["want"] ?? entry["holdback"]) is { } want ? (entry["atLeast"] is { } count && count.ToString() != "1" ? $"{count} {want}" : want.ToString())
        : entry["prove"] is { } animal ? $"{animal} het {entry["gene"]}?"
        : entry["expect"]?.ToString() ?? (entry["value"] is null ? null : "value"));

    /// <summary>Takes the question what one goal costs of another out of a file that has lost one of the two.</summary>
    /// <param name="goals">The file, which is changed.</param>
    public static void DropLostTradeOff(JsonObject goals)
    {
        var called = (goals["goals"] as JsonArray ?? []).Select(Called).ToHashSet(StringComparer.OrdinalIgnoreCase);
        if (goals["tradeOff"] is JsonArray trade && trade.Any(t => !called.Contains(t?.ToString())))
        {
            goals.Remove("tradeOff");
        }
    }

    /// <summary>Gives every animal its name of today. What speaks of one that has none goes out of the file.</summary>
    /// <param name="goals">The file, which is changed.</param>
    /// <param name="nameOf">The name of today of an animal by its name in the file; <c>null</c>: it is not there any more.</param>
    public static void Rename(JsonObject goals, Func<string, string?> nameOf)
    {
        if (goals["animals"] is JsonObject animals)
        {
            var entries = animals.ToArray();
            animals.Clear();
            foreach (var (name, said) in entries)
            {
                if (nameOf(name) is { } now)
                {
                    animals[now] = said;
                }
            }
        }

        Entries(goals["goals"], goal => NameIn(goal, "prove"));
        foreach (var couples in (string[])["pin", "ban", "lift"])
        {
            Entries(goals[couples], couple => NameIn(couple, "sire") && NameIn(couple, "dam"));
        }

        bool NameIn(JsonObject entry, string key)
        {
            if (entry[key] is not JsonValue value || !value.TryGetValue<string>(out var name))
            {
                return true;
            }

            var now = nameOf(name);
            if (now is not null && now != name)
            {
                entry[key] = now;
            }

            return now is not null;
        }

        static void Entries(JsonNode? list, Func<JsonObject, bool> stays)
        {
            if (list is JsonArray array)
            {
                foreach (var gone in array.Where(e => e is JsonObject entry && !stays(entry)).ToArray())
                {
                    array.Remove(gone);
                }
            }
        }
    }
}
