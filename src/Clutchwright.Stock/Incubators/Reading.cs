using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;

namespace Clutchwright.Stock.Incubators;

/// <summary>What was read off an incubator at one moment. It changes only through the deeds.</summary>
public sealed class Reading
{
    public const int MaxTextLength = 500;

    internal Reading(ReadingId id, IncubatorId incubator, ReadingEntry entry)
    {
        (ReadingId, IncubatorId) = (id, incubator);
        (TakenAt, Celsius, HumidityPercent, Text) = (entry.TakenAt, entry.Celsius, entry.HumidityPercent, entry.Text.Trim());
    }

    internal Reading(ReadingSnapshot snapshot)
    {
        ReadingId = new(snapshot.Id);
        Take(snapshot);
    }

    private Reading()
    {
    }

    public ReadingId ReadingId { get; private set; }

    public IncubatorId IncubatorId { get; private set; }

    /// <summary>UTC.</summary>
    public DateTime TakenAt { get; private set; }

    public double? Celsius { get; private set; }

    public double? HumidityPercent { get; private set; }

    public string Text { get; private set; } = "";

    /// <summary>When it was taken back (UTC); null: it stands.</summary>
    public DateTime? WithdrawnAt { get; private set; }

    public Guid Version { get; private set; }

    public override string ToString() => string.Join(", ", new[]
    {
        Celsius is { } celsius ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{celsius:0.##} °C") : null,
        HumidityPercent is { } percent ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{percent:0.#} %") : null,
        Text.Length > 0 ? Text : null,
    }.OfType<string>());

    internal static IEnumerable<IncubatorProblem> WhyNot(ReadingEntry entry, DateTime now)
    {
        if (entry.TakenAt > now)
        {
            yield return new IncubatorProblem.InTheFuture(entry.TakenAt);
        }

        if (entry.Celsius is null && entry.HumidityPercent is null)
        {
            yield return new IncubatorProblem.NothingRead();
        }

        if (entry.Celsius is not null and not (>= Incubator.LeastCelsius and <= Incubator.MostCelsius))
        {
            yield return new IncubatorProblem.TemperatureOutOfRange(entry.Celsius.Value);
        }

        if (entry.HumidityPercent is not null and not (>= 0 and <= 100))
        {
            yield return new IncubatorProblem.HumidityOutOfRange(entry.HumidityPercent.Value);
        }

        if (entry.Text.Trim().Length > MaxTextLength || !TextRules.IsStorable(entry.Text))
        {
            yield return new IncubatorProblem.NotesInvalid(MaxTextLength);
        }
    }

    internal void Take(ReadingSnapshot snapshot) =>
        (IncubatorId, TakenAt, Celsius, HumidityPercent, Text, WithdrawnAt) =
            (new(snapshot.Incubator), snapshot.TakenAt, snapshot.Celsius, snapshot.HumidityPercent, snapshot.Text, snapshot.WithdrawnAt);

    internal void Withdraw(DateTime when) => WithdrawnAt = when;

    internal void NewVersion() => Version = Guid.CreateVersion7();
}
