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
