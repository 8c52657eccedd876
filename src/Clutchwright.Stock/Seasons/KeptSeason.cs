using System.Text.Json;
using Clutchwright.Stock.History;

namespace Clutchwright.Stock.Seasons;

/// <summary>What a keeper wants of one season, and has chosen for it. It changes only through the deeds.</summary>
/// <remarks>The plan itself is not kept: it is reckoned anew from what is wanted and from the stock as it is.</remarks>
public sealed class KeptSeason
{
    public const int FirstYear = 1900;
    public const int LastYear = 2200;
    public const int MaxGoalsLength = 200_000;

    internal KeptSeason(KeptSeasonId id, SeasonEntry entry)
    {
        KeptSeasonId = id;
        Take(entry);
    }

    internal KeptSeason(SeasonSnapshot snapshot)
    {
        KeptSeasonId = new(snapshot.Id);
        Take(snapshot);
    }

    private KeptSeason()
    {
    }

    public KeptSeasonId KeptSeasonId { get; private set; }

    /// <summary>The year in which its clutches hatch.</summary>
    public int Year { get; private set; }

    /// <summary>A JSON object.</summary>
    public string Goals { get; private set; } = "{}";

    /// <summary>The animals named in <see cref="Goals"/>.</summary>
    public IReadOnlyList<NamedAnimal> Animals => Snapshots.Read<IReadOnlyList<NamedAnimal>>(AnimalsJson);

    public Guid Version { get; private set; }

    /// <summary>The animals named in <see cref="Goals"/>, as the book keeps them.</summary>
    internal string AnimalsJson { get; private set; } = "[]";

    public override string ToString() => $"The season of {Year}";

    internal static Problem? WhyNot(SeasonEntry entry) =>
        entry.Year is < FirstYear or > LastYear ? new SeasonProblem.YearOutOfRange(entry.Year)
        : entry.Goals.Length > MaxGoalsLength || !IsObject(entry.Goals) ? new SeasonProblem.GoalsInvalid(MaxGoalsLength)
        : null;

    internal void NewVersion() => Version = Guid.CreateVersion7();

    internal void Take(SeasonEntry entry) => (Year, Goals, AnimalsJson) = (entry.Year, entry.Goals, Snapshots.Write(entry.Animals));

    internal void Take(SeasonSnapshot snapshot) => (Year, Goals, AnimalsJson) = (snapshot.Year, snapshot.Goals.GetRawText(), Snapshots.Write(snapshot.Animals));

    private static bool IsObject(string json)
    {
        try
        {
            using var document = JsonDocument.Parse(json);
            return document.RootElement.ValueKind == JsonValueKind.Object;
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
