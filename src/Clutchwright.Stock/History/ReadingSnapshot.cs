using Clutchwright.Stock.Incubators;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace Clutchwright.Stock.History;

/// <summary>A reading as the history keeps it. A new field must have a default, so that old history can still be read.</summary>
internal sealed record ReadingSnapshot(
    Guid Id, Guid Incubator, DateTime TakenAt, double? Celsius, double? HumidityPercent, string Text, DateTime? WithdrawnAt)
{
    public static ReadingSnapshot Of(Reading reading) => new(
        reading.ReadingId.Value, reading.IncubatorId.Value, reading.TakenAt, reading.Celsius, reading.HumidityPercent, reading.Text, reading.WithdrawnAt);

    /// <summary>The reading as it was loaded.</summary>
    public static ReadingSnapshot Original(EntityEntry<Reading> entry) => new(
        entry.Entity.ReadingId.Value,
        entry.Property(r => r.IncubatorId).OriginalValue.Value,
        entry.Property(r => r.TakenAt).OriginalValue,
        entry.Property(r => r.Celsius).OriginalValue,
        entry.Property(r => r.HumidityPercent).OriginalValue,
        entry.Property(r => r.Text).OriginalValue,
        entry.Property(r => r.WithdrawnAt).OriginalValue);
}
