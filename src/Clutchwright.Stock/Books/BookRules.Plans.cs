using System.Globalization;
using System.Text.Json;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Export;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Routes;
using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Settings;

namespace Clutchwright.Stock.Books;

/// <content>Routes, seasons and settings, of which much is JSON that the book keeps and does not read.</content>
internal sealed partial class BookRules
{
    private void CheckPlans()
    {
        foreach (var (route, i) in _records.Routes.Select((r, i) => (r, i)))
        {
            var place = Place("routes", i);
            Instant(place, "adoptedAt", route.AdoptedAt);
            if (!IsWritable(route.Asked) || !IsWritable(route.Steps))
            {
                Say(place, "\"asked\" and \"steps\" are JSON objects of whole characters.");
            }
            else if (AdoptedRoute.WhyNot(new(route.Want, route.FirstYear, route.LastYear, route.Asked.GetRawText(), route.Steps.GetRawText())) is { } problem)
            {
                Say(place, problem);
            }

            if (route.Ending is { } ending && !Enum.IsDefined(ending))
            {
                Say($"{place}.ending", "there is no such ending.");
            }
        }

        foreach (var (season, i) in _records.Seasons.Select((s, i) => (s, i)))
        {
            var place = Place("seasons", i);
            if (!IsWritable(season.Goals))
            {
                Say($"{place}.goals", "the goals are a JSON object of whole characters.");
            }
            else if (KeptSeason.WhyNot(new(season.Year, null, season.Goals.GetRawText(), season.Animals)) is { } problem)
            {
                Say(place, problem);
            }

            foreach (var animal in season.Animals)
            {
                Named(place, "animals", RecordKind.Animal, animal.Animal.Value);
                if (!TextRules.IsStorable(animal.Name))
                {
                    Say($"{place}.animals", "a name has characters that cannot be kept.");
                }
            }
        }

        foreach (var (setting, i) in _records.Settings.Select((s, i) => (s, i)))
        {
            var place = Place("settings", i);
            if (!IsWritable(setting.Value, isObject: false))
            {
                Say($"{place}.value", "the value is JSON of whole characters.");
            }
            else if (KeptSetting.WhyNot(setting.Name, setting.Value.GetRawText()) is { } problem)
            {
                Say(place, problem);
            }
        }

        foreach (var year in _records.Seasons.GroupBy(s => s.Year).Where(g => g.Count() > 1))
        {
            Say("seasons", string.Create(CultureInfo.InvariantCulture, $"the season of {year.Key} stands twice."));
        }

        foreach (var name in _records.Settings.GroupBy(s => s.Name, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            Say("settings", $"the setting {Plain(name.Key)} stands twice.");
        }
    }

    // A half of a surrogate pair can be written as an escape and could never be written again.
    private static bool IsWritable(JsonElement element, bool isObject = true)
    {
        try
        {
            return (!isObject || element.ValueKind == JsonValueKind.Object)
                && JsonSerializer.Serialize(element, BookJson.Options).Length >= 0;
        }
        catch (Exception exception) when (exception is JsonException or InvalidOperationException)
        {
            return false;
        }
    }
}
