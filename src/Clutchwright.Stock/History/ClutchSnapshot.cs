using Clutchwright.Stock.Clutches;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace Clutchwright.Stock.History;

/// <summary>A clutch as the history keeps it. A new field must have a default, so that old history can still be read.</summary>
internal sealed record ClutchSnapshot(
    Guid Id,
    string Tag,
    Guid Dam,
    IReadOnlyList<Guid> Sires,
    DateSnapshot Laid,
    int? GoodEggs,
    int? Slugs,
    double? MassGrams,
    Guid? Incubator,
    DateSnapshot? Hatched,
    IReadOnlyList<CountedYoung> Counted,
    string Notes,
    DateTime? BinnedAt)
{
    public static ClutchSnapshot Of(Clutch clutch) => new(
        clutch.ClutchId.Value,
        clutch.Tag,
        clutch.DamId.Value,
        Snapshots.Read<Guid[]>(clutch.SiresJson),
        DateSnapshot.Of(clutch.Laid)!,
        clutch.GoodEggs,
        clutch.Slugs,
        clutch.MassGrams,
        clutch.IncubatorId?.Value,
        DateSnapshot.Of(clutch.Hatched),
        clutch.Counted,
        clutch.Notes,
        clutch.BinnedAt);

    /// <summary>The clutch as it was loaded.</summary>
    public static ClutchSnapshot Original(EntityEntry<Clutch> entry) => new(
        entry.Entity.ClutchId.Value,
        entry.Property(c => c.Tag).OriginalValue,
        entry.Property(c => c.DamId).OriginalValue.Value,
        Snapshots.Read<Guid[]>(entry.Property(c => c.SiresJson).OriginalValue),
        DateSnapshot.Original(entry.ComplexProperty(c => c.Laid))!,
        entry.Property(c => c.GoodEggs).OriginalValue,
        entry.Property(c => c.Slugs).OriginalValue,
        entry.Property(c => c.MassGrams).OriginalValue,
        entry.Property(c => c.IncubatorId).OriginalValue?.Value,
        DateSnapshot.Original(entry.ComplexProperty(c => c.Hatched)),
        Snapshots.Read<IReadOnlyList<CountedYoung>>(entry.Property(c => c.CountedJson).OriginalValue),
        entry.Property(c => c.Notes).OriginalValue,
        entry.Property(c => c.BinnedAt).OriginalValue);
}
