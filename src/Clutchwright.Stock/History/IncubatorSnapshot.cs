using Clutchwright.Stock.Incubators;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace Clutchwright.Stock.History;

/// <summary>An incubator as the history keeps it. A new field must have a default, so that old history can still be read.</summary>
internal sealed record IncubatorSnapshot(
    Guid Id,
    string Name,
    double? LowestCelsius,
    double? HighestCelsius,
    double? LowestHumidityPercent,
    double? HighestHumidityPercent,
    string Notes,
    DateTime? RetiredAt)
{
    public static IncubatorSnapshot Of(Incubator incubator) => new(
        incubator.IncubatorId.Value,
        incubator.Name,
        incubator.LowestCelsius,
        incubator.HighestCelsius,
        incubator.LowestHumidityPercent,
        incubator.HighestHumidityPercent,
        incubator.Notes,
        incubator.RetiredAt);

    /// <summary>The incubator as it was loaded.</summary>
    public static IncubatorSnapshot Original(EntityEntry<Incubator> entry) => new(
        entry.Entity.IncubatorId.Value,
        entry.Property(i => i.Name).OriginalValue,
        entry.Property(i => i.LowestCelsius).OriginalValue,
        entry.Property(i => i.HighestCelsius).OriginalValue,
        entry.Property(i => i.LowestHumidityPercent).OriginalValue,
        entry.Property(i => i.HighestHumidityPercent).OriginalValue,
        entry.Property(i => i.Notes).OriginalValue,
        entry.Property(i => i.RetiredAt).OriginalValue);
}
