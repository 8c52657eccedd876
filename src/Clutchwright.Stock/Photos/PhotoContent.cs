using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Photos;

/// <summary>The picture of one or more photos. It is written once, never changed and never taken out, so that a photo can always come back.</summary>
internal sealed class PhotoContent
{
    public PhotoContent(string digest, byte[] picture, byte[] thumbnail) => (Digest, Picture, Thumbnail) = (digest, picture, thumbnail);

    /// <summary>SHA-256 of <see cref="Picture"/>, in lower-case hexadecimal.</summary>
    public string Digest { get; private set; }

    /// <summary>A JPEG file.</summary>
    public byte[] Picture { get; private set; }

    /// <summary>A JPEG file.</summary>
    public byte[] Thumbnail { get; private set; }

    /// <summary>Keeps a picture, unless it is there already, one of many within a deed: not through the context, which would hold every picture until the deed is saved.</summary>
    /// <remarks>Contents have no history: they never change.</remarks>
    public static async Task KeepAsync(StockContext db, string digest, byte[] picture, byte[] thumbnail, CancellationToken cancellation)
    {
        if (!await db.PhotoContents.AnyAsync(c => c.Digest == digest, cancellation))
        {
            await db.Database.ExecuteSqlAsync($"""INSERT INTO "PhotoContents" ("Digest", "Picture", "Thumbnail") VALUES ({digest}, {picture}, {thumbnail})""", cancellation);
        }
    }
}
