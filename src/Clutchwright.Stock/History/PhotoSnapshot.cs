using Clutchwright.Stock.Photos;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace Clutchwright.Stock.History;

/// <summary>A photo as the history keeps it, the picture by its digest. A new field must have a default, so that old history can still be read.</summary>
internal sealed record PhotoSnapshot(
    Guid Id, Guid Animal, string Digest, int Width, int Height, long Bytes, DateSnapshot? Taken, string Caption, DateTime? WithdrawnAt)
{
    public static PhotoSnapshot Of(Photo photo) => new(
        photo.PhotoId.Value,
        photo.AnimalId.Value,
        photo.Digest,
        photo.Width,
        photo.Height,
        photo.Bytes,
        DateSnapshot.Of(photo.Taken),
        photo.Caption,
        photo.WithdrawnAt);

    /// <summary>The photo as it was loaded.</summary>
    public static PhotoSnapshot Original(EntityEntry<Photo> entry) => new(
        entry.Entity.PhotoId.Value,
        entry.Property(p => p.AnimalId).OriginalValue.Value,
        entry.Property(p => p.Digest).OriginalValue,
        entry.Property(p => p.Width).OriginalValue,
        entry.Property(p => p.Height).OriginalValue,
        entry.Property(p => p.Bytes).OriginalValue,
        DateSnapshot.Original(entry.ComplexProperty(p => p.Taken)),
        entry.Property(p => p.Caption).OriginalValue,
        entry.Property(p => p.WithdrawnAt).OriginalValue);
}
