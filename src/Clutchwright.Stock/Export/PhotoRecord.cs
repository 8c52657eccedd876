using Clutchwright.Stock.History;

namespace Clutchwright.Stock.Export;

/// <summary>A photo as a file of the whole book keeps it: as the history does, and with the file of the ZIP in which its picture lies; photos of
/// one picture name the same.</summary>
internal sealed record PhotoRecord(
    Guid Id, Guid Animal, string Digest, int Width, int Height, long Bytes, DateSnapshot? Taken, string Caption, DateTime? WithdrawnAt, string File)
{
    public static PhotoRecord Of(PhotoSnapshot photo, string file) =>
        new(photo.Id, photo.Animal, photo.Digest, photo.Width, photo.Height, photo.Bytes, photo.Taken, photo.Caption, photo.WithdrawnAt, file);

    public PhotoSnapshot ToSnapshot() => new(Id, Animal, Digest, Width, Height, Bytes, Taken, Caption, WithdrawnAt);
}
