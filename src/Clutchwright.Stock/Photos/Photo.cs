using System.Security.Cryptography;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;

namespace Clutchwright.Stock.Photos;

/// <summary>A photo of an animal. It changes only through the deeds; the picture itself never changes and is known by its digest.</summary>
public sealed class Photo
{
    public const int MaxCaptionLength = 500;

    internal Photo(PhotoId id, AnimalId animal, string digest, PhotoEntry entry)
    {
        (PhotoId, AnimalId, Digest) = (id, animal, digest);
        (Width, Height, Bytes) = (entry.Width, entry.Height, entry.Picture.Length);
        Describe(entry.Taken, entry.Caption);
    }

    internal Photo(PhotoSnapshot snapshot)
    {
        PhotoId = new(snapshot.Id);
        Take(snapshot);
    }

    private Photo()
    {
    }

    public PhotoId PhotoId { get; private set; }

    public AnimalId AnimalId { get; private set; }

    /// <summary>SHA-256 of the picture as it is kept, in lower-case hexadecimal.</summary>
    public string Digest { get; private set; } = "";

    public int Width { get; private set; }

    public int Height { get; private set; }

    /// <summary>Length of the picture's file.</summary>
    public long Bytes { get; private set; }

    /// <summary>When it was taken; null: not known.</summary>
    public DateRange? Taken { get; private set; }

    public string Caption { get; private set; } = "";

    /// <summary>When it was taken back (UTC); null: it stands.</summary>
    public DateTime? WithdrawnAt { get; private set; }

    public Guid Version { get; private set; }

    public override string ToString() => Caption.Length > 0 ? $"photo: {Caption}" : Taken is { } day ? $"photo of {day.Words}" : "photo";

    /// <summary>The digest by which a picture is known.</summary>
    public static string DigestOf(ReadOnlySpan<byte> picture) => Convert.ToHexStringLower(SHA256.HashData(picture));

    internal void Describe(DateRange? taken, string caption) => (Taken, Caption) = (taken, caption.Trim());

    internal void Take(PhotoSnapshot snapshot)
    {
        (AnimalId, Digest, Width, Height, Bytes) = (new(snapshot.Animal), snapshot.Digest, snapshot.Width, snapshot.Height, snapshot.Bytes);
        (Taken, Caption, WithdrawnAt) = (snapshot.Taken?.ToRange(), snapshot.Caption, snapshot.WithdrawnAt);
    }

    internal void Withdraw(DateTime? when) => WithdrawnAt = when;

    internal void NewVersion() => Version = Guid.CreateVersion7();
}
