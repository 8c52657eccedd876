using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;

namespace Clutchwright.Stock.Incubators;

/// <summary>A place where eggs are kept warm, with the limits that its readings are watched against. It changes only through the deeds.</summary>
public sealed class Incubator
{
    public const int MaxNameLength = 60;
    public const int MaxNotesLength = 5_000;

    /// <summary>What a thermometer in a room can show at all.</summary>
    public const double LeastCelsius = -20.0;
    public const double MostCelsius = 60.0;

    internal Incubator(IncubatorId id, IncubatorEntry entry)
    {
        IncubatorId = id;
        Take(entry);
    }

    internal Incubator(IncubatorSnapshot snapshot)
    {
        IncubatorId = new(snapshot.Id);
        Take(snapshot);
    }

    private Incubator()
    {
    }

    public IncubatorId IncubatorId { get; private set; }

    public string Name { get; private set; } = "";

    public double? LowestCelsius { get; private set; }

    public double? HighestCelsius { get; private set; }

    public double? LowestHumidityPercent { get; private set; }

    public double? HighestHumidityPercent { get; private set; }

    public string Notes { get; private set; } = "";

    /// <summary>When it was put out of use (UTC); null: it is in use.</summary>
    public DateTime? RetiredAt { get; private set; }

    public Guid Version { get; private set; }

    public override string ToString() => Name;

    internal static IEnumerable<IncubatorProblem> WhyNot(IncubatorEntry entry)
    {
        var name = entry.Name.Trim();
        if (name.Length is 0 or > MaxNameLength || !TextRules.IsPlainLine(name))
        {
            yield return new IncubatorProblem.NameInvalid(entry.Name, MaxNameLength);
        }

        foreach (var celsius in new[] { entry.LowestCelsius, entry.HighestCelsius })
        {
            if (celsius is not null and not (>= LeastCelsius and <= MostCelsius))
            {
                yield return new IncubatorProblem.TemperatureOutOfRange(celsius.Value);
            }
        }

        foreach (var percent in new[] { entry.LowestHumidityPercent, entry.HighestHumidityPercent })
        {
            if (percent is not null and not (>= 0 and <= 100))
            {
                yield return new IncubatorProblem.HumidityOutOfRange(percent.Value);
            }
        }

        if (entry.LowestCelsius > entry.HighestCelsius || entry.LowestHumidityPercent > entry.HighestHumidityPercent)
        {
            yield return new IncubatorProblem.LimitsSwapped();
        }

        if (entry.Notes.Trim().Length > MaxNotesLength || !TextRules.IsStorable(entry.Notes))
        {
            yield return new IncubatorProblem.NotesInvalid(MaxNotesLength);
        }
    }

    internal void Take(IncubatorEntry entry)
    {
        (Name, Notes) = (entry.Name.Trim(), entry.Notes.Trim());
        (LowestCelsius, HighestCelsius) = (entry.LowestCelsius, entry.HighestCelsius);
        (LowestHumidityPercent, HighestHumidityPercent) = (entry.LowestHumidityPercent, entry.HighestHumidityPercent);
    }

    internal void Take(IncubatorSnapshot snapshot)
    {
        (Name, Notes, RetiredAt) = (snapshot.Name, snapshot.Notes, snapshot.RetiredAt);
        (LowestCelsius, HighestCelsius) = (snapshot.LowestCelsius, snapshot.HighestCelsius);
        (LowestHumidityPercent, HighestHumidityPercent) = (snapshot.LowestHumidityPercent, snapshot.HighestHumidityPercent);
    }

    internal void Retire(DateTime? when) => RetiredAt = when;

    internal void NewVersion() => Version = Guid.CreateVersion7();
}
