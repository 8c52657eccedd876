using Clutchwright.Stock.Happenings;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace Clutchwright.Stock.History;

/// <summary>Something that happened, as the history keeps it. A new field must have a default, so that old history can still be read.</summary>
internal sealed record HappeningSnapshot(
    Guid Id, Guid Animal, Guid? Mate, HappeningKind Kind, DateSnapshot When, double? Amount, string Text, DateTime? WithdrawnAt, Guid? Clutch = null)
{
    public static HappeningSnapshot Of(Happening happening) => new(
        happening.HappeningId.Value,
        happening.AnimalId.Value,
        happening.MateId?.Value,
        happening.Kind,
        DateSnapshot.Of(happening.When)!,
        happening.Amount,
        happening.Text,
        happening.WithdrawnAt,
        happening.ClutchId?.Value);

    /// <summary>It as it was loaded.</summary>
    public static HappeningSnapshot Original(EntityEntry<Happening> entry) => new(
        entry.Entity.HappeningId.Value,
        entry.Property(h => h.AnimalId).OriginalValue.Value,
        entry.Property(h => h.MateId).OriginalValue?.Value,
        entry.Property(h => h.Kind).OriginalValue,
        DateSnapshot.Original(entry.ComplexProperty(h => h.When))!,
        entry.Property(h => h.Amount).OriginalValue,
        entry.Property(h => h.Text).OriginalValue,
        entry.Property(h => h.WithdrawnAt).OriginalValue,
        entry.Property(h => h.ClutchId).OriginalValue?.Value);
}
