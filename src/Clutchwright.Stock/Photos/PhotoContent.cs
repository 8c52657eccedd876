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
}
