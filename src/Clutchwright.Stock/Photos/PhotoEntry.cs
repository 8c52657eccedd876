using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Photos;

/// <summary>A photo of an animal as it is entered: already turned upright, free of where it was taken, and of a size to be kept.</summary>
/// <param name="Picture">The picture, as a JPEG file.</param>
/// <param name="Thumbnail">The same, small.</param>
/// <param name="Width">Of the picture, in pixels.</param>
/// <param name="Height">Of the picture, in pixels.</param>
/// <param name="Taken">When it was taken; null: not known.</param>
/// <param name="Caption">What the keeper says of it.</param>
public sealed record PhotoEntry(ReadOnlyMemory<byte> Picture, ReadOnlyMemory<byte> Thumbnail, int Width, int Height, DateRange? Taken, string Caption);
