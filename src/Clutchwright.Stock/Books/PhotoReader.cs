namespace Clutchwright.Stock.Books;

/// <summary>What the book asks of pictures, which it does not read itself.</summary>
/// <param name="IsPicture">Whether a file is one that can be shown; quick.</param>
/// <param name="Thumbnail">The same picture small, as a JPEG file; null: it cannot be read after all.</param>
public sealed record PhotoReader(Func<ReadOnlyMemory<byte>, bool> IsPicture, Func<ReadOnlyMemory<byte>, byte[]?> Thumbnail);
