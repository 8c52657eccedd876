using Clutchwright.Pictures;
using Clutchwright.Stock.Photos;

namespace Clutchwright.Desk.Importing;

/// <summary>Prepared pictures on the disk until they are written into the book, so that not all are in memory at once. The file goes when it is closed.</summary>
internal sealed class PhotoSpool : IDisposable
{
    private readonly FileStream _file = new(
        Path.Combine(Path.GetTempPath(), $"clutchwright-{Guid.CreateVersion7():N}"),
        FileMode.CreateNew,
        FileAccess.ReadWrite,
        FileShare.None,
        64 * 1024,
        FileOptions.DeleteOnClose);

    /// <summary>Puts a picture down.</summary>
    /// <returns>Gives it again.</returns>
    public Func<PhotoEntry> Add(PreparedPicture picture)
    {
        var at = _file.Seek(0, SeekOrigin.End);
        _file.Write(picture.Picture.Span);
        _file.Write(picture.Thumbnail.Span);
        var (length, small, width, height) = (picture.Picture.Length, picture.Thumbnail.Length, picture.Width, picture.Height);
        return () =>
        {
            var bytes = new byte[length + small];
            _file.Seek(at, SeekOrigin.Begin);
            _file.ReadExactly(bytes);
            return new(bytes.AsMemory(0, length), bytes.AsMemory(length), width, height, null, string.Empty);
        };
    }

    /// <inheritdoc />
    public void Dispose() => _file.Dispose();
}
