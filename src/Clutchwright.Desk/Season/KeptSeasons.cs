using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Seasons;

namespace Clutchwright.Desk.Season;

/// <summary>The seasons of the book, with the animals called as they are today.</summary>
internal sealed class KeptSeasons(OpenBook book, OpenCatalogue catalogue, StockBeliefs stock)
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>What is kept of a season; <c>null</c>: nothing.</summary>
    public async Task<(KeptSeason Season, JsonObject Goals, IReadOnlyList<string> Notes)?> FindAsync(int year, CancellationToken cancel)
    {
        var season = (await new ListSeasons(book.Book).RunAsync(cancel)).Expect().FirstOrDefault(s => s.Year == year);
        if (season is null)
        {
            return null;
        }

        var state = await stock.ReadAsync(cancel);
        var animals = season.Animals.ToLookup(a => a.Name, a => a.Animal, StringComparer.OrdinalIgnoreCase);
        var gone = new List<string>();
        var goals = JsonNode.Parse(season.Goals)!.AsObject();
        GoalsNames.Rename(goals, name =>
        {
            var now = animals[name].Select(a => state.Find(a)?.Animal.Tag).FirstOrDefault();
            if (now is null)
            {
                gone.Add(name);
            }

            return now;
        });
        if (gone.Count > 0)
        {
            GoalsNames.DropLostTradeOff(goals);
        }

        return (season, goals, [.. gone.Distinct(StringComparer.OrdinalIgnoreCase).Select(name => $"{name} is in the bin; what was said of it for this season is left out.")]);
    }

    /// <summary>What is to be kept, once everything in it can be read.</summary>
    public async Task<Answer<SeasonEntry>> EntryAsync(int year, Guid? version, NamedFile goals, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var state = await stock.ReadAsync(cancel);
        if (new GoalsReader(catalogue, state, problems).Read(goals) is null || problems.Count > 0)
        {
            return problems.ToArray();
        }

        var json = JsonNode.Parse(goals.Content.Span, null, new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true })!.AsObject();
        return Entry(year, version, json, state);
    }

    /// <summary>What is to be kept of goals that can be read.</summary>
    public static SeasonEntry Entry(int year, Guid? version, JsonObject goals, StockState state) => new(
        year, version, Write(goals), [.. GoalsNames.Of(goals).Select(name => new NamedAnimal(name, state.Find(name)!.Animal.AnimalId))]);

    /// <summary>A goals file as a person would write it.</summary>
    public static string Write(JsonObject goals) => goals.ToJsonString(Readable);

    /// <summary>The book's refusal in the desk's words.</summary>
    public static AskedWrongly[] Refused(Stock.Problem problem) => Refusals.Of("season", problem);
}
