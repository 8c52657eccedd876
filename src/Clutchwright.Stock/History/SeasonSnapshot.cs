using System.Text.Json;
using Clutchwright.Stock.Seasons;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace Clutchwright.Stock.History;

/// <summary>A kept season as the history keeps it. A new field must have a default, so that old history can still be read.</summary>
internal sealed record SeasonSnapshot(Guid Id, int Year, JsonElement Goals, IReadOnlyList<NamedAnimal> Animals)
{
    public static SeasonSnapshot Of(KeptSeason season) => new(season.KeptSeasonId.Value, season.Year, Snapshots.Element(season.Goals), season.Animals);

    /// <summary>The season as it was loaded.</summary>
    public static SeasonSnapshot Original(EntityEntry<KeptSeason> entry) => new(
        entry.Entity.KeptSeasonId.Value,
        entry.Property(s => s.Year).OriginalValue,
        Snapshots.Element(entry.Property(s => s.Goals).OriginalValue),
        Snapshots.Read<IReadOnlyList<NamedAnimal>>(entry.Property(s => s.AnimalsJson).OriginalValue));
}
